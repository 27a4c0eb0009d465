/** A proposal as it is printed. */
import { working } from "../calc/result.ts";
import type { Proposal } from "../proposal/proposal.ts";
import { sourceText } from "../tables/source.ts";
import { type TerminalText, term } from "../text/terminal.ts";
import type { Colours } from "./colours.ts";

export interface Sized {
  readonly proposal: Proposal;
  readonly path: string;
  /** A/3 */
  readonly way: string;
  readonly title: string;
  readonly written: boolean;
  /** Whether the lines are not there already. */
  readonly changes: boolean;
  /** Whether it rests on what the way does not say, and is therefore not written. */
  readonly assumed: boolean;
}

export function sizeText(
  { proposal, path, way, title, written, changes, assumed }: Sized,
  colours: Colours,
): TerminalText {
  const { decisions, ruledOut, open, outcome, reasons, device, cable, rcd } = proposal;
  const parts = [term`${colours.bold(`${way}${title ? ` “${title}”` : ""}`)}  ${colours.dim(path)}\n`];
  if (outcome === "missing") parts.push(term`Nothing can be proposed yet. What is missing:\n${list(reasons)}`);
  if (outcome === "none") parts.push(term`${colours.red("Nothing fits.")} ${reasons.join(" ")}\n`);
  if (device && cable) parts.push(term`  ${colours.bold(device)}\n  ${colours.bold(cable)}\n`);
  if (rcd) parts.push(term`  ${colours.bold(rcd)}\n`);
  if (decisions.length > 0) parts.push(decisionsText(decisions, colours));
  if (ruledOut.length > 0) parts.push(term`${colours.bold("Ruled out")}\n${ruledOutText(ruledOut)}`);
  if (open.length > 0) parts.push(term`${colours.bold("Taken for granted, or not judged")}\n${list(open)}`);
  if (outcome === "fits") parts.push(term`${caution}\n${ending(path, written, changes, assumed)}\n`);
  return term.join(parts, "\n");
}

/** It stands where whoever only reads the end of it reads it. */
const caution =
  "A proposal: a competent person compares it with the standard and the site, and answers for the design.";

function ending(path: string, written: boolean, changes: boolean, assumed: boolean): string {
  if (assumed) return "Nothing was written: this rests on what the way does not state.";
  if (!changes) return "This is what is written there already.";
  return written ? `Written to ${path}.` : "Nothing was written; --write puts the lines into the way.";
}

const list = (sentences: readonly string[]): TerminalText =>
  term.join(sentences.map((sentence) => term`  ${sentence}\n`));

function decisionsText(decisions: Proposal["decisions"], colours: Colours): TerminalText {
  const width = Math.max(...decisions.map(({ title }) => title.length));
  const indent = " ".repeat(width + 4);
  return term.join(
    decisions.map(({ title, result, steps, source }) => {
      const lines = steps.length > 0 ? working(steps).split("\n") : [];
      const detail = [...lines, ...(source ? [`Source: ${sourceText(source)}`] : [])].map(
        (line) => term`${indent}${colours.dim(line)}\n`,
      );
      return term`  ${title.padEnd(width)}  ${result}\n${term.join(detail)}`;
    }),
  );
}

function ruledOutText(ruledOut: Proposal["ruledOut"]): TerminalText {
  const width = Math.max(...ruledOut.map(({ candidate }) => candidate.length));
  return term.join(ruledOut.map(({ candidate, why }) => term`  ${candidate.padEnd(width)}  ${why}\n`));
}
