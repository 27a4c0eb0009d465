import { megohms, step } from "../../calc/result.ts";
import { workOf } from "../../circuit/supply.ts";
import type { WayStudy } from "../../circuit/way.ts";
import { insulationKind, insulationLimit, insulationOf, pairWords } from "../../readings/insulation.ts";
import { deadTestPractice } from "../../tables/dead-test-practice.ts";
import { daysBetween } from "../../text/days.ts";
import { shownMegohms } from "../common/dead-words.ts";
import { amount, valueSpot, wayRule } from "../frame/rule.ts";

/** What was read a year before as well is new no longer: how it has changed since is said by its fall. */
function isTestedAgain({ deadTests }: WayStudy): boolean {
  const days = deadTests.filter(({ facts }) => facts.has("insulation")).map(({ on }) => on);
  const [latest, first] = [days[0], days.at(-1)];
  return latest !== undefined && first !== undefined && daysBetween(first, latest) > 365;
}

export default wayRule({
  id: "insulation/low-on-new",
  severity: "information",
  since: "0.1",
  title: "Insulation resistance passes but is poor for new wiring.",
  why: "Sound new cable reads hundreds of megohms. One or two mean damp plaster, a trapped core, or equipment left connected: dry it out or disconnect it, and test again before handing over.",
  opens: true,
  clauses: ["643.3"],
  examples: [
    {
      bad: `way 1 radial "Lights" {
  dead 2026-03-04 {
    insulation   500 V  L-N 310 MΩ  L-E 1.4 MΩ  N-E 290 MΩ
                                        ^^^^^^
  }
}`,
      good: `way 1 radial "Lights" {
  dead 2026-03-04 {
    insulation   500 V  L-N 310 MΩ  L-E 1.4 MΩ  N-E 290 MΩ "Plaster still damp; to be repeated before handover"
  }
}`,
    },
  ],
  check(study, report) {
    const test = insulationOf(study);
    const minimum = insulationLimit(study)?.minimum;
    if (study.isSpare || !test || !minimum || test.remarked || insulationKind(study) !== "up-to-500") return;
    if (workOf(study) === "existing" || isTestedAgain(study)) return;
    const { newInsulation } = deadTestPractice;
    for (const value of test.values) {
      const { fact, quantity } = value;
      if (quantity.sign !== "=" || quantity.value < minimum.value || quantity.value >= newInsulation.value) continue;
      report(valueSpot(fact, quantity), {
        message: `${pairWords(value, test)} reads ${shownMegohms(quantity)}: it passes, but new wiring should read well over ${megohms(newInsulation.value)}: look for damp or connected equipment.`,
        value: amount(quantity.value, "Ω"),
        limit: amount(newInsulation.value, "Ω"),
        least: true,
        steps: [...minimum.steps, step("new wiring, at least", "", megohms(newInsulation.value))],
        source: newInsulation.source,
      });
    }
  },
});
