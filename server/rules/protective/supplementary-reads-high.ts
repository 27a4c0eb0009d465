import { supplementaryLimit } from "../../boards/supplementary.ts";
import { ohms } from "../../calc/result.ts";
import { deviceName } from "../../circuit/describe.ts";
import { quantityOf } from "../../model/values.ts";
import { amount, amountOf, boardRule, factSpot, valueSpot } from "../frame/rule.ts";

const sample = (reading: string, marks = "") => `wayfile 1
installation "Sample" {
  standard BS 7671:2018+A2:2022
  supply {
    earthing TN-S
  }
  board A "Board" {
    fed-from supply
    supplementary-bonding bathroom 4 mm² continuity ${reading}
${marks}    way 1 radial "Shower" {
      device  BS EN 60898 B40 6 kA
      cable   flat-twin line 10 mm² cpc 4 mm²
      serves  shower
      place   bathroom
    }
  }
}`;

export default boardRule({
  id: "protective/supplementary-reads-high",
  severity: "error",
  since: "0.1",
  title: "Supplementary bonding that reads too much to hold the touch voltage.",
  why: "Until the device opens, the whole fault current may drop its voltage between two things a person holds at once. R is at most 50 V over the current that clears the fault. Look for a loose clamp or a plastic length of pipe.",
  clauses: ["415.2.2", "701.415.2"],
  examples: [{ bad: sample("0.31 Ω", `${" ".repeat(52)}^^^^^^\n`), good: sample("0.04 Ω") }],
  check({ board, studies }, report) {
    for (const fact of board.head.facts.all("supplementary-bonding")) {
      const { continuity, place } = fact.args;
      const reading = continuity && quantityOf(continuity);
      const found = reading && supplementaryLimit(fact, studies);
      if (!reading || reading.sign === "<" || !found || "missing" in found) continue;
      const { limit, study } = found;
      if (reading.value <= limit.value) continue;
      const rcd = study.rcds.length > 0;
      report(valueSpot(fact, reading), {
        message: `The supplementary bonding (${place.value}) reads ${ohms(reading.value)}; with ${rcd ? "the RCD" : study.device ? deviceName(study.device) : "the device"} of way ${study.way.id} it may be ${ohms(limit.value)} at most. Look at its clamps, and for a length of plastic.`,
        value: amount(reading.value, "Ω"),
        limit: amountOf(limit),
        steps: limit.steps,
        source: limit.source,
        related: study.device
          ? [{ spot: factSpot(study.device.fact), message: "The device that needs the most current." }]
          : [],
      });
    }
  },
});
