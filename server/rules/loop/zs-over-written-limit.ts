import { ohms, relation } from "../../calc/result.ts";
import { quantityOf } from "../../model/values.ts";
import { amount, factSpot, valueSpot, wayRule } from "../frame/rule.ts";

export default wayRule({
  id: "loop/zs-over-written-limit",
  severity: "error",
  since: "0.1",
  title: "Zs is higher than the maximum Zs written on the record.",
  why: "Where no table gives a limit, the designer's applies; and where it is stricter than the table, there was a reason for it.",
  clauses: ["411.4.4"],
  examples: [
    {
      setting: { stage: "tested" },
      bad: `way 1 feeder "Plant" {
  device       BS EN 60947-2 160 A 36 kA
  max-Zs       0.24 Ω
  live 2026-03-05 {
    Zs           0.31 Ω
                 ^^^^^^
  }
}`,
      good: `way 1 feeder "Plant" {
  device       BS EN 60947-2 160 A 36 kA
  max-Zs       0.34 Ω
  live 2026-03-05 {
    Zs           0.31 Ω
  }
}`,
    },
  ],
  check(study, report) {
    const { Zs, disconnection } = study;
    const fact = study.facts.one("max-Zs");
    const reading = Zs && quantityOf(Zs.value);
    if (!Zs || !fact || !reading || reading.sign === "<") return;
    const written = fact.args.value.value;
    if (reading.sign === "=" ? reading.value <= written : reading.value < written) return;
    const limit = disconnection?.limit;
    // Above the true limit as well: that is reported once, as the graver fault.
    if (limit && reading.value > limit.value) return;
    report(valueSpot(Zs.fact, reading), {
      message: `Zs ${ohms(reading.value)} is above the max-Zs of ${ohms(written)} on the record${limit ? `, though within the ${ohms(limit.value)} of the standard` : ""}.`,
      value: amount(reading.value, "Ω"),
      limit: amount(written, "Ω"),
      steps: [relation("Zs ≤ limit as written", ohms(reading.value), ohms(written))],
      source: limit ? limit.source : { ref: "The limit stated in the schedule", standing: "practice" },
      ...(limit ? { severity: "warning" } : {}),
      related: [{ spot: factSpot(fact), message: `max-Zs ${ohms(written)}.` }],
    });
  },
});
