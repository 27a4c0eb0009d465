/** Electrodes of an installation, of a board or of a circuit, and the RCDs that rely on them. */

import { rcdLoopLimit } from "../calc/rcd-loop-limit.ts";
import type { Calculated } from "../calc/result.ts";
import { type Rcd, studyWay, type WayStudy } from "../circuit/way.ts";
import type { Context, Installation } from "../model/installation.ts";
import { type Fact, type Quantity, quantityOf, type Reading } from "../model/values.ts";

interface Weakest {
  readonly rcd: Rcd;
  readonly limit: Calculated;
}

/** Of the RCDs that stand nearest to a load, the one that needs the best electrode, and the most it may have. */
function weakestOf(studies: readonly WayStudy[]): Weakest | undefined {
  const nearest = studies.flatMap((study) => (study.isSpare ? [] : study.rcds.slice(0, 1)));
  const [rcd] = nearest.toSorted((one, other) => other.sensitivity - one.sensitivity);
  const limit = rcd && rcdLoopLimit(rcd.sensitivity);
  return rcd && limit && { rcd, limit };
}

/** An electrode that was measured, and what relies on it. */
export interface ElectrodeStudy {
  readonly fact: Fact & { readonly args: { readonly value: Reading } };
  readonly reading: Quantity;
  /** Nothing where no RCD relies on it. */
  readonly weakest: Weakest | undefined;
}

const studyOf = (
  fact: (Fact & { readonly args: { readonly value: Reading } }) | undefined,
  studies: readonly WayStudy[],
) => {
  const reading = fact && quantityOf(fact.args.value);
  return fact && reading ? [{ fact, reading, weakest: weakestOf(studies) }] : [];
};

/** The limit of the electrode that the circuits of some boards rely on; nothing where no RCD does. */
export const electrodeLimit = (studies: readonly WayStudy[]): Calculated | undefined => weakestOf(studies)?.limit;

/** The ways of an installation that rely on its own electrode. */
export const relyingOnOrigin = ({ supply, boards }: Pick<Installation, "supply" | "boards">): WayStudy[] =>
  boards
    .flatMap(({ board, context }) => board.ways.map((way) => studyWay(way, context)))
    .filter((study) => study.supply.earthingFact === supply?.one("earthing"));

/** The installation's own. Circuits and boards with electrodes of their own do not rely on it. */
export function originElectrode({ supply, boards }: Installation): ElectrodeStudy[] {
  const tt = supply?.one("earthing")?.args.system.value === "TT";
  const electrode = supply?.one("electrode");
  return studyOf(electrode, tt && electrode ? relyingOnOrigin({ supply, boards }) : []);
}

/** Those of a board and of its ways. What a board feeds further on is left to the loops that are read there. */
export function ownElectrodes({
  context,
  studies,
}: {
  readonly context: Context;
  readonly studies: readonly WayStudy[];
}): ElectrodeStudy[] {
  const earthing = context.board.facts.one("earthing");
  const shared = studies.filter((study) => earthing !== undefined && study.supply.earthingFact === earthing);
  return [
    ...studyOf(context.board.facts.one("electrode"), shared),
    ...studies.flatMap((study) => studyOf(study.facts.one("electrode"), study.facts.has("earthing") ? [study] : [])),
  ];
}
