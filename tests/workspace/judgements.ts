/** Findings of a file as the workspace keeps them, and as a program that has just been started finds them. */
import { judgeFiles } from "../../server/results/files.ts";
import type { ResultFinding } from "../../server/results/result.ts";
import type { Finding } from "../../server/rules/frame/rule.ts";
import { failures } from "../../server/rules/frame/run-rules.ts";
import type { TextEdit } from "../../server/text/lines.ts";
import { fileOfSegment } from "../../server/workspace/workspace.ts";
import type { Files } from "./files.ts";

failures.thrown = true;

/** A finding with all that a reader sees of it. */
const shown = (
  finding: Pick<Finding | ResultFinding, "check" | "severity" | "message" | "value" | "limit" | "working">,
  place: string,
  fixes: readonly { readonly title: string; readonly edits: readonly TextEdit[] }[],
  related: readonly (readonly [place: string, message: string])[],
): string => {
  const { check, severity, message, value, limit, working } = finding;
  const edits = fixes.map((fix) => [fix.title, fix.edits.map(({ start, end, text }) => [start, end, text])]);
  return JSON.stringify([[place, check, severity, message, value, limit, working], edits, related]);
};

export async function byWorkspace(files: Files, name: string): Promise<string[]> {
  const snapshot = await files.snapshot(name);
  const placeOf = (spot: Finding["spot"]): string => {
    const file = fileOfSegment(snapshot, spot.segment);
    if (!file) return "nowhere";
    const { line, character } = files.workspace.positionsOf(file).place(spot.segment, spot.start);
    return `${file.path}:${line}:${character}`;
  };
  return snapshot.findings
    .map((finding) => {
      const begin = snapshot.positions.offset(finding.spot.segment, 0);
      const fixes = finding.fixes.map(({ title, edits }) => ({
        title,
        edits: edits.map(({ start, end, text }) => ({ start: begin + start, end: begin + end, text })),
      }));
      const related = finding.related.map(({ spot, message }) => [placeOf(spot), message] as const);
      return shown(finding, placeOf(finding.spot), fixes, related);
    })
    .sort();
}

export function byTerminal(files: Files): Map<string, string[]> {
  files.forget();
  const placeOf = ({ path, start }: ResultFinding["at"]): string => `${path}:${start.line}:${start.character}`;
  return new Map(
    judgeFiles(files.all, files.disk).files.map(({ path, findings }) => [
      path,
      findings
        .map((finding) => {
          const related = finding.related.map(({ at, message }) => [placeOf(at), message] as const);
          return shown(finding, placeOf(finding.at), finding.fixes, related);
        })
        .sort(),
    ]),
  );
}
