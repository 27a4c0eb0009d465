import type { ClientCapabilities, Connection } from "vscode-languageserver";
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

  /** Once it is ready, the findings of a file are known; of one that nobody wants any more they may not be. */
  async check(path: string, isWanted: () => boolean): Promise<"ready" | "outdated"> {
    const snapshot = this.#workspace.snapshot(path);
    if (!snapshot) return "ready";
    const progress = this.#showsProgress
      ? new CheckProgress(this.#connection, this.#runtime, waysIn(snapshot))
      : undefined;
    const progressed = (ways: number): void => progress?.progressed(ways);
    try {
      const end = await this.#slicer.run(snapshot.check(), { isWanted, progressed });
      return end === "outdated" ? end : "ready";
    } finally {
      progress?.end();
    }
  }
}

const waysIn = ({ projects }: Snapshot): number =>
  projects.reduce(
    (sum, { installations }) =>
      sum +
      installations.reduce((all, { boards }) => all + boards.reduce((own, { board }) => own + board.ways.length, 0), 0),
    0,
  );
