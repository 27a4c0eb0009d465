import type { NameKind, WordRow } from "../../grammar/params.ts";
import { type BlockKind, rowOf } from "../../grammar/vocabulary.ts";
import { memoByObject } from "../circuit/kept.ts";
import { Memo } from "../memo/memo.ts";
import { isWord, valuesAt } from "../model/fact-values.ts";
import type { Board, Way } from "../model/file.ts";
import type { Installation } from "../model/installation.ts";
import type { Fact, Facts, Val } from "../model/values.ts";

/** A place where a name is used, with the board and way it is used in: they decide what the name can mean. */
export interface Reference {
  readonly names: NameKind;
  readonly name: Val<string>;
  readonly fact: Fact;
  /** Whether the name stands for something that needs no definition, as `supply` does. */
  readonly builtin: boolean;
  readonly board: Board | undefined;
  readonly way: Way | undefined;
}

/** Every name an installation's own lines use. The vocabulary says which arguments are names. */
export const ownReferences = ({ head }: Pick<Installation, "head">): Reference[] =>
  namesUsed(head.facts).map((name) => ({ ...name, board: undefined, way: undefined }));

/** Every name a board and its ways use. */
export const boardReferences = (board: Board): Reference[] => [
  ...namesUsed(board.head.facts).map((name) => ({ ...name, board, way: undefined })),
  ...board.ways.flatMap((way) =>
    [...namesInHeader(way), ...namesIn(way.facts)].map((name) => ({ ...name, board, way })),
  ),
];

/** The line of a way itself may name its circuit type. */
function namesInHeader({ header }: Way): NameUsed[] {
  const { as } = header.args;
  return as ? [{ names: "circuit-type", name: as, fact: header, builtin: false }] : [];
}

type NameUsed = Omit<Reference, "board" | "way">;

/** Of an installation's or a board's own lines it is asked after every edit. */
const namesUsed = memoByObject(namesIn);

function namesIn(facts: Facts): readonly NameUsed[] {
  const found: NameUsed[] = [];
  collect(facts, found);
  return found;
}

function collect(facts: Facts, found: NameUsed[]): void {
  for (const fact of facts.list) {
    for (const [param, names, builtin] of namesOf(facts.kind, fact.word)) {
      for (const name of valuesAt(fact, param))
        if (isWord(name)) found.push({ names, name, fact, builtin: builtin.has(name.value) });
    }
    if (fact.inner) collect(fact.inner, found);
  }
}

type NameParam = readonly [param: string, names: NameKind, builtin: ReadonlySet<string>];

const nameParams = new Memo<WordRow, readonly NameParam[]>();

function namesOf(block: BlockKind, word: string): readonly NameParam[] {
  const row = rowOf(block, word);
  return row ? nameParams.of(row, findNames) : [];
}

const findNames = ({ params }: WordRow): readonly NameParam[] =>
  Object.entries(params).flatMap(([param, { accepts }]): NameParam[] =>
    accepts.kind === "ref" ? [[param, accepts.names, new Set(Object.keys(accepts.builtin ?? {}))]] : [],
  );
