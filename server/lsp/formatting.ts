import type { DocumentRangeFormattingParams, ServerCapabilities, TextEdit } from "vscode-languageserver";
import { formatDocument } from "../format/format.ts";
import { formattedLine } from "../format/line.ts";
import type { Snapshot } from "../workspace/workspace.ts";
import { fileEdits, touching } from "./convert.ts";
import type { Service } from "./service.ts";

/** Of a whole file, of some of its lines, and of the line that is left by its end. */
export function formatting({ connection, ask }: Service): ServerCapabilities {
  const all = ({ file: { document } }: Snapshot): TextEdit[] => {
    const formatted = formatDocument(document);
    return formatted ? fileEdits(document, formatted.edits) : [];
  };
  connection.onDocumentFormatting(ask("textDocument/formatting", [], all));
  connection.onDocumentRangeFormatting(
    ask("textDocument/rangeFormatting", [], (snapshot, { range }: DocumentRangeFormattingParams) =>
      all(snapshot).filter((edit) => touching(edit.range, range)),
    ),
  );
  connection.onDocumentOnTypeFormatting(
    ask("textDocument/onTypeFormatting", [], (snapshot, { position: { line } }) =>
      line === 0 ? [] : fileEdits(snapshot.file.document, formattedLine(snapshot.file.document, line - 1)),
    ),
  );
  return {
    documentFormattingProvider: true,
    documentRangeFormattingProvider: true,
    documentOnTypeFormattingProvider: { firstTriggerCharacter: "\n" },
  };
}
