/** A history for programs. Its shape is `historySchema`; a change of it needs a new `version`. */
import { changeKinds } from "../reports/compare/changes.ts";
import { baseUnitOf, driftText, type HistoryOf } from "../reports/history/report.ts";
import type { Edit, Point, Series, Writing } from "../reports/history/timeline.ts";
import { amount, dialect, exactly, list, number, one, orNull, text, truth } from "./json-shapes.ts";

export const historyJson = ({ file, wanted, edits, series, remarks }: HistoryOf) => ({
  version: 1,
  file,
  address: wanted ?? null,
  commits: edits.map(commitJson),
  readings: series.map(seriesJson),
  remarks,
});

/** What is not committed yet has nobody who wrote it. */
const commitJson = ({ commit, by, on, subject }: Edit) => ({
  commit: commit ?? null,
  author: commit === undefined ? null : by,
  day: commit === undefined ? null : on,
  subject: commit === undefined ? null : subject,
});

function seriesJson({ name, points, drift }: Series) {
  const unit = points.map(({ entry }) => baseUnitOf(entry.reading)).find((found) => found !== undefined) ?? "";
  return {
    reading: name,
    days: points.map(pointJson),
    drift: drift
      ? {
          amount: tidy(drift.by),
          unit,
          uncertainty: drift.uncertainty === undefined ? null : tidy(drift.uncertainty),
          isMore: drift.uncertainty === undefined ? null : Math.abs(drift.by) > drift.uncertainty,
          text: driftText(drift, points),
        }
      : null,
  };
}

const pointJson = ({ entry, uncertainty, writings }: Point) => ({
  day: entry.on ?? null,
  address: entry.at,
  text: entry.shown,
  value: valueJson(entry.reading),
  uncertainty: uncertainty ? { amount: tidy(uncertainty.value), instrument: uncertainty.instrument } : null,
  writings: writings.map(writingJson),
});

/** A quantity in its base unit; what was not measured, and a word, have none. */
function valueJson(reading: Point["entry"]["reading"]) {
  if (!reading || !("sign" in reading)) return null;
  return { amount: tidy(reading.value), unit: baseUnitOf(reading) ?? "", sign: reading.sign };
}

const writingJson = ({ edit, kind, from, to }: Writing) => ({
  kind,
  before: from ?? null,
  after: to ?? null,
  ...commitJson(edit),
});

/** 0.55 − 0.47 is 0.08, and no digit that no meter shows. */
const tidy = (value: number): number => Number(value.toPrecision(12));

const commit = { commit: orNull(text), author: orNull(text), day: orNull(text), subject: orNull(text) } as const;

/** The shape of `history --format json`, as JSON Schema. Figures are in base units: Ω, A, V, s. */
export const historySchema = {
  $schema: dialect,
  title: "wayfile history --format json",
  ...exactly({
    version: { const: 1 },
    file: text,
    address: orNull(text),
    commits: list(exactly(commit)),
    readings: list(
      exactly({
        reading: text,
        days: list(
          exactly({
            day: orNull(text),
            address: text,
            text,
            value: orNull(exactly({ ...amount, sign: one("=", ">", "<") })),
            uncertainty: orNull(exactly({ amount: number, instrument: text })),
            writings: list(
              exactly({ kind: one(...changeKinds), before: orNull(text), after: orNull(text), ...commit }),
            ),
          }),
        ),
        drift: orNull(exactly({ ...amount, uncertainty: orNull(number), isMore: orNull(truth), text })),
      }),
    ),
    remarks: list(text),
  }),
} as const;
