import { expect, it } from "vitest";
import { capital, counted, listed, sentence, withShortWords } from "../../server/text/words.ts";
import { findingsOf } from "../helpers/sample.ts";

it("lists, counts and begins a sentence", () => {
  expect([listed([]), listed(["a"]), listed(["a", "b"]), listed(["a", "b", "c"], "or")]).toEqual([
    "",
    "a",
    "a and b",
    "a, b or c",
  ]);
  expect([counted(0, "way"), counted(1, "way"), counted(2, "way"), counted(2, "entry", "entries")]).toEqual([
    "0 ways",
    "1 way",
    "2 ways",
    "2 entries",
  ]);
  expect([capital("aus"), capital(""), sentence("is it?"), sentence("so")]).toEqual(["Aus", "", "Is it?", "So."]);
});

it("cuts words that no screen holds, and no other, between whole letters", () => {
  const at = (length: number) => "𝛀".repeat(length);
  expect(withShortWords(`a ${at(80)} b`)).toBe(`a ${at(80)} b`);
  expect(withShortWords(`a ${at(81)} b`)).toBe(`a ${at(60)}… b`);
  expect(withShortWords(`“${at(80)}”: what?`)).toBe(`“${at(59)}…”: what?`);
});

it("a figure of ten thousand digits is quoted in part", () => {
  const [found] = findingsOf(`wayfile 1\nboard A {\nway 1 radial {\nlength ${"9".repeat(10_000)} m\n}\n}\n`).filter(
    ({ check }) => check === "language/implausible",
  );
  expect(found?.message).toBe(`${"9".repeat(60)}… m cannot be a length. Check the unit and the decimal point.`);
});
