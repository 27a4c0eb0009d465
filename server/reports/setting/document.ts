/** A report as plain data: what it says, without how it is set. Renderers turn it into text, Markdown or HTML. */

import type { Calculated, Step } from "../../calc/result.ts";
import { asRememberedWords, beyondLimit, onlyAsRemembered, toLookUp } from "../../calc/verdict.ts";
import type { Drawing } from "../../drawings/shapes.ts";
import type { Source } from "../../tables/source.ts";
import type { Html } from "../../text/html.ts";
import { sentence } from "../../text/words.ts";

export { sourceText } from "../../tables/source.ts";

/** A figure with the way to it. */
export interface Calculation {
  readonly kind: "calculation";
  readonly name: string;
  readonly result: string;
  readonly steps: readonly Step[];
  /** Nothing where the figure stands on the schedule itself. */
  readonly source: Source | undefined;
}

/**
 * `advises`: it passes a figure that only advises. `unproven`: it fails by a figure from memory, but would not if that
 * were wrong in its favour.
 */
export type Verdict = "holds" | "fails" | "unproven" | "advises";

/** Two figures compared with each other. */
export interface Comparison {
  readonly kind: "judgement";
  readonly text: string;
  readonly verdict: Verdict;
  /** What is left, or why a failure only advises. */
  readonly remark: string;
  readonly source: Source | undefined;
}

/** What could not be calculated, and why. */
export interface Gap {
  readonly kind: "gap";
  readonly what: string;
  readonly why: string;
}

interface Paragraph {
  readonly kind: "paragraph";
  readonly text: string;
}

export interface Table {
  readonly kind: "table";
  readonly head: readonly string[];
  readonly rows: readonly (readonly string[])[];
}

/** A drawing. Where none can be shown its description stands for it. */
interface Figure {
  readonly kind: "figure";
  readonly title: string;
  readonly description: string;
  readonly caption: string;
  readonly svg: Html;
  /** The same as shapes, each with its place in the text. */
  readonly drawing: Drawing;
}

/**
 * What one cell of a grid holds. `calculated` was not read, `declared` was read by others, `absent` is LIM or N/A,
 * `missing` should be there by now, `blank` is for a pen; `nothing` holds nothing and is not expected to.
 */
type CellKind = "said" | "measured" | "calculated" | "declared" | "absent" | "missing" | "blank" | "nothing";

export interface Cell {
  readonly text: string;
  readonly kind: CellKind;
  /** The number of a note under the grid. */
  readonly mark?: string;
  /** The reading of last time, small beside a blank. */
  readonly last?: string;
}

export interface Column {
  /** What it is called in a file of values; never changed, since filled files come back. */
  readonly key: string;
  readonly title: string;
  /** The unit of its figures; empty where they have none. */
  readonly unit: string;
  /** Words may wrap; figures never do. */
  readonly wraps?: boolean;
}

/** Columns that belong together, under one heading. */
export interface Band {
  readonly title: string;
  readonly columns: readonly Column[];
}

/** A wide table of figures with headings in bands: one row a circuit. */
export interface Grid {
  readonly kind: "grid";
  readonly bands: readonly Band[];
  /** As many cells as there are columns in all bands. */
  readonly rows: readonly (readonly Cell[])[];
  /** What the numbers beside the cells refer to: the first is note 1. */
  readonly notes: readonly string[];
}

/** Facts with their names, as at the head of a paper. */
export interface Particulars {
  readonly kind: "particulars";
  readonly rows: readonly (readonly [name: string, fact: string])[];
}

/** A warning that must not be passed over. */
interface Caution {
  readonly kind: "caution";
  readonly text: string;
}

/** Lines to sign: who, as what, and the day; empty where it is not stated. */
export interface Signatures {
  readonly kind: "signatures";
  readonly rows: readonly { readonly role: string; readonly name: string; readonly on: string }[];
}

export type Block =
  | Caution
  | Figure
  | Calculation
  | Comparison
  | Gap
  | Grid
  | Paragraph
  | Particulars
  | Signatures
  | Table;

export interface Section {
  /** 1 is a way, a board or the installation; 2 a part of its working. */
  readonly level: 1 | 2;
  readonly title: string;
  /** On pages of its own that are turned. */
  readonly turned?: "landscape";
  readonly blocks: readonly Block[];
}

/** What a loose page needs to find its way home. Given from outside: the core knows neither the disk nor the day. */
export interface Imprint {
  readonly file: string;
  /** The commit the schedule was read at, short; `changed` where the file differs from it. */
  readonly revision?: string;
  /** The day it was made, ISO 8601. */
  readonly printed?: string;
}

export interface Report {
  readonly title: string;
  /** Which way its pages are turned; upright if left out. */
  readonly turned?: "landscape";
  /** Set close, its parts one below the other: what is read at a glance and signed. */
  readonly close?: true;
  readonly imprint?: Imprint;
  /** What stands below the title, a line each. */
  readonly lead: readonly string[];
  readonly sections: readonly Section[];
  /** One short paragraph at the end. */
  readonly cautions: string;
}

/** The foot of a page in one line, without the number of the page. */
export const imprintText = ({ file, revision, printed }: Imprint): string =>
  [file, ...(revision ? [`revision ${revision}`] : ["no revision"]), ...(printed ? [`printed ${printed}`] : [])].join(
    ", ",
  );

export const paragraph = (text: string): Paragraph => ({ kind: "paragraph", text });
export const gap = (what: string, why: string): Gap => ({ kind: "gap", what, why });

/** A table; nothing where it would have no rows. */
export const table = (head: readonly string[], rows: readonly (readonly string[])[]): Table[] =>
  rows.length === 0 ? [] : [{ kind: "table", head, rows }];

/** Facts with their names; nothing where there are none. */
export const particulars = (rows: readonly (readonly string[])[]): Particulars[] =>
  rows.length === 0
    ? []
    : [{ kind: "particulars", rows: rows.map(([name = "", fact = ""]): [string, string] => [name, fact]) }];

/** A part of the working; nothing where it has nothing to say. */
export const part = (title: string, blocks: readonly Block[]): Section[] =>
  blocks.length === 0 ? [] : [{ level: 2, title, blocks }];

/** A calculated figure, or the reason why there is none. */
export function calculate(
  name: string,
  figure: Pick<Calculated, "steps" | "source"> | undefined,
  result: string,
  missing: string,
): Calculation | Gap {
  if (!figure) return gap(name, missing);
  const source = figure.source.ref === "" ? undefined : figure.source;
  return { kind: "calculation", name, result, steps: unique(figure.steps), source };
}

/** A part that two figures share is shown once. */
function unique(steps: readonly Step[]): Step[] {
  const seen = new Set<string>();
  return steps.filter(({ formula, numbers, result, from }) => {
    const key = [formula, numbers, result, from].join("|");
    return !seen.has(key) && seen.add(key);
  });
}

/** The two figures that are compared, in one unit. */
interface Compared {
  readonly value: number;
  readonly limit: number;
}

/** Whether two figures are as they should be. What common practice only advises fails nothing. */
export function compareWithLimit(
  holds: boolean,
  text: string,
  source: Source | undefined,
  { value, limit }: Compared,
  room = "",
): Comparison {
  const verdict = holds ? "holds" : source?.standing === "practice" ? "advises" : beyondLimit(value, limit, source);
  const remark = holds ? remarkOnPass({ value, limit }, source, room) : remarkOn(verdict, source);
  return { kind: "judgement", text, verdict, remark, source };
}

/** What is left, and whether it is left only where a figure from memory is right. */
export function remarkOnPass({ value, limit }: Compared, source: Source | undefined, room: string): string {
  const asRemembered = source && onlyAsRemembered(value, limit, source) ? asRememberedWords(source) : "";
  return [room, asRemembered].filter((part) => part !== "").join("; ");
}

/** Why something beyond its limit is not condemned. */
export function remarkOn(verdict: Verdict, source: Source | undefined): string {
  if (verdict === "unproven" && source) return `look up ${toLookUp(source)}, from memory here`;
  return verdict === "advises" ? "common practice" : "";
}

/** One sign a verdict, in every setting. */
export const verdictMarks: Readonly<Record<Verdict, string>> = { holds: "✓", fails: "✗", unproven: "~", advises: "!" };

const verdictWords: Readonly<Record<Verdict, string>> = {
  holds: "holds",
  fails: "does not hold",
  unproven: "unproven",
  advises: "not met, for advice",
};

/** A judgement in one sentence. */
export const judgementText = ({ text, verdict, remark }: Comparison): string =>
  `${text}: ${verdictWords[verdict]}${remark === "" ? "" : ` (${remark})`}`;

export const gapText = ({ what, why }: Gap): string => `${what}: not calculated. ${sentence(why)}`;

/** Several reports of one file as one: each begins with its own title. */
export function together(reports: readonly Report[]): Report | undefined {
  const [first] = reports;
  if (!first || reports.length === 1) return first;
  return {
    title: reports.map(({ title }) => title).join("; "),
    lead: [],
    sections: reports.flatMap(({ title, lead, sections }): Section[] => [
      { level: 1, title, blocks: lead.map(paragraph) },
      ...sections,
    ]),
    cautions: first.cautions,
    ...(first.close ? { close: true as const } : {}),
    ...(first.turned ? { turned: first.turned } : {}),
  };
}
