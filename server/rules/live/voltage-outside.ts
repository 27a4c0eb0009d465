import { exceeds, fallsShort } from "../../calc/compare.ts";
import { volts } from "../../calc/result.ts";
import { supplyVoltage } from "../../calc/supply-voltage.ts";
import { amount, amountOf, valueSpot, wayRule } from "../rule.ts";

/** A three-phase circuit may be measured from line to line. */
const lineToLine = Math.sqrt(3);

export default wayRule({
  id: "live/voltage-outside",
  severity: "warning",
  since: "0.1",
  title: "A voltage outside what the supply may have.",
  why: "Too high shortens the life of everything connected; a lost neutral looks like this. Too low is a long cable, a poor joint, or the distributor's matter. Measure at the origin too.",
  clauses: ["313.1", "643.11"],
  examples: [
    {
      setting: { stage: "tested" },
      bad: `way 1 radial "Water heater" {
  live 2026-03-05 {
    voltage  261 V
             ^^^^^
  }
}`,
      good: `way 1 radial "Water heater" {
  live 2026-03-05 {
    voltage  238 V
  }
}`,
    },
  ],
  check({ live, supply, threePhase, uses }, report) {
    const fact = live?.facts.one("voltage");
    if (!fact || uses.has("selv")) return;
    const { value } = fact.args;
    const { least, greatest } = supplyVoltage(supply.U0);
    const within = (factor: number) =>
      !fallsShort(value.value, least.value * factor) && !exceeds(value.value, greatest.value * factor);
    if (within(1) || ((threePhase || supply.threePhase) && within(lineToLine))) return;
    const over = value.value > greatest.value;
    const limit = over ? greatest : least;
    report(valueSpot(fact, value), {
      message: `${volts(value.value)} is ${over ? "above" : "below"} the ${volts(limit.value)} that a supply of ${volts(supply.U0)} may ${over ? "reach" : "fall to"}.${over ? "" : " Measure at the origin to tell the supply from the circuit."}`,
      value: amount(value.value, "V"),
      limit: amountOf(limit),
      least: !over,
      steps: limit.steps,
      source: limit.source,
    });
  },
});
