import { megohms, step } from "../../calc/result.ts";
import { insulationLimit, leastToEarth } from "../../readings/insulation.ts";
import { deadTestPractice } from "../../tables/dead-test-practice.ts";
import { listed } from "../../text/words.ts";
import { relatedFact, shownMegohms } from "../common/dead-words.ts";
import { amount, boardRule, valueSpot } from "../frame/rule.ts";

const way = (id: number, reading: string) => `    way ${id} radial "Circuit ${id}" {
      dead 2026-03-04 {
        insulation   500 V  L-N 300 MΩ  L-E ${reading}  N-E 300 MΩ
      }
    }
`;
const board = (first: string, mark: string) => `wayfile 1
installation "Sample" {
  standard     BS 7671:2018+A2:2022
  board A "Board" {
    fed-from     supply
${way(1, first).replace("N-E 300 MΩ\n", `N-E 300 MΩ\n${mark}`)}${way(2, ">999 MΩ")}${way(3, "640 MΩ")}${way(4, ">999 MΩ")}  }
}
`;

export default boardRule({
  id: "insulation/outlier",
  severity: "information",
  since: "0.1",
  title: "Insulation resistance of one circuit is far lower than that of its neighbours.",
  why: "It passes, but it differs from the rest: local damp, a nick in a cable, or a load left connected on that circuit alone. Investigate it now, or first at the next inspection.",
  opens: true,
  clauses: ["643.3"],
  examples: [
    {
      bad: board("8 MΩ", "                                            ^^^^\n"),
      good: board("180 MΩ", ""),
    },
  ],
  check({ studies }, report) {
    const all = studies.flatMap((study) => {
      const value = study.isSpare ? undefined : leastToEarth(study);
      return value && value.quantity.sign !== "<" ? [{ study, value }] : [];
    });
    const { insulationOutlier, insulationWays } = deadTestPractice;
    if (all.length < insulationWays.value) return;
    const sorted = all.map(({ value }) => value.quantity.value).sort((a, b) => a - b);
    // The lower middle one: with bounds counted as values the true median is no less.
    const median = sorted[Math.floor((sorted.length - 1) / 2)] ?? 0;
    for (const { study, value } of all) {
      const { quantity, fact, pair } = value;
      const minimum = insulationLimit(study)?.minimum;
      if (quantity.sign !== "=" || quantity.value >= median * insulationOutlier.value) continue;
      if (minimum && quantity.value < minimum.value) continue;
      const alike = all.filter(
        (other) =>
          pair === "N-E" &&
          other.study !== study &&
          other.value.pair === pair &&
          other.value.quantity.value === quantity.value,
      );
      const shared = alike.map((other) => other.study.way.id);
      report(valueSpot(fact, quantity), {
        message: `Way ${study.way.id} reads ${shownMegohms(quantity)} ${pair}, its neighbours about ${megohms(median)}: ${
          shared.length > 0
            ? `${shared.length === 1 ? `way ${listed(shared)} reads` : `ways ${listed(shared)} read`} the same, so look first for a neutral shared between them, then for damp or damage.`
            : "look for damp, damage or a load left connected."
        }`,
        value: amount(quantity.value, "Ω"),
        limit: amount(median * insulationOutlier.value, "Ω"),
        least: true,
        steps: [step("middle of the board's circuits", "", megohms(median))],
        source: insulationOutlier.source,
        related: all
          .filter((other) => other.study !== study)
          .slice(0, 8)
          .map((other) =>
            relatedFact(
              other.value.fact,
              `Way ${other.study.way.id}: insulation ${shownMegohms(other.value.quantity)}.`,
            ),
          ),
      });
    }
  },
});
