/**
 * What the editor does with the signs of the language: a double click takes a word whole, and in a workspace that is not
 * trusted no unit is boxed as if it were a suspicious letter.
 */
import { readFileSync } from "node:fs";
import { expect, it } from "vitest";
import { vocabulary } from "../../grammar/vocabulary.ts";

const manifest = JSON.parse(readFileSync(new URL("../../package.json", import.meta.url), "utf8"));
const defaults = manifest.contributes.configurationDefaults["[wayfile]"];
const separators: string[] = [...defaults["editor.wordSeparators"]];
const divided = (words: readonly string[]): string[] =>
  words.filter((word) => separators.some((sign) => word.includes(sign)));

it("no word of a block is divided", () => {
  const words = Object.values(vocabulary).flatMap((rows) => Object.keys(rows));
  expect(words.length).toBeGreaterThan(100);
  expect(divided(words)).toEqual([]);
});

it("neither is a reading, a day, an earthing arrangement or what a circuit is called", () => {
  expect(divided(["R1+R2", "TN-C-S", "2.5mm²", "0.67", "2026-03-10", "A/3", "flat-twin", "1x", "½x"])).toEqual([]);
});

it("what stands behind the number of a standard belongs to it, so that a list is compared with all that is typed", () => {
  const { pattern, flags } = JSON.parse(
    readFileSync(new URL("../../grammar/generated/language-configuration.json", import.meta.url), "utf8"),
  ).wordPattern;
  const wordIn = (text: string) => new RegExp(pattern, flags).exec(text)?.[0];
  expect(wordIn("7671:2018+A2:2022")).toBe("7671:2018+A2:2022");
  expect(wordIn("7671: 2018")).toBe("7671");
});

it("quotes, braces and a comparison stand apart from what they hold", () => {
  expect(['"', "{", "}", "<", ">", "#", ",", ":"].filter((sign) => !separators.includes(sign))).toEqual([]);
});

it("a unit such as Ω or mm² is no suspicious letter", () => {
  expect(defaults["editor.unicodeHighlight.nonBasicASCII"]).toBe(false);
  // What looks like another letter or is not seen at all is still marked.
  expect(Object.keys(defaults).filter((key) => /unicodeHighlight\.(?:ambiguous|invisible)/.test(key))).toEqual([]);
});
