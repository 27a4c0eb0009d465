import type { Board, Way } from "../model/file.ts";
import type { Installation } from "../model/installation.ts";
import type { Fact, Facts } from "../model/values.ts";
import type { Segment } from "../syntax/split.ts";
import type { CheckResult, Quietened } from "./check.ts";
import { rules } from "./list.ts";
import { type Finding, findingOf, type Rule, valueSpot } from "./rule.ts";

/** A departure and what it covers: a way, a board with its ways, or the whole installation. */
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

/** What a departure names: one check by its id, or the checks that rest on a regulation. */
export function covers(departure: string, check: string): boolean {
  if (departure === check) return true;
  const clauses = byId.get(check)?.clauses ?? [];
  return clauses.some((clause) => clause === departure || clause.startsWith(`${departure}.`));
}

const unused = {
  id: "record/departure-unused",
  severity: "warning",
  since: "0.1",
  title: "A departure quietens nothing.",
  why: "Either what it excused has been put right, and the departure should go, or it names the wrong rule and what it was meant for is not excused.",
  clauses: [],
  examples: [],
} as const;

/** The one check that runs after the others, since it judges what they found. */
export const departureUnused: Pick<Rule, "id" | "severity" | "title" | "why" | "since"> = unused;

/** Takes out what a departure covers, and reports each departure that covers nothing. */
export function applyDepartures(
  found: readonly Finding[],
  departures: readonly PlacedDeparture[],
  installation: Installation,
): CheckResult {
  if (departures.length === 0) return { findings: found, quietened: [] };
  const scopes = departures.map((departure) => ({ departure, segments: segmentsOf(departure, installation) }));
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
    const known = byId.has(departure.rule) || rules.some((rule) => covers(departure.rule, rule.id));
    const message = known
      ? `Nothing here departs from ${departure.rule}: remove this line if it has been put right.`
      : `No check here rests on ${departure.rule}, so this departure quietens nothing.`;
    findings.push(
      findingOf({ ...unused, examples: [] }, valueSpot(departure.fact, departure.fact.args.rule), {
        message,
        fixes: [removal(departure.fact)],
      }),
    );
  }
  return { findings, quietened };
}

function segmentsOf({ board, way }: PlacedDeparture, installation: Installation): Pick<Set<Segment>, "has"> {
  if (way) return new Set([way.segment]);
  if (board) return new Set(board.segments);
  return { has: () => installation !== undefined };
}

function removal(fact: Fact) {
  const { text } = fact.segment;
  const start = text.lastIndexOf("\n", fact.start - 1) + 1;
  const breakAt = text.indexOf("\n", fact.end);
  const end = breakAt < 0 ? text.length : breakAt + 1;
  return { title: "Remove the departure", edits: [{ start, end, text: "" }], safe: false };
}
