/** Test results in the XML that build servers read: a suite a file, and a test case that failed for each finding. */
import type { FileResult, ResultFinding } from "../../results/result.ts";
import { element, type Html, html } from "../../text/html.ts";
import { lines } from "../../text/terminal.ts";
import { type MakeReporter, type ReportOptions, shownOf } from "./reporter.ts";

export const junitReporter: MakeReporter = (options) => {
  let opening = '<?xml version="1.0" encoding="UTF-8"?>\n<testsuites name="wayfile">\n';
  const opened = (text: string) => {
    const all = opening + text;
    opening = "";
    return lines(all);
  };
  return {
    file: (file) => opened(`${suiteOf(file, options).text}\n`),
    end: () => opened("</testsuites>\n"),
  };
};

function suiteOf(file: FileResult, { info, shown }: ReportOptions): Html {
  const findings = shownOf(file, info);
  const name = shown(file.path);
  const failed = findings.filter(({ severity }) => severity !== "information");
  const cases =
    findings.length === 0
      ? [element("testcase", { name: "no findings", classname: name })]
      : findings.map((finding) => caseOf(finding, name));
  const counts = { tests: String(cases.length), failures: String(failed.length), errors: "0", skipped: "0" };
  return element("testsuite", { name, ...counts }, ...cases.map((one) => html`\n  ${one}`), "\n");
}

/** What is only for information does not fail. */
function caseOf(finding: ResultFinding, file: string): Html {
  const { check, severity, message, at, working } = finding;
  const text = `${file}:${at.start.line + 1}:${at.start.character + 1}\n${message}${working ? `\n${working}` : ""}`;
  const inner =
    severity === "information"
      ? element("system-out", {}, text)
      : element("failure", { message, type: severity }, text);
  return element("testcase", { name: `${check}, line ${at.start.line + 1}`, classname: file }, inner);
}
