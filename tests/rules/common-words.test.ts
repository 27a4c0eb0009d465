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

describe("what is shown beside a finding", () => {
  const related = (id: string, lines: string, setting = {}) =>
    find(id, lines, setting).map((finding) => finding.related.map(({ message }) => message));

  // A tenth of the middle of the board, and eight of the others at most.
  it("is eight of the other circuits where one insulates far worse", () => {
    const ways = (count: number) =>
      Array.from({ length: count }, (_, at) => {
        const reading = at === 0 ? "9 MΩ" : `${100 + at} MΩ`;
        return `way ${at + 1} radial "Circuit" {\ndead 2026-03-04 {\ninsulation 500 V L-E ${reading}\n}\n}`;
      }).join("\n");
    expect(related("insulation/outlier", ways(4))[0]).toEqual([
      "Way 2: insulation 101 MΩ.",
      "Way 3: insulation 102 MΩ.",
      "Way 4: insulation 103 MΩ.",
    ]);
    expect(related("insulation/outlier", ways(9))[0]).toHaveLength(8);
    expect(related("insulation/outlier", ways(10))[0]).toHaveLength(8);
    expect(related("insulation/outlier", ways(3))).toEqual([]);
  });

  it("is the dead test that came after the live ones", () => {
    const days = (dead: string) =>
      `way 1 radial "Circuit" {\ndead ${dead} {\nR1+R2 0.41 Ω\ninsulation 500 V L-E 200 MΩ\n}\nlive 2026-03-05 {\nZs 0.7 Ω\n}\n}`;
    expect(related("live/before-dead", days("2026-03-06"))).toEqual([["The first dead tests."]]);
    expect(related("live/before-dead", days("2026-03-05"))).toEqual([]);
    const second = days("2026-03-04").replace(
      "\ninsulation 500 V L-E 200 MΩ\n}",
      "\n}\ndead 2026-03-06 {\ninsulation 500 V L-E 200 MΩ\n}",
    );
    expect(related("live/before-dead", second)).toEqual([["The first test of insulation."]]);
  });

  it("is the test in which polarity was wrong, at a point or of the circuit", () => {
    const said = (line: string) =>
      find("polarity/wrong", `way 1 radial "Circuit" {\ndead 2026-03-04 {\n${line}\n}\n}`).map(
        ({ message }) => message,
      );
    expect(said("polarity wrong")).toEqual([
      "Polarity is wrong: isolate, put it right, and record the new test below this one.",
    ]);
    expect(said("at S1 polarity wrong")[0]).toMatch(/^Polarity is wrong at S1: isolate/);
    expect(said("polarity ok")).toEqual([]);
  });

  it("is the limit that a short circuit falls short of, where one is known", () => {
    const [finding] = find(
      "insulation/zero",
      'way 1 radial "Circuit" {\ndead 2026-03-04 {\ninsulation 500 V L-E 0 MΩ\n}\n}',
    );
    // Table 64: 1 MΩ at 500 V.
    expect([finding?.value, finding?.limit]).toEqual([
      { amount: 0, unit: "Ω" },
      { amount: 1e6, unit: "Ω" },
    ]);
  });

  it("is the line that carries least first, where a circuit names none", () => {
    const lines = (phase: string, Ib: number, id: number) =>
      `way ${id} radial "Circuit" {\n${phase}\nserves heating\nIb ${Ib} A\n}`;
    const text = [lines("phase L1", 20, 1), lines("phase L2", 5, 2), lines("phase L3", 12, 3), lines("", 9, 4)].join(
      "\n",
    );
    const setting = { supply: "earthing TN-S\nphases three", board: "fed-from supply\nphases three" };
    const fixes = find("demand/line-not-stated", text, setting).flatMap((finding) =>
      finding.fixes.map(({ title }) => title),
    );
    expect(fixes).toEqual(["It is on L2", "It is on L3", "It is on L1"]);
  });
});

// Zs 0.55 Ω of 0.30 Ω and 0.60 Ω is low: what is read may have metal beside it, what is calculated has not.
it.each([
  ["0.70 Ω", 1],
  ["0.70 Ω calculated", 0],
  ["1.30 Ω", 0],
])("Zs %s offers to record a parallel path %i times", (Zs, count) => {
  const [finding, ...others] = find(
    "loop/zs-disagrees",
    `way 1 radial "Circuit" {\ndevice BS EN 60898 B16 6 kA\ndead 2026-03-04 {\nR1+R2 0.61 Ω\n}\nlive 2026-03-05 {\nZs ${Zs}\n}\n}`,
    { stage: "tested" },
  );
  expect(others).toEqual([]);
  expect(finding?.fixes.map(({ title }) => title)).toEqual(Array(count).fill("Record a parallel path"));
});

it("a length is shown with its cable, where there is one", () => {
  const related = (lines: string) =>
    find(
      "continuity/r1r2-against-length",
      `way 1 radial "Circuit" {\n${lines}\nlength 20 m\ndead 2026-03-04 {\nR1+R2 0.90 Ω\n}\n}`,
    ).flatMap((finding) => finding.related.map(({ message }) => message));
  expect(related("cable flat-twin line 2.5 mm² cpc 1.5 mm²")).toEqual([
    "Length used for the expected reading.",
    "The cable: 2.5 mm² with a 1.5 mm² cpc.",
    "The test with this reading.",
  ]);
});
