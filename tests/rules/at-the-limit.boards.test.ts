/**
 * Circuits of a board beside each other, and two visits of one board, where a check begins to ask. All thresholds are
 * common practice of `tables/comparison.ts` and `tables/dead-test-practice.ts`; what a length should read is BS EN 60228:
 * 7.41 mΩ/m of 2.5 mm² and 12.1 of 1.5 mm², 19.51 mΩ for a metre of both.
 */
import { describe, expect, it } from "vitest";
import { find } from "../helpers/find.ts";
import { holdAtLimits, type Limit } from "../helpers/limits.ts";

interface Bench {
  readonly length?: number | undefined;
  readonly R?: string | undefined;
  readonly Zs?: string | undefined;
  readonly MΩ?: string | undefined;
  readonly lines?: string | undefined;
  readonly kind?: string | undefined;
}

const circuit = ({ length, R, Zs, MΩ, lines = "", kind = "radial" }: Bench, at: number): string =>
  [
    `way ${at + 1} ${kind} "Bench ${at + 1}" {`,
    ...(kind === "spare" ? [] : ["cable flat-twin line 2.5 mm² cpc 1.5 mm²"]),
    ...(length === undefined ? [] : [`length ${length} m`]),
    lines,
    ...(R || MΩ ? ["dead 2026-03-04 {", R ? `R1+R2 ${R}` : "", MΩ ? `insulation 500 V ${MΩ}` : "", "}"] : []),
    ...(Zs ? ["live 2026-03-05 {", `Zs ${Zs}`, "}"] : []),
    "}",
  ].join("\n");

const messages = (check: string, benches: readonly Bench[], board?: string): string[] =>
  find(check, benches.map(circuit).join("\n"), {
    stage: "tested",
    ...(board === undefined ? {} : { board: `fed-from supply\n${board}` }),
  }).map(({ message }) => message);

const count = (check: string, benches: readonly Bench[], board?: string): number =>
  messages(check, benches, board).length;

const at = (lengths: readonly number[], read: (length: number) => string): Bench[] =>
  lengths.map((length) => ({ length, R: `${read(length)} Ω` }));
const byLength = (length: number): number => length * 0.01951;

describe("R1+R2 that repeats", () => {
  const check = "population/equal-readings";
  const same = (...lengths: readonly number[]) => at(lengths, () => "0.40");

  // From 0.293 Ω on: 5.1 m more are 0.0995 Ω, 5.2 m 0.1014 Ω, and 0.1 Ω is odd.
  it.each([
    [[15, 16, 17, 20.1], 0],
    [[15, 16, 17, 20.2], 1],
    [[15, 16, 25], 0],
    [[15, 16, 16, 25], 0],
    [[15, 16, 17, 25], 1],
  ])("on circuits of %j m", (lengths, found) => expect(count(check, same(...lengths))).toBe(found));

  // Without the cable by length alone: a quarter longer.
  it.each([
    [24.9, 0],
    [25, 1],
  ])("on circuits of 20 m to %d m of an unknown cable", (longest, found) => {
    const bare = same(20, 21, 22, longest)
      .map(circuit)
      .join("\n")
      .replace(/cable .*\n/g, "");
    expect(find(check, bare, { stage: "tested" })).toHaveLength(found);
  });

  it("is one figure, measured, on circuits that are used", () => {
    const four = same(15, 16, 17, 25);
    expect(messages(check, four)).toEqual([
      "Ways 1, 2, 3 and 4 differ in length and all read R1+R2 0.40 Ω: were they measured, or copied?",
    ]);
    expect(count(check, [...four.slice(1), { length: 15, R: "0.41 Ω" }])).toBe(0);
    expect(count(check, [...four.slice(1), { length: 15, R: "0.40 Ω calculated" }])).toBe(0);
    expect(count(check, [...four.slice(1), { length: 15, R: ">0.40 Ω" }])).toBe(0);
  });

  it("is asked of Zs and of insulation as well, but not of what is off the scale", () => {
    const lengths = [15, 16, 17, 25];
    expect(
      messages(
        check,
        lengths.map((length) => ({ length, Zs: "0.71 Ω" })),
      )[0],
    ).toContain("all read Zs 0.71 Ω");
    expect(
      messages(
        check,
        lengths.map((length) => ({ length, MΩ: "L-E 212 MΩ" })),
      )[0],
    ).toContain("all read insulation L-E 212 MΩ");
    expect(
      count(
        check,
        lengths.map((length) => ({ length, MΩ: "L-E >200 MΩ" })),
      ),
    ).toBe(0);
  });
});

describe("R1+R2 that is what the length gives", () => {
  const check = "population/calculated-from-length";
  const exact = (...lengths: readonly number[]) => at(lengths, (length) => byLength(length).toFixed(2));

  it.each([
    ["five of five lengths", [10, 15, 20, 25, 30], 1],
    ["four of four", [10, 15, 20, 25], 0],
    ["five, two of one length", [10, 15, 20, 25, 25], 0],
    // Of 5 m, 0.098 Ω, any two figures agree; of 5.2 m, 0.101 Ω, they need not.
    ["five, one of them of 5 m", [5, 15, 20, 25, 30], 0],
    ["five, one of them of 5.2 m", [5.2, 15, 20, 25, 30], 1],
  ])("to the last digit: %s", (_, lengths, found) => expect(count(check, exact(...lengths))).toBe(found));

  it("is measured where one digit differs, is marked so, or metal lies beside it", () => {
    const five = exact(10, 15, 20, 25, 30);
    const [first = {}, ...others] = five;
    expect(count(check, [{ ...first, R: "0.21 Ω" }, ...others])).toBe(0);
    expect(count(check, [{ ...first, R: "0.20 Ω calculated" }, ...others])).toBe(0);
    expect(count(check, [{ ...first, lines: 'parallel-path "Frame"' }, ...others])).toBe(0);
    expect(count(check, [{ kind: "spare" }, ...five])).toBe(1);
  });
});

describe("leads that were not nulled", () => {
  const check = "population/leads-not-nulled";
  const over = (lengths: readonly number[], ...excess: readonly number[]) =>
    lengths.map((length, index) => ({ length, R: `${(byLength(length) + (excess[index] ?? 0)).toFixed(3)} Ω` }));
  const lengths = [10, 14, 18, 24];

  it.each([
    [[0.081, 0.081, 0.081, 0.081], 1],
    [[0.079, 0.079, 0.079, 0.079], 0],
    // Alike within 0.05 Ω.
    [[0.1, 0.1, 0.1, 0.149], 1],
    [[0.1, 0.1, 0.1, 0.152], 0],
    [[-0.1, -0.1, -0.1, -0.1], 0],
  ])("%j Ω over what their lengths give: %i", (excess, found) => {
    expect(count(check, over(lengths, ...excess))).toBe(found);
  });

  // A longer cable explains as much where none is 0.2 Ω, 10.3 m, longer than another.
  it.each([
    [[10, 12, 16, 20.2], 0],
    [[10, 12, 16, 20.3], 1],
    [[10, 14, 24], 0],
  ])("on circuits of %j m: %i", (lengths, found) => {
    expect(count(check, over(lengths, 0.1, 0.1, 0.1, 0.1))).toBe(found);
  });
});

describe("one circuit unlike its neighbours", () => {
  const check = "population/unlike-neighbours";
  // Each reads so many times its length, the last by itself.
  const board = (...shares: readonly number[]) =>
    shares.map((share, index) => {
      const length = 30 + index;
      return { length, R: `${(byLength(length) * share).toFixed(3)} Ω` };
    });

  it.each([
    [[1, 1, 1, 1, 1.31], 1],
    [[1, 1, 1, 1, 1.29], 0],
    [[1, 1, 1, 0.71], 0],
    // The others keep together within 15 %.
    [[1, 1, 1, 1.14, 1.31], 1],
    [[1, 1, 1, 1.16, 1.31], 0],
    // What does not fit its length by itself, 1.5 times it, is another check's.
    [[1, 1, 1, 1, 1.49], 1],
    [[1, 1, 1, 1, 1.51], 0],
    [[1.1, 1.1, 1.1, 1.1, 0.76], 1],
    [[1.1, 1.1, 1.1, 1.1, 0.78], 0],
  ])("that reads %j of what they should: %i", (shares, found) => expect(count(check, board(...shares))).toBe(found));

  it("says which way it is off, and by how much", () => {
    expect(messages(check, board(1, 1, 1, 1, 1.4))).toEqual([
      "Way 5 reads 0.93 Ω; by the other 4 circuits it should be 0.66 Ω: look for a poor joint, or a longer cable.",
    ]);
    expect(messages(check, board(1.1, 1.1, 1.1, 1.1, 0.76))[0]).toContain(
      "look for a parallel path, or a shorter cable.",
    );
  });

  it("leaves a tenth of an ohm alone, though it is much of little", () => {
    const short = [10, 11, 12, 13].map((length) => ({ length, R: `${byLength(length).toFixed(3)} Ω` }));
    expect(count(check, [...short, { length: 16, R: "0.412 Ω" }])).toBe(0);
    expect(count(check, [...short, { length: 16, R: "0.413 Ω" }])).toBe(1);
  });
});

describe("Zs that is a sum", () => {
  const check = "population/worked-backwards";
  // Ze is 0.30 Ω.
  const sums = (howMany: number, off = 0) =>
    Array.from({ length: howMany }, (_, index) => {
      const R = 0.2 + index * 0.07;
      return { R: `${R.toFixed(2)} Ω`, Zs: `${(R + 0.3 + (index === 0 ? off : 0)).toFixed(2)} Ω` };
    });

  it.each([
    [sums(9), 1],
    [sums(8), 0],
    [sums(9, 0.01), 0],
    [sums(9, -0.01), 0],
    [[...sums(9).slice(1), { R: "0.20 Ω", Zs: "0.50 Ω calculated" }], 0],
    [[...sums(9).slice(1), { R: "0.20 Ω calculated", Zs: "0.50 Ω" }], 0],
  ])("to the last digit, case %#", (benches, found) => expect(count(check, benches)).toBe(found));
});

describe("figures that end in 0 and 5", () => {
  const check = "population/round-figures";
  const board = (...readings: readonly string[]) => readings.map((R) => ({ R: `${R} Ω` }));
  const eight = ["0.20", "0.25", "0.30", "0.35", "0.40", "0.45", "0.20", "0.25"];

  it.each([
    [eight, 1],
    [eight.slice(1), 0],
    [[...eight.slice(1), "0.21"], 0],
    [["0.20", "0.25", "0.30", "0.35", "0.20", "0.25", "0.30", "0.35"], 1],
    // Of three figures the circuits may be alike.
    [["0.20", "0.25", "0.30", "0.20", "0.25", "0.30", "0.20", "0.25"], 0],
    // A meter that shows tenths shows no round hundredths.
    [[...eight.slice(1), "0.2"], 0],
  ])("%j: %i", (readings, found) => expect(count(check, board(...readings))).toBe(found));
});

describe("circuits close to their limit", () => {
  const check = "population/all-near-limit";
  // Table 41.3: 1.37 Ω of B32, 1.0925 Ω cold; 95 % of that is 1.038 Ω.
  const device = "device BS EN 60898 B32 6 kA";
  const board = (...Zs: readonly string[]) => Zs.map((one) => ({ Zs: `${one} Ω`, lines: device }));

  it.each([
    [["1.04", "1.05", "1.09"], 1],
    [["1.03", "1.05", "1.09"], 0],
    [["1.04", "1.09"], 0],
    [["1.04", "1.05", "1.10"], 0],
  ])("%j: %i", (Zs, found) => expect(count(check, board(...Zs))).toBe(found));
});

describe("insulation of a board", () => {
  const benches = (...values: readonly string[]): Bench[] => values.map((MΩ) => ({ MΩ: `L-E ${MΩ}` }));

  // A tenth of the middle one; 1 MΩ is the limit of Table 64 and another check's.
  it.each([
    [["200 MΩ", "200 MΩ", "200 MΩ", "19.9 MΩ"], 1],
    [["200 MΩ", "200 MΩ", "200 MΩ", "20 MΩ"], 0],
    [["200 MΩ", "200 MΩ", "19.9 MΩ"], 0],
    [["200 MΩ", ">200 MΩ", ">200 MΩ", "19.9 MΩ"], 1],
    [["200 MΩ", "200 MΩ", "200 MΩ", "<19.9 MΩ"], 0],
    [["200 MΩ", "200 MΩ", "200 MΩ", "1 MΩ"], 1],
    [["200 MΩ", "200 MΩ", "200 MΩ", "0.99 MΩ"], 0],
    [["300 MΩ", "300 MΩ", "150 MΩ", "15 MΩ"], 0],
    [["300 MΩ", "300 MΩ", "150 MΩ", "14.9 MΩ"], 1],
    [["300 MΩ", "300 MΩ", "300 MΩ", "150 MΩ", "29 MΩ"], 1],
  ])("one of %j stands out: %i", (values, found) => {
    expect(count("insulation/outlier", benches(...values))).toBe(found);
  });

  // All below 20 MΩ, and the greatest no more than twice the least.
  it.each([
    [["19.9 MΩ", "19.9 MΩ", "10 MΩ", "10 MΩ"], 1],
    [["20 MΩ", "19.9 MΩ", "10 MΩ", "10 MΩ"], 0],
    [["19.9 MΩ", "19.9 MΩ", "10 MΩ"], 0],
    [["10 MΩ", "10 MΩ", "5 MΩ", "5 MΩ"], 1],
    [["10.1 MΩ", "10 MΩ", "5 MΩ", "5 MΩ"], 0],
    [["10 MΩ", "10 MΩ", "5 MΩ", "<5 MΩ"], 0],
  ])("all of %j are low together: %i", (values, found) => {
    expect(count("insulation/all-low", benches(...values))).toBe(found);
  });

  const whole = (total: string): string => `dead 2026-03-04 {\ninsulation 500 V L-E ${total}\n}`;
  // No more than its lowest circuit by a tenth, no more than twice and no less than half of all in parallel: of 100, 100
  // and 50 MΩ 25 MΩ.
  it.each([
    ["50 MΩ", ""],
    [
      "51 MΩ",
      "The board reads 51 MΩ, far more than the 25 MΩ of its circuits in parallel: were some of them off, or a figure copied?",
    ],
    ["56 MΩ", "The board reads 56 MΩ, more than way 3 alone (50 MΩ): was that circuit off?"],
    [">60 MΩ", "The board reads >60 MΩ, more than way 3 alone (50 MΩ): was that circuit off?"],
    ["12.5 MΩ", ""],
    [
      "12.4 MΩ",
      "The board reads 12.4 MΩ, far below the 25 MΩ of its circuits in parallel: disconnect SPDs and meters, and look for damp.",
    ],
    ["<12.4 MΩ", ""],
  ])("%s of the board: %j", (total, message) => {
    const found = messages("insulation/board-disagrees", benches("100 MΩ", "100 MΩ", "50 MΩ"), whole(total));
    expect(found.join()).toBe(message);
  });

  it("of the whole is not asked to be the sum of circuits that nobody read", () => {
    const some = [...benches("100 MΩ", "100 MΩ", "50 MΩ"), {}];
    expect(count("insulation/board-disagrees", some, whole("2 MΩ"))).toBe(0);
    expect(count("insulation/board-disagrees", [...some.slice(0, 3), { kind: "spare" }], whole("2 MΩ"))).toBe(1);
  });

  it.each([
    ["four circuits of three equal pairs", 4, "L-N 212 MΩ L-E 212 MΩ N-E 212 MΩ", 1],
    ["three", 3, "L-N 212 MΩ L-E 212 MΩ N-E 212 MΩ", 0],
    ["four of two pairs", 4, "L-N 212 MΩ L-E 212 MΩ", 0],
    ["four that differ in the last", 4, "L-N 212 MΩ L-E 212 MΩ N-E 213 MΩ", 0],
    ["four off the scale", 4, "L-N >212 MΩ L-E >212 MΩ N-E >212 MΩ", 0],
    ["four with one off the scale", 4, "L-N 212 MΩ L-E 212 MΩ N-E >212 MΩ", 0],
  ])("%s", (_, howMany, MΩ, found) => {
    expect(
      count(
        "population/equal-pairs",
        Array.from({ length: howMany }, () => ({ MΩ })),
      ),
    ).toBe(found);
  });
});

describe("trip times that repeat", () => {
  const rcds = (...times: readonly string[]) =>
    times.map((time) => ({
      lines: `device BS EN 61009 B16 6 kA 30 mA type A\nlive 2026-03-05 {\nrcd 30 mA 1x ${time}\n}`,
    }));

  it.each([
    [["24 ms", "24 ms", "24 ms", "24 ms"], 1],
    [["24 ms", "24 ms", "24 ms"], 0],
    // In whole milliseconds on every device, in tenths on more than half.
    [["24 ms", "24 ms", "24 ms", "24 ms", "21 ms"], 0],
    [["24.1 ms", "24.1 ms", "24.1 ms", "24.1 ms", "21.2 ms"], 1],
    [["24.1 ms", "24.1 ms", "24.1 ms", "24.1 ms", "21.2 ms", "22 ms", "23 ms"], 1],
    [["24.1 ms", "24.1 ms", "24.1 ms", "24.1 ms", "21.2 ms", "22 ms", "23 ms", "25 ms"], 0],
    [["24.1 ms", "24.1 ms", "24.1 ms", "<24.1 ms"], 0],
    [["24.1 ms", "24.1 ms", "24.1 ms", "24.1 ms calculated"], 0],
  ])("%j: %i", (times, found) => expect(count("population/equal-trip-times", rcds(...times))).toBe(found));
});

describe("rings whose ends are multiples of R1+R2", () => {
  const ring = (ends: string): Bench => ({
    kind: "ring",
    lines: `dead 2026-03-04 {\nends ${ends}\nR1+R2 0.28 Ω\n}`,
  });
  // 1.5 and 2.5 times 0.28 Ω.
  const worked = ring("r1 0.42 Ω rn 0.42 Ω r2 0.70 Ω");

  it.each([
    [[worked, worked, worked], 1],
    [[worked, worked], 0],
    [[worked, worked, ring("r1 0.43 Ω rn 0.43 Ω r2 0.70 Ω")], 0],
    [[worked, worked, ring("r1 0.42 Ω rn 0.42 Ω r2 0.69 Ω")], 0],
  ])("case %#", (benches, found) => expect(count("ring/ends-worked-back", benches)).toBe(found));
});

describe("readings that are those of the last visit", () => {
  const twice = (then: string, now: string) =>
    `way 1 radial "Heater" {\ndead 2021-03-04 {\n${then}\n}\ndead 2026-03-04 {\n${now}\n}\n}`;
  const lines = (R1R2: string, insulation = "L-N 212 MΩ L-E 231 MΩ N-E 264 MΩ") =>
    `R1+R2 ${R1R2}\nR2 0.25 Ω\ninsulation 500 V ${insulation}\ntemperature 20 °C`;
  const found = (then: string, now: string, further = "") =>
    find("drift/copied-from-earlier", `${twice(then, now)}\n${further}`, { stage: "tested", work: "existing" }).length;
  const live = (day: string) => `live ${day} {\nZs 0.71 Ω\n}`;
  const another = `way 2 radial "Lights" {\n${live("2021-03-05")}\n${live("2026-03-05")}\n}`;

  it.each([
    ["six alike", lines("0.41 Ω"), lines("0.41 Ω"), another, 1],
    ["five alike", lines("0.41 Ω"), lines("0.41 Ω"), "", 0],
    ["five alike and one not", lines("0.41 Ω"), lines("0.42 Ω"), another, 0],
    ["one written with another digit", lines("0.41 Ω"), lines("0.410 Ω"), another, 0],
    ["five alike, and bounds", lines("0.41 Ω"), lines("0.41 Ω"), another.replaceAll("0.71", ">0.71"), 0],
    ["one from a record", lines("0.41 Ω"), lines('0.41 Ω from-record "Sheet 4"'), another, 0],
  ])("%s", (_, then, now, further, expected) => expect(found(then, now, further)).toBe(expected));
});

const visits = (word: string, then: string, now: string): string =>
  `way 1 radial "Heater" {\ndevice BS EN 61009 B16 6 kA 30 mA type A\n${word} 2021-03-05 {\n${then}\n}\n${word} 2026-03-05 {\n${now}\n}\n}`;
const existing = { stage: "tested", work: "existing" } as const;

const limits: readonly Limit[] = [
  // A fifth more and 0.1 Ω more.
  {
    check: "drift/resistance-risen",
    setting: existing,
    text: visits("live", "Zs 1.00 Ω", "Zs # Ω"),
    found: {
      "1.20": "",
      "1.21": ["warning", "rose from 1.00 Ω on 2021-03-05 to 1.21 Ω, by 21 %."],
      "0.50": "",
      ">1.30": "",
    },
  },
  {
    check: "drift/resistance-risen",
    setting: existing,
    text: visits("live", "Zs 0.30 Ω", "Zs # Ω"),
    found: { "0.40": "", "0.41": "warning" },
  },
  {
    check: "drift/resistance-risen",
    setting: existing,
    text: visits("live", "Zs 2.00 Ω", "Zs # Ω"),
    found: { "2.40": "", "2.41": "warning" },
  },
  // Less than half, and by more than 0.1 Ω; Zs falls with the supply, and what was mended within one visit is no question.
  {
    check: "drift/resistance-fallen",
    setting: existing,
    text: visits("dead", "R1+R2 1.40 Ω", "R1+R2 # Ω"),
    found: {
      "0.70": "",
      "0.69": ["information", "fell from 1.40 Ω on 2021-03-05 to 0.69 Ω"],
      ">0.30": "",
    },
  },
  {
    check: "drift/resistance-fallen",
    setting: existing,
    text: visits("dead", "R2 0.18 Ω", "R2 # Ω"),
    found: { "0.09": "", "0.07": "information" },
  },
  {
    check: "drift/resistance-fallen",
    setting: existing,
    text: visits("live", "Zs 4.00 Ω", "Zs # Ω"),
    found: { "0.50": "" },
  },
  {
    check: "drift/resistance-fallen",
    setting: existing,
    text: visits("dead", "R1+R2 1.40 Ω", "R1+R2 0.35 Ω").replace("2021-03-05", "#"),
    found: { "2026-02-02": "", "2026-02-01": "information" },
  },
  // Little by little counts from the first.
  {
    check: "drift/resistance-risen",
    setting: existing,
    text: visits("live", "Zs 1.10 Ω", "Zs # Ω").replace("live 2021", "live 2016-03-05 {\nZs 1.00 Ω\n}\nlive 2021"),
    found: {
      "1.20": "",
      "1.21": ["warning", "rose from 1.00 Ω on 2016-03-05"],
      "1.33": ["warning", "rose from 1.10 Ω on 2021"],
    },
  },
  // Of clamps 0.05 Ω.
  ...(
    [
      ["0.10", ""],
      ["0.11", ["warning", "Look at its clamps for corrosion and paint."]],
    ] as const
  ).map(
    ([ohms, found]): Limit => ({
      check: "drift/resistance-risen",
      setting: {
        ...existing,
        board: `fed-from supply\ndead 2021-03-04 {\nbonding water continuity 0.05 Ω\n}\ndead 2026-03-04 {\nbonding water continuity ${ohms} Ω\n}`,
      },
      text: 'way 1 spare "#"',
      found: { [ohms]: found },
    }),
  ),
  // A tenth is left. At a lower voltage insulation reads no less, at a higher one it may.
  {
    check: "drift/insulation-fallen",
    setting: existing,
    text: visits("dead", "insulation 500 V L-E 200 MΩ", "insulation # MΩ"),
    found: {
      "500 V L-E 20": "",
      "500 V L-E 19.9": "warning",
      "250 V L-E 19.9": "warning",
      "1000 V L-E 19.9": "",
      "500 V L-N 19.9": "",
    },
  },
  {
    check: "drift/insulation-fallen",
    setting: existing,
    text: visits("dead", "insulation 500 V L-E >200 MΩ", "insulation 500 V L-E # MΩ"),
    found: { "20": "", "19.9": ["warning", "L-E fell from over 200 MΩ on 2021-03-05 to 19.9 MΩ"], ">19.9": "" },
  },
  // Half as long again, and 10 ms longer.
  {
    check: "drift/rcd-slower",
    setting: existing,
    text: visits("live", "rcd 30 mA 1x 40 ms", "rcd 30 mA # ms"),
    found: {
      "1x 60": "",
      "1x 60.1": ["information", "rose from 40 ms on 2021-03-05 to 60.1 ms"],
      "5x 61": "",
      "1x 20": "",
    },
  },
  {
    check: "drift/rcd-slower",
    setting: existing,
    text: visits("live", "rcd 30 mA 1x 10 ms", "rcd 30 mA 1x # ms"),
    found: { "20": "", "20.1": "information" },
  },
  // A quarter either way.
  ...(
    [
      ["2.50", ""],
      ["2.51", ["warning", "rose from 2 kA on 2021-03-05 to 2.51 kA, by 26 %. Check every breaking capacity."]],
      ["1.50", ""],
      ["1.49", ["warning", "fell from 2 kA on 2021-03-05 to 1.49 kA, by 26 %. Look at the joints upstream"]],
    ] as const
  ).map(
    ([Ipf, found]): Limit => ({
      check: "drift/fault-current-changed",
      setting: {
        ...existing,
        board: `fed-from supply\nlive 2021-03-05 {\nIpf 2.00 kA\n}\nlive 2026-03-05 {\nIpf ${Ipf} kA\n}`,
      },
      text: 'way 1 spare "#"',
      found: { [Ipf]: found },
    }),
  ),
  // Three digits of the meter.
  {
    check: "continuity/highest-not-recorded",
    setting: { stage: "tested" },
    text: `way 1 radial "Lights" {
run A 9 m S1 8 m S2
dead 2026-03-04 {
R1+R2 0.40 Ω
at S2 L-E # Ω
}
}`,
    found: { "0.43": "", "0.44": ["warning", "R1+R2 is recorded as 0.40 Ω, but S2 reads 0.44 Ω: record the highest."] },
  },
  {
    check: "continuity/too-many-digits",
    text: `way 1 radial "Lights" {
dead 2026-03-04 {
R1+R2 #
}
}`,
    found: { "0.40 Ω": "", "0.401 Ω": "information", "0.401 Ω calculated": "", "401 mΩ": "", "401.5 mΩ": "" },
  },
];

holdAtLimits(limits);
