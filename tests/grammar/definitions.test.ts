import fc from "fast-check";
import { expect, test } from "vitest";
import { createLexer, lex } from "../../grammar/lexer.ts";
import { createParser } from "../../grammar/parser.ts";
import { units } from "../../grammar/units.ts";
import { damaged } from "../helpers/schedules.ts";

test("chevrotain finds no fault in the lexer's definition", () => {
  expect(createLexer(true).lexerDefinitionErrors).toEqual([]);
});

test("chevrotain finds no ambiguity in the parser's definition", () => {
  expect(() => createParser(true)).not.toThrow();
});

const kinds = (text: string): string[] => lex(text).tokens.map(({ tokenType, image }) => `${tokenType.name} ${image}`);

test.each([
  ["Zs 0.42 Ω", ["Word Zs", "Quantity 0.42 Ω"]],
  ["Zs > 0.42ohm", ["Word Zs", "Quantity > 0.42ohm"]],
  ["0,42 Ω .42 O.42", ["Slip 0,42 Ω", "Slip .42", "Slip O.42"]],
  ["BS EN 60898 B32 6 kA", ["Standard BS EN 60898", "Word B32", "Quantity 6 kA"]],
  ["BS 7671:2018+A2:2022", ["Standard BS 7671:2018+A2:2022"]],
  ["BS 88-3 80 A", ["Standard BS 88-3", "Quantity 80 A"]],
  ["R1+R2 L-N N/A >OL", ["Word R1+R2", "Word L-N", "Word N/A", "Endless >OL"]],
  ["411.3.3 41.1 7a", ["Clause 411.3.3", "Number 41.1", "NumberWord 7a"]],
  ["2/L1 3-4 12 -3", ["NumberWord 2/L1", "NumberWord 3-4", "Number 12", "Number -3"]],
  ["½x 1x 5x", ["Multiple ½x", "Multiple 1x", "Multiple 5x"]],
  ["2026-03-04 2026-03-04x", ["Date 2026-03-04", "NumberWord 2026-03-04x"]],
  ['"a \\" b" "open {', ['Text "a \\" b"', 'OpenText "open ', "Open {"]],
  ["70°C 20% 3 mm²", ["Quantity 70°C", "Quantity 20%", "Quantity 3 mm²"]],
])("%s", (text, wanted) => {
  expect(kinds(text)).toEqual(wanted);
});

test("every spelling of a unit is read as a quantity", () => {
  const spellings = units.flatMap(({ symbol, also }) => [symbol, ...also]);
  for (const spelling of spellings)
    for (const text of [`5${spelling}`, `5 ${spelling}`]) expect(kinds(text)).toEqual([`Quantity ${text}`]);
});

test("no token begins with a sign that its row does not name", () => {
  const [quick, careful] = [createLexer(false), createLexer(false, true)];
  const read = (lexer: typeof quick, text: string) => {
    const { tokens, groups, errors } = lexer.tokenize(text);
    const shown = [...tokens, ...(groups.comments ?? [])].map((one) => [
      one.tokenType.name,
      one.startOffset,
      one.image,
    ]);
    return { shown, errors };
  };
  const same = (text: string): void => {
    expect(read(quick, text)).toEqual(read(careful, text));
  };
  for (let code = 0; code < 0x10000; code++) {
    const sign = String.fromCharCode(code);
    if (code < 0x3000 || code % 64 === 0) same(`${sign}1.5 Ω ${sign}x ${sign}`);
  }
  fc.assert(fc.property(fc.oneof(damaged, fc.string({ unit: "binary" })), same), { numRuns: 200 });
});
