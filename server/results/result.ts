/**
 * What is found, as plain data: nothing in it refers to a text or a model, so that it can be sent to another thread,
 * kept in a file and merged with the results of other runs.
 */
import type { LimitVerdict } from "../calc/verdict.ts";
import type { RegisterRow } from "../reports/register/row.ts";
import type { Amount, Severity } from "../rules/frame/rule.ts";
import type { Standing } from "../tables/source.ts";
import type { Position, TextEdit } from "../text/lines.ts";

/** A part of a line, and enough of the line to show it. Lines without end are cut. */
export interface Excerpt {
  readonly text: string;
  /** Where the part begins and ends in `text`, in UTF-16 units. */
  readonly from: number;
  readonly to: number;
}

/** A place in a file: as lines and characters, both from zero, and as offsets into its text without a byte order mark. */
export interface ResultPlace {
  readonly path: string;
  readonly start: Position;
  readonly end: Position;
  readonly offset: number;
  readonly endOffset: number;
  readonly line: Excerpt;
}

export interface ResultSource {
  readonly ref: string;
  readonly standing: Standing;
  readonly note?: string;
}

/** A change that puts a finding right; offsets are in the file of the finding. */
export interface ResultFix {
  readonly title: string;
  readonly safe: boolean;
  readonly edits: readonly TextEdit[];
}

export interface ResultFinding {
  readonly check: string;
  readonly severity: Severity;
  readonly message: string;
  readonly at: ResultPlace;
  readonly verdict?: LimitVerdict;
  readonly value?: Amount;
  readonly limit?: Amount;
  readonly margin?: number;
  readonly marginText?: string;
  readonly working?: string;
  readonly source?: ResultSource;
  readonly related: readonly { readonly at: ResultPlace; readonly message: string }[];
  readonly fixes: readonly ResultFix[];
}

/** A question nobody has answered yet. */
export interface OpenQuery {
  readonly text: string;
  readonly at: ResultPlace;
}

/** What a file holds, besides what is wrong with it. */
export interface FileHolds {
  readonly boards: number;
  readonly ways: number;
  readonly departures: number;
  readonly limitations: number;
  readonly queries: readonly OpenQuery[];
  /** Titles of its installations. */
  readonly titles: readonly string[];
  /** Whether nothing but blanks stands in it. */
  readonly isEmpty: boolean;
}

/** A file in the order of its text. */
export interface FileResult {
  readonly path: string;
  readonly findings: readonly ResultFinding[];
  /** Of a kind that is there more often than is kept: how many are left out. */
  readonly more: readonly MoreFindings[];
  readonly holds: FileHolds;
}

interface MoreFindings {
  readonly check: string;
  readonly severity: Severity;
  readonly count: number;
}

/** A finding that a departure, or the settings of the repository, suppress. */
export interface Suppressed {
  readonly finding: ResultFinding;
  /** What the departure names: a check or a regulation. */
  readonly rule: string;
  readonly reason: string;
  /** The departure; missing where the settings suppress it. */
  readonly by?: ResultPlace;
  /** The settings, and the line of the entry from zero. */
  readonly settings?: { readonly path: string; readonly line: number };
}

/** One schedule with all it uses, checked together. */
export interface ScheduleResult {
  /** The file checking began in. */
  readonly root: string;
  /** As a message names it: its installation and its file. */
  readonly name: string;
  /** The root, then what it uses. A file that other schedules use too may be found otherwise there. */
  readonly files: readonly FileResult[];
  readonly suppressed: readonly Suppressed[];
  /** Whether it holds boards which no installation takes up, so that nothing judges them. */
  readonly unattached: boolean;
}

/** The same schedule as a register lists it: a row for each of its installations. */
export interface RegisterResult {
  readonly root: string;
  readonly rows: readonly RegisterRow[];
}
