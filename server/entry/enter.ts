/**
 * Readings that come back from a sheet, a table or a meter become new dated blocks. Nothing that is recorded is
 * overwritten: what is there already is counted, what contradicts it or fits nowhere is listed with its reason.
 */
import { parse } from "../../grammar/parser.ts";
import { studyWay } from "../circuit/way.ts";
import { formatDocument } from "../format/format.ts";
import type { Installation } from "../model/installation.ts";
import { quantityOf, readingAt } from "../model/values.ts";
import { written } from "../proposal/write.ts";
import { printAddress } from "../readings/address.ts";
import { type Entry, entriesOfInstallation } from "../readings/entries.ts";
import { factsOf } from "../readings/instruments.ts";
import { type Document, documentOf } from "../syntax/document.ts";
import type { Segment } from "../syntax/split.ts";
import { applyEdits, type TextEdit } from "../text/lines.ts";
import { placeName, type Slot, type SlotPlace, slotName, slotsOf, usualVoltage } from "./slots.ts";
import { type ReadOptions, readValue } from "./value.ts";

/** A reading from outside, and where it stood there. */
export interface Incoming {
  /** `line 7, column Zs (Ω)`. */
  readonly source: string;
  readonly place: SlotPlace;
  /** As `slotName` has it. */
  readonly slot: string;
  readonly text: string;
  /** ISO 8601. */
  readonly on?: string | undefined;
  readonly with?: readonly string[];
  readonly by?: string | undefined;
}

interface Misfit {
  readonly source: string;
  readonly why: string;
}

interface NewBlock {
  readonly place: SlotPlace;
  readonly lines: readonly string[];
}

export interface Entered {
  readonly blocks: readonly NewBlock[];
  /** Readings that will be written. */
  readonly fresh: number;
  /** Readings that the schedule has already. */
  readonly known: number;
  readonly misfits: readonly Misfit[];
  /** What was taken for granted. */
  readonly assumed: readonly string[];
}

interface Fitting {
  readonly incoming: Incoming;
  readonly slot: Slot;
  readonly value: string;
  /** How it was measured, as it was stated behind the value. */
  readonly how: readonly string[];
}

interface EnterOptions {
  readonly comma?: boolean;
}

/** Sorts readings by where they fit, and words the blocks they become. */
export function enter(installation: Installation, incoming: readonly Incoming[], options: EnterOptions = {}): Entered {
  const slots = new Map(slotsOf(installation).map((slot) => [`${placeName(slot.place)} ${slotName(slot)}`, slot]));
  const places = new Set(placesOf(installation).map(placeName));
  const recorded = recordedReadings(installation);
  const misfits: Misfit[] = [];
  const fitting: Fitting[] = [];
  let known = 0;
  for (const one of incoming) {
    const result = matched(one, { installation, slots, places, recorded, options });
    const voltage = one.slot.endsWith("insulation at");
    if (result === "known") known++;
    else if ("failure" in result && voltage && one.on === undefined) continue;
    else if ("failure" in result) misfits.push({ source: one.source, why: result.failure });
    else fitting.push(result);
  }
  const { kept, twice } = once(withReadings(fitting));
  const made = blocksOf(installation, kept);
  return {
    blocks: made.blocks,
    fresh: made.fresh,
    known,
    misfits: [...misfits, ...twice, ...made.misfits],
    assumed: made.assumed,
  };
}

const placesOf = ({ boards }: Installation): SlotPlace[] => [
  {},
  ...boards.flatMap(({ board }) => [
    { board: board.head.name },
    ...board.ways.map(({ id }) => ({ board: board.head.name, way: id })),
  ]),
];

interface Known {
  readonly installation: Installation;
  readonly slots: ReadonlyMap<string, Slot>;
  readonly places: ReadonlySet<string>;
  readonly recorded: ReadonlyMap<string, readonly Recorded[]>;
  readonly options: EnterOptions;
}

function matched(
  one: Incoming,
  { installation, slots, places, recorded, options }: Known,
): Fitting | "known" | { failure: string } {
  const place = placeName(one.place);
  if (!places.has(place))
    return { failure: `the schedule has no ${one.place.way === undefined ? "board" : "way"} ${place}` };
  const slot = slots.get(`${place} ${one.slot}`);
  if (!slot) return { failure: `${place} has no such test: ${one.slot}` };
  const { text: bare, how } = withoutQualifiers(one.text, slot);
  const value = readValue(bare, slot, {
    ...(options.comma ? { comma: true } : {}),
    range: rangeOf(installation, one.with ?? [], slot),
  });
  if ("failure" in value) return value;
  const there = recorded.get(`${place} ${one.slot}`) ?? [];
  if (
    there.some(
      ({ text, on }) =>
        sameText(withoutQualifiers(text, slot).text, value.text) && (one.on === undefined || on === one.on),
    )
  )
    return "known";
  const sameDay = there.find(({ on }) => on === one.on);
  if (one.on === undefined)
    return {
      failure:
        there.length > 0
          ? `it differs from ${there[0]?.text}, read ${there[0]?.on || "earlier"}: a new test needs its day`
          : "the day of the test is not given",
    };
  if (!/^\d{4}-\d{2}-\d{2}$/.test(one.on) || Number.isNaN(Date.parse(`${one.on}T00:00:00Z`)))
    return { failure: `“${one.on}” is no day: write it as 2026-03-05` };
  if (sameDay) return { failure: `${sameDay.text} is recorded for ${one.on} already, and is not overwritten` };
  const unknown = (one.with ?? []).find((name) => !installation.names.instruments.has(name));
  if (unknown !== undefined) return { failure: `the schedule has no instrument ${unknown}` };
  return { incoming: one, slot, value: value.text, how };
}

/** What is stated behind a value of how it was measured, by the words the language has for it. */
function withoutQualifiers(
  text: string,
  { qualifiers = [] }: Slot,
): { readonly text: string; readonly how: readonly string[] } {
  const words = text.trim().split(/\s+/);
  const how: string[] = [];
  while (words.length > 1 && qualifiers.includes(words.at(-1) ?? "")) how.unshift(words.pop() ?? "");
  return { text: words.join(" "), how };
}

interface Recorded {
  readonly text: string;
  readonly on: string;
}

/** What the schedule has, by place and slot. */
function recordedReadings(installation: Installation): Map<string, Recorded[]> {
  const found = new Map<string, Recorded[]>();
  for (const entry of entriesOfInstallation(installation)) {
    const name = slotNameOf(entry);
    if (name === undefined) continue;
    const before = found.get(name);
    const one = { text: entry.shown, on: entry.on ?? "" };
    if (before) before.push(one);
    else found.set(name, [one]);
  }
  return found;
}

const blockWords: Readonly<Record<string, Slot["block"]>> = {
  dead: "dead",
  live: "live",
  boardDead: "dead",
  boardLive: "live",
  supplyLive: "live",
};

function slotNameOf(entry: Entry): string | undefined {
  const { address, kind, reading } = entry;
  const block = blockWords[kind] ?? (kind === "board" || kind === "supply" ? "live" : undefined);
  const { place, line, part } = address;
  if (!reading || block === undefined || !line || address.blocks.some(({ struckOut }) => struckOut)) return undefined;
  const where: SlotPlace =
    place.of === "way" ? { board: place.board, way: place.way } : place.of === "board" ? { board: place.board } : {};
  const bare = printAddress({ place: { of: "file" }, blocks: [], line }).replace(/^file · /, "");
  const head = line.word === "insulation" ? "insulation" : bare;
  return `${placeName(where)} ${slotName({ block, line: head, label: part ?? "" })}`;
}

/** Equal but for blanks, the multiple's cross and trailing zeros of no meaning. */
const sameText = (one: string, other: string): boolean => canonical(one) === canonical(other);
const canonical = (text: string): string => {
  const [, sign = "", digits, unit = ""] = /^([<>]?)\s*(\d+(?:\.\d+)?)\s*(\S+)$/.exec(text.trim()) ?? [];
  return digits === undefined ? text.trim().replace(/\s+/g, " ") : `${sign}${Number(digits)} ${unit}`;
};

/** The range of the instruments that were used, for the kind of reading. */
function rangeOf({ names }: Installation, used: readonly string[], { unit, line }: Slot): ReadOptions["range"] {
  const kind = unit === "MΩ" ? "insulation" : /^(?:Z|at)/.test(line) ? "loop" : "continuity";
  for (const name of used) {
    const instrument = names.instruments.get(name)?.[0];
    const range =
      instrument &&
      factsOf(instrument)
        ?.all("range")
        .find(({ args }) => args.of.value === kind);
    const top = quantityOf(readingAt(range, "top"));
    if (top) return { value: top.value, unit: "Ω" };
  }
  return undefined;
}

/** A test voltage is no reading: without one beside it of the same place and day it is dropped. */
function withReadings(fitting: readonly Fitting[]): Fitting[] {
  const testOf = ({ slot, incoming }: Fitting): string => `${placeName(slot.place)}|${incoming.on}`;
  const read = new Set(fitting.filter(({ slot }) => slot.line === "insulation" && slot.label !== "at").map(testOf));
  return fitting.filter((one) => !isVoltage(one) || read.has(testOf(one)));
}

const isVoltage = ({ slot }: Fitting): boolean => slot.line === "insulation" && slot.label === "at";

/** One value a slot and day; a second of the sheet contradicts the first or repeats it. */
function once(fitting: readonly Fitting[]): { readonly kept: Fitting[]; readonly twice: Misfit[] } {
  const kept = new Map<string, Fitting>();
  const twice: Misfit[] = [];
  for (const one of fitting) {
    const key = [placeName(one.slot.place), slotName(one.slot), one.incoming.on].join("|");
    const before = kept.get(key);
    if (!before) kept.set(key, one);
    else if (before.value !== one.value)
      twice.push({
        source: one.incoming.source,
        why: `the same reading is given twice: ${before.value} and ${one.value}`,
      });
  }
  return { kept: [...kept.values()], twice };
}

interface Made {
  readonly blocks: NewBlock[];
  readonly fresh: number;
  readonly misfits: Misfit[];
  readonly assumed: string[];
}

function blocksOf(installation: Installation, fitting: readonly Fitting[]): Made {
  const groups = Map.groupBy(fitting, ({ slot, incoming }) =>
    JSON.stringify([placeName(slot.place), slot.block, incoming.on, incoming.with ?? [], incoming.by ?? ""]),
  );
  const blocks: NewBlock[] = [];
  const misfits: Misfit[] = [];
  const assumed = new Set<string>();
  let fresh = 0;
  const ordered = [...groups.values()].toSorted((a, b) => rankOf(a[0]) - rankOf(b[0]));
  for (const group of ordered) {
    const [first] = group;
    if (!first) continue;
    const { block, place } = first.slot;
    const lines = [...Map.groupBy(group, ({ slot }) => slot.line).values()].flatMap((one) => {
      const made = lineOf(installation, one);
      if ("failure" in made)
        misfits.push(...one.map(({ incoming }) => ({ source: incoming.source, why: made.failure })));
      else {
        fresh += one.filter((entry) => !isVoltage(entry)).length;
        if (made.assumed !== undefined) assumed.add(made.assumed);
      }
      return "failure" in made ? [] : [`  ${made.text}`];
    });
    const { on, with: used = [], by } = first.incoming;
    const head = [block, on, ...(used.length > 0 ? ["with", ...used] : []), ...(by ? ["by", quoted(by)] : [])].join(
      " ",
    );
    if (lines.length > 0) blocks.push({ place, lines: [`${head} {`, ...lines, "}"] });
  }
  return { blocks, fresh, misfits, assumed: [...assumed] };
}

/** Dead before live, as the trade tests. */
const rankOf = (one: Fitting | undefined): number => (one?.slot.block === "live" ? 1 : 0);

const quoted = (text: string): string => `"${text.replace(/["\\]/g, "\\$&").replace(/\s+/g, " ")}"`;

type MadeLine = { readonly text: string; readonly assumed?: string } | { readonly failure: string };

/** A line of the language with all its values, in the order the language writes them. */
function lineOf(installation: Installation, group: readonly Fitting[]): MadeLine {
  const [first] = group;
  if (!first) return { failure: "there is no value" };
  const { line, head = line, place, tail } = first.slot;
  if (line === "insulation") return insulationLine(installation, group);
  const how = [...new Set(group.flatMap((one) => one.how))];
  const labels = group.map(({ slot }) => slot.label);
  if (line === "ends" && !(labels.includes("r1") && labels.includes("rn")))
    return { failure: `the ends of ring ${placeName(place)} are written together: r1 and rn are both needed` };
  const whole = group.find(({ slot }) => slot.label === "");
  const rest = group.filter((one) => one !== whole).map(({ slot, value }) => `${slot.label} ${value}`);
  const lines = whole ? undefined : highestOf(first.slot, group);
  const values = [...(whole ? [whole.value] : lines ? [lines.value] : []), ...rest];
  return {
    text: [head, ...values, ...(tail ? [tail] : []), ...how].join(" "),
    ...(lines ? { assumed: `Of three lines the highest is taken as the ${line} of the circuit.` } : {}),
  };
}

/** Where only the lines of a circuit were read, the highest of them counts for it. */
function highestOf({ line }: Slot, group: readonly Fitting[]): Fitting | undefined {
  if (line !== "Zs" && line !== "R1+R2") return undefined;
  const figure = ({ value }: Fitting): number => Number.parseFloat(value.replace(/^[<>]/, ""));
  return group.filter(({ slot }) => /^L\d$/.test(slot.label)).toSorted((a, b) => figure(b) - figure(a))[0];
}

function insulationLine(installation: Installation, group: readonly Fitting[]): MadeLine {
  const given = group.find(({ slot }) => slot.label === "at");
  const pairs = group.filter((one) => one !== given);
  const [first] = pairs;
  if (!first) return { failure: "a test voltage stands without a reading" };
  const place = first.slot.place;
  const usual = usualVoltage(studyOf(installation, place));
  const voltage = given?.value ?? `${usual} V`;
  const values = pairs.map(({ slot, value }) => `${slot.label} ${value}`).join(" ");
  const joined = pairs.some(({ slot }) => slot.tail !== undefined) && pairs.length === 1 ? " joined" : "";
  const how = [...new Set(pairs.flatMap((one) => one.how))].map((one) => ` ${one}`).join("");
  return {
    text: `insulation ${voltage} ${values}${joined}${how}`,
    ...(given ? {} : { assumed: `Insulation was tested at ${usual} V where no voltage is given.` }),
  };
}

function studyOf({ boards }: Installation, { board, way }: SlotPlace) {
  const place = boards.find(({ board: one }) => one.head.name === board);
  const found = place?.board.ways.find(({ id }) => id === way);
  return place && found && studyWay(found, place.context);
}

/** A segment of a file with what it becomes. */
interface ChangedSegment {
  readonly segment: Segment;
  readonly text: string;
}

/** The texts of the segments that the new blocks are written into. */
export function changedSegments(
  installation: Installation,
  blocks: readonly NewBlock[],
  holding: (segment: Segment) => Document | undefined,
): ChangedSegment[] {
  const byPlace = [...Map.groupBy(blocks, ({ place }) => placeName(place)).values()];
  return byPlace.flatMap((group): ChangedSegment[] => {
    const [first] = group;
    const target = first && targetOf(installation, first.place);
    const document = target && holding(target.segment);
    if (!target || !document) return [];
    const lines = group.flatMap((one) => one.lines);
    const edit = editOf(target, lines);
    const text =
      target.where === "inside" ? written(document, target.segment, [edit]) : behind(document, target.segment, edit);
    return [{ segment: target.segment, text }];
  });
}

/** The segment with new lines behind it, laid out in the file's style; all that was there stays as it is. */
function behind({ segments }: Document, segment: Segment, edit: TextEdit): string {
  const breaks = segment.text.includes("\r\n") ? edit.text.replace(/\r?\n/g, "\r\n") : edit.text;
  const text = applyEdits(segment.text, [{ ...edit, text: breaks }]);
  const offset = segments.slice(0, segments.indexOf(segment)).reduce((sum, one) => sum + one.text.length, 0);
  const whole = documentOf(segments.map((one) => (one === segment ? text : one.text)).join(""));
  const [from, to] = [offset + segment.text.length, offset + text.length];
  const own = (formatDocument(whole)?.edits ?? [])
    .filter(({ start, end }) => start >= from && end <= to)
    .map((one) => ({ ...one, start: one.start - offset, end: one.end - offset }));
  return applyEdits(text, own);
}

interface Target {
  readonly segment: Segment;
  /** Before the brace that closes its block, or behind all of it. */
  readonly where: "inside" | "behind";
}

function targetOf({ boards, supply, head }: Installation, { board, way }: SlotPlace): Target | undefined {
  if (board === undefined) {
    const line = head.facts.one("supply");
    return supply && line ? { segment: line.segment, where: "inside" } : undefined;
  }
  const place = boards.find(({ board: one }) => one.head.name === board);
  if (!place) return undefined;
  if (way !== undefined) {
    const found = place.board.ways.find(({ id }) => id === way);
    return found && { segment: found.segment, where: "inside" };
  }
  const own = place.board.segments.filter(({ word }) => word !== "way");
  const until = place.board.segments.findIndex(({ word }) => word === "way");
  const before = until < 0 ? own.slice(0, -1) : place.board.segments.slice(0, until);
  const last = before.at(-1) ?? own[0];
  return last && { segment: last, where: "behind" };
}

function editOf({ segment, where }: Target, lines: readonly string[]): TextEdit {
  const { text } = segment;
  const block = lines.map((line) => `    ${line}\n`).join("");
  if (where === "behind") {
    const at = text.length;
    return { start: at, end: at, text: text.endsWith("\n") ? block : `\n${block}` };
  }
  const statement = parse(text).statements.find((one) => one.block !== undefined) ?? parse(text).statements[0];
  const close = statement?.block?.close;
  if (!close) {
    const end = text.trimEnd().length;
    return { start: end, end, text: ` {\n${block}}` };
  }
  const start = text.lastIndexOf("\n", close.startOffset - 1) + 1;
  const alone = text.slice(start, close.startOffset).trim() === "";
  return alone
    ? { start, end: start, text: block }
    : { start: close.startOffset, end: close.startOffset, text: `\n${block}` };
}
