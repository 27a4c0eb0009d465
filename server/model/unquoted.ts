/** Words that stand without the quotes a text needs, and names that stand in quotes. */
import type { IToken } from "chevrotain";
import { endOf, isToken, lex } from "../../grammar/lexer.ts";
import type { LineBeingRead, Slip } from "./line.ts";
import { problemAt, replaceFix } from "./refusals.ts";
import { couldBe, says } from "./row-shape.ts";
import { isSpokenDay } from "./spoken-day.ts";
import { strangeUnit } from "./strange-unit.ts";
import { suggestionFor } from "./suggestions.ts";
import { isName, textOf } from "./token-values.ts";

/** `note check this`: the words up to what something else on the line takes. */
export function unquoted(line: LineBeingRead): Slip | undefined {
  const { token } = line;
  if (!isName(token)) return undefined;
  const free = line.free();
  const wantsText = free.some(([, { accepts, label }]) => accepts.kind === "text" && label === undefined);
  // “insulation ok”: what stands first is a figure, and a tick is not one.
  const wantsFigure = free.some(
    ([, { accepts, label, optional }]) => !optional && !label && accepts.kind === "quantity",
  );
  const second = line.shape.plain.some((slot) => says(slot, token) && !free.includes(slot));
  // “load 3”: a figure without its unit is no text, where a figure belongs.
  const isFigure = isToken(token, "Number") && free.some(([, { accepts }]) => accepts.kind === "quantity");
  if (isFigure) return undefined;
  if (!wantsText || wantsFigure || second || meansAChoice(line, token) || meansAFigure(line, token)) return undefined;
  return quoted(line, "Words that are not the language's own stand in quotes");
}

/** `behind "east"`: a name is one word, and has no quotes. */
export function needlessQuotes(line: LineBeingRead): Slip | undefined {
  const { token } = line;
  const name = nameInQuotes(token);
  if (name === undefined) return valueInQuotes(line);
  const wanted = line.free().find(([, { accepts, label }]) => label === undefined && nameKinds.includes(accepts.kind));
  if (!wanted) return valueInQuotes(line);
  const fix = {
    title: `Write ${name}`,
    edits: [{ start: token.startOffset, end: endOf(token), text: name }],
    safe: false,
  };
  const message = `${token.image} is a name, and is written without quotes: ${name}.`;
  return { problem: problemAt("wrong-argument", message, token, [fix]), upTo: line.at + 1 };
}

/** `Zs "0.57 Ω"`, `device "BS EN 60898"`: what the line takes, in quotes that only a text has. */
function valueInQuotes(line: LineBeingRead): Slip | undefined {
  const { token } = line;
  const text = isToken(token, "Text") ? textOf(token) : "";
  const [inner, ...others] = lex(text).tokens;
  if (!inner || others.length > 0 || inner.image !== text) return undefined;
  const isTaken = line
    .free()
    .some((slot) => slot[1].label === undefined && (says(slot, inner) || couldBe(slot[1].accepts, inner)));
  if (!isTaken) return undefined;
  const message = `${token.image} is written without quotes: ${text}.`;
  return { problem: problemAt("wrong-argument", message, token, [replaceFix(token, text)]), upTo: line.at + 1 };
}

/** The one word of a text, which might be a name. */
export const nameInQuotes = (token: IToken): string | undefined =>
  isToken(token, "Text") ? /^"([\p{L}\p{N}_-]+)"$/u.exec(token.image)?.[1] : undefined;

/** Arguments that are a name. */
export const nameKinds: readonly string[] = ["name", "ref", "define"];

/** The words from here on, for a place where only a text can stand. */
export function quoted(line: LineBeingRead, why: string): Slip | undefined {
  const { token: first } = line;
  let upTo = line.at + 1;
  for (const token of line.tokens.slice(upTo)) {
    if (belongsElsewhere(line, token)) break;
    upTo++;
  }
  const last = line.tokens[upTo - 1] ?? first;
  const span = { start: first.startOffset, end: endOf(last) };
  const quotes = [
    { start: span.start, end: span.start, text: '"' },
    { start: span.end, end: span.end, text: '"' },
  ];
  const fix = { title: "Put quotes round it", edits: quotes, safe: false };
  const written = line.tokens
    .slice(line.at, upTo)
    .map(({ image }) => image)
    .join(" ")
    .replace(/ (?=[,.:;])/g, "");
  return { problem: { ...problemAt("missing-quotes", `${why}: "${written}".`, first, [fix]), ...span }, upTo };
}

/** `load 9.5 kw shower`: a number with a unit that is none. */
const meansAFigure = (line: LineBeingRead, token: IToken): boolean =>
  line
    .free()
    .some(
      ([, { accepts, label }]) =>
        label === undefined &&
        accepts.kind === "quantity" &&
        strangeUnit(line, accepts.of)?.problem.start === token.startOffset,
    );

/** A misspelt choice is no text: `way 1 radail`. */
function meansAChoice(line: LineBeingRead, token: IToken): boolean {
  return line
    .free()
    .some(
      ([, { accepts, label }]) =>
        label === undefined &&
        accepts.kind === "choice" &&
        suggestionFor(token.image, Object.keys(accepts.choices)) !== undefined,
    );
}

function belongsElsewhere(line: LineBeingRead, token: IToken): boolean {
  if (isToken(token, "Text") || isToken(token, "OpenText")) return true;
  return line
    .free()
    .some(
      (slot) =>
        slot[1].label === token.image ||
        (slot[1].label === undefined &&
          (says(slot, token) ||
            couldBe(slot[1].accepts, token) ||
            (slot[1].accepts.kind === "date" && (isToken(token, "Date") || isSpokenDay(token.image))))),
    );
}
