/** The protective conductor of a way: by Table 54.7, or by the heat of the least fault that trips its device. */
import { adiabaticFactor, adiabaticSize, type Calculated, selectedProtective } from "../calc/index.ts";
import { seconds, step } from "../calc/result.ts";
import { combine } from "../tables/source.ts";
import type { WayStudy } from "./way.ts";

/** What a protective conductor has to be, and by which method that was found. */
export interface ProtectiveNeed {
  readonly need: Calculated;
  readonly method: "table" | "adiabatic";
  /** Whether current and time belong to one and the same point of the device's curve. */
  readonly certain: boolean;
}

/**
 * Table 54.7 where it is met or nothing better is known. Otherwise S = √(I²t)/k at the point of the device's curve that
 * decides its loop impedance, the one fault of which both current and time are known. A breaker trips there within the
 * 0.1 s its curve is drawn to, perhaps sooner, so what follows for it is doubtful and not certain.
 */
export function protectiveNeed(study: WayStudy): ProtectiveNeed | undefined {
  const { cable, device, overcurrentLimit, supply, context } = study;
  if (!cable || cable.cpc === undefined || study.isSpare || cable.material !== "copper") return undefined;
  const table = selectedProtective(cable.line);
  if (table && cable.cpc >= table.value) return { need: table, method: "table", certain: true };
  const time = study.disconnectionTime?.value;
  const breaker = device?.family === "breaker" || device?.family === "legacy-breaker";
  if (overcurrentLimit && time !== undefined && context.edition) {
    const current = (supply.U0 * context.edition.cmin.value) / overcurrentLimit.exact;
    const k = factorOf(study);
    const size = k && adiabaticSize(current, breaker ? magneticTime : time, k);
    if (k && size) {
      const taken = breaker ? magneticTime : time;
      const steps = [
        ...overcurrentLimit.steps,
        step("t at that current", "", seconds(taken)),
        ...k.steps,
        ...size.steps,
      ];
      const source = combine(size.source, overcurrentLimit.source);
      return { need: { ...size, steps, source }, method: "adiabatic", certain: !breaker };
    }
  }
  return table && { need: table, method: "table", certain: false };
}

/** To where the curves of breakers are drawn, s. Below it the let-through energy would have to be known. */
const magneticTime = 0.1;

function factorOf(study: WayStudy): Calculated | undefined {
  const { cable } = study;
  if (!cable) return undefined;
  const insulation = cable.insulation === 90 ? "ts90" : "pvc70";
  return adiabaticFactor({ use: "incorporated", material: "copper", insulation, csa: cable.cpc ?? 0 });
}
