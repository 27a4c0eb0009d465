import { l10n, type QuickPickItem, Range, type TextDocument, window, workspace } from "vscode";
import {
  type ChoicesAnswer,
  choicesRequest,
  type NewScheduleAnswer,
  type NewScheduleQuestion,
  newScheduleRequest,
} from "../server/lsp/protocol.ts";
import type { Server } from "./server.ts";

/** A question at a time; undefined as soon as one is escaped. */
type Ask<Answer> = (title: string) => Thenable<Answer | undefined>;

/**
 * Asks what every schedule begins with and opens one that says so.
 * @param given answers already known, as a key binding's `args` may hold; only the others are asked for
 */
export async function newSchedule(server: Server, given: unknown): Promise<void> {
  try {
    const answers = await ask(await server.request<ChoicesAnswer>(choicesRequest), known(given));
    if (!answers) return;
    const { text } = await server.request<NewScheduleAnswer>(newScheduleRequest, answers);
    const document = await workspace.openTextDocument({ language: "wayfile", content: text });
    await window.showTextDocument(document, { selection: firstToWrite(document) });
  } catch (error) {
    await window.showErrorMessage(`Wayfile: ${error instanceof Error ? error.message : String(error)}`);
  }
}

/** The word of the first way that is to become a circuit: what is typed there lays it out. */
function firstToWrite(document: TextDocument): Range {
  const from = Math.max(0, document.getText().search(/(?<=way 1 )spare/));
  return new Range(document.positionAt(from), document.positionAt(from + "spare".length));
}

async function ask(
  { earthing, standards, premises }: ChoicesAnswer,
  given: Partial<NewScheduleQuestion>,
): Promise<NewScheduleQuestion | undefined> {
  const questions: { readonly [Key in keyof NewScheduleQuestion]-?: Ask<NonNullable<NewScheduleQuestion[Key]>> } = {
    name: (title) =>
      window.showInputBox({
        title,
        prompt: l10n.t("The installation's name"),
        placeHolder: "Wren Pier Sail Loft",
        validateInput: (text) =>
          text.trim() === ""
            ? l10n.t("A schedule needs a name.")
            : text.includes('"')
              ? l10n.t("A name cannot hold a quotation mark.")
              : undefined,
      }),
    premises: oneOf(premises, l10n.t("The kind of premises")),
    earthing: oneOf(earthing, l10n.t("The earthing arrangement")),
    standard: oneOf(standards, l10n.t("The edition that the work is done to")),
    ways: async (title) => {
      const count = await window.showInputBox({
        title,
        prompt: l10n.t("How many ways the board has"),
        value: "10",
        validateInput: (text) =>
          /^[1-9]\d?$/.test(text.trim()) && Number(text) <= mostWays
            ? undefined
            : l10n.t("A number from 1 to {0}.", mostWays),
      });
      return count === undefined ? undefined : Number(count);
    },
  };
  const answers: Record<string, unknown> = { ...given };
  const open = Object.entries(questions).filter(([key]) => !(key in given));
  for (const [index, [key, question]] of open.entries()) {
    const answer = await question(`${l10n.t("New Schedule")} (${index + 1}/${open.length})`);
    if (answer === undefined) return undefined;
    answers[key] = answer;
  }
  return { ...(answers as unknown as NewScheduleQuestion), name: String(answers.name).trim() };
}

const mostWays = 48;

const oneOf =
  (choices: readonly (QuickPickItem & { readonly id: string })[], placeHolder: string): Ask<string> =>
  async (title) =>
    (await window.showQuickPick([...choices], { title, placeHolder, matchOnDetail: true }))?.id;

function known(given: unknown): Partial<NewScheduleQuestion> {
  if (typeof given !== "object" || given === null) return {};
  const entries = Object.entries(given).filter(([key, value]) =>
    key === "ways"
      ? typeof value === "number"
      : ["name", "earthing", "standard", "premises"].includes(key) && typeof value === "string",
  );
  return Object.fromEntries(entries);
}
