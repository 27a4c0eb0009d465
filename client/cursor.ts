import { Disposable, type TextEditor, window } from "vscode";
import { type CursorNote, cursorNote } from "../server/lsp/protocol.ts";
import type { Server } from "./server.ts";

/** Milliseconds without a key after which a line may be judged, though the cursor is still in it. */
const rest = 700;

/** Tells the server which line the cursor is in, so that it leaves the line that is being written in peace. */
export function followCursor(server: Server): Disposable {
  let timer: ReturnType<typeof setTimeout> | undefined;
  let last = "";
  const tell = (editor: TextEditor | undefined, rests = false): void => {
    clearTimeout(timer);
    if (!editor) return;
    const note: CursorNote = { uri: editor.document.uri.toString(), line: editor.selection.active.line, rests };
    const name = `${note.uri} ${note.line} ${rests}`;
    if (name !== last && server.notify(cursorNote, note)) last = name;
    if (!rests && editor.document.languageId === "wayfile") timer = setTimeout(() => tell(editor, true), rest);
  };
  server.onStarted(() => {
    last = "";
    tell(window.activeTextEditor);
  });
  return Disposable.from(
    window.onDidChangeTextEditorSelection(({ textEditor }) => tell(textEditor)),
    window.onDidChangeActiveTextEditor((editor) => tell(editor)),
    new Disposable(() => clearTimeout(timer)),
  );
}
