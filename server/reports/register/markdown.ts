/** The register as Markdown: beside the text in an editor, in a pull request or a wiki. */
import { linkTo, type Markdown, md } from "../../text/markdown.ts";
import { counted, sentence } from "../../text/words.ts";
import { type Listed, lapsesOf } from "./register.ts";

/** `addressOf`: where a schedule is to be found, relative to the page or as a whole. */
export function registerMarkdown<Row extends Listed>(
  rows: readonly Row[],
  today: string,
  addressOf: (row: Row) => string,
): Markdown {
  const head = ["Installation", "Needs attention", "Stage", "Least margin", "Last tested", "Next inspection", "Extent"];
  const line = (cells: readonly (Markdown | string)[]): Markdown =>
    md`| ${md.join(
      cells.map((cell) => md`${cell === "" ? " " : cell}`),
      " | ",
    )} |`;
  const table = [line(head), line(head.map(() => md`---`)), ...rows.map((row) => line(cellsOf(row, addressOf(row))))];
  return md`${md.join(
    [
      md`# Register of installations`,
      md`${today}: ${counted(rows.length, "installation")}, the most urgent first. Days are compared with this one.`,
      ...(rows.length > 0 ? [md.join(table, "\n")] : []),
      ...lapsesOf(rows, today).map((lapse) => md`${sentence(lapse)}`),
      md`*Help to a competent person, and never a certificate.*`,
    ],
    "\n\n",
  )}\n`;
}

function cellsOf(row: Listed, address: string): (Markdown | string)[] {
  const { title, file, attention, stage = "", margin, tested = "", nextInspection = "", boards, ways } = row;
  return [
    md`${linkTo(title === "" ? file : title, address)}${title === "" ? "" : md`<br>${file}`}`,
    attention.join("; "),
    stage,
    margin === undefined ? "" : `${margin.text} (${margin.where} ${margin.name})`,
    tested,
    nextInspection,
    `${counted(boards, "board")}, ${counted(ways, "way")}`,
  ];
}
