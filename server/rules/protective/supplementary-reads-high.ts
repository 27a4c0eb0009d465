import { supplementaryLimit } from "../../boards/supplementary.ts";
import { ohms } from "../../calc/result.ts";
import { deviceName } from "../../circuit/describe.ts";
import { quantityOf } from "../../model/values.ts";
import { amount, amountOf, boardRule, factSpot, valueSpot } from "../frame/rule.ts";

const sample = (reading: string, marks = "") => `wayfile 1
installation "Sample" {
  standard     BS 7671:2018+A2:2022
  supply {
    earthing     TN-S
  }
  board A "Board" {
    fed-from     supply
    supplementary-bonding bathroom 4 mm² continuity ${reading}
${marks}    way 1 radial "Shower" {
      device       BS EN 60898 B40 6 kA
      cable        flat-twin  line 10 mm²  cpc 4 mm²
      serves       shower
      place        bathroom
    }
  }
}`;

export default boardRule({
  id: "protective/supplementary-reads-high",
  severity: "error",
  since: "0.1",
  title: "Supplementary bonding reads too much to limit the touch voltage.",
  why: "Until the device opens, its fault current causes a voltage between two parts a person can hold at once. R is at most 50 V divided by the current that operates the device. Look for a loose clamp or a length of plastic pipe.",
  opens: true,
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
        message: `Supplementary bonding (${place.value}) reads ${ohms(reading.value)}, above ${ohms(limit.value)} for ${rcd ? "the RCD" : study.device ? `the ${deviceName(study.device)}` : "the device"} of way ${study.way.id}: look at its clamps.`,
        value: amount(reading.value, "Ω"),
        limit: amountOf(limit),
        steps: limit.steps,
        source: limit.source,
        related: study.device
          ? [{ spot: factSpot(study.device.fact), message: "The device that decides the limit." }]
          : [],
      });
    }
  },
});
