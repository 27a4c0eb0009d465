import { readFileSync } from "node:fs";
import { createRequire } from "node:module";
import { beforeAll, expect, test } from "vitest";
import * as oniguruma from "vscode-oniguruma";
import * as textmate from "vscode-textmate";
import { endOf, lex } from "../../grammar/lexer.ts";
import { snippets } from "../../grammar/snippets.ts";
import { textmate as grammarText, scopeName, wordScopes } from "../../grammar/textmate.ts";
import { type TokenName, type TokenRow, tokenRows } from "../../grammar/tokens.ts";
import { vocabulary } from "../../grammar/vocabulary.ts";

let grammar: textmate.IGrammar;

beforeAll(async () => {
  const wasm = createRequire(import.meta.url)
    .resolve("vscode-oniguruma")
    .replace("main.js", "onig.wasm");
  await oniguruma.loadWASM(readFileSync(wasm));
  const registry = new textmate.Registry({
    onigLib: Promise.resolve({
      createOnigScanner: (sources) => new oniguruma.OnigScanner(sources),
      createOnigString: (text) => new oniguruma.OnigString(text),
    }),
    loadGrammar: async () => textmate.parseRawGrammar(grammarText(), "wayfile.json"),
  });
  const loaded = await registry.loadGrammar(scopeName);
  if (!loaded) throw new Error("The grammar was not loaded.");
  grammar = loaded;
});

interface Coloured {
  readonly start: number;
  readonly end: number;
  /** Without the language's own name at the end. */
  readonly scopes: readonly string[];
}

/** The colours of a text, each with its place in the text. */
function coloursOf(text: string): Coloured[] {
  const found: Coloured[] = [];
  let stack: textmate.StateStack | null = null;
  let offset = 0;
  for (const line of text.split("\n")) {
    const result: textmate.ITokenizeLineResult = grammar.tokenizeLine(line, stack);
    for (const { startIndex, endIndex, scopes } of result.tokens)
      found.push({
        start: offset + startIndex,
        end: offset + Math.min(endIndex, line.length),
        scopes: scopes.map((scope) => scope.replace(/\.wayfile$/, "")),
      });
    stack = result.ruleStack;
    offset += line.length + 1;
  }
  return found;
}

/** Each piece of a text with its innermost colour, blanks left out. */
const shown = (text: string): string[] =>
  coloursOf(text).flatMap(({ start, end, scopes }) => {
    const piece = text.slice(start, end).trim();
    return piece === "" ? [] : [`${piece} → ${scopes.length > 1 ? scopes.at(-1) : "plain"}`];
  });

test("a way, piece by piece", () => {
  const text = [
    'way 3 ring "Cutting \\"floor\\"" { # note',
    "  device BS EN 60898 B32 6 kA type A",
    "  cable singles 70°C line 2.5 mm²",
    "  feeds B",
    "  run A 7 m S1",
    "  dead 2026-03-04 with M1 {",
    "    Zs >1.9 Ω calculated",
    '    R1+R2 LIM "locked"',
  ].join("\n");
  expect(shown(text)).toMatchInlineSnapshot(`
    [
      "way → keyword.control.block",
      "3 → entity.name.function.definition",
      "ring → constant.language.choice",
      ""Cutting → string.quoted.double",
      "\\" → constant.character.escape",
      "floor → string.quoted.double",
      "\\" → constant.character.escape",
      "" → string.quoted.double",
      "{ → punctuation.section.block.begin",
      "# note → comment.line.number-sign",
      "device → support.type.property-name",
      "BS EN 60898 → entity.name.type.standard",
      "B32 → constant.other.curve",
      "6 → constant.numeric.quantity",
      "kA → keyword.other.unit",
      "type → entity.other.attribute-name",
      "A → constant.language.choice",
      "cable → support.type.property-name",
      "singles → constant.language.choice",
      "70 → constant.numeric.quantity",
      "°C → keyword.other.unit",
      "line → entity.other.attribute-name",
      "2.5 → constant.numeric.quantity",
      "mm² → keyword.other.unit",
      "feeds → support.type.property-name",
      "B → variable.other.name",
      "run → support.type.property-name",
      "A → variable.other.name",
      "7 → constant.numeric.quantity",
      "m → keyword.other.unit",
      "S1 → variable.other.name",
      "dead → keyword.control.block",
      "2026-03-04 → constant.other.date",
      "with → entity.other.attribute-name",
      "M1 → variable.other.name",
      "{ → punctuation.section.block.begin",
      "Zs → support.type.property-name",
      ">1.9 → constant.numeric.quantity",
      "Ω → keyword.other.unit",
      "calculated → storage.modifier",
      "R1+R2 → support.type.property-name",
      "LIM → constant.language.absence",
      ""locked" → string.quoted.double",
    ]
  `);
});

test.each([
  ["board B", ["board → keyword.control.block", "B → entity.name.function.definition"]],
  ["way ring", ["way → keyword.control.block", "ring → constant.language.choice"]],
  [
    "  rcd east BS EN 61008",
    [
      "rcd → support.type.property-name",
      "east → entity.name.function.definition",
      "BS EN 61008 → entity.name.type.standard",
    ],
  ],
  ["rcd 30 mA", ["rcd → support.type.property-name", "30 → constant.numeric.quantity", "mA → keyword.other.unit"]],
  ["<<<<<<< ours", ["<<<<<<< ours → invalid.illegal.conflict"]],
  [
    'Zs 0,4 ; "x',
    [
      "Zs → support.type.property-name",
      "0,4 → invalid.illegal.number",
      "; → invalid.illegal",
      '"x → invalid.illegal.string',
    ],
  ],
  ["devices x", ["devices → plain", "x → variable.other.name"]],
])("%s", (text, wanted) => {
  expect(shown(text)).toEqual(wanted);
});

const words: readonly string[] = Object.values(wordScopes);
const examples = Object.values(vocabulary).flatMap((rows) =>
  Object.values(rows).map(({ example }) => example as string),
);
const odd = [
  'note "unfinished {\nZs 0.4 } x',
  "} } {\n=======\nZs ∞ OL >O/R O.4 .5 1,5 MΩ\n",
  "Zs 5é m é5 µ ½x 1x 2xx 5 mmm 5 mm²² −3 °C - 4 V",
  "  BS7671 BS EN BS EN60898 2026-01-02- 2026-01-02 411.3.3 411.3 4.1.1.a",
  "\ufeffwayfile 1\u00a0# é",
];

test.each([...examples, ...snippets().map(({ text }) => text), ...odd])(
  "the colours of %j agree with the lexer",
  (text) => {
    const colours = coloursOf(text);
    const { tokens, comments } = lex(text);
    for (const token of [...tokens, ...comments]) {
      const name = token.tokenType.name as TokenName;
      if (name === "NewLine") continue;
      const pieces = colours.filter(({ start, end }) => start < endOf(token) && end > token.startOffset);
      expect(pieces[0]?.start, `${token.image} begins where its colour begins`).toBeLessThanOrEqual(token.startOffset);
      const row: TokenRow | undefined = tokenRows.find((other) => other.name === name);
      const allowed = row?.scope === undefined ? undefined : [row.scope];
      for (const { scopes } of pieces) {
        const fits = allowed
          ? scopes.some((scope) => allowed.includes(scope) || words.includes(scope))
          : scopes.length === 1 || words.includes(scopes.at(-1) ?? "");
        expect(fits, `${name} ${token.image} is coloured ${scopes.join(" ")}`).toBe(true);
      }
    }
  },
);

test("every word of the vocabulary is coloured as one", () => {
  for (const rows of Object.values(vocabulary))
    for (const word of Object.keys(rows)) {
      const [first] = coloursOf(word);
      expect([wordScopes.block, wordScopes.fact, wordScopes.record]).toContain(first?.scopes.at(-1));
      expect(first?.end).toBe(word.length);
    }
});
