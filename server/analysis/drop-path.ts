/** Voltage drop from the origin along the feeders to a board, and to the end of a circuit. */
import { type Calculated, dropLimit } from "../calc/index.ts";
import { percent, step } from "../calc/result.ts";
import { combine, fromFormula } from "../tables/source.ts";
import { demandOf } from "./demand.ts";
import { type CableDrop, cableDrop } from "./drop.ts";
import { keptWith } from "./kept.ts";
import { type BoardNode, keptInPlace, studiesOn } from "./network.ts";
import type { WayStudy } from "./way.ts";

/** The drop up to a board, % of the nominal voltage. */
export interface BoardDrop extends CableDrop {
  /** Whether every feeder on the way could be reckoned: otherwise it is at least as much. */
  readonly whole: boolean;
  /** Whether the feeders' currents are stated, or reckoned with diversity. */
  readonly certain: boolean;
  /** The feeders on the way, from the origin, with what each takes. */
  readonly feeders: readonly { readonly study: WayStudy; readonly drop: Calculated }[];
}

const nothing: Calculated = { value: 0, unit: "%", steps: [], source: { ref: "", standing: "published" } };
const atOrigin: BoardDrop = { drop: nothing, corrected: nothing, whole: true, certain: true, feeders: [] };

export const boardDrop = keptWith((node: BoardNode): BoardDrop => {
  const { parent, feeder, board } = node;
  if (!parent)
    return board.head.facts.one("fed-from")?.args.from.value === "supply" ? atOrigin : { ...atOrigin, whole: false };
  const above = boardDrop(parent);
  const current = feeder && feederCurrent(node, feeder);
  const own = feeder && current && cableDrop(feeder, current.value);
  if (!feeder || !current || !own || "missing" in own) return { ...above, whole: false };
  const titled = (drop: Calculated): Calculated => ({
    ...drop,
    steps: [step(`feeder to board ${board.head.name}`, "", ""), ...current.steps, ...drop.steps],
  });
  return {
    drop: added(above.drop, titled(own.drop)),
    corrected: added(above.corrected, titled(own.corrected)),
    whole: above.whole,
    certain: above.certain && current.certain,
    feeders: [...above.feeders, { study: feeder, drop: own.drop }],
  };
});

/** What a feeder carries: its stated design current, or the demand of the board it feeds. */
export function feederCurrent(
  node: BoardNode,
  feeder: WayStudy,
): (Calculated & { readonly certain: boolean }) | undefined {
  const stated = feeder.designCurrent;
  if (stated) return { value: stated.value, unit: "A", steps: [], source: nothing.source, certain: true };
  const demand = demandOf(node);
  return demand && { ...demand.greatest, certain: demand.diverse };
}

/** One drop after another, both in %. */
export function added(above: Calculated, own: Calculated): Calculated {
  if (above.steps.length === 0) return own;
  const value = above.value + own.value;
  const steps = [
    ...above.steps,
    ...own.steps,
    step("together", `${percent(above.value)} + ${percent(own.value)}`, percent(value)),
  ];
  return { value, unit: "%", steps, source: fromFormula(combine(above.source, own.source)) };
}

/** A final circuit with the drop of its own cable and the drop advised from the origin to its end. */
export interface CircuitDrop extends CableDrop {
  readonly study: WayStudy;
  readonly limit: Calculated;
  /** What its own cable leaves of the limit, %. */
  readonly room: number;
}

/** The final circuits of a board whose drop can be reckoned, the one with the least room first. */
export const circuitDrops = keptInPlace((place): readonly CircuitDrop[] =>
  studiesOn(place)
    .flatMap((study) => {
      const found = circuitDrop(study);
      return found ? [found] : [];
    })
    .toSorted((one, other) => one.room - other.room),
);

/** The drop of a final circuit, with its own size of cable or another. */
export function circuitDrop(study: WayStudy, size?: number): CircuitDrop | undefined {
  const Ib = study.isFinal ? study.designCurrent : undefined;
  // Extra-low voltage has limits of its own, and a generator's cable raises the voltage.
  if (!Ib || ["selv", "pv", "storage"].some((use) => study.uses.has(use))) return undefined;
  const own = cableDrop(study, Ib.value, size);
  if ("missing" in own) return undefined;
  const limit = dropLimitOf(study);
  return { study, ...own, limit, room: limit.value - own.drop.value };
}

/** 3 % for lighting and 5 % for the rest; more on a supply of one's own. */
export function dropLimitOf({ uses, context }: Pick<WayStudy, "uses" | "context">): Calculated {
  const lighting = uses.has("lighting") || uses.has("emergency-lighting");
  const source = context.supply?.one("source")?.args.of.value ?? "public";
  return dropLimit(lighting ? "lighting" : "other", source);
}
