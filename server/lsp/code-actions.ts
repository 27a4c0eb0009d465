import {
  type ClientCapabilities,
  type CodeAction,
  CodeActionKind,
  type CodeActionParams,
  type Position,
  type ServerCapabilities,
} from "vscode-languageserver";
import { type Action, actionsFor, findingsTouching } from "../features/actions.ts";
import { blankSnippet, blanksTitle, blankTests } from "../features/blanks.ts";
import { safeEdits } from "../features/fix-all.ts";
import type { Snapshot } from "../workspace/workspace.ts";
import { editOf, rangeOf, touching } from "./convert.ts";
import { proposalKind, proposals, proposing } from "./proposing.ts";
import { blanksKind } from "./protocol.ts";
import { findings, type Service } from "./service.ts";

/** Fixes of what stands where the cursor is. Only an editor that knows actions from commands is offered any. */
export function codeActions({ connection, ask, workspace }: Service, client: ClientCapabilities): ServerCapabilities {
  if (!client.textDocument?.codeAction?.codeActionLiteralSupport) return {};
  const snippets = client.workspace?.workspaceEdit?.snippetEditSupport ?? false;
  const part = proposals();
  connection.onCodeAction(
    ask(
      "textDocument/codeAction",
      [],
      (snapshot, { range, context }: CodeActionParams) => {
        const wants = (kind: string): boolean => !context.only || context.only.some((one) => isWithin(kind, one));
        const uri = workspace.uri(snapshot.file.path);
        const fresh = [
          ...(wants(proposalKind) ? proposing(snapshot, range.start, uri, part.now) : []),
          ...(wants(blanksKind) ? blanks(snapshot, range.start, uri, snippets) : []),
        ];
        // Only where it is asked for by name: it is meant for a key or for saving, not for the list at the cursor.
        if (context.only?.some((kind) => isWithin(fixAllKind, kind)))
          return fixAll(snapshot, workspace.uri(snapshot.file.path));
        if (!wants(CodeActionKind.QuickFix)) return fresh;
        const found = findingsTouching(snapshot, ({ spot }) => touching(rangeOf(snapshot.positions, spot), range));
        const shown = Map.groupBy(context.diagnostics, ({ code, range: { start } }) => `${start.line} ${code}`);
        const fixes = actionsFor(snapshot, found).map((action): CodeAction => {
          const { check, spot } = action.finding;
          const at = rangeOf(snapshot.positions, spot);
          const diagnostics = (shown.get(`${at.start.line} ${check}`) ?? []).filter((one) => touching(at, one.range));
          return {
            title: action.title,
            kind: CodeActionKind.QuickFix,
            ...(diagnostics.length > 0 ? { diagnostics } : {}),
            ...(action.safe ? { isPreferred: true } : {}),
            edit: { changes: { [workspace.uri(snapshot.file.path)]: edits(snapshot, action) } },
          };
        });
        return [...fixes, ...fresh];
      },
      { ...findings, part },
    ),
  );
  return { codeActionProvider: { codeActionKinds: [CodeActionKind.QuickFix, fixAllKind, proposalKind, blanksKind] } };
}

/** Whether a kind is another one, or one of its branches. */
const isWithin = (kind: string, of: string): boolean => of === "" || kind === of || kind.startsWith(`${of}.`);

const fixAllKind = `${CodeActionKind.SourceFixAll}.wayfile`;

function fixAll(snapshot: Snapshot, uri: string): CodeAction[] {
  const found = safeEdits(snapshot);
  if (found.length === 0) return [];
  const changes = { [uri]: found.map(({ segment, ...edit }) => editOf(snapshot.positions, segment, edit)) };
  return [{ title: "Put right what cannot change the meaning", kind: fixAllKind, edit: { changes } }];
}

function blanks(snapshot: Snapshot, at: Position, uri: string, snippets: boolean): CodeAction[] {
  const segment = snapshot.positions.at(at)?.segment;
  const edit = segment && (snippets ? blankSnippet : blankTests)(snapshot, segment);
  if (!segment || !edit) return [];
  const { range, newText } = editOf(snapshot.positions, segment, edit);
  const change = snippets
    ? {
        documentChanges: [
          {
            textDocument: { uri, version: snapshot.version ?? null },
            edits: [{ range, snippet: { kind: "snippet" as const, value: newText } }],
          },
        ],
      }
    : { changes: { [uri]: [{ range, newText }] } };
  return [{ title: blanksTitle, kind: blanksKind, edit: change }];
}

const edits = (snapshot: Snapshot, { segment, edits: own }: Action) =>
  own.map((edit) => editOf(snapshot.positions, segment, edit));
