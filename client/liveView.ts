/** The panel beside the text: asks the server for what is shown after every edit, and goes to a line when it is asked to. */
import {
  commands,
  type Disposable,
  languages,
  Range,
  Selection,
  type TextDocument,
  TextEditorRevealType,
  Uri,
  ViewColumn,
  type WebviewPanel,
  WorkspaceEdit,
  window,
  workspace,
} from "vscode";
import type { At } from "../server/lsp/placed.ts";
import {
  type EntryAnswer,
  entryRequest,
  type ViewAnswer,
  type ViewQuestion,
  viewRequest,
} from "../server/lsp/view-protocol.ts";
import { heard } from "./heard.ts";
import type { Entered, EnterMessage, FromPage, ToPage } from "./page/messages.ts";
import { pageHtml } from "./pageHtml.ts";

const liveViewType = "wayfile.live";

/** What the panel needs of the language server. */
interface Asked {
  request<Result>(method: string, parameters?: unknown): Promise<Result>;
}

/** There is one panel: it shows the schedule that was edited last. */
export class LiveView {
  readonly #server: Asked;
  readonly #extension: Uri;
  #panel: WebviewPanel | undefined;
  #listeners: Disposable[] = [];
  #document: Uri | undefined;
  #wanted: Pick<ViewQuestion, "view" | "board"> | undefined;
  #entering: Promise<void> = Promise.resolve();
  #asking = false;
  #again = false;
  #soon: ReturnType<typeof setTimeout> | undefined;

  constructor(server: Asked, extension: Uri) {
    this.#server = server;
    this.#extension = extension;
  }

  open(): void {
    const document = window.activeTextEditor?.document;
    if (document?.languageId === "wayfile") this.#document = document.uri;
    if (this.#panel) {
      this.#panel.reveal(undefined, true);
      this.#refresh();
      return;
    }
    this.take(
      window.createWebviewPanel(
        liveViewType,
        "Live Board",
        { viewColumn: ViewColumn.Beside, preserveFocus: true },
        this.#options,
      ),
    );
  }

  /** A panel that was just made, or that the editor has kept over a restart. */
  take(panel: WebviewPanel): void {
    this.#panel?.dispose();
    this.#panel = panel;
    panel.webview.options = this.#options;
    this.#document ??= lastSchedule()?.uri;
    this.#listeners = [
      panel.webview.onDidReceiveMessage((message: unknown) => void this.#hear(heard(message))),
      panel.onDidDispose(() => this.#closed(panel)),
      panel.onDidChangeViewState(() => this.#refresh()),
      workspace.onDidChangeTextDocument(({ document }) => this.#isShown(document.uri) && this.#refresh(0)),
      languages.onDidChangeDiagnostics(({ uris }) => uris.some((uri) => this.#isShown(uri)) && this.#refresh(30)),
      window.onDidChangeActiveTextEditor((editor) => {
        if (editor?.document.languageId !== "wayfile") return;
        this.#document = editor.document.uri;
        this.#refresh();
      }),
      window.onDidChangeTextEditorSelection(({ textEditor, selections: [selection] }) => {
        if (!selection || !this.#isShown(textEditor.document.uri)) return;
        this.#send({ kind: "cursor", line: selection.active.line });
        // The board that is shown follows the cursor, unless one was picked.
        if (this.#wanted?.board === undefined) this.#refresh(60);
      }),
    ];
    panel.webview.html = pageHtml(panel.webview, this.#extension);
  }

  get #options() {
    return { enableScripts: true, localResourceRoots: [Uri.joinPath(this.#extension, "dist")] };
  }

  #closed(panel: WebviewPanel): void {
    if (this.#panel !== panel) return;
    for (const listener of this.#listeners) listener.dispose();
    this.#listeners = [];
    this.#panel = undefined;
    this.#wanted = undefined;
  }

  #isShown(uri: Uri): boolean {
    return uri.toString() === this.#document?.toString();
  }

  #send(message: ToPage): void {
    void this.#panel?.webview.postMessage(message);
  }

  async #hear(message: FromPage | undefined): Promise<void> {
    if (!message) return;
    if (message.kind === "show") {
      this.#wanted = { view: message.view, ...(message.board === undefined ? {} : { board: message.board }) };
      this.#refresh(0);
    } else if (!this.#document) return;
    else if (message.kind === "reveal") await reveal(message.at, this.#document);
    else if (message.kind === "enter") this.#enter(message, this.#document);
    else await this.#undo(this.#document);
  }

  /** One reading after the other: each is an edit of the text that the one before has made. */
  #enter(message: EnterMessage, uri: Uri): void {
    this.#entering = this.#entering.then(async () => {
      const entered = await enterReading(this.#server, message, uri).catch((error: unknown) => ({
        problem: error instanceof Error ? error.message : String(error),
      }));
      const { row, column, text } = message;
      this.#send({ kind: "entered", entered: { row, column, text, ...entered } });
    });
  }

  /** The edits are the document's own, so undoing is the editor's; it undoes where the focus is, and gives it back. */
  async #undo(uri: Uri): Promise<void> {
    await this.#entering;
    const open = window.visibleTextEditors.find(({ document }) => document.uri.toString() === uri.toString());
    await window.showTextDocument(uri, { viewColumn: open?.viewColumn ?? ViewColumn.One });
    await commands.executeCommand("undo");
    this.#panel?.reveal(undefined, false);
  }

  /** Asks again once the messages about the edit are on their way. */
  #refresh(after = 10): void {
    clearTimeout(this.#soon);
    this.#soon = setTimeout(() => void this.#ask(), after);
  }

  /** One question at a time: what changes meanwhile is asked about when the answer is there. */
  async #ask(): Promise<void> {
    if (this.#asking) {
      this.#again = true;
      return;
    }
    const uri = this.#document;
    if (!this.#panel?.visible || !this.#wanted) return;
    if (!uri) return this.#send({ kind: "failed", message: "Open a schedule to see it here." });
    this.#asking = true;
    const { view } = this.#wanted;
    try {
      const editor = window.visibleTextEditors.find(({ document }) => this.#isShown(document.uri));
      const position = editor?.selection.active;
      const question: ViewQuestion = {
        uri: uri.toString(),
        ...this.#wanted,
        ...(position ? { position: { line: position.line, character: position.character } } : {}),
      };
      const answer = await this.#server.request<ViewAnswer>(viewRequest, question);
      this.#send({ kind: "view", view, answer });
      if (position) this.#send({ kind: "cursor", line: position.line });
    } catch (error) {
      // Overtaken by the next edit, which asks again.
      if (!this.#again) this.#send({ kind: "failed", message: error instanceof Error ? error.message : String(error) });
    } finally {
      this.#asking = false;
      if (this.#again) {
        this.#again = false;
        this.#refresh(0);
      }
    }
  }
}

/** Asked again where somebody typed meanwhile: an edit is of one version of a text. */
async function enterReading(
  server: Asked,
  message: EnterMessage,
  uri: Uri,
): Promise<Omit<Entered, "row" | "column" | "text">> {
  for (let attempt = 0; attempt < 5; attempt++) {
    const answer = await server.request<EntryAnswer>(entryRequest, { ...message, uri: uri.toString() });
    const { edit, version, written, stands, problem } = answer;
    if (!edit) return { ...(stands === undefined ? {} : { stands }), ...(problem === undefined ? {} : { problem }) };
    const target = answer.uri === undefined ? uri : Uri.parse(answer.uri, true);
    const document = await workspace.openTextDocument(target);
    if (version !== undefined && document.version !== version) continue;
    const { start, end } = edit.range;
    const change = new WorkspaceEdit();
    change.replace(target, new Range(start.line, start.character, end.line, end.character), edit.newText);
    if (await workspace.applyEdit(change)) return written === undefined ? {} : { written };
  }
  return { problem: "The schedule is being changed elsewhere: enter it again." };
}

const lastSchedule = (): TextDocument | undefined =>
  [window.activeTextEditor, ...window.visibleTextEditors].find((one) => one?.document.languageId === "wayfile")
    ?.document;

/** Goes to a line in the editor that shows it already, else in the first column. */
async function reveal({ line, character, uri }: At, shown: Uri): Promise<void> {
  const target = uri === undefined ? shown : Uri.parse(uri, true);
  const document = await workspace.openTextDocument(target);
  const open = window.visibleTextEditors.find(({ document: one }) => one === document);
  const editor = await window.showTextDocument(document, open?.viewColumn ?? ViewColumn.One);
  const place = new Selection(line, character, line, character);
  editor.selection = place;
  editor.revealRange(new Range(place.start, place.end), TextEditorRevealType.InCenterIfOutsideViewport);
}

export const liveViewCommands = (view: LiveView): Disposable[] => [
  commands.registerCommand("wayfile.liveView", () => view.open()),
  window.registerWebviewPanelSerializer(liveViewType, {
    deserializeWebviewPanel: async (panel: WebviewPanel) => view.take(panel),
  }),
];
