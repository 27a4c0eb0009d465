/** The overload relay of a motor's circuit. */
import { exceeds } from "../calc/compare.ts";
import type { WayStudy } from "./way.ts";

/** What cannot be overloaded but by its motor: then a relay before the motor watches all that the cable carries. */
const driven: readonly string[] = ["motor", "ventilation", "lift", "door", "heat-pump", "control"];

/** What the relay is set to, A, where one is stated and everything on the circuit is behind it. */
export function relaySetting({ facts, uses }: WayStudy): number | undefined {
  const all = uses.size > 0 && [...uses].every((use) => driven.includes(use));
  return all ? facts.one("overload")?.args.setting.value : undefined;
}

/** Whether the relay, and not the device at the board, protects a cable of that capacity (A) against overload. */
export function protectedByRelay(study: WayStudy, Iz: number): boolean {
  const setting = relaySetting(study);
  return setting !== undefined && !exceeds(setting, Iz);
}
