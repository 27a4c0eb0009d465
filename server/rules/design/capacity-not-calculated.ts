import { capacityGap } from "../../circuit/overload.ts";
import { cableWords } from "../common/dead-words.ts";
import { factSpot, wayRule } from "../frame/rule.ts";

const ownWay = " State the figures of its maker or your own copy in a cable-type: carries, drop, r1, r2 and by.";

export default wayRule({
  id: "design/capacity-not-calculated",
  severity: "information",
  since: "0.1",
  title: "The current-carrying capacity of a cable cannot be calculated.",
  why: "No finding does not mean that the device protects the cable: nothing could be calculated. Compare the device with the maker's figure or your own copy of Appendix 4.",
  clauses: ["523.1"],
  examples: [
    {
      bad: `way 1 radial "Furnace alarm" {
  device       BS EN 60898 B16 6 kA
  cable        multicore aluminium  line 16 mm²  cpc 16 mm²
  route        clipped  method C
  ^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^
}`,
      good: `way 1 radial "Furnace alarm" {
  device       BS EN 60898 B16 6 kA
  cable        multicore  line 2.5 mm²  cpc 2.5 mm²
  route        clipped  method C
}`,
    },
  ],
  check(study, report) {
    if (!study.device?.rating) return;
    const gap = capacityGap(study);
    if (!gap?.stated) return;
    report(factSpot(gap.fact), {
      message: `The current-carrying capacity here cannot be calculated: ${gap.missing}.${study.cable?.own?.carries ? "" : ownWay}`,
      related: study.cable
        ? [{ spot: factSpot(study.cable.fact), message: `Cable of the circuit: ${cableWords(study.cable)}.` }]
        : [],
    });
  },
});
