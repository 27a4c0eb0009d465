/** The current of a load as it is bought: by its power at the voltage on its label, and what it delivers or draws. */

import { amps, plain, volts } from "../calc/result.ts";
import type { FactOf } from "../model/values.ts";

type Load = FactOf<"way", "load">;

/** What of a circuit its loads' currents depend on. */
export interface Loaded {
  /** V to earth, and across a load of one phase. */
  readonly supply: { readonly U0: number; readonly voltage: number };
  readonly threePhase: boolean;
  /** As a share. */
  readonly powerFactor: number;
}

/** Above this, V, a rated voltage is one between lines: none to earth is as high in public supplies. */
const betweenLines = 300;

/** What divides the power of a load, V: three times the voltage to earth where the circuit has three lines. */
function voltageOf(load: Load, study: Loaded): number {
  if (!study.threePhase) return load.args.rated?.value ?? study.supply.voltage;
  const rated = load.args.rated?.value ?? study.supply.U0;
  return 3 * (load.args.rated && rated > Math.min(betweenLines, 1.3 * study.supply.U0) ? rated / Math.sqrt(3) : rated);
}

/** W taken from the supply: more than is delivered where an efficiency is stated. */
function inputPower({ args }: Load): number {
  const efficiency = (args.efficiency?.value ?? 100) / 100;
  return (args.power?.value ?? 0) / (efficiency || 1);
}

/** A in each line. */
export function currentOf(load: Load, study: Loaded): number {
  return (load.args.current?.value ?? 0) + inputPower(load) / (voltageOf(load, study) * (study.powerFactor || 1));
}

/** The current of several loads together, A in each line. */
export const currentOfAll = (loads: readonly Load[], study: Loaded): number =>
  loads.reduce((sum, load) => sum + currentOf(load, study), 0);

/** The formula of a load's current and its figures, as the working writes them. */
export function loadTerms(loads: readonly Load[], study: Loaded): { readonly name: string; readonly terms: string } {
  const factor = study.powerFactor || 1;
  const lossy = loads.some(({ args }) => args.efficiency);
  const voltage = study.threePhase ? "3 × U0" : "U";
  const below = [voltage, ...(factor === 1 ? [] : ["cos φ"]), ...(lossy ? ["η"] : [])];
  const name = `Σ P / ${below.length > 1 || study.threePhase ? `(${below.join(" × ")})` : voltage}`;
  const terms = loads.flatMap((load) => [
    ...(load.args.current ? [amps(load.args.current.value)] : []),
    ...(load.args.power ? [powerTerm(load, study, factor)] : []),
  ]);
  return { name, terms: terms.join(" + ") };
}

function powerTerm(load: Load, study: Loaded, factor: number): string {
  const { power, efficiency } = load.args;
  const parts = [
    volts(voltageOf(load, study)),
    ...(factor === 1 ? [] : [plain(factor)]),
    ...(efficiency ? [plain(efficiency.value / 100)] : []),
  ];
  return `${plain(power?.value ?? 0)} W / ${parts.length > 1 ? `(${parts.join(" × ")})` : parts[0]}`;
}
