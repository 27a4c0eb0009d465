import type { ClientCapabilities, Connection, Range } from "vscode-languageserver";
import { memoOfBoards } from "../circuit/kept.ts";
import type { Segment } from "../syntax/split.ts";
import type { Snapshot, Workspace } from "../workspace/workspace.ts";
import { CheckProgress } from "./progress.ts";
import type { Runtime } from "./runtime.ts";
import { Slicer } from "./slicer.ts";

/** Works out what is found in files, in slices, and shows how far it is where that takes a while. */
export class Checking {
  readonly #connection: Connection;
  readonly #workspace: Workspace;
  readonly #runtime: Runtime;
  readonly #slicer: Slicer;
  readonly #lookedAt = new Map<string, Range>();
  /** Files of which something could be shown already, and first checks that are under way. */
  readonly #begun = new Set<string>();
  readonly #firsts = new Set<Promise<unknown>>();
  #showsProgress = false;

  constructor(connection: Connection, workspace: Workspace, runtime: Runtime) {
    this.#connection = connection;
    this.#workspace = workspace;
    this.#runtime = runtime;
    this.#slicer = new Slicer(runtime);
  }

  configure({ window }: ClientCapabilities): void {
    this.#showsProgress = window?.workDoneProgress ?? false;
  }

  /** What an editor shows of a file: it is checked before the rest. */
  looksAt(path: string, range: Range): void {
    this.#lookedAt.set(path, range);
  }

  forget(path: string): void {
    this.#lookedAt.delete(path);
    this.#begun.delete(path);
  }

  /**
   * Settles once every file that is checked for the first time has something to show: what is to be known of its folder
   * can wait for that.
   */
  async firstShown(): Promise<void> {
    for (let quiet = 0; quiet < fewTurns; quiet++) {
      if (this.#firsts.size > 0) quiet = 0;
      await Promise.allSettled(this.#firsts);
      await new Promise<void>((resolve) => this.#runtime.soon(resolve));
    }
  }

  /**
   * Once it is ready, the findings of a file are known; of one that nobody wants any more they may not be. `part`: some
   * of them will do, where all would keep a person waiting: what is found on the ways that are shown, or on their boards.
   */
  async check(path: string, isWanted: () => boolean, part?: CheckPart): Promise<CheckState> {
    if (this.#begun.has(path)) return await this.#check(path, isWanted, part);
    const first = this.#check(path, isWanted, part);
    this.#firsts.add(first);
    try {
      return await first;
    } finally {
      this.#begun.add(path);
      this.#firsts.delete(first);
    }
  }

  /** Work of another kind in the same slices. */
  through(steps: Iterable<unknown>, isWanted: () => boolean): Promise<void> {
    return this.#slicer.through(steps, isWanted);
  }

  async #check(path: string, isWanted: () => boolean, part: CheckPart | undefined): Promise<CheckState> {
    const snapshot = this.#workspace.snapshot(path);
    if (!snapshot) return "ready";
    const start = this.#runtime.now();
    const ways = waysIn(snapshot);
    if (ways > manyWays) this.#runtime.holdsMuch?.();
    const takesPart = part !== undefined && snapshot.projects.length === 1 && ways > fewWays;
    const progress = this.#showsProgress ? new CheckProgress(this.#connection, this.#runtime, ways) : undefined;
    try {
      const lookedAt = this.#segmentsLookedAt(snapshot);
      const end = await this.#slicer.run(snapshot.check(lookedAt), {
        isWanted,
        isEnough: () =>
          takesPart && this.#runtime.now() - start > patience && (!lookedAt || hasChecked[part](snapshot, lookedAt)),
        progressed: (ways) => progress?.progressed(ways),
      });
      if (end === "done" || (end === "enough" && part === "boards")) this.#runtime.checked?.(end === "enough");
      return end === "outdated" || end === "enough" ? states[end] : "ready";
    } finally {
      progress?.end();
    }
  }

  #segmentsLookedAt({ file, positions, projects }: Snapshot): ReadonlySet<Segment> | undefined {
    if (projects.every(({ known }) => known)) return undefined;
    const { start, end } = this.#lookedAt.get(file.path) ?? firstScreen;
    return new Set(positions.onLines(start.line, end.line));
  }
}

/** What is enough to be shown before the rest. */
export type CheckPart = "ways" | "boards";

const hasChecked: Readonly<Record<CheckPart, (snapshot: Snapshot, shown: ReadonlySet<Segment>) => boolean>> = {
  ways: (snapshot, shown) => snapshot.hasCheckedWays(shown),
  boards: (snapshot, shown) => snapshot.hasCheckedBoards(shown),
};

/** `partly`: what is found so far may be shown, and the check is to go on. */
export type CheckState = "ready" | "outdated" | "partly";

/** The file with what is found in it so far: asking for all would wait for it. */
export const inPart = (snapshot: Snapshot): Snapshot =>
  Object.create(snapshot, { findings: { get: () => snapshot.soFar ?? [] } });

const states = { outdated: "outdated", enough: "partly" } as const;

/** An editor opens its files in the messages behind the first, and each message has a turn. */
const fewTurns = 4;

/** A part of so few ways is not worth showing: all of them are checked a moment later. */
const fewWays = 40;

/** From here on what an engine keeps beyond need is felt by the other programs of a machine. */
const manyWays = 2_000;

/** Milliseconds after which what is looked at, once it is checked, is shown before the rest. */
const patience = 20;

/** Of a file that an editor has not said what it shows of. */
const firstScreen: Range = { start: { line: 0, character: 0 }, end: { line: 80, character: 0 } };

const waysIn = ({ projects }: Snapshot): number =>
  projects.reduce(
    (sum, { installations }) =>
      sum +
      installations.reduce(
        (all, installation) => all + waysOnBoards(installation).reduce((own, ways) => own + ways, 0),
        0,
      ),
    0,
  );

/** Counted without reading them. */
const waysOnBoards = memoOfBoards(({ segments }) =>
  segments.reduce((sum, { word }) => (word === "way" ? sum + 1 : sum), 0),
);
