/** Fault currents against the loop impedance of the same place. */
import { fallsShort } from "../calc/compare.ts";
import { faultCurrent } from "../calc/fault-current.ts";
import { practiceOf } from "../calc/practice.ts";
import type { Calculated } from "../calc/result.ts";
import { boardImpedance } from "../circuit/board-impedance.ts";
import { boardFaults, boardFaultsAtMost, type FaultAt, supplyFaults, supplyFaultsAtMost } from "../circuit/faults.ts";
import { memoOfContext } from "../circuit/kept.ts";
import { type ExactReading, originSupply, type SupplyStudy, studySupply } from "../circuit/supply.ts";
import type { Context, Installation } from "../model/installation.ts";
import { isThreePhase } from "../model/three-lines.ts";
import { originImpedance } from "./loop.ts";

/** One place where both a fault current and a loop impedance are noted. */
export interface FaultPlace {
  readonly name: string;
  readonly faults: readonly FaultAt[];
  /** Of these the meter showed nothing. */
  readonly atMost: readonly FaultAt[];
  readonly loop: ExactReading;
  /** U0 / Z, the earth fault current the loop allows. */
  readonly byLoop: Calculated;
  readonly threePhase: boolean;
  /** Through an electrode, or by a line of the earthing that cannot be read. */
  readonly tt: boolean;
  readonly combined: boolean;
}

type Earthing = Pick<SupplyStudy, "U0"> & Pick<FaultPlace, "tt" | "combined">;

/** The origin, where it has both figures. */
export function faultPlaceAtOrigin({ supply, boards }: Installation): readonly FaultPlace[] {
  if (boards.length === 0) return [];
  const known = originSupply(supply);
  const noted = { faults: supplyFaults(supply), atMost: supplyFaultsAtMost(supply) };
  return faultPlace("the origin", ofEarthing(known, supply), noted, originImpedance({ supply }), known.threePhase);
}

/** A board, where it has both figures of its own. */
export const faultPlaceAtBoard = memoOfContext((context: Context): readonly FaultPlace[] => {
  const { name, facts } = context.board;
  const loop = boardImpedance(context);
  const own = loop?.name === "Zdb" ? loop : undefined;
  const noted = { faults: boardFaults(facts), atMost: boardFaultsAtMost(facts) };
  const earthing = ofEarthing(studySupply(context), context.supply);
  return faultPlace(`board ${name}`, earthing, noted, own, isThreePhase(context));
});

const ofEarthing = ({ U0, earthing }: SupplyStudy, supply: Context["supply"]): Earthing => ({
  U0,
  tt: earthing === "TT" || (earthing === undefined && supply?.isUnread("earthing") === true),
  combined: earthing === "TN-C-S" || earthing === "TN-C",
});

function faultPlace(
  name: string,
  { U0, tt, combined }: Earthing,
  noted: Pick<FaultPlace, "faults" | "atMost">,
  loop: ExactReading | undefined,
  threePhase: boolean,
): FaultPlace[] {
  if (!loop || loop.value <= 0 || [...noted.faults, ...noted.atMost].length === 0) return [];
  return [{ name, ...noted, loop, byLoop: faultCurrent(U0, loop.value), threePhase, tt, combined }];
}

/** The earth fault current with the uncertainty of a loop tester on the side asked for, A: what counts where loops are small. */
export function byQuestionableLoop({ byLoop, loop }: FaultPlace, side: "less" | "more"): number {
  const uncertainty = practiceOf("loop-below").value;
  const impedance = side === "less" ? loop.value + uncertainty : Math.max(loop.value - uncertainty, uncertainty / 2);
  return (byLoop.value * loop.value) / impedance;
}

/** Whether a three-phase place has the figure of one phase: what flows between lines is greater. */
export function singlePhaseFigure(place: FaultPlace) {
  const { faults, threePhase, tt } = place;
  const least = byQuestionableLoop(place, "less");
  const Ipf = faults.find(({ name }) => name === "Ipf");
  if (!threePhase || tt || !Ipf) return undefined;
  const share = practiceOf("fault-three");
  const PSCC = faults.find(({ name }) => name === "PSCC");
  const single = PSCC && PSCC.value > least && PSCC.value < Ipf.value ? PSCC.value : least;
  return fallsShort(Ipf.value, share.value * single) ? { Ipf, single, share } : undefined;
}

/** The nearest board upstream with fault currents of its own, or the origin. */
export function upstreamFaults(context: Context): FaultAt[] {
  for (const { board } of context.upstream) {
    const found = boardFaults(board.facts);
    if (found.length > 0) return found;
  }
  return supplyFaults(context.supply);
}
