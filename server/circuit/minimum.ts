/** The least size of a conductor by what it serves. */

import { minimumSize } from "../calc/minimum-size.ts";
import type { Calculated } from "../calc/result.ts";
import type { WayStudy } from "./way.ts";

const signalling = ["control", "alarms", "data", "selv", "door"];
const lighting = ["lighting", "emergency-lighting", "alarms", "ventilation"];

type UseOfConductor = "signalling" | "lighting" | "power" | "flexible";

/** What Table 52.3 calls the use of a way. Where nothing is said of it, the least that any use allows. */
export function conductorUse({ cable, uses, isFeeder }: WayStudy): UseOfConductor {
  if (cable?.construction === "flex") return "flexible";
  if (isFeeder) return "power";
  const all = [...uses];
  if (all.every((use) => signalling.includes(use))) return "signalling";
  return all.every((use) => lighting.includes(use) || signalling.includes(use)) ? "lighting" : "power";
}

/** The least size of the line conductor, mm² of copper. */
export const leastConductor = (study: WayStudy): Calculated => minimumSize(conductorUse(study));
