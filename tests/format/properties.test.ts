import fc from "fast-check";
import { expect, test } from "vitest";
import { lex } from "../../grammar/lexer.ts";
import { parse } from "../../grammar/parser.ts";
import { format, formatDocument } from "../../server/format/format.ts";
import { documentOf } from "../../server/syntax/document.ts";
import { split } from "../../server/syntax/split.ts";
import { applyEdits } from "../../server/text/lines.ts";
import { anyText, damaged, soundSchedule } from "../helpers/schedules.ts";
import { meaningOf } from "./helpers.ts";

const commentsOf = (text: string): string[] =>
  split(text)
    .flatMap((segment) => lex(segment.text).comments.map(({ image }) => image.trimEnd()))
    .sort();

/** A text that is in the one style already, or refused, says nothing of the formatter: it counts as no run. */
function formatted(text: string): NonNullable<ReturnType<typeof format>> {
  const result = format(text);
  fc.pre(result !== undefined);
  return result;
}

test("formatting twice is the same as once", () => {
  fc.assert(
    fc.property(anyText, (text) => {
      expect(format(formatted(text).text)?.text).toBeUndefined();
    }),
    { numRuns: 500 },
  );
});

test("formatting keeps what a text says, broken or not", () => {
  fc.assert(
    fc.property(damaged, (text) => {
      expect(meaningOf(formatted(text).text)).toBe(meaningOf(text));
    }),
    { numRuns: 300 },
  );
});

test("every comment is kept", () => {
  fc.assert(
    fc.property(anyText, (text) => {
      expect(commentsOf(formatted(text).text)).toEqual(commentsOf(text));
    }),
    { numRuns: 300 },
  );
});

test("the edits give the text, and do not touch or overlap", () => {
  fc.assert(
    fc.property(anyText, (text) => {
      const result = formatted(text);
      expect(applyEdits(text, result.edits)).toBe(result.text);
      const inOrder = result.edits.every((edit, index) => (result.edits[index - 1]?.end ?? 0) <= edit.start);
      expect(inOrder).toBe(true);
      expect(result.text).not.toBe(text);
    }),
    { numRuns: 300 },
  );
});

test("a block with a fault of its braces or a conflict is left as it stands", () => {
  fc.assert(
    fc.property(damaged, (text) => {
      const result = formatted(text);
      for (const segment of split(text)) {
        const whole = ["unclosed", "extra-close", "conflict", "crowded"];
        const faulty = parse(segment.text).faults.some(({ fault }) => whole.includes(fault));
        if (segment.kind === "block" && faulty) expect(result.text).toContain(segment.text);
      }
    }),
    { numRuns: 500 },
  );
});

test("a sound schedule is never refused, whatever it looks like", () => {
  fc.assert(
    fc.property(soundSchedule, (text) => {
      const result = format(text)?.text ?? text;
      const lines = result.replace(/^\ufeff/, "").split(/\r\n|\n/);
      expect(lines.filter((line) => /[ \t]$/.test(line))).toEqual([]);
      expect(/\n\r?\n\r?\n/.test(result)).toBe(false);
      expect(/\{\r?\n\r?\n/.test(result)).toBe(false);
      expect(/\n\r?\n *\}/.test(result)).toBe(false);
      expect(/(^|[^\r\n])\r?\n$/.test(result)).toBe(true);
      const badlyIndented = lines.filter((line) => (/^\s*/.exec(line)?.[0].length ?? 0) % 2 === 1);
      expect(badlyIndented).toEqual([]);
      expect(result.includes("ohm")).toBe(false);
    }),
    { numRuns: 300 },
  );
});

test("two hands' versions of one schedule come out the same", () => {
  const flat = "board A {\nfed-from supply\nway 1 radial {\nIb 2 A\ndevice BS 3036 5 A\n}\n}\n";
  fc.assert(
    fc.property(fc.array(fc.constantFrom(" ", "  ", "\t"), { minLength: 7, maxLength: 7 }), (indents) => {
      const other = flat
        .split("\n")
        .map((line, index) => `${indents[index] ?? ""}${line}`.trimEnd())
        .join("\n");
      expect(format(other)?.text).toBe(format(flat)?.text);
    }),
  );
});

test("a document is formatted as its text is, also when parts of it were formatted before", () => {
  fc.assert(
    fc.property(soundSchedule, (text) => {
      const document = documentOf(text);
      const first = formatDocument(document);
      expect(formatDocument(document)).toEqual(first);
      expect(first).toEqual(format(text));
    }),
  );
});
