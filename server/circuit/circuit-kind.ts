/** What kind of circuit a way is where Part 4 and Part 7 ask. */
import { practiceOf } from "../calc/practice.ts";
import { premisesOf } from "./supply.ts";
import type { WayStudy } from "./way.ts";

/** Extra-low voltage, and the reduced low voltage of sites, protect by the voltage itself. */
export const extraLow = ({ uses, supply }: WayStudy): boolean =>
  supply.kind === "reduced" ||
  supply.U0 <= extraLowVoltage ||
  (uses.size > 0 && [...uses].every((use) => use === "selv"));

const extraLowVoltage = 50;

/** What protects a way where it is not disconnection: its own line, or that of its board. */
const measureOf = ({ facts, context }: WayStudy) =>
  (facts.one("protective-measure") ?? context.board.facts.one("protective-measure"))?.args.measure.value;

/** SELV and PELV, by what the way serves or by what protects it. */
export const isSelvOrPelv = (study: WayStudy): boolean =>
  study.uses.has("selv") || ["selv", "pelv"].includes(measureOf(study) ?? "");

/** Extra-low voltage and separated circuits are not earthed: no protective conductor of theirs is proved. */
export const needsNoCpc = (study: WayStudy): boolean => isSelvOrPelv(study) || measureOf(study) === "separation";

/** Whether no fault to earth is disconnected through a loop, so that there is none to measure. */
export const hasNoLoop = (study: WayStudy): boolean =>
  study.cable?.cpcBy === "none" || needsNoCpc(study) || measureOf(study) === "dc";

/** Whether something on the circuit can feed back into it: a generator or a battery. */
export const feedsBack = ({ uses }: Pick<WayStudy, "uses">): boolean => uses.has("pv") || uses.has("storage");

/** A circuit of a generator or battery alone: a source, not a load. */
export const isSource = ({ uses }: Pick<WayStudy, "uses">): boolean =>
  uses.size > 0 && [...uses].every((use) => use === "pv" || use === "storage");

/**
 * The rule speaks of the socket's rating, not the circuit's. Those of a ring, of a home and of a cooker's switch are
 * 13 A whatever the device is, and so are those beside lights or other light loads, which nobody puts on the circuit of
 * a large socket; elsewhere a socket may be as large as its device.
 */
export function socketRating({ device, isRing, uses, context }: WayStudy): number {
  if (!device) return Number.POSITIVE_INFINITY;
  const plug = practiceOf("plug-socket").value;
  if (isRing || [...uses].some((use) => besidePlugs.has(use)) || homes.includes(premisesOf(context) ?? "")) return plug;
  return device.rating ?? Number.POSITIVE_INFINITY;
}

const besidePlugs: ReadonlySet<string> = new Set([
  "cooker",
  "lighting",
  "emergency-lighting",
  "ventilation",
  "shaver",
  "alarms",
  "data",
  "laundry",
  "water-heater",
]);

export const homes: readonly string[] = ["dwelling", "shared-house"];
