/** The cables a fault current goes through between two boards. */

import type { Conductor } from "../calc/circuit-network.ts";
import { operatingResistance } from "../calc/conductor-resistance.ts";
import type { FaultCable } from "../calc/fault-path.ts";
import { addition, reproducible } from "../calc/reproducible.ts";
import { type Calculated, ohms, plain, type Step } from "../calc/result.ts";
import { operatingFactorOf } from "../circuit/cpc.ts";
import { memoByObject } from "../circuit/kept.ts";
import { reactanceOf } from "../circuit/reactance.ts";
import type { WayStudy } from "../circuit/way.ts";
import { expectedConductor } from "../circuit/way-resistance.ts";
import { combine, fromFormula } from "../tables/source.ts";
import type { BoardNode } from "./network.ts";

interface FeederTo {
  readonly study: WayStudy;
  readonly board: string;
}

/** The feeders between two boards, the nearest to the origin first; nothing where one is not known. */
export function feedersTo(node: BoardNode, from: BoardNode): readonly FeederTo[] | undefined {
  const found: FeederTo[] = [];
  // Step by step: there may be hundreds of boards in a row.
  for (let at: BoardNode | undefined = node; at !== from; at = at.parent) {
    if (!at?.feeder) return undefined;
    found.push({ study: at.feeder, board: at.board.head.name });
  }
  return found.reverse();
}

export function cablesOf(
  feeders: readonly FeederTo[],
  of: readonly Conductor[],
  state: "cold" | "hot",
): FaultCable[] | undefined {
  const cables: FaultCable[] = [];
  for (const { study, board } of feeders) {
    const resistance = feederResistance(study, of, state);
    if (!resistance) return undefined;
    cables.push({ name: `the feeder to board ${board}`, resistance, reactance: reactanceOf(study, of) });
  }
  return cables;
}

type Resistances = Map<string, Calculated | undefined>;

const ofFeeder = memoByObject((_: WayStudy): Resistances => new Map());

/** A feeder lies on the way to every board behind it. */
function feederResistance(study: WayStudy, of: readonly Conductor[], state: "cold" | "hot"): Calculated | undefined {
  const kept = ofFeeder(study);
  const key = [state, ...of].join(" ");
  if (!kept.has(key)) kept.set(key, resistanceOf(study, of, state));
  return kept.get(key);
}

/** Resistance of conductors of a way in series; of a ring, to its middle or to the end of a spur that lies further. */
export function resistanceOf(study: WayStudy, of: readonly Conductor[], state: "cold" | "hot"): Calculated | undefined {
  const parts = of.map((which) => expectedConductor(study, which));
  const factor = operatingFactorOf(study.cable, of);
  if (!parts.every((part) => part !== undefined) || !factor) return undefined;
  const whole = parts.reduce((sum, { value }) => sum + value, 0);
  const { share, name } = study.isRing ? ringEnd(study) : { share: 1, name: "cold" };
  const value = whole * share;
  const steps = [...parts.flatMap((part) => part.steps), endStep(name, parts, share, value)];
  const source = fromFormula(combine(...parts.map((part) => part.source)));
  const cold: Calculated = { value, unit: "Ω", steps, source };
  return state === "cold" ? cold : operatingResistance(cold, factor);
}

/** The sum of conductors in series, or the share of it that lies between the board and a place on a ring. */
function endStep(name: string, parts: readonly Calculated[], share: number, value: number): Step {
  const shown = parts.map((part) => [part.value, ohms] as const);
  if (share === 1) return reproducible(name, shown, addition, [value, ohms]);
  if (share === 1 / 4)
    return reproducible(
      name,
      shown,
      {
        write: (...texts) => `(${addition.write(...texts)}) / 4`,
        compute: (...values) => addition.compute(...values) / 4,
      },
      [value, ohms],
    );
  return reproducible(
    name,
    [...shown, [share, (one) => plain(one, 3)]],
    {
      write: (...texts) => `(${addition.write(...texts.slice(0, -1))}) × ${texts.at(-1)}`,
      compute: (...values) => addition.compute(...values.slice(0, -1)) * (values.at(-1) ?? 1),
    },
    [value, ohms],
  );
}

/**
 * What of a ring's whole conductors lies between the board and the place furthest from it. In service the legs are in
 * parallel: at x of the way round it is x × (1 − x) of the whole, a quarter at most, and a spur adds its own length.
 */
function ringEnd({ runs }: WayStudy): { readonly share: number; readonly name: string } {
  let end = { share: 1 / 4, name: "cold, to the middle of the ring" };
  if (!runs?.closed || runs.mainLength <= 0) return end;
  for (const { name: place, spur } of runs.places.values()) {
    const origin = spur && (spur.from === runs.board ? 0 : runs.places.get(spur.from)?.fromBoard);
    if (!spur || origin === undefined) continue;
    const x = origin / runs.mainLength;
    const share = x * (1 - x) + spur.length / runs.mainLength;
    if (share > end.share) end = { share, name: `cold, to ${place.value} on a spur: x × (1 − x) + spur / ring` };
  }
  return end;
}
