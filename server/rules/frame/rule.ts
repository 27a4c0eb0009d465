import type { BoardNode } from "../../boards/network.ts";
import { marginOf } from "../../calc/margin.ts";
import { type Calculated, remark, type Step, working } from "../../calc/result.ts";
import { asRememberedWords, beyondLimit, type LimitVerdict, toLookUp } from "../../calc/verdict.ts";
import type { WayStudy } from "../../circuit/way.ts";
import type { Steps } from "../../memo/steps.ts";
import type { Board } from "../../model/file.ts";
import type { Context, Installation } from "../../model/installation.ts";
import type { Fix } from "../../model/problems.ts";
import type { Fact, Quantity, Span } from "../../model/values.ts";
import type { Segment } from "../../syntax/split.ts";
import { bandOf, type Source } from "../../tables/source.ts";
import { safeIsolation } from "../../text/isolation.ts";

/** The gravest first. */
export const severities = ["error", "warning", "information"] as const;
export type Severity = (typeof severities)[number];

/** A place in a file that stays right when text above it changes. */
export interface Spot extends Span {
  readonly segment: Segment;
}

export interface Amount {
  readonly amount: number;
  readonly unit: string;
  /** Which of several limits it is: `hot`, `cold`, `by the RCD`. */
  readonly which?: string;
}

export interface Related {
  readonly spot: Spot;
  readonly message: string;
}

/** What a check has to say of one place. */
export interface Finding {
  readonly check: string;
  readonly severity: Severity;
  readonly message: string;
  readonly spot: Spot;
  /** How the value stands to the limit; missing where there are none. */
  readonly verdict?: LimitVerdict;
  readonly value?: Amount;
  readonly limit?: Amount;
  /** What is left to the limit as a share of it; negative when it is passed. */
  readonly margin?: number;
  /** The same in the words of hovers, hints and reports: `31 % left`. */
  readonly marginText?: string;
  readonly working?: string;
  readonly source?: Source;
  readonly related: readonly Related[];
  /** Edits are in the segment of `spot`. */
  readonly fixes: readonly Fix[];
  /** What was found of single readings that this one explains, and that it therefore speaks for. */
  readonly explains?: readonly Finding[];
}

/** What a check passes to `report`. Severity and check come from its declaration. */
export interface Report {
  /** One sentence a supervisor would say: what is wrong, against which limit, what would put it right. */
  readonly message: string;
  readonly value?: Amount;
  readonly limit?: Amount;
  /** Where more is better, as with insulation; otherwise less is. */
  readonly least?: boolean;
  /** Of a reading off the scale: `<` is less than the value. */
  readonly sign?: Quantity["sign"];
  readonly steps?: readonly Step[];
  /** Required wherever a limit or an expectation is compared with the value. */
  readonly source?: Source;
  readonly related?: readonly Related[];
  readonly fixes?: readonly Fix[];
  /** Where one check speaks of graver and lesser cases; never graver than its declaration. */
  readonly severity?: Severity;
  /** Findings that this one speaks for: they are not reported beside it. */
  readonly explains?: readonly Finding[];
}

export type Reporter = (spot: Spot, report: Report) => void;

/** A sample that shows the check at work. Carets stand below what it marks; other samples are silent. */
export interface Example {
  /** A way's lines, or a whole file if it begins with `wayfile`. */
  readonly bad: string;
  readonly good: string;
  /** What the sample's surroundings say where it is not a whole file. */
  readonly setting?: Setting;
}

/** What stands round a sample way. The usual setting is a TN-S commercial design to the 2022 edition. */
export interface Setting {
  readonly standard?: string;
  readonly stage?: "design" | "installed" | "dead-tested" | "tested";
  readonly work?: "new" | "addition" | "existing";
  readonly premises?: string;
  /** Lines of the supply block. */
  readonly supply?: string;
  /** Lines of the board before its ways. */
  readonly board?: string;
  /** Lines before the installation. */
  readonly before?: string;
}

interface Declaration {
  /** family/plain-words. Never changed or used for something else. */
  readonly id: string;
  readonly severity: Severity;
  readonly since: string;
  /** What it finds, in one line. */
  readonly title: string;
  /** Why it matters: what happens where it is passed over, and what puts it right. */
  readonly why: string;
  /** Whether what puts it right, or the next test, has a person open the installation: the way to isolate is shown then. */
  readonly opens?: boolean;
  /** Regulations a departure may name instead of the id. */
  readonly clauses: readonly string[];
  readonly examples: readonly Example[];
}

export interface WayRule extends Declaration {
  readonly scope: "way";
  /**
   * Whether it holds one reading against the others or against the drawing. A verdict on all of them that explains the
   * reading then speaks for it. What holds a reading against a limit speaks for itself.
   */
  readonly compares?: true;
  /** Whether it is put last, and is given what the others found: a verdict on all readings of the circuit. */
  readonly verdict?: true;
  /** Of a verdict: works out beforehand, step by step, what would take it too long in one go. It reports nothing. */
  readonly before?: (study: WayStudy) => Steps<void>;
  readonly check: (study: WayStudy, report: Reporter, found: readonly Finding[]) => void;
}

interface BoardRule extends Declaration {
  readonly scope: "board";
  /** `studies` are those of the board's ways, in the order of the file. */
  readonly check: (subject: BoardSubject, report: Reporter) => void;
}

export interface BoardSubject {
  readonly board: Board;
  readonly context: Context;
  readonly studies: readonly WayStudy[];
}

export interface InstallationRule extends Declaration {
  readonly scope: "installation";
  /** What concerns the installation as a whole or its own lines. Runs after every edit: it must not visit every way. */
  readonly check?: (installation: Installation, report: Reporter) => void;
  /**
   * A question put to each board in its network. It may ask what stands before the board and behind it, and nothing of
   * others: its findings are kept for as long as these are the same.
   */
  readonly checkNode?: (node: BoardNode, report: Reporter) => void;
  /** The same question put to each board and its ways. Its findings are kept with the board. */
  readonly checkBoard?: (subject: BoardSubject, report: Reporter) => void;
}

export type Rule = WayRule | BoardRule | InstallationRule;

export const wayRule = (rule: Omit<WayRule, "scope">): WayRule => ({ scope: "way", ...rule });
export const boardRule = (rule: Omit<BoardRule, "scope">): BoardRule => ({ scope: "board", ...rule });
export const installationRule = (rule: Omit<InstallationRule, "scope">): InstallationRule => ({
  scope: "installation",
  ...rule,
});

/** The word of a statement, which is marked where the statement as a whole is meant. */
export const wordSpot = ({ segment, start, wordEnd }: Fact): Spot => ({ segment, start, end: wordEnd });

/** A whole statement without its block. */
export function factSpot(fact: Fact): Spot {
  const { segment, start, end, inner } = fact;
  if (!inner) return { segment, start, end };
  const brace = segment.text.indexOf("{", start);
  const until = brace < 0 || brace > end ? end : brace;
  return { segment, start, end: start + segment.text.slice(start, until).trimEnd().length };
}

/** One value of a statement. */
export const valueSpot = ({ segment }: Fact, { start, end }: Span): Spot => ({ segment, start, end });

export const amount = (value: number, unit: string): Amount => ({ amount: value, unit });
export const amountOf = ({ value, unit }: Calculated, which?: string): Amount => ({
  amount: value,
  unit,
  ...(which ? { which } : {}),
});

/**
 * Turns a report into a finding of its rule. Where a figure in it is from memory, the finding keeps its severity if the
 * value fails even with that figure at its favourable end; else it is unproven: a warning that says what to look up.
 */
export function findingOf(rule: Declaration, spot: Spot, report: Report): Finding {
  const { value, limit, least, sign, steps = [], source, related = [], fixes = [], explains = [] } = report;
  const left = value && limit && marginOf(least ? "least" : "most", value.amount, limit.amount, sign);
  const margin = left && outward(left.share);
  const verdict = verdictOf(report, margin);
  const shown = [...steps, ...certaintyOf(verdict, source), ...(rule.opens ? [remark(safeIsolation)] : [])];
  return {
    check: rule.id,
    severity: gradeOf(report.severity ?? rule.severity, verdict),
    message: messageOf(report, verdict),
    spot,
    ...(verdict ? { verdict } : {}),
    ...(value ? { value } : {}),
    ...(limit ? { limit } : {}),
    ...(left && margin !== undefined ? { margin, marginText: left.text } : {}),
    ...(shown.length > 0 ? { working: working(shown) } : {}),
    ...(source ? { source } : {}),
    related,
    fixes,
    ...(explains.length > 0 ? { explains } : {}),
  };
}

/** What the values come to. Without both of them a figure from memory cannot be taken at its favourable end. */
function verdictOf({ value, limit, source }: Report, margin: number | undefined): LimitVerdict | undefined {
  const doubtful = source?.standing === "memory" && bandOf(source) > 1;
  if (!value || !limit) return doubtful ? "unproven" : undefined;
  if (doubtful && (margin === undefined || margin < 0)) return beyondLimit(value.amount, limit.amount, source);
  return margin === undefined ? undefined : margin < 0 ? "fails" : "passes";
}

/** What is unproven is to be looked up, not to be condemned. */
const gradeOf = (severity: Severity, verdict: LimitVerdict | undefined): Severity =>
  verdict === "unproven" && severity === "error" ? "warning" : severity;

function messageOf({ message, source }: Report, verdict: LimitVerdict | undefined): string {
  if (source?.standing !== "memory") return message;
  if (verdict === "passes" && bandOf(source) > 1) return `${message} It ${asRememberedWords(source)}.`;
  if (verdict === "unproven") return `${message} Unproven: look up ${toLookUp(source)}, from memory here.`;
  return bandOf(source) > 1 ? message : `${message} (The rule is from memory: check your copy.)`;
}

/** Said in the working, so that a figure from memory is seen to settle nothing. */
function certaintyOf(verdict: LimitVerdict | undefined, source: Source | undefined): Step[] {
  if (verdict !== "fails" || source?.standing !== "memory" || bandOf(source) === 1) return [];
  return [remark(`It fails even at the favourable end of what is from memory: ${toLookUp(source)}`)];
}

/** To a thousandth; what is beyond the limit stays beyond it, however little. */
const outward = (share: number): number =>
  share < 0 ? Math.min(Math.round(share * 1000), -1) / 1000 : Math.round(share * 1000) / 1000;
