import type { Calculated } from "./result.ts";

export type Metal = "copper" | "aluminium";

/** Ω per metre at 20 °C of one conductor; csa in mm². */
export function resistancePerMetre(_csa: number, _metal: Metal = "copper"): Calculated | undefined {
  return undefined;
}

/** Ω per metre at 20 °C of line and cpc in series; csa in mm². */
export function r1r2PerMetre(_line: number, _cpc: number): Calculated | undefined {
  return undefined;
}

/** Ω of a conductor, or of line and cpc in series, over a length in m, at a temperature in °C (20 when left out). */
export function expectedResistance(_perMetre: Calculated, _length: number, _temperature = 20): Calculated {
  throw new Error("to follow");
}

/** A resistance known at 20 °C brought to another temperature, by 0.004 per kelvin or the physical coefficient. */
export function atTemperature(_r20: number, _temperature: number, _alpha: "simple" | "exact" = "simple"): Calculated {
  throw new Error("to follow");
}

/** A reading at some temperature brought back to 20 °C. */
export function to20(_reading: number, _temperature: number, _alpha: "simple" | "exact" = "simple"): Calculated {
  throw new Error("to follow");
}

/** m of conductor that make a resistance at 20 °C. */
export function lengthFromResistance(_resistance: number, _perMetre: Calculated): Calculated {
  throw new Error("to follow");
}

/** Factor from 20 °C to operating temperature for design; cpc in the cable or bunched, or separate. */
export function operatingFactor(_insulation: 70 | 85 | 90, _cpc: "incorporated" | "separate"): Calculated | undefined {
  return undefined;
}

/** Ω per metre at 20 °C of the steel wire armour of a multicore cable; csa in mm². */
export function armourPerMetre(_csa: number, _cores: 2 | 3 | 4 | 5): Calculated | undefined {
  return undefined;
}
