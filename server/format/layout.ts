import type { BlockKind } from "../../grammar/vocabulary.ts";
import type { BlockItem, Item, StatementItem } from "./items.ts";
import { ordered } from "./order.ts";

/** A one-line block longer than this is written on several. */
const longest = 100;

/** How items are laid out: the block they stand in, how deep, and whether statements may change places. */
export interface Style {
  readonly kind: BlockKind;
  readonly depth: number;
  readonly sort: boolean;
  /** Whether a blank line may stand first and last. */
  readonly blankFirst: boolean;
  readonly blankLast: boolean;
}

interface Line {
  readonly text: string;
  readonly comment?: string | undefined;
}

/** The lines of a block's inside. */
export function layOut(items: readonly Item[], style: Style): string[] {
  const inOrder = style.sort && style.kind !== "file" ? ordered(items, style.kind) : items;
  const tidy = spaced(inOrder, style);
  const widths = wordWidths(tidy, style.kind);
  const lines = tidy.flatMap((item, index) => linesOf(item, style, widths[index] ?? 0));
  return withComments(lines);
}

/** At most one blank line in a row. */
function spaced(items: readonly Item[], { blankFirst, blankLast }: Style): Item[] {
  const out: Item[] = [];
  for (const item of items) {
    const before = out.at(-1);
    if (item.type !== "blank" || (before ? before.type !== "blank" : blankFirst)) out.push(item);
  }
  if (out.at(-1)?.type === "blank" && !blankLast) out.pop();
  return out;
}

/** For each item the column its arguments begin at: words are padded to the longest of their run of lines. */
function wordWidths(items: readonly Item[], kind: BlockKind): number[] {
  const widths: number[] = [];
  let run: number[] = [];
  let width = 0;
  const endRun = () => {
    for (const index of run) widths[index] = width;
    run = [];
    width = 0;
  };
  items.forEach((item, index) => {
    if (item.type === "blank" || (item.type === "statement" && item.opens)) endRun();
    else if (item.type === "statement" && kind !== "file") {
      run.push(index);
      width = Math.max(width, item.head.length + 2);
    } else if (item.type === "raw") {
      width = Math.max(width, item.head.length + 2);
    }
  });
  endRun();
  return widths;
}

function linesOf(item: Item, style: Style, width: number): Line[] {
  const indent = "  ".repeat(style.depth);
  switch (item.type) {
    case "blank":
      return [{ text: "" }];
    case "comment":
      return [{ text: indent + item.text }];
    case "raw":
      return [{ text: item.text }];
    case "statement":
      return item.block
        ? blockLines(item, item.block, style)
        : [{ text: indent + plain(item, width), comment: item.comment }];
  }
}

const plain = ({ head, args }: StatementItem, width = 0): string =>
  args === "" ? head : `${head.padEnd(Math.max(width, head.length + 1))}${args}`;

function blockLines(item: StatementItem, block: BlockItem, style: Style): Line[] {
  const indent = "  ".repeat(style.depth);
  const header = item.rawHeader ?? indent + plain(item);
  const short = block.inline && item.rawHeader === undefined ? oneLine(header, block) : undefined;
  if (short !== undefined) return [{ text: short, comment: item.comment }];
  const inner: Style = {
    kind: block.kind,
    depth: style.depth + 1,
    sort: style.sort,
    blankFirst: false,
    blankLast: false,
  };
  return [
    { text: `${header} {`, comment: item.comment },
    ...layOut(block.items, inner).map((text) => ({ text })),
    { text: `${indent}}`, comment: block.closeComment },
  ];
}

function oneLine(header: string, { items }: BlockItem): string | undefined {
  if (items.length === 0) return `${header} {}`;
  const [only, ...others] = items;
  if (only?.type !== "statement" || others.length > 0 || only.block) return undefined;
  const text = `${header} { ${plain(only)} }`;
  return text.length <= longest ? text : undefined;
}

/** Comments behind consecutive lines begin at one column, two blanks from the longest. */
function withComments(lines: readonly Line[]): string[] {
  const out: string[] = [];
  for (let first = 0; first < lines.length; first++) {
    let end = first;
    let width = 0;
    while (lines[end]?.comment !== undefined) width = Math.max(width, lines[end++]?.text.length ?? 0);
    for (const { text, comment } of lines.slice(first, end)) out.push(`${text.padEnd(width)}  ${comment}`);
    if (end > first) first = end - 1;
    else out.push(lines[first]?.text ?? "");
  }
  return out;
}
