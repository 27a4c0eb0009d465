/**
 * What may be written next. The block comes from the tree, which a half-typed line cannot spoil, and the rest from the
 * line itself: what it begins with, what it has already, what stands just before the cursor.
 */
import type { IToken } from "chevrotain";
import { endOf, isToken, lex } from "../../grammar/lexer.ts";
import type { Param, WordRow } from "../../grammar/params.ts";
import { quantities } from "../../grammar/quantities.ts";
import { absences, type BlockKind, corrections, provenances, rowOf, vocabulary } from "../../grammar/vocabulary.ts";
import { bindArguments } from "../model/arguments.ts";
import { siteTermsOf } from "../model/suggestions.ts";
import { fenced, md, prose } from "../text/markdown.ts";
import type { Snapshot } from "../workspace/workspace.ts";
import { boardAt, type Cursor, type CursorContext, contextAt, installationAt } from "./cursor.ts";
import type { Completion, HalfLine, Offer } from "./offers.ts";
import { blockSnippet } from "./snippet.ts";
import { usePaths } from "./use-paths.ts";
import { valuesFor } from "./values.ts";

/** `known` are the addresses of files that a `use` may name. */
export function complete(snapshot: Snapshot, cursor: Cursor, known: readonly string[] = []): Completion[] {
  const { segment, offset } = cursor;
  const half = halfLine(segment.text, offset);
  if (!half) return usePaths(snapshot, cursor, known);
  const spotted = contextAt(snapshot, cursor);
  const offers = half.word ? argumentOffers(snapshot, spotted, half) : wordOffers(snapshot, spotted);
  const spot = { segment, start: half.start, end: offset };
  const fitting = standardPiece.test(half.typed) ? offers.filter(({ label }) => label.startsWith("BS ")) : offers;
  return fitting.map((offer) => ({
    ...offer,
    spot,
    text: offer.text ?? offer.label,
    aliases: offer.aliases ?? siteTermsOf(offer.label),
  }));
}

const piece = /[\p{L}\p{M}\w½×<>°℃%²+\-/.]*$/u;
const standardPiece = /\b(?:BS|EN|IEC)(?:[ \t]+[\w:.+-]*)*$/;

/** Nothing inside a text or a comment, where words are the writer's own. */
function halfLine(text: string, offset: number): HalfLine | undefined {
  const above = text.slice(0, offset);
  const lineStart = Math.max(above.lastIndexOf("\n"), above.lastIndexOf("\r")) + 1;
  const breakAt = text.slice(offset).search(/[\r\n]/);
  const lineEnd = breakAt < 0 ? text.length : offset + breakAt;
  const written = text.slice(lineStart, offset);
  const { tokens, comments } = lex(written);
  const last = tokens.at(-1);
  if (comments.length > 0 || (last && isToken(last, "OpenText"))) return undefined;
  // A standard is several words: it is one piece until a blank stands behind its number.
  const isWritten = tokens.some((token) => isToken(token, "Standard") && endOf(token) < written.length);
  const standard = isWritten ? undefined : standardPiece.exec(written)?.[0];
  const typed = standard ?? piece.exec(written)?.[0] ?? "";
  const from = written.length - typed.length;
  const open = tokens.findLastIndex((token) => isToken(token, "Open") || isToken(token, "Close"));
  const whole = tokens.slice(open + 1).filter((token) => endOf(token) <= from);
  const [word, ...before] = whole;
  const after = lex(text.slice(offset, lineEnd)).tokens.filter((token) => !isToken(token, "Close"));
  return { word, before, after, typed, start: lineStart + from };
}

/** Words that may begin a line here, without those that may stand once and do. */
function wordOffers(snapshot: Snapshot, spotted: CursorContext): Offer[] {
  const { kind } = spotted.around;
  const used = wordsUsed(snapshot, spotted);
  return Object.entries(vocabulary[kind] as Readonly<Record<string, WordRow>>)
    .filter(([word, row]) => row.times === "often" || !used.has(word))
    .map(([word, row]) => ({
      label: word,
      kind: row.opens ? "block" : "word",
      detail: row.means,
      documentation: md.join(
        [...(row.background ? [prose(row.background)] : []), fenced("wayfile", row.example)],
        "\n\n",
      ),
      ...(row.opens ? { snippet: blockSnippet(word, row) } : {}),
    }));
}

function wordsUsed(snapshot: Snapshot, { segment, around, statement }: CursorContext): ReadonlySet<string> {
  const here = around.statements.filter((one) => one !== statement).map(({ word }) => word.image);
  return new Set([...here, ...containerWords(snapshot, around.kind, segment)]);
}

/** A board's lines stand in several segments, with its ways between. */
function containerWords(snapshot: Snapshot, kind: BlockKind, segment: Cursor["segment"]): string[] {
  const facts =
    kind === "board"
      ? boardAt(snapshot, segment)?.board.head.facts
      : kind === "installation"
        ? installationAt(snapshot, segment)?.head.facts
        : kind === "file"
          ? snapshot.file.model.facts
          : undefined;
  if (!facts) return [];
  return [...facts.list.filter((fact) => fact.segment !== segment).map(({ word }) => word)];
}

function argumentOffers(snapshot: Snapshot, spotted: CursorContext, half: HalfLine): Offer[] {
  const { word, before, after } = half;
  const row = word && rowOf(spotted.around.kind, word.image);
  if (!word || !row) return [];
  const params = Object.entries(row.params);
  const last = before.at(-1);
  const labelled = params.find(([, param]) => param.label !== undefined && param.label === last?.image);
  if (last && isToken(last, "Number")) {
    const label = before.at(-2)?.image;
    const asked = params.filter(([, param]) => param.label !== undefined && param.label === label);
    const units = unitOffers(asked.length > 0 ? asked : params.filter(([, param]) => param.label === undefined));
    if (units.length > 0) return units;
  }
  if (labelled) return valuesFor(snapshot, spotted, half, labelled);
  const { args } = bindArguments(word, row, [...before, ...after]);
  const free = params.filter(([name, param]) => param.many || args[name] === undefined);
  return [
    ...free
      .filter(([, param]) => param.label === undefined)
      .flatMap((slot) => valuesFor(snapshot, spotted, half, slot)),
    ...free.flatMap(([, param]) => labelOffer(param)),
    ...recordOffers(params, before),
  ];
}

function unitOffers(params: readonly (readonly [string, Param])[]): Offer[] {
  const units = params.flatMap(([, { accepts }]) => (accepts.kind === "quantity" ? quantities[accepts.of].units : []));
  return [...new Set(units)].map((unit) => ({ label: unit, kind: "unit" }));
}

const labelOffer = ({ label, accepts }: Param): Offer[] =>
  label === undefined ? [] : [{ label, kind: "label", detail: accepts.help }];

/** Where a reading came from, or why there is none. */
function recordOffers(params: readonly (readonly [string, Param])[], before: readonly IToken[]): Offer[] {
  const isReading = params.some(
    ([, { accepts }]) =>
      (accepts.kind === "quantity" && accepts.reading) || (accepts.kind === "choice" && accepts.absent),
  );
  if (!isReading) return [];
  const said = new Set(before.map(({ image }) => image));
  const fresh = ([word]: [string, string]): boolean => !said.has(word);
  return [
    ...Object.entries({ ...provenances, ...(before.length > 0 ? corrections : {}) })
      .filter(fresh)
      .map(([label, detail]): Offer => ({ label, kind: "choice", detail })),
    ...(before.length > 0 && said.has("LIM") ? [] : Object.entries(absences)).map(
      ([label, detail]): Offer => ({
        label,
        kind: "choice",
        detail,
        ...(label === "LIM" ? { snippet: `LIM "\${1:why}"`, text: "LIM" } : {}),
      }),
    ),
  ];
}
