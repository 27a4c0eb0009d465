/** The blocks of tests that readings become, in the words of the language. */
import { studyWay } from "../circuit/way.ts";
import type { Installation } from "../model/installation.ts";
import { placeName, type Slot, type SlotPlace, usualVoltage } from "./slots.ts";

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

export interface Misfit {
  readonly source: string;
  readonly why: string;
}

/** A reading that has its place, as it will be written. */
export interface Fitting {
  readonly incoming: Incoming;
  readonly slot: Slot;
  readonly value: string;
  /** How it was measured, as it was stated behind the value. */
  readonly how: readonly string[];
}

export interface NewBlock {
  readonly place: SlotPlace;
  readonly lines: readonly string[];
}

interface Made {
  readonly blocks: NewBlock[];
  readonly fresh: number;
  readonly misfits: Misfit[];
  readonly assumed: string[];
}

/** One block for what was read at one place on one day with the same instruments by the same person. */
export function blocksOf(installation: Installation, fitting: readonly Fitting[]): Made {
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

/** A test voltage is no reading. */
export const isVoltage = ({ slot }: Fitting): boolean => slot.line === "insulation" && slot.label === "at";
