import { l10n, Uri, ViewColumn, type WebviewPanel, window, workspace } from "vscode";
import { type WorksheetAnswer, type WorksheetQuestion, worksheetRequest } from "../server/lsp/protocol.ts";
import type { Server } from "./server.ts";

/** Shows the worksheet of the way or board the cursor is in, and offers it as a file to print or to carry on a phone. */
export async function showWorksheet(server: Server): Promise<void> {
  const editor = window.activeTextEditor;
  if (editor?.document.languageId !== "wayfile") {
    await window.showInformationMessage(l10n.t("Wayfile: open a schedule to make a worksheet of it."));
    return;
  }
  const { line, character } = editor.selection.active;
  const question: WorksheetQuestion = { uri: editor.document.uri.toString(), position: { line, character } };
  try {
    const sheet = await server.request<WorksheetAnswer>(worksheetRequest, question);
    const panel = window.createWebviewPanel(
      "wayfile.worksheet",
      sheet.title,
      { viewColumn: ViewColumn.Beside, preserveFocus: true },
      { enableScripts: false, localResourceRoots: [] },
    );
    panel.webview.html = sheet.html;
    // Not waited for: the offer stays as long as nobody answers it, and the sheet is there already.
    offerFile(sheet, panel, editor.document.uri).catch(report);
  } catch (error) {
    report(error);
  }
}

function report(error: unknown): void {
  window.showErrorMessage(`Wayfile: ${error instanceof Error ? error.message : String(error)}`);
}

async function offerFile({ title, html }: WorksheetAnswer, panel: WebviewPanel, schedule: Uri): Promise<void> {
  const save = l10n.t("Save to Print");
  const answer = await window.showInformationMessage(`${title}.`, save);
  if (answer !== save) return;
  const name = `${title.replace(/[^\p{L}\p{N}]+/gu, "-").replace(/^-|-$/g, "")}.html`;
  const folder = schedule.scheme === "file" ? Uri.joinPath(schedule, "..") : workspace.workspaceFolders?.[0]?.uri;
  const target = await window.showSaveDialog({
    ...(folder ? { defaultUri: Uri.joinPath(folder, name) } : {}),
    filters: { [l10n.t("Web page")]: ["html"] },
  });
  if (!target) return;
  await workspace.fs.writeFile(target, new TextEncoder().encode(html));
  panel.title = l10n.t("{0} (saved)", title);
}
