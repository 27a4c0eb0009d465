/** A report for a terminal or a plain file: no line is longer than the page is wide. */
import { working } from "../../calc/result.ts";
import {
  type Band,
  type Block,
  type Grid,
  gapText,
  imprintText,
  judgementText,
  type Report,
  type Section,
  sourceText,
  type Table,
  verdictMarks,
} from "./document.ts";
import { cellText } from "./plain-cell.ts";
import { wrap } from "./wrap.ts";

const page = 100;

export function reportText({ title, lead, sections, cautions, imprint }: Report): string {
  const parts = [
    [...wrap(title, page), "=".repeat(Math.min(title.length, page)), ...lead.flatMap((line) => wrap(line, page))],
    ...sections.map(sectionLines),
    [rule("-"), ...(cautions === "" ? [] : wrap(cautions, page)), ...(imprint ? wrap(imprintText(imprint), page) : [])],
  ];
  return `${parts.map((lines) => lines.map((line) => line.trimEnd()).join("\n")).join("\n\n")}\n`;
}

const rule = (sign: string): string => sign.repeat(page);

function sectionLines({ level, title, blocks }: Section): string[] {
  const head = wrap(title, page);
  const under = (level === 1 ? "=" : "-").repeat(Math.min(Math.max(...head.map((line) => line.length)), page));
  return [...head, under, ...blocks.flatMap((block, index) => apart(blocks[index - 1], block, blockLines(block)))];
}

/** Judgements stand together; anything else has air before it. */
function apart(before: Block | undefined, block: Block, lines: readonly string[]): readonly string[] {
  const close = !before || (block.kind === "judgement" && before.kind === "judgement");
  return close ? lines : ["", ...lines];
}

function blockLines(block: Block): string[] {
  switch (block.kind) {
    case "paragraph":
      return wrap(block.text, page);
    case "figure":
      return wrap(`${block.title}: ${block.description}`, page);
    case "table":
      return tableLines(block);
    case "grid":
      return gridLines(block);
    case "particulars":
      return block.rows.flatMap(([name, fact]) => hanging(`${name.padEnd(nameWidth)}  `, fact));
    case "signatures":
      return block.rows.flatMap(({ role, name, on }) => [
        ...hanging(`${role}  `, name === "" ? "____________________" : name),
        `    signature ____________________   date ${on === "" ? "____________" : on}`,
      ]);
    case "caution":
      return hanging("!! ", block.text);
    case "gap":
      return hanging("? ", gapText(block));
    case "judgement":
      return hanging(`${verdictMarks[block.verdict]} `, judgementText(block));
    case "calculation":
      return [
        ...headline(block.name, block.result),
        ...block.steps.flatMap((one) => indented(working([one]), 4, 4)),
        ...(block.source ? indented(sourceText(block.source), 4, 0) : []),
      ];
  }
}

function headline(name: string, result: string): string[] {
  if (result === "") return wrap(name, page);
  const room = page - result.length - 1;
  return name.length + 2 <= room
    ? [`${name} ${".".repeat(room - name.length - 1)} ${result}`]
    : wrap(`${name}: ${result}`, page);
}

const hanging = (mark: string, text: string): string[] =>
  wrap(text, page - mark.length).map((line, index) => `${index === 0 ? mark : " ".repeat(mark.length)}${line}`);

function indented(text: string, by: number, further: number): string[] {
  return wrap(text, page - by - further).map((line, index) => " ".repeat(by + (index === 0 ? 0 : further)) + line);
}

const between = 2;
const nameWidth = 24;

/** A page of text is too narrow for a row: bands that fit beside each other make a table, each with the way first. */
function gridLines({ bands, rows, notes }: Grid): string[] {
  const head = (band: Band): string[] =>
    band.columns.map(({ title, unit }) => (unit === "" ? title : `${title} ${unit}`));
  let from = 0;
  const parts = bands.map((band): Part => {
    const cells = rows.map((row) => row.slice(from, from + band.columns.length).map(cellText));
    from += band.columns.length;
    return { head: head(band), rows: cells };
  });
  const [first, ...rest] = parts;
  if (!first) return [];
  const ways: Part = { head: first.head.slice(0, 1), rows: first.rows.map((row) => row.slice(0, 1)) };
  const tables: Part[] = [first];
  for (const part of rest) {
    const before = tables.at(-1) ?? first;
    const beside = joined(before, part);
    if (naturalWidth(beside) <= page) tables[tables.length - 1] = beside;
    else tables.push(joined(ways, part));
  }
  return [
    ...tables.flatMap((one, at) => [...(at === 0 ? [] : [""]), ...tableLines({ kind: "table", ...one })]),
    ...(notes.length === 0 ? [] : ["", ...notes.flatMap((note, at) => hanging(`${at + 1}) `, note))]),
  ];
}

interface Part {
  readonly head: readonly string[];
  readonly rows: readonly (readonly string[])[];
}

const joined = (one: Part, other: Part): Part => ({
  head: [...one.head, ...other.head],
  rows: one.rows.map((row, at) => [...row, ...(other.rows[at] ?? [])]),
});

const naturalWidth = ({ head, rows }: Part): number =>
  sum(head.map((title, column) => Math.max(title.length, ...rows.map((row) => (row[column] ?? "").length)))) +
  between * (head.length - 1);

function tableLines({ head, rows }: Table): string[] {
  const widths = widthsOf([head, ...rows]);
  const body = rows.flatMap((row) => rowLines(row, widths));
  return [...rowLines(head, widths), widths.map((width) => "-".repeat(width)).join(" ".repeat(between)), ...body];
}

/** The widest columns give way until the table fits the page. */
function widthsOf(rows: readonly (readonly string[])[]): number[] {
  const widths = (rows[0] ?? []).map((_, column) => Math.max(1, ...rows.map((row) => (row[column] ?? "").length)));
  const most = page - between * (widths.length - 1);
  for (let over = sum(widths) - most; over > 0; over = sum(widths) - most) {
    const widest = widths.indexOf(Math.max(...widths));
    const next = Math.max(...widths.filter((_, column) => column !== widest), 1);
    const width = widths[widest] ?? 1;
    widths[widest] = Math.max(width - Math.max(1, Math.min(over, width - next)), 1);
  }
  return widths;
}

const sum = (numbers: readonly number[]): number => numbers.reduce((total, one) => total + one, 0);

function rowLines(cells: readonly string[], widths: readonly number[]): string[] {
  const wrapped = widths.map((width, column) => wrap(cells[column] ?? "", width));
  const height = Math.max(...wrapped.map((lines) => lines.length));
  return Array.from({ length: height }, (_, line) =>
    widths.map((width, column) => (wrapped[column]?.[line] ?? "").padEnd(width)).join(" ".repeat(between)),
  );
}
