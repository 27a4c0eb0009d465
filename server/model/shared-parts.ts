import type { Bits } from "../memo/bits.ts";
import { Memo } from "../memo/memo.ts";
import type { Edition } from "../tables/editions.ts";
import type { Engine } from "./engine.ts";
import type { BoardHead, InstallationHead } from "./file.ts";
import type { Names } from "./names.ts";
import type { Questions } from "./questions.ts";
import { type Parts, recordedBy } from "./reads.ts";
import type { Upstream } from "./three-lines.ts";
import type { Facts } from "./values.ts";

interface Round {
  readonly installation: InstallationHead;
  readonly supply: Facts<"supply"> | undefined;
  readonly board: BoardHead;
  readonly upstream: readonly Upstream[];
  readonly edition: Edition | undefined;
  readonly names: Names;
}

/** What changed from other parts to these; another file knows how to tell. */
interface Change {
  leaves(reads: Bits): boolean;
}

/**
 * What the ways of a board share with each other and with other boards: its own lines, the supply, the names. Light: it
 * may be held when its context, with all that was worked out of the ways there, is gone.
 */
export class SharedParts implements Parts {
  readonly questions: Questions;
  readonly alike: Engine["alike"];
  readonly recent: Engine["recent"];
  readonly board: BoardHead;
  readonly upstream: readonly Upstream[];
  readonly edition: Edition | undefined;
  readonly #round: Round;
  readonly #engine: Engine;
  #slots: ReadonlyMap<object, number> | undefined;
  #parts: ReadonlyMap<number, object> | undefined;
  #feeders: ReadonlySet<object> | undefined;
  readonly #changes = new WeakMap<SharedParts, Change>();

  constructor(round: Round, engine: Engine) {
    this.#round = round;
    this.#engine = engine;
    this.questions = engine.questions;
    this.alike = engine.alike;
    this.recent = engine.recent;
    this.board = round.board;
    this.upstream = round.upstream;
    this.edition = round.edition;
  }

  /** In how many places what was found is kept. */
  get mostKept(): number {
    return this.#engine.mostKept;
  }

  get hasSupply(): boolean {
    return this.#round.supply !== undefined;
  }

  /** What changed from other parts to these, worked out once for all who ask. */
  changeFrom<C extends Change>(from: SharedParts, compute: () => C): C {
    const before = this.#changes.get(from);
    if (before) return before as C;
    const change = compute();
    this.#changes.set(from, change);
    return change;
  }

  /** Whether all boards of the installation share a part. */
  isCommon(of: object): boolean {
    const { installation, supply, names } = this.#round;
    return of === supply || of === installation || of === installation.facts || this.#isNamed(of, names);
  }

  #isNamed(of: object, names: Names): boolean {
    return (
      of === names ||
      of === names.instruments ||
      of === names.cableTypes ||
      of === names.circuitTypes ||
      of === names.boards ||
      instrumentsOf(names, this.questions).slots.has(of)
    );
  }

  isFeeder(facts: object): boolean {
    this.#feeders ??= new Set(this.upstream.flatMap(({ feeder }) => feeder?.facts ?? []));
    return this.#feeders.size > 0 && this.#feeders.has(facts);
  }

  slotOf(of: object): number | undefined {
    this.#slots ??= this.#findSlots();
    return this.#slots.get(of) ?? instrumentsOf(this.#round.names, this.questions).slots.get(of);
  }

  partAt(slot: number): object | undefined {
    this.#slots ??= this.#findSlots();
    this.#parts ??= new Map([...this.#slots].map(([part, at]) => [at, part]));
    return this.#parts.get(slot) ?? instrumentsOf(this.#round.names, this.questions).parts.get(slot);
  }

  /** The numbers of all parts there are. */
  slots(): number[] {
    this.#slots ??= this.#findSlots();
    return [...this.#slots.values(), ...instrumentsOf(this.#round.names, this.questions).slots.values()];
  }

  #findSlots(): Map<object, number> {
    const { installation, supply, board, upstream, names } = this.#round;
    const slots = new Map<object, number>();
    const add = (part: object | undefined, name: string): void => {
      // In a circle of boards one thing can be two parts: the nearest counts.
      if (part && !slots.has(part)) slots.set(part, this.questions.slot(name));
    };
    add(board, "board's head");
    add(board.facts, "board");
    add(installation, "installation's head");
    add(installation.facts, "installation");
    add(supply, "supply");
    upstream.forEach((above, index) => {
      add(above.board, `head of board ${index} up`);
      add(above.board.facts, `board ${index} up`);
      add(above.feeder?.facts, `feeder ${index} up`);
    });
    add(names, "names");
    add(names.instruments, "instruments");
    add(names.cableTypes, "cable types");
    add(names.circuitTypes, "circuit types");
    add(names.boards, "boards");
    return slots;
  }
}

interface Instruments {
  readonly questions: Questions;
  readonly slots: ReadonlyMap<object, number>;
  readonly parts: ReadonlyMap<number, object>;
}

const instrumentsKept = new Memo<Names, Instruments>();

/** What is stated of each instrument is a part of its own. */
function instrumentsOf(names: Names, questions: Questions): Instruments {
  const before = instrumentsKept.get(names);
  if (before?.questions === questions) return before;
  const slots = new Map<object, number>();
  for (const [name, facts] of recordedBy(undefined, () => instrumentBlocks(names)))
    for (const [index, block] of facts.entries())
      if (block) slots.set(block, questions.slot(`instrument ${index} ${name}`));
  const found = { questions, slots, parts: new Map([...slots].map(([part, slot]) => [slot, part])) };
  instrumentsKept.set(names, found);
  return found;
}

const instrumentBlocks = (names: Names) =>
  [...names.instruments].map(([name, facts]) => [name, facts.map(({ inner }) => inner)] as const);
