/**
 * Readings that come back from a sheet, a table or a meter become new dated blocks. Nothing that is recorded is
 * overwritten: what is there already is counted, what contradicts it or fits nowhere is listed with its reason.
 */
import type { Installation } from "../model/installation.ts";
import { quantityOf, readingAt } from "../model/values.ts";
import { printAddress } from "../readings/address.ts";
import { type Entry, entriesOfInstallation } from "../readings/entries.ts";
import { factsOf } from "../readings/instruments.ts";
import { isDay } from "../text/days.ts";
import { blocksOf, type Fitting, type Incoming, isVoltage, type Misfit, type NewBlock } from "./blocks.ts";
import { placeName, type Slot, type SlotPlace, slotName, slotsOf } from "./slots.ts";
import { type ReadOptions, readValue } from "./value.ts";

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
  if (!isDay(one.on)) return { failure: `“${one.on}” is no day: write it as 2026-03-05` };
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
