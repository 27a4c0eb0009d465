import { rewrittenAt } from "../circuit/rewritten.ts";
import type { WayStudy } from "../circuit/way.ts";
import { type CableChoice, type DeviceChoice, editsFor } from "./lines.ts";

/**
 * The way as it would read with another device and cable, studied in the same place. What is judged is the text that
 * would be written, by what the checks ask of it, so that a proposal and the checks cannot disagree.
 */
export const trialOf = (study: WayStudy, device: DeviceChoice, cable: CableChoice): WayStudy | undefined =>
  rewrittenAt(study, editsFor(study.way, device, cable));
