import { type CancellationToken, LSPErrorCodes, ResponseError } from "vscode-languageserver";

/** The request was called off, or the text changed under it: a value of its own, never an empty answer. */
const cancelled = (): ResponseError<never> => new ResponseError(LSPErrorCodes.RequestCancelled, "Called off.");
const overtaken = (): ResponseError<never> =>
  new ResponseError(LSPErrorCodes.ContentModified, "The text has changed since this was asked.");

/** Where failures are told, with enough to find them again. */
export type Log = (line: string) => void;

/** What a request is about, for the log and to see whether it was overtaken. */
export interface Asked {
  readonly name: string;
  readonly path: string | undefined;
  version(): number | undefined;
}

/**
 * Every request runs in here. One that fails is logged with its document and version and answers neutrally; one that is
 * no longer wanted, or whose text has changed while it waited, says so.
 */
export async function answer<T>(
  asked: Asked,
  token: CancellationToken,
  neutral: T,
  log: Log,
  prepare: (() => Promise<void>) | undefined,
  work: () => T | ResponseError<never>,
): Promise<T | ResponseError<never>> {
  try {
    if (prepare) {
      const before = asked.version();
      await prepare();
      if (token.isCancellationRequested) return cancelled();
      if (asked.version() !== before) return overtaken();
    }
    return work();
  } catch (error) {
    log(describe(asked, error));
    return neutral;
  }
}

function describe({ name, path, version }: Asked, error: unknown): string {
  const where = path === undefined ? "" : ` on ${path}, version ${version() ?? "on disk"}`;
  const what = error instanceof Error ? (error.stack ?? error.message) : String(error);
  return `${name} failed${where}: ${what}`;
}
