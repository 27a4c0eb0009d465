/**
 * The files of a project and what is found in them. Nothing here knows where files come from: a host lends a way to
 * read them and to follow a `use`.
 */
import type { Engine } from "../model/engine.ts";
import { type Board, type FileModel, readFile, type Way } from "../model/file.ts";
import { type BoardInPlace, type Installation, installationsOf } from "../model/installation.ts";
import type { Problem } from "../model/problems.ts";
import type { Fact } from "../model/values.ts";
import { checkInSlices, foundSoFar } from "../rules/frame/check.ts";
import { checkBoardInSlices, checkWaysInSlices, hasCheckedWays, isChecked } from "../rules/frame/check-board.ts";
import type { Slices } from "../rules/frame/check-way.ts";
import type { SuppressedFinding } from "../rules/frame/departures.ts";
import { unusedInFiles } from "../rules/frame/departures.ts";
import { type Finding, findingOf, valueSpot, wordSpot } from "../rules/frame/rule.ts";
import { type Document, documentOf } from "../syntax/document.ts";
import type { Segment } from "../syntax/split.ts";
import { withShortWords } from "../text/words.ts";
import { byPlace, keyOf } from "./finding-order.ts";
import { isLarge, largeFinding, sizeOf } from "./large-text.ts";
import { nameOfUri } from "./uri.ts";

export type ReadResult = { readonly text: string } | { readonly failure: string };

export interface Host {
  /** The text of a file, or one sentence that says why it cannot be had. */
  read(path: string): Promise<ReadResult>;
  /** The path a `use` means, from the file it stands in. */
  resolve(from: string, use: string): string;
}

export interface LoadedFile {
  readonly path: string;
  readonly document: Document;
  readonly model: FileModel;
  /** Of a file that is too large to be read: it stands as an empty one. */
  readonly unreadSize?: number;
}

export function loadFile(path: string, document: Document): LoadedFile {
  const size = sizeOf(document);
  if (isLarge(size)) return { ...loadFile(path, documentOf("")), unreadSize: size };
  return { path, document, model: readFile(document.segments) };
}

interface FileFindings {
  readonly file: LoadedFile;
  readonly findings: readonly Finding[];
}

/** One file with those it uses, checked together. */
export interface ProjectResult {
  readonly files: readonly FileFindings[];
  readonly installations: readonly Installation[];
  readonly suppressed: readonly SuppressedFinding[];
}

/** Where each file of a project comes from: open documents first, then the host. */
export interface Sources {
  file(path: string): LoadedFile | { readonly failure: string };
  resolve(from: string, use: string): string;
  /** What all schedules from here are checked with; without one, each stands for itself. */
  readonly engine?: Engine;
}

export interface Gathering {
  readonly files: LoadedFile[];
  readonly findings: Finding[];
  /** Whether a file that is used could not be read. */
  readonly unread: boolean;
}

/** The file and all it uses, each once; what could not be read or closes a circle is a finding on its `use` line. */
export function gather(root: LoadedFile, sources: Sources): Gathering {
  const files: LoadedFile[] = [];
  let unread = false;
  const findings: Finding[] = [];
  const onTheWay: string[] = [];
  const visit = (file: LoadedFile): void => {
    files.push(file);
    onTheWay.push(file.path);
    // A line that could not be understood may name a file that defines what seems to be missing.
    if (file.model.facts.broken.includes("use") || file.unreadSize !== undefined) unread = true;
    for (const use of file.model.facts.all("use")) {
      const path = sources.resolve(file.path, use.args.path.value);
      const say = (check: "use-cycle" | "use-missing", message: string) =>
        findings.push(languageFinding(check, valueSpot(use, use.args.path), message));
      if (onTheWay.includes(path)) {
        say(
          "use-cycle",
          `This file is already being read: ${[...onTheWay.slice(onTheWay.indexOf(path)), path].map(nameOfUri).join(" uses ")}.`,
        );
      } else if (!files.some((other) => other.path === path)) {
        const used = sources.file(path);
        if ("failure" in used) {
          unread = true;
          say(
            "use-missing",
            `“${use.args.path.value}” cannot be used: ${used.failure} What it defines is not known here.`,
          );
        } else visit(used);
      }
    }
    onTheWay.pop();
  };
  visit(root);
  return { files, findings, unread };
}

/** A file and all it uses as they stand at one moment. What follows from them is worked out when asked for. */
export class Project {
  readonly root: LoadedFile;
  readonly gathering: Gathering;
  readonly #engine: Engine | undefined;
  #installations: readonly Installation[] | undefined;
  /** Boards of which some ways were checked before the rest. */
  readonly #begun = new Set<BoardInPlace>();
  #result: ProjectResult | undefined;

  constructor(root: LoadedFile, sources: Sources) {
    this.root = root;
    this.gathering = gather(root, sources);
    this.#engine = sources.engine;
  }

  get files(): readonly LoadedFile[] {
    return this.gathering.files;
  }

  get installations(): readonly Installation[] {
    this.#installations ??= installationsOf(this.gathering.files, this.gathering.unread, this.#engine);
    return this.#installations;
  }

  /** As a message names it: its installation and its file. */
  get name(): string {
    const file = nameOfUri(this.root.path);
    const [only, ...others] = this.installations;
    return only && others.length === 0 && only.head.title !== "" ? `“${only.head.title}”, ${file}` : file;
  }

  /** What is found, once it is worked out. */
  get known(): ProjectResult | undefined {
    return this.#result;
  }

  get result(): ProjectResult {
    const slices = this.check();
    for (;;) {
      const { done, value } = slices.next();
      if (done) return value;
    }
  }

  /** Works out what is found, a way at a time. */
  *check(): Slices<ProjectResult> {
    this.#result ??= yield* checkAll(this);
    return this.#result;
  }

  /** What is found in a file so far, while the check is under way. */
  soFar(file: LoadedFile): readonly Finding[] {
    const result = this.#result?.files ?? this.#partsOf(file);
    return result.find((one) => one.file === file)?.findings ?? [];
  }

  /** Whether all boards that hold some segments are checked already. */
  hasCheckedBoards(wanted: ReadonlySet<Segment>): boolean {
    return this.#uncheckedWith(wanted).length === 0;
  }

  /** The same of the ways they hold alone. */
  hasCheckedWays(wanted: ReadonlySet<Segment>): boolean {
    return this.#uncheckedWith(wanted).every((place) => hasCheckedWays(place, isOf(wanted)));
  }

  /** After an edit they are few: the segments of the others are not looked through. */
  #uncheckedWith(wanted: ReadonlySet<Segment>): readonly BoardInPlace[] {
    return this.installations.flatMap(({ boards }) =>
      boards.filter((place) => !isChecked(place) && holdsOne(place.board, wanted)),
    );
  }

  #partsOf(file: LoadedFile): readonly FileFindings[] {
    const { files, findings } = this.gathering;
    const isNew = firstOfItsKind();
    const found = files.some(isNewer)
      ? []
      : this.installations.flatMap((one) => foundSoFar(one, this.#begun)).filter(isNew);
    return assign([file], [...findings, ...found], ({ problemsSoFar }) => problemsSoFar);
  }

  /** Checks the boards that hold some segments before the others: what is found on them is kept for the rest. */
  *checkBoards(wanted: ReadonlySet<Segment>): Slices<void> {
    if (this.#result || this.files.some(isNewer)) return;
    for (const place of this.#uncheckedWith(wanted)) yield* checkBoardInSlices(place);
  }

  /** Checks the ways that are among some segments, and nothing else of their boards. */
  *checkWays(wanted: ReadonlySet<Segment>): Slices<void> {
    if (this.#result || this.files.some(isNewer)) return;
    for (const place of this.#uncheckedWith(wanted)) {
      this.#begun.add(place);
      yield* checkWaysInSlices(place, isOf(wanted));
    }
  }
}

const isOf =
  (segments: ReadonlySet<Segment>) =>
  (way: Way): boolean =>
    segments.has(way.header.segment);

const holdsOne = ({ segments }: Board, wanted: ReadonlySet<Segment>): boolean =>
  segments.some((one) => wanted.has(one));

function* checkAll({ gathering: { files, findings: gathered }, installations }: Project): Slices<ProjectResult> {
  const findings = [...gathered];
  const suppressed: SuppressedFinding[] = [];
  const isNew = installations.length > 1 ? firstOfItsKind() : () => true;
  // A word may have got another meaning since: what a file of a newer version says is not known.
  for (const installation of files.some(isNewer) ? [] : installations) {
    const result = yield* checkInSlices(installation);
    // Not spread: there can be more of them than a call takes arguments.
    for (const finding of result.findings) if (isNew(finding)) findings.push(finding);
    for (const one of result.suppressed) suppressed.push(one);
  }
  // A file's own departures may suppress something in one installation and nothing in another: judged when all are seen.
  if (installations.length > 0 && !files.some(isNewer)) {
    for (const finding of unusedInFiles(
      files.map(({ model }) => model),
      suppressed,
    ))
      findings.push(finding);
  }
  return { files: assign(files, findings), installations, suppressed };
}

/** All that is found in a file and those it uses. */
export const checkProject = (root: LoadedFile, sources: Sources): ProjectResult => new Project(root, sources).result;

/** What two installations share, such as an instrument of the file, is spoken of once. */
function firstOfItsKind(): (finding: Finding) => boolean {
  const seen = new Map<Segment, Set<string>>();
  return (finding) => {
    const { segment } = finding.spot;
    const key = keyOf(finding);
    const before = seen.get(segment);
    if (before?.has(key)) return false;
    if (before) before.add(key);
    else seen.set(segment, new Set([key]));
    return true;
  };
}

/** Sorts findings to the files their segments belong to, each file's in the order of its text. */
function assign(
  files: readonly LoadedFile[],
  findings: readonly Finding[],
  problemsOf: (model: FileModel) => FileModel["problems"] = ({ problems }) => problems,
): FileFindings[] {
  const bySegment = new Map<Segment, Finding[]>();
  for (const finding of findings) {
    const before = bySegment.get(finding.spot.segment);
    if (before) before.push(finding);
    else bySegment.set(finding.spot.segment, [finding]);
  }
  return files.map((file) => {
    const own: Finding[] = [];
    const problems: FileModel["problems"] = isNewer(file) ? new Map() : problemsOf(file.model);
    if (bySegment.size > 0 || problems.size > 0) {
      for (const segment of file.document.segments) {
        const ofLanguage = problems.get(segment);
        const found = bySegment.get(segment);
        // Most have neither.
        if (!ofLanguage && !found) continue;
        const here = [
          ...(ofLanguage ?? []).map((problem) => problemFinding(passedOver(problem, segment, file), segment)),
          ...(found ?? []),
        ];
        here.sort(byPlace);
        for (const finding of here) own.push(finding);
      }
    }
    own.unshift(...versionFindings(file));
    return { file, findings: own };
  });
}

/** A word of a later version that the file allows to be passed over. */
function passedOver(problem: Problem, { text }: Segment, { model }: LoadedFile): Problem {
  if (problem.check !== "unknown-word") return problem;
  const word = text.slice(problem.start, problem.end);
  const named = model.facts.all("may-ignore").some(({ args }) => args.words.some(({ value }) => value === word));
  if (!named) return problem;
  const message = `“${word}” is of a later version of the language and may be passed over: what it says is not judged here.`;
  return { ...problem, check: "passed-over", message, fixes: [] };
}

/** Faults of the language that cost nothing. */
const harmless: ReadonlySet<string> = new Set(["passed-over", "former-word"]);

function problemFinding({ check, message, start, end, fixes }: Problem, segment: Segment): Finding {
  const severity = harmless.has(check) ? "information" : "error";
  const shown = withShortWords(message);
  return { check: `language/${check}`, severity, message: shown, spot: { segment, start, end }, related: [], fixes };
}

function languageFinding(check: "use-cycle" | "use-missing", spot: Finding["spot"], message: string): Finding {
  return findingOf(
    { id: `language/${check}`, severity: "error", since: "0.1", title: "", why: "", clauses: [], examples: [] },
    spot,
    { message },
  );
}

/** The version of the language this program speaks. Older ones are read for ever. */
export const languageVersion = 1;

/** Whether a file is in a version of the language that this program does not know. */
export const isNewer = ({ model }: Pick<LoadedFile, "model">): boolean =>
  (model.facts.one("wayfile")?.args.version.value ?? 0) > languageVersion;

function versionFindings({ model, document, unreadSize }: LoadedFile): Finding[] {
  if (unreadSize !== undefined) return largeFinding(document, unreadSize);
  const [first] = document.segments;
  if (!first || document.segments.every((segment) => segment.text.trim() === "")) return [];
  const fact = model.facts.one("wayfile");
  if (!fact && model.facts.broken.includes("wayfile")) return [];
  const segment = fact?.segment ?? first;
  const lineEnd = first.text.search(/\r|\n|$/);
  if (!fact) {
    const finding = languageFindingOf(
      "no-version",
      { segment, start: 0, end: lineEnd },
      `The version of the language is not stated: begin the file with “wayfile ${languageVersion}”.`,
    );
    return [
      {
        ...finding,
        severity: "warning",
        fixes: [
          {
            title: `Add “wayfile ${languageVersion}”`,
            edits: [{ start: 0, end: 0, text: `wayfile ${languageVersion}\n` }],
            safe: true,
          },
        ],
      },
    ];
  }
  if (!isFirst(fact, document)) {
    const message = "“wayfile” is the first statement of a file: move this line to the top.";
    return [{ ...languageFindingOf("no-version", wordSpot(fact), message), severity: "warning" }];
  }
  if (fact.args.version.value < 1) {
    const message = `There is no version ${fact.args.version.value} of the language: the first is 1.`;
    return [languageFindingOf("newer-version", valueSpot(fact, fact.args.version), message)];
  }
  if (!isNewer({ model })) return [];
  return [
    languageFindingOf(
      "newer-version",
      valueSpot(fact, fact.args.version),
      `This file is in version ${fact.args.version.value} of the language; this program knows up to ${languageVersion}. Nothing is judged: get a newer program.`,
    ),
  ];
}

/** Nothing but blank lines and comments stands above it. */
function isFirst({ segment, start }: Fact, { segments }: Document): boolean {
  const above = segments.slice(0, segments.indexOf(segment)).map(({ text }) => text);
  return [...above, segment.text.slice(0, start)].every((text) => /^\ufeff?(?:\s|#[^\r\n]*)*$/.test(text));
}

const languageFindingOf = (check: string, spot: Finding["spot"], message: string): Finding => ({
  check: `language/${check}`,
  severity: "error",
  message,
  spot,
  related: [],
  fixes: [],
});

/** Text of unknown origin as a file. */
export const fileOfText = (path: string, text: string): LoadedFile => loadFile(path, documentOf(text));
