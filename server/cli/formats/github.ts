/** Workflow commands that a GitHub runner shows beside the changed lines of a pull request. */
import type { Severity } from "../../rules/frame/rule.ts";
import { term } from "../../text/terminal.ts";
import type { MakeReporter } from "./reporter.ts";
import { shownOf } from "./reporter.ts";
import { summaryLine } from "./text.ts";

const commands: Readonly<Record<Severity, string>> = { error: "error", warning: "warning", information: "notice" };

/** A line end would end the command, and what follows a colon or comma would be taken for its own. */
const data = (text: string): string => text.replaceAll("%", "%25").replaceAll("\r", "%0D").replaceAll("\n", "%0A");
const property = (text: string): string => data(text).replaceAll(":", "%3A").replaceAll(",", "%2C");

export const githubReporter: MakeReporter = (options) => ({
  file: (file) =>
    term.join(
      shownOf(file, options.info).map(({ severity, check, message, at }) => {
        const place = {
          file: at.path,
          line: at.start.line + 1,
          endLine: at.end.line + 1,
          // The runner refuses columns of a part that runs over lines.
          ...(at.start.line === at.end.line ? { col: at.start.character + 1, endColumn: at.end.character + 1 } : {}),
          title: check,
        };
        const properties = Object.entries(place).map(([name, value]) => `${name}=${property(String(value))}`);
        return term`::${commands[severity]} ${properties.join(",")}::${data(message)}\n`;
      }),
    ),
  end: (totals) => (options.quiet ? term`` : term`${summaryLine(totals, options)}\n`),
});
