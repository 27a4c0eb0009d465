import { fallsShort } from "../../calc/compare.ts";
import { looked, relation, squareMillimetres } from "../../calc/result.ts";
import { laterRule } from "../../circuit/describe.ts";
import type { Context } from "../../model/installation.ts";
import { ruleAlone, type Source } from "../../tables/source.ts";
import { ofSurgeDevices, type SurgeDevice } from "../common/surge.ts";
import { amount, installationRule, type Reporter, valueSpot } from "../frame/rule.ts";

const sample = (earth: string) => `wayfile 1
installation "Sample" {
  standard     BS 7671:2018+A2:2022
  supply {
    earthing     TN-S
    spd          fitted T1  earth ${earth}
  }
  board A "Board" {
    fed-from     supply
  }
}`;

/** mm² of copper, by type; a type 3 is on the cable of its equipment. */
const least = { T1: 16, "T1-T2": 16, T2: 6, T3: undefined } as const;
const source: Source = ruleAlone({ ref: "BS 7671:2018+A2:2022, 534.4.10", standing: "memory" });

export default installationRule({
  id: "surge/conductor-too-small",
  severity: "warning",
  since: "0.1",
  title: "The conductor of a surge protective device to earth is too small.",
  why: "A part of a lightning current flows through it. A type 1 device has 16 mm² to the earth terminal, a type 2 device 6 mm².",
  clauses: ["534.4.10"],
  examples: [
    {
      bad: sample("6 mm²").replace("6 mm²\n", `6 mm²\n                                  ${"^".repeat(5)}\n`),
      good: sample("16 mm²"),
    },
  ],
  ...ofSurgeDevices(judge),
});

function judge(spd: SurgeDevice, part: Pick<Context, "installation">, report: Reporter): void {
  const type = spd.args.type?.value;
  const earth = spd.args.earth;
  const limit = type && least[type];
  if (!earth || !limit || !fallsShort(earth.value, limit)) return;
  const later = laterRule(part);
  report(valueSpot(spd, earth), {
    message: `A ${squareMillimetres(earth.value)} conductor is too small for a type ${type === "T2" ? 2 : 1} device: fit ${squareMillimetres(limit)}.${later.words}`,
    value: amount(earth.value, "mm²"),
    limit: amount(limit, "mm²"),
    least: true,
    steps: [
      looked("Least size to the earth terminal", source.ref, squareMillimetres(limit)),
      relation("size ≥ least", squareMillimetres(earth.value), squareMillimetres(limit)),
    ],
    source,
    ...(later.severity ? { severity: later.severity } : {}),
  });
}
