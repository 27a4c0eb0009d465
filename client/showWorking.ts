import { commands, EventEmitter, type TextDocumentContentProvider, Uri, ViewColumn, window } from "vscode";
import { type WorkingAnswer, type WorkingQuestion, workingRequest } from "../server/lsp/protocol.ts";
import type { Server } from "./server.ts";

export const workingScheme = "wayfile-working";

/** Lends the editor the workings that were asked for, as documents nobody can write in. */
export class Workings implements TextDocumentContentProvider {
  readonly #texts = new Map<string, string>();
  readonly #changed = new EventEmitter<Uri>();
  readonly onDidChange = this.#changed.event;

  provideTextDocumentContent(uri: Uri): string {
    return this.#texts.get(uri.toString()) ?? "";
  }

  /** Asked for again, a working that is still open shows what the schedule says now. */
  put(title: string, schedule: Uri, markdown: string): Uri {
    const path = `/${title.replace(/[^\p{L}\p{N}]+/gu, " ").trim()}.md`;
    const uri = Uri.from({ scheme: workingScheme, path, query: schedule.toString() });
    this.#texts.set(uri.toString(), markdown);
    this.#changed.fire(uri);
    return uri;
  }
}

/** Sets out the calculation of the way or board the cursor is in, beside the schedule. */
export async function showWorking(server: Server, workings: Workings): Promise<void> {
  const editor = window.activeTextEditor;
  if (editor?.document.languageId !== "wayfile") {
    await window.showInformationMessage("Wayfile: open a schedule to see its working.");
    return;
  }
  const { line, character } = editor.selection.active;
  const question: WorkingQuestion = { uri: editor.document.uri.toString(), position: { line, character } };
  try {
    const { title, markdown } = await server.request<WorkingAnswer>(workingRequest, question);
    const uri = workings.put(title, editor.document.uri, markdown);
    await openBeside(uri);
  } catch (error) {
    await window.showErrorMessage(`Wayfile: ${error instanceof Error ? error.message : String(error)}`);
  }
}

/**
 * The preview comes with the editor's own Markdown extension, which may be switched off. Until that has been started
 * its commands are in no list, so the only way to know is to call one.
 */
async function openBeside(uri: Uri): Promise<void> {
  try {
    await commands.executeCommand("markdown.showPreviewToSide", uri);
  } catch {
    await window.showTextDocument(uri, { viewColumn: ViewColumn.Beside, preview: true, preserveFocus: true });
  }
}
