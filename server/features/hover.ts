/**
 * What a person reads when they rest on a word or a figure: what was found there, what it is, the limit that applies,
 * the working with the numbers put in, and where all that comes from.
 */

import { endOf } from "../../grammar/lexer.ts";
import { proseOf } from "../../grammar/prose.ts";
import { pageOf } from "../rules/frame/catalogue.ts";
import type { Finding, Spot } from "../rules/frame/rule.ts";
import { citedIn } from "../tables/cited.ts";
import { type Markdown, md, prose } from "../text/markdown.ts";
import type { Snapshot } from "../workspace/workspace.ts";
import { type Card, cardMarkdown, emptyCard, show } from "./cards/card.ts";
import { cardFor } from "./cards/card-for.ts";
import { containmentPicture, namedContainmentCard } from "./cards/containment.ts";
import { namedPointCard } from "./cards/points.ts";
import { pointCard } from "./cards/tests.ts";
import { withUncertainty } from "./cards/uncertainty.ts";
import { type Cursor, type CursorContext, contextAt, installationAt, studyAt } from "./cursor.ts";
import { nameMarkdown, valueMarkdown } from "./meanings.ts";
import { definitions, type Named, nameIn } from "./names.ts";

interface Hover {
  readonly spot: Spot;
  readonly markdown: string;
}

/**
 * Editors show a finding's message above this and cut off what is long: so what is new stands first, and of a finding
 * only what its message does not say.
 */
export function hover(
  snapshot: Snapshot,
  cursor: Cursor,
  { pictures = false, reasonOf = pageReason } = {},
): Hover | undefined {
  const found = contextAt(snapshot, cursor);
  const at = findingsAt(snapshot, cursor);
  // Between the words of a line that is marked as a whole, its first word speaks for it.
  const token = found.token ?? (at.length > 0 ? found.statement?.word : undefined);
  const spotted = { ...found, token };
  const { segment } = found;
  const start = token?.startOffset ?? at[0]?.spot.start;
  const end = token ? endOf(token) : at[0]?.spot.end;
  if (start === undefined || end === undefined) return undefined;
  const { title, card, rest } = explain(snapshot, spotted, cursor);
  const parts = [
    ...title,
    ...cardMarkdown(withFindings(card, at), workingOf(at)),
    ...rest,
    ...reason(at, reasonOf),
    ...(pictures ? pictureOf(snapshot, spotted, cursor) : []),
  ];
  if (parts.length === 0) return undefined;
  const cite = citedIn(installationAt(snapshot, segment)?.edition);
  return { spot: { segment, start, end }, markdown: cite(md.join(parts, "\n\n").text) };
}

/** Of a containment, on its own line and wherever its name stands. */
function pictureOf(snapshot: Snapshot, spotted: CursorContext, { offset }: Cursor): Markdown[] {
  const named = nameIn(snapshot, spotted, offset);
  const [definition] = named?.names === "containment" ? definitions(snapshot, named) : [];
  if (definition) return containmentPicture(snapshot, definition.fact);
  const own = spotted.statement?.word.image === "containment" ? spotted.fact : undefined;
  return own ? containmentPicture(snapshot, own) : [];
}

const gravity = { error: 0, warning: 1, information: 2 } as const;

/** The gravest first. */
function findingsAt(snapshot: Snapshot, { segment, offset }: Cursor): Finding[] {
  return snapshot.findings
    .filter(({ spot }) => spot.segment === segment && offset >= spot.start && offset <= spot.end)
    .sort((one, other) => gravity[one.severity] - gravity[other.severity]);
}

/** The limits of findings where the line has no figures of its own, and what they rest on. */
function withFindings(own: Card = emptyCard, at: readonly Finding[]): Card {
  const rows = at.flatMap(({ limit }) =>
    limit ? [{ name: "limit", text: show({ value: limit.amount, unit: limit.unit }) }] : [],
  );
  return {
    rows: own.rows.length > 0 ? own.rows : rows,
    steps: own.steps,
    // A finding's own source stands beside its message; the line's figures are not made weaker by it.
    sources: own.sources.length > 0 ? own.sources : at.flatMap(({ source }) => source ?? []),
  };
}

const workingOf = (at: readonly Finding[]): string[] => at.flatMap(({ working }) => working?.split("\n") ?? []);

const shortSentence = 30;

const pageReason = (check: string): string => pageOf(check)?.why ?? "";

/** Why the gravest finding matters, in a sentence. */
function reason([gravest]: readonly Finding[], reasonOf: (check: string) => string): Markdown[] {
  const [first = "", second] = gravest ? reasonOf(gravest.check).split(/(?<=[.?])\s/) : [];
  // A sentence of three words means nothing without the next.
  const text = first.length < shortSentence && second ? `${first} ${second}` : first;
  return gravest && text ? [md`${prose(text)} *(${gravest.check})*`] : [];
}

interface Explained {
  /** What it is, in a line. */
  readonly title: readonly Markdown[];
  readonly card: Card | undefined;
  readonly rest: readonly Markdown[];
}

function explain(snapshot: Snapshot, spotted: CursorContext, cursor: Cursor): Explained {
  const { statement, row, token, fact } = spotted;
  if (!statement || !row || !token) return { title: [], card: undefined, rest: [] };
  const card = withUncertainty(cardFor(snapshot, spotted, cursor.offset), snapshot, spotted, cursor.offset);
  if (token === statement.word) {
    return {
      title: [md`**${statement.word.image}** — ${prose(proseOf(row.means))}`],
      card,
      rest: [
        ...(row.background ? [prose(proseOf(row.background))] : []),
        ...(row.limits ? [md`Limits: ${prose(proseOf(row.limits))}`] : []),
      ],
    };
  }
  const named = nameIn(snapshot, spotted, cursor.offset);
  if (named) return { title: nameMarkdown(snapshot, named), card: namedCard(snapshot, spotted, named), rest: [] };
  return { title: valueMarkdown(spotted, fact, cursor.offset), card, rest: [] };
}

/** A point shows what should be read at it, and where readings of it stand what was. */
function namedCard(snapshot: Snapshot, { segment, around, fact }: CursorContext, named: Named): Card | undefined {
  if (named.names !== "point") return namedContainmentCard(snapshot, named);
  const study = studyAt(snapshot, segment);
  if (study && around.kind === "dead") return pointCard(study, fact);
  return study && namedPointCard(study, named.name.value);
}
