/**
 * One finding as a person reads it: what is wrong, the line it stands in with a mark under it, the lines it follows
 * from, and then the figures with their working and source.
 */
import type { ResultFinding, ResultPlace } from "../../results/result.ts";
import { sourceText } from "../../tables/source.ts";
import { type TerminalText, term } from "../../text/terminal.ts";
import { amountText } from "../amounts.ts";
import { type Colours, type Tint, tintOf } from "../colours.ts";
import { show, wrapped } from "../columns.ts";

interface Frame {
  readonly colours: Colours;
  /** The name of a file as a person reads it. */
  shown(name: string): string;
  /** Columns that lines are kept to; missing where they may be as long as they are. */
  readonly width?: number;
}

export function framed(finding: ResultFinding, frame: Frame): TerminalText {
  const { colours, shown, width = Number.POSITIVE_INFINITY } = frame;
  const { at, related } = finding;
  const tint = tintOf(finding.severity, colours);
  const edge = Math.max(4, ...[at, ...related.map((one) => one.at)].map((one) => String(one.start.line + 1).length));
  const room: Room = { edge, colours, width };
  const lines = [
    term`${tint(finding.severity)}  ${colours.dim(finding.check)}`,
    ...wrapped(finding.message, width).map((line) => colours.bold(line)),
    term`${" ".repeat(edge - 2)}--> ${placeText(at, shown)}`,
    ...marked(at, { sign: "^", note: "", tint }, room),
  ];
  for (const one of related) {
    if (one.at.path !== at.path) lines.push(term`${" ".repeat(edge - 2)}--> ${placeText(one.at, shown)}`);
    lines.push(...marked(one.at, { sign: "~", note: one.message, tint: colours.cyan }, room));
  }
  lines.push(...details(finding).flatMap(([name, text]) => detail(name, text, room)));
  return term`${term.join(lines, "\n")}\n`;
}

export const placeText = ({ path, start }: ResultPlace, shown: (name: string) => string): TerminalText =>
  term`${shown(path)}:${start.line + 1}:${start.character + 1}`;

interface Room {
  /** Columns of the numbers of lines. */
  readonly edge: number;
  readonly colours: Colours;
  readonly width: number;
}

interface Mark {
  readonly sign: string;
  readonly note: string;
  readonly tint: Tint;
}

/** The line, and below it the mark. A part that runs over several lines is marked to the end of its first. */
function marked(
  { line, start, end }: ResultPlace,
  { sign, note, tint }: Mark,
  { edge, colours, width }: Room,
): TerminalText[] {
  const endsHere = end.line === start.line;
  const { text, from, to } = show(line.text, line.from, line.to, width - edge - 3);
  const number = String(start.line + 1).padStart(edge);
  const under = `${sign.repeat(to - from)}${endsHere ? "" : `… to line ${end.line + 1}`}`;
  const edging = term`${" ".repeat(edge)} ${colours.dim("╵")}`;
  const isBeside = edge + 3 + from + under.length + 2 + note.length <= width;
  const below = isBeside || note === "" ? [] : wrapped(note, width - edge - 5);
  return [
    term`${colours.dim(`${number} ┊`)}${text.trim() === "" ? "" : ` ${text.trimEnd()}`}`,
    term`${edging} ${" ".repeat(from)}${tint(isBeside && note !== "" ? `${under}  ${note}` : under)}`,
    ...below.map((part) => term`${edging}   ${tint(part)}`),
  ];
}

type Detail = readonly [name: string, text: string];

function details({ limit, value, marginText, working, source, fixes }: ResultFinding): Detail[] {
  return [
    ...(limit ? [["limit", amountText(limit, limit)] as const] : []),
    ...(value ? [["value", amountText(value, limit)] as const] : []),
    ...(marginText === undefined ? [] : [["margin", marginText] as const]),
    ...(working ? [["working", working] as const] : []),
    ...(source ? [["source", sourceText(source)] as const] : []),
    ...fixes.map(({ title }) => ["help", title] as const),
  ];
}

const nameWidth = 9;

function detail(name: string, text: string, { edge, colours, width }: Room): TerminalText[] {
  const indent = " ".repeat(edge + 3);
  const [first = "", ...rest] = text.split("\n").flatMap((line) => wrapped(line, width - indent.length - nameWidth));
  return [
    term`${indent}${colours.dim(name.padEnd(nameWidth))}${first}`,
    ...rest.map((line) => term`${indent}${" ".repeat(nameWidth)}${line}`),
  ];
}
