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

describe("a point that reads open", () => {
  const found = (points: readonly string[], polarity = "") =>
    find(
      "ring/point-open",
      `way 1 ring "Sockets" {
cable flat-twin line 2.5 mm² cpc 1.5 mm²
dead 2026-03-04 {
ends r1 0.40 Ω rn 0.40 Ω r2 0.66 Ω
at S1 L-N >200 Ω L-E 0.26 Ω${polarity}
${points.join("\n")}
}
}`,
    )[0]?.related.map(({ message }) => message);
  const ends = "End-to-end readings used for the expected value.";

  it("is shown with what the others read", () => {
    const points = ["at S2 L-N 0.20 Ω L-E 0.26 Ω", "at S3 L-E 260 mΩ", "at S4 L-N <0.30 Ω", "at S5 polarity ok"];
    expect(found(points)).toEqual([
      "S2 reads 0.20 Ω L-N and 0.26 Ω L-E.",
      "S3 reads 260 mΩ L-E.",
      "S4 reads <0.30 Ω L-N.",
      "S5 has no reading.",
      ends,
    ]);
  });

  it("is shown with eight others at most", () => {
    const points = Array.from({ length: 9 }, (_, at) => `at T${at + 1} L-N 0.20 Ω`);
    expect(found(points)).toHaveLength(9);
    expect(found(points)?.slice(7)).toEqual(["T8 reads 0.20 Ω L-N.", ends]);
  });

  it("beside a polarity that was recorded as correct", () => {
    expect(found([], " polarity ok")).toEqual([
      "Polarity is recorded as correct at S1, although it reads >200 Ω.",
      ends,
    ]);
  });
});

describe("an instrument whose calibration ran out", () => {
  const found = (...days: readonly string[]) => {
    const tests = days.map((day) => `live ${day} with M1 {\nZs 0.62 Ω\n}`).join("\n");
    const text = `wayfile 1
instrument M1 "Tester" {
calibrated 2025-03-10
due 2026-03-10
}
installation "Works" {
board A "Board" {
fed-from supply
way 1 radial "Kiln" {
${tests}
}
}
}`;
    return find("instrument/calibration-lapsed", text).map(({ message, related }) => [
      message,
      ...related.map((one) => one.message),
    ]);
  };
  const due = "Calibration of M1 due on 2026-03-10.";
  const first = "The calibration of M1 ran out on 2026-03-10, before this test on 2026-03-11";

  it.each([
    [["2026-03-10"], []],
    [["2026-03-11"], [[`${first}.`, due]]],
    [["2026-03-11", "2026-03-12"], [[`${first} and one other.`, due, "Used on 2026-03-12."]]],
    [
      ["2026-03-11", "2026-03-12", "2026-03-13"],
      [[`${first} and 2 others.`, due, "Used on 2026-03-12.", "Used on 2026-03-13."]],
    ],
  ])("used on %j", (days, wanted) => expect(found(...days)).toEqual(wanted));
});

describe("a continuity that nobody read", () => {
  it.each([
    ['from-record "Sheet 4"', "taken from a record"],
    ["calculated", "written as calculated"],
  ])("%s is %s", (provenance, words) => {
    const lines = `way 1 radial "Kiln" {\ndevice BS EN 60898 B16 6 kA\ndead 2026-03-04 {\nR1+R2 0.41 Ω ${provenance}\n}\n}`;
    const said = find("continuity/missing", lines, { stage: "tested" }).map(({ message }) => message);
    expect(said.join()).toContain(`Continuity is ${words}, not measured`);
  });
});
