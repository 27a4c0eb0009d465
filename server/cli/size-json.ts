/** A proposal for programs. */
import { working } from "../calc/result.ts";
import type { Source } from "../tables/source.ts";
import type { TerminalText } from "../text/terminal.ts";
import { dialect, exactly, list, one, orNull, text, truth } from "./json-shapes.ts";
import { jsonText } from "./say.ts";
import type { Sized } from "./size-report.ts";

/** Its shape is `sizeSchema`; a change of it needs a new `version`. */
export function sizeJson({ proposal, path, way, written, changes }: Sized): TerminalText {
  const { outcome, reasons, open, decisions, ruledOut, device, cable, rcd } = proposal;
  const sourceJson = (source: Source | undefined) => (source ? { ref: source.ref, standing: source.standing } : null);
  const report = {
    version: 1,
    path,
    way,
    outcome,
    reasons,
    device: device ?? null,
    cable: cable ?? null,
    rcd: rcd ?? null,
    changes,
    written,
    decisions: decisions.map(({ title, result, steps, source }) => ({
      title,
      result,
      working: steps.length > 0 ? working(steps) : null,
      source: sourceJson(source),
    })),
    ruledOut: ruledOut.map(({ candidate, why, source }) => ({ candidate, why, source: sourceJson(source) })),
    open,
  };
  return jsonText(report);
}

const source = orNull(exactly({ ref: text, standing: text }));

/** The shape of `size --format json`, as JSON Schema. */
export const sizeSchema = {
  $schema: dialect,
  title: "wayfile size --format json",
  ...exactly({
    version: { const: 1 },
    path: text,
    way: text,
    outcome: one("fits", "none", "missing"),
    reasons: list(text),
    device: orNull(text),
    cable: orNull(text),
    rcd: orNull(text),
    changes: truth,
    written: truth,
    decisions: list(exactly({ title: text, result: text, working: orNull(text), source })),
    ruledOut: list(exactly({ candidate: text, why: text, source })),
    open: list(text),
  }),
} as const;
