/** The installations of the folders that are open, the most urgent first. */
import type { CancellationToken, ResponseError } from "vscode-languageserver";
import type { RegisterEntry, Urgency } from "../reports/register/register.ts";
import { cancelled } from "./answer.ts";
import type { Checking } from "./checking.ts";
import { Part } from "./part.ts";
import { type RegisterAnswer, type RegisteredInstallation, registerRequest } from "./protocol.ts";
import type { Runtime } from "./runtime.ts";
import type { Service } from "./service.ts";
import { mostUnopened } from "./workspace-findings.ts";

const listed = () =>
  new Part(async () => ({
    ...(await import("../reports/register/register.ts")),
    ...(await import("../results/register.ts")),
  }));
type Listed = ReturnType<typeof listed>["now"];

interface Row extends RegisterEntry {
  readonly uri: string;
}

export function register(
  { connection, workspace }: Pick<Service, "connection" | "workspace">,
  checking: Checking,
  runtime: Pick<Runtime, "today">,
): void {
  const part = listed();
  connection.onRequest(
    registerRequest,
    async (_: unknown, token: CancellationToken): Promise<RegisterAnswer | ResponseError<never>> => {
      await Promise.all([part.load(), workspace.indexed()]);
      const known = workspace.knownPaths;
      const paths = known.slice(0, mostUnopened);
      const shared = sharedFolders(known);
      const rows: Row[] = [];
      for (const path of paths) {
        rows.push(...(await rowsOf(path, shared, token)));
        if (token.isCancellationRequested) return cancelled();
      }
      const day = runtime.today();
      const installations = part.now.registerOf(rows, day).map((row) => installationOf(row, part.now));
      return { day, installations, left: known.length - paths.length };
    },
  );

  /** A schedule that another one uses stands in that one's rows. */
  async function rowsOf(path: string, shared: number, token: CancellationToken): Promise<readonly Row[]> {
    await workspace.load(path);
    if (workspace.roots(path).some((root) => root !== path)) return [];
    await checking.check(path, () => !token.isCancellationRequested);
    const project = token.isCancellationRequested ? undefined : workspace.snapshot(path)?.projects[0];
    const place = { file: fileName(path, shared), uri: workspace.uri(path) };
    return (project ? part.now.registerOfProject(project) : []).map((row) => ({ ...row, ...place }));
  }
}

const installationOf = (row: Row & Urgency, { particularsOf }: Listed): RegisteredInstallation => ({
  uri: row.uri,
  title: row.title,
  file: row.file,
  attention: row.attention,
  particulars: particularsOf(row),
  isFaulty: row.errors > 0,
});

/** Below the folder that all share; a text that was never saved is in none. */
const fileName = (path: string, shared: number): string =>
  (path.includes("/") ? path.split("/").slice(shared) : [path]).map(decoded).join("/");

/** How many parts at the beginning of their addresses, each a folder, all files share. */
function sharedFolders(paths: readonly string[]): number {
  const [first = "", ...others] = paths.filter((path) => path.includes("/"));
  const folders = first.split("/").slice(0, -1);
  const apart = folders.findIndex((_, at) => {
    const start = `${folders.slice(0, at + 1).join("/")}/`;
    return others.some((other) => !other.startsWith(start));
  });
  return apart === -1 ? folders.length : apart;
}

function decoded(part: string): string {
  try {
    return decodeURIComponent(part);
  } catch {
    return part;
  }
}
