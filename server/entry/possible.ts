/**
 * What may be entered of a place though the plan of tests does not call for it: every reading that the language has a
 * word for, at each point, of each RCD, by waveform, half cycle and multiple. It is made of the vocabulary, so that a new
 * word for a reading can be entered without another line here.
 */
import type { Param, WordRow } from "../../grammar/params.ts";
import { type QuantityName, quantities } from "../../grammar/quantities.ts";
import { readArgs } from "../../grammar/readings.ts";
import { type BlockKind, vocabulary } from "../../grammar/vocabulary.ts";
import { milliamps } from "../calc/result.ts";
import type { Rcd } from "../circuit/way.ts";
import { writtenName } from "../readings/planned.ts";
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
  const qualifiers = Object.entries(row.params).flatMap(([name, { accepts, label }]) =>
    accepts.kind === "choice" && !read.has(name) && label === undefined && !row.reads?.key.includes(name)
      ? Object.keys(accepts.choices)
      : [],
  );
  return linesOf(word, row, at).flatMap(({ name, head, tail }) =>
    Object.entries(row.params).flatMap(([arg, param]): Slot[] => {
      const taken = read.has(arg) && !beside(word, arg) && takenBy(param);
      if (!taken) return [];
      return [
        {
          place: at.place,
          block: at.block,
          line: name,
          ...(head === name ? {} : { head }),
          label: param.label ?? "",
          ...taken,
          ...(word === "rcd" ? { words: ["no-trip"] } : {}),
          ...(tail === undefined ? {} : { tail }),
          ...(qualifiers.length > 0 ? { qualifiers } : {}),
          // A sheet to fill in shows them folded away.
          ...(row.entry === "usual" && tail === undefined ? { offered: true } : {}),
        },
      ];
    }),
  );
}

/** What is stated beside another reading has a line of its own: polarity, and the button of an RCD. */
const beside = (word: string, arg: string): boolean =>
  (word === "R1+R2" && arg === "polarity") || (word === "rcd" && arg === "button");

const units: Partial<Record<QuantityName, Slot["unit"]>> = {
  conductor: "Ω",
  loop: "Ω",
  electrode: "Ω",
  fault: "kA",
  tripTime: "ms",
  tripCurrent: "mA",
  leakage: "mA",
  voltage: "V",
};

function takenBy({ accepts }: Param): Pick<Slot, "unit" | "words"> | undefined {
  if (accepts.kind === "choice") return { unit: "", words: Object.keys(accepts.choices) };
  const unit = accepts.kind === "quantity" ? units[accepts.of] : undefined;
  return unit === undefined || !quantities[(accepts as { of: QuantityName }).of] ? undefined : { unit, words: [] };
}

function linesOf(word: string, row: WordRow, { points, rcds, kind }: PossibleAt): Line[] {
  const key = row.reads?.key ?? [];
  if (key.includes("sensitivity")) return rcds.flatMap((rcd) => timesOf(word, rcd, kind));
  if (key.includes("waveform"))
    return rcds.flatMap((rcd) =>
      waveforms.map((waveform) => withTail([word, ...whichOf(rcd, kind)], waveform === "" ? [] : [waveform])),
    );
  if (key.includes("name")) return rcds.map((rcd) => withTail([word, ...whichOf(rcd, kind)], []));
  if (key.includes("point")) return points.map((point) => withTail([word, writtenName(point)], []));
  return key.length === 0 ? [withTail([word], [])] : [];
}

const waveforms = ["", "sinusoidal", "pulsating", "smooth"] as const;
const halves = ["", "from-0", "from-180"] as const;
const multiples = ["0.5x", "1x", "2x", "5x"] as const;

/** A way names an RCD by its point, a board by its name. */
const whichOf = ({ name, point }: Rcd, kind: BlockKind): string[] => {
  if (kind === "live") return point === undefined ? [] : ["at", writtenName(point)];
  return name === undefined ? [] : [writtenName(name)];
};

/** How an address calls the line, where a point stands without its label. */
function timesOf(word: string, rcd: Rcd, kind: BlockKind): Line[] {
  const head = [word, ...whichOf(rcd, kind), milliamps(rcd.sensitivity)];
  return multiples.flatMap((multiple) =>
    waveforms.flatMap((waveform) =>
      halves.map((half) =>
        withTail(
          [...head, multiple],
          [waveform, half].filter((one) => one !== ""),
        ),
      ),
    ),
  );
}

function withTail(head: readonly string[], tail: readonly string[]): Line {
  const begin = head.join(" ");
  return tail.length === 0
    ? { name: begin, head: begin }
    : { name: [begin, ...tail].join(" "), head: begin, tail: tail.join(" ") };
}
