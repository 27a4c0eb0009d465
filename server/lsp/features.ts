/** One entry a feature: where it is registered, its capability is stated. */
import {
  type ClientCapabilities,
  type CompletionItem,
  CompletionItemKind,
  type DocumentDiagnosticParams,
  type DocumentDiagnosticReport,
  type DocumentSymbol,
  type Hover,
  InsertTextFormat,
  type ServerCapabilities,
  SymbolKind,
} from "vscode-languageserver";
import { type Completion, complete } from "../features/completion.ts";
import { hover } from "../features/hover.ts";
import { earthingChoices, newSchedule, standardChoices } from "../features/new-schedule.ts";
import { type OutlineSymbol, symbols } from "../features/symbols.ts";
import type { Snapshot } from "../workspace/workspace.ts";
import { rangeOf } from "./convert.ts";
import type { Delivery } from "./delivery.ts";
import { type ChoicesAnswer, choicesRequest, type NewScheduleQuestion, newScheduleRequest } from "./protocol.ts";
import { badRequest, type Service } from "./server.ts";

type Capabilities = ServerCapabilities;

export function registerFeatures(service: Service, delivery: Delivery, client: ClientCapabilities): Capabilities {
  return {
    ...diagnostics(service, delivery),
    ...hovers(service),
    ...completions(service),
    ...outline(service),
    ...ownRequests(service),
    ...(client ? {} : {}),
  };
}

function diagnostics({ connection, ask }: Service, delivery: Delivery): Capabilities {
  if (!delivery.pulls) return {};
  connection.languages.diagnostics.on(
    ask("textDocument/diagnostic", noFindings, (snapshot, { previousResultId }: DocumentDiagnosticParams) =>
      delivery.pull(snapshot, previousResultId),
    ),
  );
  return { diagnosticProvider: { identifier: "wayfile", interFileDependencies: true, workspaceDiagnostics: false } };
}

const noFindings: DocumentDiagnosticReport = { kind: "full", items: [] };

function hovers({ connection, ask, cursor }: Service): Capabilities {
  connection.onHover(
    ask("textDocument/hover", null, (snapshot, { position }): Hover | null => {
      const found = hover(snapshot, cursor(snapshot, position));
      if (!found) return null;
      return {
        contents: { kind: "markdown", value: found.markdown },
        range: rangeOf(snapshot.positions, found.spot),
      };
    }),
  );
  return { hoverProvider: true };
}

const completionKinds: Readonly<Record<Completion["kind"], CompletionItemKind>> = {
  word: CompletionItemKind.Keyword,
  block: CompletionItemKind.Module,
  choice: CompletionItemKind.EnumMember,
  label: CompletionItemKind.Property,
  name: CompletionItemKind.Reference,
  unit: CompletionItemKind.Unit,
  value: CompletionItemKind.Value,
};

function completions({ connection, ask, cursor }: Service): Capabilities {
  connection.onCompletion(
    ask("textDocument/completion", [], (snapshot, { position }) =>
      complete(snapshot, cursor(snapshot, position)).map((item) => completionItem(snapshot, item)),
    ),
  );
  return { completionProvider: { triggerCharacters: [" "], resolveProvider: false } };
}

function completionItem(snapshot: Snapshot, item: Completion): CompletionItem {
  return {
    label: item.label,
    kind: completionKinds[item.kind],
    ...(item.detail === undefined ? {} : { detail: item.detail }),
    ...(item.documentation === undefined ? {} : { documentation: { kind: "markdown", value: item.documentation } }),
    textEdit: { range: rangeOf(snapshot.positions, item.spot), newText: item.text },
    insertTextFormat: item.isSnippet ? InsertTextFormat.Snippet : InsertTextFormat.PlainText,
  };
}

const symbolKinds: Readonly<Record<OutlineSymbol["kind"], SymbolKind>> = {
  installation: SymbolKind.Package,
  supply: SymbolKind.Interface,
  board: SymbolKind.Module,
  way: SymbolKind.Field,
  instrument: SymbolKind.Constant,
  "cable-type": SymbolKind.Struct,
};

function outline({ connection, ask }: Service): Capabilities {
  connection.onDocumentSymbol(
    ask("textDocument/documentSymbol", [], (snapshot) => symbols(snapshot).map((one) => documentSymbol(snapshot, one))),
  );
  return { documentSymbolProvider: true };
}

function documentSymbol(snapshot: Snapshot, symbol: OutlineSymbol): DocumentSymbol {
  const selectionRange = rangeOf(snapshot.positions, symbol.name_);
  const start = rangeOf(snapshot.positions, symbol.from).start;
  const end = rangeOf(snapshot.positions, symbol.to).end;
  return {
    name: symbol.name,
    ...(symbol.detail === "" ? {} : { detail: symbol.detail }),
    kind: symbolKinds[symbol.kind],
    range: { start, end },
    selectionRange,
    children: symbol.children.map((child) => documentSymbol(snapshot, child)),
  };
}

function ownRequests({ connection }: Service): Capabilities {
  connection.onRequest(
    choicesRequest,
    (): ChoicesAnswer => ({ earthing: earthingChoices, standards: standardChoices }),
  );
  connection.onRequest(newScheduleRequest, (question: Partial<NewScheduleQuestion> | undefined) => {
    const { name, earthing, standard } = question ?? {};
    if (typeof name !== "string" || name.trim() === "") return badRequest("A schedule needs a name.");
    if (!earthingChoices.includes(earthing ?? "")) return badRequest(`“${earthing}” is not an earthing arrangement.`);
    if (!standardChoices.some(({ id }) => id === standard)) return badRequest(`“${standard}” is not an edition.`);
    return { text: newSchedule({ name, earthing: earthing as string, standard: standard as string }) };
  });
  return {};
}
