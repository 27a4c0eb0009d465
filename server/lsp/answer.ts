import {
  type CancellationToken,
  type DiagnosticServerCancellationData,
  LSPErrorCodes,
  ResponseError,
} from "vscode-languageserver";

/** The request was called off: a value of its own, never an empty answer. */
export const cancelled = (): ResponseError<never> => new ResponseError(LSPErrorCodes.RequestCancelled, "Called off.");

const changed = "The text has changed since this was asked.";

/** The text changed under the request. */
export const overtaken = (): ResponseError<never> => new ResponseError(LSPErrorCodes.ContentModified, changed);

/** The same for a request for findings: an editor would take any other code for a file without any, and blank it. */
export const askAgain = (): ResponseError<DiagnosticServerCancellationData> =>
  new ResponseError(LSPErrorCodes.ServerCancelled, changed, { retriggerRequest: true });

/** Where failures are told, with enough to find them again. */
export type Log = (line: string) => void;

/** Before a request is worked on: its text may be another by then. */
type Preparation = () => Promise<"ready" | "partly" | "outdated">;

export interface Asked<T> {
  readonly name: string;
  readonly path: string | undefined;
  version(): number | undefined;
  /** What is answered where the work fails. */
  failed(error: unknown): T;
  overtaken(): ResponseError<unknown>;
}

/**
 * Every request runs in here. One that fails is logged with its document and version and has its own answer; one that is
 * no longer wanted, or whose text has changed while it waited, says so.
 */
export async function answer<T>(
  asked: Asked<T>,
  token: CancellationToken,
  log: Log,
  prepare: Preparation | undefined,
  work: () => T | ResponseError<never>,
): Promise<T | ResponseError<never>> {
  try {
    if (prepare) {
      const before = asked.version();
      const state = await prepare();
      if (token.isCancellationRequested) return cancelled();
      if (state === "outdated" || asked.version() !== before) return asked.overtaken() as ResponseError<never>;
    }
    return work();
  } catch (error) {
    log(describe(asked, error));
    return asked.failed(error);
  }
}

function describe({ name, path, version }: Omit<Asked<unknown>, "failed">, error: unknown): string {
  const where = path === undefined ? "" : ` on ${path}, version ${version() ?? "on disk"}`;
  const what = error instanceof Error ? (error.stack ?? error.message) : String(error);
  return `${name} failed${where}: ${what}`;
}
