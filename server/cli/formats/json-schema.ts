/** The shape of the reports of a check for programs, as JSON Schema. */
import { amount, count, dialect, exactly, list, number, one, orNull, text } from "../json-shapes.ts";

const position = exactly({ line: count, character: count });
const range = exactly({ start: position, end: position });

const finding = exactly({
  check: text,
  severity: one("error", "warning", "information"),
  message: text,
  range,
  value: orNull(exactly(amount)),
  limit: orNull(exactly({ ...amount, which: orNull(text) })),
  margin: orNull(number),
  marginText: orNull(text),
  verdict: orNull(one("passes", "fails", "unproven")),
  source: orNull(exactly({ ref: text, standing: text })),
  working: orNull(text),
  related: list(exactly({ path: text, range, message: text })),
});

const file = { path: text, findings: list(finding) } as const;
const summary = {
  errors: count,
  warnings: count,
  unproven: count,
  informations: count,
  files: count,
  boards: count,
  ways: count,
  suppressed: count,
  leftOut: count,
} as const;

/** Lines and characters count from zero, characters in UTF-16 units. */
export const checkSchema = {
  $schema: dialect,
  title: "wayfile check --format json",
  ...exactly({ version: { const: 1 }, files: list(exactly(file)), summary: exactly(summary) }),
} as const;

export const checkLineSchema = {
  $schema: dialect,
  title: "a line of wayfile check --format jsonl",
  anyOf: [
    exactly({ type: { const: "file" }, ...file }),
    exactly({ type: { const: "summary" }, version: { const: 1 }, ...summary }),
  ],
} as const;
