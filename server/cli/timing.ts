import { term } from "../text/terminal.ts";
import type { Terminal } from "./terminal.ts";

/** Says on standard error how long each phase took, where that was asked for. */
export class Timing {
  readonly #terminal: Terminal;
  readonly #wanted: boolean;
  readonly #start: number;
  #last: number;

  constructor(terminal: Terminal, wanted: boolean) {
    this.#terminal = terminal;
    this.#wanted = wanted;
    this.#start = terminal.now();
    this.#last = this.#start;
  }

  phase(name: string, note = ""): void {
    const now = this.#terminal.now();
    this.#say(name, now - this.#last, note);
    this.#last = now;
  }

  end(): void {
    this.#say("total", this.#terminal.now() - this.#start, "");
  }

  #say(name: string, time: number, note: string): void {
    const line = `${name.padEnd(8)}${time.toFixed(1).padStart(8)} ms  ${note}`;
    if (this.#wanted) this.#terminal.err(term`${line.trimEnd()}\n`);
  }
}
