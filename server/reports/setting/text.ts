/** A report for a terminal or a plain file: no line is longer than the page is wide. */

import { working } from "../../calc/result.ts";
import { sum } from "../../text/sum.ts";
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
import { longestWord, wrap } from "./wrap.ts";

/** As wide as a page is where nothing narrower shows it. */
const widest = 100;
/** Below this a table of several columns is a heap of words. */
const narrowest = 60;

/** `width`: of the window it is shown in, if that is known. */
export const reportText = (report: Report, { width = widest }: { readonly width?: number | undefined } = {}): string =>
  new TextPage(Math.max(narrowest, Math.min(width, widest))).report(report);

const between = 2;
const nameWidth = 24;

class TextPage {
  readonly #width: number;

  constructor(width: number) {
    this.#width = width;
  }

  report({ title, lead, sections, cautions, imprint }: Report): string {
    const foot = [...(cautions === "" ? [] : [cautions]), ...(imprint ? [imprintText(imprint)] : [])];
    const parts = [
      [...this.#wrap(title), this.#rule("=", title.length), ...lead.flatMap((line) => this.#wrap(line))],
      ...sections.map((section) => this.#section(section)),
      [this.#rule("-"), ...foot.flatMap((line) => this.#wrap(line))],
    ];
    return `${parts.map((lines) => lines.map((line) => line.trimEnd()).join("\n")).join("\n\n")}\n`;
  }

  #wrap(text: string): string[] {
    return wrap(text, this.#width);
  }

  #rule(sign: string, length = this.#width): string {
    return sign.repeat(Math.min(length, this.#width));
  }

  #section({ level, title, blocks }: Section): string[] {
    const head = this.#wrap(title);
    const under = this.#rule(level === 1 ? "=" : "-", Math.max(...head.map((line) => line.length)));
    return [...head, under, ...blocks.flatMap((block, index) => apart(blocks[index - 1], block, this.#block(block)))];
  }

  #block(block: Block): string[] {
    switch (block.kind) {
      case "paragraph":
        return this.#wrap(block.text);
      case "figure":
        return this.#wrap(`${block.title}: ${block.description}`);
      case "table":
        return this.#table(block);
      case "grid":
        return this.#grid(block);
      case "particulars":
        return block.rows.flatMap(([name, fact]) => this.#hanging(`${name.padEnd(nameWidth)}  `, fact));
      case "signatures":
        return block.rows.flatMap(({ role, name, on }) => [
          ...this.#hanging(`${role}  `, name === "" ? "____________________" : name),
          `    signature ____________________   date ${on === "" ? "____________" : on}`,
        ]);
      case "caution":
        return this.#hanging("!! ", block.text);
      case "gap":
        return this.#hanging("? ", gapText(block));
      case "judgement":
        return this.#hanging(`${verdictMarks[block.verdict]} `, judgementText(block));
      case "calculation":
        return [
          ...this.#headline(block.name, block.result),
          ...block.steps.flatMap((one) => this.#indented(working([one]), 4)),
          ...(block.source ? this.#indented(sourceText(block.source), 0) : []),
        ];
    }
  }

  #headline(name: string, result: string): string[] {
    if (result === "") return this.#wrap(name);
    const room = this.#width - result.length - 1;
    return name.length + 2 <= room
      ? [`${name} ${".".repeat(room - name.length - 1)} ${result}`]
      : this.#wrap(`${name}: ${result}`);
  }

  #hanging(mark: string, text: string): string[] {
    return wrap(text, this.#width - mark.length).map(
      (line, index) => `${index === 0 ? mark : " ".repeat(mark.length)}${line}`,
    );
  }

  /** `further`: how much more the lines after the first stand in. */
  #indented(text: string, further: number): string[] {
    const by = 4;
    return wrap(text, this.#width - by - further).map(
      (line, index) => " ".repeat(by + (index === 0 ? 0 : further)) + line,
    );
  }

  /** A page of text is too narrow for a row: bands that fit beside each other make a table, each with the way first. */
  #grid({ bands, rows, notes }: Grid): string[] {
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
      const beside = joined(tables.at(-1) ?? first, part);
      if (naturalWidth(beside) <= this.#width) tables[tables.length - 1] = beside;
      else tables.push(joined(ways, part));
    }
    return [
      ...tables.flatMap((one, at) => [...(at === 0 ? [] : [""]), ...this.#table({ kind: "table", ...one })]),
      ...(notes.length === 0 ? [] : ["", ...notes.flatMap((note, at) => this.#hanging(`${at + 1}) `, note))]),
    ];
  }

  #table({ head, rows }: Table): string[] {
    const widths = widthsOf([head, ...rows], this.#width);
    const body = rows.flatMap((row) => rowLines(row, widths));
    return [...rowLines(head, widths), widths.map((width) => "-".repeat(width)).join(" ".repeat(between)), ...body];
  }
}

/** Judgements stand together; anything else has air before it. */
function apart(before: Block | undefined, block: Block, lines: readonly string[]): readonly string[] {
  const close = !before || (block.kind === "judgement" && before.kind === "judgement");
  return close ? lines : ["", ...lines];
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

/** The widest columns give way until the table fits the page, and none below its longest word while another can. */
function widthsOf(rows: readonly (readonly string[])[], page: number): number[] {
  const columns = (rows[0] ?? []).map((_, column) => rows.map((row) => row[column] ?? ""));
  const natural = columns.map((cells) => Math.max(1, ...cells.map((cell) => cell.length)));
  const words = columns.map((cells) => Math.max(1, ...cells.map(longestWord)));
  const most = page - between * (natural.length - 1);
  const whole = narrowed(natural, words, most);
  return sum(whole) <= most
    ? whole
    : narrowed(
        whole,
        whole.map(() => 1),
        most,
      );
}

/** Takes from the widest that is above its least, down to the next one, as long as all together are too wide. */
function narrowed(natural: readonly number[], least: readonly number[], most: number): number[] {
  const widths = [...natural];
  const roomOf = (column: number): number => (widths[column] ?? 0) - (least[column] ?? 0);
  for (let over = sum(widths) - most; over > 0; over = sum(widths) - most) {
    const giving = [...widths.keys()].filter((column) => roomOf(column) > 0);
    const [widest, next] = giving.toSorted((a, b) => (widths[b] ?? 0) - (widths[a] ?? 0));
    if (widest === undefined) return widths;
    const step = Math.max(1, (widths[widest] ?? 0) - (next === undefined ? 0 : (widths[next] ?? 0)));
    widths[widest] = (widths[widest] ?? 0) - Math.min(over, step, roomOf(widest));
  }
  return widths;
}

function rowLines(cells: readonly string[], widths: readonly number[]): string[] {
  const wrapped = widths.map((width, column) => wrap(cells[column] ?? "", width));
  const height = Math.max(...wrapped.map((lines) => lines.length));
  return Array.from({ length: height }, (_, line) =>
    widths.map((width, column) => (wrapped[column]?.[line] ?? "").padEnd(width)).join(" ".repeat(between)),
  );
}
