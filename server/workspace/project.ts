/**
 * The files of a project and what is found in them. Nothing here knows where files come from: a host lends a way to
 * read them and to follow a `use`.
 */
import type { Engine } from "../model/engine.ts";
import type { Board, Way } from "../model/file.ts";
import { type BoardInPlace, type Installation, installationsOf } from "../model/installation.ts";
import { checkInSlices, foundSoFar } from "../rules/frame/check.ts";
import { checkBoardInSlices, checkWaysInSlices, hasCheckedWays, isChecked } from "../rules/frame/check-board.ts";
import type { Slices } from "../rules/frame/check-way.ts";
import { type CheckResult, type SuppressedFinding, unusedInFiles } from "../rules/frame/departures.ts";
import type { Finding } from "../rules/frame/rule.ts";
import type { Segment } from "../syntax/split.ts";
import { assign, type FileFindings } from "./assign-findings.ts";
import { keyOf } from "./finding-order.ts";
import { type Gathering, gather, type Sources } from "./gather.ts";
import { isNewer } from "./language-version.ts";
import type { LoadedFile } from "./loaded-file.ts";
import { nameOfUri } from "./uri.ts";

/** One file with those it uses, checked together. */
export interface ProjectResult {
  readonly files: readonly FileFindings[];
  readonly installations: readonly Installation[];
  readonly suppressed: readonly SuppressedFinding[];
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

/** What is found in all files of a schedule together. */
export const wholeResult = ({ files, suppressed }: ProjectResult): CheckResult => ({
  findings: files.flatMap(({ findings }) => [...findings]),
  suppressed,
});

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
