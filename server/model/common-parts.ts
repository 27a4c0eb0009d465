import type { Bits } from "../memo/bits.ts";
import { Memo } from "../memo/memo.ts";
import type { InstallationHead } from "./file.ts";
import type { Names } from "./names.ts";
import type { Questions } from "./questions.ts";
import { recordedBy } from "./reads.ts";
import type { Facts } from "./values.ts";

interface Round {
  readonly installation: InstallationHead;
  readonly supply: Facts<"supply"> | undefined;
  readonly names: Names;
}

/** How it compares with what it was, question by question. */
interface Compared {
  /** How many questions there were then. */
  count: number;
  changed: Bits;
  readonly same: Map<number, boolean>;
}

/** What all boards of an installation share, each part with its number: an edit of it is looked into once for all of them. */
export class CommonParts {
  readonly #round: Round;
  readonly #questions: Questions;
  readonly #slots = new Map<object, number>();
  readonly #parts = new Map<number, object>();
  readonly #compared = new WeakMap<CommonParts, Compared>();

  constructor(round: Round, questions: Questions) {
    this.#round = round;
    this.#questions = questions;
    const { installation, supply, names } = round;
    this.#add(installation, "installation's head");
    this.#add(installation.facts, "installation");
    this.#add(supply, "supply");
    this.#add(names, "names");
    this.#add(names.instruments, "instruments");
    this.#add(names.cableTypes, "cable types");
    this.#add(names.circuitTypes, "circuit types");
    this.#add(names.boards, "boards");
    // What is stated of each instrument is a part of its own.
    for (const [name, blocks] of recordedBy(undefined, () => instrumentBlocks(names)))
      for (const [index, block] of blocks.entries()) this.#add(block, `instrument ${index} ${name}`);
  }

  #add(part: object | undefined, name: string): void {
    if (!part) return;
    const slot = this.#questions.slot(name);
    this.#slots.set(part, slot);
    this.#parts.set(slot, part);
  }

  isOf({ installation, supply, names }: Round, questions: Questions): boolean {
    const round = this.#round;
    return (
      questions === this.#questions &&
      installation === round.installation &&
      supply === round.supply &&
      names === round.names
    );
  }

  slotOf(part: object): number | undefined {
    return this.#slots.get(part);
  }

  partAt(slot: number): object | undefined {
    return this.#parts.get(slot);
  }

  /** The numbers of all of them. */
  get slots(): Iterable<number> {
    return this.#parts.keys();
  }

  comparedWith(before: CommonParts): Compared {
    const known = this.#compared.get(before);
    if (known) return known;
    const fresh = { count: -1, changed: [], same: new Map<number, boolean>() };
    this.#compared.set(before, fresh);
    return fresh;
  }
}

const instrumentBlocks = (names: Names) =>
  [...names.instruments].map(([name, facts]) => [name, facts.map(({ inner }) => inner)] as const);

const kept = new Memo<Names, CommonParts>();

/** The same for all boards while none of it is another. */
export function commonParts(round: Round, questions: Questions): CommonParts {
  const before = kept.get(round.names);
  if (before?.isOf(round, questions)) return before;
  const fresh = new CommonParts(round, questions);
  kept.set(round.names, fresh);
  return fresh;
}
