import { commands, type Uri, ViewColumn, window } from "vscode";

/**
 * Opens Markdown beside the schedule. The preview comes with the editor's own Markdown extension, which may be switched
 * off. Until that has been started its commands are in no list, so the only way to know is to call one.
 */
export async function openBeside(uri: Uri): Promise<void> {
  try {
    await commands.executeCommand("markdown.showPreviewToSide", uri);
  } catch {
    await window.showTextDocument(uri, { viewColumn: ViewColumn.Beside, preview: true, preserveFocus: true });
  }
}
