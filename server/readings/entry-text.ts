/** What a line says, in three forms: what tells it apart, what is equal for two that say the same, and as it is written. */
import type { Accepts, Param, WordRow } from "../../grammar/params.ts";
import { type QuantityName, quantities } from "../../grammar/quantities.ts";
import { unitOf } from "../../grammar/units.ts";
import { type BlockKind, rowOf } from "../../grammar/vocabulary.ts";
import { asList } from "../model/fact-values.ts";
import { type AnyValue, type Fact, isAbsent, type Quantity, type Span } from "../model/values.ts";

/** Boards by the names they are to be called by: what refers to one that was renamed says the same as before. */
export type Renamed = ReadonlyMap<string, string>;

export type Args = readonly (readonly [param: Param, values: readonly AnyValue[], name: string])[];

/** The arguments that tell two of a word apart. */
export function keyArgs(row: WordRow): readonly string[] {
  if (row.reads) return row.reads.key;
  if (row.key) return row.key;
  return Object.entries(row.params).flatMap(([name, { accepts }]) => (accepts.kind === "define" ? [name] : []));
}

export function keyOf(fact: Fact, kind: BlockKind, renamed: Renamed | undefined): string[] {
  const row = rowOf(kind, fact.word);
  if (!row) return [];
  return keyArgs(row).flatMap((name) => {
    const value = fact.args[name];
    const accepts = row.params[name]?.accepts;
    return value === undefined || !accepts ? [] : asList(value).map((one) => keyText(one, accepts, renamed));
  });
}

/** A value as its address has it. */
function keyText(value: AnyValue, accepts: Accepts, renamed: Renamed | undefined): string {
  if (isAbsent(value)) return value.absent;
  if ("curve" in value) return `${value.curve}${value.rating}`;
  if ("legs" in value)
    return [value.from, ...value.legs.map(({ to }) => to)].map((name) => nameNow(name.value, renamed)).join(" ");
  if ("sign" in value) return accepts.kind === "quantity" ? usualAmount(value, accepts.of) : "";
  return accepts.kind === "multiple" ? `${value.value}x` : String(value.value);
}

/** In the usual unit, whichever it was written in: an address must not depend on that. */
function usualAmount({ sign, value }: Quantity, of: QuantityName): string {
  const { base, units } = quantities[of];
  const [unit = base] = units;
  const number = (value * (unitOf(base)?.factor ?? 1)) / (unitOf(unit)?.factor ?? 1);
  return `${sign === "=" ? "" : sign}${Number(number.toPrecision(12))} ${unit}`;
}

/** A board by the name it is to be called by. In a run it is where the cable starts. */
const nameNow = (name: string, renamed: Renamed | undefined): string => renamed?.get(name) ?? name;

/** Several of one argument are a set. */
export function meaningOf({ accepts }: Param, values: readonly AnyValue[], renamed: Renamed | undefined): string {
  const namesBoard = accepts.kind === "ref" && accepts.names === "board";
  return values
    .map((value) => oneMeaning(value, accepts.kind === "path" || namesBoard ? renamed : undefined))
    .sort()
    .join(" ");
}

/** Amounts are in the base unit of their argument. */
function oneMeaning(value: AnyValue, renamed: Renamed | undefined): string {
  if (isAbsent(value)) return `${value.absent}${value.why === undefined ? "" : ` ${JSON.stringify(value.why)}`}`;
  if ("curve" in value) return `${value.curve}${value.rating}`;
  if ("legs" in value) {
    const legs = value.legs.map(({ length, to }) => `${oneMeaning(length, undefined)} ${nameNow(to.value, renamed)}`);
    return [nameNow(value.from.value, renamed), ...legs].join(" ");
  }
  if ("sign" in value) return `${value.sign}${Number(value.value.toPrecision(12))}`;
  return JSON.stringify(typeof value.value === "string" ? nameNow(value.value, renamed) : value.value);
}

/** Where a reading came from, and what stood there before it was corrected. */
export function endingOf(fact: Fact, reading: Span, args: Args): { readonly meaning: string; readonly shown: string } {
  const { provenance, record, corrections = [], segment } = fact;
  const origin = [
    ...(provenance === "measured" ? [] : [provenance]),
    ...(record === undefined ? [] : [JSON.stringify(record)]),
  ];
  const others = args.flatMap(([, values]) => values);
  const isOwn = ({ start }: Span) =>
    reading.end <= start && !others.some((other) => other.start >= reading.end && other.end <= start);
  const own = corrections.filter(isOwn);
  const meaning = [...origin, ...own.map(({ was, why }) => `was ${was} ${JSON.stringify(why)}`)];
  const shown = [...origin, ...own.map(({ start, end }) => tidied(segment.text.slice(start, end)))];
  return { meaning: meaning.map((one) => ` ${one}`).join(""), shown: shown.map((one) => ` ${one}`).join("") };
}

/** Blanks of layout do not matter. */
const tidied = (text: string): string => text.replace(/\s+/g, " ").trim();

/** Values in the order they are written in. */
export function shownOf({ segment: { text } }: Fact, args: Args, labels: boolean): string {
  const pieces = args.flatMap(([{ label }, values]) =>
    values.map((value, index) => ({
      start: value.start,
      text: `${labels && label !== undefined && index === 0 ? `${label} ` : ""}${tidied(text.slice(value.start, value.end))}`,
    })),
  );
  return pieces
    .sort((a, b) => a.start - b.start)
    .map((piece) => piece.text)
    .join(" ");
}

/** A line without the block it opens. */
export function lineOf({ segment, start, end, inner }: Fact): string {
  const text = segment.text.slice(start, end);
  return tidied(inner ? (/^(?:"(?:[^"\\\r\n]|\\.)*"|[^"{])*/.exec(text)?.[0] ?? text) : text);
}
