import { megohms, remark } from "../../calc/result.ts";
import { leastToEarth } from "../../readings/insulation.ts";
import { deadTestPractice } from "../../tables/dead-test-practice.ts";
import { relatedFact, shownMegohms } from "../common/dead-words.ts";
import { amount, boardRule, valueSpot } from "../frame/rule.ts";

const board = (mark: string, ...readings: string[]) => `wayfile 1
installation "Sample" {
  standard     BS 7671:2018+A2:2022
  board A "Board" {
    fed-from     supply
${readings
  .map(
    (reading, index) => `    way ${index + 1} radial "Circuit ${index + 1}" {
      dead 2026-03-04 {
        insulation   500 V  L-N 30 MΩ  L-E ${reading}  N-E 30 MΩ
${index === 0 ? mark : ""}      }
    }
`,
  )
  .join("")}  }
}
`;

export default boardRule({
  id: "insulation/all-low",
  severity: "information",
  since: "0.1",
  title: "The insulation of all circuits of a board reads low and alike.",
  why: "Cables do not age in step, so something they share was measured: a surge protective device, a meter, electronics left connected, or a damp board. Isolate, disconnect it and test again.",
  opens: true,
  clauses: ["643.3"],
  examples: [
    {
      bad: board("                                           ^^^^^^\n", "6.2 MΩ", "6.8 MΩ", "7.4 MΩ", "6.5 MΩ"),
      good: board("", "6.2 MΩ", "68 MΩ", "140 MΩ", "65 MΩ"),
    },
  ],
  check({ studies }, report) {
    const all = studies.flatMap((study) => {
      const value = study.isSpare ? undefined : leastToEarth(study);
      return value ? [{ study, value }] : [];
    });
    const { insulationWays, lowInsulation, alikeInsulation } = deadTestPractice;
    const [first, ...others] = all;
    if (!first || all.length < insulationWays.value) return;
    if (!all.every(({ value: { quantity } }) => quantity.sign === "=" && quantity.value < lowInsulation.value)) return;
    const values = all.map(({ value }) => value.quantity.value);
    const [least, most] = [Math.min(...values), Math.max(...values)];
    if (least <= 0 || most > least * alikeInsulation.value) return;
    const { fact, quantity } = first.value;
    report(valueSpot(fact, quantity), {
      message: `All ${all.length} circuits read ${megohms(least)} to ${megohms(most)}: disconnect SPDs, meters and electronics, look for damp in the board, and repeat.`,
      value: amount(most, "Ω"),
      limit: amount(lowInsulation.value, "Ω"),
      least: true,
      steps: [
        remark(`all below ${megohms(lowInsulation.value)}`),
        remark(`greatest / least under ${alikeInsulation.value}`),
      ],
      source: lowInsulation.source,
      related: others
        .slice(0, 8)
        .map((other) =>
          relatedFact(other.value.fact, `Way ${other.study.way.id}: insulation ${shownMegohms(other.value.quantity)}.`),
        ),
    });
  },
});
