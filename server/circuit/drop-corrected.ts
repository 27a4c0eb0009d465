/** What the real conditions of a cable take off its tabulated voltage drop. */

import { tabulatedCapacity } from "../calc/capacity.ts";
import { dropPowerFactor, dropTemperatureFactor, resistiveUpTo } from "../calc/drop-figures.ts";
import { productStep } from "../calc/reproducible.ts";
import { type Calculated, milliohms, percent, plain, step, worked } from "../calc/result.ts";
import { dropByParts } from "../calc/voltage-drop.ts";
import { tabulatedAt } from "../tables/factors.ts";
import { combine, fromFormula } from "../tables/source.ts";
import { type Cable, isTabled } from "./cable.ts";
import { leastKnownCapacity } from "./overload.ts";
import { methodOf } from "./route-capacity.ts";
import type { WayStudy } from "./way.ts";

/** The drop with cooler conductors and the power factor, where resistance alone decides it. */
export function corrected(study: WayStudy, drop: Calculated, current: number, csa: number): Calculated {
  const resistive = csa <= resistiveUpTo();
  const all = resistive
    ? [temperatureFactor(study, current, csa), powerFactor(study)]
    : [partsFactor(study, current, csa)];
  const factors = all.flatMap((factor) => factor ?? []);
  if (factors.length === 0) return drop;
  const value = factors.reduce((product, factor) => product * factor.value, drop.value);
  const source = fromFormula(combine(drop.source, ...factors.map((factor) => factor.source)));
  return worked(value, "%", source, () => {
    const parts = factors.map((factor) => [factor.value, threeDecimals] as const);
    return [
      ...drop.steps,
      ...factors.flatMap((factor) => factor.steps),
      productStep("drop, corrected", [[drop.value, percent], ...parts], [value, percent]),
    ];
  });
}

const threeDecimals = (value: number): string => plain(value, 3);

function temperatureFactor(study: WayStudy, Ib: number, csa: number): Calculated | undefined {
  const { cable, device } = study;
  const capacity = csa === cable?.line ? leastKnownCapacity(study) : undefined;
  const method = capacity && methodOf(capacity.fact);
  if (!cable || !capacity || !method || device?.family === "BS 3036") return undefined;
  if (!isTabled(cable) || (capacity.fact.args.ambient?.value ?? tabulatedAt.air) < tabulatedAt.air) return undefined;
  const { construction, insulation } = cable;
  const It = tabulatedCapacity({ construction, insulation, method, loaded: study.threePhase ? 3 : 2, csa });
  if (!It) return undefined;
  // Each of several in parallel carries its part.
  const of = cable.parallel.line;
  const Iz = Math.min(capacity.value.value / of, It.value);
  const factor = dropTemperatureFactor({ It: It.value, Iz, Ib: Ib / of, insulation });
  return factor.value < 1 ? factor : undefined;
}

/** Of a larger size, by its resistance and reactance apart. */
function partsFactor(study: WayStudy, current: number, csa: number): Calculated | undefined {
  const { cable } = study;
  if (cable?.construction === "busbar-trunking") return busbarFactor(cable, study.powerFactor);
  if (!cable || !isTabled(cable) || cable.own?.drop) return undefined;
  const { construction, insulation } = cable;
  return dropByParts(
    { construction, insulation, method: "E", loaded: study.threePhase ? 3 : 2, csa },
    study.powerFactor,
    temperatureFactor(study, current, csa),
  );
}

/** Of busbar trunking, by the parts its maker states: (r cos φ + x sin φ) / z. */
function busbarFactor({ own }: Cable, share: number): Calculated | undefined {
  const [r, x] = [own?.lineHot, own?.reactance];
  if (!r || !x || own?.drop || share <= 0 || share >= 1) return undefined;
  const sine = Math.sqrt(1 - share ** 2);
  const value = Math.min(1, (r.value * share + x.value * sine) / Math.hypot(r.value, x.value));
  const numbers = `(${milliohms(r.value)} × ${plain(share)} + ${milliohms(x.value)} × ${plain(sine, 3)}) / z`;
  return worked(value, "", fromFormula(combine(r.source, x.source)), () => [
    step("(r cos φ + x sin φ) / z", numbers, plain(value, 3)),
  ]);
}

const powerFactor = ({ powerFactor: share }: WayStudy): Calculated | undefined =>
  share > 0 && share < 1 ? dropPowerFactor(share) : undefined;
