import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { parse } from "../../grammar/parser.ts";
import { type Document, documentOf, Positions, textOf } from "../../server/syntax/document.ts";
import { applyEdit } from "../../server/syntax/edit.ts";
import { split } from "../../server/syntax/split.ts";
import { lineStarts, positionOf } from "../../server/text/lines.ts";
import { generate } from "../helpers/generate.ts";
import { findingsOf } from "../helpers/sample.ts";
import { anyText, damaged, foreign, soundSchedule } from "../helpers/schedules.ts";

/** Each brace on a line of its own below its word. */
const low = (text: string): string => text.replaceAll(/^([^#\r\n{}]*[^#\s{}])[^\S\r\n]*\{(?=\r?$)/gm, "$1\n{");

/** A file of boards that stand further in than the instruments above them, which braces alone put right. */
const boardsAlone = (text: string): string => text.replace(/^installation.*?(?=^ +board )/ms, "").replace(/\}\s*$/, "");

/** The random schedules use names and files that nothing defines. */
const ofNames = new Set(["language/unknown-name", "language/duplicate-name", "language/use-missing"]);

const shown = ({ segments }: Document): string[] =>
  segments.map(({ kind, word, fault, breaks, text, mends, ends }) =>
    JSON.stringify([kind, word, fault, breaks, text, mends, ends]),
  );

describe("dividing", () => {
  test("the segments of any text are that text", () => {
    fc.assert(
      fc.property(anyText, (text) => {
        expect(textOf({ segments: split(text) })).toBe(text);
      }),
    );
  });

  test("every segment is whole lines and knows how many", () => {
    fc.assert(
      fc.property(anyText, (text) => {
        const segments = split(text);
        for (const segment of segments.slice(0, -1)) expect(segment.text).toMatch(/[\r\n]$/);
        const breaks = segments.reduce((sum, segment) => sum + segment.breaks, 0);
        expect(breaks).toBe(lineStarts(text).length - 1);
      }),
    );
  });

  test("a sound schedule has no faults", () => {
    fc.assert(
      fc.property(soundSchedule, (text) => {
        expect(split(text).filter(({ fault }) => fault)).toEqual([]);
        expect(findingsOf(text).filter(({ check }) => check.startsWith("language/") && !ofNames.has(check))).toEqual(
          [],
        );
      }),
    );
  });

  test("braces on lines of their own cost a fault each, and nothing else", () => {
    const shownOf = (text: string): string[] =>
      findingsOf(text)
        .filter(({ check }) => check !== "language/no-word")
        .map(({ check, message }) => `${check} ${message}`);
    const lowered = fc.sample(soundSchedule, { numRuns: 200, seed: 7 }).map((text) => ({ text, written: low(text) }));
    expect(lowered.filter(({ text, written }) => text !== written).length).toBeGreaterThan(20);
    for (const { text, written } of lowered) {
      expect(shownOf(written)).toEqual(shownOf(text));
      const braces = written.split("\n").filter((line) => line.trim() === "{").length;
      expect(findingsOf(written).filter(({ check }) => check === "language/no-word")).toHaveLength(braces);
    }
  });

  test("places and offsets agree", () => {
    fc.assert(
      fc.property(anyText, fc.nat(), (text, seed) => {
        const at = seed % (text.length + 1);
        // Between the two signs that end a line there is no place: it is the end of the line.
        const offset = at > 0 && text.startsWith("\r\n", at - 1) ? at - 1 : at;
        const place = positionOf(lineStarts(text), offset);
        const document = documentOf(text);
        const positions = new Positions(document);
        const found = positions.at(place);
        if (!found) throw new Error("Every place of a text is found.");
        expect(positions.place(found.segment, found.offset)).toEqual(place);
        const within = positions.at(positionOf(lineStarts(text), at));
        expect(within).toEqual(found);
      }),
    );
  });
});

describe("editing", () => {
  const edit = fc.tuple(fc.nat(), fc.nat({ max: 40 }), fc.oneof(foreign, fc.constant(""), fc.string({ maxLength: 3 })));

  const key = fc.tuple(
    fc.nat(),
    fc.nat({ max: 2 }),
    fc.constantFrom("", "", "a", "7", " ", "#", "{", "}", '"', "way", "\\", "<<<<<<<", ".", "é", "\n", "\n{\n"),
  );

  test.each([
    ["any edits", edit, 400],
    ["single keys", key, 1_200],
  ] as const)("after %s the division is the one a fresh reading gives", (_, one, numRuns) => {
    fc.assert(
      fc.property(
        fc.oneof(soundSchedule, damaged, soundSchedule.map(low)),
        fc.array(one, { minLength: 1, maxLength: 8 }),
        (text, edits) => {
          let document = documentOf(text);
          let current = text;
          for (const [place, length, put] of edits) {
            const from = place % (current.length + 1);
            const to = Math.min(current.length, from + length);
            const starts = lineStarts(current);
            if (splitsReturn(current, from) || splitsReturn(current, to)) continue;
            const range = { start: positionOf(starts, from), end: positionOf(starts, to) };
            document = applyEdit(document, { range, text: put });
            current = current.slice(0, from) + put + current.slice(to);
            expect(textOf(document)).toBe(current);
            expect(new Set(document.segments).size, "no segment stands in two places").toBe(document.segments.length);
            expect(shown(document)).toEqual(shown(documentOf(current)));
          }
        },
      ),
      { numRuns },
    );
  });

  test("after braces are lost, put in and moved the division is the one a fresh reading gives", () => {
    const put = fc.constantFrom(
      "",
      "{",
      "}",
      "{\n",
      "}\n",
      "\n",
      "  ",
      "      ",
      "\t",
      "way 9 {\n",
      "board Z {\n",
      "supply {\n",
    );
    const nearBrace = fc.tuple(fc.nat(), fc.integer({ min: -9, max: 9 }), fc.constantFrom(0, 0, 1, 2, 300), put);
    const sizes = fc.record({
      ways: fc.nat({ max: 30 }),
      waysPerBoard: fc.integer({ min: 1, max: 9 }),
      seed: fc.nat(),
    });
    const forms = fc.record({ returns: fc.boolean(), shifted: fc.boolean() });
    fc.assert(
      fc.property(sizes, fc.array(nearBrace, { minLength: 1, maxLength: 12 }), forms, (size, edits, form) => {
        const text = form.shifted ? boardsAlone(generate(size)) : generate(size);
        let current = form.returns ? text.replaceAll("\n", "\r\n") : text;
        let document = documentOf(current);
        for (const [which, beside, length, text] of edits) {
          const braces = [...current.matchAll(/[{}]/g)].map(({ index }) => index);
          const from = Math.min(Math.max((braces[which % braces.length] ?? 0) + beside, 0), current.length);
          const to = Math.min(current.length, from + length);
          if (splitsReturn(current, from) || splitsReturn(current, to)) continue;
          const starts = lineStarts(current);
          const range = { start: positionOf(starts, from), end: positionOf(starts, to) };
          document = applyEdit(document, { range, text });
          current = current.slice(0, from) + text + current.slice(to);
          expect(shown(document)).toEqual(shown(documentOf(current)));
        }
      }),
      { numRuns: 400 },
    );
  });

  test("an edit in a block leaves all other segments the same objects", () => {
    const text = "wayfile 1\nboard A {\n  way 1 {\n    Ib 2 A\n  }\n  way 2 spare\n}\n";
    const before = documentOf(text);
    const place = { line: 3, character: 7 };
    const after = applyEdit(before, { range: { start: place, end: place }, text: "1" });
    expect(after.segments.map((segment, index) => segment === before.segments[index])).toEqual([
      true,
      true,
      false,
      true,
      true,
    ]);
  });

  test("a brace that is lost and put back leaves all other segments the same objects, after many edits too", () => {
    const ways = Array.from({ length: 9 }, (_, way) => `  way ${way} radial "Loft" {\n    Ib 2 A\n  }\n`).join("");
    let document = documentOf(`wayfile 1\nboard A {\n${ways}}\n`);
    const apply = (line: number, from: number, until: number, text: string): Document => {
      const range = { start: { line, character: from }, end: { line, character: until } };
      return applyEdit(document, { range, text });
    };
    for (let edit = 0; edit < 200; edit++) {
      const line = 3 + 3 * (edit % 9);
      document = apply(line, 7, 8, String(edit % 10));
      const broken = apply(line + 1, 2, 3, "");
      expect(shown(broken)).toEqual(shown(documentOf(textOf(broken))));
      expect(broken.segments.filter((segment) => !document.segments.includes(segment))).toHaveLength(1);
      const before = document;
      document = broken;
      document = apply(line + 1, 2, 2, "}");
      expect(shown(document)).toEqual(shown(before));
      expect(document.segments.filter((segment) => !before.segments.includes(segment))).toHaveLength(1);
    }
  });

  test("a range may be given with its end first", () => {
    const document = documentOf("wayfile 1\nboard A {\n  way 1 spare\n  way 2 spare\n}\n");
    for (const [line, text] of [
      [2, ""],
      [3, "  way 7 spare\n"],
    ] as const) {
      const [start, end] = [
        { line, character: 2 },
        { line: 4, character: 0 },
      ];
      expect(textOf(applyEdit(document, { range: { start: end, end: start }, text }))).toBe(
        textOf(applyEdit(document, { range: { start, end }, text })),
      );
    }
  });

  test("a whole new text keeps what it shares with the old one", () => {
    const text = "wayfile 1\nboard A {\n  way 1 spare\n  way 2 spare\n}\n";
    const before = documentOf(text);
    const after = applyEdit(before, { text: text.replace("way 1", "way 7") });
    expect(after.segments.filter((segment) => before.segments.includes(segment))).toHaveLength(4);
  });
});

/** No editor puts a cursor between a return and its line feed. */
const splitsReturn = (text: string, offset: number): boolean => text[offset - 1] === "\r" && text[offset] === "\n";

describe("any text", () => {
  test("is parsed, and every token is in it where it says", () => {
    fc.assert(
      fc.property(anyText, (text) => {
        const { tokens, comments } = parse(text);
        for (const { startOffset, image } of [...tokens, ...comments])
          expect(text.slice(startOffset, startOffset + image.length)).toBe(image);
      }),
    );
  });

  test("no character but blanks is left out of the tokens", () => {
    fc.assert(
      fc.property(anyText, (text) => {
        const { tokens, comments } = parse(text);
        const read = [...tokens, ...comments].sort((a, b) => a.startOffset - b.startOffset);
        expect(read.map(({ image }) => image.replace(/\s/g, "")).join("")).toBe(text.replace(/\s/g, ""));
      }),
    );
  });

  test("is checked without an exception", () => {
    fc.assert(
      fc.property(anyText, (text) => {
        expect(Array.isArray(findingsOf(text))).toBe(true);
      }),
      { numRuns: 300 },
    );
  });

  test.each([
    ["nothing", ""],
    ["a return", "\r"],
    ["zeros", "\u0000\u0000\n\u0000"],
    ["half a pair", "way \ud800 {\n\udc00\n}"],
    ["only braces", "{{{}}}}{"],
    ["deep blocks", "a {\n".repeat(2000)],
    ["a long line", `note "${"x".repeat(100_000)}`],
    ["many quotes", '"'.repeat(5001)],
    ["a picture", "\u0089PNG\r\n\u001a\n\u0000\u0000\u0000\rIHDR"],
  ])("%s is checked without an exception", (_, text) => {
    expect(Array.isArray(findingsOf(text))).toBe(true);
  });
});
