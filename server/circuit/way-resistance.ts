/** What the conductors of a way should read at 20 °C, from their lengths and sizes. */
import type { Conductor } from "../calc/circuit-network.ts";
import { expectedResistance, r1r2PerMetre } from "../calc/conductor-resistance.ts";
import { readingAt } from "../calc/index.ts";
import { reproducible, sumStep } from "../calc/reproducible.ts";
import { type Calculated, milliohms, ohms, step, worked } from "../calc/result.ts";
import { combine, fromFormula, summed } from "../tables/source.ts";
import { type Cable, hasResistance, isParallel } from "./cable.ts";
import { conductorPerMetre } from "./cpc.ts";
import type { Runs } from "./runs.ts";

/** A cable, and how much of it there is. */
interface CableLaid {
  readonly cable: Cable | undefined;
  /** Metres to the far point, or all the way round a ring. */
  readonly length: { readonly value: number } | undefined;
}

interface CircuitLaid extends CableLaid {
  readonly isRing: boolean;
  readonly runs: Runs | undefined;
  readonly expectedR1R2: Calculated | undefined;
}

export function expectedR1R2(study: CableLaid & Pick<CircuitLaid, "isRing">): Calculated | undefined {
  const { cable, length } = study;
  const perMetre = cable && pairPerMetre(cable);
  if (!perMetre || !length) return undefined;
  const whole = expectedResistance(perMetre, length.value);
  if (!study.isRing) return whole;
  const value = whole.value / 4;
  return worked(value, whole.unit, whole.source, () => [
    ...whole.steps,
    reproducible(
      "(r1 + r2) / 4",
      [[whole.value, ohms]],
      { write: (both) => `${both} / 4`, compute: (both) => both / 4 },
      [value, ohms],
    ),
  ]);
}

/** Line and protective conductor in series, Ω per metre at 20 °C. */
function pairPerMetre(cable: Cable): Calculated | undefined {
  const stated = cable.own?.line !== undefined || cable.own?.cpc !== undefined;
  if (!stated && !hasResistance(cable)) return undefined;
  if (!stated && !isParallel(cable) && cable.cpcBy !== "armour") {
    return cable.cpc === undefined
      ? undefined
      : r1r2PerMetre(cable.line, cable.cpc, { line: cable.material, cpc: cable.material });
  }
  const [line, cpc] = [conductorPerMetre(cable, "line"), conductorPerMetre(cable, "cpc")];
  if (!line || !cpc) return undefined;
  const value = line.value + cpc.value;
  const sum = step(
    "(r1 + r2) per metre",
    `${milliohms(line.value)} + ${milliohms(cpc.value)}`,
    `${milliohms(value)}/m`,
  );
  const source = fromFormula(summed(line, cpc));
  return { value, unit: "Ω/m", steps: [...line.steps, ...cpc.steps, sum], source };
}

/** R1+R2 at the end of the spur that reads the most, where one reads more than the ring does half way round. */
export function farthestSpur(study: CircuitLaid): Calculated | undefined {
  const { runs, cable, isRing } = study;
  const r1 = expectedConductor(study, "line");
  const r2 = expectedConductor(study, "cpc");
  const perMetre = cable && pairPerMetre(cable);
  if (!isRing || !runs?.closed || runs.mainLength <= 0 || !r1 || !r2 || !perMetre) return undefined;
  let most = (r1.value + r2.value) / 4;
  let farthest: Calculated | undefined;
  for (const { name, spur } of runs.places.values()) {
    const origin = spur && (spur.from === runs.board ? 0 : runs.places.get(spur.from)?.fromBoard);
    if (!spur || origin === undefined) continue;
    const at = readingAt(r1.value, r2.value, origin / runs.mainLength);
    const own = expectedResistance(perMetre, spur.length);
    const value = (at?.value ?? 0) + own.value;
    if (!at || value <= most) continue;
    most = value;
    farthest = worked(value, "Ω", combine(r1.source, r2.source, at.source, own.source), () => [
      ...r1.steps,
      ...r2.steps,
      ...at.steps,
      ...own.steps,
      sumStep(`R1 + R2 at ${name.value}, on a spur`, [at.value, own.value], ohms, value),
    ]);
  }
  return farthest;
}

/** What one conductor should read end to end at 20 °C, Ω. */
export function expectedConductor(study: CableLaid, which: Conductor): Calculated | undefined {
  const { cable, length } = study;
  if (!cable || !length) return undefined;
  const perMetre = conductorPerMetre(cable, which);
  return perMetre && expectedResistance(perMetre, length.value);
}
