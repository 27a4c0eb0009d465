/** What was left out, departed from, asked and found in a part of an installation. */

import type { DesignLine } from "../../boards/design.ts";
import type { Block as FactBlock } from "../../circuit/blocks.ts";
import { wordAt } from "../../model/fact-values.ts";
import type { Fact, Facts } from "../../model/values.ts";
import { type AbsenceAt, distinctAbsences, isOfWholeLine } from "../../readings/absences.ts";
import { queriesIn } from "../../readings/queries.ts";
import type { SuppressedFinding } from "../../rules/frame/departures.ts";
import { departuresIn } from "../../rules/frame/departures.ts";
import { type Finding, severities } from "../../rules/frame/rule.ts";

/** A block of the schedule with the place it is spoken of by. */
export interface Placed {
  readonly where: string;
  readonly facts: Facts;
}

/** What is not measured for one reason shares a row. */
export function absenceRows(parts: readonly Placed[], kind: "LIM" | "N/A"): string[][] {
  return parts.flatMap(({ where, facts }) => {
    const own = distinctAbsences(facts).filter(({ value }) => value.absent === kind);
    const groups = Map.groupBy(own, ({ value }) => value.why ?? "");
    return [...groups].map(([why, all]) => [
      where,
      [...new Set(all.map(nameOf))].join(", "),
      why === "" ? "no reason given" : why,
    ]);
  });
}

const whole: ReadonlySet<string> = new Set(["value", "verdict", "time", "text"]);

function nameOf(absence: AbsenceAt): string {
  const { fact, param } = absence;
  const { word } = fact;
  const point = word === "at" ? wordAt(fact, "point") : undefined;
  const name = word.replaceAll("-", " ");
  if (point !== undefined) return isOfWholeLine(absence) ? `readings at ${point}` : `${param} at ${point}`;
  if (isOfWholeLine(absence)) return name;
  return whole.has(param) ? name : `${name} ${param}`;
}

export type Suppressed = ReadonlyMap<Fact, readonly SuppressedFinding[]>;

/** What is suppressed, by the departure that does it. */
export const byDeparture = (suppressed: readonly SuppressedFinding[]): Suppressed =>
  Map.groupBy(suppressed, ({ departure }) => departure.fact);

/** Each departure with what it suppresses. */
export const departureRows = (parts: readonly Placed[], suppressed: Suppressed): string[][] =>
  departuresOf(parts).map(({ where, rule, reason, fact }) => [
    where,
    rule,
    reason,
    coveredText(suppressed.get(fact) ?? []),
  ]);

/** Each departure with the place it is spoken of by. */
export const departuresOf = (parts: readonly Placed[]) =>
  parts.flatMap(({ where, facts }) =>
    [facts, ...facts.list.flatMap(({ word, inner }) => (word === "supply" && inner ? [inner] : []))]
      .flatMap((block) => departuresIn(block, undefined, undefined))
      .map((departure) => ({ where, ...departure })),
  );

const coveredText = (covered: readonly SuppressedFinding[]): string =>
  covered.length === 0 ? "nothing" : covered.map(({ finding }) => finding.message).join(" ");

export const queryRows = (
  blocks: readonly { readonly where: string; readonly block: Pick<FactBlock, "facts"> }[],
): string[][] =>
  blocks.flatMap(({ where, block }) => queriesIn(block.facts).open.map(({ args }) => [where, args.text.value]));

/** Tests that do not count, with who struck them out and why. */
export const struckOutRows = (parts: readonly Placed[]): string[][] =>
  parts.flatMap(({ where, facts }) =>
    withSupply(facts).flatMap(({ struckOut }) =>
      struckOut.map((fact) => {
        const struck = fact.inner?.list.find(({ word }) => word === "struck-out");
        const tests = fact.inner?.list.filter(({ word }) => !["struck-out", "note", "detail"].includes(word)) ?? [];
        return [
          where,
          `${fact.word} tests${said(fact, "on", " of ")}: ${tests.map(({ word }) => word).join(", ") || "none"}`,
          said(struck, "reason"),
          `${said(struck, "by")}${said(struck, "on", ", ")}`,
        ];
      }),
    ),
  );

/** What the schedule records by names of its own. */
export const detailRows = (parts: readonly Placed[]): string[][] =>
  parts.flatMap(({ where, facts }) =>
    allFacts(facts)
      .filter(({ word }) => word === "detail")
      .map((fact) => [where, said(fact, "name"), said(fact, "text")]),
  );

/** Readings that were recorded wrongly, with what stood there. */
export const correctedRows = (parts: readonly Placed[]): string[][] =>
  parts.flatMap(({ where, facts }) =>
    allFacts(facts).flatMap((fact) =>
      (fact.corrections ?? []).map(({ was, why }) => [where, fact.word.replaceAll("-", " "), was, why]),
    ),
  );

const withSupply = (facts: Facts): Facts[] => [
  facts,
  ...facts.list.flatMap(({ word, inner }) => (word === "supply" && inner ? [inner] : [])),
];

const allFacts = (facts: Facts): Fact[] =>
  facts.list.flatMap((fact) => [fact, ...(fact.inner ? allFacts(fact.inner) : [])]);

function said(fact: Fact | undefined, name: string, before = ""): string {
  const value = fact?.args[name];
  return value && !Array.isArray(value) && "value" in value ? `${before}${value.value}` : "";
}

/** Errors and warnings in full, the same finding at several places once; what is for information is counted by check. */
export function findingRows(findings: readonly Finding[], whereOf: (finding: Finding) => string): string[][] {
  const rows = findings.map((finding) => ({
    finding,
    where: whereOf(finding),
    key:
      finding.severity === "information"
        ? `information|${finding.check}`
        : `${finding.severity}|${finding.check}|${finding.message}`,
  }));
  const groups = [...Map.groupBy(rows, ({ key }) => key).values()];
  const sorted = groups.toSorted((a, b) => gravity(a[0]?.finding) - gravity(b[0]?.finding));
  return sorted.flatMap((group) => {
    const [first] = group;
    if (!first) return [];
    const { severity, check, message } = first.finding;
    const places = [...new Set(group.map(({ where }) => where))].join(", ");
    return [
      [severity, places, check, group.length > 1 && severity === "information" ? `${group.length} remarks` : message],
    ];
  });
}

const gravity = (finding: Finding | undefined): number => (finding ? severities.indexOf(finding.severity) : 0);

/** Places by name while they are few: of many it is enough how many. */
const placesText = (places: ReadonlySet<string>): string =>
  places.size > mostPlaces ? `${places.size} places` : [...places].join(", ");

const mostPlaces = 6;

/** Limits and figures that nobody has seen printed, with the places they decide. */
export function memoryRows(
  lines: readonly { readonly where: string; readonly line: DesignLine }[],
  findings: readonly Finding[],
  whereOf: (finding: Finding) => string,
): string[][] {
  const weak = [
    ...lines.flatMap(({ where, line }) =>
      line.source?.standing === "memory" ? [{ where, what: line.title, ref: line.source.ref }] : [],
    ),
    ...findings.flatMap((finding) =>
      finding.source?.standing === "memory"
        ? [{ where: whereOf(finding), what: finding.check, ref: finding.source.ref }]
        : [],
    ),
  ];
  return [...Map.groupBy(weak, ({ what }) => what).values()].flatMap((group) => {
    const [first] = group;
    const refs = new Set(group.flatMap(({ ref }) => ref.split("; ")));
    return first ? [[first.what, [...refs].join("; "), placesText(new Set(group.map(({ where }) => where)))]] : [];
  });
}
