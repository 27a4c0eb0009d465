/** The protective conductor of a cable as an electrical path: a core, the armour, or both side by side. */

import { armourArea, armourOperatingFactor, armourPerMetre } from "../calc/armour.ts";
import type { Conductor } from "../calc/circuit-network.ts";
import { operatingFactor, resistancePerMetre } from "../calc/conductor-resistance.ts";
import { inParallel } from "../calc/loop-impedance.ts";
import { productOf, quotientOf, reproducible } from "../calc/reproducible.ts";
import { type Calculated, milliohms, percent, plain, type Step, step, worked } from "../calc/result.ts";
import { cpcRatio } from "../calc/ring.ts";
import type { Facts } from "../model/values.ts";
import { combine, fromFormula, type Sourced } from "../tables/source.ts";
import type { Cable } from "./cable.ts";

/** A cable with the lines of its way, which say what lies beside it. */
interface CableOfWay {
  readonly cable: Cable | undefined;
  readonly facts: Facts<"way">;
}

/** Numbers of cores that armoured cable is listed with. */
const listed = [2, 3, 4, 5] as const;
const counted = (cores: number | undefined): cores is (typeof listed)[number] => listed.some((one) => one === cores);

const armoured = ({ construction, cpcBy }: Cable): boolean => construction === "armoured" && cpcBy === "armour";

/** Ω per metre of the armour that serves as protective conductor, at 20 °C. */
const armourOf = (cable: Cable): Calculated | undefined =>
  armoured(cable) && counted(cable.cores) ? armourPerMetre(cable.line, cable.cores) : undefined;

/** Cross-section of that armour, mm². */
export const armourSection = (cable: Cable): Calculated | undefined =>
  armoured(cable) && counted(cable.cores) ? armourArea(cable.line, cable.cores) : undefined;

/**
 * Ω per metre at 20 °C of one conductor of a cable. Of a protective conductor beside the armour, what both come to side
 * by side; nothing where the armour is one of them and not known. Conduit and trunking are left out: no figure is kept.
 */
export function conductorPerMetre(cable: Cable, which: Conductor): Calculated | undefined {
  const one = onePerMetre(cable, which);
  return one && ofParallel(one, cable.parallel[which], "r");
}

/** A figure per metre of one conductor as it is of so many alike in parallel. */
export function ofParallel(one: Calculated, count: number, symbol: string): Calculated {
  if (count === 1) return one;
  const value = one.value / count;
  const numbers = `${milliohms(one.value)}/m / ${count}`;
  return worked(value, one.unit, one.source, () => [
    ...one.steps,
    step(`${symbol} of ${count} in parallel`, numbers, `${milliohms(value)}/m`),
  ]);
}

function onePerMetre(cable: Cable, which: Conductor): Calculated | undefined {
  const csa = cable[which];
  const stated =
    which === "cpc" ? cable.own?.cpc : which === "line" || csa === cable.line ? cable.own?.line : undefined;
  if (stated) return { value: stated.value, unit: "Ω/m", steps: [], source: stated.source };
  // Bars are not wires of a size; a protective conductor that goes with them is one, of copper whatever they are of.
  const bars = cable.construction === "busbar-trunking";
  if (bars && which !== "cpc") return undefined;
  const core = csa === undefined ? undefined : resistancePerMetre(csa, bars ? "copper" : cable.material);
  if (which !== "cpc" || cable.cpcBy !== "armour") return core;
  const armour = armourOf(cable);
  if (csa === undefined) return armour;
  return core && armour && inParallel(core, armour, "r of core and armour");
}

/** What the resistance of the protective conductor is to that of a line, by their sizes; where as many lie in parallel. */
export const ratioOf = (cable: Cable | undefined): Calculated | undefined =>
  cable?.cpc === undefined || cable.parallel.cpc !== cable.parallel.line ? undefined : cpcRatio(cable.line, cable.cpc);

/** What of a fault current goes through the armour where a core lies beside it: by resistances, as a share. */
export function fractionByArmour(cable: Cable): Calculated | undefined {
  const armour = armourOf(cable);
  const core = cable.cpc === undefined ? undefined : resistancePerMetre(cable.cpc, cable.material);
  if (!armour || !core) return undefined;
  const value = core.value / (core.value + armour.value);
  const shown = ({ value: r }: Calculated) => `${milliohms(r)}/m`;
  const numbers = `${shown(core)} / (${shown(core)} + ${shown(armour)})`;
  const steps = [...core.steps, ...armour.steps, step("share of the armour", numbers, percent(value * 100))];
  return { value, unit: "", steps, source: fromFormula(combine(core.source, armour.source)) };
}

/** Why the protective conductor has no resistance here. */
export function whyNoCpc({ cpc, cpcBy, cores, construction, line }: Cable): string {
  if (cpcBy === "armour") {
    if (construction !== "armoured") return `a ${construction} cable has no armour`;
    if (cores === undefined) return "the protective conductor is the armour, and the number of cores is not written";
    return `no table here gives the armour of ${cores} × ${plain(line)} mm² cable`;
  }
  if (cpc !== undefined) return "no table here gives the resistance of a protective conductor of this size";
  if (cpcBy === "conduit" || cpcBy === "trunking") {
    return `the protective conductor is the steel ${cpcBy}, whose resistance goes by its make: ask the maker for it, or measure R2`;
  }
  if (cpcBy === "casing")
    return "the protective conductor is the casing, whose r2 is its maker's figure and not stated";
  return cpcBy
    ? `the protective conductor is the ${cpcBy}, whose resistance is not given here`
    : "the size of the protective conductor is not stated";
}

/**
 * The figures of an armour are the greatest it may have, and cable with 70 °C insulation has more steel: of the armour
 * alone a low reading says nothing.
 */
export const mayReadLess = (study: CableOfWay): boolean =>
  hasMetalBeside(study) || (study.cable?.cpcBy === "armour" && study.cable.insulation === 70);

/** Steel beside a core of copper lowers what a meter shows, by how much nobody can tell beforehand. */
export const hasMetalBeside = ({ cable, facts }: CableOfWay): boolean =>
  facts.has("parallel-path") || (cable?.cpc !== undefined && (cable.cpcBy === "conduit" || cable.cpcBy === "trunking"));

/** By what is stated of conductors cold and hot; a copper core beside them by its insulation. */
function statedFactor(cable: Cable, of: readonly Conductor[]): Calculated | undefined {
  const { own, parallel } = cable;
  const hotOf = (which: Conductor): Sourced<number> | undefined => {
    const stated = which === "cpc" ? own?.cpcHot : own?.lineHot;
    if (stated) return { value: stated.value / parallel[which], source: stated.source };
    const cold = which === "cpc" && !own?.cpc ? conductorPerMetre(cable, "cpc") : undefined;
    const factor = cold && operatingFactor(cable.insulation, "incorporated");
    return factor && { value: cold.value * factor.value, source: combine(cold.source, factor.source) };
  };
  const parts = of.map((which) => [hotOf(which), conductorPerMetre(cable, which)] as const);
  if (!parts.every(([hot, cold]) => hot && cold)) return undefined;
  const sum = (index: 0 | 1) => parts.reduce((total, part) => total + (part[index]?.value ?? 0), 0);
  const value = sum(0) / sum(1);
  const sources = parts.flatMap((part) => part.flatMap((figure) => (figure ? [figure.source] : [])));
  const numbers = `${milliohms(sum(0))} / ${milliohms(sum(1))}`;
  return worked(value, "", fromFormula(combine(...sources)), () => [
    step("factor to rated current, as stated hot and cold", numbers, plain(value, 3)),
  ]);
}

/**
 * Factor from 20 °C to service of conductors in series: that of their insulation for the cores, and the armour's own for
 * an armour. Where both are there, each counts by its share of the resistance.
 */
export function operatingFactorOf(
  cable: Cable | undefined,
  of: readonly Conductor[] = ["line", "cpc"],
): Calculated | undefined {
  if (cable?.own?.lineHot || cable?.construction === "busbar-trunking") return statedFactor(cable, of);
  const cores = operatingFactor(cable?.insulation ?? 70, "incorporated");
  if (!cable || !cores || !of.includes("cpc") || cable.cpcBy !== "armour") return cores;
  const others = of.filter((which) => which !== "cpc").map((which) => conductorPerMetre(cable, which));
  const cold = conductorPerMetre(cable, "cpc");
  const armour = armourOf(cable);
  const core = cable.cpc === undefined ? undefined : resistancePerMetre(cable.cpc, cable.material);
  if (!cold || !armour || !others.every((one) => one !== undefined)) return undefined;
  const steel = armourOperatingFactor(cable.insulation);
  const by = (r: Calculated, factor: Calculated): Calculated => ({ ...r, value: r.value * factor.value, steps: [] });
  const hotOne = core ? inParallel(by(core, cores), by(armour, steel)) : by(armour, steel);
  const hot = ofParallel(hotOne, cable.parallel.cpc, "r in service");
  const line = others.reduce((sum, { value }) => sum + value, 0);
  const value = (line * cores.value + hot.value) / (line + cold.value);
  const warmSteps = core
    ? hot.steps
    : [
        reproducible(
          "r of the armour in service",
          [
            [armour.value, milliohms],
            [steel.value, (one) => plain(one, 3)],
          ],
          productOf,
          [hotOne.value, (one) => `${milliohms(one)}/m`],
        ),
        ...hot.steps.slice(hotOne.steps.length),
      ];
  return {
    value,
    unit: "",
    steps: [...cores.steps, ...steel.steps, ...warmSteps, factorOfBoth(line, { cores, hot, cold }, value)],
    source: fromFormula(combine(cores.source, steel.source)),
  };
}

interface Warming {
  readonly cores: Calculated;
  readonly hot: Calculated;
  readonly cold: Calculated;
}

/** What the lines and the armour come to in service, by what they come to cold. */
function factorOfBoth(line: number, { cores, hot, cold }: Warming, value: number): Step {
  const result = [value, (one: number) => plain(one, 3)] as const;
  const [warm, fresh] = [
    [hot.value, milliohms],
    [cold.value, milliohms],
  ] as const;
  const name = "factor of both together";
  if (line === 0) return reproducible(name, [warm, fresh], quotientOf, result);
  return reproducible(
    name,
    [[line, milliohms], [cores.value, plain], warm, fresh],
    {
      write: (one, factor, armour, own) => `(${one} × ${factor} + ${armour}) / (${one} + ${own})`,
      compute: (one, factor, armour, own) => (one * factor + armour) / (one + own),
    },
    result,
  );
}
