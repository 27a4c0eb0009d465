/** `check --history`: what somebody signed for and what says something else since. */

import type { FileModel } from "../model/file.ts";
import { cutOff } from "../reports/history/report.ts";
import { type Signature, signaturesIn } from "../reports/history/signed.ts";
import { changedSinceSigned, isSuspect, type SignedEdit } from "../reports/history/since-signed.ts";
import type { Edit } from "../reports/history/timeline.ts";
import type { FileResult } from "../results/result.ts";
import { withFindings } from "../results/schedule.ts";
import type { Finding } from "../rules/frame/rule.ts";
import { decode } from "../text/decode.ts";
import { fileOfText, type LoadedFile } from "../workspace/loaded-file.ts";
import { type FileHistory, historyOf } from "./file-history.ts";
import type { Disk } from "./files.ts";
import type { Names } from "./names.ts";
import type { Ran } from "./run/run.ts";

interface Around {
  readonly disk: Disk;
  readonly names: Names;
  /** Sentences are added here. */
  readonly failures: string[];
  /** ISO 8601. */
  readonly today: string;
}

/**
 * The same results with what was changed since it was signed for. A file whose history is not known is a sentence among
 * `failures`, once.
 */
export async function* withHistory(
  results: AsyncIterable<Ran>,
  { disk, names: { nameOf }, failures, today }: Around,
): AsyncGenerator<Ran> {
  const failed = new Set<string>();
  const fail = (of: string, sentence: string): void => {
    if (failed.has(of)) return;
    failed.add(of);
    failures.push(sentence);
  };
  for await (const ran of results) {
    const { result, task } = ran;
    if ("failure" in result) {
      yield ran;
      continue;
    }
    const [root] = task.files.flatMap((path) => loaded(disk, path));
    const files: FileResult[] = [];
    for (const one of result.files) {
      const file = task.files.filter((path) => nameOf(path) === one.path).flatMap((path) => loaded(disk, path))[0];
      const found = file && (await signedFindings(file, root && root !== file ? [root] : [], today));
      if (found && "failure" in found) fail(one.path, `The history of “${one.path}” is not known: ${found.failure}`);
      // What was changed before it begins would pass for what was signed.
      else if (found?.isShallow) fail("", `The history is not known as a whole. ${cutOff}`);
      files.push(file && found && "findings" in found ? withFindings(one, file, found.findings, nameOf) : one);
    }
    for (const path of task.files) disk.release(path);
    yield { ...ran, result: { ...result, files } };
  }
}

function loaded(disk: Disk, path: string): LoadedFile[] {
  const file = disk.file(path);
  return "failure" in file ? [] : [file];
}

/** `users` are the schedules that use a file: who signed there signed for it. */
async function signedFindings(
  file: LoadedFile,
  users: readonly LoadedFile[],
  today: string,
): Promise<{ readonly findings: readonly Finding[]; readonly isShallow: boolean } | { readonly failure: string }> {
  const history = await historyOf(file.path, file);
  if ("failure" in history) return history;
  const findings = changedSinceSigned(file.model, await signedEdits(history, users), today);
  return { findings, isShallow: history.isShallow };
}

/** Each version, those that can hold a change of what was signed for with who had signed above. */
async function signedEdits(history: FileHistory, users: readonly LoadedFile[]): Promise<(Edit | SignedEdit)[]> {
  const edits: (Edit | SignedEdit)[] = [];
  for (const version of history.versions) {
    const [before] = isSuspect(version) ? version.before : [];
    edits.push(
      before ? { ...version, was: before.model, above: await signaturesAbove(history, before.commit, users) } : version,
    );
  }
  return edits;
}

/** Who had signed in the files that use this one, as they were then. */
async function signaturesAbove(
  { repository }: FileHistory,
  commit: string,
  users: readonly LoadedFile[],
): Promise<readonly Signature[]> {
  const names = users.flatMap(({ path }) => {
    const inside = repository.inside(path);
    return inside === undefined || /[\r\n]/.test(inside) ? [] : [`${commit}:${inside}`];
  });
  const objects = await repository.objects(names);
  if ("failure" in objects) return [];
  return objects.bodies.flatMap((bytes) => (bytes ? signaturesIn(modelOf(bytes)) : []));
}

function modelOf(bytes: Uint8Array): FileModel {
  const read = decode(bytes);
  return fileOfText("", "failure" in read ? "" : read.text).model;
}
