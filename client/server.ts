import { type CancellationToken, type LogOutputChannel, l10n } from "vscode";
import {
  type BaseLanguageClient,
  CloseAction,
  ErrorAction,
  type ErrorHandler,
  type LanguageClientOptions,
  State,
} from "vscode-languageclient";
import { checkScheme } from "./checks.ts";
import { Crashes } from "./crashes.ts";
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
      errorHandler: afterCrash(),
      // It asks by itself to be notified of changes on the disk.
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

  get isUp(): boolean {
    return this.#client?.isRunning() ?? false;
  }

  /** Sends a request once the server is up. Rejects if it is not. */
  async request<Result>(method: string, parameters: object = {}, token?: CancellationToken): Promise<Result> {
    await this.#settled;
    if (!this.#client?.isRunning()) throw new Error("The Wayfile language server is not running.");
    // A token that is not there would be sent as a second parameter.
    return await (token
      ? this.#client.sendRequest<Result>(method, parameters, token)
      : this.#client.sendRequest<Result>(method, parameters));
  }

  /** Tells the server something, if it is up. */
  notify(method: string, parameters: unknown): boolean {
    if (!this.#client?.isRunning()) return false;
    void this.#client.sendNotification(method, parameters).catch(() => undefined);
    return true;
  }

  #started: () => void = () => {};

  /** What is to be done each time it is up, by itself or after a crash. */
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
    client.onDidChangeState(({ newState }) => {
      if (newState === State.Running && client === this.#client) this.#started();
    });
    try {
      await client.start();
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

/** A server that ends by itself is started again, and says so once. */
function afterCrash(): ErrorHandler {
  const crashes = new Crashes(() => Date.now());
  return {
    // A message that could not be sent or read; where the connection is lost, it is closed next.
    error: () => ({ action: ErrorAction.Continue, handled: true }),
    closed: () => {
      const { restarts, says } = crashes.crashed();
      if (!restarts) {
        const message = l10n.t(
          "The Wayfile server stopped five times within three minutes and is not started again. Your text is safe; checks rest until you use “Restart Language Server”.",
        );
        return { action: CloseAction.DoNotRestart, message };
      }
      const message = l10n.t("The Wayfile server stopped unexpectedly and is started again. Your text is safe.");
      return { action: CloseAction.Restart, message, handled: says === undefined };
    },
  };
}
