/**
 * The editor and the terminal judge alike: whatever happens to the files of a folder, after every step the findings of
 * each file by the workspace, which keeps what it knows, are those of a program that has just been started.
 */
import { describe, expect, it } from "vitest";
import { checkFiles } from "../../server/cli/judge.ts";
import { failures } from "../../server/rules/frame/check.ts";
import type { Finding } from "../../server/rules/frame/rule.ts";
import { fileOfSegment } from "../../server/workspace/workspace.ts";
import { random } from "../helpers/random.ts";
import { Files } from "./files.ts";
import { type Change, changesOf, startingFolder } from "./folder-changes.ts";

failures.thrown = true;

/** A finding with all that a reader sees of it. */
const shown = (
  { check, severity, message, value, limit, working, fixes, related }: Finding,
  line: number,
  column: number,
  placeOf: (spot: Finding["spot"]) => string,
): string =>
  JSON.stringify([
    [line, column, check, severity, message, value, limit, working],
    fixes.map(({ title, edits }) => [title, edits]),
    related.map((one) => [placeOf(one.spot), one.message]),
  ]);

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
      const { line, character } = snapshot.positions.place(finding.spot.segment, finding.spot.start);
      return shown(finding, line, character, placeOf);
    })
    .sort();
}

function byTerminal(files: Files): Map<string, string[]> {
  files.forget();
  const { files: judged, places } = checkFiles(files.all, files.disk);
  const placeOf = (spot: Finding["spot"]): string => {
    const { file, start } = places.of(spot);
    return `${file.path}:${start.line}:${start.character}`;
  };
  return new Map(
    judged.map(({ file, findings }) => [
      file.path,
      findings.map(({ finding, at }) => shown(finding, at.start.line, at.start.character, placeOf)).sort(),
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
