import { globSync, readFileSync } from "node:fs";
import { createRequire } from "node:module";
import { beforeAll, expect, test } from "vitest";
import * as oniguruma from "vscode-oniguruma";
import * as textmate from "vscode-textmate";
import { endOf, lex } from "../../grammar/lexer.ts";
import { textmate as grammarText, scopeName, wordScopes } from "../../grammar/textmate.ts";
import { type TokenName, type TokenRow, tokenRows } from "../../grammar/tokens.ts";
import { vocabulary } from "../../grammar/vocabulary.ts";
import { withEnclosingBlock } from "../../server/features/cursor.ts";
import { tokensIn } from "../../server/features/tokens.ts";
import { documentOf } from "../../server/syntax/document.ts";
import { lineStarts, positionOf } from "../../server/text/lines.ts";

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
      "ring → variable.other.enummember.choice",
      ""Cutting → string.quoted.double",
      "\\" → constant.character.escape",
      "floor → string.quoted.double",
      "\\" → constant.character.escape",
      "" → string.quoted.double",
      "{ → punctuation.section.block.begin",
      "# note → comment.line.number-sign",
      "device → keyword.other.fact",
      "BS EN 60898 → entity.name.type.standard",
      "B32 → constant.numeric.curve",
      "6 → constant.numeric.quantity",
      "kA → keyword.other.unit",
      "type → variable.other.property.label",
      "A → variable.other.enummember.choice",
      "cable → keyword.other.fact",
      "singles → variable.other.enummember.choice",
      "70 → constant.numeric.quantity",
      "°C → keyword.other.unit",
      "line → variable.other.property.label",
      "2.5 → constant.numeric.quantity",
      "mm² → keyword.other.unit",
      "feeds → keyword.other.fact",
      "B → entity.name.function.reference",
      "run → keyword.other.fact",
      "A → entity.name.function.reference",
      "7 → constant.numeric.quantity",
      "m → keyword.other.unit",
      "S1 → entity.name.function.reference",
      "dead → keyword.control.block",
      "2026-03-04 → constant.numeric.date",
      "with → variable.other.property.label",
      "M1 → entity.name.function.reference",
      "{ → punctuation.section.block.begin",
      "Zs → keyword.other.fact",
      ">1.9 → constant.numeric.quantity",
      "Ω → keyword.other.unit",
      "calculated → variable.other.enummember.provenance",
      "R1+R2 → keyword.other.fact",
      "LIM → variable.other.enummember.absence",
      ""locked" → string.quoted.double",
    ]
  `);
});

test.each([
  ["board B", ["board → keyword.control.block", "B → entity.name.function.definition"]],
  ["way ring", ["way → keyword.control.block", "ring → variable.other.enummember.choice"]],
  [
    "  rcd east BS EN 61008",
    ["rcd → keyword.other.fact", "east → entity.name.function.definition", "BS EN 61008 → entity.name.type.standard"],
  ],
  ["rcd 30 mA", ["rcd → keyword.other.fact", "30 → constant.numeric.quantity", "mA → keyword.other.unit"]],
  ["<<<<<<< ours", ["<<<<<<< ours → invalid.illegal.conflict"]],
  [
    'Zs 0,4 ; "x',
    ["Zs → keyword.other.fact", "0,4 → invalid.illegal.number", "; → invalid.illegal", '"x → invalid.illegal.string'],
  ],
  ["devices x", ["devices → plain", "x → entity.name.function.reference"]],
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

test.each([...examples, ...odd])("the colours of %j agree with the lexer", (text) => {
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
});

interface Manifest {
  readonly contributes: { readonly semanticTokenScopes: readonly { readonly scopes: Record<string, string[]> }[] };
}

test.each([
  ...globSync("examples/**/*.ways").map((file) => [file, readFileSync(file, "utf8")] as const),
  [
    "rules departed from",
    'board A {\n  departure 411.3.3 "\\"Why\\\\""\n  departure loop/zs-over-limit "Because"\n}\n',
  ] as const,
])("no word of %s turns to another colour when the server's colours arrive", (_, text) => {
  const { contributes }: Manifest = JSON.parse(readFileSync("package.json", "utf8"));
  const scopes = contributes.semanticTokenScopes[0]?.scopes ?? {};
  /** As far as a theme tells scopes apart: a choice and an absence are both members of a list. */
  const seen = (scope: string | undefined): string => {
    const parts = scope?.replace(/\.wayfile$/, "").split(".") ?? [];
    return parts[0] === "variable" || parts.at(-1) === "unit"
      ? parts.slice(0, 3).join(".")
      : parts.slice(0, 2).join(".");
  };
  const colours = coloursOf(text);
  let offset = 0;
  let judged = 0;
  for (const { segment, within } of withEnclosingBlock(documentOf(text).segments)) {
    for (const { start, length, kind, defines } of tokensIn(segment, within)) {
      const wanted = seen((scopes[defines ? `${kind}.declaration` : kind] ?? [])[0]);
      const pieces = colours.filter(
        ({ start: from, end, scopes: own }) =>
          from < offset + start + length && end > offset + start && !own.at(-1)?.startsWith("constant.character"),
      );
      for (const { scopes: own } of pieces) {
        const { line } = positionOf(lineStarts(text), offset + start);
        expect(seen(own.at(-1)), `${segment.text.slice(start, start + length)} on line ${line + 1}`).toBe(wanted);
        judged++;
      }
    }
    offset += segment.text.length;
  }
  expect(judged).toBeGreaterThan(5);
});

test("every word of the vocabulary is coloured as one", () => {
  for (const rows of Object.values(vocabulary))
    for (const word of Object.keys(rows)) {
      const [first] = coloursOf(word);
      expect([wordScopes.block, wordScopes.fact, wordScopes.record]).toContain(first?.scopes.at(-1));
      expect(first?.end).toBe(word.length);
    }
});
