/**
 * What may be written next. The block comes from the tree, which a half-typed line cannot spoil, and the rest from the
 * line itself: what it begins with, what it has already, what stands just before the cursor.
 */

import type { IToken } from "chevrotain";
import { roughTimes } from "../../grammar/choices.ts";
import { endOf, isToken, lex } from "../../grammar/lexer.ts";
import type { Choices, Param, WordRow } from "../../grammar/params.ts";
import { proseOf } from "../../grammar/prose.ts";
import { quantities } from "../../grammar/quantities.ts";
import { units } from "../../grammar/units.ts";
import { absences, type BlockKind, corrections, provenances, rowOf, vocabulary } from "../../grammar/vocabulary.ts";
import { bindArguments } from "../model/arguments.ts";
import { mayBeAbsent, shapeOf } from "../model/row-shape.ts";
import { siteTermsOf } from "../model/suggestions.ts";
import type { Facts } from "../model/values.ts";
import { fenced, md, prose } from "../text/markdown.ts";
import type { Snapshot } from "../workspace/workspace.ts";
import { type Bearings, bearingsAt } from "./bearings.ts";
import { boardAt, type Cursor, type CursorContext, contextAt, installationAt } from "./cursor.ts";
import { boardsIn, definedNames } from "./names.ts";
import type { Completion, HalfLine, Offer } from "./offers.ts";
import {
  boardSkeleton,
  circuitsByUse,
  nextNumber,
  plainSkeleton,
  scheduleSkeleton,
  supplySkeleton,
  testsSkeleton,
  wayBody,
  waySkeletons,
} from "./skeletons.ts";
import { argumentsFirst, inFront, wordsNext } from "./trade-order.ts";
import { usePaths } from "./use-paths.ts";
import { standardOf, valuesFor } from "./values.ts";

/** `known` are the addresses of files that a `use` may name. */
export function complete(snapshot: Snapshot, cursor: Cursor, known: readonly string[] = []): Completion[] {
  const { segment, offset } = cursor;
  const half = halfLine(segment.text, offset);
  if (!half) return usePaths(snapshot, cursor, known);
  const spotted = contextAt(snapshot, cursor);
  const offers = half.word ? argumentOffers(snapshot, spotted, half) : wordOffers(snapshot, spotted, half);
  const spot = { segment, start: half.start, end: offset };
  const fitting = standardPiece.test(half.typed) ? offers.filter(({ label }) => label.startsWith("BS ")) : offers;
  return fitting.map((offer) => ({
    ...offer,
    spot,
    text: offer.text ?? offer.label,
    aliases: offer.aliases ?? siteTermsOf(offer.label),
    ...(half.isBehindClose ? { snippet: `\n${offer.snippet ?? offer.text ?? offer.label}` } : {}),
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
  const brace = tokens[open];
  const isBehindClose = word === undefined && brace !== undefined && isToken(brace, "Close");
  return { word, before, after, typed, start: lineStart + from, isBehindClose };
}

/** Words that may begin a line here, without those that may stand once and do. */
function wordOffers(snapshot: Snapshot, spotted: CursorContext, half: HalfLine): Offer[] {
  const { kind } = spotted.around;
  const used = wordsUsed(snapshot, spotted);
  const bearings = bearingsAt(snapshot, spotted);
  const rows: Readonly<Record<string, WordRow>> = vocabulary[kind];
  const usual = wordsNext(kind, bearings);
  const words = Object.keys(rows);
  const alone = half.after.length === 0;
  const offersOf = (list: readonly string[]): Offer[] =>
    list.flatMap((word): Offer[] => {
      const row = rows[word];
      if (!row || (row.times !== "often" && used.has(word))) return [];
      const snippet = alone ? skeletonOf(snapshot, spotted, bearings, word, row) : undefined;
      return [
        {
          label: word,
          kind: row.opens ? "block" : "word",
          detail: snippet !== undefined && word === "wayfile" ? wholeSchedule : proseOf(row.means),
          documentation: md.join(
            [...(row.background ? [prose(proseOf(row.background))] : []), fenced("wayfile", row.example)],
            "\n\n",
          ),
          ...(snippet === undefined ? { goesOn: alone && Object.keys(row.params).length > 0 } : { snippet }),
        },
      ];
    });
  // A board is mostly ways: one of them is likelier than a word that boards rarely have.
  return [
    ...offersOf(usual.filter((word) => word in rows)),
    ...(kind === "board" && alone ? waySkeletons(bearings, nextNumber(bearings)) : []),
    ...offersOf(words.filter((word) => !usual.includes(word))),
  ];
}

/** What the first word of an empty file lays out: the meaning of the word alone would hide it. */
const wholeSchedule = "A whole schedule to fill in: Tab goes from blank to blank.";

function skeletonOf(
  snapshot: Snapshot,
  spotted: CursorContext,
  bearings: Bearings,
  word: string,
  row: WordRow,
): string | undefined {
  switch (word) {
    case "wayfile":
      return snapshot.file.document.segments.every(({ text }) => /^\s*\S*\s*$/.test(text))
        ? scheduleSkeleton()
        : undefined;
    case "way":
      return wayBody(`way ${nextNumber(bearings)}`, bearings);
    case "supply":
      return supplySkeleton();
    case "board":
      return boardSkeleton(...nextBoard(snapshot, spotted));
    case "dead":
    case "live":
      return testsSkeleton(
        word,
        definedNames(snapshot, "instrument", undefined, undefined).map(({ name }) => name.value),
      );
    default:
      return row.opens ? plainSkeleton(word, shownParams(row)) : undefined;
  }
}

/** The next letter, and what may feed a board of that name: the supply if it is the first. */
function nextBoard(snapshot: Snapshot, { segment }: CursorContext): [name: string, feeds: readonly string[]] {
  const names = boardsIn(snapshot)
    .filter(({ segments }) => !segments.includes(segment))
    .map(({ head }) => head.name);
  const next = [..."ABCDEFGHJKLMNP"].find((letter) => !names.includes(letter)) ?? "";
  return [next, names.length === 0 ? ["supply"] : [...names, "supply"]];
}

/** A title or a kind may be left out, but is what most people write. */
const shownParams = ({ params }: WordRow) =>
  Object.values(params)
    .filter(
      ({ optional, label, accepts }) =>
        !optional ||
        (label === undefined &&
          (accepts.kind === "text" || (accepts.kind === "choice" && accepts.help.startsWith("what kind")))),
    )
    .map(({ label, accepts }) => ({
      ...(label === undefined ? {} : { label }),
      ...(accepts.kind === "choice" ? { choices: accepts.choices } : {}),
      isText: accepts.kind === "text",
    }));

function wordsUsed(snapshot: Snapshot, { segment, around, statement }: CursorContext): ReadonlySet<string> {
  const here = around.statements.filter((one) => one !== statement).map(({ word }) => word.image);
  return new Set([...here, ...containerWords(snapshot, around.kind, segment)]);
}

/** A board's lines stand in several segments, with its ways between. */
function containerWords(snapshot: Snapshot, kind: BlockKind, segment: Cursor["segment"]): string[] {
  const list = containerFacts(snapshot, kind, segment)?.list ?? [];
  return list.filter((fact) => fact.segment !== segment).map(({ word }) => word);
}

function containerFacts(snapshot: Snapshot, kind: BlockKind, segment: Cursor["segment"]): Facts | undefined {
  if (kind === "board") return boardAt(snapshot, segment)?.board.head.facts;
  if (kind === "installation") return installationAt(snapshot, segment)?.head.facts;
  return kind === "file" ? snapshot.file.model.facts : undefined;
}

const hasLabel = ({ label }: Param, token: IToken | undefined): boolean =>
  label !== undefined && label === token?.image;

/** What a number at the end may be of, while its unit is still to be written; nothing where there is no number. */
function slotsOfNumber(params: readonly Slot[], before: readonly IToken[]): readonly Slot[] {
  const last = before.at(-1);
  if (!last || !isToken(last, "Number")) return [];
  const labelled = params.filter(([, param]) => hasLabel(param, before.at(-2)));
  return labelled.length > 0 ? labelled : params.filter(([, param]) => param.label === undefined);
}

function argumentOffers(snapshot: Snapshot, spotted: CursorContext, half: HalfLine): Offer[] {
  const { word, before, after } = half;
  const row = word && rowOf(spotted.around.kind, word.image);
  if (!word || !row) return [];
  const bearings = bearingsAt(snapshot, spotted);
  const said = before.map(({ image }) => image);
  // Of a board the button is named before it is pressed; of a way there is the one.
  const isNamed = word.image === "test-button" && spotted.around.kind === "boardLive";
  const order = isNamed ? [] : argumentsFirst(word.image, said, standardOf(half));
  const params = inFront(Object.keys(row.params), order).map((name) => [name, row.params[name] as Param] as const);
  const { args } = bindArguments(word, row, [...before, ...after]);
  const free = params.filter(([name, param]) => param.many || args[name] === undefined);
  const more = (name: string, label?: string): boolean =>
    after.length === 0 && hasMore(word.image, row, half, { name, label }, free);
  const offersOf = ([name, param]: Slot): Offer[] =>
    valuesFor({ snapshot, spotted, half, bearings }, [name, param]).map((offer) => ({
      ...offer,
      goesOn: more(name, offer.label),
    }));

  const either = (slot: Slot): Offer[] => (slot[1].label === undefined ? offersOf(slot) : labelOffer(slot[1]));

  const units = slotsOfNumber(params, before).flatMap((slot) =>
    unitOffers([slot]).map((one) => ({ ...one, goesOn: more(slot[0]) })),
  );
  if (units.length > 0) return [...new Map(units.map((one) => [one.label, one])).values()];
  const labelled = params.find(([, param]) => hasLabel(param, before.at(-1)));
  if (labelled) return offersOf(labelled);
  if (word.image === "way" && after.length === 0 && args.kind === undefined && !spotted.statement?.block)
    return [
      ...free.flatMap((slot) => (slot[0] === "kind" ? kindOffers(bearings, offersOf(slot)) : either(slot))),
      ...(args.title === undefined && args.id !== undefined ? circuitsByUse(bearings) : []),
    ];
  const isDated = before.some((token) => isToken(token, "Date") || Object.hasOwn(roughTimes, token.image));
  const open = free.filter(([, { accepts }]) => !(isDated && accepts.kind === "roughTime"));
  return [...open.flatMap(either), ...recordOffers(row, free, before)];
}

type Slot = readonly [name: string, param: Param];

/** Behind its number a way may say its kind: the rest is laid out as that kind has it. */
const kindOffers = (bearings: Bearings, kinds: readonly Offer[]): Offer[] =>
  kinds.map(({ goesOn: _, ...offer }) =>
    offer.label === "spare" ? offer : { ...offer, snippet: wayBody(offer.label, { ...bearings, kind: offer.label }) },
  );

/** Whether something of what the line usually says is left once one argument more is written. */
function hasMore(
  word: string,
  row: WordRow,
  half: HalfLine,
  now: { readonly name: string; readonly label: string | undefined },
  free: readonly Slot[],
): boolean {
  const said = [...half.before.map(({ image }) => image), now.label ?? ""];
  const standard = now.name === "standard" ? now.label : standardOf(half);
  const must = Object.entries(row.params).flatMap(([name, { optional }]) => (optional ? [] : [name]));
  // A cable goes by the name of its type or is described: the one is left out where the other is written.
  const usual = new Set([...argumentsFirst(word, said, standard).filter((name) => name !== "use"), ...must]);
  return free.some(([name, { accepts }]) => name !== now.name && usual.has(name) && accepts.kind !== "text");
}

function unitOffers(params: readonly Slot[]): Offer[] {
  const found = params.flatMap(([, { accepts }]) => (accepts.kind === "quantity" ? quantities[accepts.of].units : []));
  return [...new Set<string>(found)].map((unit) => ({
    label: unit,
    kind: "unit",
    aliases: units.find(({ symbol }) => symbol === unit)?.also.filter((one) => /^\w+$/.test(one)) ?? [],
  }));
}

const labelOffer = ({ label, accepts }: Param): Offer[] =>
  label === undefined ? [] : [{ label, kind: "label", detail: accepts.help, goesOn: true }];

/** Where a reading came from, what it was taken for before, or why there is none: as far as the line still takes it. */
function recordOffers(row: WordRow, free: readonly Slot[], before: readonly IToken[]): Offer[] {
  const { hasReading, canBeRead } = shapeOf(row);
  const said = new Set(before.map(({ image }) => image));
  const isSaid = (word: string): boolean => said.has(word);
  const sources: Choices = hasReading && !Object.keys(provenances).some(isSaid) ? provenances : {};
  const mends: Choices = canBeRead && before.length > 0 && !Object.keys(corrections).some(isSaid) ? corrections : {};
  const isOpen = free.some(([, { accepts }]) => mayBeAbsent(accepts)) && !Object.keys(absences).some(isSaid);
  return [
    ...Object.entries({ ...sources, ...mends }).map(([label, detail]): Offer => ({ label, kind: "choice", detail })),
    ...Object.entries(isOpen ? absences : {}).map(
      ([label, detail]): Offer => ({
        label,
        kind: "choice",
        detail,
        ...(label === "LIM" ? { snippet: `LIM "\${1:why}"`, text: "LIM" } : {}),
      }),
    ),
  ];
}
