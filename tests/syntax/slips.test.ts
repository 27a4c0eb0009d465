/** Slips as the trade writes them: each has one answer, and its fix gives a line that is read. */
import { describe, expect, test } from "vitest";
import { applyEdits } from "../../server/text/lines.ts";
import { fileOfText } from "../../server/workspace/loaded-file.ts";
import { findingsOf } from "../helpers/sample.ts";

type Place = "board" | "way" | "dead" | "live";

const places: Readonly<Record<Place, (line: string) => string>> = {
  board: (line) => `wayfile 1\nboard A {\n${line}\n}\n`,
  way: (line) => `wayfile 1\nboard A {\nway 1 radial {\n${line}\n}\n}\n`,
  dead: (line) => `wayfile 1\nboard A {\nway 1 ring {\ndead 2026-03-04 {\n${line}\n}\n}\n}\n`,
  live: (line) => `wayfile 1\nboard A {\nway 1 radial {\nlive 2026-03-04 {\n${line}\n}\n}\n}\n`,
};

/** The problems of the language in a line, and the line that each one's first fix gives. */
function answers(place: Place, line: string): { check: string; fixed: string | undefined; message: string }[] {
  const { model } = fileOfText("sample.ways", places[place](line));
  return [...model.problems].flatMap(([segment, problems]) =>
    problems.map(({ check, fixes, message }) => ({
      check,
      message,
      fixed: fixes[0] && lineOf(applyEdits(segment.text, fixes[0].edits), segment.text),
    })),
  );
}

/** The line that is another than before. */
const lineOf = (after: string, before: string): string | undefined => {
  const old = before.split("\n");
  return after.split("\n").find((line, index) => line !== old[index]);
};

describe("one answer, and a fix", () => {
  test.each<[place: Place, line: string, check: string, fixed: string | undefined]>([
    ["live", "Zs 0.62 Ω R1+R2 0.31 Ω", "crowded", "Zs 0.62 Ω"],
    ["way", "serves lighting length 14 m", "crowded", "serves lighting"],
    ["way", "load 3 kW power-factor 90 %", "crowded", "load 3 kW"],
    ["way", "load 3 kW starting direct", "crowded", "load 3 kW"],
    [
      "way",
      "cable flat-twin line 2.5 mm² cpc 1.5 mm² length 20 m",
      "crowded",
      "cable flat-twin line 2.5 mm² cpc 1.5 mm²",
    ],
    ["way", "load 3 kW kiln", "missing-quotes", 'load 3 kW "kiln"'],
    ["way", "device BS EN 60898 32 A type B 6 kA", "wrong-argument", "device BS EN 60898 B32 6 kA"],
    ["way", "device BS EN 60898 32 A type C 6 kA", "wrong-argument", "device BS EN 60898 C32 6 kA"],
    ["way", "device BS EN 60898 type B 32 A 6 kA", "wrong-argument", "device BS EN 60898 B32 6 kA"],
    ["way", "device BS EN 61009 32 A type B 6 kA 30 mA", "wrong-argument", "device BS EN 61009 B32 6 kA 30 mA"],
    ["way", "device BS EN 60898 B32 6 kA type A", "wrong-argument", "device BS EN 60898 B32 6 kA"],
    ["way", "device BS EN 61009 B32/0.03 10 kA type A", "wrong-argument", "device BS EN 61009 B32 30 mA 10 kA type A"],
    ["way", "device BS EN 61009 B32/30 10 kA type A", "wrong-argument", "device BS EN 61009 B32 30 mA 10 kA type A"],
    ["way", "device BS EN 60898 32A B 6 kA", "wrong-argument", "device BS EN 60898 B32 6 kA"],
    ["way", "device BS EN 60898 B32A 6 kA", "wrong-argument", "device BS EN 60898 B32 6 kA"],
    ["way", "device BS EN 60898 B 32 6 kA", "wrong-argument", "device BS EN 60898 B32 6 kA"],
    ["way", "device BS EN 61009 B32 10 kA 30mA A", "wrong-argument", "device BS EN 61009 B32 10 kA 30mA type A"],
    ["way", "device BS 3871 32 A type 2 6 kA", "wrong-argument", "device BS 3871 32 A type-2 6 kA"],
    ["way", "device MCB BS EN 60898 B32 6 kA", "wrong-argument", "device BS EN 60898 B32 6 kA"],
    ["way", "cable singles line 2.5 mm² cpc none", "wrong-argument", "cable singles line 2.5 mm² cpc-by none"],
    ["way", "cable flat-twin 2.5 mm² 1.5 mm²", "wrong-argument", "cable flat-twin line 2.5 mm² cpc 1.5 mm²"],
    ["way", "serves smoke-alarms", "wrong-argument", "serves alarms"],
    ["way", "length >18 m", "bound-not-read", "length 18 m"],
    ["way", "Ib <20 A", "bound-not-read", "Ib 20 A"],
    ["way", "cable flat-twin line >2.5 mm² cpc 1.5 mm²", "bound-not-read", "cable flat-twin line 2.5 mm² cpc 1.5 mm²"],
    ["way", "note check this", "missing-quotes", 'note "check this"'],
    ["way", "tested by R.M. 2026-03-05", "missing-quotes", 'tested by "R.M." 2026-03-05'],
    ["way", "note “check this”", "missing-quotes", 'note "check this"'],
    ["board", "location Under the stairs", "missing-quotes", 'location "Under the stairs"'],
    ["board", "way 2 radial Cooker point", "missing-quotes", 'way 2 radial "Cooker point"'],
    ["dead", "ends 0.3 Ω 0.3 Ω 0.5 Ω", "wrong-argument", "ends r1 0.3 Ω rn 0.3 Ω r2 0.5 Ω"],
    ["dead", "insulation 500 V 310 MΩ", "wrong-argument", "insulation 500 V each 310 MΩ"],
    ["dead", "R1+R2 0.47 C", "wrong-unit", "R1+R2 0.47 Ω"],
    ["live", "rcd 30 mA 1x 21 mS", "wrong-unit", "rcd 30 mA 1x 21 ms"],
    ["live", "rcd 30 mA 1x 27", "missing-unit", "rcd 30 mA 1x 27 ms"],
    ["live", "rcd 30 mA x1 24 ms", "wrong-argument", "rcd 30 mA 1x 24 ms"],
    ["live", "test-button OK", "wrong-argument", "test-button ok"],
    ["live", "test-button pass", "wrong-argument", "test-button ok"],
  ])("%s: %s", (place, line, check, fixed) => {
    const found = answers(place, line);
    expect(found.map((one) => [one.check, one.fixed])).toEqual([[check, fixed]]);
    if (fixed !== undefined) expect(answers(place, fixed)).toEqual([]);
  });
});

test("the loop of a breaker whose type stands apart is not passed in silence", () => {
  const [found] = answers("way", "device BS EN 60898 32 A type B 6 kA");
  expect(found?.message).toBe(
    "The type of a breaker is written with its rated current, as B32; “type” is the waveform an RCD responds to.",
  );
});

describe("what is no slip", () => {
  test.each<[place: Place, line: string]>([
    ["way", "device BS EN 61009 B32 10 kA 30 mA type B"],
    ["way", "rcd BS EN 61008 63 A 30 mA type B"],
    ["live", "rcd 30 mA 1× 24 ms"],
    ["live", "rcd 30 mA ½× no-trip"],
    ["dead", "insulation 500 V  L-N >999 MΩ"],
    ["dead", "R1+R2 <0.01 Ω"],
  ])("%s: %s", (place, line) => {
    expect(answers(place, line)).toEqual([]);
  });

  test("an RCD that is called by a number", () => {
    const rcds = "rcd 1 BS EN 61008 63 A 30 mA type A\nrcd 2 BS EN 61008 63 A 30 mA type A\n";
    const tests = "live 2026-03-04 {\nrcd 1 30 mA 1x 24 ms\nrcd 30 mA 1x 24 ms 2\ntest-button 2 ok\n}";
    expect(answers("board", rcds + tests)).toEqual([]);
    expect(answers("board", `${rcds}live 2026-03-04 {\ntrip-current 22\n}`).map(({ check }) => check)).toEqual([
      "missing-unit",
    ]);
  });

  test("a name in any script, composed or not", () => {
    const text = `wayfile 1\ninstallation "S" {\nboard Щ1 {\nrcd cafe\u0301 BS EN 61008 63 A 30 mA type A\nway 1 radial {\nbehind caf\u00e9\n}\n}\n}\n`;
    expect(findingsOf(text).filter(({ check }) => check.startsWith("language/"))).toEqual([]);
  });

  test("the sign × is no letter", () => {
    expect(answers("board", "way × radial").map(({ check }) => check)).toEqual(["stray"]);
  });
});

test("a figure that no meter shows is refused, never written out", () => {
  for (const [figure, check] of [
    ["1e999", "number-slip"],
    ["1e300", "number-slip"],
    ["Infinity", "wrong-argument"],
    ["NaN", "wrong-argument"],
  ] as const) {
    const found = answers("way", `length ${figure} m`);
    expect(found[0]).toMatchObject({ check, message: expect.stringContaining(figure) });
    for (const { message, fixed } of found) {
      expect(message.replace(figure, "")).not.toMatch(/Infinity|NaN|e\+/);
      expect(fixed ?? "").not.toMatch(/Infinity \w|NaN \w/);
    }
  }
});
