import { straightRun } from "../../calc/containment.ts";
import { metres } from "../../calc/result.ts";
import { workOf } from "../../circuit/supply.ts";
import { isStated } from "../../conduits/sections.ts";
import { containmentRule, inIt } from "../common/containments.ts";
import { wordsAfter } from "../common/writing.ts";
import { amount, factSpot } from "../frame/rule.ts";

export default containmentRule({
  id: "containment/run-not-stated",
  severity: "warning",
  since: "0.1",
  title: "The length or the bends of a conduit are not stated.",
  why: "Cables have to be pulled round bends, so a conduit that bends holds far fewer than a short straight one. Without length and bends too many cables may be accepted. Write bends 0 where it runs straight.",
  clauses: ["522.8"],
  examples: [
    {
      bad: `wayfile 1
installation "Mill" {
  board A "Board" {
    fed-from     supply
    containment C1 conduit 25 mm length 6 m
    ^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^
    containment C2 conduit 25 mm
    ^^^^^^^^^^^^^^^^^^^^^^^^^^^^
    way 1 radial "Planer" {
      cable        singles  line 4 mm²  cpc 4 mm²
      route        in C1
      route        in C2
    }
  }
}`,
      good: `wayfile 1
installation "Mill" {
  board A "Board" {
    fed-from     supply
    containment C1 conduit 25 mm length 6 m bends 2
    containment C2 conduit 25 mm length 2 m
    containment T1 trunking 50 mm by 50 mm
    containment C3 conduit 20 mm
    way 1 radial "Planer" {
      cable        singles  line 4 mm²  cpc 4 mm²
      route        in T1
      route        in C1
      route        in C2
    }
  }
}`,
    },
  ],
  judge(study, report) {
    if (!study.isConduit || study.contents.length === 0) return;
    const short = straightRun();
    const old = study.contents.some(({ study: way }) => workOf(way) === "existing");
    for (const section of study.sections.filter((one) => !isStated(one))) {
      const { fact, length } = section;
      const noBends = length !== undefined;
      report(factSpot(fact), {
        message: noBends
          ? `The bends in ${study.name} are not stated, and over ${metres(length)} they matter: write bends and the number between draw-in points.`
          : `The length of ${study.name} between draw-in points is not stated, so what it may hold is not known: write length.`,
        ...(noBends ? { value: amount(length, "m"), limit: amount(short.value, "m"), source: short.source } : {}),
        related: inIt(study),
        fixes: noBends ? [0, 1, 2].flatMap((count) => wordsAfter(fact, `bends ${count}`)) : [],
        ...(old ? { severity: "information" as const } : {}),
      });
    }
  },
});
