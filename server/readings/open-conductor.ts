/** Readings so high that a protective conductor cannot be whole, whatever else closes the path. */

import type { WayStudy } from "../circuit/way.ts";
import { deadTestPractice } from "../tables/dead-test-practice.ts";

const { openLeast } = deadTestPractice;

/** Whether no cable of a circuit comes to so many Ω of line and protective conductor, nor this one by its length. */
export const isBeyondCable = ({ expectedR1R2 }: WayStudy, value: number): boolean =>
  value >= openLeast.value && !(expectedR1R2 && 2 * expectedR1R2.value > openLeast.value);

/** Whether a loop of a TN circuit can only have come back through other metal or the ground. */
export const isOpenLoop = (study: WayStudy, Zs: number): boolean =>
  study.supply.earthing?.startsWith("TN") === true && isBeyondCable(study, Zs - (study.boardImpedance?.value ?? 0));
