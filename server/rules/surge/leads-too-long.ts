import { exceeds } from "../../calc/compare.ts";
import { looked, metres, relation } from "../../calc/result.ts";
import { laterRule } from "../../circuit/describe.ts";
import type { Context } from "../../model/installation.ts";
import { ruleAlone, type Source } from "../../tables/source.ts";
import { ofSurgeDevices, type SurgeDevice } from "../common/surge.ts";
import { amount, installationRule, type Reporter, valueSpot } from "../frame/rule.ts";

const sample = (leads: string) => `wayfile 1
installation "Sample" {
  standard     BS 7671:2018+A2:2022
  supply {
    earthing     TN-S
    spd          fitted T2  leads ${leads}
  }
  board A "Board" {
    fed-from     supply
  }
}`;

/** m: what is not to be exceeded, and what is to be aimed at. */
const most = 1;
const aim = 0.5;
const source: Source = ruleAlone({ ref: "BS 7671:2018+A2:2022, 534.4.8", standing: "memory" });

export default installationRule({
  id: "surge/leads-too-long",
  severity: "warning",
  since: "0.1",
  title: "The leads of a surge protective device are too long.",
  why: "The voltage a surge leaves along its leads adds to that of the device, about 1 kV each metre: behind two metres of lead the equipment is hardly protected. Line and earth lead together are 0.5 m if possible, and 1 m at most.",
  clauses: ["534.4.8"],
  examples: [
    {
      bad: sample("1.4 m").replace("1.4 m\n", `1.4 m\n                                  ${"^".repeat(5)}\n`),
      good: sample("0.4 m"),
    },
  ],
  ...ofSurgeDevices(judge),
});

function judge(spd: SurgeDevice, part: Pick<Context, "installation">, report: Reporter): void {
  const leads = spd.args.leads;
  if (!leads || !exceeds(leads.value, aim)) return;
  const over = exceeds(leads.value, most);
  const limit = over ? most : aim;
  const later = laterRule(part);
  report(valueSpot(spd, leads), {
    message: over
      ? `The leads come to ${metres(leads.value)}; ${metres(most)} is the most. Fit the device nearer to the busbars and the earth bar.${later.words}`
      : `The leads come to ${metres(leads.value)}: ${metres(aim)} is aimed at, ${metres(most)} the most.${later.words}`,
    value: amount(leads.value, "m"),
    limit: amount(limit, "m"),
    steps: [
      looked("Greatest length of both leads", source.ref, `${metres(most)}, ${metres(aim)} if possible`),
      relation("length ≤ greatest", metres(leads.value), metres(limit)),
    ],
    source,
    severity: over ? (later.severity ?? "warning") : "information",
  });
}
