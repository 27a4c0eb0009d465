/**
 * What may be entered of a place though the plan of tests does not call for it: every reading that the language has a
 * word for, at each point, of each RCD, by waveform, half cycle and multiple. It is made of the vocabulary, so that a new
 * word for a reading can be entered without another line here.
 */
import type { Param, WordRow } from "../../grammar/params.ts";
import { quantities } from "../../grammar/quantities.ts";
import { readArgs } from "../../grammar/readings.ts";
import { type BlockKind, rowOf, vocabulary } from "../../grammar/vocabulary.ts";
import { rcdMultiples } from "../calc/rcd-time.ts";
import { milliamps, plain } from "../calc/result.ts";
import type { Rcd } from "../circuit/way.ts";
import { writtenName } from "../readings/planned.ts";
import { thingsOf } from "../readings/reading-name.ts";
import type { Slot, SlotPlace } from "./slot.ts";

interface PossibleAt {
  readonly kind: BlockKind;
  readonly block: Slot["block"];
  readonly place: SlotPlace;
  readonly points: readonly string[];
  readonly rcds: readonly Rcd[];
}

export function possibleSlots(at: PossibleAt): Slot[] {
  const rows = Object.entries<WordRow>(vocabulary[at.kind]).filter(
    ([, { reads, entry }]) => reads && entry !== "apart",
  );
  return rows.flatMap(([word, row]) => slotsOfRow(word, row, at));
}

/** How a line is called, how it begins, and what stands behind its value. */
interface Line {
  readonly name: string;
  readonly head: string;
  readonly tail?: string;
}

function slotsOfRow(word: string, row: WordRow, at: PossibleAt): Slot[] {
  const read = new Set(readArgs(row).map(({ name }) => name));
  const instead = row.reads?.instead ?? [];
  const choices = Object.entries(row.params).flatMap(([name, { accepts, label }]) =>
    accepts.kind === "choice" && !read.has(name) && label === undefined && !row.reads?.key.includes(name)
      ? [{ name, words: Object.keys(accepts.choices) }]
      : [],
  );
  const wordsOf = (stand: boolean): string[] =>
    choices.flatMap(({ name, words }) => (instead.includes(name) === stand ? words : []));
  const [words, qualifiers] = [wordsOf(true), wordsOf(false)];
  return linesOf(word, row, at).flatMap(({ name, head, tail }) =>
    Object.entries(row.params).flatMap(([arg, param]): Slot[] => {
      const taken = read.has(arg) && !hasOwnLine(param, row, at.kind) && takenBy(param);
      if (!taken) return [];
      return [
        {
          place: at.place,
          block: at.block,
          line: name,
          ...(head === name ? {} : { head }),
          label: param.label ?? "",
          ...taken,
          ...(words.length > 0 ? { words } : {}),
          ...(tail === undefined ? {} : { tail }),
          ...(qualifiers.length > 0 ? { qualifiers } : {}),
          // A sheet to fill in shows them folded away.
          ...(row.entry === "usual" && tail === undefined ? { offered: true } : {}),
        },
      ];
    }),
  );
}

/** What may stand beside another reading of the same thing, and is entered on the line that the block has for it. */
function hasOwnLine({ label }: Param, row: WordRow, kind: BlockKind): boolean {
  const own = label === undefined ? undefined : rowOf(kind, label);
  return own?.reads !== undefined && thingsOf(own).join() === thingsOf(row).join();
}

/** A verdict is one of its words, and a figure is written in the usual unit of its quantity. */
function takenBy({ accepts }: Param): Pick<Slot, "unit" | "words"> | undefined {
  if (accepts.kind === "choice") return { unit: "", words: Object.keys(accepts.choices) };
  if (accepts.kind !== "quantity") return undefined;
  const [unit] = quantities[accepts.of].units;
  return { unit: unit as Slot["unit"], words: [] };
}

function linesOf(word: string, row: WordRow, { points, rcds }: PossibleAt): Line[] {
  const keys = (row.reads?.key ?? []).flatMap((name) => row.params[name] ?? []);
  const kinds = keys.map(({ accepts }) => (accepts.kind === "ref" ? accepts.names : accepts.kind));
  const things = kinds.includes("rcd")
    ? rcds.map((rcd) => whichRcd(rcd, keys))
    : kinds.includes("point")
      ? points.map((point) => [writtenName(point)])
      : kinds.length === 0
        ? [[]]
        : [];
  const multiples = kinds.includes("multiple") ? rcdMultiples.map((one) => [`${plain(one)}x`]) : [[]];
  const ways = keys.reduce<string[][]>(
    (tails, { accepts }) =>
      accepts.kind === "choice"
        ? tails.flatMap((tail) => [tail, ...Object.keys(accepts.choices).map((one) => [...tail, one])])
        : tails,
    [[]],
  );
  return things.flatMap((which) =>
    multiples.flatMap((multiple) => ways.map((tail) => withTail([word, ...which, ...multiple], tail))),
  );
}

/** How a line tells its RCD from others: by its point or its name, and by its rating. */
function whichRcd({ name, point, sensitivity }: Rcd, keys: readonly Param[]): string[] {
  const atPoint = keys.find(({ accepts }) => accepts.kind === "ref" && accepts.names === "point");
  const byRating = keys.some(({ accepts }) => accepts.kind === "quantity" && accepts.of === "sensitivity");
  const which = atPoint
    ? point === undefined
      ? []
      : [atPoint.label ?? "", writtenName(point)]
    : name === undefined
      ? []
      : [writtenName(name)];
  return [...which, ...(byRating ? [milliamps(sensitivity)] : [])];
}

/** How an address calls the line, where a point stands without its label. */
function withTail(head: readonly string[], tail: readonly string[]): Line {
  const begin = head.join(" ");
  return tail.length === 0
    ? { name: begin, head: begin }
    : { name: [begin, ...tail].join(" "), head: begin, tail: tail.join(" ") };
}
