import { studyWay, type WayStudy } from "../circuit/way.ts";
import { type Installation, installationsOf } from "../model/installation.ts";
import type { Wants } from "../proposal/proposal.ts";
import { propose } from "../proposal/propose.ts";
import { written } from "../proposal/write.ts";
import { textOf } from "../syntax/document.ts";
import type { TextEdit } from "../text/lines.ts";
import { gather } from "../workspace/gather.ts";
import { isNewer } from "../workspace/language-version.ts";
import type { LoadedFile } from "../workspace/loaded-file.ts";
import { coloursFor } from "./colours.ts";
import { exit } from "./exit.ts";
import { Disk } from "./files.ts";
import { loadOf } from "./load.ts";
import { refuse } from "./say.ts";
import { sizeJson } from "./size-json.ts";
import { type Sized, sizeText } from "./size-report.ts";
import type { Terminal } from "./terminal.ts";
import { replaceFile } from "./write.ts";

export interface SizeOptions {
  readonly way: string;
  readonly format: "text" | "json";
  readonly write?: boolean;
  readonly despiteTests?: boolean;
  readonly keepDevice?: boolean;
  readonly load?: string;
}

/** `wayfile size`: proposes device and cable for a way, and writes them into it on request. */
export function size(path: string, options: SizeOptions, terminal: Terminal): number {
  const load = loadAsked(options);
  if ("failure" in load) return refuse(load.failure, terminal);
  const disk = new Disk(terminal.cwd);
  const found = wayIn(path, options.way, disk);
  if ("failure" in found) return refuse(found.failure, terminal);
  const { study, installation, file } = found;
  const wants: Wants = { ...load, assumeRoute: true, ...(options.keepDevice ? { keepDevice: true } : {}) };
  const proposal = propose(study, wants, installation);
  const edits = proposal.fix?.edits ?? [];
  const writes = options.write === true && edits.length > 0;
  const refused = writes ? writeProposed(found, edits, options, disk) : undefined;
  if (refused !== undefined) return refuse(refused, terminal);
  const sized: Sized = {
    proposal,
    path: disk.shown(file.path),
    way: `${study.context.board.name}/${study.way.id}`,
    title: study.way.title,
    written: writes,
    changes: edits.length > 0,
    assumed: proposal.outcome === "fits" && (proposal.fix === undefined || options.load !== undefined),
  };
  terminal.out(options.format === "json" ? sizeJson(sized) : sizeText(sized, coloursFor(terminal.colour)));
  return proposal.outcome === "fits" ? exit.clean : exit.errors;
}

type Failure = { readonly failure: string };

function loadAsked({ load, write }: SizeOptions): ReturnType<typeof loadOf> | Record<string, never> {
  if (load === undefined) return {};
  const failure = "What would be is not written: put the load into the way, and size it with --write then.";
  const asked = loadOf(load);
  return "failure" in asked || !write ? asked : { failure };
}

interface FoundWay {
  readonly study: WayStudy;
  readonly installation: Installation;
  /** The one it is written in. */
  readonly file: LoadedFile;
}

function wayIn(path: string, name: string, disk: Disk): FoundWay | Failure {
  const root = disk.named(disk.path(path));
  if ("failure" in root) return { failure: `“${path}” cannot be read: ${root.failure}` };
  const { files } = gather(root, disk);
  if (files.some(isNewer)) return { failure: `“${path}” is in a newer version of the language: nothing is sized.` };
  const found = wayNamed(files, name);
  if ("failure" in found) return found;
  const file = files.find(({ document }) => document.segments.includes(found.study.way.segment)) ?? root;
  return { ...found, file };
}

/** Writes what is proposed; a sentence on why not, where it does not. */
function writeProposed(
  { study, file }: FoundWay,
  proposed: readonly TextEdit[],
  options: SizeOptions,
  disk: Disk,
): string | undefined {
  const tested = study.deadTests.length + study.liveTests.length > 0;
  if (tested && !options.despiteTests)
    return `Way ${options.way} has tests, and they are of the device and cable that are written: nothing was written. --despite-tests writes the proposal all the same, and notes it in the way.`;
  const failure = write(file, disk, study, tested ? [...proposed, ...noteOfChange(study)] : proposed);
  return failure && `“${disk.shown(file.path)}” cannot be written: ${failure}`;
}

/** What the tests in the way were made on, as it was written: the record of it would be lost otherwise. */
function noteOfChange({ facts, way }: WayStudy): readonly TextEdit[] {
  const lines = [facts.one("device"), facts.one("cable")].filter((fact) => fact?.segment === way.segment);
  const [first] = lines;
  if (!first) return [];
  const { text } = way.segment;
  const before = lines.map((fact) => fact && text.slice(fact.start, fact.end).replace(/\s+/g, " ")).join(", ");
  const at = text.lastIndexOf("\n", first.start - 1) + 1;
  const indent = text.slice(at, first.start);
  if (indent.trim() !== "") return [];
  const note = `The tests here are of ${before.replace(/["\\]/g, "")}; device and cable were proposed anew since`;
  return [{ start: at, end: at, text: `${indent}note "${note}"\n` }];
}

/** Only the way's own segment changes; a byte order mark and the line ends stay. */
function write({ path, document }: LoadedFile, disk: Disk, { way }: WayStudy, edits: Parameters<typeof written>[2]) {
  const read = disk.text(path);
  if ("failure" in read) return read.failure;
  if (read.text !== textOf(document)) return "it has changed since it was read.";
  const texts = document.segments.map((segment) =>
    segment === way.segment ? written(document, segment, edits) : segment.text,
  );
  return replaceFile(path, (read.bom ? "\ufeff" : "") + texts.join(""));
}

/** `A/3`: the board, and the way on it. A board's name may itself hold a stroke. */
function wayNamed(files: readonly LoadedFile[], named: string): Omit<FoundWay, "file"> | Failure {
  const at = named.lastIndexOf("/");
  if (at <= 0) return { failure: `A way is named by its board and its number, such as A/3; “${named}” is not.` };
  const boardName = named.slice(0, at);
  const id = named.slice(at + 1);
  const boards = installationsOf(files).flatMap((installation) =>
    installation.boards.map((place) => ({ ...place, installation })),
  );
  const place = boards.find(({ board }) => board.head.name === boardName);
  if (!place) {
    const names = boards.map(({ board }) => board.head.name);
    return { failure: `There is no board “${boardName}” in an installation here${among(names)}.` };
  }
  const way = place.board.ways.find((one) => one.id === id);
  if (!way)
    return { failure: `There is no way ${id} on board ${boardName}${among(place.board.ways.map((one) => one.id))}.` };
  return { study: studyWay(way, place.context), installation: place.installation };
}

const among = (names: readonly string[]): string => (names.length === 0 ? "" : `: there is ${names.join(", ")}`);
