/** A line with what is said on site beside it: `route clipped to joists`, `serves ring final sockets`, `Zs 0.5 at DB`. */
import { endOf, isToken } from "../../grammar/lexer.ts";
import { vocabulary } from "../../grammar/vocabulary.ts";
import type { LineBeingRead, Slip } from "./line.ts";
import { problemAt, removeFix, spanOf, writeFix, writtenSo } from "./refusals.ts";
import { suggestionFor, wordForSiteTerm, wordInAnyCase } from "./suggestions.ts";

const prepositions = /^(?:to|on|onto|along|through|across|over|above|under|within|inside|against|behind)$/i;
const articles = /^(?:the|a|an)$/i;

/** What a cable is fixed to or goes through: where the line says already how it runs it is left out, else it says so. */
export function whereItRuns(line: LineBeingRead): Slip | undefined {
  const { word, tokens, token, at, args } = line;
  if (word.image !== "route" || !prepositions.test(token.image)) return undefined;
  const nounAt = at + (articles.test(tokens[at + 1]?.image ?? "") ? 2 : 1);
  const noun = tokens[nounAt];
  if (!noun || !isToken(noun, "Word") || line.shape.labelled.has(noun.image)) return undefined;
  const said = tokens
    .slice(at, nounAt + 1)
    .map(({ image }) => image)
    .join(" ");
  const before = tokens[at - 1];
  const kinds = Object.keys(vocabulary.way.route.params.kind.accepts.choices);
  const stated = tokens.slice(0, at).find(({ image }) => kinds.includes(image));
  if (args.kind && stated && before) {
    const fix = removeFix(said, { start: endOf(before), end: endOf(noun) });
    const message = `“${stated.image}” says how it runs: leave out “${said}”, or write it as a note.`;
    return {
      problem: { ...problemAt("wrong-argument", message, token, [fix]), ...spanOf(token, noun) },
      upTo: nounAt + 1,
    };
  }
  const kind = kinds.find((one) => one === noun.image) ?? wordForSiteTerm(noun.image, kinds);
  return kind === undefined ? undefined : writtenSo(line, kind, `“${said}” is written ${kind}.`, token, noun);
}

/** `serves ring final sockets`, `serves kitchen sockets`: the kind of the circuit and where it is stand where the way begins. */
export function kindOfCircuit(line: LineBeingRead): Slip | undefined {
  const { word, tokens, token, at } = line;
  if (word.image !== "serves" || !isToken(token, "Word")) return undefined;
  const kinds = Object.keys(vocabulary.board.way.params.kind.accepts.choices);
  const [, second] = tokens.slice(at, at + 2);
  const pair =
    second && /^(?:final|main|circuit)s?$/i.test(second.image) ? `${token.image}-${second.image}` : undefined;
  const kind =
    kinds.find((one) => one === token.image.toLowerCase()) ??
    (pair === undefined ? undefined : wordForSiteTerm(pair, kinds));
  if (kind === undefined) return whereItIs(line);
  const last = pair !== undefined && second ? second : token;
  const next = tokens[tokens.indexOf(last) + 1];
  const said = last === token ? token.image : `${token.image} ${last.image}`;
  const fixes = next ? [removeFix(said, { start: token.startOffset, end: next.startOffset })] : [];
  const message = `“${said}” is the kind of the circuit, and stands where the way begins: way 1 ${kind}. Leave it out here.`;
  return {
    problem: { ...problemAt("wrong-argument", message, token, fixes), ...spanOf(token, last) },
    upTo: tokens.indexOf(last) + 1,
  };
}

/** `way 2 lighting "Lights"`: what the circuit supplies has a line of its own. */
export function useAsKind(line: LineBeingRead): Slip | undefined {
  const { word, token, tokens, args } = line;
  if (word.image !== "way" || args.kind || !isToken(token, "Word")) return undefined;
  const uses = Object.keys(vocabulary.way.serves.params.uses.accepts.choices);
  const use = wordInAnyCase(token.image, uses);
  if (use === undefined || siteKind(token.image) !== undefined) return undefined;
  const next = tokens[tokens.indexOf(token) + 1];
  const fixes = next ? [removeFix(token.image, { start: token.startOffset, end: next.startOffset })] : [];
  const message = `“${token.image}” is what the circuit supplies: leave it out here, and write serves ${use} in the way.`;
  return { problem: problemAt("wrong-argument", message, token, fixes), upTo: tokens.indexOf(token) + 1 };
}

const siteKind = (said: string): string | undefined =>
  wordForSiteTerm(said, Object.keys(vocabulary.board.way.params.kind.accepts.choices));

/** `serves kitchen sockets`: a word that is none, before one that says it all. */
function whereItIs({ tokens, token, at }: LineBeingRead): Slip | undefined {
  const uses = Object.keys(vocabulary.way.serves.params.uses.accepts.choices);
  const next = tokens[at + 1];
  if (!next || !uses.includes(next.image) || uses.includes(token.image) || suggestionFor(token.image, uses))
    return undefined;
  const fix = removeFix(token.image, { start: token.startOffset, end: next.startOffset });
  const message = `“${next.image}” says what it supplies: leave out “${token.image}”, which belongs to the name of the way.`;
  return { problem: problemAt("wrong-argument", message, token, [fix]), upTo: at + 1 };
}

/** `Zs 0.5 at DB`: a reading at a point is a line of that point, and one at the board is the board's. */
export function readAtPlace(line: LineBeingRead): Slip | undefined {
  const { word, tokens, token } = line;
  const label = { Zs: "Zs", "R1+R2": "L-E", R2: "R2" }[word.image];
  const [figure, behind, place] = tokens;
  if (label === undefined || !figure || behind?.image !== "at" || !place || (token !== figure && token !== behind))
    return undefined;
  const reading = isToken(figure, "Number") ? `${figure.image} Ω` : figure.image;
  if (word.image === "Zs" && isBoard.test(place.image)) {
    const message = `The loop impedance at the board is a reading of the board: live 2026-03-05 { Zdb ${reading} }. That of the circuit is read at its furthest point.`;
    return { problem: problemAt("wrong-argument", message, figure), upTo: tokens.length };
  }
  const text = `at ${place.image} ${label} ${reading}`;
  const message = `A reading at a point is a line of that point: ${text}.`;
  const problem = problemAt("wrong-argument", message, figure, [writeFix(text, spanOf(word, place))]);
  return { problem, upTo: tokens.length };
}

const isBoard = /^(?:board|db\w*|cu|mdb|msb|origin)$/i;
