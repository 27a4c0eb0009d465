import type { Board, Way } from "../model/file.ts";
import type { Installation } from "../model/installation.ts";
import type { Fact, Facts } from "../model/values.ts";
import type { Segment } from "../syntax/split.ts";
import type { CheckResult, Quietened } from "./check.ts";
import { rules } from "./list.ts";
import { type Finding, findingOf, type Rule, valueSpot } from "./rule.ts";
import { withoutLine } from "./writing.ts";

/** A departure and what it covers: a way, a board with its ways, the supply, or the whole installation. */
export interface PlacedDeparture {
  readonly rule: string;
  readonly reason: string;
  readonly fact: DepartureFact;
  readonly board: Board | undefined;
  readonly way: Way | undefined;
}

type DepartureFact = Fact & {
  readonly args: { readonly rule: { value: string; start: number; end: number }; readonly reason: { value: string } };
};

export function departuresIn(facts: Facts, board: Board | undefined, way: Way | undefined): PlacedDeparture[] {
  return (facts.list.filter((fact) => fact.word === "departure") as DepartureFact[]).map((fact) => ({
    rule: fact.args.rule.value,
    reason: fact.args.reason.value,
    fact,
    board,
    way,
  }));
}

const byId = new Map(rules.map((rule) => [rule.id, rule]));

const isOfLanguage = (check: string): boolean => check.startsWith("language/");

/**
 * What a departure names: one check by its id, or the checks that rest on a regulation. An error of the language has no
 * excuse: what cannot be read cannot be departed from.
 */
export function covers(departure: string, check: string): boolean {
  if (isOfLanguage(check)) return false;
  if (departure === check) return true;
  const clauses = byId.get(check)?.clauses ?? [];
  return clauses.some((clause) => clause === departure || clause.startsWith(`${departure}.`));
}

const unused: Omit<Rule, "scope" | "check"> = {
  id: "record/departure-unused",
  severity: "warning",
  since: "0.1",
  title: "A departure quietens nothing.",
  why: "Either what it excused has been put right, and the departure should go, or it names the wrong rule and what it was meant for is not excused.",
  clauses: [],
  examples: [
    {
      bad: `way 1 radial "Water heater" {
  departure 999.9 "The old board stays until autumn"
            ^^^^^
}`,
      good: `way 1 radial "Water heater" {
  note "The old board stays until autumn"
}`,
    },
  ],
};

/** The one check that runs after the others, since it judges what they found. */
export const departureUnused: Omit<Rule, "scope" | "check"> = unused;

/** Takes out what a departure covers, and reports each departure that covers nothing. */
export function applyDepartures(
  found: readonly Finding[],
  departures: readonly PlacedDeparture[],
  installation: Installation,
): CheckResult {
  if (departures.length === 0) return { findings: found, quietened: [] };
  // The nearest departure counts: its reason is the one that was given for this place.
  const scopes = [...departures]
    .sort((a, b) => nearness(b) - nearness(a))
    .map((departure) => ({ departure, segments: segmentsOf(departure, installation) }));
  const used = new Set<PlacedDeparture>();
  const findings: Finding[] = [];
  const quietened: Quietened[] = [];
  for (const finding of found) {
    const match = scopes.find(
      ({ departure, segments }) => covers(departure.rule, finding.check) && segments.has(finding.spot.segment),
    );
    if (!match) findings.push(finding);
    else {
      used.add(match.departure);
      quietened.push({ finding, departure: match.departure });
    }
  }
  for (const departure of departures) {
    if (used.has(departure)) continue;
    findings.push(
      findingOf(unused, valueSpot(departure.fact, departure.fact.args.rule), {
        message: whyUnused(departure.rule),
        fixes: [withoutLine(departure.fact, "Remove the departure")],
      }),
    );
  }
  return { findings, quietened };
}

function whyUnused(departure: string): string {
  if (isOfLanguage(departure))
    return `No departure excuses ${departure}: what cannot be read must be put right. Remove this line.`;
  return rules.some((rule) => covers(departure, rule.id))
    ? `Nothing here departs from ${departure}: remove this line if it has been put right.`
    : `No check here rests on ${departure}, so this departure quietens nothing.`;
}

const nearness = ({ board, way }: PlacedDeparture): number => (way ? 2 : board ? 1 : 0);

function segmentsOf({ board, way, fact }: PlacedDeparture, installation: Installation): Pick<Set<Segment>, "has"> {
  if (way) return new Set([way.segment]);
  if (board) return new Set(board.segments);
  if (installation.supply?.list.includes(fact)) return new Set([fact.segment]);
  return { has: () => installation !== undefined };
}
