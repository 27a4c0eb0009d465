/** What is missing to say what a motor draws: its power is what it delivers at its shaft (IEC 60034-1). */
import { practiceOf } from "../calc/practice.ts";
import type { FactOf } from "../model/values.ts";
import type { WayStudy } from "./way.ts";

type Load = FactOf<"way", "load">;

/** A motor whose power is calculated with as if it drew no more than it delivers, and what of its plate would say more. */
interface UnstatedInput {
  readonly load: Load;
  readonly missing: readonly string[];
}

/** Where the design current is stated, whoever read it off the plate knew better. */
export function unstatedInput({ facts, uses }: WayStudy): UnstatedInput | undefined {
  if (facts.has("Ib") || uses.size !== 1 || !uses.has("motor")) return undefined;
  const loads = facts.all("load").filter(({ args }) => args.power);
  const load = loads.find(({ args }) => !args.efficiency) ?? loads[0];
  // What the smallest draw is small whatever they lose.
  if (!load?.args.power || load.args.power.value < practiceOf("motor-overload").value) return undefined;
  // A drive takes its current nearly in phase, and its power factor is not that of the motor.
  const isDriven = facts.one("starting")?.args.method.value === "drive";
  const isFactorKnown = facts.has("power-factor") || isDriven || facts.isUnread("power-factor");
  const missing = [
    ...(load.args.efficiency ? [] : ["its efficiency (100 % if this is what it draws)"]),
    ...(isFactorKnown ? [] : ["power-factor"]),
  ];
  return missing.length > 0 ? { load, missing } : undefined;
}
