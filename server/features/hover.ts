/**
 * What a person reads when they rest on a word or a figure: what was found there, what it is, the limit that applies,
 * the working with the numbers put in, and where all that comes from.
 */
import { endOf } from "../../grammar/lexer.ts";
import type { Accepts, Choices } from "../../grammar/params.ts";
import { absences, provenances } from "../../grammar/vocabulary.ts";
import { type AnyValue, type Fact, isAbsent } from "../model/values.ts";
import { pageOf } from "../rules/catalogue.ts";
import type { Finding, Spot } from "../rules/rule.ts";
import type { Snapshot } from "../workspace/workspace.ts";
import { type Card, cardMarkdown } from "./card.ts";
import { containmentCard, namedContainmentCard } from "./cards-containment.ts";
import { editionCard, faultCard, zeCard } from "./cards-supply.ts";
import {
  continuityCard,
  cpcCard,
  endsCard,
  insulationCard,
  loopCard,
  pointCard,
  rampCard,
  rcdCard,
} from "./cards-tests.ts";
import { cableCard, deviceCard, lengthCard, loadCard, routeCard, timeCard } from "./cards-way.ts";
import { definitions, type Named, nameIn } from "./names.ts";
import { boardAt, boardsOf, type Cursor, installationAt, type Spotted, spotAt, studyAt } from "./place.ts";

export interface Hover {
  readonly spot: Spot;
  readonly markdown: string;
}

export function hover(snapshot: Snapshot, cursor: Cursor): Hover | undefined {
  const spotted = spotAt(snapshot, cursor);
  const { segment, token } = spotted;
  const at = findingsAt(snapshot, cursor);
  const start = token?.startOffset ?? at[0]?.spot.start;
  const end = token ? endOf(token) : at[0]?.spot.end;
  if (start === undefined || end === undefined) return undefined;
  const parts = [...at.map(findingMarkdown), ...(token ? explain(snapshot, spotted, cursor) : [])];
  return parts.length === 0 ? undefined : { spot: { segment, start, end }, markdown: parts.join("\n\n") };
}

function findingsAt(snapshot: Snapshot, { segment, offset }: Cursor): Finding[] {
  return snapshot.findings.filter(({ spot }) => spot.segment === segment && offset >= spot.start && offset <= spot.end);
}

function findingMarkdown({ check, message, working, source }: Finding): string {
  const why = pageOf(check)?.why;
  return [
    `**${message}**`,
    ...(working ? [`\`\`\`text\n${working}\n\`\`\``] : []),
    ...(why ? [why] : []),
    `*${check}${source ? `; ${source.ref}` : ""}*`,
    "---",
  ].join("\n\n");
}

function explain(snapshot: Snapshot, spotted: Spotted, cursor: Cursor): string[] {
  const { statement, row, token, fact } = spotted;
  if (!statement || !row || !token) return [];
  const card = cardFor(snapshot, spotted, cursor.offset);
  const figures = card ? cardMarkdown(card) : [];
  if (token === statement.word) {
    return [
      `**${statement.word.image}** — ${row.means}`,
      ...(row.background ? [row.background] : []),
      ...figures,
      ...(row.limits ? [`Limits: ${row.limits}`] : []),
    ];
  }
  const named = nameIn(snapshot, spotted, cursor.offset);
  if (named) {
    const holds = namedContainmentCard(snapshot, named);
    return [...nameMarkdown(snapshot, named), ...(holds ? cardMarkdown(holds) : [])];
  }
  return [...valueMarkdown(spotted, fact, cursor.offset), ...figures];
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
  const value = argAt(fact, offset)?.[1];
  switch (`${around.kind} ${word}`) {
    case "live Zs":
      return study && loopCard(study, fact, "value");
    case "way max-Zs":
      return study && loopCard(study, undefined, "value");
    case "live at":
      return study && loopCard(study, fact, "Zs");
    case "live rcd":
      return study && rcdCard(study, fact);
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
      return study && insulationCard(study.context.edition, study.uses.has("selv"), value);
    case "boardDead insulation":
      return insulationCard(installationAt(snapshot, segment)?.edition, false, value);
    case "way device":
      return study && deviceCard(study);
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
    case "way Ib":
    case "way load":
      return study && loadCard(study);
    case "way disconnect":
      return study && timeCard(study);
    case "installation standard":
      return editionCard((fact?.args.edition as { readonly value?: string } | undefined)?.value);
    case "supply Ze":
      return zeCard(installationAt(snapshot, segment), fact);
    case "supply Ipf":
    case "supply PSCC":
    case "supply PEFC":
      return faultCard(
        boardsOf(snapshot).filter(({ head }) => head.facts.one("fed-from")?.args.from.value === "supply"),
        fact,
      );
    case "board Ipf":
    case "boardLive Ipf": {
      const place = boardAt(snapshot, segment);
      return place && faultCard([place.board], fact);
    }
    default:
      return undefined;
  }
}
