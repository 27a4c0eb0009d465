/**
 * Observations of inspections against what is found: one whose finding has gone is asked about, and what is found and
 * not observed is listed with the code it is usually given. Codes are the inspector's: none is set here.
 */
import { isOutsideWork } from "../../circuit/supply.ts";
import { studyWay } from "../../circuit/way.ts";
import {
  type Circuit,
  type Inspection,
  inspectionsOf,
  isOf,
  latestInspection,
  type ObservationFact,
} from "../../model/inspections.ts";
import type { BoardInPlace, Installation } from "../../model/installation.ts";
import { circuitIn } from "../../readings/inspection-scope.ts";
import type { Segment } from "../../syntax/split.ts";
import { isMissingTest } from "../common/missing-tests.ts";
import { lineInBlock } from "../common/writing.ts";
import { covers } from "./departures.ts";
import { adequacyContradicted, codeLighter, notObserved, settled, usually } from "./observation-checks.ts";
import { type Finding, findingOf, valueSpot, wordSpot } from "./rule.ts";

/** A circuit, or a board as a whole, with where it stands. */
interface Place {
  readonly place: BoardInPlace;
  readonly circuit?: Circuit;
}

/** What there is to say of the observations, once all the rest is found. Nothing where no inspection is recorded. */
export function ofObservations(installation: Installation, found: readonly Finding[]): Finding[] {
  const inspections = inspectionsOf(installation.head);
  if (inspections.length === 0 || installation.names.incomplete) return [];
  const places = placesOf(installation);
  const all = found.flatMap((finding) => [finding, ...(finding.explains ?? [])]);
  const latest = latestInspection(installation.head);
  return [
    ...(isUnread(installation) ? [] : inspections.flatMap((inspection) => settledIn(inspection, all, places))),
    ...(latest?.kind === "periodic"
      ? [...unobservedIn(latest, found, places, installation), ...lighterIn(latest, found, places)]
      : []),
    ...(latest ? contradictedIn(latest, found) : []),
  ];
}

/** Whether a line cannot be read that says by what a thing is found, or of what: it may still be there. */
const isUnread = ({ head, boards }: Installation): boolean =>
  head.facts.broken.some((word) => word === "standard" || word === "stage" || word === "work") ||
  boards.some(({ board }) => board.head.facts.broken.length > 0);

function placesOf({ boards }: Installation): ReadonlyMap<Segment, Place> {
  const places = new Map<Segment, Place>();
  for (const place of boards) {
    for (const segment of place.board.segments) places.set(segment, { place });
    for (const way of place.board.ways) places.set(way.segment, { place, circuit: { board: place.board.head, way } });
  }
  return places;
}

/** The checks that show a part of what was there before to be insufficient. */
const shows: Readonly<Record<string, RegExp>> = {
  earthing: /^(protective\/earthing-(conductor-too-small|reads-high)|protective\/open|loop\/ze-above-declared)$/,
  bonding: /^protective\/bonding-(too-small|reads-high)$/,
  load: /^demand\/over-(busbar|cutout|device|feeder-load|main-switch)$/,
  "fault-level":
    /^(fault\/breaking-capacity-exceeded|coordination\/(assembly-below-fault|breaking-capacity-exceeded))$/,
};

/** Statements of 641.5 that what is found in the schedule contradicts. */
function contradictedIn({ facts }: Inspection, found: readonly Finding[]): Finding[] {
  return facts.all("existing").flatMap((line) => {
    const { part, verdict } = line.args;
    const against = verdict.value === "adequate" ? found.filter(({ check }) => shows[part.value]?.test(check)) : [];
    const [first] = against.filter(({ severity }) => severity !== "information");
    if (!first) return [];
    const spot = { segment: line.segment, start: part.start, end: verdict.end };
    return [
      findingOf(adequacyContradicted, spot, {
        message: `The ${part.value.replace("-", " ")} is stated to be adequate, and ${first.check} is found: ${first.message}`,
        related: against.map((one) => ({ spot: one.spot, message: one.message })),
      }),
    ];
  });
}

const isCheck = (rule: string): boolean => rule.includes("/");

function settledIn(
  { facts }: Inspection,
  found: readonly Finding[],
  places: ReadonlyMap<Segment, Place>,
): readonly Finding[] {
  return facts.all("observation").flatMap((line) => {
    const { rule, remedied, code, number } = line.args;
    if (!rule || remedied || !isCheck(rule.value)) return [];
    if (found.some((finding) => covers(rule.value, finding.check) && isThere(line, finding, places))) return [];
    const called = number ? `Observation ${number.value}, ${code.value}` : code.value;
    return [
      findingOf(settled, valueSpot(line, rule), {
        message: `${called}: ${rule.value} finds nothing ${whereOf(line)} now. Write “remedied” and the day if it was put right, or correct the check or the circuit.`,
      }),
    ];
  });
}

function whereOf({ args: { board, ways = [], at } }: ObservationFact): string {
  const circuits = ways.map(({ value }) => `${board ? `${board.value}/` : ""}${value}`).join(", ");
  const point = at ? ` at ${at.value}` : "";
  return ways.length > 0 ? `in ${circuits}${point}` : board ? `on board ${board.value}` : "here";
}

/** Whether a finding stands where an observation is of: its circuits, its board or the installation; its point. */
function isThere(line: ObservationFact, { spot }: Finding, places: ReadonlyMap<Segment, Place>): boolean {
  const { board, ways, at } = line.args;
  const place = places.get(spot.segment);
  if (!place) return board === undefined && ways === undefined;
  if (place.circuit ? !isOf(line, place.circuit) : board && board.value !== place.place.board.head.name) return false;
  if (!place.circuit && ways) return false;
  const [, point] = /^\s*at\s+(\S+)/.exec(lineAround(spot)) ?? [];
  return !at || point === undefined || point === at.value;
}

function lineAround({ segment: { text }, start }: Finding["spot"]): string {
  const from = text.lastIndexOf("\n", start - 1) + 1;
  const to = text.indexOf("\n", start);
  return text.slice(from, to < 0 ? text.length : to);
}

/** Families that speak of the record, of the inspection or of how it was tested, and not of what was inspected. */
const notOfCondition: ReadonlySet<string> = new Set([
  "check",
  "drift",
  "inspection",
  "instrument",
  "language",
  "population",
  "record",
]);

const isOfCondition = ({ check, severity }: Finding): boolean =>
  severity !== "information" &&
  !notOfCondition.has(check.slice(0, check.indexOf("/"))) &&
  !isMissingTest({ check }) &&
  !/-not-(stated|calculated|checked|named|recorded|tested)$/.test(check);

function unobservedIn(
  inspection: Inspection,
  found: readonly Finding[],
  places: ReadonlyMap<Segment, Place>,
  { head }: Installation,
): Finding[] {
  const { facts, header } = inspection;
  if (facts.isUnread("observation")) return [];
  const lines = facts.all("observation");
  const bare = found.filter((finding) => {
    const place = places.get(finding.spot.segment);
    if (!isOfCondition(finding) || (place ? !isInspected(inspection, place) : !isOwn(finding, head))) return false;
    return !lines.some((line) => isNamedBy(line, finding, places));
  });
  const groups = [...Map.groupBy(bare, (finding) => `${placeOf(finding, places)} ${finding.check}`).values()];
  const rows = groups.flatMap(([first]) =>
    first ? [{ first, where: placeOf(first, places), code: usualCode(first) }] : [],
  );
  if (rows.length === 0) return [];
  const named = rows.slice(0, mostNamed).map(({ first, where, code }) => `${where} ${first.check} (${code})`);
  const more = rows.length > mostNamed ? `, and ${rows.length - mostNamed} more` : "";
  const indent =
    /^[ \t]*/.exec(lineAround({ segment: header.segment, start: header.start, end: header.end }))?.[0] ?? "";
  const written = rows.map((row) => commentOf(row, places)).join(`\n${indent}  `);
  const grave = rows.filter(({ code }) => /^C[12]$/.test(code));
  // Whoever calls the whole satisfactory has not only left them out: the two do not go together.
  const satisfied = facts.one("outcome")?.args.of.value === "satisfactory" && grave.length > 0;
  return [
    findingOf(notObserved, wordSpot(header), {
      message: `${rows.length === 1 ? "One finding has" : `${rows.length} findings have`} no observation, each with the code that is usually given: ${named.join(", ")}${more}. Whether it is one, and its code, is yours to say.${satisfied ? " The outcome is satisfactory, and with a C1 or C2 it cannot be." : ""}`,
      ...(satisfied ? { severity: "warning" as const } : {}),
      related: rows.map(({ first, code }) => ({ spot: first.spot, message: usually(code, first.message) })),
      fixes: lineInBlock(header, written, "Write them as comments, for you to give their codes"),
    }),
  ];
}

/** Observations for improvement of what is usually potentially dangerous, where none of a graver code names it. */
function lighterIn({ facts }: Inspection, found: readonly Finding[], places: ReadonlyMap<Segment, Place>): Finding[] {
  const lines = facts.all("observation");
  const grave = found.filter((finding) => isOfCondition(finding) && /^C[12]$/.test(usualCode(finding)));
  return lines.flatMap((line) => {
    const { code, rule, remedied, number } = line.args;
    // One that names its check was written with the check in view.
    if (code.value !== "C3" || rule || remedied) return [];
    const here = grave.filter(
      (finding) =>
        isNamedBy(line, finding, places) &&
        !lines.some((other) => other.args.code.value !== "C3" && isNamedBy(other, finding, places)),
    );
    const [first, ...more] = here;
    if (!first) return [];
    const called = number ? `Observation ${number.value}` : "This observation";
    const others = more.length > 0 ? ` (and ${more.length} more)` : "";
    return [
      findingOf(codeLighter, valueSpot(line, code), {
        message: `${called} is a C3, and what is found there, ${first.check}${others}, is usually a ${usualCode(first)}: give it an observation of its own, or name the check it is of with rule.`,
        related: here.map((one) => ({ spot: one.spot, message: one.message })),
      }),
    ];
  });
}

const mostNamed = 4;

/** What is said of the origin and of the installation itself. */
const isOwn = ({ spot }: Finding, head: Installation["head"]): boolean =>
  spot.segment === head.header.segment || head.facts.list.some(({ segment }) => segment === spot.segment);

/** Whether a circuit was looked at: not sampled out, not under a limitation, no part that is outside the work. */
function isInspected(inspection: Inspection, { place, circuit }: Place): boolean {
  const { board, context } = place;
  if (!circuit) return !isOutsideWork(context);
  const way = board.ways.find((one) => one === circuit.way);
  const state = way && circuitIn(inspection, studyWay(way, context)).state;
  return state !== "not-covered" && state !== "sampled-out" && state !== "limitation";
}

/** An observation that names no rule is of whatever is found in the circuits it names. */
function isNamedBy(line: ObservationFact, finding: Finding, places: ReadonlyMap<Segment, Place>): boolean {
  if (!isThere(line, finding, places)) return false;
  const { rule, ways } = line.args;
  if (!rule) return ways !== undefined;
  return [finding, ...(finding.explains ?? [])].some(({ check }) => covers(rule.value, check));
}

function placeOf({ spot }: Finding, places: ReadonlyMap<Segment, Place>): string {
  const found = places.get(spot.segment);
  if (!found) return "the origin";
  const name = found.place.board.head.name;
  return found.circuit ? `${name}/${found.circuit.way.id}` : `board ${name}`;
}

/**
 * The code that is usually given, from the trade's guidance on observations: a conductor or polarity that is wrong before
 * every switch is a danger now; what a requirement forbids may become one; what is recommended, or required of new work
 * alone, is an improvement; what no figure settles is looked into.
 */
function usualCode({ check, severity, verdict }: Finding): string {
  if (check === "polarity/wrong-upstream") return "C1";
  if (verdict === "unproven") return "FI";
  if (/^rcd\/missing-/.test(check) && check !== "rcd/missing-outdoors" && check !== "rcd/missing-in-tt") return "C3";
  return severity === "error" ? "C2" : "C3";
}

/** A line that becomes an observation once its code is chosen: as it is written it is none. */
function commentOf(
  { first, code }: { readonly first: Finding; readonly code: string },
  places: ReadonlyMap<Segment, Place>,
): string {
  const found = places.get(first.spot.segment);
  const board = found ? ` board ${found.place.board.head.name}` : "";
  const way = found?.circuit ? ` way ${found.circuit.way.id}` : "";
  const text = first.message.replace(/["\\]/g, "'").split(/(?<=[.:;]) /)[0] ?? "";
  return `# observation ${code}? "${text}"${board}${way} rule ${first.check}`;
}
