/** Runs a command in this process, in a folder, and keeps what it wrote. */
import { join } from "node:path";
import { main } from "../../server/cli/main.ts";
import type { Terminal } from "../../server/cli/terminal.ts";

export interface Ran {
  readonly code: number;
  readonly out: string;
  readonly err: string;
  /** What was written that is no text. */
  readonly bytes?: Uint8Array;
}

export interface RunOptions {
  readonly input?: string | Uint8Array;
  readonly colour?: boolean;
  /** Columns of the window. */
  readonly width?: number;
  /** What long work says, and when it is interrupted: each time it lets others in is asked. */
  readonly clock?: () => number;
  readonly interrupted?: () => boolean;
  readonly threads?: Terminal["threads"];
  readonly cache?: Terminal["cache"];
}

export async function runAt(cwd: string, options: RunOptions, args: readonly string[]): Promise<Ran> {
  const { input = "", colour = false, width, clock = () => 0, interrupted = () => false } = options;
  let stop = (): void => {};
  let out = "";
  let err = "";
  let bytes: Uint8Array | undefined;
  const code = await main(args, {
    cwd,
    colour,
    width,
    program: "wayfile",
    script: join(import.meta.dirname, "../../server/main.cli.ts"),
    out: ({ text }) => {
      out += text;
    },
    err: ({ text }) => {
      err += text;
    },
    data: (text) => {
      out += text;
    },
    bytes: (content) => {
      bytes = content;
    },
    today: () => "2026-05-04",
    input: async () => (typeof input === "string" ? new TextEncoder().encode(input) : input),
    now: clock,
    interactive: false,
    status: (text) => {
      if (text) err += `${text.text}\n`;
    },
    onInterrupt: (callback) => {
      stop = callback;
      return () => {
        stop = () => {};
      };
    },
    breathe: async () => {
      await new Promise((resolve) => setImmediate(resolve));
      if (interrupted()) stop();
    },
    threads: options.threads,
    cache: options.cache,
  });
  return { code, out, err, ...(bytes ? { bytes } : {}) };
}
