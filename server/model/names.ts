/** What may be referred to by name in an installation, across all files of its project. */
import { Memo } from "../memo/memo.ts";
import type { BoardHead, FileModel, InstallationHead } from "./file.ts";
import { sameItems } from "./file.ts";
import type { CircuitTypeFact } from "./in-place.ts";
import { NameTable } from "./name-table.ts";
import type { Question } from "./questions.ts";
import { recordedBy, recorder } from "./reads.ts";
import { asBlock, type FactOf } from "./values.ts";

export type InstrumentFact = FactOf<"file", "instrument">;
export type FieldFact = FactOf<"file", "field">;
export type CableTypeFact = FactOf<"file", "cable-type">;
export type DeviceFigures = FactOf<"file", "device-figures">;

/** A board by name, what it is fed from as it says itself, and whether it leaves the earth of what feeds it behind. */
interface BoardName {
  readonly name: string;
  readonly from: string | undefined;
  readonly ownEarth: boolean;
}

/** The same object for as long as nothing that has a name changes. */
export class Names {
  readonly instruments: NameTable<InstrumentFact>;
  readonly cableTypes: NameTable<CableTypeFact>;
  readonly circuitTypes: NameTable<CircuitTypeFact>;
  readonly boards: NameTable<BoardName>;
  readonly #unclear: ReadonlySet<string>;
  readonly #fields: readonly FieldFact[];
  readonly #devices: readonly DeviceFigures[];
  readonly #incomplete: boolean;
  readonly #answers = new Map<(names: Names) => unknown, unknown>();

  constructor({ instruments, cableTypes, circuitTypes, boards, unclear, fields, devices, incomplete }: Named) {
    this.instruments = new NameTable(instruments, ({ args }) => args.name.value);
    this.cableTypes = new NameTable(cableTypes, ({ args }) => args.name.value);
    this.circuitTypes = new NameTable(circuitTypes, ({ args }) => args.name.value);
    this.boards = new NameTable(boards, ({ name }) => name);
    this.#unclear = new Set(unclear);
    this.#fields = fields;
    this.#devices = devices;
    this.#incomplete = incomplete;
  }

  /** Words of lines outside the boards that could not be understood: each may have defined a name. */
  get unclear(): ReadonlySet<string> {
    this.#note("unclear");
    return this.#unclear;
  }

  /** Details of its own that the schedule declares. */
  get fields(): readonly FieldFact[] {
    this.#note("fields");
    return this.#fields;
  }

  /** Figures of devices from a book of one's own. */
  get devices(): readonly DeviceFigures[] {
    this.#note("devices");
    return this.#devices;
  }

  /** Whether a file that is used could not be read: it may define more. */
  get incomplete(): boolean {
    this.#note("incomplete");
    return this.#incomplete;
  }

  /** What follows from all names together: who asks depends on the answer, not on all it was made of. */
  answer<T>(question: (names: Names) => T): T {
    this.#note(question);
    if (!this.#answers.has(question)) {
      this.#answers.set(
        question,
        recordedBy(undefined, () => question(this)),
      );
    }
    return this.#answers.get(question) as T;
  }

  #note(question: Question): void {
    recorder?.note(this, question);
  }
}

interface Named {
  readonly instruments: readonly InstrumentFact[];
  readonly cableTypes: readonly CableTypeFact[];
  readonly circuitTypes: readonly CircuitTypeFact[];
  readonly boards: readonly BoardName[];
  readonly unclear: readonly string[];
  readonly fields: readonly FieldFact[];
  readonly devices: readonly DeviceFigures[];
  readonly incomplete: boolean;
}

/** A block whose first line is still being typed has no name yet. */
const isNamed = ({ args }: { readonly args: { readonly name?: unknown } }): boolean => args.name !== undefined;

const kept = new Memo<InstallationHead, { readonly named: Named; readonly names: Names }>();

export function namesOf(
  head: InstallationHead,
  files: readonly FileModel[],
  heads: readonly BoardHead[],
  incomplete: boolean,
): Names {
  const blocks = [...files.map(({ facts }) => facts), asBlock<"file">(head.facts)];
  const named: Named = {
    instruments: blocks.flatMap((facts) => facts.all("instrument")).filter(isNamed),
    cableTypes: blocks.flatMap((facts) => facts.all("cable-type")),
    circuitTypes: blocks.flatMap((facts) => facts.all("circuit-type")).filter(isNamed),
    boards: heads.map(({ name, glance: { from, ownEarth } }) => ({ name, from, ownEarth })),
    unclear: blocks.flatMap(({ broken }) => broken),
    fields: blocks.flatMap((facts) => facts.all("field")),
    devices: blocks.flatMap((facts) => facts.all("device-figures")),
    incomplete,
  };
  const before = kept.get(head);
  if (before && sameNamed(before.named, named)) return before.names;
  const names = new Names(named);
  kept.set(head, { named, names });
  return names;
}

const sameNamed = (one: Named, other: Named): boolean =>
  one.incomplete === other.incomplete &&
  sameItems(one.instruments, other.instruments) &&
  sameItems(one.cableTypes, other.cableTypes) &&
  sameItems(one.circuitTypes, other.circuitTypes) &&
  sameItems(one.unclear, other.unclear) &&
  sameItems(one.fields, other.fields) &&
  sameItems(one.devices, other.devices) &&
  one.boards.length === other.boards.length &&
  one.boards.every(({ name, from, ownEarth }, index) => {
    const board = other.boards[index];
    return name === board?.name && from === board.from && ownEarth === board.ownEarth;
  });
