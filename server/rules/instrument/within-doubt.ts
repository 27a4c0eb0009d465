import { above } from "../../analysis/compare.ts";
import { type Doubt, doubtInTest, doubtOnWay } from "../../analysis/doubt.ts";
import { insulationLimit, insulationOf } from "../../analysis/insulation.ts";
import { latestRcdTests, windowOf } from "../../analysis/rcd-tests.ts";
import type { WayStudy } from "../../analysis/way.ts";
import { metered } from "../../calc/doubt.ts";
import type { Calculated } from "../../calc/result.ts";
import { type Fact, measured, type Quantity } from "../../model/values.ts";
import { doubtSteps, nearLimit } from "../doubt-words.ts";
import { amount, amountOf, boardRule, type Reporter, valueSpot } from "../rule.ts";

interface Near {
  readonly name: string;
  readonly fact: Fact;
  readonly quantity: Quantity;
  readonly limit: Calculated;
  readonly doubt: Doubt | undefined;
  readonly least: boolean;
}

/** A reading that keeps its limit, but by less than its doubt. One that passes it is another check's. */
function told({ name, fact, quantity, limit, doubt, least }: Near, report: Reporter): void {
  const left = least ? quantity.value - limit.value : limit.value - quantity.value;
  if (!doubt || left < 0 || !above(doubt.value, left)) return;
  const unit = doubt.unit === "s" ? "s" : "Ω";
  const shown = `${name} ${metered(quantity.value, unit)}`;
  report(valueSpot(fact, quantity), {
    message: nearLimit(doubt, shown, least ? "over" : "under", metered(limit.value, unit)),
    value: amount(quantity.value, unit),
    limit: amountOf(limit),
    least,
    steps: [...limit.steps, ...doubtSteps(doubt)],
    source: limit.source,
  });
}

function nearLoop(study: WayStudy): Near[] {
  const { Zs, disconnection } = study;
  const quantity = Zs && measured(Zs.value);
  if (!Zs || !quantity || !disconnection || study.isSpare) return [];
  const limit = disconnection.cold?.corrected ?? disconnection.cold ?? disconnection.limit;
  return [{ name: "Zs", fact: Zs.fact, quantity, limit, doubt: doubtOnWay(study, Zs.fact, quantity), least: false }];
}

function nearInsulation(study: WayStudy): Near[] {
  const limit = insulationLimit(study)?.minimum;
  const values = insulationOf(study)?.values ?? [];
  if (study.isSpare || !limit) return [];
  return values.map(({ pair, fact, quantity }) => ({
    name: pair,
    fact,
    quantity,
    limit,
    doubt: doubtOnWay(study, fact, quantity),
    least: true,
  }));
}

const meter =
  'instrument M1 "Multifunction tester" {\n  accuracy  loop 3 % 3 digits\n  accuracy  rcd-time 2 % 2 digits\n}';

export default boardRule({
  id: "instrument/within-doubt",
  severity: "information",
  since: "0.1",
  title: "A reading that keeps its limit by less than the instrument may be out.",
  why: "What the instrument shows and what is there may differ by its accuracy. So near to the limit the reading alone does not show that the circuit keeps it: a finer instrument, or a second way of finding the figure, settles it.",
  clauses: ["643.1"],
  examples: [
    {
      setting: { stage: "tested", before: meter },
      bad: `way 1 radial "Water heater" {
  device  BS EN 60898 B32 6 kA
  live 2026-03-05 with M1 {
    Zs  1.06 Ω
        ^^^^^^
  }
}`,
      good: `way 1 radial "Water heater" {
  device  BS EN 60898 B32 6 kA
  live 2026-03-05 with M1 {
    Zs  0.62 Ω
  }
}`,
    },
    {
      setting: { stage: "tested", before: meter },
      bad: `way 1 radial "Bench sockets" {
  device  BS EN 61009 B20 6 kA 30 mA type A
  live 2026-03-05 with M1 {
    rcd  30 mA 1x 297 ms
                  ^^^^^^
  }
}`,
      good: `way 1 radial "Bench sockets" {
  device  BS EN 61009 B20 6 kA 30 mA type A
  live 2026-03-05 with M1 {
    rcd  30 mA 1x 24.1 ms
  }
}`,
    },
  ],
  check({ context, studies }, report) {
    for (const study of studies) for (const near of [...nearLoop(study), ...nearInsulation(study)]) told(near, report);
    for (const test of latestRcdTests(context, studies)) {
      const limit = windowOf(test, context)?.greatest;
      const { fact, time } = test;
      if (!limit || !time) continue;
      const doubt = doubtInTest(context.names, test.test, fact, time);
      told({ name: "A trip time of", fact, quantity: time, limit, doubt, least: false }, report);
    }
  },
});
