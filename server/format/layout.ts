import type { BlockKind } from "../../grammar/vocabulary.ts";
import { inColumn } from "./column.ts";
import type { BlockItem, Item, StatementItem } from "./items.ts";
import { ordered } from "./order.ts";

/** A one-line block longer than this is written on several. */
const longest = 100;

/** How items are laid out: the block they stand in, how deep, and whether statements may change places. */
interface Style {
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
  return tidy.flatMap((item) => linesOf(item, style)).map(withComment);
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

function linesOf(item: Item, style: Style): Line[] {
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
        : [
            {
              text: indent + (style.kind === "file" || item.opens ? plain(item) : inColumn(item)),
              comment: item.comment,
            },
          ];
  }
}

const plain = ({ head, args }: StatementItem): string => (args === "" ? head : `${head} ${args}`);

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

/** A comment is two blanks behind its own line, whatever is behind those next to it. */
const withComment = ({ text, comment }: Line): string => (comment === undefined ? text : `${text}  ${comment}`);
