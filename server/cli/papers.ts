/**
 * Papers that leave the house: a report with its imprint, in a setting for people or as a file for other programs. What
 * needs a library is loaded when it is asked for.
 */
import { basename, dirname, isAbsolute, relative, resolve } from "node:path";
import { readBytes } from "../disk/read-now.ts";
import { Repository } from "../git/repository.ts";
import type { Installation } from "../model/installation.ts";
import { contentOf } from "../papers/paper.ts";
import { type PaperFormat, settingNames } from "../reports/common/paper-kinds.ts";
import type { ValueTable } from "../reports/schedule/values.ts";
import type { Imprint, Report } from "../reports/setting/document.ts";
import { lines } from "../text/terminal.ts";
import type { ProjectResult } from "../workspace/project.ts";
import { formatFor } from "./endings.ts";
import { exit } from "./exit.ts";
import { readProject, writeReport } from "./reporting.ts";
import { refuse, sentences } from "./say.ts";
import type { Terminal } from "./terminal.ts";
import { writeFile } from "./write.ts";

export interface PaperOptions {
  /** How it is set; by the ending of the file it goes to if left out. */
  readonly format?: PaperFormat;
  readonly outputFile?: string;
}

type Failure = { readonly failure: string };

interface PaperMakers {
  report(installations: readonly Installation[], check: () => ProjectResult): Report | Failure;
  /** For tables of values; nothing where the paper is none. */
  values?(installations: readonly Installation[]): ValueTable | Failure;
}

const byEnding: Readonly<Record<string, PaperFormat>> = {
  ".txt": "text",
  ".md": "markdown",
  ".html": "html",
  ".htm": "html",
  ".pdf": "pdf",
  ".xlsx": "xlsx",
  ".csv": "csv",
};

/** Writes a paper to a file or to standard output, or says in one sentence why there is none. */
export async function writePaper(
  path: string,
  { format, outputFile }: PaperOptions,
  terminal: Terminal,
  makers: PaperMakers,
): Promise<number> {
  const chosen = format ? { format } : formatFor(outputFile, byEnding);
  if ("failure" in chosen) return refuse(chosen.failure, terminal);
  const kind = chosen.format;
  const read = readProject(path, terminal);
  if ("failure" in read) return refuse(read.failure, terminal);
  const imprint: Imprint = {
    file: namedOnPaper(path, terminal.cwd),
    ...(await revisionOf(path, terminal.cwd)),
    printed: terminal.today(),
  };
  const { installations, check } = read;
  const { values } = makers;
  const made = await contentOf(
    kind,
    {
      report: () => makers.report(installations, check),
      ...(values ? { values: () => values(installations) } : {}),
    },
    imprint,
  );
  if ("failure" in made) return refuse(made.failure, terminal);
  if (outputFile !== undefined) {
    const failure = writeFile(resolve(terminal.cwd, outputFile), made.content);
    if (failure !== undefined) return refuse(`“${outputFile}” cannot be written: ${failure}`, terminal);
  } else if (typeof made.content !== "string") {
    terminal.bytes(made.content);
  } else if (kind === "csv") terminal.data(made.content);
  else terminal.out(lines(made.content));
  // What could not be read is not on the paper, and a person has to know.
  terminal.err(sentences(read.findings.map(({ message }) => message)));
  return read.findings.length > 0 ? exit.failed : exit.clean;
}

/** A report on standard output as it is; in a file or as PDF it leaves the house, and has its imprint. */
export function writeReportOrPaper(
  path: string,
  { format, outputFile }: PaperOptions,
  terminal: Terminal,
  report: PaperMakers["report"],
): Promise<number> | number {
  const setting = settingNames.find((name) => name === (format ?? "text"));
  if (outputFile === undefined && setting) return writeReport(path, setting, terminal, report);
  return writePaper(path, { ...(format ? { format } : {}), ...(outputFile ? { outputFile } : {}) }, terminal, {
    report,
  });
}

/** The commit the file was last changed in, and whether it differs from it now; nothing outside a repository. */
async function revisionOf(path: string, cwd: string): Promise<Pick<Imprint, "revision">> {
  const file = resolve(cwd, path);
  const repository = await Repository.round(dirname(file));
  if ("failure" in repository) return {};
  const inside = repository.inside(file);
  const head = await repository.commit("HEAD");
  if (inside === undefined || "failure" in head) return {};
  const [held, now] = [await repository.contents(head, [inside]), readBytes(file)];
  if ("failure" in held || "failure" in now) return {};
  const kept = held.get(inside);
  if (!kept) return { revision: "not in the repository yet" };
  return { revision: `${head.commit.slice(0, 8)}${kept.equals(now) ? "" : ", changed since"}` };
}

/** A file as its paper names it: where it lies on somebody's disk is no business of whoever is given that. */
function namedOnPaper(path: string, cwd: string): string {
  const below = relative(cwd, resolve(cwd, path));
  return below.startsWith("..") || isAbsolute(below) ? basename(path) : below.replaceAll("\\", "/");
}
