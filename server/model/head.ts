import type { Segment } from "../syntax/split.ts";
import { type Glance, glanceAtFacts } from "./glance.ts";
import { recordedBy, recorder } from "./reads.ts";
import { asLiteral, type Fact, type Facts } from "./values.ts";

/** What the first line says. */
interface Opening {
  readonly title: string;
  readonly header: Fact;
}

/** An installation or a board without what is in it: its first line and the facts of its own are read when asked for. */
export class Head {
  readonly #name: string;
  #readOpening: (() => Opening) | undefined;
  #opening: Opening | undefined;
  #readFacts: (() => Facts) | undefined;
  #facts: Facts | undefined;
  #glance: Glance | undefined;

  constructor(name: string, readOpening: () => Opening, readFacts: () => Facts, glance?: Glance) {
    this.#name = name;
    this.#readOpening = readOpening;
    this.#readFacts = readFacts;
    this.#glance = glance;
  }

  /** Whether all of it is read. */
  get isRead(): boolean {
    return this.#readFacts === undefined;
  }

  get facts(): Facts {
    if (this.#readFacts) {
      // Who asks first has not asked for what is needed to read them.
      this.#facts = recordedBy(undefined, this.#readFacts);
      this.#readFacts = undefined;
    }
    return this.#facts as Facts;
  }

  /** What joining asks of it. It is for joining alone, which notes nothing of what it asks. */
  get glance(): Glance {
    this.#glance ??= recordedBy(undefined, () => glanceAtFacts(this.facts as Facts<"board">));
    return this.#glance;
  }

  get name(): string {
    recorder?.note(this, "name");
    return this.#name;
  }

  get title(): string {
    recorder?.note(this, "title");
    return this.#opened().title;
  }

  get header(): Fact {
    recorder?.note(this, "header");
    return this.#opened().header;
  }

  #opened(): Opening {
    if (this.#readOpening) {
      this.#opening = recordedBy(undefined, this.#readOpening);
      this.#readOpening = undefined;
    }
    return this.#opening as Opening;
  }
}

/** A header whose name is still to be typed has an empty one after its word: what stands in its block counts all the same. */
export function withName<F extends Fact>(header: F, name: string): F {
  if (header.args[name] !== undefined) return header;
  const empty = { value: "", start: header.wordEnd, end: header.wordEnd };
  return { ...asLiteral(header), args: { ...header.args, [name]: empty } };
}

/** A header that could not be read still holds what stands in its block. */
export function nameless(segment: Segment, word: string): Fact {
  const at = segment.text.search(/\S/);
  const wordEnd = at + word.length;
  return { word, wordEnd, args: {}, provenance: "measured", segment, start: at, end: wordEnd };
}
