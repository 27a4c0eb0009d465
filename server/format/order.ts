import { type BlockKind, vocabulary } from "../../grammar/vocabulary.ts";
import type { Item } from "./items.ts";

/** Prose about the line above it, which it follows wherever that goes. */
const attached: ReadonlySet<string> = new Set(["query", "answer", "note"]);
/** Blocks of tests keep the order in which they were written down. */
const asOne: Readonly<Record<string, string>> = { live: "dead" };

/** A statement with the comments above it and the remarks below it, which move as one. */
interface Bundle {
  readonly rank: number;
  readonly items: readonly Item[];
}

/** Puts each paragraph's statements in the order of the vocabulary. What stands in no order there keeps its place. */
export function ordered(items: readonly Item[], kind: BlockKind): Item[] {
  return paragraphs(items).flatMap((paragraph) => orderedParagraph(paragraph, kind));
}

function orderedParagraph(items: readonly Item[], kind: BlockKind): readonly Item[] {
  const bundles = bundlesOf(items, kind);
  const sorted = bundles.toSorted((a, b) => a.rank - b.rank).flatMap((bundle) => bundle.items);
  return sameOrder(remarks(items), remarks(sorted)) ? sorted : items;
}

function bundlesOf(items: readonly Item[], kind: BlockKind): Bundle[] {
  const words = Object.keys(vocabulary[kind]);
  const bundles: Bundle[] = [];
  let comments: Item[] = [];
  let current: { rank: number; items: Item[] } | undefined;
  for (const item of items) {
    if (item.type !== "statement") comments.push(item);
    else if (current && attached.has(item.word)) {
      current.items.push(...comments, item);
      comments = [];
    } else {
      const rank = attached.has(item.word) ? -1 : rankOf(words, item.word);
      current = { rank, items: [...comments, item] };
      bundles.push(current);
      comments = [];
    }
  }
  return [...bundles, { rank: Number.POSITIVE_INFINITY, items: comments }];
}

/** Where only live tests are made, as at the origin, they have their own place. */
function rankOf(words: readonly string[], word: string): number {
  const shared = asOne[word];
  return words.indexOf(shared !== undefined && words.includes(shared) ? shared : word);
}

/** Blank lines divide paragraphs; each stands as one of its own. */
function paragraphs(items: readonly Item[]): Item[][] {
  const out: Item[][] = [];
  let current: Item[] = [];
  for (const item of items) {
    if (item.type !== "blank") {
      current.push(item);
      continue;
    }
    out.push(current, [item]);
    current = [];
  }
  return [...out, current];
}

/** Questions and their answers, whose sequence says which answers which. */
const remarks = (items: readonly Item[]): Item[] =>
  items.filter((item) => item.type === "statement" && (item.word === "query" || item.word === "answer"));

const sameOrder = (a: readonly Item[], b: readonly Item[]): boolean => a.every((item, index) => item === b[index]);
