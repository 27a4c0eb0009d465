/** Figures, margins and verdicts where their wording turns: worked out by hand beside each. */
import { describe, expect, it } from "vitest";
import { marginOf } from "../../server/calc/margin.ts";
import {
  amps,
  degrees,
  kiloamps,
  megohms,
  milliohms,
  milliseconds,
  ohms,
  round,
  seconds,
  truncate,
} from "../../server/calc/result.ts";
import { asRememberedWords, beyondLimit, onlyAsRemembered, toLookUp } from "../../server/calc/verdict.ts";
import type { Source } from "../../server/tables/source.ts";

describe("figures", () => {
  // Three decimals below 0.1 Ω, two to 100 Ω, none beyond; what is shown twice alike is cut to two.
  it.each([
    [0, "0.00 Ω"],
    [0.0004, "0.00 Ω"],
    [0.0996, "0.10 Ω"],
    [0.0754, "0.075 Ω"],
    [0.0704, "0.07 Ω"],
    [0.1, "0.10 Ω"],
    [0.105, "0.11 Ω"],
    [0.1254, "0.13 Ω"],
    [1.366, "1.37 Ω"],
    [9.994, "9.99 Ω"],
    [10, "10 Ω"],
    [10.255, "10.26 Ω"],
    [99.994, "99.99 Ω"],
    [100, "100 Ω"],
    [100.4, "100 Ω"],
    [1666.67, "1667 Ω"],
    [-0.02, "-0.02 Ω"],
    [Number.POSITIVE_INFINITY, "∞ Ω"],
  ])("%d Ω is %s", (value, text) => expect(ohms(value)).toBe(text));

  // Three figures, two decimals at most; beside another, what tells them apart.
  it.each([
    [0.427, undefined, "0.43 A"],
    [6.956, undefined, "6.96 A"],
    [9.999, undefined, "10 A"],
    [56.16, undefined, "56.2 A"],
    [63, undefined, "63 A"],
    [558.59, undefined, "559 A"],
    [-56.16, undefined, "-56.2 A"],
    [56.16, 63, "56.2 A"],
    [31.98, 32, "31.98 A"],
    [32, 31.98, "32 A"],
    [100.3, 100, "100.3 A"],
    [20.04, 19.96, "20.04 A"],
    [19.96, 20.04, "19.96 A"],
    // So close that two decimals do not tell either: no more of them.
    [100.001, 100, "100 A"],
    [32, 32, "32 A"],
  ])("%d A beside %s is %s", (value, beside, text) => expect(amps(value, beside)).toBe(text));

  it.each([
    [kiloamps(99.95), "0.1 kA"],
    [kiloamps(99.4), "0.099 kA"],
    [kiloamps(100), "0.1 kA"],
    [kiloamps(1234), "1.23 kA"],
    [milliohms(0.00741), "7.41 mΩ"],
    [milliohms(0.0005244), "0.524 mΩ"],
    [megohms(999e6), "999 MΩ"],
    [megohms(1.255e6), "1.26 MΩ"],
    [milliseconds(0.02845), "28.5 ms"],
    [milliseconds(0.3), "300 ms"],
    [seconds(1.9894), "1.989 s"],
    [degrees(66.94), "66.9 °C"],
  ])("%s", (shown, text) => expect(shown).toBe(text));

  it("rounds a half up and cuts off what is more", () => {
    expect([round(2.5, 0), round(1.005, 2), round(-0.4, 0), truncate(1.999, 2), truncate(2, 2)]).toEqual([
      3, 1.01, -0, 1.99, 2,
    ]);
  });
});

describe("margins", () => {
  // Whole hundredths from 1 % on, tenths from 0.1 %, hundredths below; what is left is cut, what is over is raised.
  it.each([
    ["most", 0, 1, "=", "100 % left", true],
    ["most", 0.5, 1, "=", "50 % left", true],
    ["most", 0.9, 1, "=", "10 % left", true],
    ["most", 0.985, 1, "=", "1 % left", true],
    ["most", 0.99, 1, "=", "1 % left", true],
    ["most", 0.9911, 1, "=", "0.8 % left", true],
    ["most", 0.999, 1, "=", "0.1 % left", true],
    ["most", 0.99911, 1, "=", "0.08 % left", true],
    ["most", 1, 1, "=", "0 % left", true],
    ["most", 1.0001, 1, "=", "0.01 % over", false],
    ["most", 1.00011, 1, "=", "0.02 % over", false],
    ["most", 1.0085, 1, "=", "0.9 % over", false],
    ["most", 1.011, 1, "=", "2 % over", false],
    ["most", 2, 1, "=", "100 % over", false],
    ["most", 3, 2, "=", "50 % over", false],
    ["most", 1.5, 2, "=", "25 % left", true],
    ["most", 0.25, 1, "<", "more than 75 % left", true],
    ["most", 1, 1, "<", "more than 0 % left", true],
    ["most", 1.5, 1, ">", "50 % over", false],
    ["least", 1, 1, "=", "just on it", true],
    ["least", 1.99, 1, "=", "1.9 times it", true],
    ["least", 3, 2, "=", "1.5 times it", true],
    ["least", 9.99, 1, "=", "9.9 times it", true],
    ["least", 10, 1, "=", "10 times it", true],
    ["least", 10.9, 1, "=", "10 times it", true],
    ["least", 0.999, 1, "=", "only 99 % of it", false],
    ["least", 1, 2, "=", "only 50 % of it", false],
    ["least", 0.0051, 1, "=", "only 0.5 % of it", false],
    ["least", 1, 2, "<", "less than 50 % of it", false],
    ["least", 2, 2, "<", "below it", false],
    ["least", 2, 2, ">", "just on it", true],
  ] as const)("at %s: %d of %d, %s", (sense, value, limit, sign, text, passes) => {
    const found = marginOf(sense, value, limit, sign);
    expect([found?.text, found?.passes]).toEqual([text, passes]);
    const share = sense === "most" ? 1 - value / limit : value / limit - 1;
    expect(found?.share).toBeCloseTo(share, 6);
    expect(Math.sign(found?.share ?? 0)).toBe(passes ? Math.sign(share) : -1);
    expect(found?.upTo).toBe(text.replace(/ left$/, " left of").replace(/ it$/, ""));
  });

  it.each([
    ["no limit", 1, 0],
    ["one below nothing", 1, -1],
    ["one without end", 1, Number.POSITIVE_INFINITY],
    ["no value", Number.NaN, 1],
    ["a value without end", Number.POSITIVE_INFINITY, 1],
  ])("of %s there is none", (_, value, limit) => {
    expect([marginOf("most", value, limit), marginOf("least", value, limit)]).toEqual([undefined, undefined]);
  });
});

describe("verdicts", () => {
  const from = (...shares: number[]): Source => ({
    ref: "Table",
    standing: shares.length > 0 ? "memory" : "printed",
    ...(shares.length > 0 ? { remembered: shares.map((share) => ({ figure: "Table, row", share })) } : {}),
  });

  // 10 % of a figure from memory: 1.1 times the limit fails by no more than that, and so does 1 / 1.1 of it.
  it.each([
    [1.05, 1, from(), "fails"],
    [1.05, 1, undefined, "fails"],
    [1.1, 1, from(0.1), "unproven"],
    [1.11, 1, from(0.1), "fails"],
    [1, 1.1, from(0.1), "unproven"],
    [1, 1.11, from(0.1), "fails"],
    [1.3, 1, from(0.1, 0.2), "unproven"],
    [1.33, 1, from(0.1, 0.2), "fails"],
    [0, 0, from(0.1), "unproven"],
    [0, 1, from(0.1), "fails"],
    [1, 0, from(0.1), "fails"],
  ] as const)("%d against %d", (value, limit, source, verdict) => {
    expect(beyondLimit(value, limit, source)).toBe(verdict);
  });

  it.each([
    [0.95, 1, from(0.1), true],
    [0.9, 1, from(0.1), false],
    [1, 1.1, from(0.1), false],
    [1, 1.09, from(0.1), true],
    [0.95, 1, from(), false],
    [0.95, 1, undefined, false],
    [0, 1, from(0.1), false],
    [1, 0, from(0.1), false],
  ] as const)("%d of %d passes only as remembered", (value, limit, source, only) => {
    expect(onlyAsRemembered(value, limit, source)).toBe(only);
  });

  it("names what is to be looked up, and how far it can be wrong", () => {
    expect(toLookUp(from(0.001, 0.01, 0.014, 0.155, 5))).toBe(
      ["1", "1", "1", "16", "100"].map((share) => `Table, row (±${share} %)`).join("; "),
    );
    expect(asRememberedWords(from(0.1))).toContain("look up Table, row (±10 %)");
  });
});
