import { fallsShort } from "../../calc/compare.ts";
import { practiceOf } from "../../calc/practice.ts";
import { isInGround } from "../../circuit/route-capacity.ts";
import { workOf } from "../../circuit/supply.ts";
import { amount, valueSpot, wayRule } from "../frame/rule.ts";

export default wayRule({
  id: "design/buried-too-shallow",
  severity: "warning",
  since: "0.1",
  title: "A cable in the ground lies where a spade reaches it.",
  why: "The depth has to be enough for any disturbance that can reasonably be foreseen, and the regulations give no figure: whoever digs there must not meet the cable. Bury it deeper, or cover it with slabs or tiles and record how.",
  clauses: ["522.8.10"],
  examples: [
    {
      bad: `way 1 radial "Gate" {
  device       BS EN 61009 B16 6 kA 30 mA type A
  cable        armoured 70 °C  line 2.5 mm²  cpc 2.5 mm²  cores 3
  route        buried  length 14 m  method D  depth 50 mm
                                                    ^^^^^
}`,
      good: `way 1 radial "Gate" {
  device       BS EN 61009 B16 6 kA 30 mA type A
  cable        armoured 70 °C  line 2.5 mm²  cpc 2.5 mm²  cores 3
  route        buried  length 14 m  method D  depth 600 mm
}`,
    },
  ],
  check(study, report) {
    if (study.isSpare || workOf(study) === "existing") return;
    const least = practiceOf("buried-depth");
    const usual = practiceOf("buried-usual");
    for (const route of study.facts.all("route")) {
      const { depth } = route.args;
      if (!depth || !isInGround(route) || !fallsShort(depth.value, least.value)) continue;
      report(valueSpot(route, depth), {
        message: `A cable ${depth.value} mm deep is within reach of a spade; ${least.value} mm to ${usual.value} mm is common practice: bury it deeper, or protect it and record a departure with how.`,
        value: amount(depth.value, "mm"),
        limit: amount(least.value, "mm"),
        least: true,
        source: least.source,
      });
    }
  },
});
