/** The language server in a worker of this page: the few messages of the protocol that it needs. */

declare const workerSource: string;

/** The one schedule there is. */
export const uri = "untitled:schedule.ways";

export interface Found {
  readonly severity: number;
  readonly message: string;
  readonly range: { readonly start: { readonly line: number; readonly character: number } };
}

/** Each answer finds its question by its number. */
export class Server {
  readonly #worker: Worker;
  readonly #waiting = new Map<
    number,
    { readonly done: (result: never) => void; readonly failed: (error: Error) => void }
  >();
  #last = 0;
  #version = 0;

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
    this.#version = 1;
    this.notify("textDocument/didOpen", { textDocument: { uri, languageId: "wayfile", version: 1, text } });
  }

  change(text: string): void {
    this.#version++;
    this.notify("textDocument/didChange", {
      textDocument: { uri, version: this.#version },
      contentChanges: [{ text }],
    });
  }
}
