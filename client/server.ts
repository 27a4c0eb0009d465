import type { LogOutputChannel } from "vscode";
import type { BaseLanguageClient, LanguageClientOptions } from "vscode-languageclient";
import { checkScheme } from "./checks.ts";
import { OverLimits } from "./hints.ts";

/** Makes a client with its server: in a process of its own, or in a worker of a browser. */
export type Connect = (options: LanguageClientOptions) => BaseLanguageClient;

/** The language server as the rest of the extension sees it: it starts, restarts, stops and answers requests. */
export class Server {
  readonly #connect: Connect;
  readonly #output: LogOutputChannel;
  readonly #options: LanguageClientOptions;
  /** Shows hints of what is over a limit otherwise than the others. */
  readonly overLimits = new OverLimits();
  #client: BaseLanguageClient | undefined;
  /** The last of the starts and stops asked for, so that each waits for the one before. */
  #settled: Promise<void> = Promise.resolve();

  constructor(connect: Connect, output: LogOutputChannel) {
    this.#connect = connect;
    this.#output = output;
    this.#options = {
      // No scheme: an untitled schedule and one inside a comparison are checked like a file.
      documentSelector: [{ language: "wayfile" }],
      outputChannel: output,
      // What this editor can besides the protocol: see the server's ClientWishes.
      initializationOptions: {
        pictures: true,
        cursor: true,
        goOn: "type",
        lens: "wayfile.showWorking",
        pages: checkScheme,
      },
      middleware: {
        provideInlayHints: async (document, view, token, next) =>
          this.overLimits.take(document, view, await next(document, view, token)),
      },
      // Changes on the disk it asks to be told of itself.
      synchronize: { configurationSection: "wayfile" },
    };
  }

  start(): Promise<void> {
    return this.#next(() => this.#open());
  }

  restart(): Promise<void> {
    return this.#next(async () => {
      await this.#close();
      await this.#open();
    });
  }

  stop(): Promise<void> {
    return this.#next(() => this.#close());
  }

  /** Sends a request once the server is up. Rejects if it is not. */
  async request<Result>(method: string, parameters?: unknown): Promise<Result> {
    await this.#settled;
    if (!this.#client?.isRunning()) throw new Error("The Wayfile language server is not running.");
    return await this.#client.sendRequest<Result>(method, parameters);
  }

  /** Tells the server something, if it is up. */
  notify(method: string, parameters: unknown): boolean {
    if (!this.#client?.isRunning()) return false;
    void this.#client.sendNotification(method, parameters).catch(() => undefined);
    return true;
  }

  #started: () => void = () => {};

  /** What is to be done each time it is up. */
  onStarted(then: () => void): void {
    this.#started = then;
  }

  #next(step: () => Promise<void>): Promise<void> {
    this.#settled = this.#settled.then(step);
    return this.#settled;
  }

  /** A new client for each start: one whose first start failed refuses every later one. */
  async #open(): Promise<void> {
    const client = this.#connect(this.#options);
    this.#client = client;
    try {
      await client.start();
      this.#started();
    } catch (error) {
      // The client has shown a message by now, with a button for the output.
      this.#output.error("The language server did not start.", error);
    }
  }

  /** Never rejects: a server that hangs or has died must not stand in the way of the next one. */
  async #close(): Promise<void> {
    const client = this.#client;
    this.#client = undefined;
    try {
      await client?.dispose();
    } catch (error) {
      this.#output.warn("The language server did not stop in good order.", error);
    }
  }
}
