import type { Bits } from "../memo/bits.ts";
import type { Edition } from "../tables/editions.ts";
import { type CommonParts, commonParts } from "./common-parts.ts";
import type { Engine } from "./engine.ts";
import type { BoardHead, InstallationHead } from "./file.ts";
import type { Names } from "./names.ts";
import type { Questions } from "./questions.ts";
import type { Parts } from "./reads.ts";
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

  isFeeder(facts: object): boolean {
    this.#feeders ??= new Set(this.upstream.flatMap(({ feeder }) => feeder?.facts ?? []));
    return this.#feeders.size > 0 && this.#feeders.has(facts);
  }

  slotOf(of: object): number | undefined {
    return this.#own.get(of) ?? this.common.slotOf(of);
  }

  partAt(slot: number): object | undefined {
    for (const [part, own] of this.#own) if (own === slot) return part;
    return this.common.partAt(slot);
  }

  /** The numbers of the parts that the boards of an installation do not all share. */
  ownSlots(): Iterable<number> {
    return this.#own.values();
  }

  /** What all boards share; worked out when it is asked for, as those of a large file are one by one. */
  get common(): CommonParts {
    this.#common ??= commonParts(this.#round, this.questions);
    return this.#common;
  }
  #common: CommonParts | undefined;

  get #own(): ReadonlyMap<object, number> {
    this.#slots ??= this.#findSlots();
    return this.#slots;
  }

  #findSlots(): Map<object, number> {
    const { board, upstream } = this.#round;
    const slots = new Map<object, number>();
    const add = (part: object | undefined, name: string): void => {
      // In a circle of boards one thing can be two parts: the nearest counts.
      if (part && !slots.has(part)) slots.set(part, this.questions.slot(name));
    };
    add(board, "board's head");
    add(board.facts, "board");
    upstream.forEach((above, index) => {
      add(above.board, `head of board ${index} up`);
      add(above.board.facts, `board ${index} up`);
      add(above.feeder?.facts, `feeder ${index} up`);
    });
    return slots;
  }
}
