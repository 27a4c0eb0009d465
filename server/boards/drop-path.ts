/** Voltage drop from the origin along the feeders to a board, and to the end of a circuit. */

import { sumStep } from "../calc/reproducible.ts";
import { type Calculated, percent, step } from "../calc/result.ts";
import { dropLimit } from "../calc/voltage-drop.ts";
import { type CableDrop, cableDrop } from "../circuit/drop.ts";
import { memoByObject, memoOfBoard, memoOfWhole } from "../circuit/kept.ts";
import { startingCurrent } from "../circuit/motor-start.ts";
import type { WayStudy } from "../circuit/way.ts";
import type { Way } from "../model/file.ts";
import { asWritten, combine, fromFormula, summed } from "../tables/source.ts";
import { type Line, linesOf } from "./circuit-load.ts";
import { lineOf } from "./demand.ts";
import { feederDrop, linesBehind } from "./drop-feeder.ts";
import type { BoardNode, StudiedBoard } from "./network.ts";

/** The drop up to a board, % of the nominal voltage: on the line that drops most. */
export interface BoardDrop extends CableDrop {
  /** The same line by line. */
  readonly lines: ReadonlyMap<Line, CableDrop>;
  /** Whether every feeder on the way could be calculated: otherwise it is at least as much. */
  readonly whole: boolean;
  /** Whether the feeders' currents are stated, or calculated with diversity. */
  readonly certain: boolean;
  /** The feeders on the way, from the origin, with what each takes. */
  readonly feeders: readonly { readonly study: WayStudy; readonly drop: Calculated }[];
}

const nothing: Calculated = { value: 0, unit: "%", steps: [], source: asWritten };
const none: CableDrop = { drop: nothing, corrected: nothing };

export const boardDrop = memoOfWhole((node: BoardNode): BoardDrop => {
  const { parent, feeder, board } = node;
  if (!parent) return atOrigin(node);
  const above = boardDrop(parent);
  const own = feederDrop(node);
  const before = (line: Line): CableDrop => above.lines.get(feeder ? lineAbove(node, feeder, line) : line) ?? above;
  if (!feeder || "missing" in own) {
    const lines = new Map(linesBehind(node).map((line) => [line, before(line)] as const));
    return { ...above, lines, whole: false };
  }
  const title = step(`feeder to board ${board.head.name}`, "", "");
  const first = own.equal ? [title, ...own.current.steps] : [title];
  const titled = (drop: Calculated): Calculated => ({ ...drop, steps: [...first, ...drop.steps] });
  const lines = new Map(
    [...own.lines].map(([line, found]) => {
      const drop = added(before(line).drop, titled(found.drop));
      return [line, { drop, corrected: added(before(line).corrected, titled(found.corrected)) }] as const;
    }),
  );
  const worst = [...lines.values()].reduce((most, one) => (one.drop.value > most.drop.value ? one : most), none);
  return {
    ...worst,
    lines,
    whole: above.whole,
    certain: above.certain && own.current.certain,
    feeders: [...above.feeders, { study: feeder, drop: own.worst.drop }],
  };
});

function atOrigin(node: BoardNode): BoardDrop {
  const whole = node.board.head.facts.one("fed-from")?.args.from.value === "supply";
  const lines = new Map(linesBehind(node).map((line) => [line, none] as const));
  return { ...none, lines, whole, certain: true, feeders: [] };
}

/** The line of the board above that a line of this board comes from. */
export function lineAbove(node: BoardNode, feeder: WayStudy, line: Line): Line {
  if (line !== "L") return line;
  const [only, ...others] = linesOf(feeder);
  return (others.length === 0 ? only : lineOf(node)) ?? line;
}

/** The drop up to a board as a circuit of it feels it: on its own line, or on the worst. */
export function dropAbove(above: BoardDrop, study: WayStudy): CableDrop {
  const [line, ...others] = linesOf(study);
  return (line && others.length === 0 ? above.lines.get(line) : undefined) ?? above;
}

/** One drop after another, both in %. */
export function added(above: Calculated, own: Calculated): Calculated {
  if (above.steps.length === 0) return own;
  const value = above.value + own.value;
  const steps = [...above.steps, ...own.steps, sumStep("together", [above.value, own.value], percent, value)];
  return { value, unit: "%", steps, source: fromFormula(summed(above, own)) };
}

/** A final circuit with the drop of its own cable and the drop advised from the origin to its end. */
export interface CircuitDrop extends CableDrop {
  readonly study: WayStudy;
  readonly limit: Calculated;
  /** What its own cable leaves of the limit, %. */
  readonly room: number;
}

/** What a circuit leaves to the feeders before it, %. */
interface DropRoom {
  readonly way: Way;
  readonly room: number;
  /** The drop advised from the origin to its end, %. */
  readonly limit: number;
}

const roomOf = memoByObject((study: WayStudy): DropRoom | undefined => {
  const found = circuitDrop(study);
  return found && { way: study.way, room: found.room, limit: found.limit.value };
});

/** The final circuits of a board whose drop can be calculated, the one with the least room first. */
export const dropRooms = memoOfBoard(({ studies }: StudiedBoard): readonly DropRoom[] =>
  studies.flatMap((study) => roomOf(study) ?? []).toSorted((one, other) => one.room - other.room),
);

/** The drop of a final circuit, with its own size of cable or another. */
export function circuitDrop(study: WayStudy, size?: number): CircuitDrop | undefined {
  const Ib = study.isFinal ? study.designCurrent : undefined;
  // Extra-low voltage has limits of its own, and a generator's cable raises the voltage.
  if (!Ib || study.uses.has("selv") || study.uses.has("pv") || study.uses.has("storage")) return undefined;
  const own = cableDrop(study, Ib.value, size);
  if ("missing" in own) return undefined;
  const limit = dropLimitOf(study);
  return { study, ...own, limit, room: limit.value - own.drop.value };
}

/**
 * The drop from the origin while the motor of a circuit starts, %: its own cable with the starting current, which is all of
 * its impedance whatever the power factor then, and the feeders as they are loaded.
 */
export function startDrop(study: WayStudy, above: Calculated): Calculated | undefined {
  const start = study.isFinal ? startingCurrent(study) : undefined;
  const own = start && cableDrop(study, start.value);
  if (!start || !own || "missing" in own) return undefined;
  const drop = {
    ...own.drop,
    steps: [...start.steps, ...own.drop.steps],
    source: combine(own.drop.source, start.source),
  };
  return added(above, drop);
}

/** 3 % for lighting and 5 % for the rest; more on a supply of one's own. */
export function dropLimitOf({ uses, context }: Pick<WayStudy, "uses" | "context">): Calculated {
  const lighting = uses.has("lighting") || uses.has("emergency-lighting");
  const source = context.supply?.one("source")?.args.of.value ?? "public";
  return dropLimit(lighting ? "lighting" : "other", source);
}
