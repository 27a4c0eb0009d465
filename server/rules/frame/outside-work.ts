/**
 * What is reported of parts that the work leaves as they were. Work on an old installation answers for its own circuits
 * and for what 641.5 names: that the old does not impair the new. What the rest lacks is no fault of this work; what is
 * dangerous in it is reported all the same, for the remarks on the existing installation.
 */
import { memoByObject, memoInPlace, memoOfPlaces } from "../../circuit/kept.ts";
import { isOutsideWork, partWorkOf } from "../../circuit/supply.ts";
import type { Board, Way } from "../../model/file.ts";
import type { BoardInPlace, Installation } from "../../model/installation.ts";
import type { Fact } from "../../model/values.ts";
import type { Segment } from "../../syntax/split.ts";
import type { Finding } from "./rule.ts";

/** Whether a finding is to be reported, by where it stands. */
type Kept = (finding: Finding) => boolean;

const everything: Kept = () => true;

/** Families that say of an old board what it lacks by itself; the others say what it means to the circuits of the work. */
const ofItself: ReadonlySet<string> = new Set(["record", "drift", "population", "surge", "containment"]);

const familyOf = ({ check }: Finding): string => check.slice(0, check.indexOf("/"));

/** Whatever a part is to the work, its text must be understood and its departures and inspections be right. */
const always: ReadonlySet<string> = new Set(["language", "check", "inspection"]);

/** Whether a board or one of its ways says what the work is to it. */
const saysWork = memoByObject(
  ({ head, ways }: Board): boolean => head.facts.has("work") || ways.some(({ facts }) => facts.has("work")),
);

/** What is reported of the ways of a board and of its own lines. */
export const keptOnBoard = memoInPlace(({ board, context }: BoardInPlace): Kept => {
  if (!saysWork(board)) return everything;
  const outside = new Map<Segment, Way>();
  for (const way of board.ways) if (isOutsideWork({ context, facts: way.facts })) outside.set(way.segment, way);
  const boardOutside = isOutsideWork(context);
  if (outside.size === 0 && !boardOutside) return everything;
  const own = new Set(board.segments);
  return (finding) => {
    if (always.has(familyOf(finding)) || finding.check.startsWith("record/departure")) return true;
    const way = outside.get(finding.spot.segment);
    if (way) return isDanger(finding, way, partWorkOf({ context, facts: way.facts }) === "not-part");
    const ofBoard =
      boardOutside &&
      own.has(finding.spot.segment) &&
      !board.ways.some(({ segment }) => segment === finding.spot.segment);
    return (
      !ofBoard || finding.severity === "error" || (finding.severity === "warning" && !ofItself.has(familyOf(finding)))
    );
  };
});

const onEachBoard = memoOfPlaces(keptOnBoard);

/** What is reported by checks of all boards together. */
export function keptOnBoards(installation: Installation): Kept {
  const partly = onEachBoard(installation).filter((keeps) => keeps !== everything);
  return (finding) => partly.every((keeps) => keeps(finding));
}

/** An error; of what is no part of the work at all, one that a reading shows or that is certain from the outside. */
const isDanger = ({ check, severity, spot }: Finding, way: Way, readingsOnly: boolean): boolean =>
  severity === "error" &&
  (!readingsOnly ||
    seenFromOutside.has(check) ||
    testsOf(way).some(({ start, end }) => start <= spot.start && spot.end <= end));

/** A device that lets its cable overheat is seen on the board by whoever adds a circuit beside it. */
const seenFromOutside: ReadonlySet<string> = new Set(["design/device-over-capacity", "design/over-any-capacity"]);

const testsOf = ({ facts }: Way): readonly Fact[] => [...facts.all("dead"), ...facts.all("live")];
