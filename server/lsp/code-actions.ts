import {
  type ClientCapabilities,
  type CodeAction,
  CodeActionKind,
  type CodeActionParams,
  type ServerCapabilities,
} from "vscode-languageserver";
import { type Action, actionsFor, findingsTouching } from "../features/actions.ts";
import type { Snapshot } from "../workspace/workspace.ts";
import { editOf, rangeOf, touching } from "./convert.ts";
import type { Service } from "./service.ts";

/** Fixes of what stands where the cursor is. Only an editor that knows actions from commands is offered any. */
export function codeActions({ connection, ask, workspace }: Service, client: ClientCapabilities): ServerCapabilities {
  if (!client.textDocument?.codeAction?.codeActionLiteralSupport) return {};
  connection.onCodeAction(
    ask("textDocument/codeAction", [], (snapshot, { range, context }: CodeActionParams) => {
      if (context.only && !context.only.some((kind) => CodeActionKind.QuickFix.startsWith(kind))) return [];
      const found = findingsTouching(snapshot, ({ spot }) => touching(rangeOf(snapshot.positions, spot), range));
      return actionsFor(snapshot, found).map((action): CodeAction => {
        const diagnostics = context.diagnostics.filter(
          ({ code, range: at }) =>
            code === action.finding.check && touching(rangeOf(snapshot.positions, action.finding.spot), at),
        );
        return {
          title: action.title,
          kind: CodeActionKind.QuickFix,
          ...(diagnostics.length > 0 ? { diagnostics } : {}),
          ...(action.safe ? { isPreferred: true } : {}),
          edit: { changes: { [workspace.uri(snapshot.file.path)]: edits(snapshot, action) } },
        };
      });
    }),
  );
  return { codeActionProvider: { codeActionKinds: [CodeActionKind.QuickFix] } };
}

const edits = (snapshot: Snapshot, { segment, edits: own }: Action) =>
  own.map((edit) => editOf(snapshot.positions, segment, edit));
