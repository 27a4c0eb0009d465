/** What the page of the live view says, once it is looked at: whatever else comes is passed over, and above all undoes nothing. */
import type { At } from "../server/lsp/placed.ts";
import { isViewKind } from "../server/views/kinds.ts";
import type { EnterMessage, FromPage } from "./page/messages.ts";

/** Nothing for a message that is none of the page's. */
export function heard(message: unknown): FromPage | undefined {
  if (!isRecord(message)) return undefined;
  switch (message.kind) {
    case "show":
      return isViewKind(message.view) && isTextOrNone(message.board) ? (message as FromPage) : undefined;
    case "enter":
      return isEntry(message) ? entryOf(message) : undefined;
    case "reveal":
      return isPlace(message.at) ? { kind: "reveal", at: message.at } : undefined;
    case "undo":
      return { kind: "undo" };
    default:
      return undefined;
  }
}

const needed = ["board", "row", "column", "text", "day"] as const;
const possible = ["point", "instrument", "why", "draft"] as const;

const isEntry = (message: Fields): message is Fields & EnterMessage =>
  needed.every((name) => isText(message[name])) && possible.every((name) => isTextOrNone(message[name]));

/** What belongs to an entry and nothing besides, so that no other document can be named in it. */
const entryOf = (message: EnterMessage): EnterMessage => {
  const { board, row, column, text, day } = message;
  const more = possible.flatMap((name) => (message[name] === undefined ? [] : [[name, message[name]] as const]));
  return { kind: "enter", board, row, column, text, day, ...Object.fromEntries(more) };
};

type Fields = Readonly<Record<string, unknown>>;

const isRecord = (value: unknown): value is Fields => typeof value === "object" && value !== null;
/** More than any name or reading has is neither. */
const isText = (value: unknown): value is string => typeof value === "string" && value.length <= 10_000;
const isTextOrNone = (value: unknown): boolean => value === undefined || isText(value);
const isIndex = (value: unknown): boolean => typeof value === "number" && Number.isInteger(value) && value >= 0;

/** A line of a schedule: the page leads to no other file. */
const isPlace = (at: unknown): at is At =>
  isRecord(at) &&
  isIndex(at.line) &&
  isIndex(at.character) &&
  (at.uri === undefined || (isText(at.uri) && /\.ways$/i.test(at.uri)));
