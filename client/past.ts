/**
 * A schedule beside a revision of itself: the editor's own comparison, with what each line was, its limit and margin
 * behind the lines and on hover; and the history of the reading at the cursor as a document beside it.
 */
import {
  commands,
  type DecorationOptions,
  Disposable,
  EventEmitter,
  l10n,
  MarkdownString,
  Range,
  type TextDocumentContentProvider,
  type TextEditor,
  ThemeColor,
  Uri,
  window,
  workspace,
} from "vscode";
import {
  type BesideAnswer,
  besideRequest,
  type PastAnswer,
  pastRequest,
  type RevisionsAnswer,
  revisionsRequest,
  type TimelineAnswer,
  timelineRequest,
} from "../server/lsp/past-protocol.ts";
import { openBeside } from "./beside.ts";
import type { Server } from "./server.ts";

const pastScheme = "wayfile-past";
const pagesScheme = "wayfile-history";

/** Milliseconds between two looks at a schedule that is being written. */
const pause = 500;

export class Past {
  readonly #server: Server;
  readonly #texts = new Texts();
  readonly #pages = new Texts();
  /** The revision each schedule is beside. */
  readonly #beside = new Map<string, string>();
  readonly #shown = new Map<string, DecorationOptions[]>();
  readonly #mark = window.createTextEditorDecorationType({
    before: { color: new ThemeColor("editorCodeLens.foreground"), margin: "0 0.6em 0 1em", fontStyle: "italic" },
    overviewRulerColor: new ThemeColor("editorOverviewRuler.modifiedForeground"),
  });
  #timer: ReturnType<typeof setTimeout> | undefined;

  constructor(server: Server) {
    this.#server = server;
  }

  register(): Disposable {
    return Disposable.from(
      this.#mark,
      workspace.registerTextDocumentContentProvider(pastScheme, this.#texts),
      workspace.registerTextDocumentContentProvider(pagesScheme, this.#pages),
      window.onDidChangeVisibleTextEditors(() => this.#paintAll()),
      workspace.onDidChangeTextDocument(({ document }) => {
        if (!this.#beside.has(document.uri.toString())) return;
        clearTimeout(this.#timer);
        this.#timer = setTimeout(() => void this.#look(document.uri), pause);
      }),
      workspace.onDidCloseTextDocument(({ uri }) => this.#forget(uri)),
      commands.registerCommand("wayfile.compareWithRevision", (about?: unknown, revision?: unknown) =>
        this.#said(() => this.#compare(addressOf(about), revision)),
      ),
      commands.registerCommand("wayfile.compareInWords", (about?: unknown, revision?: unknown) =>
        this.#said(() => this.#inWords(addressOf(about), revision)),
      ),
      commands.registerCommand("wayfile.stopComparing", () => this.#stop()),
      commands.registerCommand("wayfile.timeline", () => this.#said(() => this.#timeline())),
    );
  }

  async #stop(): Promise<void> {
    if (this.#beside.size === 0) {
      await window.showInformationMessage(l10n.t("Wayfile: no schedule is shown beside a revision."));
      return;
    }
    for (const one of this.#beside.keys()) this.#forget(Uri.parse(one));
    this.#paintAll();
  }

  async #said(work: () => Promise<void>): Promise<void> {
    try {
      await work();
    } catch (error) {
      await window.showErrorMessage(`Wayfile: ${error instanceof Error ? error.message : String(error)}`);
    }
  }

  async #compare(uri: Uri | undefined, given: unknown): Promise<void> {
    const revision = await this.#revision(uri, given);
    if (!uri || revision === undefined) return;
    const { text } = await this.#server.request<PastAnswer>(pastRequest, { uri: uri.toString(), revision });
    const past = Uri.from({
      scheme: pastScheme,
      path: uri.path,
      query: JSON.stringify({ revision, uri: uri.toString() }),
    });
    this.#texts.set(past, text);
    this.#beside.set(uri.toString(), revision);
    const name = uri.path.replace(/.*\//, "");
    await commands.executeCommand("vscode.diff", past, uri, l10n.t("{0}: {1} and now", name, revision));
    await this.#look(uri);
  }

  async #inWords(uri: Uri | undefined, given: unknown): Promise<void> {
    const revision = await this.#revision(uri, given);
    if (!uri || revision === undefined) return;
    const { title, markdown } = await this.#server.request<BesideAnswer>(besideRequest, {
      uri: uri.toString(),
      revision,
    });
    await this.#open(title, markdown, { uri: uri.toString(), revision });
  }

  async #timeline(): Promise<void> {
    const editor = window.activeTextEditor;
    if (!editor || !addressOf(undefined)) throw new Error(missingFile());
    const { line, character } = editor.selection.active;
    const uri = editor.document.uri.toString();
    const question = { uri, position: { line, character } };
    const { title, markdown } = await this.#server.request<TimelineAnswer>(timelineRequest, question);
    await this.#open(title, markdown, question);
  }

  async #open(title: string, markdown: string, about: object): Promise<void> {
    const path = `/${title.replace(/[^\p{L}\p{N}]+/gu, " ").trim()}.md`;
    const page = Uri.from({ scheme: pagesScheme, path, query: JSON.stringify(about) });
    this.#pages.set(page, markdown);
    await openBeside(page);
  }

  /** The revision that was given, or the one a person chooses: of those that changed the file, or by any name. */
  async #revision(uri: Uri | undefined, given: unknown): Promise<string | undefined> {
    if (!uri) throw new Error(missingFile());
    if (typeof given === "string") return given;
    const { revisions } = await this.#server.request<RevisionsAnswer>(revisionsRequest, { uri: uri.toString() });
    const other = { label: l10n.t("Another revision…"), description: l10n.t("a branch, a tag, HEAD~3"), id: "" };
    const chosen = await window.showQuickPick(
      [
        ...revisions.map(({ id, author, when, subject }) => ({
          label: subject,
          description: `${id.slice(0, 8)}  ${when.slice(0, 10)}  ${author}`,
          id,
        })),
        other,
      ],
      { title: l10n.t("Compare with which revision?"), matchOnDescription: true },
    );
    if (!chosen) return undefined;
    if (chosen.id !== "") return chosen.id.slice(0, 8);
    return (await window.showInputBox({ title: l10n.t("Revision"), value: "HEAD~1" })) || undefined;
  }

  async #look(uri: Uri): Promise<void> {
    const key = uri.toString();
    const revision = this.#beside.get(key);
    if (revision === undefined) return;
    // What was shown stays while a line is half written.
    const answer = await this.#server
      .request<BesideAnswer>(besideRequest, { uri: key, revision })
      .catch(() => undefined);
    if (!answer || this.#beside.get(key) !== revision) return;
    const document = workspace.textDocuments.find((one) => one.uri.toString() === key);
    const shown = answer.lines.flatMap((one) => {
      if (!document || one.line >= document.lineCount) return [];
      const { end } = document.lineAt(one.line).range;
      return [decorationOf(one, new Range(end, end))];
    });
    this.#shown.set(key, shown);
    this.#paintAll();
  }

  #paintAll(): void {
    for (const editor of window.visibleTextEditors) this.#paint(editor);
  }

  #paint(editor: TextEditor): void {
    if (editor.document.languageId !== "wayfile") return;
    editor.setDecorations(this.#mark, this.#shown.get(editor.document.uri.toString()) ?? []);
  }

  #forget(uri: Uri): void {
    this.#texts.delete(uri);
    this.#pages.delete(uri);
    this.#beside.delete(uri.toString());
    this.#shown.delete(uri.toString());
  }
}

function decorationOf({ text, detail, isGrave }: BesideAnswer["lines"][number], end: Range): DecorationOptions {
  const hover = new MarkdownString();
  for (const one of detail) hover.appendText(one).appendMarkdown("\n\n");
  return {
    range: end,
    hoverMessage: hover,
    renderOptions: {
      // Ahead of the hints, which would push it out of a narrow comparison.
      before: { contentText: text, ...(isGrave ? { color: new ThemeColor("editorError.foreground") } : {}) },
    },
  };
}

/** A command is given an address, a file of the source control view, or nothing: then it is the schedule in the editor. */
function addressOf(about: unknown): Uri | undefined {
  if (about instanceof Uri) return about;
  if (typeof about === "string") return Uri.parse(about);
  if (typeof about === "object" && about && "resourceUri" in about && about.resourceUri instanceof Uri)
    return about.resourceUri;
  const document = window.activeTextEditor?.document;
  return document?.languageId === "wayfile" && document.uri.scheme === "file" ? document.uri : undefined;
}

/** Why there is nothing to compare: a schedule that was never saved has no revisions. */
const missingFile = (): string =>
  window.activeTextEditor?.document.languageId === "wayfile"
    ? l10n.t("save the schedule first: only a file has revisions.")
    : l10n.t("open a schedule first.");

/** Documents that nobody can write in. */
class Texts implements TextDocumentContentProvider {
  readonly #texts = new Map<string, string>();
  readonly #changed = new EventEmitter<Uri>();
  readonly onDidChange = this.#changed.event;

  set(uri: Uri, text: string): void {
    this.#texts.set(uri.toString(), text);
    this.#changed.fire(uri);
  }

  delete(uri: Uri): void {
    this.#texts.delete(uri.toString());
  }

  provideTextDocumentContent(uri: Uri): string {
    return (
      this.#texts.get(uri.toString()) ?? l10n.t("Ask for this again: it is not kept from one session to the next.")
    );
  }
}
