/** What the checks of a motor's overload relay share. */
import { overloadRelay } from "../../circuit/overload-relay.ts";
import type { WayStudy } from "../../circuit/way.ts";
import { type Spot, valueSpot } from "../frame/rule.ts";

interface Relay {
  /** What it is set to, A, what that lets the lines carry, A, and where it stands. */
  readonly setting: number;
  readonly lines: number;
  readonly inWindings: boolean;
  readonly spot: Spot;
  /** What the motor draws, A. */
  readonly Ib: NonNullable<WayStudy["designCurrent"]>;
}

/** The relay of a circuit and the current it watches, where both are known. */
export function relayOf(study: WayStudy): Relay | undefined {
  const overload = study.facts.one("overload");
  const relay = overloadRelay(study);
  const Ib = study.designCurrent;
  if (!overload || !relay || !Ib || study.isSpare) return undefined;
  return { ...relay, spot: valueSpot(overload, overload.args.setting), Ib };
}

/** A sample: a motor of 14 A, and what is written of its relay. */
export const conveyor = (setting: string): string => `way 1 radial "Conveyor" {
  device       BS EN 60898 D20 10 kA
  serves       motor
  overload     ${setting}
  Ib           14 A
}`;
