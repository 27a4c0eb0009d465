/** Papers that leave the house as files, and readings that come back from one. */
import {
  commands,
  type Disposable,
  env,
  l10n,
  type QuickPickItem,
  Range,
  Uri,
  WorkspaceEdit,
  window,
  workspace,
} from "vscode";
import {
  type AskedColumn,
  type EnterAnswer,
  type EnterQuestion,
  enterReadingsRequest,
  type PaperAnswer,
  type PaperQuestion,
  paperRequest,
} from "../server/lsp/paper-protocol.ts";
import type { Server } from "./server.ts";

type Format = PaperQuestion["format"];
type Fill = NonNullable<PaperQuestion["fill"]>;

interface Choice<T> extends QuickPickItem {
  readonly of: T;
}

const endings: Readonly<Record<Format, string>> = {
  pdf: "pdf",
  xlsx: "xlsx",
  csv: "csv",
  html: "html",
  markdown: "md",
  text: "txt",
};

const formats = (): readonly Choice<Format>[] => [
  { of: "pdf", label: l10n.t("PDF"), description: l10n.t("to print or to send") },
  { of: "xlsx", label: l10n.t("Workbook"), description: l10n.t("to fill in, and to read back") },
  { of: "csv", label: l10n.t("CSV"), description: l10n.t("one row a circuit") },
  { of: "html", label: l10n.t("Web page"), description: l10n.t("for print") },
  { of: "markdown", label: l10n.t("Markdown") },
  { of: "text", label: l10n.t("Text") },
];

const fills = (): readonly Choice<Fill>[] => [
  { of: "filled", label: l10n.t("With its results") },
  { of: "blank", label: l10n.t("Blank, to be filled in") },
  { of: "last", label: l10n.t("Blank, with last time's readings beside") },
];

/** What a command may be given instead of asking: by a test, or by a key of one's own. */
interface Given {
  readonly format?: Format;
  readonly fill?: Fill;
  /** Where it is written to, or the file that is read. */
  readonly file?: string;
  /** What its headings are of ours, and the day of its tests. */
  readonly columns?: readonly string[];
  readonly on?: string;
}

export const paperCommands = (server: Server): Disposable[] => [
  commands.registerCommand("wayfile.schedulePaper", (given?: Given) => schedulePaper(server, given)),
  commands.registerCommand("wayfile.inspectionPaper", (given?: Given) => inspectionPaper(server, given)),
  commands.registerCommand("wayfile.fillSheet", (given?: Given) =>
    write(server, { paper: "sheet", format: "html" }, given),
  ),
  commands.registerCommand("wayfile.enterReadings", (given?: Given) => enterReadings(server, given)),
];

async function schedulePaper(server: Server, given: Given = {}): Promise<void> {
  const fill =
    given.fill ?? (await window.showQuickPick(fills(), { title: l10n.t("Schedule of circuits and results") }))?.of;
  if (fill === undefined) return;
  const format = given.format ?? (await picked(formats()));
  if (format !== undefined) await write(server, { paper: "schedule", format, fill }, given);
}

async function inspectionPaper(server: Server, given: Given = {}): Promise<void> {
  const format = given.format ?? (await picked(formats().filter(({ of }) => of !== "xlsx" && of !== "csv")));
  if (format !== undefined) await write(server, { paper: "inspection", format }, given);
}

const picked = async (choices: readonly Choice<Format>[]): Promise<Format | undefined> =>
  (await window.showQuickPick(choices, { title: l10n.t("As what kind of file?") }))?.of;

const names: Readonly<Record<PaperQuestion["paper"], string>> = {
  schedule: "schedule",
  inspection: "inspection",
  sheet: "to-fill-in",
};

/** Asks the server for the paper first: what may not be given is refused before anybody names a file. */
async function write(server: Server, asked: Pick<PaperQuestion, "paper" | "format" | "fill">, given: Given = {}) {
  const schedule = await theSchedule();
  if (!schedule) return;
  try {
    const question: PaperQuestion = { ...asked, uri: schedule.toString(), printed: today() };
    const { base64 } = await server.request<PaperAnswer>(paperRequest, question);
    const ending = endings[asked.format];
    const name = `${stem(schedule)}-${names[asked.paper]}.${ending}`;
    const target = given.file === undefined ? await askedTarget(schedule, name, ending) : Uri.file(given.file);
    if (!target) return;
    await workspace.fs.writeFile(target, bytesOf(base64));
    if (given.file === undefined) offer(target).catch(failed);
  } catch (error) {
    failed(error);
  }
}

function askedTarget(schedule: Uri, name: string, ending: string): Thenable<Uri | undefined> {
  const folder = folderOf(schedule);
  return window.showSaveDialog({
    ...(folder ? { defaultUri: Uri.joinPath(folder, name) } : {}),
    filters: { [ending.toUpperCase()]: [ending] },
  });
}

/** Not waited for: the offer stays as long as nobody answers it. */
async function offer(target: Uri): Promise<void> {
  const open = l10n.t("Open");
  const name = target.path.slice(target.path.lastIndexOf("/") + 1);
  if ((await window.showInformationMessage(l10n.t("{0} is written.", name), open)) === open)
    await env.openExternal(target);
}

/** Readings of a file into the schedule: an edit that can be undone, and a list of what did not fit. */
async function enterReadings(server: Server, given: Given = {}): Promise<void> {
  const schedule = await theSchedule();
  if (!schedule) return;
  const [file] = given.file === undefined ? ((await chosen(schedule)) ?? []) : [Uri.file(given.file)];
  if (!file) return;
  try {
    const bytes = await workspace.fs.readFile(file);
    const name = file.path.slice(file.path.lastIndexOf("/") + 1);
    const question: EnterQuestion = {
      uri: schedule.toString(),
      name,
      base64: base64Of(bytes),
    };
    const answer = await entered(server, question, given);
    if (!answer) return;
    const { edits, report, misfits } = answer;
    const change = new WorkspaceEdit();
    for (const { uri, range, newText } of edits)
      change.replace(
        Uri.parse(uri, true),
        new Range(range.start.line, range.start.character, range.end.line, range.end.character),
        newText,
      );
    if (edits.length > 0 && !(await workspace.applyEdit(change)))
      throw new Error(l10n.t("The schedule is being changed elsewhere: enter the readings again."));
    await remember(schedule, answer);
    if (misfits > 0) await showList(`${name}\n\n${report}`);
    // Not waited for: the command is done, whether or not anybody closes the message.
    else void window.showInformationMessage(`Wayfile: ${report.trim()}`);
  } catch (error) {
    failed(error);
  }
}

/** Asks what foreign headings hold, and the day where no column does; nothing where nobody wants to say. */
async function entered(server: Server, question: EnterQuestion, given: Given): Promise<EnterAnswer | undefined> {
  const first = {
    ...question,
    ...(given.columns ? { column: given.columns } : {}),
    ...(given.on ? { on: given.on } : {}),
  };
  const answer = await server.request<EnterAnswer>(enterReadingsRequest, first);
  if (!answer.asks) return answer;
  const { columns, ours, day } = answer.asks;
  const column: string[] = [];
  for (const one of columns) {
    const holds = await askedColumn(one, ours);
    if (holds === undefined) return undefined;
    column.push(`${one.heading}=${holds}`);
  }
  const needsDay = day && !column.some((pair) => pair.endsWith("=on"));
  const on = needsDay
    ? await window.showInputBox({ title: l10n.t("The day of these tests"), value: today(), ignoreFocusOut: true })
    : question.on;
  if (needsDay && on === undefined) return undefined;
  return await server.request<EnterAnswer>(enterReadingsRequest, { ...question, column, ...(on ? { on } : {}) });
}

/** The likeliest first, but nothing is taken without being chosen. */
async function askedColumn({ heading, samples, guess }: AskedColumn, ours: readonly string[]) {
  const out: Choice<string> = { of: "-", label: l10n.t("Leave this column out") };
  const choices = ours.map((of): Choice<string> => ({ of, label: of }));
  const likely = choices
    .filter(({ of }) => of === guess)
    .map((one) => ({ ...one, description: l10n.t("by its heading") }));
  const picked = await window.showQuickPick(
    [...likely, ...(guess ? [] : [out]), ...choices.filter(({ of }) => of !== guess), ...(guess ? [out] : [])],
    {
      title: l10n.t("What is in the column “{0}”?", heading),
      placeHolder: samples.join(", "),
      ignoreFocusOut: true,
    },
  );
  return picked?.of;
}

/** What headings were stated to mean stays in the settings of the repository, where the command line reads it too. */
async function remember(schedule: Uri, { settings }: EnterAnswer): Promise<void> {
  if (!settings) return;
  const top = workspace.getWorkspaceFolder(schedule)?.uri ?? folderOf(schedule);
  const target = settings.uri === undefined ? top && Uri.joinPath(top, ".wayfile.json") : Uri.parse(settings.uri, true);
  if (target) await workspace.fs.writeFile(target, new TextEncoder().encode(settings.text));
}

const chosen = (schedule: Uri): Thenable<Uri[] | undefined> => {
  const folder = folderOf(schedule);
  return window.showOpenDialog({
    title: l10n.t("Readings from a filled sheet, a workbook or a meter"),
    ...(folder ? { defaultUri: folder } : {}),
    filters: { [l10n.t("Readings")]: ["json", "xlsx", "csv", "txt"] },
  });
};

/** What did not fit, as a text beside the schedule that can be worked through and thrown away. */
async function showList(content: string): Promise<void> {
  const document = await workspace.openTextDocument({ content, language: "plaintext" });
  await window.showTextDocument(document, { viewColumn: -2, preserveFocus: true });
}

async function theSchedule(): Promise<Uri | undefined> {
  const document = window.activeTextEditor?.document;
  if (document?.languageId === "wayfile") return document.uri;
  await window.showInformationMessage(l10n.t("Wayfile: open a schedule first."));
  return undefined;
}

/** Both are of a browser and of Node alike. */
const bytesOf = (base64: string): Uint8Array => Uint8Array.from(atob(base64), (sign) => sign.charCodeAt(0));

function base64Of(bytes: Uint8Array): string {
  const parts: string[] = [];
  // In pieces: a call takes only so many arguments.
  for (let at = 0; at < bytes.length; at += 8192) parts.push(String.fromCharCode(...bytes.subarray(at, at + 8192)));
  return btoa(parts.join(""));
}

const stem = (schedule: Uri): string => (schedule.path.split("/").at(-1) ?? "schedule").replace(/\.ways$/, "");

const folderOf = (schedule: Uri): Uri | undefined =>
  schedule.scheme === "file" ? Uri.joinPath(schedule, "..") : workspace.workspaceFolders?.[0]?.uri;

/** The day here, not in Greenwich. */
function today(): string {
  const now = new Date();
  const two = (part: number): string => String(part).padStart(2, "0");
  return `${now.getFullYear()}-${two(now.getMonth() + 1)}-${two(now.getDate())}`;
}

function failed(error: unknown): void {
  void window.showErrorMessage(`Wayfile: ${error instanceof Error ? error.message : String(error)}`);
}
