import type { WayStudy } from "../../circuit/way.ts";
import { containmentRule, inIt } from "../common/containments.ts";
import { factSpot } from "../frame/rule.ts";

const sample = (second: string) => `wayfile 1
installation "Mill" {
  board A "Board" {
    fed-from     supply
    containment T1 trunking 50 mm by 50 mm
${second}
    way 1 radial "Bench" {
      cable        singles  line 2.5 mm²  cpc 2.5 mm²
      route        method B  in T1
      serves       sockets
    }
    way 2 radial "Bell wires" {
      cable        singles  line 1 mm²  cpc-by none
      route        method B  in T1
      serves  USE
    }
  }
}`;

/** Circuits at extra-low voltage, or that carry signals. */
const isLow = ({ uses, supply }: WayStudy): boolean =>
  supply.kind === "public" && uses.size > 0 && [...uses].every((use) => use === "selv" || use === "data");

export default containmentRule({
  id: "containment/voltages-mixed",
  severity: "warning",
  since: "0.1",
  title: "Extra-low voltage or data cables lie with mains in one conduit or trunking.",
  why: "A damaged mains cable puts its voltage on bell wires or a network cable that a person may touch. Every cable there is insulated for the highest voltage present, or they lie in compartments of their own.",
  clauses: ["528.1"],
  examples: [
    {
      bad: sample(`    ${"^".repeat("containment T1 trunking 50 mm by 50 mm".length)}`).replace("USE", "     selv"),
      good: sample("").replace("USE", "     lighting"),
    },
  ],
  judge(study, report) {
    const low = study.circuits.filter(isLow);
    const mains = study.circuits.filter((one) => one.supply.kind === "public" && one.uses.size > 0 && !isLow(one));
    const [first] = low;
    if (!first || mains.length === 0) return;
    report(factSpot(study.fact), {
      message: `Way ${first.way.id} lies with mains in ${study.name}: its cable must be insulated for 230 V, or lie in a compartment of its own. If it does, depart from 528.1 and say how.`,
      source: { ref: "BS 7671:2018+A2:2022, 528.1", standing: "memory" },
      related: inIt(study),
    });
  },
});
