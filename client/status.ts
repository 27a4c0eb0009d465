/** How the way at the cursor stands, in the status bar: its least margin, and how much is missing. */
import {
  type Disposable,
  languages,
  StatusBarAlignment,
  type StatusBarItem,
  type TextEditor,
  ThemeColor,
  window,
} from "vscode";
import type { Placed } from "../server/lsp/placed.ts";
import { type ViewAnswer, type ViewQuestion, viewRequest } from "../server/lsp/view-protocol.ts";
import type { BoardRow } from "../server/views/board.ts";
import { shownOf } from "./shown.ts";
import { stateText, worst } from "./tree.ts";

interface Asked {
  request<Result>(method: string, parameters?: unknown): Promise<Result>;
}

/** Milliseconds the cursor rests before it is asked about. */
const rest = 150;

export function showStatus(server: Asked): Disposable[] {
  const item = window.createStatusBarItem("wayfile.way", StatusBarAlignment.Left, 5);
  item.name = "Wayfile: way at the cursor";
  item.command = "wayfile.liveView";
  let soon: ReturnType<typeof setTimeout> | undefined;
  let asked = 0;
  const show = async (editor: TextEditor): Promise<void> => {
    asked++;
    const mine = asked;
    const found = await wayAtCursor(server, editor);
    // Overtaken: the cursor is elsewhere by now.
    if (mine === asked) set(item, found);
  };
  const later = (editor: TextEditor | undefined): void => {
    clearTimeout(soon);
    if (editor?.document.languageId !== "wayfile") return item.hide();
    soon = setTimeout(() => void show(editor), rest);
  };
  later(window.activeTextEditor);
  return [
    item,
    { dispose: () => clearTimeout(soon) },
    window.onDidChangeActiveTextEditor(later),
    window.onDidChangeTextEditorSelection(({ textEditor }) => {
      if (textEditor === window.activeTextEditor) later(textEditor);
    }),
    languages.onDidChangeDiagnostics(({ uris }) => {
      const editor = window.activeTextEditor;
      if (editor && uris.some((uri) => uri.toString() === editor.document.uri.toString())) later(editor);
    }),
  ];
}

interface AtCursor {
  readonly board: string;
  readonly row: Placed<BoardRow>;
}

/** The way the cursor is in; nothing for a spare one and outside of ways. */
async function wayAtCursor(server: Asked, { document, selection }: TextEditor): Promise<AtCursor | undefined> {
  const { line, character } = selection.active;
  const question: ViewQuestion = { uri: document.uri.toString(), view: "board", position: { line, character } };
  const answer = await server.request<ViewAnswer>(viewRequest, question).catch(() => undefined);
  const rows = answer?.content?.kind === "board" ? answer.content.rows : [];
  const row = rows.find(({ mark }) => !mark.uri && line >= mark.line && line <= mark.last);
  // A way whose number is still to be written has no name to go by.
  if (!row || row.spare || row.id === "") return undefined;
  const findings = shownOf(row.findings, languages.getDiagnostics(document.uri));
  return { board: answer?.board ?? "", row: { ...row, findings } };
}

const signs: Readonly<Record<string, string>> = { error: "$(error) ", warning: "$(warning) " };

function set(item: StatusBarItem, found: AtCursor | undefined): void {
  if (!found) return item.hide();
  const { board, row } = found;
  const gravest = worst(row.findings) ?? "";
  item.text = `${signs[gravest] ?? ""}${board}/${row.id} ${stateText(row)}`.trim();
  item.tooltip = [row.title, row.least?.text ?? "", row.missing.length > 0 ? `Missing: ${row.missing.join(", ")}` : ""]
    .filter((text) => text !== "")
    .join("\n");
  item.backgroundColor = gravest === "error" ? new ThemeColor("statusBarItem.errorBackground") : undefined;
  item.show();
}
