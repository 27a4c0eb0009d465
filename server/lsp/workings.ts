import type { CancellationToken } from "vscode-languageserver";
import { workingAt } from "../features/working.ts";
import { type WorkingAnswer, type WorkingQuestion, workingRequest } from "./protocol.ts";
import { badRequest, type Service } from "./service.ts";

interface About {
  readonly textDocument: { readonly uri: string };
  readonly position: WorkingQuestion["position"];
}

const none = badRequest("There is no installation here, so there is nothing to judge its circuits by.");

/** The working of what the cursor is in: a way, its board, or all of the installation. */
export function workings({ connection, ask, cursor }: Service): void {
  const answer = ask<About, WorkingAnswer | typeof none>(
    workingRequest,
    none,
    (snapshot, { position }) => workingAt(snapshot, position && cursor(snapshot, position)) ?? none,
  );
  connection.onRequest<WorkingAnswer, never>(
    workingRequest,
    async (question: Partial<WorkingQuestion> | undefined, token: CancellationToken) => {
      const { uri, position } = question ?? {};
      if (typeof uri !== "string") return badRequest("A working needs the address of its schedule.");
      return await answer({ textDocument: { uri }, position }, token);
    },
  );
}
