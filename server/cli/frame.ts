/**
 * One finding as a person reads it: what is wrong, the line it stands in with a mark under it, the lines it follows
 * from, and then the figures with their working and source.
 */
import { standingWords } from "../tables/source.ts";
import { type TerminalText, term } from "../text/terminal.ts";
import { amountText, marginText } from "./amounts.ts";
import { type Colours, type Tint, tintOf } from "./colours.ts";
import { show } from "./columns.ts";
import type { Placed } from "./judge.ts";
import type { FindingLocation, Locator } from "./places.ts";

export interface Frame {
  readonly places: Locator;
  readonly colours: Colours;
  shown(path: string): string;
}

export function framed({ finding, at }: Placed, frame: Frame): TerminalText {
  const { colours, shown } = frame;
  const tint = tintOf(finding.severity, colours);
  const related = finding.related.map(({ spot, message }) => ({ at: frame.places.of(spot), message }));
  const edge = Math.max(4, ...[at, ...related.map((one) => one.at)].map((one) => String(one.start.line + 1).length));
  const lines = [
    term`${tint(finding.severity)}  ${colours.dim(finding.check)}`,
    colours.bold(finding.message),
    term`${" ".repeat(edge - 2)}--> ${placeText(at, shown)}`,
    ...marked(at, "^", "", edge, tint, frame),
  ];
  for (const one of related) {
    if (one.at.file !== at.file) lines.push(term`${" ".repeat(edge - 2)}--> ${placeText(one.at, shown)}`);
    lines.push(...marked(one.at, "~", one.message, edge, colours.cyan, frame));
  }
  lines.push(...details({ finding, at }).flatMap(([name, text]) => detail(name, text, edge, colours)));
  return term`${term.join(lines, "\n")}\n`;
}

export const placeText = ({ file, start }: FindingLocation, shown: (path: string) => string): TerminalText =>
  term`${shown(file.path)}:${start.line + 1}:${start.character + 1}`;

/** The line, and below it the mark. A part that runs over several lines is marked to the end of its first. */
function marked(
  { file, start, end }: FindingLocation,
  mark: string,
  note: string,
  edge: number,
  tint: Tint,
  { places, colours }: Frame,
): TerminalText[] {
  const line = places.line(file, start.line);
  const endsHere = end.line === start.line;
  const { text, from, to } = show(line, start.character, endsHere ? end.character : line.length);
  const number = String(start.line + 1).padStart(edge);
  const under = `${mark.repeat(to - from)}${endsHere ? "" : `… to line ${end.line + 1}`}${note && `  ${note}`}`;
  return [
    term`${colours.dim(`${number} ┊`)}${text.trim() === "" ? "" : ` ${text.trimEnd()}`}`,
    term`${" ".repeat(edge)} ${colours.dim("╵")} ${" ".repeat(from)}${tint(under)}`,
  ];
}

type Detail = readonly [name: string, text: string];

function details({ finding }: Placed): Detail[] {
  const { limit, value, margin, working, source, fixes } = finding;
  return [
    ...(limit ? [["limit", amountText(limit, limit)] as const] : []),
    ...(value ? [["value", amountText(value, limit)] as const] : []),
    ...(margin === undefined ? [] : [["margin", marginText(margin)] as const]),
    ...(working ? [["working", working] as const] : []),
    ...(source
      ? [
          [
            "source",
            `${source.ref} (${standingWords[source.standing]})${source.note ? `. ${source.note}` : ""}`,
          ] as const,
        ]
      : []),
    ...fixes.map(({ title }) => ["help", title] as const),
  ];
}

const nameWidth = 9;

function detail(name: string, text: string, edge: number, colours: Colours): TerminalText[] {
  const [first = "", ...rest] = text.split("\n");
  const indent = " ".repeat(edge + 3);
  return [
    term`${indent}${colours.dim(name.padEnd(nameWidth))}${first}`,
    ...rest.map((line) => term`${indent}${" ".repeat(nameWidth)}${line}`),
  ];
}
