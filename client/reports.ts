import { type Disposable, EventEmitter, l10n, type TextDocumentContentProvider, Uri, window, workspace } from "vscode";
import { type ReportAnswer, type ReportQuestion, reportRequest } from "../server/lsp/protocol.ts";
import { openBeside } from "./beside.ts";
import type { Server } from "./server.ts";

const reportScheme = "wayfile-report";

/** Milliseconds between two looks at a schedule that is being written. */
const pause = 400;

type Asked = Pick<ReportQuestion, "kind" | "uri" | "of">;

/** Lends the editor reports as documents nobody can write in. One that is open follows its schedule. */
export class Reports implements TextDocumentContentProvider {
  readonly #server: Server;
  readonly #changed = new EventEmitter<Uri>();
  readonly onDidChange = this.#changed.event;
  readonly #texts = new Map<string, string>();
  #timer: ReturnType<typeof setTimeout> | undefined;

  constructor(server: Server) {
    this.#server = server;
  }

  register(): Disposable[] {
    return [
      this.#changed,
      workspace.registerTextDocumentContentProvider(reportScheme, this),
      workspace.onDidChangeTextDocument(({ document }) => {
        if (document.languageId !== "wayfile") return;
        clearTimeout(this.#timer);
        this.#timer = setTimeout(() => this.#follow(), pause);
      }),
      workspace.onDidCloseTextDocument(({ uri }) => this.#texts.delete(uri.toString())),
    ];
  }

  async provideTextDocumentContent(uri: Uri): Promise<string> {
    const before = this.#texts.get(uri.toString());
    try {
      const { markdown } = await this.#server.request<ReportAnswer>(reportRequest, askedBy(uri));
      this.#texts.set(uri.toString(), markdown);
      return markdown;
    } catch (error) {
      // What was worked out last is of more use than a blank page while a line is half written.
      const why = error instanceof Error ? error.message : String(error);
      return before === undefined ? why : `> ${l10n.t("This is not up to date: {0}", why)}\n\n${before}`;
    }
  }

  #follow(): void {
    for (const { uri } of workspace.textDocuments) if (uri.scheme === reportScheme) this.#changed.fire(uri);
  }

  /** Opens a report of what `of` names, or else of what the cursor is in. */
  async show(kind: ReportQuestion["kind"], about?: { readonly uri?: string; readonly of?: string }): Promise<void> {
    const editor = window.activeTextEditor;
    const uri = about?.uri ?? (editor?.document.languageId === "wayfile" ? editor.document.uri.toString() : undefined);
    if (uri === undefined) {
      await window.showInformationMessage(l10n.t("Wayfile: open a schedule first."));
      return;
    }
    const { line = 0, character = 0 } = editor?.selection.active ?? {};
    const question: ReportQuestion = {
      kind,
      uri,
      ...(about?.of === undefined ? { position: { line, character } } : { of: about.of }),
    };
    try {
      const { title, of } = await this.#server.request<ReportAnswer>(reportRequest, question);
      await openBeside(addressOf(title, { kind, uri, ...(of === undefined ? {} : { of }) }));
    } catch (error) {
      await window.showErrorMessage(`Wayfile: ${error instanceof Error ? error.message : String(error)}`);
    }
  }
}

/** The address says what is asked, so that a report is there again after a restart. */
function addressOf(title: string, asked: Asked): Uri {
  const path = `/${title.replace(/[^\p{L}\p{N}]+/gu, " ").trim()}.md`;
  return Uri.from({ scheme: reportScheme, path, query: JSON.stringify(asked) });
}

const askedBy = (uri: Uri): Asked => JSON.parse(uri.query) as Asked;
