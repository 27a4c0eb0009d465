/** Two versions of one schedule, as texts: so that any thread can compare them, and what comes of it be kept. */
import { hash } from "node:crypto";
import { Engine } from "../../model/engine.ts";
import { type Installation, installationsOf } from "../../model/installation.ts";
import { comparisonOf } from "../../reports/compare/comparison.ts";
import type { Sources } from "../../workspace/gather.ts";
import { gather } from "../../workspace/gather.ts";
import { fileOfText, type LoadedFile } from "../../workspace/loaded-file.ts";
import { changedMeanwhile } from "../write.ts";
import type { Cache } from "./cache.ts";
import type { TaskResult } from "./made.ts";

/** An installation of one version, with all it is made of. */
export interface VersionTexts {
  /** The file it is written in, and then all that this one uses. */
  readonly files: readonly [VersionFile, ...VersionFile[]];
  /** Which installation of that file it is; none of a file of boards alone. */
  readonly index: number | "part";
}

export interface VersionFile {
  /** From the folder or revision that was named. */
  readonly path: string;
  /** Missing where it could not be read. */
  readonly text?: string;
  /** What its lines `use`, and the file that is meant. */
  readonly uses: readonly (readonly [use: string, path: string])[];
}

/** All that a comparison follows from. */
export interface CompareTask {
  readonly old: VersionTexts;
  readonly now: VersionTexts;
  /** The file that holds parts of an installation that is not known. */
  readonly partOf?: string;
}

export const contentOfTask = (task: CompareTask): string => hash("sha256", JSON.stringify(task), "base64url");

/** With what the result is kept under; empty where results are not kept. */
export interface KeyedCompareTask extends CompareTask {
  readonly content: string;
}

/** Compares in whichever thread it is in. */
export function comparer(cache: Cache | undefined): (task: KeyedCompareTask) => TaskResult<"comparison"> {
  const engine = new Engine();
  return ({ old, now, partOf, content }) => {
    const [was, is] = [installationIn(old, engine), installationIn(now, engine)];
    if (!was || !is) return { failure: changedMeanwhile };
    const made = comparisonOf(
      { called: "", installation: was },
      { called: "", installation: is },
      partOf === undefined ? {} : { partOf },
    );
    cache?.write(content, "comparison", made);
    return made;
  };
}

/** How much one version holds. */
export function heldBy(version: VersionTexts): { readonly boards: number; readonly ways: number } {
  const boards = installationIn(version, new Engine())?.boards ?? [];
  return { boards: boards.length, ways: boards.reduce((sum, { board }) => sum + board.ways.length, 0) };
}

function installationIn({ files: given, index }: VersionTexts, engine: Engine): Installation | undefined {
  const sources = new Texts(given, engine);
  const root = sources.file(given[0].path);
  if ("failure" in root) return undefined;
  const { files, unread } = gather(root, sources);
  return installationsWritten(root, files, unread, engine)[index === "part" ? 0 : index];
}

/** Those that are written in the root; what is in none is one of its own. */
export const installationsWritten = (
  { model: { installations } }: LoadedFile,
  files: readonly LoadedFile[],
  unread: boolean,
  engine: Engine | undefined,
): readonly Installation[] =>
  installations.length === 0
    ? installationsOf([frame, ...files], unread, engine).slice(0, 1)
    : installationsOf(files, unread, engine).slice(0, installations.length);

/** What holds boards, or facts of its own, that are in no installation. */
const frame = fileOfText("", 'installation "" {\n}\n');

/** The files of one version, read as schedules as they are asked for. */
class Texts implements Sources {
  readonly engine: Engine;
  readonly #files: ReadonlyMap<string, VersionFile>;
  readonly #loaded = new Map<string, LoadedFile>();

  constructor(files: readonly VersionFile[], engine: Engine) {
    this.engine = engine;
    this.#files = new Map(files.map((one) => [one.path, one]));
  }

  file(path: string): LoadedFile | { readonly failure: string } {
    const text = this.#files.get(path)?.text;
    // Why it could not be read has been said to the person.
    if (text === undefined) return { failure: "" };
    const file = this.#loaded.get(path) ?? fileOfText(path, text);
    this.#loaded.set(path, file);
    return file;
  }

  resolve(from: string, use: string): string {
    return this.#files.get(from)?.uses.find(([said]) => said === use)?.[1] ?? use;
  }
}
