/** How a run is reported: each file as soon as it is known, and what it all adds up to at the end. */
import type { FileResult } from "../../results/result.ts";
import type { Totals } from "../../results/totals.ts";
import { type TerminalText, term } from "../../text/terminal.ts";
import { counted } from "../../text/words.ts";
import type { Colours } from "../colours.ts";

export interface Reporter {
  readonly file: (file: FileResult) => TerminalText;
  readonly end: (totals: Totals) => TerminalText;
}

export interface ReportOptions {
  readonly colours: Colours;
  /** Whether findings that are only for information are shown. They are counted all the same. */
  readonly info: boolean;
  /** The name of a file as a person reads it. */
  readonly shown: (name: string) => string;
  /** Columns that lines are kept to; missing where they may be as long as they are. */
  readonly width?: number;
  /** Whether the findings are all that is wanted. */
  readonly quiet?: boolean;
  /** Whether each check is counted at the end. */
  readonly statistics?: boolean;
}

export type MakeReporter = (options: ReportOptions) => Reporter;

/** The findings of a file that are to be shown. */
export const shownOf = ({ findings }: FileResult, info: boolean): FileResult["findings"] =>
  info ? findings : findings.filter(({ severity }) => severity !== "information");

/** A line for each kind of which there are more than are kept, `more` being what the report itself leaves out. */
export const leftOut = (
  file: FileResult,
  { shown }: ReportOptions,
  more?: ReadonlyMap<string, number>,
): TerminalText[] => {
  const left = new Map(more);
  for (const { check, count } of file.more) left.set(check, (left.get(check) ?? 0) + count);
  return [...left].map(
    ([check, count]) =>
      term`${counted(count, "more finding")} of ${check} in ${shown(file.path)}${more ? "; --format json lists more" : ""}.\n`,
  );
};
