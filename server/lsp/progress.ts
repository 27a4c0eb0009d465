import type { Connection, WorkDoneProgressServerReporter } from "vscode-languageserver";
import type { Runtime } from "./runtime.ts";

/** Milliseconds after which a person begins to wonder. */
const patience = 500;

/** Shows how far a check is, once it takes longer than a moment. It never stands in the way of the check. */
export class CheckProgress {
  readonly #connection: Connection;
  readonly #runtime: Pick<Runtime, "now">;
  readonly #start: number;
  readonly #all: number;
  #reporter: Promise<WorkDoneProgressServerReporter | undefined> | undefined;

  /** `all`: the ways there are. Some of them may be known already. */
  constructor(connection: Connection, runtime: Pick<Runtime, "now">, all: number) {
    this.#connection = connection;
    this.#runtime = runtime;
    this.#start = runtime.now();
    this.#all = all;
  }

  progressed(ways: number): void {
    if (this.#runtime.now() - this.#start < patience) return;
    const percentage = Math.min(99, Math.floor((100 * ways) / Math.max(this.#all, 1)));
    const message = `${ways} of ${this.#all} ways`;
    if (this.#reporter) void this.#reporter.then((reporter) => reporter?.report(percentage, message));
    else this.#reporter = this.#begin(percentage, message);
  }

  async #begin(percentage: number, message: string): Promise<WorkDoneProgressServerReporter | undefined> {
    const reporter = await this.#connection.window.createWorkDoneProgress().catch(() => undefined);
    reporter?.begin("Checking schedules", percentage, message, false);
    return reporter;
  }

  end(): void {
    void this.#reporter?.then((reporter) => reporter?.done());
  }
}
