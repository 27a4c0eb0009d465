import { metres, ohms } from "../../calc/result.ts";
import { conductorPerMetre, mayReadLess } from "../../circuit/cpc.ts";
import { exactReading } from "../../circuit/supply.ts";
import type { WayStudy } from "../../circuit/way.ts";
import { type Quantity, quantityOf } from "../../model/values.ts";
import {
  expectedConductorAt,
  type LengthMismatch,
  latestDead,
  lengthMismatch,
  unslipped,
} from "../../readings/dead.ts";
import { r2Share } from "../../readings/r2.ts";
import { uncertaintyOnWay } from "../../readings/uncertainty.ts";
import { deadTestPractice } from "../../tables/dead-test-practice.ts";
import { shown } from "../common/dead-words.ts";
import { offLength } from "../common/off-length.ts";
import { beyondTolerance } from "../common/uncertainty-words.ts";
import { misread } from "../common/writing.ts";
import { valueSpot, wayRule } from "../frame/rule.ts";

export default wayRule({
  id: "continuity/r2-against-length",
  severity: "warning",
  compares: true,
  since: "0.1",
  title: "R2 does not fit the length and the size of the protective conductor.",
  why: "A hundredth of an ohm at a distant appliance is likely to be the pipework and not the conductor: it was measured with the appliance and its metal still connected, and the conductor itself may be broken. With the circuit isolated, disconnect it at the far end and measure again.",
  opens: true,
  clauses: ["643.2.1"],
  examples: [
    {
      bad: `way 1 radial "Boiler" {
  cable        flat-twin  line 2.5 mm²  cpc 1.5 mm²
  length       5 m
  dead 2026-03-04 {
    R2           0.01 Ω
                 ^^^^^^
  }
}`,
      good: `way 1 radial "Boiler" {
  cable        flat-twin  line 2.5 mm²  cpc 1.5 mm²
  length       5 m
  dead 2026-03-04 {
    R2           0.06 Ω
  }
}`,
    },
    {
      bad: `way 1 radial "Boiler" {
  cable        flat-twin  line 2.5 mm²  cpc 1.5 mm²
  length       18 m
  dead 2026-03-04 {
    R2           0.61 Ω
                 ^^^^^^
  }
}`,
      good: `way 1 radial "Boiler" {
  cable        flat-twin  line 2.5 mm²  cpc 1.5 mm²
  length       18 m
  parallel-path "Boiler casing bonded to the flow pipe"
  dead 2026-03-04 {
    R2           0.03 Ω
  }
}`,
    },
  ],
  check(study, report) {
    const latest = latestDead(study, "R2");
    const quantity = quantityOf(latest?.fact.args.value);
    const { cable, length } = study;
    if (study.isSpare || study.isRing || !latest || !quantity || !cable || !length) return;
    if (quantity.sign === ">" || quantity.value <= 0) return;
    const expected = expectedConductorAt(study, "cpc", latest.test);
    // Line and cpc that are interchanged are reported as that.
    const metre = conductorPerMetre(cable, "cpc");
    if (!expected || !metre || r2Share(study)?.swapped) return;
    const { meterUncertainty, impliedLength: least } = deadTestPractice;
    const implied = quantity.value / metre.value;
    const beside = implied < least.value && expected.value - quantity.value > meterUncertainty.value;
    const mismatch = lengthMismatch(quantity, expected.value);
    if (!mismatch && !beside) return;
    const high = mismatch?.kind === "high";
    if (!high && mayReadLess(study)) return;
    const cause = (high ? aboveWhole(study, quantity) : undefined) ?? causeOf(quantity, mismatch, beside);
    const meter = uncertaintyOnWay(study, latest.fact, quantity);
    report(valueSpot(latest.fact, quantity), {
      message: `R2 reads ${shown(quantity)}; ${metres(length.value)} of this conductor gives ${ohms(expected.value)}. ${cause}${mismatch ? beyondTolerance(meter, mismatch.by) : ""}`,
      ...offLength(study, quantity, expected, high ? "high" : "low", meter),
      fixes:
        !beside && mismatch?.slip !== undefined
          ? [misread(latest.fact, quantity, unslipped(quantity, mismatch.slip), "Decimal point misread")]
          : [],
    });
  },
});

function aboveWhole(study: WayStudy, quantity: Quantity): string | undefined {
  const whole = exactReading(study.R1R2);
  if (!whole || quantity.value < whole.value) return undefined;
  return `R1+R2 reads ${ohms(whole.value)} with the line included, so R2 alone must be less: check both figures, and null the long lead.`;
}

function causeOf(quantity: Quantity, mismatch: LengthMismatch | undefined, beside: boolean): string {
  if (beside) return "Was it read through pipework? Disconnect the far end and repeat.";
  if (mismatch?.slip !== undefined) return `Check the decimal point: was it ${unslipped(quantity, mismatch.slip)}?`;
  return mismatch?.kind === "high"
    ? "Look for a poor joint or a smaller conductor, and null the long lead."
    : "Look for a parallel path, and check the length.";
}
