import { type QuickPickItem, window, workspace } from "vscode";
import {
  type ChoicesAnswer,
  choicesRequest,
  type NewScheduleAnswer,
  type NewScheduleQuestion,
  newScheduleRequest,
} from "../server/lsp/protocol.ts";
import type { Server } from "./server.ts";

const title = "New Schedule";

/**
 * Asks what every schedule begins with and opens one that says so.
 * @param given answers already known, as a key binding's `args` may hold; only the others are asked for
 */
export async function newSchedule(server: Server, given: unknown): Promise<void> {
  try {
    const answers = await ask(await server.request<ChoicesAnswer>(choicesRequest), known(given));
    if (!answers) return;
    const { text } = await server.request<NewScheduleAnswer>(newScheduleRequest, answers);
    await window.showTextDocument(await workspace.openTextDocument({ language: "wayfile", content: text }));
  } catch (error) {
    await window.showErrorMessage(`Wayfile: ${error instanceof Error ? error.message : String(error)}`);
  }
}

/** Undefined as soon as one question is escaped. */
async function ask(
  { earthing, standards }: ChoicesAnswer,
  given: Partial<NewScheduleQuestion>,
): Promise<NewScheduleQuestion | undefined> {
  const name =
    given.name ??
    (await window.showInputBox({
      title: `${title} (1/3)`,
      prompt: "The installation's name",
      placeHolder: "Wren Pier Sail Loft",
      validateInput: (text) =>
        text.trim() === ""
          ? "A schedule needs a name."
          : text.includes('"')
            ? "A name cannot hold a quotation mark."
            : undefined,
    }));
  if (name === undefined) return undefined;

  const arrangement =
    given.earthing ??
    (
      await window.showQuickPick(
        earthing.map((label): QuickPickItem => ({ label })),
        { title: `${title} (2/3)`, placeHolder: "The earthing arrangement" },
      )
    )?.label;
  if (arrangement === undefined) return undefined;

  const standard =
    given.standard ??
    (
      await window.showQuickPick([...standards], {
        title: `${title} (3/3)`,
        placeHolder: "The edition that the work is done to",
        matchOnDetail: true,
      })
    )?.id;
  if (standard === undefined) return undefined;

  return { name: name.trim(), earthing: arrangement, standard };
}

function known(given: unknown): Partial<NewScheduleQuestion> {
  if (typeof given !== "object" || given === null) return {};
  const entries = Object.entries(given).filter(
    ([key, value]) => ["name", "earthing", "standard"].includes(key) && typeof value === "string",
  );
  return Object.fromEntries(entries);
}
