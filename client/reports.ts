import {
  type CancellationToken,
  type Disposable,
  EventEmitter,
  l10n,
  ProgressLocation,
  type TextDocumentContentProvider,
  Uri,
  window,
  workspace,
} from "vscode";
import {
  type RegisterAnswer,
  type ReportAnswer,
  type ReportQuestion,
  registerRequest,
  reportRequest,
} from "../server/lsp/protocol.ts";
import { openBeside } from "./beside.ts";
import type { Server } from "./server.ts";

export const reportScheme = "wayfile-report";

/** Milliseconds between two looks at a schedule that is being written. */
const pause = 400;

/** The register is of all folders, every other report of a schedule. */
type Asked = Pick<ReportQuestion, "kind" | "uri" | "of"> | { readonly kind: "register" };

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
        this.#timer = setTimeout(() => this.#follow(({ kind }) => kind !== "register"), pause);
      }),
      // All folders are too much for each key.
      workspace.onDidSaveTextDocument(
        ({ languageId }) => languageId === "wayfile" && this.#follow(({ kind }) => kind === "register"),
      ),
      workspace.onDidCloseTextDocument(({ uri }) => this.#texts.delete(uri.toString())),
    ];
  }

  async provideTextDocumentContent(uri: Uri, token?: CancellationToken): Promise<string> {
    const before = this.#texts.get(uri.toString());
    const asked = askedBy(uri);
    try {
      const { markdown } =
        asked.kind === "register"
          ? await this.#server.request<RegisterAnswer>(registerRequest, {}, token)
          : await this.#server.request<ReportAnswer>(reportRequest, asked, token);
      this.#texts.set(uri.toString(), markdown);
      return markdown;
    } catch (error) {
      // What was worked out last is of more use than a blank page while a line is half written.
      const why = error instanceof Error ? error.message : String(error);
      return before === undefined ? why : `> ${l10n.t("This is not up to date: {0}", why)}\n\n${before}`;
    }
  }

  #follow(which: (asked: Asked) => boolean): void {
    for (const { uri } of workspace.textDocuments) {
      if (uri.scheme === reportScheme && which(askedBy(uri))) this.#changed.fire(uri);
    }
  }

  /** Opens the register of the folders once it is read, which takes a while where there are many schedules. */
  async showRegister(): Promise<void> {
    const title = l10n.t("Reading the schedules for the register");
    const place = { location: ProgressLocation.Notification, title, cancellable: true };
    try {
      const found = await window.withProgress(place, async (_, token) => {
        const asked = this.#server.request<RegisterAnswer>(registerRequest, {}, token);
        const answer = await asked.catch((error: unknown) => {
          if (!token.isCancellationRequested) throw error;
          return undefined;
        });
        return answer?.installations;
      });
      if (found === 0) await window.showInformationMessage(l10n.t("Wayfile: no schedule in these folders."));
      else if (found !== undefined)
        await openBeside(addressOf(l10n.t("Register of installations"), { kind: "register" }));
    } catch (error) {
      await window.showErrorMessage(`Wayfile: ${error instanceof Error ? error.message : String(error)}`);
    }
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
