/**
 * What an editor may ask, and when: before the first word and after the last nothing is worked on, and a message that
 * does not say which document or which place it is about is refused in a sentence, before a feature stumbles over it.
 */
import { ErrorCodes, Message } from "vscode-languageserver";
import { at } from "./member.ts";

export interface Refusal {
  readonly code: number;
  readonly message: string;
}

/** What a message about a document must say besides which it is. */
type Shape = "position" | "positions" | "range" | "text" | "changes";

const shapes: Readonly<Record<string, Shape>> = {
  "textDocument/hover": "position",
  "textDocument/completion": "position",
  "textDocument/definition": "position",
  "textDocument/references": "position",
  "textDocument/documentHighlight": "position",
  "textDocument/prepareRename": "position",
  "textDocument/rename": "position",
  "textDocument/selectionRange": "positions",
  "textDocument/codeAction": "range",
  "textDocument/inlayHint": "range",
  "textDocument/semanticTokens/range": "range",
  "textDocument/didOpen": "text",
  "textDocument/didChange": "changes",
};

export class Gate {
  #state: "new" | "running" | "ended" = "new";

  /** Why a message is not worked on; nothing for one that is. */
  judge(message: Message): Refusal | undefined {
    if (Message.isRequest(message)) return this.#order(message.method) ?? unfit(message.method, message.params);
    if (!Message.isNotification(message) || message.method === "exit") return undefined;
    if (this.#state === "ended") return refusal(ErrorCodes.InvalidRequest, "The server was told to shut down.");
    return unfit(message.method, message.params);
  }

  #order(method: string): Refusal | undefined {
    const before = this.#state;
    if (before === "ended") return refusal(ErrorCodes.InvalidRequest, "The server was told to shut down.");
    if (method === "initialize") {
      this.#state = "running";
      return before === "running"
        ? refusal(ErrorCodes.InvalidRequest, "The server is initialized already.")
        : undefined;
    }
    if (before === "new") return refusal(ErrorCodes.ServerNotInitialized, "The server is not initialized yet.");
    if (method === "shutdown") this.#state = "ended";
    return undefined;
  }
}

const refusal = (code: number, message: string): Refusal => ({ code, message });

function unfit(method: string, params: unknown): Refusal | undefined {
  if (!method.startsWith("textDocument/")) return undefined;
  const what = lacking(shapes[method], params);
  return what === undefined ? undefined : refusal(ErrorCodes.InvalidParams, `${method} needs ${what}.`);
}

function lacking(shape: Shape | undefined, params: unknown): string | undefined {
  const document = at(params, "textDocument");
  if (typeof at(document, "uri") !== "string") return "a textDocument with its uri";
  switch (shape) {
    case "position":
      return isPlace(at(params, "position")) ? undefined : "a position";
    case "positions":
      return every(at(params, "positions"), isPlace) ? undefined : "positions";
    case "range":
      return isRange(at(params, "range")) ? undefined : "a range";
    case "text":
      return typeof at(document, "text") === "string" && typeof at(document, "version") === "number"
        ? undefined
        : "the text and version of its document";
    case "changes":
      return typeof at(document, "version") === "number" && every(at(params, "contentChanges"), isChange)
        ? undefined
        : "a version and its changes";
    case undefined:
      return undefined;
  }
}

const isPlace = (value: unknown): boolean =>
  typeof at(value, "line") === "number" && typeof at(value, "character") === "number";

const isRange = (value: unknown): boolean => isPlace(at(value, "start")) && isPlace(at(value, "end"));

const isChange = (value: unknown): boolean =>
  typeof at(value, "text") === "string" && (at(value, "range") === undefined || isRange(at(value, "range")));

const every = (value: unknown, is: (one: unknown) => boolean): boolean => Array.isArray(value) && value.every(is);
