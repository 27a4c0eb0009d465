/** One line a finding, as editors and terminals know how to jump to. */
import { term } from "../../text/terminal.ts";
import { tintOf } from "../colours.ts";
import { placeText } from "./frame.ts";
import { leftOut, type MakeReporter, shownOf } from "./reporter.ts";
import { summaryLine } from "./text.ts";

export const conciseReporter: MakeReporter = (options) => {
  const { colours, shown } = options;
  return {
    file: (file) =>
      term.join([
        ...shownOf(file, options.info).map(
          ({ at, severity, check, message }) =>
            term`${placeText(at, shown)}: ${tintOf(severity, colours)(severity)} ${colours.dim(check)} ${message}\n`,
        ),
        ...leftOut(file, options),
      ]),
    end: (totals) => (options.quiet ? term`` : term`${summaryLine(totals, options)}\n`),
  };
};
