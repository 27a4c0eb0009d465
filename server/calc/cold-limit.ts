import { Memo } from "../memo/memo.ts";
import { loopTerms } from "../tables/loop-breakers.ts";
import { combine, fromFormula } from "../tables/source.ts";
import { known } from "../tables/table.ts";
import { temperatureCoefficients } from "../tables/temperature.ts";
import type { LoopLimit } from "./loop-limit.ts";
import { productOf, reproducible } from "./reproducible.ts";
import type { Calculated } from "./result.ts";
import { degrees, ohms, plain, round, step, truncate } from "./result.ts";

/** One way of stating the limit for a reading taken cold. */
interface ColdStyle extends Calculated {
  readonly style: string;
}

export interface ColdLimit extends ColdStyle {
  /** The other published ways of saying "about 80 %". */
  readonly others: readonly ColdStyle[];
  /** The full limit brought to the temperature of the test, when that is known. */
  readonly corrected?: ColdStyle;
}

interface ColdConditions {
  /** Temperature of the conductors during the test, °C. */
  readonly temperature?: number;
  /** Operating temperature of the conductor; 70 °C when left out. */
  readonly insulation?: 70 | 90;
}

/**
 * The limit (Ω) a reading on cold conductors is compared with. The strict form cuts 0.8 of the unrounded value, so it
 * never lies above the true limit; Guidance Note 3 and the On-Site Guide round differently, and stand beside it.
 */
export function coldLimit(limit: LoopLimit, conditions: ColdConditions = {}): ColdLimit {
  const { temperature, insulation = 70 } = conditions;
  const key = `${temperature}|${insulation}`;
  const known = coldLimits.of(limit, () => new Map<string, ColdLimit>());
  const before = known.get(key);
  if (before) return before;
  const cold = coldAfresh(limit, conditions);
  known.set(key, cold);
  return cold;
}

/** A limit is the same object for all circuits alike, and so is what follows from it. */
const coldLimits = new Memo<LoopLimit, Map<string, ColdLimit>>();

function coldAfresh(limit: LoopLimit, conditions: ColdConditions): ColdLimit {
  const factor = known(loopTerms, { key: "cold-factor" }, "value");
  const divisor = known(loopTerms, { key: "cold-divisor" }, "value");
  const strict: ColdStyle = {
    style: "0.8 of it, rounded down",
    value: truncate(limit.exact * factor.value, 2),
    unit: "Ω",
    steps: [...limit.steps],
    source: fromFormula(combine(limit.source, factor.source)),
  };
  const guidance: ColdStyle = {
    ...strict,
    steps: strict.steps,
    style: "0.8 of the printed value, rounded (Guidance Note 3)",
    value: round(limit.value * factor.value, 2),
  };
  const onSite: ColdStyle = {
    style: "divided by 1.24, rounded (On-Site Guide)",
    value: round(limit.exact / divisor.value, 2),
    unit: "Ω",
    steps: [],
    source: fromFormula(combine(limit.source, divisor.source)),
  };
  const others = [
    withStep(guidance, limit, `Zs × ${plain(factor.value)}`, `${ohms(limit.value)} × ${plain(factor.value)}`),
    withStep(onSite, limit, `Zs / ${divisor.value}`, `${ohms(limit.value)} / ${divisor.value}`),
  ];
  const { temperature, insulation = 70 } = conditions;
  const cold = strictly(strict, limit, factor.value);
  if (temperature === undefined) return { ...cold, steps: cold.steps, others };
  return { ...cold, steps: cold.steps, others, corrected: corrected(limit, temperature, insulation) };
}

/** The figure printed for a device has two decimals; where its 0.8 comes of more of them, they are shown. */
function strictly(style: ColdStyle, limit: LoopLimit, factor: number): ColdStyle {
  const found = reproducible(
    `cold Zs × ${plain(factor)}, rounded down`,
    [
      [limit.exact, ohms],
      [factor, plain],
    ],
    productOf,
    [style.value, (one) => ohms(truncate(one, 2))],
  );
  return { ...style, steps: [...limit.steps, found] };
}

function withStep(style: ColdStyle, limit: LoopLimit, formula: string, numbers: string): ColdStyle {
  return { ...style, steps: [...limit.steps, step(`cold ${formula}`, numbers, ohms(style.value))] };
}

/** The full limit at the temperature of the test: resistance rises 0.4 % for each kelvin above 20 °C. */
function corrected(limit: LoopLimit, temperature: number, insulation: number): ColdStyle {
  const { value: alpha, source } = known(temperatureCoefficients, { key: "simple" }, "alpha20");
  const now = 1 + alpha * (temperature - 20);
  const hot = 1 + alpha * (insulation - 20);
  const value = (limit.exact * now) / hot;
  return {
    style: `corrected to ${degrees(temperature)}`,
    value,
    unit: "Ω",
    steps: [
      ...limit.steps,
      step("factor at test", `1 + ${alpha} × (${plain(temperature)} − 20)`, plain(now, 4)),
      step(`factor at ${degrees(insulation)}`, `1 + ${alpha} × (${insulation} − 20)`, plain(hot, 4)),
      reproducible(
        "Zs at test = Zs × factor at test / factor hot",
        [
          [limit.exact, ohms],
          [now, (one) => plain(one, 4)],
          [hot, (one) => plain(one, 4)],
        ],
        {
          write: (zs, test, service) => `${zs} × ${test} / ${service}`,
          compute: (zs, test, service) => (zs * test) / service,
        },
        [value, (one) => `${plain(one, 3)} Ω`],
      ),
    ],
    source: fromFormula(combine(limit.source, source)),
  };
}
