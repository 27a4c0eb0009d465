import { type CodeAction, commands, l10n, window, workspace } from "vscode";
import { blanksKind } from "../server/lsp/protocol.ts";

/** Writes what is still to be tested on the way the cursor is in, ready to fill. */
export async function addTests(): Promise<void> {
  const editor = window.activeTextEditor;
  if (editor?.document.languageId !== "wayfile") {
    await window.showInformationMessage(l10n.t("Wayfile: open a schedule and put the cursor in a way."));
    return;
  }
  const { uri } = editor.document;
  // Asked for and applied here rather than by the editor's own command, which does nothing while another view has the focus.
  const actions = await commands.executeCommand<CodeAction[]>(
    "vscode.executeCodeActionProvider",
    uri,
    editor.selection,
    blanksKind,
    1,
  );
  const edit = actions[0]?.edit;
  if (edit) await workspace.applyEdit(edit);
  else
    await window.showInformationMessage(
      l10n.t("Wayfile: nothing is left to be tested where the cursor is. Put it in a way that has tests to come."),
    );
}
