/** Which paper a schedule gives, and why one may not be given. */
import { memoInPlace } from "../../circuit/kept.ts";
import { isOutsideWork } from "../../circuit/supply.ts";
import { studyWay, type WayStudy } from "../../circuit/way.ts";
import type { Way } from "../../model/file.ts";
import { type Inspection, type InspectionKind, latestInspection } from "../../model/inspections.ts";
import type { BoardInPlace, Installation } from "../../model/installation.ts";
import { distinctAbsences } from "../../readings/absences.ts";
import { circuitIn } from "../../readings/inspection-scope.ts";
import { planDead } from "../../readings/plan-dead.ts";
import { planLive } from "../../readings/plan-live.ts";
import { marginTo, type PlannedTest } from "../../readings/planned.ts";
import { isMissingTest } from "../../rules/common/missing-tests.ts";
import type { Finding } from "../../rules/frame/rule.ts";

export interface Paper {
  readonly kind: InspectionKind;
  /** The event it is of; nothing where the schedule has none yet. */
  readonly inspection: Inspection | undefined;
}

export const paperTitles: Readonly<Record<InspectionKind, string>> = {
  initial: "Electrical installation certificate: initial verification",
  periodic: "Electrical installation condition report: periodic inspection",
  minor: "Minor works certificate: a circuit altered",
};

/** By the latest inspection; where none is written, by what the work is. */
export function paperOf({ head, boards }: Installation): Paper | { readonly failure: string } {
  const inspection = latestInspection(head);
  if (inspection?.kind) return { kind: inspection.kind, inspection };
  const work = head.facts.one("work")?.args.work.value;
  if (work === undefined)
    return {
      failure: "Which paper this is does not follow from the schedule: write an inspection, or what the work is.",
    };
  if (work === "existing") return { kind: "periodic", inspection };
  const hasNew = boards.some(({ board }) =>
    [board.head.facts.one("work"), ...board.ways.map(({ facts }) => facts.one("work"))].some(
      (fact) => fact?.args.work.value === "new",
    ),
  );
  const marked = boards.some(({ board }) => board.ways.some(({ facts }) => facts.has("work")));
  return { kind: work === "new" || hasNew || !marked ? "initial" : "minor", inspection };
}

/** What stands against giving a paper: a certificate admits nothing failed, limited or missing. */
export function obstacles(
  { kind, inspection }: Paper,
  findings: readonly Finding[],
  boards: readonly Covered[],
): string[] {
  const count = (number: number, one: string, many: string): string[] =>
    number === 0 ? [] : [number === 1 ? `one ${one}` : `${number} ${many}`];
  const unread = findings.filter(({ check, severity }) => check.startsWith("language/") && severity === "error");
  const common = count(unread.length, "line that could not be understood", "lines that could not be understood");
  if (kind === "periodic")
    return [
      ...common,
      ...(inspection
        ? []
        : ["no inspection is written in the schedule (begin one with “inspection periodic” and its day)"]),
    ];
  const failed = findings.filter(
    (finding) => finding.severity === "error" && !isMissingTest(finding) && !unread.includes(finding),
  );
  return [
    ...common,
    ...count(findings.filter(isMissingTest).length, "required test is missing", "required tests are missing"),
    ...count(failed.length, `error: ${firstOf(failed)}`, `errors, the first: ${firstOf(failed)}`),
    ...boards.flatMap(({ failing }) => failing),
    ...count(
      boards.reduce((sum, { limited }) => sum + limited, 0),
      "test is limited",
      "tests are limited",
    ),
  ];
}

const firstOf = (findings: readonly Finding[]): string => (findings[0]?.message ?? "").replace(/\.$/, "");

/** An old circuit beside the work is no part of its paper: what is dangerous there is an error all the same. */
const isCovered = (study: WayStudy, inspection: Inspection | undefined): boolean =>
  inspection ? circuitIn(inspection, study).state !== "not-covered" : !isOutsideWork(study);

/** What stands against a certificate on one board. */
interface Covered {
  /** Readings beyond their limit, whatever the checks make of them: an RCD that excuses a loop passes no test of it. */
  readonly failing: readonly string[];
  /** How many readings are LIM in what the paper covers. */
  readonly limited: number;
}

const nothing: Covered = { failing: [], limited: 0 };

export function coveredOn(place: BoardInPlace, { kind, inspection }: Paper): Covered {
  if (kind === "periodic") return nothing;
  const covered = againstOn(place).filter(({ way }) => isCovered(studyWay(way, place.context), inspection));
  return {
    failing: covered.flatMap(({ failing }) => failing),
    limited: covered.reduce((sum, { limited }) => sum + limited, 0),
  };
}

interface AgainstOnWay extends Covered {
  readonly way: Way;
}

/** What stands against a certificate on each way of a board, whatever the certificate covers: an edit is of one board. */
const againstOn = memoInPlace(({ board, context }: BoardInPlace): readonly AgainstOnWay[] =>
  board.ways.map((way) => {
    const study = studyWay(way, context);
    return {
      way,
      failing: [...planDead(study), ...planLive(study)]
        .filter(isFailed)
        .map(({ name, recorded }) => `${board.head.name}/${way.id} fails: ${name} ${recorded?.text ?? ""}`),
      limited: distinctAbsences(way.facts).filter(({ value }) => value.absent === "LIM").length,
    };
  }),
);

const isFailed = ({ bounds, recorded }: PlannedTest): boolean =>
  recorded !== undefined &&
  (["wrong", "failed", "reversed"].includes(recorded.text) ||
    bounds.some((bound) => bound.source.standing !== "practice" && marginTo(bound, recorded)?.passes === false));
