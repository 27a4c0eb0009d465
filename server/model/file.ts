import { structural } from "../../grammar/vocabulary.ts";
import { Memo } from "../memo/memo.ts";
import type { Segment } from "../syntax/split.ts";
import { type Bound, bindSegment } from "./bind.ts";
import { wordAt } from "./fact-values.ts";
import { type Glance, glanceAtLines, nameAtLine } from "./glance.ts";
import { type Group, groupsOf } from "./groups.ts";
import { Head, nameless, withName } from "./head.ts";
import type { KnownLines } from "./known-lines.ts";
import type { Problem } from "./problems.ts";
import { recordedBy } from "./reads.ts";
import { type AnyBlock, asLiteral, type Fact, type FactOf, Facts } from "./values.ts";
import { wayRun } from "./way-run.ts";

/** One circuit. The same object for as long as its text stays the same. */
export interface Way {
  readonly id: string;
  readonly kind: "ring" | "radial" | "feeder" | "spare" | undefined;
  readonly title: string;
  readonly header: FactOf<"board", "way">;
  readonly facts: Facts<"way">;
  readonly segment: Segment;
  /** The circuit type it is one of, once that is known; its lines are among the facts. */
  readonly type?: FactOf<"file", "circuit-type">;
}

/** A board without its ways: what every one of its ways is judged by. The same object while its own lines stay the same. */
export interface BoardHead {
  readonly name: string;
  readonly title: string;
  readonly header: FactOf<"installation", "board">;
  readonly facts: Facts<"board">;
  /** What joining asks of it, which need not have it read. */
  readonly glance: Glance;
}

export interface Board {
  readonly head: BoardHead;
  readonly ways: readonly Way[];
  /** From its opening line to its last. */
  readonly segments: readonly Segment[];
}

export interface InstallationHead {
  readonly title: string;
  readonly header: FactOf<"file", "installation">;
  readonly facts: Facts<"installation">;
}

export interface InstallationPart {
  readonly head: InstallationHead;
  readonly boards: readonly Board[];
}

/** What one file says, before anything is known of other files. */
export interface FileModel {
  readonly segments: readonly Segment[];
  readonly facts: Facts<"file">;
  readonly installations: readonly InstallationPart[];
  /** Boards outside any installation, for a file that another uses. */
  readonly boards: readonly Board[];
  /** Problems of the language, by segment. */
  readonly problems: ReadonlyMap<Segment, readonly Problem[]>;
  /** Those of what somebody has asked for already. */
  readonly problemsSoFar: ReadonlyMap<Segment, readonly Problem[]>;
}

interface Kept {
  readonly within: AnyBlock;
  readonly bound: Bound;
}

/** What was made of a segment stays with it: the only state here, and never wrong, since a segment never changes. */
const kept = new Memo<Segment, Kept>();

function read(segment: Segment, within: AnyBlock, lines: KnownLines | undefined): Kept {
  const before = kept.get(segment);
  if (before && before.within === within) return before;
  const fresh: Kept = { within, bound: boundBy(lines, segment, within) };
  kept.set(segment, fresh);
  return fresh;
}

/** By lines that are known, where they are; they say what the segment says when it is read. */
function boundBy(lines: KnownLines | undefined, segment: Segment, within: AnyBlock): Bound {
  const facts = lines?.factsOf(segment, within);
  return facts ? { facts, problems: none } : bindSegment(segment, within);
}

/** What a segment says in a block, as it is known or else read for this once: the model may have it in another. */
export function boundOf(segment: Segment, within: AnyBlock): Bound {
  const before = kept.get(segment);
  return before?.within === within ? before.bound : bindSegment(segment, within);
}

/** Which files a file uses and whether it holds an installation: read without looking into its blocks. */
export function linksOf(segments: readonly Segment[]): {
  readonly uses: readonly string[];
  readonly hasInstallation: boolean;
} {
  const { top, groups } = groupsOf(segments);
  const lines = top.filter(({ text }) => text.includes("use"));
  return {
    uses: merged("file", lines)
      .all("use")
      .map((use) => use.args.path.value),
    hasInstallation: groups.some(({ open }) => open.word === "installation"),
  };
}

/**
 * Puts the segments of a file together, with everything taken over from before that did not change. `lines`: those that
 * whoever reads several files, or a large one, has met.
 */
export function readFile(segments: readonly Segment[], lines?: KnownLines): FileModel {
  const { top, groups } = groupsOf(segments);
  const facts = merged("file", top, lines);
  const installations: InstallationPart[] = [];
  const boards: BoardOnDemand[] = [];
  const all: BoardOnDemand[] = [];
  for (const group of groups) {
    if (group.open.word === "installation") {
      const children = group.children.map((child) => boardOf(child, "installation", lines));
      installations.push({ head: headOf(group, "file", "installation", lines) as InstallationHead, boards: children });
      all.push(...children);
    } else {
      const board = boardOf(group, "file", lines);
      boards.push(board);
      all.push(board);
    }
  }
  const outside = [...top, ...groups.flatMap((group) => (group.open.word === "installation" ? group.segments : []))];
  return new FileOnDemand({ segments, facts, installations, boards }, outside, all);
}

type Parts = Pick<FileModel, "segments" | "facts" | "installations" | "boards">;

/** What stands in the ways of a file is read when somebody asks for it. */
class FileOnDemand implements FileModel {
  readonly segments: readonly Segment[];
  readonly facts: Facts<"file">;
  readonly installations: readonly InstallationPart[];
  readonly boards: readonly Board[];
  readonly #outside: readonly Segment[];
  readonly #all: readonly BoardOnDemand[];
  #problems: ReadonlyMap<Segment, readonly Problem[]> | undefined;

  constructor(
    { segments, facts, installations, boards }: Parts,
    outside: readonly Segment[],
    all: readonly BoardOnDemand[],
  ) {
    this.segments = segments;
    this.facts = facts;
    this.installations = installations;
    this.boards = boards;
    this.#outside = outside;
    this.#all = all;
  }

  get problems(): ReadonlyMap<Segment, readonly Problem[]> {
    this.#problems ??= this.#problemsOf(this.#all);
    return this.#problems;
  }

  get problemsSoFar(): ReadonlyMap<Segment, readonly Problem[]> {
    return this.#problems ?? this.#problemsOf(this.#all.filter(({ isRead }) => isRead));
  }

  #problemsOf(boards: readonly BoardOnDemand[]): ReadonlyMap<Segment, readonly Problem[]> {
    const problems = new Map<Segment, readonly Problem[]>();
    for (const segment of this.#outside) noteProblems(segment, problemsOf(segment), problems);
    for (const { faulty } of boards)
      for (const segment of faulty) noteProblems(segment, problemsOnBoard(segment), problems);
    return problems;
  }
}

/** A board whose ways are read when somebody asks for them: of a large file what is looked at comes first. */
export class BoardOnDemand implements Board {
  readonly head: BoardHead;
  readonly segments: readonly Segment[];
  readonly #read: () => readonly Way[];
  #ways: readonly Way[] | undefined;
  #faulty: readonly Segment[] | undefined;

  constructor(head: BoardHead, segments: readonly Segment[], readWays: () => readonly Way[]) {
    this.head = head;
    this.segments = segments;
    this.#read = readWays;
  }

  get isRead(): boolean {
    return this.#ways !== undefined;
  }

  get ways(): readonly Way[] {
    // Who asks first has not asked for what is needed to read them.
    this.#ways ??= recordedBy(undefined, this.#read);
    return this.#ways;
  }

  /** Its segments with problems, few or none: a board that did not change is not walked through. */
  get faulty(): readonly Segment[] {
    this.#faulty ??=
      this.ways && this.head.facts && this.segments.filter((segment) => problemsOnBoard(segment).length > 0);
    return this.#faulty;
  }
}

const boardsKept = new Memo<Segment, BoardOnDemand>();

function boardOf(group: Group, within: AnyBlock, lines: KnownLines | undefined): BoardOnDemand {
  const { open, segments } = group;
  const before = boardsKept.get(open);
  if (before && sameItems(before.segments, segments)) return before;
  const own = segments.filter((segment) => segment.word !== "way");
  const head = headOf({ ...group, segments: own }, within, "board", lines) as BoardHead;
  const board = new BoardOnDemand(head, segments, () =>
    segments.flatMap((segment) => (segment.word === "way" ? waysOf(segment, lines) : [])),
  );
  boardsKept.set(open, board);
  return board;
}

/** Of a way nothing else is kept: its line and all in it are among its facts. */
class ReadWays {
  readonly ways: readonly Way[];
  readonly problems: readonly Problem[];

  constructor(ways: readonly Way[], problems: readonly Problem[]) {
    this.ways = ways;
    this.problems = problems;
  }
}

const waysKept = new Memo<Segment, Way | ReadWays>();

function waysOf(segment: Segment, lines: KnownLines | undefined): readonly Way[] {
  const before = waysKept.get(segment);
  if (before) return before instanceof ReadWays ? before.ways : [before];
  const { facts, problems } = boundBy(lines, segment, "board");
  const written = (facts as Facts<"board">).one("way");
  const ways = written ? waysNamed(written).map((header) => wayOf(header, segment)) : [];
  const [only] = ways;
  waysKept.set(segment, only && ways.length === 1 && problems.length === 0 ? only : new ReadWays(ways, problems));
  return ways;
}

const wayOf = (header: FactOf<"board", "way">, segment: Segment): Way => ({
  id: header.args.id.value,
  kind: header.args.kind?.value,
  title: header.args.title?.value ?? "",
  header,
  facts: header.inner as Facts<"way">,
  segment,
});

/** `way 10..12 spare` is three ways; any other line is one. */
function waysNamed(written: FactOf<"board", "way">): FactOf<"board", "way">[] {
  const header = withName(written, "id");
  const run = header.args.kind?.value === "spare" ? wayRun(header.args.id.value) : undefined;
  if (!run) return [header];
  return run.map((value) => ({ ...asLiteral(header), args: { ...header.args, id: { ...header.args.id, value } } }));
}

interface HeadKept {
  readonly parts: readonly Segment[];
  readonly head: Head;
}

const headsKept = new Memo<Segment, HeadKept>();

function headOf(
  group: Group,
  within: AnyBlock,
  kind: "installation" | "board",
  lines: KnownLines | undefined,
): InstallationHead | BoardHead {
  const before = headsKept.get(group.open);
  const isSame = before && sameItems(before.parts, group.segments);
  const head = isSame ? before.head : freshHead(group, within, kind, lines);
  if (!isSame) headsKept.set(group.open, { parts: group.segments, head });
  // What stands in no board is read with its file, and some lines may have been read in another block since.
  if (kind === "installation" || (isSame && head.isRead)) {
    read(group.open, within, lines);
    merged(kind, group.segments.slice(1), lines);
  }
  return head as unknown as InstallationHead | BoardHead;
}

function freshHead(
  { open, segments }: Group,
  within: AnyBlock,
  kind: "installation" | "board",
  lines: KnownLines | undefined,
): Head {
  const own = segments.slice(1);
  const plainName = kind === "board" ? nameAtLine(open) : undefined;
  const opened = (): Fact | undefined => read(open, within, lines).bound.facts.list[0];
  const innerOfLine = (): readonly Fact[] =>
    plainName === undefined ? (opened()?.inner?.list.filter(({ word }) => !structural.has(word)) ?? []) : [];
  const readOwn = (): Facts => {
    const rest = merged(kind, own, lines);
    const inner = innerOfLine();
    return inner.length === 0 ? rest : new Facts(kind, [...inner, ...rest.list], rest.broken, rest.struckOut);
  };
  const readOpening = () => {
    const header = withName(opened() ?? nameless(open, kind), kind === "board" ? "name" : "title");
    return { header, title: wordAt(header, "title") ?? "" };
  };
  const name = plainName ?? wordAt(readOpening().header, "name") ?? "";
  const glance = kind === "board" && innerOfLine().length === 0 ? glanceAtLines(own) : undefined;
  return new Head(name, readOpening, readOwn, glance);
}

function merged<B extends AnyBlock>(kind: B, segments: readonly Segment[], lines?: KnownLines): Facts<B> {
  const list: Fact[] = [];
  const broken: string[] = [];
  const struckOut: Fact[] = [];
  for (const segment of segments) {
    const { facts } = read(segment, kind, lines).bound;
    // Not spread: a file of rubbish can have more of them than a call takes arguments.
    for (const fact of facts.list) list.push(fact);
    for (const word of facts.broken) broken.push(word);
    for (const fact of facts.struckOut) struckOut.push(fact);
  }
  return new Facts(kind, list, broken, struckOut);
}

const problemsOf = (segment: Segment): readonly Problem[] => kept.get(segment)?.bound.problems ?? none;

/** The same of a segment of a board, whose ways are read by themselves. */
function problemsOnBoard(segment: Segment): readonly Problem[] {
  if (segment.word !== "way") return problemsOf(segment);
  const ways = waysKept.get(segment);
  return ways instanceof ReadWays ? ways.problems : none;
}

const none: readonly Problem[] = [];

function noteProblems(segment: Segment, found: readonly Problem[], problems: Map<Segment, readonly Problem[]>): void {
  if (found.length > 0) problems.set(segment, found);
}

export function sameItems<T>(a: readonly T[], b: readonly T[]): boolean {
  if (a.length !== b.length) return false;
  for (let index = 0; index < a.length; index++) if (a[index] !== b[index]) return false;
  return true;
}
