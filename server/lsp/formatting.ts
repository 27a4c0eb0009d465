import type {
  DocumentRangeFormattingParams,
  FormattingOptions,
  ServerCapabilities,
  TextEdit,
} from "vscode-languageserver";
import type { Snapshot } from "../workspace/workspace.ts";
import { fileEdits, touching } from "./convert.ts";
import { Part } from "./part.ts";
import type { Service } from "./service.ts";

/** Whether the editor indents as the formatter does; one that does not say is taken to. */
const isOurs = (options: Partial<FormattingOptions> | undefined): boolean =>
  options?.insertSpaces !== false && (options?.tabSize ?? 2) === 2;

/** Of a whole file, of some of its lines, and of the line that is left by its end. */
export function formatting({ connection, ask }: Service): ServerCapabilities {
  const part = new Part(async () => ({
    ...(await import("../format/format.ts")),
    ...(await import("../format/line.ts")),
  }));
  const all = ({ file: { document } }: Snapshot): TextEdit[] => {
    const formatted = part.now.formatDocument(document);
    return formatted ? fileEdits(document, formatted.edits) : [];
  };
  connection.onDocumentFormatting(ask("textDocument/formatting", [], all, { part }));
  connection.onDocumentRangeFormatting(
    ask(
      "textDocument/rangeFormatting",
      [],
      (snapshot, { range }: DocumentRangeFormattingParams) =>
        all(snapshot).filter((edit) => touching(edit.range, range)),
      { part },
    ),
  );
  connection.onDocumentOnTypeFormatting(
    ask(
      "textDocument/onTypeFormatting",
      [],
      ({ file: { document } }, { position: { line }, options }) =>
        line === 0 ? [] : fileEdits(document, part.now.formattedLine(document, line - 1, isOurs(options))),
      { part },
    ),
  );
  return {
    documentFormattingProvider: true,
    documentRangeFormattingProvider: true,
    documentOnTypeFormattingProvider: { firstTriggerCharacter: "\n" },
  };
}
