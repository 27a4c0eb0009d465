/** `check --history`: recorded readings that somebody signed for and that say something else since. */

import type { Version } from "../features/file-versions.ts";
import type { FileModel } from "../model/file.ts";
import { type Entry, entriesOfFile } from "../readings/entries.ts";
import { addressBefore } from "../reports/compare/records.ts";
import { cutOff } from "../reports/history/report.ts";
import { breaksRecord, keeps, type Signature, signatureFor, signaturesIn } from "../reports/history/signed.ts";
import type { FileResult } from "../results/result.ts";
import { withFindings } from "../results/schedule.ts";
import { signedReadingChanged } from "../rules/frame/history-checks.ts";
import { type Finding, findingOf, wordSpot } from "../rules/frame/rule.ts";
import { decode } from "../text/decode.ts";
import { fileOfText, type LoadedFile } from "../workspace/loaded-file.ts";
import { type FileHistory, historyOf } from "./file-history.ts";
import type { Disk } from "./files.ts";
import type { Names } from "./names.ts";
import type { Ran } from "./run/run.ts";

/**
 * The same results with what was changed since it was signed for. A file whose history is not known is a sentence among
 * `failures`, once.
 */
export async function* withHistory(
  results: AsyncIterable<Ran>,
  disk: Disk,
  { nameOf }: Names,
  failures: string[],
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
      const found = file && (await signedFindings(file, root && root !== file ? [root] : []));
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
): Promise<{ readonly findings: readonly Finding[]; readonly isShallow: boolean } | { readonly failure: string }> {
  const history = await historyOf(file.path, file);
  if ("failure" in history) return history;
  return { findings: await changedSince(file, history, users), isShallow: history.isShallow };
}

interface Broken {
  readonly old: Entry;
  readonly now: Entry | undefined;
  readonly version: Version;
  readonly signature: Signature;
  /** Where the reading would be in the present version. */
  readonly at: string;
}

async function changedSince(file: LoadedFile, history: FileHistory, users: readonly LoadedFile[]): Promise<Finding[]> {
  const present = entriesOfFile(file.model);
  const broken = new Map<string, Broken>();
  // From the latest to the first, so that the first change after a signature is the one that stays.
  for (const [index, version] of history.versions.entries()) {
    const suspects = version.changes.filter(breaksRecord);
    if (suspects.length === 0) continue;
    const [before] = version.before;
    if (!before) continue;
    const above = await signaturesAbove(history, before.commit, users);
    for (const { old, now } of suspects) {
      const signature = old && signatureFor(old, before.model, above);
      if (!old || !signature) continue;
      const at = presentAddress(old.at, history.versions.slice(0, index + 1).toReversed());
      if (!keeps(present, { ...old, at })) broken.set(at, { old, now, version, signature, at });
      else broken.delete(at);
    }
  }
  return [...broken.values()].flatMap((one) => findingFor(one, present));
}

/** An address under the names its place took since. */
function presentAddress(at: string, later: readonly Version[]): string {
  return later.reduce((now, { moved }) => addressBefore(now, new Map([...moved].map(([to, from]) => [from, to]))), at);
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

/** On the reading as it is now; where it is gone, on the circuit that lost it. A circuit that is gone has no line. */
function findingFor({ old, now, version, signature, at }: Broken, present: readonly Entry[]): Finding[] {
  const entry = present.find((one) => one.at === at);
  const place = at.split(" · ", 1)[0];
  const spot = entry ?? present.find((one) => one.at === place);
  if (!spot) return [];
  const said = entry?.shown ?? now?.shown;
  const by =
    version.commit === undefined ? "not committed yet" : `by ${version.by} on ${version.on}, commit ${version.commit}`;
  const happened = said === undefined ? "it is gone now" : `it is ${said} now`;
  const message = `${at} was ${old.shown} when ${signature.by} signed for it on ${signature.on}; ${happened} (${by}). Restore it, or keep it with “was” and the reason.`;
  return [findingOf(signedReadingChanged, wordSpot(spot.fact), { message })];
}
