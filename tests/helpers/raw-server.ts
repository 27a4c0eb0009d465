/** A server that is written to byte by byte: what no library of the protocol would send. */
import { spawn } from "node:child_process";
import { bundled } from "./program.ts";

interface Answer {
  readonly id: unknown;
  readonly result?: unknown;
  readonly error?: { readonly code: number; readonly message: string };
}

interface RawServer {
  write(bytes: string): void;
  /** A message's body in a sound frame. */
  frame(body: string): void;
  request(id: number, method: string, params?: unknown): void;
  notify(method: string, params?: unknown): void;
  end(): void;
  readonly exit: Promise<number | null>;
  out(): string;
  err(): string;
  /** Answers in the order in which they came. */
  answers(): Answer[];
  /** Settles once a request is answered. */
  answered(id: number): Promise<void>;
}

export async function rawServer(): Promise<RawServer> {
  const child = spawn(process.execPath, [await bundled("server/main.node.ts"), "--stdio"]);
  let out = "";
  let err = "";
  child.stdout.on("data", (data) => {
    out += data;
  });
  child.stderr.on("data", (data) => {
    err += data;
  });
  // It may have ended before all is written.
  child.stdin.on("error", () => {});
  const exit = new Promise<number | null>((resolve) => child.once("close", resolve));
  const write = (bytes: string): void => void child.stdin.write(bytes);
  const frame = (body: string): void => write(`Content-Length: ${Buffer.byteLength(body)}\r\n\r\n${body}`);
  const message = (content: object): void => frame(JSON.stringify({ jsonrpc: "2.0", ...content }));
  const answers = (): Answer[] =>
    out
      .split(/Content-Length: \d+\r\n\r\n/)
      .flatMap((body) => whole(body))
      .filter(({ id, method }) => id !== undefined && id !== null && method === undefined);
  return {
    write,
    frame,
    request: (id, method, params) => message({ id, method, ...(params === undefined ? {} : { params }) }),
    notify: (method, params) => message({ method, ...(params === undefined ? {} : { params }) }),
    end: () => child.stdin.end(),
    exit,
    out: () => out,
    err: () => err,
    answers,
    answered: (id) =>
      new Promise((resolve, reject) => {
        const look = (): void => {
          if (!answers().some((answer) => answer.id === id)) return;
          child.stdout.off("data", look);
          resolve();
        };
        child.stdout.on("data", look);
        look();
        void exit.then((code) => {
          look();
          reject(new Error(`The server ended with ${code} and did not answer ${id}. ${err}`));
        });
      }),
  };
}

/** A message that has come to its end. */
function whole(body: string): (Answer & { readonly method?: string })[] {
  try {
    return [JSON.parse(body)];
  } catch {
    return [];
  }
}
