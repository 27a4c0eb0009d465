import { type CodeAction, CodeActionKind, type Position } from "vscode-languageserver";
import { proposalEdits, proposalTitle } from "../features/proposal.ts";
import type { Snapshot } from "../workspace/workspace.ts";
import { editOf } from "./convert.ts";

export const proposalKind = `${CodeActionKind.RefactorRewrite}.proposal`;

/** The action that writes a device and a cable into the way at the cursor. */
export function proposing(snapshot: Snapshot, at: Position, uri: string): CodeAction[] {
  const segment = snapshot.positions.at(at)?.segment;
  const edits = segment ? proposalEdits(snapshot, segment) : [];
  if (!segment || edits.length === 0) return [];
  const changes = { [uri]: edits.map((edit) => editOf(snapshot.positions, segment, edit)) };
  return [{ title: proposalTitle, kind: proposalKind, edit: { changes } }];
}
