import {
  type ClientCapabilities,
  type CompletionItem,
  CompletionItemKind,
  type CompletionParams,
  InsertTextFormat,
  type ServerCapabilities,
} from "vscode-languageserver";
import type { Completion } from "../features/offers.ts";
import type { Snapshot } from "../workspace/workspace.ts";
import { rangeOf } from "./convert.ts";
import { Part } from "./part.ts";
import type { Service } from "./service.ts";

const kinds: Readonly<Record<Completion["kind"], CompletionItemKind>> = {
  word: CompletionItemKind.Keyword,
  block: CompletionItemKind.Module,
  choice: CompletionItemKind.EnumMember,
  label: CompletionItemKind.Property,
  name: CompletionItemKind.Reference,
  unit: CompletionItemKind.Unit,
  value: CompletionItemKind.Value,
  file: CompletionItemKind.File,
};

/** `goOn`: the editor's command that types a text, where it has one. */
export function completions(
  { connection, ask, cursor, workspace }: Service,
  client: ClientCapabilities,
  goOn?: string,
): ServerCapabilities {
  const snippets = client.textDocument?.completion?.completionItem?.snippetSupport ?? false;
  const part = new Part(() => import("../features/completion.ts"));
  connection.onCompletion(
    ask(
      "textDocument/completion",
      [],
      (snapshot, { position }: CompletionParams) =>
        part.now
          .complete(snapshot, cursor(snapshot, position), workspace.knownPaths)
          .map((offer, index) => item(snapshot, offer, index, snippets, goOn)),
      { part },
    ),
  );
  // A blank begins each argument, a quotation mark a path; the rest are signs a word may hold, after which an editor
  // would not ask by itself.
  return { completionProvider: { triggerCharacters: [" ", "-", "/", '"', "."], resolveProvider: false } };
}

function item(
  snapshot: Snapshot,
  offer: Completion,
  index: number,
  snippets: boolean,
  goOn: string | undefined,
): CompletionItem {
  const snippet = snippets ? offer.snippet : undefined;
  return {
    label: offer.label,
    kind: kinds[offer.kind],
    // In the order of the vocabulary, and of sizes and ratings by size: the order of letters tells nothing here.
    sortText: String(index).padStart(4, "0"),
    ...(offer.aliases.length === 0 ? {} : { filterText: [offer.label, ...offer.aliases].join(" ") }),
    ...(offer.detail === undefined ? {} : { detail: offer.detail }),
    ...(offer.documentation === undefined
      ? {}
      : { documentation: { kind: "markdown", value: offer.documentation.text } }),
    textEdit: { range: rangeOf(snapshot.positions, offer.spot), newText: snippet ?? offer.text },
    // Where more usually follows, the editor types the blank itself, which brings up the next list.
    ...(goOn !== undefined && offer.goesOn && snippet === undefined
      ? { command: { title: "", command: goOn, arguments: [{ text: " " }] } }
      : {}),
    insertTextFormat: snippet === undefined ? InsertTextFormat.PlainText : InsertTextFormat.Snippet,
  };
}
