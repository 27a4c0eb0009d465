/** A register for programs. Its shape is `registerSchema`; a change of it needs a new `version`. */
import type { Listed } from "../reports/register/register.ts";
import { count, dialect, exactly, list, number, orNull, text } from "./json-shapes.ts";

export const registerJson = (rows: readonly Listed[], day: string) => ({
  version: 1,
  day,
  installations: rows.map(rowJson),
});

function rowJson({
  weights: _,
  stage,
  standard,
  tested,
  nextInspection,
  outcome,
  calibration,
  margin,
  ...row
}: Listed) {
  return {
    ...row,
    stage: stage ?? null,
    standard: standard ?? null,
    tested: tested ?? null,
    nextInspection: nextInspection ?? null,
    outcome: outcome ?? null,
    calibration: calibration ?? null,
    margin: margin ?? null,
  };
}

/** The shape of `register --format json`, as JSON Schema. */
export const registerSchema = {
  $schema: dialect,
  title: "wayfile register --format json",
  ...exactly({
    version: { const: 1 },
    day: text,
    installations: list(
      exactly({
        file: text,
        title: text,
        attention: list(text),
        boards: count,
        ways: count,
        errors: count,
        warnings: count,
        missing: count,
        queries: count,
        limitations: count,
        departures: count,
        stage: orNull(text),
        standard: orNull(text),
        tested: orNull(text),
        nextInspection: orNull(text),
        outcome: orNull(text),
        calibration: orNull(exactly({ instrument: text, due: text })),
        margin: orNull(exactly({ share: number, where: text, name: text, text })),
      }),
    ),
  }),
} as const;
