import { capacityGap } from "../../circuit/overload.ts";
import { factSpot, wayRule } from "../frame/rule.ts";

export default wayRule({
  id: "design/capacity-not-calculated",
  severity: "information",
  since: "0.1",
  title: "A cable and method for which no table here gives a capacity.",
  why: "Nothing was found wrong because nothing could be calculated: hold the device against the maker's figure or your own copy of Appendix 4.",
  clauses: ["523.1"],
  examples: [
    {
      bad: `way 1 radial "Furnace alarm" {
  device  BS EN 60898 B16 6 kA
  cable   mineral line 1.5 mm²
  route   clipped method C
  ^^^^^^^^^^^^^^^^^^^^^^^^
}`,
      good: `way 1 radial "Furnace alarm" {
  device  BS EN 60898 B16 6 kA
  cable   multicore line 2.5 mm² cpc 2.5 mm²
  route   clipped method C
}`,
    },
  ],
  check(study, report) {
    if (!study.device?.rating) return;
    const gap = capacityGap(study);
    if (!gap?.stated) return;
    report(factSpot(gap.fact), {
      message: `The capacity on this stretch could not be calculated: ${gap.missing}. The device is not held against the cable here.`,
      related: study.cable ? [{ spot: factSpot(study.cable.fact), message: "The cable it is about." }] : [],
    });
  },
});
