import { isSelvOrPelv } from "../../circuit/circuit-kind.ts";
import { gradeOfMissing } from "../../circuit/describe.ts";
import { deadTestsDue } from "../../circuit/supply.ts";
import { hasDead } from "../../readings/dead.ts";
import { pointOf, polarityAtPoints } from "../../readings/polarity.ts";
import { listed, relatedFact } from "../common/dead-words.ts";
import { wayRule, wordSpot } from "../frame/rule.ts";

export default wayRule({
  id: "polarity/missing",
  severity: "error",
  since: "0.1",
  title: "Polarity is not recorded.",
  why: "Every single-pole switch and fuse is in the line, every outlet the right way round, and the shell of a screw lampholder on the neutral. Inspect or test each point, then record it.",
  clauses: ["643.6"],
  examples: [
    {
      setting: { stage: "dead-tested" },
      bad: `way 1 radial "Lights" {
^^^
  serves       lighting
  dead 2026-03-04 {
    R1+R2        0.61 Ω
  }
}`,
      good: `way 1 radial "Lights" {
  serves       lighting
  dead 2026-03-04 {
    R1+R2        0.61 Ω
    polarity     ok
  }
}`,
    },
    {
      setting: { stage: "dead-tested" },
      bad: `way 1 ring "Sockets" {
  dead 2026-03-04 {
    at S1        L-N 0.22 Ω  L-E 0.29 Ω  polarity ok
    at S2        L-N 0.22 Ω  L-E 0.29 Ω
    ^^
  }
}`,
      good: `way 1 ring "Sockets" {
  dead 2026-03-04 {
    at S1        L-N 0.22 Ω  L-E 0.29 Ω  polarity ok
    at S2        L-N 0.22 Ω  L-E 0.29 Ω  polarity ok
  }
}`,
    },
  ],
  check(study, report) {
    const { deadTests, liveTests, facts } = study;
    if (study.isSpare || study.isBare || !deadTestsDue(study) || isSelvOrPelv(study)) return;
    if (hasDead(study, "polarity") || facts.isUnread("live")) return;
    if (liveTests.some((test) => test.facts.has("polarity"))) return;
    const tests = [...deadTests, ...liveTests];
    // Polarity may stand on the line of R1+R2.
    if (tests.some((test) => test.facts.broken.some((word) => word === "at" || word === "R1+R2"))) return;
    const { shown, bare } = polarityAtPoints(study);
    const [first] = bare;
    if (shown.size > 0 && !first) return;
    if (shown.size > 0 && first) {
      const names = [...new Set(bare.map(pointOf))];
      report(wordSpot(first), {
        ...gradeOfMissing(study),
        message: `Polarity is not recorded at ${listed(names)}: record it there, or once for the whole circuit.`,
        related: bare.slice(1, 8).map((fact) => relatedFact(fact, `Polarity is not recorded at ${pointOf(fact)}.`)),
      });
      return;
    }
    const lamps = study.uses.has("lighting")
      ? " Switches in the line; the shell of screw lampholders on the neutral."
      : "";
    report(wordSpot(study.way.header), {
      ...gradeOfMissing(study),
      message: `Polarity is not recorded: record it once every point has been inspected or tested.${lamps}`,
      related: study.dead ? [relatedFact(study.dead.header, "The latest dead tests.")] : [],
    });
  },
});
