/** The settings of the repositories whose files are open: read once, and again when they change. */
import { type Connection, type Diagnostic, DiagnosticSeverity } from "vscode-languageserver";
import { type FatesOf, fatesIn, leavesOut } from "../settings/apply.ts";
import { type ReadSettings, readSettings } from "../settings/read.ts";
import { settingsFile } from "../settings/settings.ts";
import type { Runtime } from "./runtime.ts";

interface House extends ReadSettings {
  /** Addresses: of the settings, and of their folder with `/` at its end. */
  readonly uri: string;
  readonly folder: string;
}

export class HouseSettings {
  readonly #connection: Pick<Connection, "sendDiagnostics">;
  readonly #runtime: Runtime;
  readonly #byFolder = new Map<string, House | undefined>();
  readonly #houses = new Map<string, House>();

  constructor(connection: Pick<Connection, "sendDiagnostics">, runtime: Runtime) {
    this.#connection = connection;
    this.#runtime = runtime;
  }

  /** What becomes of the findings of a file; nothing where its repository has no settings. */
  fatesOf(uri: string): FatesOf | undefined {
    const house = this.#of(uri);
    return house && fatesIn(house.settings, insideOf(house, uri), this.#runtime.today());
  }

  /** Whether a search passes a file over. */
  leavesOut(uri: string): boolean {
    const house = this.#of(uri);
    return house !== undefined && leavesOut(house.settings)(insideOf(house, uri));
  }

  /** Whether an address is that of settings; then all are read anew. */
  changed(uri: string): boolean {
    if (!uri.endsWith(`/${settingsFile}`)) return false;
    for (const { uri: known } of this.#houses.values()) this.#mark(known, []);
    this.#byFolder.clear();
    this.#houses.clear();
    return true;
  }

  #of(uri: string): House | undefined {
    const folder = uri.slice(0, uri.lastIndexOf("/") + 1);
    if (!this.#byFolder.has(folder)) this.#byFolder.set(folder, this.#found(uri));
    return this.#byFolder.get(folder);
  }

  #found(uri: string): House | undefined {
    const found = this.#runtime.settings?.(uri, settingsFile);
    if (!found) return undefined;
    const known = this.#houses.get(found.uri);
    if (known) return known;
    const read = readSettings(found.text);
    const house = { ...read, uri: found.uri, folder: found.uri.slice(0, -settingsFile.length) };
    this.#houses.set(found.uri, house);
    this.#mark(
      found.uri,
      read.problems.map(({ start, end, message }) => problem({ start, end }, message)),
    );
    return house;
  }

  #mark(uri: string, diagnostics: Diagnostic[]): void {
    void this.#connection.sendDiagnostics({ uri, diagnostics });
  }
}

const problem = (range: Diagnostic["range"], message: string): Diagnostic => ({
  range,
  severity: DiagnosticSeverity.Error,
  source: "wayfile",
  code: "settings",
  message,
});

const insideOf = ({ folder }: House, uri: string): string =>
  uri.startsWith(folder) ? decoded(uri.slice(folder.length)) : "../";

function decoded(text: string): string {
  try {
    return decodeURIComponent(text);
  } catch {
    return text;
  }
}
