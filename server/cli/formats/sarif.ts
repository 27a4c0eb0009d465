/**
 * SARIF 2.1.0 (OASIS). One run; what departures and settings suppress is in it with the reason, so that a host that
 * knows suppressions shows them as such.
 */
import manifest from "../../../package.json" with { type: "json" };
import type { ResultFinding, ResultPlace, Suppressed } from "../../results/result.ts";
import { pageOf } from "../../rules/frame/catalogue.ts";
import { reasonOf } from "../../rules/frame/reasons.ts";
import type { Severity } from "../../rules/frame/rule.ts";
import { type TerminalText, term } from "../../text/terminal.ts";
import { counted } from "../../text/words.ts";
import { jsonPart } from "../say.ts";
import { fingerprints } from "./fingerprint.ts";
import { type MakeReporter, shownOf } from "./reporter.ts";

/** A host refuses a file with more. */
const mostResults = 25_000;

const levels: Readonly<Record<Severity, string>> = { error: "error", warning: "warning", information: "note" };

export const sarifReporter: MakeReporter = (options) => {
  const fingerprint = fingerprints();
  const checks = new Set<string>();
  let count = 0;
  let more = 0;
  const result = (finding: ResultFinding, suppressed?: Suppressed): TerminalText => {
    if (count >= mostResults) {
      more++;
      return term``;
    }
    checks.add(finding.check);
    const before = count++ === 0 ? opening : term`,`;
    return term`${before}\n        ${jsonPart(resultOf(finding, fingerprint(finding), suppressed))}`;
  };
  return {
    file: (file) => term.join(shownOf(file, options.info).map((finding) => result(finding))),
    end: ({ suppressed }) => {
      const last = term.join(suppressed.map((one) => result(one.finding, one)));
      const closing = count === 0 ? term`${opening}],` : term`${last}\n      ],`;
      const rest = { tool: toolOf([...checks]), invocations: [invocation(more)] };
      const body = Object.entries(rest).map(([key, value]) => term`      "${key}": ${jsonPart(value, 6)}`);
      return term`${closing}\n${term.join(body, ",\n")}\n    }\n  ]\n}\n`;
    },
  };
};

const opening = term`{
  "$schema": "https://json.schemastore.org/sarif-2.1.0.json",
  "version": "2.1.0",
  "runs": [
    {
      "columnKind": "utf16CodeUnits",
      "automationDetails": { "id": "wayfile/" },
      "results": [`;

function resultOf(finding: ResultFinding, fingerprint: string, suppressed: Suppressed | undefined): object {
  const { check, severity, message, at, related, value, limit, margin, verdict } = finding;
  return {
    ruleId: check,
    level: levels[severity],
    message: { text: message },
    locations: [{ physicalLocation: physical(at) }],
    ...(related.length > 0
      ? {
          relatedLocations: related.map((one, index) => ({
            id: index + 1,
            physicalLocation: physical(one.at),
            message: { text: one.message },
          })),
        }
      : {}),
    partialFingerprints: { "wayfile/v1": fingerprint },
    ...(suppressed ? { suppressions: [suppression(suppressed)] } : {}),
    properties: { value, limit, margin, verdict },
  };
}

const suppression = ({ by, reason }: Suppressed): object => ({
  kind: by ? "inSource" : "external",
  justification: reason,
  ...(by ? { location: { physicalLocation: physical(by) } } : {}),
});

const physical = ({ path, start, end }: ResultPlace): object => ({
  artifactLocation: { uri: path.split("/").map(encodeURIComponent).join("/") },
  region: {
    startLine: start.line + 1,
    startColumn: start.character + 1,
    endLine: end.line + 1,
    endColumn: end.character + 1,
  },
});

const toolOf = (checks: readonly string[]): object => ({
  driver: {
    name: "Wayfile",
    version: manifest.version,
    rules: checks.toSorted().map((id) => {
      const page = pageOf(id);
      if (!page) return { id };
      return {
        id,
        shortDescription: { text: page.title },
        fullDescription: { text: reasonOf(id) },
        defaultConfiguration: { level: levels[page.severity] },
        properties: { clauses: page.clauses, tags: [id.slice(0, id.indexOf("/"))] },
      };
    }),
  },
});

const invocation = (more: number): object => ({
  executionSuccessful: true,
  ...(more > 0
    ? {
        toolExecutionNotifications: [
          { level: "warning", message: { text: `${counted(more, "more finding")} left out: a host reads no more.` } },
        ],
      }
    : {}),
});
