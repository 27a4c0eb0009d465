/**
 * Hints of what is over a limit, in the colour of errors. An editor has one colour for all hints, so these are taken out of
 * its list and set as decorations, which look alike but for that.
 */
import {
  type DecorationOptions,
  Disposable,
  type InlayHint,
  Range,
  type TextDocument,
  ThemeColor,
  window,
  workspace,
} from "vscode";

/** A hint as the client library hands it on: with what the server put beside it. */
type Hint = InlayHint & { readonly data?: { readonly isOver?: boolean } };

export class OverLimits {
  readonly #decoration = window.createTextEditorDecorationType({
    after: {
      color: new ThemeColor("editorError.foreground"),
      backgroundColor: new ThemeColor("editorInlayHint.background"),
      margin: "0 0 0 0.4em",
    },
  });
  readonly #shown = new Map<string, Map<number, DecorationOptions>>();

  register(): Disposable {
    return Disposable.from(
      this.#decoration,
      window.onDidChangeVisibleTextEditors(() => this.#paintAll()),
      // The editor moves what stands below an edit by itself, and asks for the hints of these lines again.
      workspace.onDidChangeTextDocument(({ document, contentChanges }) => {
        const lines = this.#shown.get(document.uri.toString());
        const first = Math.min(...contentChanges.map(({ range }) => range.start.line));
        for (const line of lines?.keys() ?? []) if (line >= first) lines?.delete(line);
      }),
      workspace.onDidCloseTextDocument(({ uri }) => this.#shown.delete(uri.toString())),
    );
  }

  /** The hints the editor is to show itself. The others are set by this. */
  take(document: TextDocument, view: Range, hints: readonly Hint[] | null | undefined): InlayHint[] | undefined {
    if (!hints) return undefined;
    const over = hints.filter(({ data }) => data?.isOver);
    const key = document.uri.toString();
    const lines = this.#shown.get(key) ?? new Map<number, DecorationOptions>();
    for (const line of lines.keys()) if (view.start.line <= line && line <= view.end.line) lines.delete(line);
    for (const { position, label, tooltip } of over) {
      const text = typeof label === "string" ? label : label.map(({ value }) => value).join("");
      lines.set(position.line, {
        range: new Range(position, position),
        renderOptions: { after: { contentText: text } },
        ...(tooltip === undefined ? {} : { hoverMessage: tooltip }),
      });
    }
    this.#shown.set(key, lines);
    this.#paint(document);
    return hints.filter((hint) => !over.includes(hint));
  }

  #paint(document: TextDocument): void {
    const lines = this.#shown.get(document.uri.toString());
    if (!lines) return;
    for (const editor of window.visibleTextEditors)
      if (editor.document === document) editor.setDecorations(this.#decoration, [...lines.values()]);
  }

  #paintAll(): void {
    for (const { document } of window.visibleTextEditors) this.#paint(document);
  }
}
