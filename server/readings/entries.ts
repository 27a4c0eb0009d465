/**
 * What a schedule holds, each thing under its address: readings one by one, other lines as a whole. Two entries say the
 * same where their meanings are equal: 0.62 Ω is 620 mΩ, the order of what is listed and the layout do not matter.
 */

import { readArgs } from "../../grammar/readings.ts";
import { type BlockKind, rowOf } from "../../grammar/vocabulary.ts";
import { apart } from "../model/beside.ts";
import { allWrittenAt, asList, wordAt } from "../model/fact-values.ts";
import type { Board, BoardHead, FileModel, InstallationHead, Way } from "../model/file.ts";
import type { Installation } from "../model/installation.ts";
import type { Fact, Facts, Reading, Val } from "../model/values.ts";
import { type Address, type AddressPlace, type AddressStep, printAddress } from "./address.ts";
import { type Args, endingOf, keyArgs, keyOf, lineOf, meaningOf, type Renamed, shownOf } from "./entry-text.ts";

export interface Entry {
  readonly address: Address;
  /** The address in print: equal for equal addresses. */
  readonly at: string;
  /** Equal for two entries of one address that say the same. Empty where the address says all there is. */
  readonly meaning: string;
  /** As it is written, without its word and what its address holds already. */
  readonly shown: string;
  /** The line as it is written, from its word on. */
  readonly line: string;
  readonly fact: Fact;
  /** What was read, where it is a reading: one atom with where it came from and why it is missing. */
  readonly reading?: Reading | Val<string>;
  /** The argument of the line that holds the reading. */
  readonly arg?: string;
  /** The kind of block the line is in. */
  readonly kind: BlockKind;
  /** The day of the block it is in, and the instruments named there. */
  readonly on?: string;
  readonly with?: readonly string[];
}

type Held = Pick<FileModel, "facts" | "installations" | "boards">;

/** What one file holds, by itself. */
export function entriesOfFile({ facts, installations, boards }: Held): readonly Entry[] {
  const several = installations.length > 1;
  const raw = [
    ...walk(facts, { place: { of: "file" }, blocks: [] }),
    ...installations.flatMap((part) => ofInstallation(part.head, part.boards, several)),
    ...boards.flatMap((board) => ofBoard(board, {})),
  ];
  return numbered(raw);
}

/** What one file holds beside its boards. */
export const entriesBesideBoards = ({ facts, installations }: FileModel): readonly Entry[] =>
  entriesOfFile({
    facts,
    installations: installations.map(({ head }) => ({ head, boards: [] })),
    boards: [],
  });

/** What an installation holds with the files it uses; its ways as they are in their place. */
export function entriesOfInstallation({ head, boards, files }: Installation): readonly Entry[] {
  const raw = [
    ...files.flatMap(({ facts }) => walk(facts, { place: { of: "file" }, blocks: [] })),
    ...ofInstallation(
      head,
      boards.map(({ board }) => board),
      false,
    ),
  ];
  return numbered(raw);
}

/** What one way holds. Lines that its circuit type says of it are the type's. */
export const entriesOfWay = (board: string, way: Way, renamed?: Renamed): readonly Entry[] =>
  numbered(ofWay(board, way, renamed ? { renamed } : {}));

/** What a board holds beside its ways. */
export const entriesOfBoard = (head: BoardHead, renamed?: Renamed): readonly Entry[] =>
  numbered(ofBoardHead(head, renamed ? { renamed } : {}));

/** What an installation and the files it is read from hold beside the boards. */
export const entriesAtOrigin = ({ head, files }: Pick<Installation, "head" | "files">): readonly Entry[] =>
  numbered([
    ...files.flatMap(({ facts }) => walk(facts, { place: { of: "file" }, blocks: [] })),
    ...ofInstallation(head, [], false),
  ]);

interface Named extends Pick<Address, "installation"> {
  readonly renamed?: Renamed;
}
interface Block extends Named {
  readonly place: AddressPlace;
  readonly blocks: readonly AddressStep[];
  readonly on?: string;
  readonly with?: readonly string[];
}
type Raw = Omit<Entry, "at">;

function ofInstallation(head: InstallationHead, boards: readonly Board[], several: boolean): Raw[] {
  const named: Named = several ? { installation: head.title } : {};
  const block: Block = { ...named, place: { of: "installation" }, blocks: [] };
  return [
    itself(head.header, "file", block),
    ...walk(head.facts, block),
    ...boards.flatMap((board) => ofBoard(board, named)),
  ];
}

function ofBoard({ head, ways }: Board, named: Named): Raw[] {
  return [...ofBoardHead(head, named), ...ways.flatMap((way) => ofWay(head.name, way, named))];
}

function ofBoardHead({ name, header, facts }: BoardHead, named: Named): Raw[] {
  const block: Block = { ...named, place: { of: "board", board: name }, blocks: [] };
  return [itself(header, "installation", block), ...ofHeader(header, "installation", block), ...walk(facts, block)];
}

function ofWay(board: string, { id, header, facts, segment }: Way, named: Named): Raw[] {
  const block: Block = { ...named, place: { of: "way", board, way: id }, blocks: [] };
  const own = facts.list.filter((fact) => fact.segment === segment && fact.start > header.args.id.end);
  const written = { kind: facts.kind, list: own, struckOut: facts.struckOut } as const;
  return [itself(header, "board", block), ...ofHeader(header, "board", block), ...walk(written, block)];
}

type Written = Pick<Facts, "kind" | "list" | "struckOut">;

function walk({ kind, list, struckOut }: Written, block: Block): Raw[] {
  return [
    ...list.flatMap((fact, index) => ofFact(fact, kind, block, list, index)),
    ...struckOut.flatMap((fact) => ofBlock(fact, kind, block, true)),
  ];
}

function ofFact(fact: Fact, kind: BlockKind, block: Block, among: readonly Fact[], index: number): Raw[] {
  if (rowOf(kind, fact.word)?.opens) return ofBlock(fact, kind, block, false);
  const follows = rowOf(kind, fact.word)?.follows;
  const above = follows === undefined ? undefined : among.slice(0, index).findLast(({ word }) => word === follows);
  const key = above ? keyOf(above, kind, block.renamed) : undefined;
  return apart(fact).flatMap((one) => ofLine(one, kind, block, key));
}

function ofBlock(fact: Fact, kind: BlockKind, outer: Block, struckOut: boolean): Raw[] {
  const on = wordAt(fact, "on");
  const used = allWrittenAt(fact, "with").map(({ value }) => value);
  const step: AddressStep = {
    word: fact.word,
    key: keyOf(fact, kind, outer.renamed),
    ...(struckOut ? { struckOut } : {}),
  };
  const block: Block = {
    ...outer,
    blocks: [...outer.blocks, step],
    ...(on === undefined ? {} : { on }),
    ...(used.length === 0 ? {} : { with: used }),
  };
  return [itself(fact, kind, block), ...ofHeader(fact, kind, block), ...(fact.inner ? walk(fact.inner, block) : [])];
}

const addressIn = ({ installation, place, blocks }: Block): Address => ({
  ...(installation === undefined ? {} : { installation }),
  place,
  blocks,
});

const dayOf = ({ on, with: used }: Block): Pick<Raw, "on" | "with"> => ({
  ...(on === undefined ? {} : { on }),
  ...(used === undefined ? {} : { with: used }),
});

/** That a block is there, whatever is in it. */
const itself = (header: Fact, kind: BlockKind, block: Block): Raw => ({
  address: addressIn(block),
  meaning: "",
  shown: "",
  line: lineOf(header),
  fact: header,
  kind,
  ...dayOf(block),
});

/** What the first line of a block says of it: as lines in the block, a word each. */
function ofHeader(header: Fact, kind: BlockKind, block: Block): Raw[] {
  const row = rowOf(kind, header.word);
  if (!row) return [];
  const keys = keyArgs(row);
  return Object.entries(row.params).flatMap(([name, param]): Raw[] => {
    const value = header.args[name];
    if (value === undefined || keys.includes(name)) return [];
    const values = asList(value);
    return [
      {
        address: { ...addressIn(block), line: { word: name, key: [] } },
        meaning: meaningOf(param, values, block.renamed),
        shown: shownOf(header, [[param, values, name]], false),
        line: lineOf(header),
        fact: header,
        kind,
        ...dayOf(block),
      },
    ];
  });
}

function ofLine(fact: Fact, kind: BlockKind, block: Block, follows: readonly string[] | undefined): Raw[] {
  const row = rowOf(kind, fact.word);
  if (!row) return [];
  const keys = keyArgs(row);
  const args: Args = Object.entries(row.params).flatMap(([name, param]) => {
    const value = fact.args[name];
    // Of a run the address has the points; their distances are what it says.
    const told = keys.includes(name) && param.accepts.kind !== "path";
    return value === undefined || told ? [] : [[param, asList(value), name] as const];
  });
  const read = row.reads ? readArgs(row).map(({ name }) => name) : [];
  const line: AddressStep = { word: fact.word, key: follows ?? keyOf(fact, kind, block.renamed) };
  const entry = (these: Args, part?: string): Raw => {
    const [, values, arg] = these.find(([, , name]) => read.includes(name)) ?? [];
    const reading = values?.[0] as Entry["reading"];
    const ending = reading ? endingOf(fact, reading, args) : { meaning: "", shown: "" };
    return {
      address: { ...addressIn(block), line, ...(part === undefined ? {} : { part }) },
      meaning:
        these.map(([param, all]) => `${param.label ?? ""}${meaningOf(param, all, block.renamed)}`).join(" ") +
        ending.meaning,
      shown: shownOf(fact, these, part === undefined) + ending.shown,
      line: lineOf(fact),
      fact,
      kind,
      ...dayOf(block),
      ...(reading && arg !== undefined ? { reading, arg } : {}),
    };
  };
  if (!row.reads) return [entry(args)];
  // A value with a label of its own is a value of its own; the rest of the line is one.
  const parts = args.filter(([{ label }]) => label !== undefined);
  const main = args.filter(([{ label }]) => label === undefined);
  return [
    ...(main.length > 0 || parts.length === 0 ? [entry(main)] : []),
    ...parts.map((part) => entry([part], part[0].label)),
  ];
}

/** Those of one address are told apart by what they say, so that their order does not matter. */
function numbered(raw: readonly Raw[]): Entry[] {
  const printed = raw.map((one): Entry => ({ ...one, at: printAddress(one.address) }));
  const groups = Map.groupBy(printed, ({ at }) => at);
  if (groups.size === printed.length) return printed;
  const nths = new Map<Entry, number>();
  for (const group of groups.values())
    if (group.length > 1)
      for (const [index, entry] of group.toSorted((a, b) => compareText(a.meaning, b.meaning)).entries())
        nths.set(entry, index + 1);
  return printed.map((entry) => {
    const nth = nths.get(entry) ?? 1;
    if (nth === 1) return entry;
    const address = { ...entry.address, nth };
    return { ...entry, address, at: printAddress(address) };
  });
}

const compareText = (a: string, b: string): number => (a < b ? -1 : a > b ? 1 : 0);
