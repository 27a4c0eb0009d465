/**
 * What an editor may ask, and when: before the first word and after the last nothing is worked on, and a message that
 * does not say which document or which place it is about is refused in a sentence, before a feature stumbles over it.
 */
import { ErrorCodes, Message, type RequestMessage } from "vscode-languageserver";
import { at } from "./member.ts";

export interface Refusal {
  readonly code: number;
  readonly message: string;
}

/** What a message must say, in words, and whether it does. */
type Need = readonly [what: string, said: (params: unknown) => boolean];

export class Gate {
  #state: "new" | "running" | "ended" = "new";

  /** Why a message is not worked on; nothing for one that is. */
  judge(message: Message): Refusal | undefined {
    if (Message.isRequest(message)) return this.#order(message) ?? unfit(message.method, message.params);
    if (!Message.isNotification(message) || message.method === "exit") return undefined;
    if (this.#state === "ended") return refusal(ErrorCodes.InvalidRequest, "The server was told to shut down.");
    if (this.#state === "new") return notYet;
    return unfit(message.method, message.params);
  }

  #order({ method, params }: RequestMessage): Refusal | undefined {
    if (this.#state === "ended") return refusal(ErrorCodes.InvalidRequest, "The server was told to shut down.");
    if (method === "initialize") {
      if (this.#state === "running") return refusal(ErrorCodes.InvalidRequest, "The server is initialized already.");
      if (!unfit(method, params)) this.#state = "running";
      return undefined;
    }
    if (this.#state === "new") return notYet;
    if (method === "shutdown") this.#state = "ended";
    return undefined;
  }
}

const refusal = (code: number, message: string): Refusal => ({ code, message });

const notYet = refusal(ErrorCodes.ServerNotInitialized, "The server is not initialized yet.");

function unfit(method: string, params: unknown): Refusal | undefined {
  // As a list they would each be an argument of its own, and whoever answers would take the second for a cancellation.
  if (Array.isArray(params) && params.length > 1)
    return refusal(ErrorCodes.InvalidParams, `${method} takes its parameters by name.`);
  const needs = [...(method.startsWith("textDocument/") ? [document] : []), ...(needsOf[method] ?? [])];
  const lacking = needs.find(([, said]) => !said(params));
  return lacking && refusal(ErrorCodes.InvalidParams, `${method} needs ${lacking[0]}.`);
}

const isText = (value: unknown): boolean => typeof value === "string";

const isPlace = (value: unknown): boolean =>
  typeof at(value, "line") === "number" && typeof at(value, "character") === "number";

const isRange = (value: unknown): boolean => isPlace(at(value, "start")) && isPlace(at(value, "end"));

const isChange = (value: unknown): boolean =>
  isText(at(value, "text")) && (at(value, "range") === undefined || isRange(at(value, "range")));

const every = (value: unknown, is: (one: unknown) => boolean): boolean => Array.isArray(value) && value.every(is);

/** Whether a value has texts of some names. */
const withTexts =
  (...names: readonly string[]) =>
  (value: unknown): boolean =>
    names.every((name) => isText(at(value, name)));

const isGiven = (value: unknown): boolean => value !== undefined && value !== null;

const document: Need = ["a textDocument with its uri", (params) => isText(at(at(params, "textDocument"), "uri"))];
const position: Need = ["a position", (params) => isPlace(at(params, "position"))];
const range: Need = ["a range", (params) => isRange(at(params, "range"))];
const item: Need = [
  "an item with its name, address and range",
  (params) => withTexts("name", "uri")(at(params, "item")) && isRange(at(at(params, "item"), "range")),
];

const needsOf: Readonly<Record<string, readonly Need[]>> = {
  initialize: [
    ["the capabilities of the editor", (params) => typeof (at(params, "capabilities") ?? undefined) === "object"],
    [
      "its folders with their addresses, or none",
      (params) => !isGiven(at(params, "workspaceFolders")) || every(at(params, "workspaceFolders"), withTexts("uri")),
    ],
    ["the address of its root, or none", (params) => !isGiven(at(params, "rootUri")) || isText(at(params, "rootUri"))],
  ],
  "textDocument/hover": [position],
  "textDocument/completion": [position],
  "textDocument/signatureHelp": [position],
  "textDocument/definition": [position],
  "textDocument/references": [
    position,
    [
      "a context that says whether the declaration is one of them",
      (params) => typeof at(at(params, "context"), "includeDeclaration") === "boolean",
    ],
  ],
  "textDocument/documentHighlight": [position],
  "textDocument/prepareRename": [position],
  "textDocument/rename": [position, ["a newName", withTexts("newName")]],
  "textDocument/prepareCallHierarchy": [position],
  "textDocument/onTypeFormatting": [position],
  "textDocument/selectionRange": [["positions", (params) => every(at(params, "positions"), isPlace)]],
  "textDocument/codeAction": [
    range,
    [
      "a context with its diagnostics",
      (params) => every(at(at(params, "context"), "diagnostics"), (one) => isRange(at(one, "range"))),
    ],
    [
      "a list of the kinds it is limited to, or none",
      (params) => !isGiven(at(at(params, "context"), "only")) || every(at(at(params, "context"), "only"), isText),
    ],
  ],
  "textDocument/inlayHint": [range],
  "textDocument/rangeFormatting": [range],
  "textDocument/semanticTokens/range": [range],
  "textDocument/didOpen": [
    [
      "the text and version of its document",
      (params) =>
        isText(at(at(params, "textDocument"), "text")) && typeof at(at(params, "textDocument"), "version") === "number",
    ],
  ],
  "textDocument/didChange": [
    [
      "a version and its changes",
      (params) =>
        typeof at(at(params, "textDocument"), "version") === "number" && every(at(params, "contentChanges"), isChange),
    ],
  ],
  "codeLens/resolve": [range],
  "callHierarchy/incomingCalls": [item],
  "callHierarchy/outgoingCalls": [item],
  "workspace/symbol": [["a query", withTexts("query")]],
  "workspace/diagnostic": [
    ["the results it had before", (params) => every(at(params, "previousResultIds"), withTexts("uri", "value"))],
  ],
  "workspace/willRenameFiles": [["files", (params) => every(at(params, "files"), withTexts("oldUri", "newUri"))]],
  "workspace/didChangeWatchedFiles": [["changes", (params) => every(at(params, "changes"), withTexts("uri"))]],
  "workspace/didChangeWorkspaceFolders": [
    [
      "the folders that came and went",
      (params) => ["added", "removed"].every((name) => every(at(at(params, "event"), name), withTexts("uri"))),
    ],
  ],
  "workspace/didChangeConfiguration": [
    ["its settings by name", (params) => typeof params === "object" && params !== null && !Array.isArray(params)],
  ],
  "wayfile/cursor": [
    ["an address and a line", (params) => withTexts("uri")(params) && typeof at(params, "line") === "number"],
  ],
  "$/setTrace": [["a value", withTexts("value")]],
};
