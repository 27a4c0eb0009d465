/** Schedules at random: sound ones made of the vocabulary's own examples, and what can happen to a text. */
import fc from "fast-check";
import { lex } from "../../grammar/lexer.ts";
import type { WordRow } from "../../grammar/params.ts";
import { type BlockKind, vocabulary } from "../../grammar/vocabulary.ts";

const rowsOf = (kind: BlockKind): [string, WordRow][] => Object.entries(vocabulary[kind]);

const blanks = fc.constantFrom(" ", " ", "  ", "     ", "\t", " \u00a0");
const indent = fc.constantFrom("", "  ", "    ", "\t", "         ");
const comment = fc.constantFrom("# as found", "#", "#no blank", '# with "a quote', "# with { a brace", "# }", "# é Ω");
const spellings: Readonly<Record<string, readonly string[]>> = {
  Ω: ["Ω", "ohm", "Ω"],
  MΩ: ["MΩ", "Mohm"],
  "mm²": ["mm²", "mm2"],
  "°C": ["°C", "degC"],
  m: ["m", "metres"],
};

/** A token as another hand might have written it. */
function written(image: string): fc.Arbitrary<string> {
  const quantity = /^([<>]?)(-?[\d.]+) (\S+)$/.exec(image);
  if (!quantity) return fc.constant(image);
  const [, sign = "", digits = "", unit = ""] = quantity;
  return fc
    .tuple(
      sign === "" ? fc.constant("") : fc.constantFrom("", " "),
      fc.constantFrom("", " ", "  "),
      fc.constantFrom(...(spellings[unit] ?? [unit])),
    )
    .map(([afterSign, gap, spelling]) => `${sign}${afterSign}${digits}${gap}${spelling}`);
}

/** A line of the language with blanks and spellings at random. */
function line(text: string): fc.Arbitrary<string> {
  const tokens = lex(text).tokens.map(({ image }) => fc.tuple(written(image), blanks));
  return fc.tuple(indent, fc.tuple(...tokens), fc.option(comment, { freq: 6 })).map(([before, parts, after]) => {
    const body = parts.map(([image, gap], index) => image + (index < parts.length - 1 ? gap : "")).join("");
    return `${before}${body}${after === null ? "" : ` ${after}`}`;
  });
}

const between = fc.option(fc.constantFrom("", "   ", "# a comment", "    # another"), { freq: 4 });

/** A statement of the row, on as many lines as its block needs. */
function statement(row: WordRow, depth: number): fc.Arbitrary<string[]> {
  const [first = ""] = row.example.split("{");
  if (!row.opens || (row.blockOptional && !row.example.includes("{"))) return line(first).map((text) => [text]);
  const kind = row.opens as BlockKind;
  return fc.tuple(line(first.trim()), indent, block(kind, depth + 1), indent).map(([header, , lines, closeIndent]) => {
    const [code = "", remark] = splitComment(header);
    return [`${code.trimEnd()} {${remark === undefined ? "" : ` ${remark}`}`, ...lines, `${closeIndent}}`];
  });
}

function splitComment(text: string): [string, string?] {
  const found = lex(text).comments[0];
  return found ? [text.slice(0, found.startOffset), found.image] : [text];
}

/** Of one thing there is one result: a second one would be a fault. */
const mayStandTwice = ({ times, figures }: WordRow): boolean => times === "often" && figures !== "verdict";

/** The lines of a block: some of its words, in any order. */
function block(kind: BlockKind, depth = 0): fc.Arbitrary<string[]> {
  const rows = rowsOf(kind).filter(([word]) => word !== "wayfile" && (depth === 0 || kind !== "file"));
  return fc
    .shuffledSubarray(rows, { maxLength: Math.min(rows.length, depth === 0 ? 4 : 7) })
    .chain((chosen) =>
      fc.tuple(
        ...chosen.map(([, row]) =>
          fc.tuple(between, fc.array(statement(row, depth), { minLength: 1, maxLength: mayStandTwice(row) ? 2 : 1 })),
        ),
      ),
    )
    .map((groups) => groups.flatMap(([gap, statements]) => [...(gap === null ? [] : [gap]), ...statements.flat()]));
}

const lineEnd = fc.constantFrom("\n", "\n", "\n", "\r\n");

/** A file without faults of the language, laid out by nobody in particular. */
export const soundSchedule: fc.Arbitrary<string> = fc
  .tuple(block("file"), lineEnd, fc.boolean(), fc.boolean())
  .map(
    ([lines, end, closed, mark]) => `${mark ? "\ufeff" : ""}${["wayfile 1", ...lines].join(end)}${closed ? end : ""}`,
  );

/** What gets into a text that does not belong there. */
export const foreign: fc.Arbitrary<string> = fc.constantFrom(
  "{",
  "}",
  '"',
  "#",
  "\n",
  "\r",
  "}\n}\n",
  "way 7 {\n",
  "board X {\n",
  "supply {\n",
  "\n<<<<<<< ours\n",
  "\n=======\n",
  "\n>>>>>>> theirs\n",
  "Zs 0,4",
  "\u0000",
  "\ud800",
  "\udc00x",
  "\ufeff",
  "\u2028",
  "\f",
  "<html>",
  "; DROP",
  "½",
  "´`",
  '\\"',
  " ",
  "x",
);

/** A sound text after an accident or several: cut, doubled, mixed with something else. */
export const damaged: fc.Arbitrary<string> = fc
  .tuple(
    soundSchedule,
    fc.array(fc.tuple(fc.constantFrom("cut", "double", "put"), fc.nat(), fc.nat({ max: 60 }), foreign), {
      maxLength: 4,
    }),
  )
  .map(([text, accidents]) =>
    accidents.reduce((before, [what, place, length, stuff]) => {
      const at = before.length === 0 ? 0 : place % (before.length + 1);
      if (what === "cut") return before.slice(0, at) + before.slice(at + length);
      if (what === "double") return before.slice(0, at + length) + before.slice(at);
      return before.slice(0, at) + stuff + before.slice(at);
    }, text),
  );

/** Any text at all. */
export const anyText: fc.Arbitrary<string> = fc.oneof(
  damaged,
  fc.string({ unit: "binary", maxLength: 200 }),
  fc.array(foreign, { maxLength: 30 }).map((parts) => parts.join("")),
);
