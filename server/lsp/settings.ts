/** The editor's settings: of the window, and of each folder where a setting may differ between them. */
import type { Connection } from "vscode-languageserver";
import { type HintMode, isHintMode } from "../features/inlay.ts";
import { isLensMode, type LensMode } from "../features/lenses.ts";
import { at } from "./member.ts";

/** How schedules are shown, which a folder may settle for itself. */
export interface Shown {
  readonly inlay: HintMode;
  readonly lens: LensMode;
}

/** When schedules are checked: of the window alone, since a file that two folders use has one judgement. */
interface Checked {
  readonly onType: boolean;
  readonly unopened: boolean;
}

export class Settings {
  #checked: Checked = { onType: true, unopened: true };
  #shown: Shown = { inlay: "both", lens: "ways" };
  #folders: ReadonlyMap<string, Shown> = new Map();

  get checked(): Checked {
    return this.#checked;
  }

  /** What holds for a document: the innermost folder round it decides. */
  shown(uri: string): Shown {
    let found: [folder: string, shown: Shown] | undefined;
    for (const [folder, shown] of this.#folders) {
      const isInside = uri.startsWith(folder.endsWith("/") ? folder : `${folder}/`);
      if (isInside && folder.length > (found?.[0].length ?? 0)) found = [folder, shown];
    }
    return found?.[1] ?? this.#shown;
  }

  /** What is shown where, to tell whether it has changed. */
  get showing(): string {
    return JSON.stringify([this.#shown, ...this.#folders]);
  }

  /** Takes over what a client sent of itself: it holds everywhere, until the folders are asked about. */
  take(section: unknown): void {
    const check = at(section, "check");
    const [onType, unopened] = [at(check, "onType"), at(check, "unopened")];
    this.#checked = {
      onType: typeof onType === "boolean" ? onType : this.#checked.onType,
      unopened: typeof unopened === "boolean" ? unopened : this.#checked.unopened,
    };
    this.#shown = shownOf(section, this.#shown);
    this.#folders = new Map();
  }

  /** Asks for the settings of the window and of each folder. What is not answered stays as it was. */
  async read(connection: Connection, folders: readonly string[]): Promise<void> {
    const items = [{ section: "wayfile" }, ...folders.map((scopeUri) => ({ scopeUri, section: "wayfile" }))];
    const answers: unknown = await connection.workspace.getConfiguration(items).catch(() => undefined);
    if (!Array.isArray(answers)) return;
    const [window, ...own]: unknown[] = answers;
    this.take(window);
    this.#folders = new Map(folders.map((folder, index) => [folder, shownOf(own[index], this.#shown)]));
  }
}

function shownOf(section: unknown, otherwise: Shown): Shown {
  const [inlay, lens] = [at(section, "inlay"), at(section, "lens")];
  return {
    inlay: isHintMode(inlay) ? inlay : otherwise.inlay,
    lens: isLensMode(lens) ? lens : otherwise.lens,
  };
}
