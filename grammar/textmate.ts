/**
 * The colouring grammar for editors, from the token table and the vocabulary. A statement is a region that knows its
 * word's own labels and choices, so the board `B` in `feeds B` is not taken for the curve of a breaker.
 */
import { roughTimes } from "./choices.ts";
import type { Accepts, Param } from "./params.ts";
import { type TokenName, tokenRows, wordSign } from "./tokens.ts";
import { absences, corrections, opening, provenances, vocabulary } from "./vocabulary.ts";

interface Pattern {
  readonly [key: string]: unknown;
}

export const scopeName = "source.wayfile";
const scope = (name: string): string => `${name}.wayfile`;

/**
 * Scopes of words, which the vocabulary decides. The server's own colours follow a moment later and are given the same
 * scopes in package.json, so that no word turns from one colour to another.
 */
export const wordScopes = {
  block: "keyword.control.block",
  record: "keyword.other.record",
  fact: "keyword.other.fact",
  label: "variable.other.property.label",
  choice: "variable.other.enummember.choice",
  absence: "variable.other.enummember.absence",
  provenance: "variable.other.enummember.provenance",
  curve: "constant.numeric.curve",
  rule: "entity.name.type.rule",
  defined: "entity.name.function.definition",
  name: "entity.name.function.reference",
} as const;

/**
 * A pattern as Oniguruma reads it, where `\w` and `\d` take letters and digits of every script.
 */
function oniguruma({ source }: RegExp): string {
  let inClass = false;
  return source.replace(/\\.|[[\]]/g, (sign) => {
    if (sign === "[") inClass = true;
    if (sign === "]") inClass = false;
    if (sign === "\\w") return inClass ? "A-Za-z0-9_" : "[A-Za-z0-9_]";
    if (sign === "\\d") return inClass ? "0-9" : "[0-9]";
    if (sign === "\\b") return "(?![A-Za-z0-9_])";
    return sign;
  });
}

const literally = (text: string): string => text.replace(/[.*+?^${}()|[\]\\]/g, "\\$&");
const anyOf = (words: readonly string[]): string =>
  `(?:${[...words]
    .sort((a, b) => b.length - a.length)
    .map(literally)
    .join("|")})`;

const sourceOf = (name: TokenName): string => {
  const row = tokenRows.find((other) => other.name === name);
  return row ? oniguruma(row.match) : "";
};

const wordEnd = `(?!${oniguruma(new RegExp(wordSign, "u"))})`;
const blanks = "[^\\S\\r\\n]*";
/** A statement begins a line or follows a brace. */
const begin = `(?:^|(?<=[{}]))${blanks}`;
const end = "(?=[{}])|$";

export function textmate(): string {
  const grammar = {
    information_for_contributors: ["Written by `npm run generate` from grammar/. Do not edit."],
    name: "Wayfile",
    scopeName,
    fileTypes: ["ways"],
    patterns: [
      { include: "#comment" },
      { include: "#conflict" },
      ...words().map(([word]) => ({ include: `#word-${word}` })),
      { include: "#unknown" },
      { include: "#braces" },
      { include: "#values" },
    ],
    repository: {
      comment: tokenPattern("Comment"),
      conflict: { name: scope("invalid.illegal.conflict"), match: "^(?:<{7}|>{7}|={7}|\\|{7}).*$" },
      braces: { patterns: [tokenPattern("Open"), tokenPattern("Close")] },
      values: { patterns: valuePatterns() },
      common: {
        patterns: [
          listPattern("absence", Object.keys(absences)),
          listPattern("provenance", Object.keys({ ...provenances, ...corrections })),
        ],
      },
      unknown: {
        begin: `${begin}(?!${sourceOf("Standard")}|${sourceOf("Endless")})(${sourceOf("Word")})`,
        end,
        patterns: [{ include: "#comment" }, { include: "#values" }],
      },
      ...Object.fromEntries(words().map(([word, params]) => [`word-${word}`, statementPattern(word, params)])),
    },
  };
  return `${JSON.stringify(grammar, undefined, 2)}\n`;
}

/** Each word once, with the parameters it has in any block. */
function words(): [string, Param[]][] {
  const all = new Map<string, Param[]>();
  for (const rows of Object.values(vocabulary))
    for (const [word, row] of Object.entries(rows))
      all.set(word, [...(all.get(word) ?? []), ...Object.values(row.params)]);
  return [...all].sort(([a], [b]) => b.length - a.length || (a < b ? -1 : 1));
}

const record: ReadonlySet<string> = new Set(["departure", "query", "answer", "note"]);

const kindOf = (word: string): keyof typeof wordScopes =>
  opening.has(word) ? "block" : record.has(word) ? "record" : "fact";

function statementPattern(word: string, params: readonly Param[]): Pattern {
  const labels = [...new Set(params.flatMap(({ label }) => (label === undefined ? [] : [label])))];
  const labelled = labels.map((label) => ({
    label,
    choices: choicesOf(params.filter((param) => param.label === label)),
    many: params.some((param) => param.label === label && param.many),
  }));
  const choices = choicesOf(params.filter(({ label }) => label === undefined));
  const name = `(?:${sourceOf("Word")}|${sourceOf("NumberWord")}|${sourceOf("Number")})`;
  const defines = params.some(({ accepts }) => accepts.kind === "define");
  const notAName = `(?!${sourceOf("Standard")}|${sourceOf("Quantity")}|${sourceOf("Multiple")}${choices.length > 0 ? `|${anyOf(choices)}${wordEnd}` : ""})`;
  const header = `${begin}(${literally(word)})${wordEnd}`;
  const captures = { "1": { name: scope(wordScopes[kindOf(word)]) }, "2": { name: scope(wordScopes.defined) } };
  return {
    begin: defines ? `${header}(?:[^\\S\\r\\n]+${notAName}(${name}))?` : header,
    beginCaptures: defines ? captures : { "1": captures["1"] },
    end,
    patterns: [
      { include: "#comment" },
      tokenPattern("Space"),
      ...labelled.filter((entry) => entry.choices.length > 0).map(labelledPattern),
      ...(labels.length > 0 ? [listPattern("label", labels)] : []),
      ...(choices.length > 0 ? [listPattern("choice", choices)] : []),
      ...(params.some(({ accepts }) => accepts.kind === "shorthand")
        ? [{ name: scope(wordScopes.curve), match: `[BCD][0-9]+${wordEnd}` }]
        : []),
      // A sign for what was not measured is a word too, and no rule.
      ...(params.some(({ accepts }) => accepts.kind === "rule") && params.some(({ accepts }) => isMeasured(accepts))
        ? [{ include: "#common" }]
        : []),
      ...(params.some(({ accepts }) => accepts.kind === "rule")
        ? [{ name: scope(wordScopes.rule), match: sourceOf("Word") }]
        : []),
      ...(params.some(({ accepts }) => isMeasured(accepts)) ? [{ include: "#common" }] : []),
      { include: "#values" },
    ],
  };
}

const isMeasured = (accepts: Accepts): boolean =>
  (accepts.kind === "quantity" && accepts.reading) || (accepts.kind === "choice" && accepts.absent);

const choicesOf = (params: readonly Param[]): string[] => [
  ...new Set(
    params.flatMap(({ accepts }) =>
      accepts.kind === "choice"
        ? Object.keys(accepts.choices)
        : accepts.kind === "roughTime"
          ? Object.keys(roughTimes)
          : accepts.kind === "ref" && accepts.builtin
            ? Object.keys(accepts.builtin)
            : [],
    ),
  ),
];

interface Labelled {
  readonly label: string;
  readonly choices: readonly string[];
  readonly many: boolean;
}

/** A label and its choice, or as many of them as follow: a zone is a number, and still a choice. */
const labelledPattern = ({ label, choices, many }: Labelled): Pattern => {
  const blank = "[^\\S\\r\\n]";
  const own = scope(wordScopes.label);
  if (!many) {
    return {
      match: `(${literally(label)})${blank}+(${anyOf(choices)})${wordEnd}`,
      captures: { "1": { name: own }, "2": { name: scope(wordScopes.choice) } },
    };
  }
  return {
    begin: `(${literally(label)})(?=${blank}+${anyOf(choices)}${wordEnd})`,
    beginCaptures: { "1": { name: own } },
    end: `(?!${blank}*${anyOf(choices)}${wordEnd})`,
    patterns: [tokenPattern("Space"), listPattern("choice", choices)],
  };
};

const listPattern = (kind: keyof typeof wordScopes, list: readonly string[]): Pattern => ({
  name: scope(wordScopes[kind]),
  match: `${anyOf(list)}${wordEnd}`,
});

/** The tokens of the lexer in the lexer's order. Blanks come first, or a figure would begin at the blank before it. */
function valuePatterns(): Pattern[] {
  const apart: readonly TokenName[] = ["NewLine", "Comment", "Conflict", "Open", "Close"];
  return tokenRows.filter(({ name }) => !apart.includes(name)).map(({ name }) => tokenPattern(name));
}

const insides: Partial<Record<TokenName, Pattern>> = {
  Text: { name: scope("constant.character.escape"), match: '\\\\["\\\\]' },
  Quantity: { name: scope("keyword.other.unit"), match: "[^0-9<>.,\\s−-]+" },
};

function tokenPattern(name: TokenName): Pattern {
  if (name === "Space") return { match: sourceOf(name) };
  const row = tokenRows.find((other) => other.name === name);
  const scoped = scope(row && "scope" in row ? row.scope : wordScopes.name);
  const inside = insides[name];
  return inside
    ? { match: sourceOf(name), captures: { "0": { name: scoped, patterns: [inside] } } }
    : { name: scoped, match: sourceOf(name) };
}
