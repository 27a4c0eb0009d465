import { describe, expect, test } from "vitest";
import { amountText } from "../../server/cli/amounts.ts";
import { show } from "../../server/cli/columns.ts";
import { visible } from "../../server/text/visible.ts";

const under = (line: string, part: string) => {
  const start = line.indexOf(part);
  const { text, from, to } = show(line, start, start + part.length);
  return `${text}\n${" ".repeat(from)}${"^".repeat(to - from)}`;
};

describe("marks", () => {
  test.each([
    ["Zs  1.52 Ω", "1.52 Ω", "Zs  1.52 Ω\n    ^^^^^^"],
    ["\tZs\t1", "1", "    Zs  1\n        ^"],
    ["a\tb", "\tb", "a   b\n ^^^^"],
    ["漢字 x", "x", "漢字 x\n     ^"],
    ["漢字 x", "漢字", "漢字 x\n^^^^"],
    ["e\u0301x", "x", "e\u0301x\n ^"],
    ["𝒵 x", "x", "𝒵 x\n  ^"],
    ["👩‍🔧 x", "x", "👩‍🔧 x\n   ^"],
    ["", "", "\n^"],
    ["ab", "", "ab\n^"],
  ])("under part of %j", (line, part, picture) => expect(under(line, part)).toBe(picture));

  test("at the end of a line", () => expect(show("ab", 2, 2)).toEqual({ text: "ab", from: 2, to: 3 }));

  test.each([0, 30, 100, 159, 500, 2_000, 99_000])("stay under their sign in a long line, at %i", (at) => {
    const line = `${"a".repeat(at)}X${"b".repeat(100_000 - at)}`;
    const { text, from, to } = show(line, at, at + 1);
    expect(text.slice(from, to)).toBe("X");
    expect(text.length).toBeLessThan(170);
  });
});

test("control signs are shown", () => expect(visible("a\u0000\u0007\u009b\u2066\ttab\nline")).toBe("a␀␇��\ttab\nline"));

describe("amounts as the trade writes them", () => {
  test.each([
    [1.37, "Ω", "1.37 Ω"],
    [0.045, "Ω", "0.045 Ω"],
    [1_000_000, "Ω", "1 MΩ"],
    [0.03, "A", "30 mA"],
    [32, "A", "32 A"],
    [6000, "A", "6 kA"],
    [0.3, "s", "300 ms"],
    [5, "s", "5 s"],
    [3000, "W", "3 kW"],
    [2.5, "mm²", "2.5 mm²"],
    [3, "", "3"],
  ])("%d %s", (amount, unit, text) => expect(amountText({ amount, unit })).toBe(text));

  test("a value is written like its limit", () => {
    expect(amountText({ amount: 500, unit: "Ω" }, { amount: 1_000_000, unit: "Ω" })).toBe("0.001 MΩ");
    expect(amountText({ amount: 1.2, unit: "s" }, { amount: 0.3, unit: "s" })).toBe("1200 ms");
  });
});
