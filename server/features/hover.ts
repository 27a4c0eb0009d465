/**
 * What a person reads when they rest on a word or a figure: what was found there, what it is, the limit that applies,
 * the working with the numbers put in, and where all that comes from.
 */
import { endOf } from "../../grammar/lexer.ts";
import type { Accepts, Choices } from "../../grammar/params.ts";
import { absences, provenances } from "../../grammar/vocabulary.ts";
import { type Bonding, bondingNeed, earthingLeast, earthingNeed } from "../analysis/earthing.ts";
import type { Supplementary } from "../analysis/supplementary.ts";
import { type AnyValue, type Fact, isAbsent } from "../model/values.ts";
import { pageOf } from "../rules/catalogue.ts";
import type { Finding, Spot } from "../rules/rule.ts";
import type { Snapshot } from "../workspace/workspace.ts";
import { type Card, cardMarkdown, emptyCard, show } from "./card.ts";
import { leakageCard, ratingCard } from "./cards-board.ts";
import { supplementaryCard } from "./cards-bonding.ts";
import { containmentCard, containmentPicture, namedContainmentCard } from "./cards-containment.ts";
import { withDoubt } from "./cards-doubt.ts";
import { boardPlaceCard, placeCard } from "./cards-place.ts";
import { namedPointCard } from "./cards-points.ts";
import { boardLoopCard, conductorCard, editionCard, electrodeCard, faultCard, zeCard } from "./cards-supply.ts";
import {
  boardRcdCard,
  continuityCard,
  cpcCard,
  endsCard,
  insulationCard,
  loopCard,
  pointCard,
  rampCard,
  rcdCard,
  voltageCard,
} from "./cards-tests.ts";
import { cableCard, deviceCard, floorCard, lengthCard, loadCard, routeCard, timeCard } from "./cards-way.ts";
import { definitions, type Named, nameIn } from "./names.ts";
import { boardAt, type Cursor, installationAt, type Spotted, spotAt, studyAt } from "./place.ts";

export interface Hover {
  readonly spot: Spot;
  readonly markdown: string;
}

/**
 * Editors show a finding's message above this and cut off what is long: so what is new stands first, and of a finding
 * only what its message does not say.
 */
export function hover(snapshot: Snapshot, cursor: Cursor, { pictures = false } = {}): Hover | undefined {
  const found = spotAt(snapshot, cursor);
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
    ...reason(at),
    ...(pictures ? pictureOf(snapshot, spotted, cursor) : []),
  ];
  return parts.length === 0 ? undefined : { spot: { segment, start, end }, markdown: parts.join("\n\n") };
}

/** Of a containment, on its own line and wherever its name stands. */
function pictureOf(snapshot: Snapshot, spotted: Spotted, { offset }: Cursor): string[] {
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
    limit ? [{ name: "held against", text: show({ value: limit.amount, unit: limit.unit }) }] : [],
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

/** Why the gravest finding matters, in a sentence. */
function reason([gravest]: readonly Finding[]): string[] {
  const [first = "", second] = (gravest && pageOf(gravest.check)?.why.split(/(?<=[.?])\s/)) ?? [];
  // A sentence of three words tells nothing without the next.
  const text = first.length < shortSentence && second ? `${first} ${second}` : first;
  return gravest && text ? [`${text} *(${gravest.check})*`] : [];
}

interface Explained {
  /** What it is, in a line. */
  readonly title: readonly string[];
  readonly card: Card | undefined;
  readonly rest: readonly string[];
}

function explain(snapshot: Snapshot, spotted: Spotted, cursor: Cursor): Explained {
  const { statement, row, token, fact } = spotted;
  if (!statement || !row || !token) return { title: [], card: undefined, rest: [] };
  const card = withDoubt(cardFor(snapshot, spotted, cursor.offset), snapshot, spotted, cursor.offset);
  if (token === statement.word) {
    return {
      title: [`**${statement.word.image}** — ${row.means}`],
      card,
      rest: [...(row.background ? [row.background] : []), ...(row.limits ? [`Limits: ${row.limits}`] : [])],
    };
  }
  const named = nameIn(snapshot, spotted, cursor.offset);
  if (named) return { title: nameMarkdown(snapshot, named), card: namedCard(snapshot, spotted, named), rest: [] };
  return { title: valueMarkdown(spotted, fact, cursor.offset), card, rest: [] };
}

/** A point shows what should be read at it, and where readings of it stand what was. */
function namedCard(snapshot: Snapshot, { segment, around, fact }: Spotted, named: Named): Card | undefined {
  if (named.names !== "point") return namedContainmentCard(snapshot, named);
  const study = studyAt(snapshot, segment);
  if (study && around.kind === "dead") return pointCard(study, fact);
  return study && namedPointCard(study, named.name.value);
}

/** A name shows what it stands for, as it is written where it is defined. */
function nameMarkdown(snapshot: Snapshot, named: Named): string[] {
  const title = `**${named.name.value}** — ${kinds[named.names]}`;
  if (named.builtin) return [`**${named.name.value}** — Fed straight from the origin.`];
  const [definition] = definitions(snapshot, named);
  if (!definition) return [`${title} that nothing here defines.`];
  const { segment, start, end, inner } = definition.fact;
  const text = segment.text.slice(start, inner && !inSegment(segment.text, start, end) ? undefined : end);
  const lines = text.split(/\r?\n/);
  const shown = lines.slice(0, mostLines).join("\n") + (lines.length > mostLines ? "\n…" : "");
  return [title, `\`\`\`wayfile\n${shown.trimEnd()}\n\`\`\``];
}

const mostLines = 6;
const inSegment = (text: string, start: number, end: number): boolean => text.slice(start, end).includes("\n");

const kinds = {
  board: "a board",
  rcd: "an RCD of the board",
  instrument: "a test instrument",
  "cable-type": "a cable type",
  containment: "a conduit or trunking",
  point: "a point of the circuit",
  way: "a way of the board",
} as const;

/** What one value is, by the argument it fills, or by the word it is where the line was not understood. */
function valueMarkdown({ row, token, statement }: Spotted, fact: Fact | undefined, offset: number): string[] {
  const image = token?.image ?? "";
  const own: Choices = { ...provenances, ...absences };
  if (Object.hasOwn(own, image)) return [`**${image}** — ${own[image]}`];
  const params = Object.entries(row?.params ?? {});
  const label = params.find(([, param]) => param.label === image);
  if (label) return [`**${image}** — ${capital(label[1].accepts.help)}.`];
  const [name, value] = argAt(fact, offset) ?? [];
  const param = params.find(([key]) => key === name)?.[1] ?? paramOfChoice(params, image);
  if (!param) return [`**${image}** in the line of **${statement?.word.image}**.`];
  return accepted(param.accepts, image, value);
}

function accepted(accepts: Accepts, image: string, value: AnyValue | undefined): string[] {
  const help = capital(accepts.help);
  if (value && isAbsent(value)) return [`**${value.absent}** — ${absences[value.absent]}`];
  // The places between which it lies stand on either side.
  if (accepts.kind === "path") return [`**${image}** — The length of this leg.`];
  if (accepts.kind === "choice") return [`**${image}** — ${accepts.choices[image] ?? help}`];
  return [`**${image}** — ${help}.`];
}

const paramOfChoice = (params: [string, { readonly accepts: Accepts }][], image: string) =>
  params.find(([, { accepts }]) => accepts.kind === "choice" && Object.hasOwn(accepts.choices, image))?.[1];

/** The argument an offset is in. */
export function argAt(fact: Fact | undefined, offset: number): [name: string, value: AnyValue] | undefined {
  for (const [name, given] of Object.entries(fact?.args ?? {})) {
    for (const value of [given ?? []].flat() as AnyValue[]) {
      if (offset >= value.start && offset <= value.end) return [name, value];
    }
  }
  return undefined;
}

const capital = (text: string): string => text.charAt(0).toUpperCase() + text.slice(1);

/** The figures that belong to a line, from the study of its way or from the supply. */
function cardFor(snapshot: Snapshot, { segment, around, statement, fact }: Spotted, offset: number): Card | undefined {
  const word = statement?.word.image ?? "";
  const study = studyAt(snapshot, segment);
  const [named] = argAt(fact, offset) ?? [];
  const supply = installationAt(snapshot, segment)?.supply;
  switch (`${around.kind} ${word}`) {
    case "live Zs":
      return study && loopCard(study, fact, "value");
    case "way max-Zs":
      return study && loopCard(study, undefined, "value");
    case "live at":
      return study && loopCard(study, fact, "Zs");
    case "live rcd":
      return study && rcdCard(study, fact);
    case "boardLive rcd": {
      const place = boardAt(snapshot, segment);
      return place && boardRcdCard(place.context, fact);
    }
    case "live trip-current":
      return study && rampCard(study);
    case "dead R1+R2":
      return study && continuityCard(study);
    case "dead R2":
      return study && cpcCard(study);
    case "dead ends":
      return study && endsCard(study, fact);
    case "dead at":
      return study && pointCard(study, fact);
    case "dead insulation":
      return study && insulationCard(study.context.edition, study.uses.has("selv"), fact, named);
    case "boardDead insulation":
      return insulationCard(installationAt(snapshot, segment)?.edition, false, fact, named);
    case "way device":
      return study && deviceCard(study, named);
    case "way cable":
      return study && cableCard(study);
    case "board containment":
    case "installation containment":
      return fact && containmentCard(snapshot, fact);
    case "way route":
      return study && routeCard(study, fact);
    case "way length":
    case "way run":
      return study && lengthCard(study);
    case "way place":
      return study && placeCard(study);
    case "board place":
      return boardPlaceCard(
        boardAt(snapshot, segment)
          ?.board.head.facts.one("place")
          ?.args.places.map((one) => one.value) ?? [],
      );
    case "way floor-area":
      return study && floorCard(study, fact);
    case "live voltage":
      return study && voltageCard(study, fact);
    case "way Ib":
    case "way load":
      return study && loadCard(study);
    case "way leakage":
      return study && leakageCard(study, installationAt(snapshot, segment));
    case "board busbar":
    case "board main-switch":
    case "board rcd":
      return ratingCard(installationAt(snapshot, segment), fact);
    case "way disconnect":
      return study && timeCard(study);
    case "installation standard":
      return editionCard((fact?.args.edition as { readonly value?: string } | undefined)?.value);
    case "supply Ze":
    case "supplyLive Ze":
      return zeCard(installationAt(snapshot, segment), fact);
    case "supply electrode":
    case "supplyLive electrode":
    case "board electrode":
    case "way electrode":
      return electrodeCard(fact);
    case "supply tails":
      return supply && conductorCard(earthingNeed(supply), undefined);
    case "supply earthing-conductor":
      return supply && conductorCard(earthingLeast(supply, installationAt(snapshot, segment)?.edition), fact);
    case "supply bonding":
      return supply && conductorCard(bondingNeed(supply, (fact as Bonding | undefined)?.args.metal?.value), fact);
    case "board supplementary-bonding": {
      const place = boardAt(snapshot, segment);
      return place && fact && supplementaryCard(place, fact as unknown as Supplementary);
    }
    case "board Zdb":
    case "boardLive Zdb": {
      const place = boardAt(snapshot, segment);
      return place && boardLoopCard(place.context, fact);
    }
    case "supply Ipf":
    case "supply PSCC":
    case "supply PEFC":
    case "supplyLive Ipf":
    case "supplyLive PSCC":
    case "supplyLive PEFC":
      return faultCard(
        (installationAt(snapshot, segment)?.boards ?? []).filter(
          ({ board }) => board.head.facts.one("fed-from")?.args.from.value === "supply",
        ),
        fact,
      );
    case "board Ipf":
    case "boardLive Ipf": {
      const place = boardAt(snapshot, segment);
      return place && faultCard([place], fact);
    }
    default:
      return undefined;
  }
}
