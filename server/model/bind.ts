import type { IToken } from "chevrotain";
import { type FormerWord, formerWords } from "../../grammar/former-words.ts";
import { endOf } from "../../grammar/lexer.ts";
import type { WordRow } from "../../grammar/params.ts";
import type { Statement, SyntaxFault } from "../../grammar/parser.ts";
import { parse } from "../../grammar/parser.ts";
import { asInTable, type BlockKind, containers, openedBy, rowOf, structural } from "../../grammar/vocabulary.ts";
import { closeFitting } from "../memo/close-fitting.ts";
import type { Segment } from "../syntax/split.ts";
import { listed } from "../text/words.ts";
import { bindArguments } from "./arguments.ts";
import type { LanguageCheck, Problem } from "./problems.ts";
import { problemAt, replaceFix } from "./refusals.ts";
import { phraseOfLine } from "./site-phrases.ts";
import { spokenSign } from "./spoken-sign.ts";
import { writtenTwice } from "./twice.ts";
import { isDeviceAlone, lineWith, meantBy, unknownWord, wordsOf } from "./unknown-word.ts";
import { conflictMark, type Fact, Facts } from "./values.ts";
import { runOfCircuits } from "./way-run.ts";

/** What one segment says, read in the block it stands in. */
export interface Bound {
  readonly facts: Facts;
  readonly problems: readonly Problem[];
}

/**
 * Reads a segment by itself. The result depends on its text and on the kind of block round it and on nothing else, so
 * it is kept for as long as the segment is.
 */
export function bindSegment(segment: Segment, within: BlockKind, former: readonly FormerWord[] = formerWords): Bound {
  const parsed = parse(segment.text, segment.mends);
  const faults = onceALine(realFaults(parsed.faults, segment), segment.text);
  const problems: Problem[] = onceAConflict(faults).map(
    (fault) =>
      lostOpen(fault, segment) ??
      strangeQuotes(fault, segment.text) ??
      lowOpen(fault, segment.text) ??
      spokenSign(fault, segment.text) ??
      syntaxProblem(fault),
  );
  const missingClose = segment.fault === "unclosed" && segment.kind === "open";
  if (missingClose) problems.push(unclosedContainer(segment, parsed.statements[0]));
  const conflicts = faults.filter(({ fault }) => fault === "conflict").map(({ start }) => start);
  const binder = new Binder(segment, problems, former, conflicts);
  const facts = binder.block(within, parsed.statements, conflicts.length > 0 ? [conflictMark] : []);
  const answered = problems.filter(({ check }) => ["missing-quotes", "wrong-argument", "unknown-word"].includes(check));
  return { facts, problems: problems.filter((problem) => problem.message !== "" && !isWithin(problem, answered)) };
}

/** A comma among words that lack their quotes is no fault of its own, nor is the sign in `TP&N`. */
const isWithin = ({ check, start, end }: Problem, answered: readonly Problem[]): boolean =>
  check === "stray" && answered.some((other) => other.start <= start && end <= other.end);

/** An opening line has its close in another segment, and the other way about; that is no fault of its own. */
function realFaults(faults: readonly SyntaxFault[], segment: Segment): readonly SyntaxFault[] {
  if (segment.kind === "open") return faults.filter(({ fault }) => fault !== "unclosed");
  if (segment.kind !== "close" || segment.fault === "extra-close") return faults;
  const own = faults.findIndex(({ fault }) => fault === "extra-close");
  return faults.filter((_, index) => index !== own);
}

/** The marks of one conflict are one fault, where its first line stands; marks that have lost it are each one. */
function onceAConflict(faults: readonly SyntaxFault[]): readonly SyntaxFault[] {
  let open = false;
  return faults.filter(({ fault, image }) => {
    if (fault !== "conflict") return true;
    const isInner = open && !image.startsWith("<");
    open = image.startsWith("<") || (open && !image.startsWith(">"));
    return !isInner;
  });
}

/** A line of signs that mean nothing is one fault, not one for each of them. */
function onceALine(faults: readonly SyntaxFault[], text: string): readonly SyntaxFault[] {
  return faults.filter((fault, index) => {
    const before = faults[index - 1];
    if (fault.fault !== "stray" || before?.fault !== "stray") return true;
    return /[\r\n]/.test(text.slice(before.end, fault.start));
  });
}

class Binder {
  readonly #segment: Segment;
  readonly #problems: Problem[];

  readonly #former: readonly FormerWord[];

  /** Where the marks of a merge conflict stand. */
  readonly #conflicts: readonly number[];

  constructor(segment: Segment, problems: Problem[], former: readonly FormerWord[], conflicts: readonly number[]) {
    this.#segment = segment;
    this.#former = former;
    this.#problems = problems;
    this.#conflicts = conflicts;
  }

  block(kind: BlockKind, statements: readonly Statement[], unread: readonly string[] = none): Facts {
    const list: Fact[] = [];
    const broken: string[] = [...unread];
    const struckOut: Fact[] = [];
    for (const statement of statements) {
      const homes = statement.block ? homesOfLines(kind, statement) : none;
      const fact = this.#statement(kind, statement, homes);
      broken.push(...homes);
      if (fact?.inner?.list.some(({ word }) => word === "struck-out")) struckOut.push(fact);
      else if (fact === undefined) broken.push(...meant(kind, statement));
      else {
        if (fact.misread && !fact.inner) broken.push(...meant(kind, statement));
        this.#once(kind, fact, list, statement);
        list.push(fact);
      }
    }
    return new Facts(kind, closeFitting(list), closeFitting(broken), closeFitting(struckOut));
  }

  #statement(kind: BlockKind, statement: Statement, homes: readonly string[]): Fact | undefined {
    const word = this.#asNow(kind, statement.word);
    const row = rowOf(kind, word.image);
    if (!row) {
      this.#problems.push(unknownWord(kind, statement));
      return undefined;
    }
    const bound = bindArguments(word, row, statement.args);
    const phrase = bound.problems.length > 0 ? phraseOfLine([word, ...statement.args], wordsOf(kind)) : undefined;
    // What a word that opens nothing lacks on its line matters less than that it opens nothing.
    const ownProblems = homes.length > 0 ? [] : bound.problems;
    this.#problems.push(...(phrase ? [phrase] : ownProblems));
    if (word.image === "way" && bound.problems.length === 0) this.#problems.push(...runOfCircuits(bound));
    const inner = this.#inner(kind, row, statement, homes);
    if (bound.problems.length > 0 && !row.opens) return this.#saidByItsWord(row, statement);
    if (bound.problems.some((problem) => problem.check !== "limitation-without-reason") && !inner) return undefined;
    // Of all that is kept of a file these are most, and nearly all have no more than this: spread with what they might
    // have besides, each would be given the room for it.
    const fact: Fact = {
      word: asInTable(word.image),
      args: bound.args,
      provenance: bound.provenance,
      segment: this.#segment,
      start: statement.start,
      wordEnd: endOf(statement.word),
      end: statement.end,
    };
    const isMisread = bound.problems.length > 0;
    if (bound.record === undefined && bound.corrections.length === 0 && !isMisread)
      return inner ? { ...fact, inner } : fact;
    return {
      ...fact,
      ...(bound.record === undefined ? {} : { record: bound.record }),
      ...(bound.corrections.length > 0 ? { corrections: bound.corrections } : {}),
      ...(inner ? { inner } : {}),
      ...(isMisread ? { misread: true as const } : {}),
    };
  }

  /** What a word says by itself, whatever else stands on its line: of what is required it leaves no choice. */
  #saidByItsWord(row: WordRow, { word, start, end }: Statement): Fact | undefined {
    const [only, ...others] = Object.entries(row.params).filter(([, { optional }]) => !optional);
    if (!only || others.length > 0) return undefined;
    const [name, { accepts }] = only;
    const choices = accepts.kind === "choice" && !accepts.absent ? Object.keys(accepts.choices) : [];
    const [value] = choices;
    if (value === undefined || choices.length > 1) return undefined;
    const at = { start: word.startOffset, end: endOf(word) };
    const args = { [name]: { value, ...at } };
    const segment = this.#segment;
    return {
      word: asInTable(word.image),
      args,
      provenance: "measured",
      segment,
      start,
      wordEnd: at.end,
      end,
      misread: true,
    };
  }

  /** A word by its present name. */
  #asNow(kind: BlockKind, word: IToken): IToken {
    const renamed = this.#former.find(({ block, former }) => block === kind && former === word.image);
    if (!renamed) return word;
    const message = `“${word.image}” is called “${renamed.word}” since ${renamed.since}; it is read as that.`;
    this.#problems.push(problemAt("former-word", message, word, [{ ...replaceFix(word, renamed.word), safe: true }]));
    return { ...word, image: renamed.word };
  }

  #inner(kind: BlockKind, row: WordRow, statement: Statement, homes: readonly string[]): Facts | undefined {
    const { block, word } = statement;
    const opens = openedBy(row);
    if (opens && block) {
      if (containers.has(word.image)) this.#partsOnOneLine(block.statements);
      return this.block(opens, block.statements);
    }
    if (opens && !row.blockOptional && this.#segment.kind !== "open") {
      this.#report("missing-block", `“${word.image}” opens a block: its facts are written between { and }.`, statement);
    } else if (!opens && block) {
      const openings = homes.map((name) => rowOf(kind, name)?.example.split("\n")[0] ?? name);
      const where = openings.length > 0 ? `: these lines stand in ${listed(openings, "or")}.` : ".";
      this.#report("wrong-argument", `“${word.image}” is one line and takes no block${where}`, {
        start: block.open.startOffset,
        end: endOf(block.open),
      });
    }
    return opens && new Facts(opens, [], []);
  }

  /** Installations and boards are divided by their lines: a way on the line of its board would not be seen. */
  #partsOnOneLine(statements: readonly Statement[]): void {
    for (const { word } of statements)
      if (structural.has(word.image))
        this.#report("crowded", `“${word.image}” begins a part of the file and belongs on a line of its own.`, {
          start: word.startOffset,
          end: endOf(word),
        });
  }

  /** What a block has twice is reported, where it is not on the two sides of a conflict. */
  #once(kind: BlockKind, fact: Fact, before: readonly Fact[], statement: Statement): void {
    const isOtherSide = ({ start }: Fact) => this.#conflicts.some((at) => start < at && at < statement.start);
    const beside = this.#conflicts.length > 0 ? before.filter((other) => !isOtherSide(other)) : before;
    const twice = writtenTwice(kind, fact, beside);
    if (twice === undefined) return;
    const why = rowOf(kind, twice)?.twice ?? "which of the two is meant?";
    this.#report("repeated", `“${twice}” is written here already: ${why}`, {
      start: statement.word.startOffset,
      end: endOf(statement.word),
    });
  }

  #report(check: LanguageCheck, message: string, { start, end }: { start: number; end: number }): void {
    this.#problems.push({ check, message, start, end, fixes: [] });
  }
}

/**
 * A misspelt word counts as the word it is nearest to, a part of a line as that line, and what stands on its line as a
 * fact of its own counts as well, so that no check says that one is missing.
 */
function meant(kind: BlockKind, { word: { image }, word, args }: Statement): string[] {
  const labels = Object.values(rowOf(kind, image)?.params ?? {}).flatMap(({ label }) => label ?? []);
  // From the first fact on that is none of the line's own, its labels are words again.
  const first = args.findIndex(({ image: one }) => rowOf(kind, one) && !labels.includes(one));
  const crowded = first < 0 ? [] : args.slice(first).flatMap(({ image: one }) => (rowOf(kind, one) ? [one] : []));
  const near =
    phraseOfLine([word, ...args], wordsOf(kind))?.word ??
    (rowOf(kind, image) ? undefined : isDeviceAlone(kind, word) ? "device" : meantBy(kind, image, args));
  return [image, ...(near === undefined ? [] : [near]), ...crowded];
}

const none: readonly string[] = [];

/** `tested 2026-03-04 { Zs 0.41 Ω }`: the blocks that its lines would stand in, were they opened by a word that opens one. */
function homesOfLines(kind: BlockKind, { word, block }: Statement): readonly string[] {
  const row = rowOf(kind, word.image);
  if (!block || (row && openedBy(row))) return none;
  return wordsOf(kind).filter((name) => {
    const inner = openedBy(rowOf(kind, name));
    return inner && block.statements.some((one) => rowOf(inner, one.word.image) || lineWith(inner, one.word.image));
  });
}

const faultWords: Readonly<Record<SyntaxFault["fault"], readonly [LanguageCheck, (image: string) => string]>> = {
  unclosed: ["unclosed", () => "This block is not closed: a } is missing below."],
  unopened: ["unopened", (image) => `“${image}” opens a block, but its { is missing: the lines below belong to it.`],
  "extra-open": ["extra-open", () => "This { opens nothing: one too many, or it follows the wrong word."],
  "extra-close": ["extra-close", () => "This } closes nothing: one too many, or its { was lost above."],
  "no-word": [
    "no-word",
    (image) =>
      image === "{"
        ? "A block begins on the line of its word: move this { to the end of the line above."
        : `A line begins with a word that names the fact; “${image}” cannot.`,
  ],
  crowded: ["crowded", () => "One fact a line: this belongs on a line of its own."],
  conflict: [
    "conflict",
    (image) =>
      image.startsWith("<")
        ? "A merge conflict begins here: keep one of its sides, and remove its marks down to >>>>>>>."
        : `A mark of a merge conflict was left here (${image.slice(0, 7)}): keep one side, and remove the marks.`,
  ],
  stray: [
    "stray",
    (image) =>
      `“${image}” means nothing here.${image === "×" ? " Of cables side by side write how many behind their sizes: parallel 2. The sides of a trunking are written 50 mm by 50 mm." : ""}`,
  ],
  "open-text": ["open-text", () => "This text has lost its closing quote."],
};

function syntaxProblem({ fault, start, end, image }: SyntaxFault): Problem {
  const [check, words] = faultWords[fault];
  return { check, message: words(image), start, end, fixes: fixesOf(fault, start, end) };
}

/** The brace goes to the end of its word's line. */
function lostOpen(fault: SyntaxFault, { mends = [] }: Segment): Problem | undefined {
  const mend =
    fault.fault === "unopened" ? mends.find(({ kind, at }) => kind === "lost-open" && at >= fault.end) : undefined;
  if (!mend) return undefined;
  const edits = [{ start: mend.at, end: mend.at, text: " {" }];
  return { ...syntaxProblem(fault), fixes: [{ title: "Add the {", edits, safe: false }] };
}

/** A brace on a line of its own goes to the end of the line above, where both stand in one part of the file. */
function lowOpen(fault: SyntaxFault, text: string): Problem | undefined {
  const { start, end, image } = fault;
  // Behind a comment it would be a part of that.
  const above = /(?:^|[\r\n])[^#\r\n]*[^#\s{}]([^\S\r\n]*\r?\n\s*)$/.exec(text.slice(0, start))?.[1];
  if (fault.fault !== "no-word" || image !== "{" || above === undefined) return undefined;
  const edits = [{ start: start - above.length, end, text: " {" }];
  return { ...syntaxProblem(fault), fixes: [{ title: "Move the { to the line above", edits, safe: false }] };
}

const quoteSigns = /[“”„‟‘’‚«»']/;

/** Quotes of another kind, as a word processor or a telephone writes them. */
function strangeQuotes({ fault, start, end, image }: SyntaxFault, text: string): Problem | undefined {
  if (fault !== "stray" || !quoteSigns.test(image)) return undefined;
  const rest = /^[^\r\n]*/.exec(text.slice(end))?.[0] ?? "";
  const length = rest.search(quoteSigns);
  const signs = length < 0 ? [start] : [start, end + length];
  const edits = signs.map((at) => ({ start: at, end: at + 1, text: '"' }));
  const fixes = length < 0 ? [] : [{ title: "Write plain quotes", edits, safe: false }];
  const message = `A text is written between plain double quotes, "so"; “${image}” is another sign.`;
  return { check: "missing-quotes", message, start, end, fixes };
}

function fixesOf(fault: SyntaxFault["fault"], start: number, end: number): Problem["fixes"] {
  if (fault === "open-text") return [{ title: "Close the text", edits: [{ start: end, end, text: '"' }], safe: false }];
  if (fault === "extra-open") return [{ title: "Remove the {", edits: [{ start, end, text: "" }], safe: false }];
  if (fault === "extra-close") return [{ title: "Remove the }", edits: [{ start, end, text: "" }], safe: false }];
  if (fault === "crowded")
    return [{ title: "Put it on a line of its own", edits: [{ start, end: start, text: "\n" }], safe: true }];
  return [];
}

function unclosedContainer(segment: Segment, statement: Statement | undefined): Problem {
  const end = statement ? endOf(statement.word) : segment.text.length;
  const start = statement?.word.startOffset ?? 0;
  return {
    check: "unclosed",
    message: `This ${segment.word} is not closed: a } is missing below.`,
    start,
    end,
    fixes: [],
  };
}
