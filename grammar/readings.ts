/** What is read on the lines of a block, asked of the vocabulary's rows. */
import type { Param, WordRow } from "./params.ts";
import { type MeasuredKind, type MeteredName, meters } from "./quantities.ts";
import { type BlockKind, rowOf, vocabulary } from "./vocabulary.ts";

/** An argument that is read: on an instrument, or seen and written as a verdict. */
interface ReadArg {
  readonly name: string;
  /** The figures of an instrument it is read by; nothing for a verdict. */
  readonly meter: MeasuredKind | undefined;
}

const isMetered = (name: string): name is MeteredName => Object.hasOwn(meters, name);

function readArg([name, { accepts }]: [string, Param]): ReadArg[] {
  if (accepts.kind === "choice") return accepts.absent ? [{ name, meter: undefined }] : [];
  if (accepts.kind !== "quantity" || !accepts.reading || !isMetered(accepts.of)) return [];
  return [{ name, meter: meters[accepts.of] }];
}

/** The arguments of a row that are read, in its order. */
export const readArgs = (row: WordRow): readonly ReadArg[] => Object.entries(row.params).flatMap(readArg);

/** What one argument of a word is read by; nothing where it is not read on an instrument. */
export function meterOf(block: BlockKind, word: string, arg: string): MeasuredKind | undefined {
  const row = rowOf(block, word);
  return row && readArgs(row).find(({ name }) => name === arg)?.meter;
}

/** The words of a block, in its order, whose rows fit. */
export const wordsWhere = (block: BlockKind, fits: (row: WordRow) => boolean): readonly string[] =>
  Object.entries<WordRow>(vocabulary[block]).flatMap(([word, row]) => (fits(row) ? [word] : []));

/** Words of a block whose lines are read by one who tests. */
export const wordsRead = (block: BlockKind): readonly string[] => wordsWhere(block, ({ reads }) => reads !== undefined);

/** Blocks of one day's tests. */
export const testBlocks = ["dead", "live", "boardDead", "boardLive", "supplyLive"] as const satisfies BlockKind[];
export type TestBlock = (typeof testBlocks)[number];

export const isTestBlock = (block: BlockKind): block is TestBlock => testBlocks.some((one) => one === block);

/** A test in the middle of a sentence: “the RCD”, “insulation resistance”. */
export const testName = (word: string): string =>
  testBlocks.map((block) => rowOf(block, word)?.reads?.test).find((name) => name !== undefined) ?? word;
