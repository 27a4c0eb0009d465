/** A register of installations: what needs attention in each on a given day, and which is the most urgent. */
import { daysBetween } from "../../text/days.ts";
import { counted } from "../../text/words.ts";
import type { RegisterRow } from "./row.ts";

export interface RegisterEntry extends RegisterRow {
  /** The schedule, as it is shown. */
  readonly file: string;
}

/** How far ahead a day is worth a word. */
const soon = 60;

export interface Urgency {
  /** What needs attention, the gravest first; empty where nothing does. */
  readonly attention: readonly string[];
  /** How urgent each of these is. A pile of small things does not outweigh a grave one. */
  readonly weights: readonly number[];
}

export type Listed = RegisterEntry & Urgency;

/** Sorted by urgency, and alike ones by their file. `today`: ISO 8601. */
export function registerOf<E extends RegisterEntry>(entries: readonly E[], today: string): (E & Urgency)[] {
  return entries
    .map((entry) => ({ ...entry, ...urgencyOf(entry, today) }))
    .sort((a, b) => byWeights(a, b) || leftOf(a) - leftOf(b) || (a.file < b.file ? -1 : a.file > b.file ? 1 : 0));
}

function byWeights({ weights: a }: Listed, { weights: b }: Listed): number {
  const at = Array.from({ length: Math.max(a.length, b.length) }, (_, index) => (b[index] ?? 0) - (a[index] ?? 0));
  return at.find((difference) => difference !== 0) ?? 0;
}

const leftOf = ({ margin }: RegisterEntry): number => margin?.share ?? Number.POSITIVE_INFINITY;

function urgencyOf(entry: RegisterEntry, today: string): Urgency {
  const found: (readonly [weight: number, words: string])[] = [];
  const add = (weight: number, words: string): unknown => found.push([weight, words]);
  const { errors, warnings, missing, queries, nextInspection, calibration, outcome } = entry;
  if (errors > 0) add(1000 + Math.min(errors, 99), counted(errors, "error"));
  if (outcome === "unsatisfactory") add(800, "last inspection unsatisfactory");
  if (nextInspection !== undefined) {
    const days = daysBetween(today, nextInspection);
    if (days < 0) add(600 + Math.min(-days / 10, 99), `inspection due since ${nextInspection}`);
    else if (days <= soon) add(200, `inspection due ${nextInspection}`);
  }
  if (missing > 0) add(400 + Math.min(missing, 99), `${counted(missing, "test")} missing`);
  if (queries > 0) add(100 + Math.min(queries, 49), counted(queries, "open query", "open queries"));
  // Readings stand that were taken before it lapsed: it matters where there is more to be read.
  const isComplete = entry.stage === "tested" && missing === 0;
  const lapse = calibration && lapseOf(calibration, today);
  if (lapse !== undefined && !isComplete) add(lapse.isPast ? 60 : 50, lapse.words);
  if (warnings > 0) add(Math.min(warnings, 40), counted(warnings, "warning"));
  const sorted = found.sort(([a], [b]) => b - a);
  return {
    attention: sorted.map(([, words]) => words),
    weights: sorted.map(([weight]) => weight),
  };
}

type Calibration = NonNullable<RegisterRow["calibration"]>;

function lapseOf({ instrument, due }: Calibration, today: string): { words: string; isPast: boolean } | undefined {
  const days = daysBetween(today, due);
  if (days > soon) return undefined;
  return { words: `calibration of ${instrument} ${days < 0 ? "lapsed" : "lapses"} ${due}`, isPast: days < 0 };
}

/** Each instrument that was used last somewhere and is out of calibration, or soon will be: once for all installations. */
export function lapsesOf(rows: readonly RegisterRow[], today: string): string[] {
  const words = rows.flatMap(({ calibration }) => (calibration && lapseOf(calibration, today)?.words) ?? []);
  return [...Map.groupBy(words, (word) => word)].map(
    ([word, of]) => `${word} (last used at ${counted(of.length, "installation")})`,
  );
}

/** What a register says of an installation besides what needs attention, in short words. */
export function particularsOf({ stage, boards, ways, tested, nextInspection, margin, ...row }: Listed): string[] {
  return [
    stage ?? "no stage",
    `${counted(boards, "board")}, ${counted(ways, "way")}`,
    ...(tested === undefined ? [] : [`tested ${tested}`]),
    ...(nextInspection === undefined ? [] : [`next inspection ${nextInspection}`]),
    ...(margin === undefined ? [] : [`least margin ${margin.text} (${margin.where} ${margin.name})`]),
    ...(row.limitations > 0 ? [counted(row.limitations, "limitation")] : []),
    ...(row.departures > 0 ? [counted(row.departures, "departure")] : []),
  ];
}

/** The columns of a register as a table of values. */
export const registerColumns = [
  { key: "file", title: "Schedule", unit: "" },
  { key: "installation", title: "Installation", unit: "" },
  { key: "stage", title: "Stage", unit: "" },
  { key: "attention", title: "Needs attention", unit: "" },
  { key: "errors", title: "Errors", unit: "" },
  { key: "warnings", title: "Warnings", unit: "" },
  { key: "missing", title: "Tests missing", unit: "" },
  { key: "margin", title: "Least margin", unit: "%" },
  { key: "margin-at", title: "of", unit: "" },
  { key: "queries", title: "Queries", unit: "" },
  { key: "limitations", title: "Limitations", unit: "" },
  { key: "departures", title: "Departures", unit: "" },
  { key: "tested", title: "Last tested", unit: "" },
  { key: "next-inspection", title: "Next inspection", unit: "" },
  { key: "calibration", title: "Calibration due", unit: "" },
  { key: "boards", title: "Boards", unit: "" },
  { key: "ways", title: "Ways", unit: "" },
] as const;

/** A text for each column. */
export function registerCells(one: Listed): string[] {
  const { margin, calibration } = one;
  return [
    one.file,
    one.title,
    one.stage ?? "",
    one.attention.join("; "),
    String(one.errors),
    String(one.warnings),
    String(one.missing),
    margin === undefined ? "" : String(Math.floor(margin.share * 100 + 1e-9)),
    margin === undefined ? "" : `${margin.where} ${margin.name}`,
    String(one.queries),
    String(one.limitations),
    String(one.departures),
    one.tested ?? "",
    one.nextInspection ?? "",
    calibration === undefined ? "" : `${calibration.due} ${calibration.instrument}`,
    String(one.boards),
    String(one.ways),
  ];
}
