import {
  type CancellationToken,
  type FullDocumentDiagnosticReport,
  LSPErrorCodes,
  ResponseError,
  type WorkspaceDiagnosticReport,
  type WorkspaceDocumentDiagnosticReport,
} from "vscode-languageserver";
import { canonical } from "../workspace/uri.ts";
import type { Checking } from "./checking.ts";
import type { Delivery } from "./delivery.ts";
import type { Service } from "./service.ts";

/** Files that nobody has opened are checked up to this number; the rest once they are opened. */
export const mostUnopened = 500;

/** The files whose findings are reported although nobody has opened them. */
const unopenedPaths = (workspace: Service["workspace"], delivery: Delivery): readonly string[] =>
  delivery.checksUnopened ? workspace.knownPaths.slice(0, mostUnopened) : [];

/** Whether anything is reported of a file. An editor asks once more as it closes one. */
export const isReported = (path: string, workspace: Service["workspace"], delivery: Delivery): boolean =>
  workspace.isOpen(path) || unopenedPaths(workspace, delivery).includes(path);

interface Sent {
  report(report: WorkspaceDiagnosticReport): void;
}

/**
 * Findings of the files nobody has opened. The request is held: what has changed is sent as it is found, and then nothing
 * until something changes on the disk, or a file is saved or closed. An editor asks for open files by themselves.
 */
export function workspaceFindings(
  { connection, workspace }: Pick<Service, "connection" | "workspace">,
  delivery: Delivery,
  checking: Checking,
): void {
  connection.languages.diagnostics.onWorkspace(async ({ previousResultIds }, token, _, stream?: Sent) => {
    const sent = new Map(previousResultIds.map(({ uri, value }) => [canonical(uri), value]));
    await workspace.indexed();
    for (;;) {
      const changed = delivery.changedAtRest(token);
      const items: WorkspaceDocumentDiagnosticReport[] = [];
      for await (const report of reports(sent, token)) {
        if (stream) stream.report({ items: [report] });
        else items.push(report);
      }
      if (items.length > 0) return { items };
      await changed;
      if (token.isCancellationRequested) throw new ResponseError(LSPErrorCodes.RequestCancelled, "Called off.");
    }
  });

  /** What is to be sent of the files that are not open, each noted as sent. */
  async function* reports(
    sent: Map<string, string>,
    token: CancellationToken,
  ): AsyncGenerator<FullDocumentDiagnosticReport & { uri: string; version: null }> {
    const paths = unopenedPaths(workspace, delivery);
    for (const path of paths) {
      if (token.isCancellationRequested) return;
      if (workspace.isOpen(path)) continue;
      const set = await unopened(path, token);
      if (!set || sent.get(path) === set.id) continue;
      sent.set(path, set.id);
      yield { kind: "full", uri: workspace.uri(path), version: null, resultId: set.id, items: [...set.items] };
    }
    const gone = new Map([...sent.keys()].map((path) => [path, workspace.uri(path)]));
    for (const [path, uri] of [...gone, ...delivery.takeGone()]) {
      if (paths.includes(path)) continue;
      sent.delete(path);
      if (!workspace.isOpen(path)) yield { kind: "full", uri, version: null, items: [] };
    }
  }

  async function unopened(path: string, token: CancellationToken) {
    await workspace.load(path);
    await checking.check(path, () => !token.isCancellationRequested);
    const snapshot = token.isCancellationRequested ? undefined : workspace.snapshot(path);
    return snapshot && delivery.setOf(snapshot);
  }
}
