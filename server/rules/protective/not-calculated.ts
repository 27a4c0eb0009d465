import { conductorPerMetre, whyNoCpc } from "../../circuit/cpc.ts";
import { deviceName } from "../../circuit/describe.ts";
import type { Cable, WayStudy } from "../../circuit/way.ts";
import { stretchEnclosure } from "../../conduits/enclosure.ts";
import type { Fix } from "../../model/problems.ts";
import type { FactOf } from "../../model/values.ts";
import { latestDead } from "../../readings/dead.ts";
import { wordsAfter } from "../common/writing.ts";
import { factSpot, valueSpot, wayRule } from "../frame/rule.ts";

export default wayRule({
  id: "protective/not-calculated",
  severity: "information",
  since: "0.1",
  title: "The resistance of an armour, conduit or trunking is not known, so the loop is not judged.",
  why: "No finding does not mean that the loop is right: nothing could be calculated. The resistance of armour follows from size and number of cores; that of conduit and trunking from the maker's figure or a measurement.",
  clauses: ["543.1.1", "411.4.4"],
  examples: [
    {
      bad: `way 1 radial "Sump pump" {
  device       BS EN 60898 C16 10 kA
  cable        armoured 90 °C  line 2.5 mm²  cpc-by armour
                                                    ^^^^^^
  length       20 m
  serves       motor
}`,
      good: `way 1 radial "Sump pump" {
  device       BS EN 60898 C16 10 kA
  cable        armoured 90 °C  line 2.5 mm²  cpc-by armour  cores 2
  length       20 m
  serves       motor
}`,
    },
    {
      bad: `way 1 radial "Lathe" {
  device       BS EN 60898 C16 10 kA
  cable        singles  line 4 mm²  cpc-by conduit
                                           ^^^^^^^
  length       20 m
  serves       motor
}`,
      good: `way 1 radial "Lathe" {
  device       BS EN 60898 C16 10 kA
  cable        singles  line 4 mm²  cpc-by conduit
  length       20 m
  serves       motor
  dead 2026-03-04 {
    R1+R2        0.14 Ω
  }
}`,
    },
  ],
  check(study, report) {
    const { cable, device } = study;
    if (!cable || study.isSpare || !device || !study.length || !isSteel(cable) || conductorPerMetre(cable, "cpc"))
      return;
    // What is of plastic has no resistance to ask a maker for: that is reported by itself.
    if (study.facts.all("route").some((route) => notThere(study, route))) return;
    // A reading is worth more than a prediction, and is judged for itself.
    if (latestDead(study, "R1+R2") || study.liveTests.some(({ facts }) => facts.has("Zs"))) return;
    const { cpcBy } = cable.fact.args;
    report(cpcBy && cable.described === cable.fact ? valueSpot(cable.fact, cpcBy) : factSpot(cable.fact), {
      message: `The loop of this circuit is not judged: ${whyNoCpc(cable)}.`,
      related: [{ spot: factSpot(device.fact), message: `Protective device: ${deviceName(device)}.` }],
      fixes: coresFor(study, cable),
    });
  },
});

function notThere(study: WayStudy, route: FactOf<"way", "route">): boolean {
  if (study.cable?.cpcBy === "armour") return false;
  const found = stretchEnclosure(study, route);
  return found !== "steel" && found !== "unknown";
}

const isSteel = ({ construction, cpcBy, cpc }: Cable): boolean =>
  cpcBy === "armour" ? construction === "armoured" : cpc === undefined && (cpcBy === "conduit" || cpcBy === "trunking");

/** The numbers of cores such a cable is made with, for the person to choose. */
function coresFor({ threePhase }: WayStudy, cable: Cable): Fix[] {
  if (cable.cpcBy !== "armour" || cable.cores !== undefined || cable.described !== cable.fact) return [];
  return (threePhase ? [4, 3] : [2, 3]).flatMap((cores) => wordsAfter(cable.fact, `cores ${cores}`));
}
