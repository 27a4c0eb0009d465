/**
 * The editor and the terminal judge alike: whatever happens to the files of a folder, after every step the findings of
 * each file by the workspace, which keeps what it knows, are those of a program that has just been started.
 */
import { describe, expect, it } from "vitest";
import { judgeFiles } from "../../server/results/files.ts";
import type { ResultFinding } from "../../server/results/result.ts";
import { failures } from "../../server/rules/frame/check.ts";
import type { Finding } from "../../server/rules/frame/rule.ts";
import type { TextEdit } from "../../server/text/lines.ts";
import { fileOfSegment } from "../../server/workspace/workspace.ts";
import { random } from "../helpers/random.ts";
import { Files } from "./files.ts";
import { type Change, changesOf, startingFolder } from "./folder-changes.ts";

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

async function byWorkspace(files: Files, name: string): Promise<string[]> {
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

function byTerminal(files: Files): Map<string, string[]> {
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

describe("findings by the workspace are those by the terminal", () => {
  it.each([11, 12, 13, 14, 15, 16])(
    "after every step of the changes from seed %i",
    { timeout: 120_000 },
    async (seed) => {
      const next = random(seed);
      const files = new Files(startingFolder);
      const done: Change["kind"][] = [];
      for (let step = 0; step < 24; step++) {
        const change = changesOf(files, next);
        done.push(change.kind);
        await change.make();
        const expected = byTerminal(files);
        for (const name of files.names) {
          const found = await byWorkspace(files, name);
          expect(found, `${name} after ${done.join(", ")}`).toEqual(expected.get(files.path(name)));
        }
      }
    },
  );
});
