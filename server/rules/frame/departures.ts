import type { Board, FileModel, Way } from "../../model/file.ts";
import type { Installation } from "../../model/installation.ts";
import { asBlock, type Fact, type Facts } from "../../model/values.ts";
import type { Segment } from "../../syntax/split.ts";
import { inPlaceOf, withoutLine } from "../common/writing.ts";
import { rules } from "../list.ts";
import { reasonToWrite, renamed, unexplained, unused } from "./departure-checks.ts";
import { formerIds, presentId } from "./former-ids.ts";
import { type Finding, findingOf, valueSpot } from "./rule.ts";

/** A departure and what it covers: a way, a board with its ways, the supply, the whole installation, or a file. */
export interface PlacedDeparture {
  readonly rule: string;
  readonly reason: string;
  readonly fact: DepartureFact;
  readonly board: Board | undefined;
  readonly way: Way | undefined;
  /** What a departure of a file covers. */
  readonly inFile?: Pick<ReadonlySet<Segment>, "has">;
}

type DepartureFact = Fact & {
  readonly args: {
    readonly rule: { value: string; start: number; end: number };
    readonly reason: { value: string; start: number; end: number };
  };
};

/** A finding that a departure suppresses, with the departure. */
export interface SuppressedFinding {
  readonly finding: Finding;
  readonly departure: PlacedDeparture;
}

export interface CheckResult {
  readonly findings: readonly Finding[];
  readonly suppressed: readonly SuppressedFinding[];
}

export function departuresIn(facts: Facts, board: Board | undefined, way: Way | undefined): PlacedDeparture[] {
  return asBlock<"board">(facts)
    .all("departure")
    .map((fact) => ({
      rule: fact.args.rule.value,
      reason: fact.args.reason.value,
      fact,
      board,
      way,
    }));
}

const everywhere: Pick<ReadonlySet<Segment>, "has"> = { has: () => true };

/**
 * The departures that stand outside any installation or board. Those of the file that was asked for cover all it uses,
 * those of another file what stands in it.
 */
export const departuresInFiles = (files: readonly FileModel[]): PlacedDeparture[] =>
  files.flatMap(({ facts, segments }, index) => {
    const own = departuresIn(facts, undefined, undefined);
    if (own.length === 0) return [];
    const inFile = index === 0 ? everywhere : new Set(segments);
    return own.map((departure) => ({ ...departure, inFile }));
  });

/** What there is to report of the departures of files: those that suppress nothing in any installation, and former ids. */
export function unusedInFiles(files: readonly FileModel[], suppressed: readonly SuppressedFinding[]): Finding[] {
  const used = new Set<unknown>(suppressed.map(({ departure }) => departure.fact));
  return departuresInFiles(files).flatMap((departure) => findingsOf(departure, used.has(departure.fact)));
}

const byId = new Map(rules.map((rule) => [rule.id, rule]));

const isOfLanguage = (check: string): boolean => check.startsWith("language/");

/**
 * What a departure names: one check by its id, or the checks that rest on a regulation. An error of the language has no
 * excuse: what cannot be read cannot be departed from.
 */
export function covers(departure: string, check: string): boolean {
  if (isOfLanguage(check)) return false;
  if (presentId(departure) === check) return true;
  const clauses = byId.get(check)?.clauses ?? [];
  return clauses.some((clause) => clause === departure || clause.startsWith(`${departure}.`));
}

/** Takes out what a departure covers, and reports each departure that covers nothing. */
export function applyDepartures(
  found: readonly Finding[],
  departures: readonly PlacedDeparture[],
  installation: Installation,
): CheckResult {
  if (departures.length === 0) return { findings: found, suppressed: [] };
  // The nearest departure counts: its reason is the one that was given for this place.
  const scopes = departures
    .filter(isExplained)
    .toSorted((a, b) => nearness(b) - nearness(a))
    .map((departure) => ({ departure, segments: segmentsOf(departure, installation) }));
  const used = new Set<PlacedDeparture>();
  const findings: Finding[] = [];
  const suppressed: SuppressedFinding[] = [];
  const covering = ({ check, spot }: Finding) =>
    scopes.find(({ departure, segments }) => covers(departure.rule, check) && segments.has(spot.segment));
  for (const finding of found) {
    const explained = finding.explains?.map(covering) ?? [];
    for (const one of explained) if (one) used.add(one.departure);
    // A verdict is excused by what excuses all that it explains.
    const match = covering(finding) ?? (explained.every((one) => one !== undefined) ? explained[0] : undefined);
    if (!match) findings.push(finding);
    else {
      used.add(match.departure);
      suppressed.push({ finding, departure: match.departure });
    }
  }
  for (const departure of departures) {
    if (!departure.inFile) findings.push(...findingsOf(departure, used.has(departure)));
  }
  return { findings, suppressed };
}

const findingsOf = (departure: PlacedDeparture, used: boolean): Finding[] =>
  !isExplained(departure)
    ? [unexplainedFinding(departure)]
    : used
      ? renamedFinding(departure)
      : [unusedFinding(departure)];

/** Whether something is written that could be a reason. */
const isExplained = ({ reason }: PlacedDeparture): boolean => reason !== reasonToWrite && /[\p{L}\p{N}]/u.test(reason);

/** What it was meant for stays found: a danger is not excused by a line that somebody did not finish. */
const unexplainedFinding = ({ fact }: PlacedDeparture): Finding =>
  findingOf(unexplained, valueSpot(fact, fact.args.reason), {
    message: "This departure suppresses nothing until its reason is written: why it is safe as it is, and who agreed.",
  });

/** A departure by a former id holds: what is suppressed must not come back because a check was renamed. */
function renamedFinding({ fact, rule }: PlacedDeparture): Finding[] {
  const present = formerIds.get(rule);
  if (present === undefined) return [];
  return [
    findingOf(renamed, valueSpot(fact, fact.args.rule), {
      message: `${rule} is called ${present} now: the departure still holds; write the present name.`,
      fixes: [{ ...inPlaceOf(fact.args.rule, present), safe: true }],
    }),
  ];
}

const unusedFinding = ({ fact, rule }: PlacedDeparture): Finding =>
  findingOf(unused, valueSpot(fact, fact.args.rule), {
    message: whyUnused(rule),
    fixes: [withoutLine(fact, "Remove the departure")],
  });

function whyUnused(departure: string): string {
  if (isOfLanguage(departure))
    return `No departure excuses ${departure}: what cannot be read must be put right. Remove this line.`;
  return rules.some((rule) => covers(departure, rule.id))
    ? `Nothing here departs from ${departure}: remove this line if it has been put right.`
    : `No check here rests on ${departure}, so this departure suppresses nothing.`;
}

const nearness = ({ board, way, inFile }: PlacedDeparture): number => (way ? 2 : board ? 1 : inFile ? -1 : 0);

function segmentsOf(
  { board, way, fact, inFile }: PlacedDeparture,
  installation: Installation,
): Pick<ReadonlySet<Segment>, "has"> {
  if (inFile) return inFile;
  if (way) return new Set([way.segment]);
  if (board) return new Set(board.segments);
  if (installation.supply?.list.includes(fact)) return new Set([fact.segment]);
  return { has: () => installation !== undefined };
}
