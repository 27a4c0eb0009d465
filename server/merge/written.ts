/** Items as the lines they are written in. */
import { type Item, remarksIn } from "./item.ts";

/** One of three that say the same, in the layout of the side that changed it. */
export const laidOut = (base: Item, ours: Item, theirs: Item): Item =>
  ours === base || text(ours) === text(base) ? theirs : ours;

const text = (item: Item): string => written(item).join("");

export const written = (item: Item): string[] =>
  item.body && !item.inline
    ? [
        item.head,
        ...item.body.items.flatMap((inner) => [...inner.lead, ...written(inner)]),
        ...item.body.tail,
        item.body.close,
      ]
    : [item.head];

/** A block of one line as it is written on several. */
export function opened(item: Item): Item {
  if (!item.inline || !item.body) return item;
  const [, line = "", comment = "", end = "\n"] =
    /^(.*?)[^\S\r\n]*(#[^\r\n]*)?(\r\n|\r|\n)$/.exec(inlineHead(item)) ?? [];
  return { ...item, inline: false, head: `${line}${comment === "" ? "" : `  ${comment}`}${end}` };
}

/** The line up to its brace, and the comment behind the block. */
function inlineHead({ head, spelt }: Item): string {
  const brace = braceIn(head);
  const comment = / \{ (#.*)$/.exec(spelt)?.[1] ?? "";
  const end = /[\r\n]+$/.exec(head)?.[0] ?? "\n";
  return `${head.slice(0, brace + 1)}${comment === "" ? "" : ` ${comment}`}${end}`;
}

/** The first brace outside quotes. */
const braceIn = (line: string): number => /^(?:"(?:[^"\\]|\\.)*"|[^"{])*/.exec(line)?.[0].length ?? 0;

export const textsOf = (items: readonly Item[]): string =>
  items.flatMap((item) => [...item.lead, ...written(item)]).join("");

/** Comments and blank lines above something. They are no facts: where both sides wrote some, all are kept. */
export function leadOf(base: readonly string[], ours: readonly string[], theirs: readonly string[]): readonly string[] {
  if (base === ours) return theirs;
  const [was, is, other] = [base, ours, theirs].map((lines) => lines.join(""));
  if (is === was) return theirs;
  if (other === was || is === other) return ours;
  if (remarksIn(ours) === remarksIn(base)) return theirs;
  if (remarksIn(theirs) === remarksIn(base)) return ours;
  const known = new Set([...base, ...ours].map((line) => line.trim()));
  return [...ours, ...theirs.filter((line) => line.trim() !== "" && !known.has(line.trim()))];
}
