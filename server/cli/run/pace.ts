/** Long work says how far it is, and lets an interruption through. */
import { term } from "../../text/terminal.ts";
import type { Terminal } from "../terminal.ts";

/** Milliseconds before anything is said, from one word to the next on a terminal, and between two looks at what waits. */
const first = 1_000;
const next = 200;
const breath = 30;
/** In a file each word is a line of its own. */
const nextLine = 10_000;

export class Pace {
  readonly #terminal: Terminal;
  readonly #quiet: boolean;
  #said: number;
  #breathed: number;

  constructor(terminal: Terminal, quiet: boolean) {
    this.#terminal = terminal;
    this.#quiet = quiet;
    this.#breathed = terminal.now();
    this.#said = this.#breathed + first - this.#every;
  }

  get #every(): number {
    return this.#terminal.interactive ? next : nextLine;
  }

  /** Called between two pieces of work. Nothing to wait for where others were let in a moment ago. */
  breathe(status: () => string): Promise<void> | undefined {
    const now = this.#terminal.now();
    if (!this.#quiet && now - this.#said >= this.#every) {
      this.#said = now;
      this.#terminal.status(term`${status()}`);
    }
    if (now - this.#breathed < breath) return undefined;
    this.#breathed = now;
    return this.#terminal.breathe();
  }

  end(): void {
    this.#terminal.status(undefined);
  }
}
