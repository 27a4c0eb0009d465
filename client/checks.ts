import { type Disposable, l10n, languages, type TextDocumentContentProvider, Uri, window, workspace } from "vscode";
import { openBeside } from "./beside.ts";
import { checkOf } from "./shown.ts";

/** Findings link to the page of their check under this scheme. */
export const checkScheme = "wayfile-check";

type Pages = Readonly<Record<string, { readonly title: string; readonly page: string }>>;

/** The pages of the checks, from a file beside the extension that is read when the first of them is opened. */
export class CheckPages implements TextDocumentContentProvider {
  readonly #file: Uri;
  #pages: Promise<Pages> | undefined;

  constructor(extension: Uri) {
    this.#file = Uri.joinPath(extension, "dist/checks.json");
  }

  register(): Disposable {
    return workspace.registerTextDocumentContentProvider(checkScheme, this);
  }

  async provideTextDocumentContent({ path }: Uri): Promise<string> {
    const id = path.replace(/^\//, "").replace(/\.md$/, "");
    return (await this.#all())[id]?.page ?? l10n.t("There is no check “{0}”.", id);
  }

  /** Opens a page by its check, or lets one be chosen: those that speak at the cursor stand first. */
  async explain(check?: unknown): Promise<void> {
    const id = typeof check === "string" ? check : await this.#choose();
    if (id !== undefined) await openBeside(Uri.from({ scheme: checkScheme, path: `/${id}.md` }));
  }

  async #choose(): Promise<string | undefined> {
    const here = new Set(checksAtCursor());
    const all = Object.entries(await this.#all()).map(([id, { title }]) => ({ label: id, detail: title }));
    const items = [...all.filter(({ label }) => here.has(label)), ...all.filter(({ label }) => !here.has(label))];
    const chosen = await window.showQuickPick(items, { placeHolder: l10n.t("A check"), matchOnDetail: true });
    return chosen?.label;
  }

  #all(): Promise<Pages> {
    this.#pages ??= Promise.resolve(workspace.fs.readFile(this.#file)).then(
      (bytes) => JSON.parse(new TextDecoder().decode(bytes)) as Pages,
    );
    return this.#pages;
  }
}

function checksAtCursor(): string[] {
  const editor = window.activeTextEditor;
  if (!editor) return [];
  const { line } = editor.selection.active;
  return languages
    .getDiagnostics(editor.document.uri)
    .filter(({ range }) => range.start.line <= line && line <= range.end.line)
    .map(({ code }) => checkOf(code));
}
