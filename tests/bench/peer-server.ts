/**
 * The peer of the benchmark: a general-purpose JSON service behind the same protocol, checking the same records against
 * a schema, as an editor would run it.
 */

import type { JSONDocument, TextDocument as JsonText } from "vscode-json-languageservice";
import * as json from "vscode-json-languageservice";
import {
  createConnection,
  StreamMessageReader,
  StreamMessageWriter,
  TextDocumentSyncKind,
} from "vscode-languageserver/node";
import { recordSchema } from "./record-schema.ts";

const connection = createConnection(new StreamMessageReader(process.stdin), new StreamMessageWriter(process.stdout));
const { getLanguageService, TextDocument } = json;
const service = getLanguageService({});
service.configure({
  validate: true,
  allowComments: false,
  schemas: [{ uri: "mem://records", fileMatch: ["*"], schema: recordSchema }],
});

const documents = new Map<string, JsonText>();
const parsed = new WeakMap<JsonText, JSONDocument>();

async function check(document: JsonText): Promise<void> {
  const tree = service.parseJSONDocument(document);
  parsed.set(document, tree);
  const diagnostics = await service.doValidation(document, tree);
  connection.sendDiagnostics({ uri: document.uri, version: document.version, diagnostics });
}

connection.onInitialize(() => ({
  capabilities: { textDocumentSync: TextDocumentSyncKind.Incremental, hoverProvider: true, completionProvider: {} },
}));
connection.onDidOpenTextDocument(({ textDocument: { uri, languageId, version, text } }) => {
  const document = TextDocument.create(uri, languageId, version, text);
  documents.set(uri, document);
  void check(document);
});
connection.onDidChangeTextDocument(({ textDocument: { uri, version }, contentChanges }) => {
  const before = documents.get(uri);
  if (!before) return;
  const document = TextDocument.update(before, contentChanges, version);
  documents.set(uri, document);
  void check(document);
});
connection.onHover(({ textDocument: { uri }, position }) => {
  const document = documents.get(uri);
  return document
    ? service.doHover(document, position, parsed.get(document) ?? service.parseJSONDocument(document))
    : null;
});
connection.onCompletion(({ textDocument: { uri }, position }) => {
  const document = documents.get(uri);
  return document
    ? service.doComplete(document, position, parsed.get(document) ?? service.parseJSONDocument(document))
    : null;
});
connection.listen();
