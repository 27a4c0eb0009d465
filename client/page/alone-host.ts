/** What an editor is to the views, where there is none: a field of text. */
import type { At } from "../../server/lsp/placed.ts";
import { type EntryAnswer, entryRequest, type ViewAnswer, viewRequest } from "../../server/lsp/view-protocol.ts";
import { type Server, uri } from "./alone-server.ts";
import type { EnterMessage, FromPage, Host, ToPage } from "./messages.ts";

type Place = Pick<At, "line" | "character">;

const lineAtCaret = ({ value, selectionStart }: HTMLTextAreaElement): number =>
  value.slice(0, selectionStart).split("\n").length - 1;

const offsetOf = (lines: readonly string[], { line, character }: Place): number =>
  lines.slice(0, line).reduce((sum, one) => sum + one.length + 1, 0) + character;

export function goTo(area: HTMLTextAreaElement, { line, character }: Place): void {
  const lines = area.value.split("\n");
  area.focus();
  area.setSelectionRange(
    offsetOf(lines, { line, character }),
    offsetOf(lines, { line, character: lines[line]?.length ?? 0 }),
  );
  // A text area has no better way to bring a line into sight.
  area.scrollTop = (area.scrollHeight / Math.max(1, lines.length)) * Math.max(0, line - 6);
}

export class AreaHost implements Host {
  readonly #server: Server;
  readonly #area: HTMLTextAreaElement;
  #take: (message: ToPage) => void = () => {};
  #wanted: Extract<FromPage, { kind: "show" }> | undefined;
  #entering: Promise<void> = Promise.resolve();

  constructor(server: Server, area: HTMLTextAreaElement) {
    this.#server = server;
    this.#area = area;
  }

  send(message: FromPage): void {
    if (message.kind === "show") {
      this.#wanted = message;
      void this.show();
    } else if (message.kind === "reveal") goTo(this.#area, message.at);
    else if (message.kind === "enter") this.#entering = this.#entering.then(() => this.#enter(message));
  }

  receive(then: (message: ToPage) => void): void {
    this.#take = then;
  }

  /** Nothing is kept from one visit to the next. */
  load(): undefined {}

  save(): void {}

  /** Asks again for what is shown: the text has changed, or the caret is elsewhere. */
  async show(): Promise<void> {
    if (!this.#wanted) return;
    const { view, board } = this.#wanted;
    const position = { line: lineAtCaret(this.#area), character: 0 };
    const question = { uri, view, ...(board === undefined ? {} : { board }), position };
    try {
      const answer = await this.#server.request<ViewAnswer>(viewRequest, question);
      this.#take({ kind: "view", view, answer });
      this.#take({ kind: "cursor", line: position.line });
    } catch {
      // Overtaken by the next sign that was typed, which asks again.
    }
  }

  async #enter(message: EnterMessage): Promise<void> {
    const { row, column, text } = message;
    const answer = await this.#server.request<EntryAnswer>(entryRequest, { ...message, uri });
    const { edit, written, stands, problem } = answer;
    if (edit) {
      const lines = this.#area.value.split("\n");
      // As if it had been typed, so that the browser's own undo takes it back.
      this.#area.setRangeText(edit.newText, offsetOf(lines, edit.range.start), offsetOf(lines, edit.range.end), "end");
      this.#server.change(this.#area.value);
      await this.show();
    }
    const entered = {
      row,
      column,
      text,
      ...(written === undefined ? {} : { written }),
      ...(stands === undefined ? {} : { stands }),
      ...(problem === undefined ? {} : { problem }),
    };
    this.#take({ kind: "entered", entered });
  }
}
