/** A Code Quality report as GitLab reads it from the artifacts of a job. */
import type { Severity } from "../../rules/frame/rule.ts";
import { type TerminalText, term } from "../../text/terminal.ts";
import { jsonPart } from "../say.ts";
import { fingerprints } from "./fingerprint.ts";
import { type MakeReporter, shownOf } from "./reporter.ts";

const severities: Readonly<Record<Severity, string>> = { error: "critical", warning: "minor", information: "info" };

export const gitlabReporter: MakeReporter = (options) => {
  const fingerprint = fingerprints();
  let isFirst = true;
  const separated = (text: TerminalText): TerminalText => {
    const before = isFirst ? term`[` : term`,`;
    isFirst = false;
    return term`${before}\n  ${text}`;
  };
  return {
    file: (file) =>
      term.join(
        shownOf(file, options.info).map((finding) =>
          separated(
            jsonPart({
              description: finding.message,
              check_name: finding.check,
              fingerprint: fingerprint(finding),
              severity: severities[finding.severity],
              location: {
                path: finding.at.path,
                lines: { begin: finding.at.start.line + 1, end: finding.at.end.line + 1 },
              },
            }),
          ),
        ),
      ),
    end: () => (isFirst ? term`[]\n` : term`\n]\n`),
  };
};
