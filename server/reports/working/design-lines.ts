/** Answers of a design as blocks of a report. */
import type { DesignLine, Figure } from "../../boards/design.ts";
import { lengthText } from "../../boards/greatest-length.ts";
import { amps, kiloamps, ohms, percent, plain, round, squareMillimetres } from "../../calc/result.ts";
import { type Block, type Comparison, calculate, gap, remarkOn, remarkOnPass } from "../setting/document.ts";

/** `beside` is what it is compared with. */
function figureText({ value, unit }: Figure, beside?: Figure): string {
  switch (unit) {
    case "A":
      return value >= 1000 ? kiloamps(value) : amps(value, beside?.value);
    case "m":
      return lengthText(value);
    case "mm²":
      return squareMillimetres(value);
    case "%":
      return percent(round(value, 2));
    case "Ω":
      return ohms(value);
    default:
      return `${plain(value, 0)} ${unit}`.trimEnd();
  }
}

/** An answer with its working, and below it how it stands. */
export function lineBlocks(line: DesignLine): Block[] {
  const { title, value, limit, verdict, reason, steps, source } = line;
  if (verdict === "open" || !value) return [gap(title, reason ?? "it is not known")];
  const from = { steps, source: source ?? noSource };
  if (!limit) return [calculate(title, from, figureText(value), "")];
  // Of a size the working leads to the one that is needed.
  const result = limit.unit === "mm²" ? `${figureText(limit)} needed` : figureText(value);
  if (steps.length === 0) return [judgementOf(line, value, limit)];
  return [calculate(title, from, result, ""), { ...judgementOf(line, value, limit), source: undefined }];
}

const noSource = { ref: "", standing: "printed" } as const;

/** How an answer stands, where its working is shown elsewhere. */
export function verdictBlocks(line: DesignLine, remark = ""): Block[] {
  const { title, value, limit, reason } = line;
  if (!value || !limit) return [gap(title, reason ?? "it is not known")];
  return [judgementOf({ ...line, reason: remark }, value, limit)];
}

function judgementOf(line: DesignLine, value: Figure, limit: Figure): Comparison {
  const { title, verdict, source } = line;
  const holds = verdict === "holds";
  const more = value.value > limit.value;
  const sign = holds ? (more ? "≥" : "≤") : more ? ">" : "<";
  return {
    kind: "judgement",
    text: `${title}: ${figureText(value, limit)} ${sign} ${figureText(limit, value)}`,
    verdict: verdict === "holds" || verdict === "fails" || verdict === "unproven" ? verdict : "advises",
    remark: remarkOf(line, value, limit),
    source: source?.ref === "" ? undefined : source,
  };
}

function remarkOf({ verdict, source, reason = "" }: DesignLine, value: Figure, limit: Figure): string {
  if (verdict === "unproven") return remarkOn(verdict, source);
  return verdict === "holds" ? remarkOnPass({ value: value.value, limit: limit.value }, source, reason) : reason;
}
