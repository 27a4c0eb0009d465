/**
 * A page of its own: a schedule is pasted and checked with no editor at all. The language server runs in a worker of the
 * browser, the same as in an editor on the web; the page may fetch nothing, so nothing leaves the machine.
 */
import { render } from "preact";
import { useEffect, useRef, useState } from "preact/hooks";
import type { At } from "../../server/lsp/placed.ts";
import { type EntryAnswer, entryRequest, type ViewAnswer, viewRequest } from "../../server/lsp/view-protocol.ts";
import { App } from "./app.tsx";
import type { EnterMessage, FromPage, Host, ToPage } from "./messages.ts";

declare const workerSource: string;
declare const sampleText: string;

const uri = "untitled:schedule.ways";

interface Found {
  readonly severity: number;
  readonly message: string;
  readonly range: { readonly start: { readonly line: number; readonly character: number } };
}

/** The few messages of the protocol that this page needs, each answer by its number. */
class Server {
  readonly #worker: Worker;
  readonly #waiting = new Map<
    number,
    { readonly done: (result: never) => void; readonly failed: (error: Error) => void }
  >();
  #last = 0;
  version = 0;

  constructor(found: (diagnostics: readonly Found[]) => void) {
    const address = URL.createObjectURL(new Blob([workerSource], { type: "text/javascript" }));
    this.#worker = new Worker(address);
    this.#worker.onmessage = ({ data }) => {
      if (data.method === "textDocument/publishDiagnostics") found(data.params.diagnostics);
      // It has no files: what a schedule uses is answered so.
      else if (data.method !== undefined && data.id !== undefined)
        this.#post({
          id: data.id,
          result: data.method === "wayfile/readFile" ? { failure: "this page has no other files." } : [],
        });
      else if (data.id !== undefined) this.#settle(data);
    };
  }

  #post(message: object): void {
    this.#worker.postMessage({ jsonrpc: "2.0", ...message });
  }

  #settle({ id, result, error }: { id: number; result: never; error?: { message: string } }): void {
    const waiting = this.#waiting.get(id);
    this.#waiting.delete(id);
    if (error) waiting?.failed(new Error(error.message));
    else waiting?.done(result);
  }

  request<Result>(method: string, params: object): Promise<Result> {
    this.#last++;
    const id = this.#last;
    return new Promise<Result>((done, failed) => {
      this.#waiting.set(id, { done, failed });
      this.#post({ id, method, params });
    });
  }

  notify(method: string, params: object): void {
    this.#post({ method, params });
  }

  async start(text: string): Promise<void> {
    await this.request("initialize", { processId: null, rootUri: null, capabilities: {} });
    this.notify("initialized", {});
    this.version = 1;
    this.notify("textDocument/didOpen", { textDocument: { uri, languageId: "wayfile", version: 1, text } });
  }

  change(text: string): void {
    this.version++;
    this.notify("textDocument/didChange", { textDocument: { uri, version: this.version }, contentChanges: [{ text }] });
  }
}

const severities = ["", "error", "warning", "remark"] as const;

function Alone() {
  const area = useRef<HTMLTextAreaElement>(null);
  const [found, setFound] = useState<readonly Found[]>([]);
  const [host, setHost] = useState<Host | undefined>();
  const server = useRef<Server | undefined>(undefined);
  const changed = useRef<() => void>(() => {});

  const text = (): string => area.current?.value ?? "";
  const lineNow = (): number =>
    text()
      .slice(0, area.current?.selectionStart ?? 0)
      .split("\n").length - 1;
  const goTo = ({ line, character }: Pick<At, "line" | "character">): void => {
    const input = area.current;
    if (!input) return;
    const lines = input.value.split("\n");
    const start = lines.slice(0, line).reduce((sum, one) => sum + one.length + 1, 0);
    input.focus();
    input.setSelectionRange(start + character, start + (lines[line]?.length ?? 0));
    // A text area has no better way to bring a line into sight.
    input.scrollTop = (input.scrollHeight / Math.max(1, lines.length)) * Math.max(0, line - 6);
  };

  useEffect(() => {
    const started = new Server(setFound);
    server.current = started;
    let take: (message: ToPage) => void = () => {};
    let wanted: Extract<FromPage, { kind: "show" }> | undefined;
    const show = async (): Promise<void> => {
      if (!wanted) return;
      const { view, board } = wanted;
      try {
        const position = { line: lineNow(), character: 0 };
        const answer = await started.request<ViewAnswer>(viewRequest, {
          uri,
          view,
          ...(board === undefined ? {} : { board }),
          position,
        });
        take({ kind: "view", view, answer });
        take({ kind: "cursor", line: position.line });
      } catch {
        // Overtaken by the next sign that was typed, which asks again.
      }
    };
    const enter = async (message: EnterMessage): Promise<void> => {
      const { row, column, text: typed } = message;
      const { edit, written, stands, problem } = await started.request<EntryAnswer>(entryRequest, { ...message, uri });
      if (edit && area.current) {
        const offset = ({ line, character }: { line: number; character: number }): number =>
          text()
            .split("\n")
            .slice(0, line)
            .reduce((sum, one) => sum + one.length + 1, 0) + character;
        // As if it had been typed, so that the browser's own undo takes it back.
        area.current.setRangeText(edit.newText, offset(edit.range.start), offset(edit.range.end), "end");
        started.change(text());
        await show();
      }
      take({
        kind: "entered",
        entered: {
          row,
          column,
          text: typed,
          ...(written === undefined ? {} : { written }),
          ...(stands === undefined ? {} : { stands }),
          ...(problem === undefined ? {} : { problem }),
        },
      });
    };
    let entering: Promise<void> = Promise.resolve();
    changed.current = () => void show();
    void started.start(text()).then(() =>
      setHost({
        send: (message) => {
          if (message.kind === "show") {
            wanted = message;
            void show();
          } else if (message.kind === "reveal") goTo(message.at);
          else if (message.kind === "enter") entering = entering.then(() => enter(message));
        },
        receive: (then) => {
          take = then;
        },
        load: () => undefined,
        save: () => {},
      }),
    );
  }, []);

  const edited = (): void => {
    server.current?.change(text());
    changed.current();
  };
  const open = async (files: FileList | null): Promise<void> => {
    const [file] = files ?? [];
    if (!file || !area.current) return;
    area.current.value = await file.text();
    edited();
  };
  const grave = found.filter(({ severity }) => severity <= 2).toSorted((a, b) => a.severity - b.severity);
  return (
    <div class="alone">
      <section class="written" aria-labelledby="written">
        <h2 id="written">The schedule</h2>
        <p class="note">
          Paste it here, or{" "}
          <label class="file">
            open a file
            <input type="file" accept=".ways,text/plain" onChange={(event) => void open(event.currentTarget.files)} />
          </label>
          . It is checked on this machine and sent nowhere.
        </p>
        <textarea
          ref={area}
          spellcheck={false}
          aria-labelledby="written"
          defaultValue={sampleText}
          onInput={edited}
          onKeyUp={() => changed.current()}
          onClick={() => changed.current()}
        />
        <h2>{`${grave.length === 0 ? "No error and no warning" : `${grave.length} to look at`}`}</h2>
        <ul class="list" aria-live="polite">
          {grave.map(({ severity, message, range }, at) => (
            <li key={`${at}|${message}`}>
              <button type="button" class="go" onClick={() => goTo(range.start)}>
                <span
                  class={severities[severity] ?? ""}
                >{`${severities[severity]}, line ${range.start.line + 1}: `}</span>
                {message}
              </button>
            </li>
          ))}
        </ul>
      </section>
      <div class="shown">{host ? <App host={host} /> : <p class="note">The program is starting …</p>}</div>
    </div>
  );
}

const root = document.getElementById("app");
if (root) render(<Alone />, root);
