/** The cables a fault current goes through between two boards. */

import type { Conductor } from "../calc/circuit-network.ts";
import { type Calculated, type FaultCable, operatingResistance } from "../calc/index.ts";
import { ohms, step } from "../calc/result.ts";
import { combine, fromFormula } from "../tables/source.ts";
import { operatingFactorOf } from "./cpc.ts";
import type { BoardNode } from "./network.ts";
import { expectedConductor, type WayStudy } from "./way.ts";

export interface FeederTo {
  readonly study: WayStudy;
  readonly board: string;
}

/** The feeders between two boards, the nearest to the origin first; nothing where one is not known. */
export function feedersTo(node: BoardNode, from: BoardNode): readonly FeederTo[] | undefined {
  if (node === from) return [];
  const { parent, feeder } = node;
  const before = parent && feedersTo(parent, from);
  return before && feeder && [...before, { study: feeder, board: node.board.head.name }];
}

export function cablesOf(
  feeders: readonly FeederTo[],
  of: readonly Conductor[],
  state: "cold" | "hot",
): FaultCable[] | undefined {
  const cables: FaultCable[] = [];
  for (const { study, board } of feeders) {
    const resistance = resistanceOf(study, of, state);
    if (!resistance) return undefined;
    cables.push({ name: `the feeder to board ${board}`, resistance });
  }
  return cables;
}

/** Resistance of conductors of a way in series; of a ring, to its middle. */
export function resistanceOf(study: WayStudy, of: readonly Conductor[], state: "cold" | "hot"): Calculated | undefined {
  const parts = of.map((which) => expectedConductor(study, which));
  const factor = operatingFactorOf(study.cable, of);
  if (!parts.every((part) => part !== undefined) || !factor) return undefined;
  const whole = parts.reduce((sum, { value }) => sum + value, 0);
  const value = study.isRing ? whole / 4 : whole;
  const numbers = `${study.isRing ? "(" : ""}${parts.map((part) => ohms(part.value)).join(" + ")}${study.isRing ? ") / 4" : ""}`;
  const steps = [...parts.flatMap((part) => part.steps), step("cold", numbers, ohms(value))];
  const cold: Calculated = {
    value,
    unit: "Ω",
    steps,
    source: fromFormula(combine(...parts.map(({ source }) => source))),
  };
  return state === "cold" ? cold : operatingResistance(cold, factor);
}
