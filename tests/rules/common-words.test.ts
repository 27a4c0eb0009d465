/** Words that several checks share, where a condition turns them. */
import { describe, expect, it } from "vitest";
import { cableWords } from "../../server/rules/common/dead-words.ts";
import { find } from "../helpers/find.ts";

describe("a cable in words", () => {
  it.each([
    [{ line: 2.5, cpc: 1.5, parallel: { line: 1, cpc: 1 } }, "2.5 mm² with a 1.5 mm² cpc"],
    [{ line: 2.5, cpc: undefined, parallel: { line: 1, cpc: 1 } }, "2.5 mm²"],
    [{ line: 16, cpc: 16, parallel: { line: 2, cpc: 2 } }, "2 × 16 mm², each with a 16 mm² cpc"],
    [{ line: 16, cpc: 25, parallel: { line: 2, cpc: 1 } }, "2 × 16 mm² and 25 mm² cpc"],
    [{ line: 95, cpc: 50, parallel: { line: 3, cpc: 2 } }, "3 × 95 mm² and 2 × 50 mm² cpc"],
  ] as const)("%j", (cable, words) => expect(cableWords(cable as Parameters<typeof cableWords>[0])).toBe(words));
});

describe("a resistance that has risen", () => {
  const risen = (earlier: string, later: string) =>
    find(
      "drift/resistance-risen",
      `way 1 radial "Water heater" {
dead 2021-03-05 {
${earlier}
}
dead 2026-03-05 {
${later}
}
}`,
      { stage: "tested", work: "existing" },
    );

  // Copper from 5 °C to 20 °C: 0.50 Ω / 0.94 = 0.53 Ω; 0.4 % for each kelvin.
  it("is brought to 20 °C where a temperature is noted, and only there", () => {
    const plain = risen("R1+R2 0.50 Ω", "R1+R2 0.85 Ω")[0]?.working ?? "";
    expect(plain).toContain("0.85 Ω − 0.50 Ω = 0.35 Ω");
    expect(plain).not.toContain("at 20 °C");
    const brought = risen("temperature 5 °C\nR1+R2 0.50 Ω", "R1+R2 0.95 Ω")[0]?.working ?? "";
    expect(brought).toContain("the reading of 2021-03-05 at 20 °C = 0.50 Ω = 0.53 Ω");
    expect(brought).not.toContain("the reading of 2026-03-05 at 20 °C");
  });

  // A fifth more, and 0.1 Ω at least.
  it.each([
    ["1.00", "1.20", 0],
    ["1.00", "1.21", 1],
    ["0.20", "0.30", 0],
    ["0.20", "0.31", 1],
    ["1.00", "0.50", 0],
  ])("from %s Ω to %s Ω", (earlier, later, count) => {
    expect(risen(`R1+R2 ${earlier} Ω`, `R1+R2 ${later} Ω`)).toHaveLength(count);
  });
});
