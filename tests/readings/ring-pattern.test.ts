/**
 * What all the readings of a ring say together, where one more or one less of it is another matter. The tolerance of
 * 0.05 Ω between like readings, and the 5 % within which two figures are one, are common practice; what the rings read is
 * two paths in parallel, x(1 − x) of r1 + rn where each leg is linked to itself.
 */
import { describe, expect, it } from "vitest";
import { find } from "../helpers/find.ts";

interface Ring {
  readonly ends?: string;
  /** L-N of each point in turn, or both rounds with a comma. */
  readonly read: string;
  /** Lines before the test. */
  readonly lines?: string;
}

const checks = [
  "ring/open-conductor",
  "ring/link-missing",
  "ring/links-not-crossed",
  "ring/bridged",
  "ring/point-open",
];

const ring = ({ ends = "r1 0.60 Ω rn 0.60 Ω r2 0.98 Ω", read, lines = "" }: Ring): string => {
  const points = read.split(" ").map((one, index) => {
    const [LN, LE] = one.split(",");
    return `at S${index + 1} ${LN ? `L-N ${LN} Ω` : ""} ${LE ? `L-E ${LE} Ω` : ""}`;
  });
  return `way 1 ring "Sockets" {\n${lines}\ndead 2026-03-04 {\nends ${ends}\n${points.join("\n")}\n}\n}`;
};

const found = (schedule: Ring): string[] => checks.filter((check) => find(check, ring(schedule)).length > 0);

/** Points at the given metres of 100 m round. */
const at = (...metres: readonly number[]): string => {
  const legs = metres.map((metre, index) => `${metre - (metres[index - 1] ?? 0)} m S${index + 1}`);
  return `run A ${legs.join(" ")} ${100 - (metres.at(-1) ?? 0)} m A`;
};

describe("each leg linked to itself: points that rise to the middle and fall again", () => {
  // Of 1.20 Ω round, a quarter is 0.30 Ω.
  it.each([
    ["0.10 0.20 0.30 0.20 0.10", true],
    ["0.14 0.30 0.14", true],
    ["0.10 0.30", false],
    // From well below the highest: not half of it.
    ["0.15 0.30 0.15", false],
    ["0.14 0.30 0.15", false],
    ["0.15 0.30 0.14", false],
    // No more than the quarter value by the tolerance.
    ["0.10 0.35 0.10", true],
    ["0.10 0.36 0.10", false],
    // Up, and then down, but for the last digit of a meter.
    ["0.10 0.20 0.19 0.30 0.10", true],
    ["0.10 0.20 0.18 0.30 0.10", false],
    ["0.10 0.30 0.19 0.20 0.10", true],
    ["0.10 0.30 0.18 0.20 0.10", false],
  ])("%s, with no run drawn: %s", (read, isFound) => {
    expect(found({ read })).toEqual(isFound ? ["ring/links-not-crossed"] : []);
  });

  // A point at a tenth of the way reads 0.09 × 1.20 = 0.108 Ω, at two tenths 0.192, at three 0.252, in the middle 0.30.
  it.each([
    [at(10, 20, 50), "0.11 0.19 0.30", true],
    [at(10, 20, 50), "0.15 0.24 0.35", true],
    [at(10, 20, 50), "0.06 0.15 0.25", true],
    [at(10, 20, 50), "0.16 0.19 0.30", false],
    [at(10, 20, 50), "0.05 0.19 0.30", false],
    [at(10, 20, 50), "0.11 0.19 0.36", false],
    [at(10, 20, 50), "0.11 0.19 0.24", false],
    // One that is low shows nothing: 0.25 Ω is within the tolerance of the quarter value, 0.24 Ω is not.
    [at(10, 30, 50), "0.11 0.25 0.30", false],
    [at(10, 30, 50), "0.11 0.24 0.30", true],
    // In no order of the readings.
    [at(50, 80, 90), "0.30 0.19 0.11", true],
  ])("%s and %s: %s", (lines, read, isFound) => {
    expect(found({ read, lines })).toEqual(isFound ? ["ring/links-not-crossed"] : []);
  });

  it("does not ask a point on a spur", () => {
    const lines = `${at(10, 20, 50)}\nrun S3 5 m S4`;
    expect(found({ read: "0.11 0.19 0.30 0.90", lines })).toEqual(["ring/links-not-crossed"]);
  });

  it("is not seen where line and neutral differ: then the quarter value is not sure", () => {
    const read = "0.10 0.20 0.30 0.20 0.10";
    expect(found({ ends: "r1 0.60 Ω rn 0.65 Ω r2 0.98 Ω", read })).toEqual(["ring/links-not-crossed"]);
    expect(found({ ends: "r1 0.60 Ω rn 0.66 Ω r2 0.98 Ω", read })).toEqual([]);
  });
});

describe("one link missing: every point reads half of one conductor, twice the quarter value", () => {
  const ends = (ohms: string) => `r1 ${ohms} Ω rn ${ohms} Ω r2 0.98 Ω`;

  it.each([
    ["0.60", "0.60 0.60", true],
    ["0.60", "0.60", false],
    ["0.60", "0.55 0.65", true],
    ["0.60", "0.54 0.60", false],
    ["0.60", "0.66 0.60", false],
    // Of a long ring a twentieth is more than the tolerance.
    ["2.00", "1.90 2.10", true],
    ["2.00", "1.89 2.00", false],
    ["2.00", "2.11 2.00", false],
    // Of a short one the quarter value and its double cannot be told apart.
    ["0.10", "0.11 0.11", false],
    ["0.11", "0.11 0.11", true],
    ["0.11", "0.10 0.11", false],
  ])("ends of %s Ω and points of %s: %s", (ohms, read, isFound) => {
    expect(found({ ends: ends(ohms), read })).toEqual(isFound ? ["ring/link-missing"] : []);
  });

  it("allows for a point that may be on a spur, but not for one that reads as it should", () => {
    expect(found({ read: "0.60 0.60 0.75" })).toEqual([]);
    expect(found({ read: "0.60 0.60 0.75", lines: "spurs 1" })).toEqual(["ring/link-missing"]);
    expect(found({ read: "0.60 0.60 0.35", lines: "spurs 1" })).toEqual([]);
    expect(found({ read: "0.60 0.60 0.36", lines: "spurs 1" })).toEqual(["ring/link-missing"]);
  });

  // With a link missing each point reads further along one leg to earth; a break turns that round.
  it.each([
    ["0.60,0.40 0.60,0.50 0.60,0.60", "one of the two links at the board was missing"],
    ["0.60,0.60 0.60,0.50 0.60,0.40", "one of the two links at the board was missing"],
    ["0.60,0.40 0.60,0.40 0.60,0.50", "a link was missing, or a live conductor is open"],
    ["0.60,0.50 0.60,0.40 0.60,0.40", "a link was missing, or a live conductor is open"],
    ["0.60,0.60 0.60,0.40 0.60,0.50", "a link was missing, or a live conductor is open"],
    ["0.60,0.40 0.60,0.50", "a link was missing, or a live conductor is open"],
  ])("%s: %s", (read, words) => {
    const messages = find("ring/link-missing", ring({ read })).map(({ message }) => message);
    expect(messages).toEqual([`Every point reads about twice the 0.30 Ω the ends give: ${words}. Repeat.`]);
  });
});

describe("no path at all", () => {
  it.each([
    [">99.9 >99.9", ["ring/link-missing"]],
    [">99.9,>99.9 >99.9,>99.9", ["ring/link-missing"]],
    [",>99.9 ,>99.9", ["ring/link-missing"]],
    // One point, or one that reads, is a fault of its own.
    [">99.9", ["ring/point-open"]],
    [">99.9 0.30", ["ring/point-open"]],
    [">99.9,0.40 >99.9,0.40", ["ring/point-open"]],
  ])("%s", (read, checks) => {
    expect(found({ read })).toEqual(checks);
  });

  it.each([
    ["r1 >99.9 Ω rn 0.60 Ω r2 0.98 Ω", ["ring/open-conductor"]],
    ["r1 0.60 Ω rn >99.9 Ω r2 0.98 Ω", ["ring/open-conductor"]],
    ["r1 0.60 Ω rn 0.60 Ω r2 >99.9 Ω", ["ring/open-conductor"]],
  ])("%s is said of the ring, and nothing of its points", (ends, checks) => {
    expect(found({ ends, read: ">99.9 >99.9" })).toEqual(checks);
    expect(found({ ends, read: "0.60 0.30 >99.9" })).toEqual(checks);
  });
});

describe("bridged part-way round", () => {
  // BS EN 60228: 60 m of 2.5 mm² is 0.44 Ω; 0.25 Ω is under 0.7 of it. The ends then give 0.125 Ω and 0.165 Ω in the middle.
  const lines = "cable flat-twin line 2.5 mm² cpc 1.5 mm²\nlength 60 m";
  const ends = "r1 0.25 Ω rn 0.25 Ω r2 0.41 Ω";

  it.each([
    ["0.13,0.16 0.18,0.22 0.18,0.22", true],
    ["0.13,0.16 0.17,0.22 0.18,0.22", false],
    ["0.13,0.16 0.18,0.21 0.18,0.22", false],
    ["0.13,0.16 0.18,0.22", false],
    ["0.13,0.16 0.18 0.18", false],
  ])("%s: %s", (read, isFound) => {
    expect(found({ ends, read, lines })).toEqual(isFound ? ["ring/bridged"] : []);
  });

  it.each([
    ["length 49 m", true],
    ["length 48 m", false],
    ["", false],
  ])("of 0.25 Ω and %s: %s", (length, isFound) => {
    const read = "0.18,0.22 0.18,0.22";
    expect(found({ ends, read, lines: `cable flat-twin line 2.5 mm² cpc 1.5 mm²\n${length}` })).toEqual(
      isFound ? ["ring/bridged"] : [],
    );
  });
});

describe("readings that are all alike", () => {
  const four = "0.30,0.40 0.30,0.40 0.30,0.40 0.30,0.40";
  const alike = (schedule: Ring): string[] =>
    find("ring/identical-readings", ring(schedule)).map(({ message }) => message);

  // At x of the way round a point reads (r1·x + r2(1 − x))(r2·x + r1(1 − x)) / (r1 + r2): from a tenth to the middle that
  // is 0.16 (r2 − r1)² / (r1 + r2) more. Two digits of a meter hide 0.05 Ω.
  it.each([
    ["0.98", []],
    ["1.38", []],
    [
      "1.39",
      ["All 4 points read exactly 0.40 Ω L-E, where they should differ by about 0.05 Ω: was each one measured?"],
    ],
    [
      "1.60",
      ["All 4 points read exactly 0.40 Ω L-E, where they should differ by about 0.073 Ω: was each one measured?"],
    ],
  ])("ends of 0.60 Ω and %s Ω", (r2, messages) => {
    expect(alike({ ends: `r1 0.60 Ω rn 0.60 Ω r2 ${r2} Ω`, read: four, lines: at(10, 20, 30, 50) })).toEqual(messages);
  });

  // Evenly spread where no run is drawn: four points lie at a fifth to four fifths, 0.08 (r2 − r1)² / (r1 + r2) apart.
  it.each([
    ["1.83", 0],
    ["1.84", 1],
  ])("ends of 0.60 Ω and %s Ω, with no run drawn", (r2, count) => {
    expect(alike({ ends: `r1 0.60 Ω rn 0.60 Ω r2 ${r2} Ω`, read: four })).toHaveLength(count);
  });

  it("are remarkable from four points on, and where each one was read", () => {
    const lines = at(10, 20, 30, 50);
    const ends = "r1 0.60 Ω rn 0.60 Ω r2 1.60 Ω";
    expect(alike({ ends, read: "0.30,0.40 0.30,0.40 0.30,0.40", lines })).toEqual([]);
    expect(alike({ ends, read: "0.30,0.40 0.30,0.40 0.30,0.40 0.30", lines })).toEqual([]);
    expect(alike({ ends, read: `${four} 0.30`, lines })).toEqual([]);
    expect(alike({ ends, read: "0.30,0.40 0.30,0.40 0.30,0.40 0.30,0.41", lines })).toEqual([]);
  });
});
