/** `wayfile register`: the installations of a repository as a lead sees them, the most urgent first. */
import { hash } from "node:crypto";
import { resolve } from "node:path";
import { csvOf } from "../papers/csv.ts";
import { registerMarkdown } from "../reports/register/markdown.ts";
import { registerPage, script } from "../reports/register/page.ts";
import {
  type Listed,
  lapsesOf,
  particularsOf,
  registerCells,
  registerColumns,
  registerOf,
} from "../reports/register/register.ts";
import { isDay } from "../text/days.ts";
import { lines, type TerminalText, term } from "../text/terminal.ts";
import { counted } from "../text/words.ts";
import { findAsked } from "./asked.ts";
import { type Colours, coloursFor } from "./colours.ts";
import { wrapped } from "./columns.ts";
import { formatFor } from "./endings.ts";
import { exit } from "./exit.ts";
import { Disk } from "./files.ts";
import type { registerFormats } from "./format-names.ts";
import { Houses } from "./house.ts";
import { namesFrom } from "./names.ts";
import { registerJson } from "./register-json.ts";
import { tidy } from "./run/cache.ts";
import { Pace } from "./run/pace.ts";
import { planOf, Scan } from "./run/plan.ts";
import { run } from "./run/run.ts";
import { jsonText, refuse, sentences } from "./say.ts";
import type { Terminal } from "./terminal.ts";
import { writeFile } from "./write.ts";

export interface RegisterOptions {
  readonly format?: (typeof registerFormats)[number];
  readonly outputFile?: string;
  readonly on?: string;
  readonly cache: boolean;
  readonly threads?: number;
}

const byEnding: Readonly<Record<string, (typeof registerFormats)[number]>> = {
  ".txt": "text",
  ".md": "markdown",
  ".html": "html",
  ".htm": "html",
  ".csv": "csv",
  ".xlsx": "xlsx",
  ".json": "json",
};

export async function register(args: readonly string[], options: RegisterOptions, terminal: Terminal): Promise<number> {
  const today = options.on ?? terminal.today();
  if (!isDay(today)) return refuse(`A day is written as 2026-03-05; “${today}” is none.`, terminal);
  const chosen = options.format ? { format: options.format } : formatFor(options.outputFile, byEnding);
  if ("failure" in chosen) return refuse(chosen.failure, terminal);
  const { format } = chosen;
  const { rows, failures, isWhole } = await rowsOf(args, options, today, terminal);
  const window = options.outputFile === undefined ? terminal : { colour: false, width: undefined };
  const content = await contentOf(rows, today, format, window);
  // A file that another program reads says nothing of what was left out.
  const unwritten =
    isWhole || options.outputFile === undefined
      ? put(content, format, options.outputFile, terminal)
      : `“${options.outputFile}” was not written.`;
  terminal.err(sentences([...failures, ...(unwritten === undefined ? [] : [unwritten])]));
  if (!isWhole) return refuseWhole(terminal);
  return failures.length > 0 || unwritten !== undefined ? exit.failed : exit.clean;
}

function refuseWhole(terminal: Terminal): number {
  terminal.err(sentences(["Interrupted: this register is not whole."]));
  return exit.interrupted;
}

interface Rows {
  readonly rows: readonly Listed[];
  readonly failures: readonly string[];
  readonly isWhole: boolean;
}

async function rowsOf(
  args: readonly string[],
  options: RegisterOptions,
  today: string,
  terminal: Terminal,
): Promise<Rows> {
  const { nameOf, shown } = namesFrom(terminal.cwd);
  const detail = { nameOf, making: "register" } as const;
  const disk = new Disk(terminal.cwd);
  const pace = new Pace(terminal, false);
  const stop = new AbortController();
  const release = terminal.onInterrupt(() => stop.abort());
  const scan = new Scan(disk);
  const houses = new Houses(terminal.cwd, terminal.today());
  const { paths, failures } = await findAsked(
    { args },
    { disk, terminal, houses },
    {
      read: (path, plain) => scan.addNamed(path, plain),
      goesOn: (all) => {
        const breath = pace.breathe(() => `${counted(all, "file")} found, reading`);
        return breath ? breath.then(() => !stop.signal.aborted) : !stop.signal.aborted;
      },
    },
  );
  const plan = planOf(scan, paths, detail);
  const cache = options.cache ? terminal.cache : undefined;
  const { program, count = 1 } = terminal.threads ?? {};
  const threads = { room: count, wanted: options.threads };
  const entries = [];
  const failed = [...failures];
  for await (const { task, result } of run(plan, disk, {
    cwd: terminal.cwd,
    detail,
    cache,
    program,
    signal: stop.signal,
    threads,
  })) {
    if ("failure" in result) failed.push(`“${disk.shown(task.files[0])}” ${result.failure}`);
    else for (const row of result.rows) entries.push({ ...row, file: shown(result.root) });
    await pace.breathe(() => `${counted(entries.length, "installation")} read`);
  }
  pace.end();
  release();
  if (cache) tidy(cache);
  return { rows: registerOf(entries, today), failures: failed, isWhole: !stop.signal.aborted };
}

type Content = TerminalText | string | Uint8Array;

async function contentOf(
  rows: readonly Listed[],
  today: string,
  format: string,
  { colour, width }: Pick<Terminal, "colour" | "width">,
): Promise<Content> {
  const table = { columns: registerColumns, rows: rows.map(registerCells) };
  switch (format) {
    case "markdown":
      return registerMarkdown(rows, today, ({ file }) => file.split("/").map(encodeURIComponent).join("/")).text;
    case "html":
      return registerPage(rows, today, hash("sha256", script, "base64"));
    case "csv":
      return csvOf(table);
    case "xlsx": {
      const { workbookOf } = await import("../papers/workbook.ts");
      return await workbookOf(table, { file: "the schedules of this register", printed: today }, registerSheet);
    }
    case "json":
      return jsonText(registerJson(rows, today));
    default:
      return registerText(rows, today, coloursFor(colour), width);
  }
}

const registerSheet = {
  name: "Register",
  about: ["A register of installations, the most urgent first. Help to a competent person, and never a certificate."],
};

function put(content: Content, format: string, file: string | undefined, terminal: Terminal): string | undefined {
  if (file !== undefined) {
    const text = typeof content === "string" || content instanceof Uint8Array ? content : content.text;
    const failure = writeFile(resolve(terminal.cwd, file), text);
    return failure === undefined ? undefined : `“${file}” cannot be written: ${failure}`;
  }
  if (content instanceof Uint8Array) terminal.bytes(content);
  else if (typeof content !== "string") terminal.out(content);
  else if (format === "csv") terminal.data(content);
  else terminal.out(lines(content));
  return undefined;
}

/** What each installation is, and what needs attention; in a window no wider than that. */
function registerText(
  rows: readonly Listed[],
  today: string,
  colours: Colours,
  width = Number.POSITIVE_INFINITY,
): TerminalText {
  const indented = (text: string): string => wrapped(text, width - 2).join("\n  ");
  const entries = rows.map((row) => {
    const tint = row.errors > 0 ? colours.red : colours.yellow;
    const attention = row.attention.length > 0 ? [term`  ${tint(lines(indented(row.attention.join("; "))))}\n`] : [];
    return term`${colours.bold(row.title === "" ? row.file : row.title)}  ${colours.dim(row.file)}\n${term.join(attention)}  ${lines(indented(particularsOf(row).join(", ")))}\n`;
  });
  const urgent = rows.filter(({ attention }) => attention.length > 0).length;
  return term.join(
    [
      ...entries,
      ...lapsesOf(rows, today).map((lapse) => term`${colours.yellow(lines(wrapped(lapse, width).join("\n")))}\n`),
      term`${counted(rows.length, "installation")}, ${urgent} ${urgent === 1 ? "needs" : "need"} attention\n`,
    ],
    "\n",
  );
}
