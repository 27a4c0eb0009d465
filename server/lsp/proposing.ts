import { type CodeAction, CodeActionKind, type Position } from "vscode-languageserver";
import type { Snapshot } from "../workspace/workspace.ts";
import { editOf } from "./convert.ts";
import { Part } from "./part.ts";

export const proposalKind = `${CodeActionKind.RefactorRewrite}.proposal`;

export const proposals = () => new Part(() => import("../features/proposal.ts"));
type Proposals = ReturnType<typeof proposals>["now"];

/** The action that writes a device and a cable into the way at the cursor. */
export function proposing(
  snapshot: Snapshot,
  at: Position,
  uri: string,
  { proposalEdits, proposalTitle }: Proposals,
): CodeAction[] {
  const segment = snapshot.positions.at(at)?.segment;
  const edits = segment ? proposalEdits(snapshot, segment) : [];
  if (!segment || edits.length === 0) return [];
  const changes = { [uri]: edits.map((edit) => editOf(snapshot.positions, segment, edit)) };
  return [{ title: proposalTitle, kind: proposalKind, edit: { changes } }];
}
