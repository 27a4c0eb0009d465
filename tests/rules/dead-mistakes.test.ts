import { describe, expect, it } from "vitest";
import { installationsOf } from "../../server/model/installation.ts";
import { checkInstallation } from "../../server/rules/frame/check.ts";
import type { Setting } from "../../server/rules/frame/rule.ts";
import { rules } from "../../server/rules/list.ts";
import { fileOfText } from "../../server/workspace/loaded-file.ts";
import { deadFamilies, deadFindings, idsOf } from "../helpers/dead-tests.ts";
import { findingsOf, inSetting, unmark } from "../helpers/sample.ts";

/** What goes wrong in the dead tests of a schedule, one slip at a time, and what must be said of it. */
interface Slip {
  readonly what: string;
  readonly lines: string;
  readonly says: readonly string[];
  readonly setting?: Setting;
  /** A word the first message must have. */
  readonly words?: RegExp;
}

const radial = (dead: string, more = "", kind = "radial", cable = "flat-twin line 2.5 mm² cpc 1.5 mm²") =>
  `way 1 ${kind} "Circuit" {\ncable ${cable}\n${more}\ndead 2026-03-04 {\n${dead}\n}\n}`;
const ring = (dead: string, more = "length 60 m") => radial(dead, more, "ring");
const ends = "ends r1 0.44 Ω rn 0.44 Ω r2 0.73 Ω";
const due: Setting = { stage: "dead-tested" };
const whole = "insulation 500 V L-N 310 MΩ L-E >999 MΩ N-E >999 MΩ\npolarity ok";

const slips: readonly Slip[] = [
  {
    what: "a slip of a hundred",
    lines: radial("R1+R2 45 Ω", "length 23 m"),
    says: ["continuity/r1r2-against-length"],
    words: /100 times/,
  },
  {
    what: "a tenth, by the decimal point",
    lines: radial("R1+R2 0.04 Ω", "length 21 m"),
    says: ["continuity/r1r2-against-length"],
    words: /a tenth of it/,
  },
  {
    what: "too high by a joint",
    lines: radial("R1+R2 0.80 Ω", "length 20 m"),
    says: ["continuity/r1r2-against-length"],
    words: /poor joint/,
  },
  { what: "a plain 1.3 times is a length that was guessed", lines: radial("R1+R2 0.50 Ω", "length 20 m"), says: [] },
  {
    what: "an earth that does not reach one lamp column, by a long lead",
    lines: radial("at C1 R2 0.12 Ω\nat C2 R2 >99.9 Ω\nat C3 R2 0.37 Ω", "run A 10 m C1 10 m C2 10 m C3"),
    says: ["continuity/open"],
    words: /R2 at C2 is off scale/,
  },
  {
    what: "an earth that does not reach one socket of a ring, by a long lead",
    lines: ring(`${ends}\nat S1 R2 0.19 Ω\nat S2 R2 >99.9 Ω`),
    says: ["continuity/open"],
    words: /R2 at S2 is off scale/,
  },
  {
    what: "nothing at all at one column, by a long lead",
    lines: radial("at C1 R2 0.12 Ω\nat C2 R2 0.00 Ω", "run A 10 m C1 10 m C2"),
    says: ["continuity/negative-or-zero"],
    words: /C2 R2 reads 0.00/,
  },
  {
    what: "below the line alone",
    lines: radial("R1+R2 0.09 Ω", "length 20 m"),
    says: ["continuity/r1r2-against-length"],
    words: /Less than its line alone/,
  },
  {
    what: "low with a parallel path on record",
    lines: radial("R1+R2 0.15 Ω", 'length 20 m\nparallel-path "Bolted to bonded steel"'),
    says: [],
  },
  {
    what: "lower than its line alone, with a parallel path on record",
    lines: radial("R1+R2 0.09 Ω", 'length 20 m\nparallel-path "Bolted to bonded steel"'),
    says: ["continuity/r1r2-against-length"],
    words: /No metal in parallel lowers the line/,
  },
  { what: "low and bounded", lines: radial("R1+R2 <0.05 Ω", "length 20 m"), says: ["continuity/r1r2-against-length"] },
  {
    what: "aluminium read as copper",
    lines: radial("R1+R2 0.99 Ω", "length 160 m", "feeder", "singles line 10 mm² cpc 10 mm²"),
    says: ["continuity/r1r2-against-length"],
    words: /aluminium/,
  },
  {
    what: "copper where aluminium is written",
    lines: radial("R1+R2 0.31 Ω", "length 80 m", "feeder", "armoured line 10 mm² cpc 10 mm² aluminium"),
    says: ["continuity/r1r2-against-length"],
    words: /copper/,
  },
  {
    what: "a warm reading of a long run, noted",
    lines: radial("temperature 30 °C\nR1+R2 1.22 Ω", "length 60 m"),
    says: [],
  },
  {
    what: "lights read at the rose",
    lines: radial("R1+R2 0.22 Ω", "length 30 m\nserves lighting", "radial", "flat-twin line 1.5 mm² cpc 1.0 mm²"),
    says: ["continuity/r1r2-against-length"],
    words: /farthest luminaire and switch/,
  },
  {
    what: "milliohms are judged alike",
    lines: radial("R1+R2 3900 mΩ", "length 20 m"),
    says: ["continuity/r1r2-against-length"],
  },
  { what: "a negative reading", lines: radial("R1+R2 -0.01 Ω", "length 20 m"), says: ["continuity/negative-or-zero"] },
  { what: "nothing at all", lines: radial("R2 0.00 Ω", "length 20 m"), says: ["continuity/negative-or-zero"] },
  {
    what: "nothing over two metres of 16 mm²",
    lines: radial("R2 0.00 Ω", "length 2 m", "radial", "singles line 16 mm² cpc 16 mm²"),
    says: [],
  },
  {
    what: "a negative end",
    lines: ring("ends r1 -0.02 Ω rn 0.44 Ω r2 0.73 Ω"),
    says: ["continuity/negative-or-zero"],
  },
  { what: "an open protective conductor", lines: radial("R1+R2 >200 Ω", "length 20 m"), says: ["continuity/open"] },
  { what: "four decimals", lines: radial("R1+R2 0.3921 Ω", "length 20 m"), says: ["continuity/too-many-digits"] },
  {
    what: "R2 through the pipework",
    lines: radial("R2 0.01 Ω", "length 5 m"),
    says: ["continuity/r2-against-length"],
    words: /pipework/,
  },
  {
    what: "R2 and R1 changed over",
    lines: radial("R1+R2 0.51 Ω\nR2 0.15 Ω", "", "radial", "flat-twin line 6 mm² cpc 2.5 mm²"),
    says: ["continuity/both-recorded", "continuity/r2-ratio"],
    words: /./,
  },
  {
    what: "2.67 is right for 4/1.5",
    lines: radial("R1+R2 0.67 Ω\nR2 0.49 Ω", "", "feeder", "flat-twin line 4 mm² cpc 1.5 mm²"),
    says: [],
  },
  { what: "neither R1+R2 nor R2", lines: radial(whole), setting: due, says: ["continuity/missing"] },
  {
    what: "a feeder without continuity or insulation",
    lines: radial("polarity ok", "", "feeder"),
    setting: due,
    says: ["continuity/missing", "insulation/missing"],
  },
  {
    what: "a limitation is not missing",
    lines: radial(`R1+R2 LIM "Locked room, agreed with the client"\n${whole}`),
    setting: due,
    says: [],
  },
  { what: "a design has no tests yet", lines: 'way 1 radial "Lights" { }', setting: { stage: "design" }, says: [] },
  {
    what: "tests spread over two days",
    lines: `way 1 radial "Lights" {\ndead 2026-03-04 {\nR1+R2 0.39 Ω\npolarity ok\n}\ndead 2026-03-05 {\ninsulation 500 V L-N 310 MΩ L-E >999 MΩ N-E >999 MΩ\n}\n}`,
    setting: due,
    says: [],
  },
  {
    what: "a later test supersedes",
    lines: `way 1 radial "Lights" {\ncable flat-twin line 2.5 mm² cpc 1.5 mm²\nlength 20 m\ndead 2026-03-04 {\nR1+R2 2.10 Ω\n}\ndead 2026-03-05 {\nR1+R2 0.40 Ω\n}\n}`,
    says: [],
  },
  {
    what: "no protective conductor",
    lines: radial("polarity ok", "", "radial", "singles line 1.5 mm² cpc-by none"),
    says: ["continuity/no-protective-conductor"],
  },

  { what: "ends on a radial", lines: radial(ends), says: ["ring/ends-on-radial"] },
  {
    what: "a ring without ends",
    lines: ring(`at S1 L-N 0.22 Ω L-E 0.29 Ω\nR1+R2 0.29 Ω\n${whole}`),
    setting: due,
    says: ["ring/ends-missing"],
  },
  {
    what: "ends and nothing at the points",
    lines: ring(`${ends}\nR1+R2 0.31 Ω\n${whole}`),
    setting: due,
    says: ["ring/points-missing"],
  },
  {
    what: "R1+R2 worked out of the ends",
    lines: ring(`${ends}\nR1+R2 0.29 Ω\n${whole}`),
    setting: due,
    says: ["ring/r1r2-from-ends"],
  },
  {
    what: "and the ends out of it",
    lines: ring("ends r1 0.60 Ω rn 0.60 Ω r2 1.00 Ω\nR1+R2 0.40 Ω", ""),
    says: ["ring/r1r2-from-ends"],
    words: /exactly 1\.5 and 2\.5 ×/,
  },
  { what: "r1 and rn apart", lines: ring("ends r1 0.44 Ω rn 0.51 Ω r2 0.73 Ω"), says: ["ring/ends-differ"] },
  { what: "r1 and rn five hundredths apart", lines: ring("ends r1 0.44 Ω rn 0.49 Ω r2 0.73 Ω"), says: [] },
  {
    what: "ten times between r1 and rn",
    lines: ring("ends r1 4.40 Ω rn 0.44 Ω r2 0.73 Ω"),
    says: ["ring/ends-differ"],
    words: /decimal point/,
  },
  {
    what: "r2 as low as r1",
    lines: ring("ends r1 0.44 Ω rn 0.44 Ω r2 0.44 Ω"),
    says: ["ring/cpc-ratio"],
    words: /2\.5 mm² cpc: another cable/,
  },
  {
    what: "r2 that fits 1.0 mm²",
    lines: ring("ends r1 0.44 Ω rn 0.44 Ω r2 1.12 Ω"),
    says: ["ring/cpc-ratio"],
    words: /1 mm² cpc/,
  },
  {
    what: "r1 and r2 changed over",
    lines: ring("ends r1 0.73 Ω rn 0.73 Ω r2 0.44 Ω", ""),
    says: ["ring/cpc-ratio"],
    words: /ratio is inverted/,
  },
  {
    what: "ends ten times too high",
    lines: ring("ends r1 4.40 Ω rn 4.41 Ω r2 7.26 Ω"),
    says: ["ring/ends-against-length"],
    words: /0\.44 Ω\?/,
  },
  {
    what: "R1+R2 not divided",
    lines: ring(`${ends}\nR1+R2 1.17 Ω`),
    says: ["ring/r1r2-against-ring"],
    words: /end to end/,
  },
  {
    what: "R1+R2 divided by two",
    lines: ring(`${ends}\nR1+R2 0.58 Ω`),
    says: ["ring/r1r2-against-ring"],
    words: /half/,
  },
  {
    what: "R1+R2 less than the ring can give",
    lines: ring(`${ends}\nR1+R2 0.18 Ω`),
    says: ["ring/r1r2-against-ring"],
    words: /less than a sound ring/,
  },
  {
    what: "R1+R2 with a spur of unknown length",
    lines: ring(`${ends}\nR1+R2 0.39 Ω`, "length 60 m\npoints 6\nspurs 1"),
    says: [],
  },
  {
    what: "R1+R2 below the highest point",
    lines: ring(`${ends}\nat S1 L-N 0.22 Ω L-E 0.29 Ω\nat X1 L-N 0.30 Ω L-E 0.39 Ω\nR1+R2 0.29 Ω`, "points 6\nspurs 1"),
    says: ["ring/point-reading", "ring/r1r2-against-ring"],
  },
  { what: "open in one conductor", lines: ring("ends r1 0.44 Ω rn 0.44 Ω r2 >99.9 Ω"), says: ["ring/open-conductor"] },
  { what: "a ring that reads 216 m", lines: ring("ends r1 1.60 Ω rn 1.60 Ω r2 2.61 Ω", ""), says: ["ring/long-ring"] },
  { what: "a run that does not come back", lines: ring(ends, "run A 20 m S1 20 m S2"), says: ["ring/run-not-closed"] },
  {
    what: "a detached run, nearly named",
    lines: ring(ends, "run A 20 m S1 20 m S2 20 m A\nrun S3 4 m S4"),
    says: ["ring/run-detached"],
  },
  {
    what: "two cables to one point",
    lines: ring(ends, "run A 20 m S1 20 m S2 20 m A\nrun S1 4 m S2"),
    says: ["ring/point-twice"],
  },
  {
    what: "a spur off a spur",
    lines: ring(ends, "run A 20 m S1 20 m S2 20 m A\nrun S1 2 m X1\nrun X1 2 m X2"),
    says: ["ring/spur-off-spur"],
  },
  {
    what: "sockets behind a fused unit on a spur",
    lines: ring(ends, "run A 20 m S1 20 m S2 20 m A\nrun S1 2 m X1 2 m X2 2 m X3\nfused X1 13 A"),
    says: [],
  },
  {
    what: "three spurs on two points",
    lines: ring(ends, "run A 20 m S1 20 m S2 20 m A\nrun S1 2 m X1\nrun S2 2 m X2\nrun S2 2 m X3"),
    says: ["ring/too-many-spurs"],
  },
  {
    what: "points that were not drawn",
    lines: ring(ends, "run A 20 m S1 20 m S2 20 m A\npoints 4\nspurs 0"),
    says: ["ring/count-disagrees"],
  },

  { what: "0 MΩ", lines: radial("insulation 500 V L-N 0 MΩ L-E 200 MΩ N-E 200 MΩ"), says: ["insulation/zero"] },
  {
    what: "0.9 MΩ",
    lines: radial("insulation 500 V L-N 200 MΩ L-E 0.9 MΩ N-E 200 MΩ"),
    says: ["insulation/below-minimum"],
  },
  {
    what: "1.0 MΩ is enough, and poor when new",
    lines: radial("insulation 500 V L-N 200 MΩ L-E 1.0 MΩ N-E 200 MΩ"),
    says: ["insulation/low-on-new"],
  },
  {
    what: "1.0 MΩ in old work",
    lines: radial("insulation 500 V L-N 200 MΩ L-E 1.0 MΩ N-E 200 MΩ"),
    setting: { stage: "installed", work: "existing" },
    says: [],
  },
  {
    what: "0.6 MΩ by the 16th Edition",
    lines: radial("insulation 500 V L-N 200 MΩ L-E 0.6 MΩ N-E 200 MΩ"),
    setting: { stage: "installed", work: "existing", standard: "BS 7671:2001" },
    says: [],
  },
  {
    what: "0.4 MΩ by the 16th Edition",
    lines: radial("insulation 500 V L-N 200 MΩ L-E 0.4 MΩ N-E 200 MΩ"),
    setting: { stage: "installed", work: "existing", standard: "BS 7671:2001" },
    says: ["insulation/below-minimum"],
  },
  {
    what: ">0.5 MΩ proves nothing",
    lines: radial("insulation 500 V L-N 200 MΩ L-E >0.5 MΩ N-E 200 MΩ"),
    says: ["insulation/below-minimum"],
    words: /does not prove/,
  },
  {
    what: "<1 MΩ fails",
    lines: radial("insulation 500 V L-N 200 MΩ L-E <1 MΩ N-E 200 MΩ"),
    says: ["insulation/below-minimum"],
    words: /below/,
  },
  {
    what: "a lamp left in",
    lines: radial("insulation 500 V L-N 0.02 MΩ L-E 200 MΩ N-E 200 MΩ"),
    says: ["insulation/below-minimum"],
    words: /lamp/,
  },
  {
    what: "neutral on metal",
    lines: radial("insulation 500 V L-N 200 MΩ L-E 200 MΩ N-E 0.1 MΩ"),
    says: ["insulation/below-minimum"],
    words: /shared with another circuit/,
  },
  {
    what: "no line to neutral",
    lines: radial("insulation 500 V L-E 200 MΩ N-E 200 MΩ"),
    says: ["insulation/pair-missing"],
    words: /joined/,
  },
  {
    what: "no neutral to earth",
    lines: radial("insulation 500 V L-N 200 MΩ L-E 200 MΩ"),
    says: ["insulation/pair-missing"],
    words: /N-E/,
  },
  { what: "line and neutral joined", lines: radial("insulation 500 V L-E 200 MΩ joined"), says: [] },
  {
    what: "two lines that share the pairs",
    lines: radial('insulation 500 V L-E 200 MΩ N-E 200 MΩ\ninsulation 250 V L-N 180 MΩ "Dimmer left in"'),
    says: [],
  },
  {
    what: "a three-phase motor without neutral",
    lines: radial("insulation 500 V L-L 200 MΩ L-E 200 MΩ", "phase three"),
    says: [],
  },
  {
    what: "250 V with no reason",
    lines: radial("insulation 250 V L-N 200 MΩ L-E 200 MΩ N-E 200 MΩ"),
    says: ["insulation/test-voltage"],
  },
  {
    what: "250 V with a note",
    lines: radial('insulation 250 V L-N 200 MΩ L-E 200 MΩ N-E 200 MΩ\nnote "Charger cannot be disconnected"'),
    says: [],
  },
  {
    what: "SELV at 500 V",
    lines: radial("insulation 500 V L-N 200 MΩ L-E 200 MΩ", "serves selv"),
    says: ["insulation/test-voltage"],
  },
  {
    what: "0.6 MΩ is enough for SELV",
    lines: radial("insulation 250 V L-N 0.6 MΩ L-E 0.6 MΩ", "serves selv"),
    says: [],
  },
  {
    what: "alarms at 500 V",
    lines: radial("insulation 500 V L-N 200 MΩ L-E 200 MΩ N-E 200 MΩ", "serves alarms"),
    says: ["insulation/electronics-not-disconnected"],
  },
  {
    what: "no polarity",
    lines: radial("R1+R2 0.39 Ω\ninsulation 500 V L-E 200 MΩ joined"),
    setting: due,
    says: ["polarity/missing"],
  },
  { what: "wrong polarity", lines: radial("polarity wrong"), says: ["polarity/wrong"] },
  {
    what: "wrong at one point",
    lines: ring(`${ends}\nat S1 L-N 0.22 Ω L-E 0.29 Ω polarity wrong`),
    says: ["polarity/wrong"],
    words: /at S1/,
  },
];

describe("slips of the dead tests", () => {
  it.each(slips.map((slip) => [slip.what, slip] as const))("%s", (_, { lines, says, setting, words }) => {
    const found = deadFindings(lines, setting);
    expect(idsOf(found)).toEqual(says);
    if (words) expect(found[0]?.message).toMatch(words);
  });
});

describe("two ways that read the same neutral to earth", () => {
  const way = (id: number, pairs: string) =>
    `way ${id} radial "Circuit ${id}" {\ndead 2026-03-04 {\ninsulation 500 V ${pairs}\n}\n}`;
  const sound = [3, 4, 5, 6].map((id) => way(id, "L-N >999 MΩ L-E >999 MΩ N-E >999 MΩ"));
  const said = (...low: string[]) =>
    deadFindings([...low.map((pairs, index) => way(index + 1, pairs)), ...sound].join("\n"), undefined)
      .filter(({ check }) => check === "insulation/outlier")
      .map(({ message }) => /neutral shared/.test(message));

  it("may share it", () => {
    const neutral = "L-N >999 MΩ L-E >999 MΩ N-E 2.35 MΩ";
    expect(said(neutral, neutral)).toEqual([true, true]);
    expect(said(neutral, neutral.replace("2.35", "3.10"))).toEqual([false, false]);
    const line = "L-N >999 MΩ L-E 2.35 MΩ N-E >999 MΩ";
    expect(said(line, line)).toEqual([false, false]);
  });
});

describe("a board's circuits beside each other", () => {
  const way = (id: number, insulation: string) =>
    `way ${id} radial "Circuit ${id}" {\ndead 2026-03-04 {\ninsulation 500 V ${insulation}\n}\n}`;
  const board = (...readings: string[]) =>
    readings.map((value, index) => way(index + 1, `L-N >999 MΩ L-E ${value} N-E >999 MΩ`)).join("\n");
  const total = (value: string) =>
    ({
      stage: "installed",
      board: `fed-from supply\ndead 2026-03-04 {\ninsulation 500 V L-E ${value} joined\n}`,
    }) as const;

  it.each([
    ["a total above the lowest way", board("40 MΩ", "60 MΩ"), total("50 MΩ"), ["insulation/board-disagrees"]],
    ["a total above the lowest, off scale", board("40 MΩ", "60 MΩ"), total(">200 MΩ"), ["insulation/board-disagrees"]],
    ["a total far below what the ways give", board("400 MΩ", "600 MΩ"), total("20 MΩ"), ["insulation/board-disagrees"]],
    [
      "a total below every way, and far above what they give together",
      board("41 MΩ", "42 MΩ", "43 MΩ", ">999 MΩ"),
      total("40 MΩ"),
      ["insulation/board-disagrees"],
    ],
    ["a total of one way that was read beside others off scale", board("41 MΩ", ">999 MΩ"), total("40 MΩ"), []],
    ["bounds among the ways leave the total free", board(">999 MΩ", ">999 MΩ"), total("900 MΩ"), []],
    [
      "a total of the lines alone leaves the neutrals out",
      way(1, "L-N 300 MΩ L-E 400 MΩ N-E 90 MΩ"),
      { stage: "installed", board: "fed-from supply\ndead 2026-03-04 {\ninsulation 500 V L-E 390 MΩ\n}" },
      [],
    ],
    ["a total in its place", board("40 MΩ", "60 MΩ"), total("23 MΩ"), []],
    ["a total with a way untested", `${board("400 MΩ", "600 MΩ")}\nway 9 radial "Untested"`, total("20 MΩ"), []],
    [
      "a total below the minimum",
      board("40 MΩ", "60 MΩ"),
      total("0.8 MΩ"),
      ["insulation/board-below-minimum", "insulation/board-disagrees"],
    ],
    [
      "one way far below its neighbours",
      board("8 MΩ", ">500 MΩ", "700 MΩ", ">500 MΩ"),
      undefined,
      ["insulation/outlier"],
    ],
    ["an off-scale bound is no fall", board(">20 MΩ", "700 MΩ", "700 MΩ", "700 MΩ"), undefined, []],
    ["all low and alike", board("4 MΩ", "5 MΩ", "6 MΩ", "5 MΩ"), undefined, ["insulation/all-low"]],
    ["three ways are no board", board("4 MΩ", "5 MΩ", "6 MΩ"), undefined, []],
  ] as const)("%s", (_, lines, setting, says) => {
    expect(idsOf(deadFindings(lines, setting))).toEqual(says);
  });
});

describe("what every finding carries", () => {
  const own = rules.filter(({ id }) => deadFamilies.some((family) => id.startsWith(`${family}/`)));
  const findings = own.flatMap((rule) =>
    rule.examples.flatMap(({ bad, setting }) => {
      const file = fileOfText("sample.ways", inSetting(unmark(bad).text, setting).text);
      return installationsOf([file]).flatMap((installation) => checkInstallation(installation, [rule]).findings);
    }),
  );

  it("has a source and working wherever it holds a value against an expectation", () => {
    const held = findings.filter(({ limit, check }) => limit && check !== "ring/count-disagrees");
    expect(held.length).toBeGreaterThan(30);
    for (const { check, source, working } of held) {
      expect(source?.ref, check).toMatch(/\S{3}/);
      expect(working, check).toMatch(/\d/);
    }
  });

  it("speaks in whole sentences", () => {
    for (const { message, check } of findings) expect(message, check).toMatch(/^([A-Z0-9(>]|r[12n] ).*[.?)]$/);
  });

  it("mends a slip of the decimal point by itself", () => {
    const slip = findings.find(({ check, fixes }) => check === "ring/ends-against-length" && fixes.length > 0);
    expect(slip?.fixes.map(({ title, safe }) => [title, safe])).toEqual([["I misread it: 0.44 Ω, not 4.42 Ω", false]]);
  });
});

it("a figure of more decimals than a number can hold is shown as it is", () => {
  const text = inSetting(`way 1 radial "Loft" {\ndead 2026-03-04 {\nR1+R2 0.39${"0".repeat(399)} Ω\n}\n}`).text;
  const found = findingsOf(text).find(({ check }) => check === "continuity/too-many-digits");
  expect(found?.message).toMatch(/^0\.39 Ω has 401 decimals/);
});
