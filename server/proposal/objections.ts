/**
 * What the checks of the design object to in a candidate besides what the criteria calculate: how it is made for where it
 * runs, and what of its conductors does not go with its device. They are asked themselves, so that none is written twice.
 */

import cableDoesNotExist from "../rules/design/cable-does-not-exist.ts";
import cableNotForGround from "../rules/design/cable-not-for-ground.ts";
import neutralBelowDevice from "../rules/design/neutral-below-device.ts";
import ringCableSize from "../rules/design/ring-cable-size.ts";
import ringCapacity from "../rules/design/ring-capacity.ts";
import singleCoreInSteel from "../rules/design/single-core-in-steel.ts";
import singlesOutsideContainment from "../rules/design/singles-outside-containment.ts";
import { type Finding, findingOf, type WayRule } from "../rules/frame/rule.ts";
import type { Criterion } from "./verdict.ts";

const judges: readonly WayRule[] = [
  singlesOutsideContainment,
  cableNotForGround,
  singleCoreInSteel,
  cableDoesNotExist,
  neutralBelowDevice,
  ringCableSize,
  ringCapacity,
];

export const objections: Criterion = (trial) => {
  const found: Finding[] = [];
  for (const rule of judges) rule.check(trial, (spot, report) => found.push(findingOf(rule, spot, report)), found);
  const first = found.find(({ severity }) => severity !== "information");
  if (!first) return undefined;
  return {
    title: "Kind of cable",
    holds: false,
    text: first.message,
    steps: [],
    ...(first.source ? { source: first.source } : {}),
  };
};
