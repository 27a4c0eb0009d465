import { lengthFromResistance, resistancePerMetre } from "../../calc/conductor-resistance.ts";
import { practiceOf } from "../../calc/practice.ts";
import { metres, ohms } from "../../calc/result.ts";
import { quantityOf } from "../../model/values.ts";
import { combine } from "../../tables/source.ts";
import { amount, factSpot, installationRule, valueSpot } from "../frame/rule.ts";

export default installationRule({
  id: "protective/earthing-reads-high",
  severity: "warning",
  since: "0.1",
  title: "The earthing conductor reads more than such a conductor can.",
  why: "It is short and thick and reads close to zero. More means a poor joint at the main earthing terminal, at the distributor's terminal or at the electrode's clamp, through which all earth fault current has to flow.",
  opens: true,
  clauses: ["643.2.1", "542.3.2"],
  examples: [
    {
      bad: `wayfile 1
installation "Sample" {
  supply {
    earthing     TN-S
    earthing-conductor 16 mm²  continuity 1.40 Ω
                                          ^^^^^^
  }
}`,
      good: `wayfile 1
installation "Sample" {
  supply {
    earthing     TN-S
    earthing-conductor 16 mm²  continuity 0.02 Ω
  }
}`,
    },
  ],
  check({ supply }, report) {
    const conductor = supply?.one("earthing-conductor");
    const reading = quantityOf(conductor?.args.continuity);
    const metal = conductor?.args.metal?.value;
    if (!conductor || reading?.sign !== "=" || metal === "steel") return;
    const perMetre = resistancePerMetre(conductor.args.size.value, metal);
    const implied = perMetre && lengthFromResistance(reading.value, perMetre);
    const most = practiceOf("bond-length");
    if (!implied || implied.value <= most.value) return;
    report(valueSpot(conductor, reading), {
      message: `The earthing conductor reads ${ohms(reading.value)}, as ${metres(Math.round(implied.value))} of this size would: look at its joints and clamps, and null the leads.`,
      value: amount(reading.value, "Ω"),
      steps: [...implied.steps, ...most.steps],
      source: combine(implied.source, most.source),
      related: [{ spot: factSpot(conductor), message: "Size of the earthing conductor." }],
    });
  },
});
