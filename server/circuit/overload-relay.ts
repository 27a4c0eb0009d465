/** The overload relay of a motor's circuit. */
import { exceeds } from "../calc/compare.ts";
import { practiceOf } from "../calc/practice.ts";
import type { WayStudy } from "./way.ts";

/** What cannot be overloaded but by its motor: then a relay before the motor watches all that the cable carries. */
const driven: readonly string[] = ["motor", "ventilation", "lift", "door", "heat-pump", "control"];

interface OverloadRelay {
  /** What it is set to, A. */
  readonly setting: number;
  /** What that lets the lines of the circuit carry, A. */
  readonly lines: number;
  /** Whether it stands between a star-delta starter and the windings, where 1/√3 of the line current flows. */
  readonly inWindings: boolean;
}

/**
 * The relay, where one is stated and everything on the circuit is behind it. Of a star-delta starter it may stand in the
 * lines or before the windings: one that would trip in the lines can only be meant for the windings.
 */
export function overloadRelay(study: WayStudy): OverloadRelay | undefined {
  const { facts, uses } = study;
  const setting = facts.one("overload")?.args.setting.value;
  if (setting === undefined || uses.size === 0 || ![...uses].every((use) => driven.includes(use))) return undefined;
  const Ib = study.designCurrent?.value;
  const inWindings =
    facts.one("starting")?.args.method.value === "star-delta" && Ib !== undefined && exceeds(Ib, relayHolds(setting));
  return { setting, lines: inWindings ? Math.sqrt(3) * setting : setting, inWindings };
}

/** The most a motor may draw, A, without the relay opening. */
export const relayHolds = (setting: number): number => practiceOf("relay-holds").value * setting;

/** Whether the relay, and not the device at the board, protects a cable of that capacity (A) against overload. */
export function protectedByRelay(study: WayStudy, Iz: number): boolean {
  const relay = overloadRelay(study);
  return relay !== undefined && !exceeds(relay.lines, Iz);
}
