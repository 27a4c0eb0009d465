/**
 * Conduits and trunkings that several circuits share: what runs in each, how full it is, and what would still go in.
 * Checks and hovers read the same study.
 */
import {
  type Cables,
  conduitRoom,
  conduitSizes,
  conduitSum,
  type Fill,
  isConduitSize,
  type Run,
  singleSizes,
  smallestConduit,
  smallestTrunking,
  type Trunking,
  trunkingRoom,
  trunkingSum,
} from "../calc/index.ts";
import { metres, plain } from "../calc/result.ts";
import type { Board, BoardHead, InstallationHead } from "../model/file.ts";
import type { Context, Installation } from "../model/installation.ts";
import type { Fact, FactOf, Facts } from "../model/values.ts";
import { type Carried, carriedBy, conductorsOf, merged } from "./conductors.ts";
import { keptWith } from "./kept.ts";
import { lazy } from "./lazy.ts";
import { studyWay, type WayStudy } from "./way.ts";

export type ContainmentFact = FactOf<"board", "containment">;

/** What one way brings into a containment by one line of its route. */
export interface Content {
  readonly study: WayStudy;
  readonly route: FactOf<"way", "route">;
  /** Single cables of one kind; none where they cannot be counted. */
  readonly cables: readonly Cables[];
  /** Why they cannot be counted. */
  readonly missing: string | undefined;
}

/** A length between two draw-in points; what is not written is missing. */
export interface Section {
  readonly fact: Fact;
  readonly length: number | undefined;
  readonly bends: number | undefined;
}

/** The sum of factors in one section against the factor of the section. */
export interface SectionFill {
  readonly section: Section | undefined;
  readonly fill: Fill;
}

export class ContainmentStudy {
  readonly fact: ContainmentFact;
  readonly contents: readonly Content[];

  constructor(fact: ContainmentFact, contents: readonly Content[]) {
    this.fact = fact;
    this.contents = contents;
  }

  get name(): string {
    return this.fact.args.name.value;
  }

  get isConduit(): boolean {
    return this.fact.args.kind.value === "conduit";
  }

  get size(): number {
    return this.fact.args.size.value;
  }

  /** `25 mm conduit`, `50 × 50 mm trunking`. */
  get title(): string {
    const depth = this.fact.args.depth?.value;
    const size = this.isConduit || depth === undefined ? plain(this.size) : `${plain(this.size)} × ${plain(depth)}`;
    return `${size} mm ${this.fact.args.kind.value}`;
  }

  get trunking(): Trunking | undefined {
    const depth = this.fact.args.depth?.value;
    if (this.isConduit || depth === undefined) return undefined;
    return { width: Math.max(this.size, depth), depth: Math.min(this.size, depth) };
  }

  /** What is to be kept free, as a share of what is in it. */
  get spare(): number {
    return (this.fact.args.spare?.value ?? 0) / 100;
  }

  readonly #sections = lazy(() => sectionsOf(this.fact));
  get sections(): readonly Section[] {
    return this.#sections();
  }

  readonly #cables = lazy(() => merged(this.contents.flatMap(({ cables }) => cables)));
  /** Everything that can be counted, kinds alike together, the thinnest first. */
  get cables(): readonly Cables[] {
    return this.#cables();
  }

  /** The circuits with live conductors in it, each once. */
  get circuits(): readonly WayStudy[] {
    return [...new Set(this.contents.filter(({ route }) => carriesLive(route)).map(({ study }) => study))];
  }

  readonly #missing = lazy(() => missingIn(this));
  /** Why the sum or the room is not known, or not known in full. */
  get missing(): readonly string[] {
    return this.#missing();
  }

  /** Whether a size counts as stranded because nobody said what it is, though solid takes less room. */
  get assumesStranded(): boolean {
    const ifSolid = this.#fillOf(this.#asSolid());
    return this.fullest !== undefined && ifSolid !== undefined && fullness(ifSolid) < fullness(this.fullest);
  }

  /** Whether it holds what is in it if every size that may be solid is. */
  get holdsIfSolid(): boolean {
    return this.#fillOf(this.#asSolid())?.fill.fits === true;
  }

  /** The cables with those of unsaid make as solid, where solid ones are made. */
  #asSolid(): Cables[] {
    return this.cables.map((cable) => {
      const solid = { ...cable, wire: cable.wire ?? ("solid" as const) };
      const sum = this.isConduit ? conduitSum([solid], { length: 0, bends: 0 }) : trunkingSum([solid]);
      return sum ? solid : cable;
    });
  }

  readonly #fullest = lazy(() => this.#fillOf(this.cables));
  /** The section that is fullest: it decides. With what cannot be counted left out, it is fuller still. */
  get fullest(): SectionFill | undefined {
    return this.#fullest();
  }

  #fillOf(cables: readonly Cables[]): SectionFill | undefined {
    const fills = this.#rooms().flatMap(({ section, room, run }): SectionFill[] => {
      const sum = (some: readonly Cables[]) => (run ? conduitSum(some, run) : trunkingSum(some, this.spare));
      const total = sum(cables.filter((cable) => sum([cable]) !== undefined));
      return total && room ? [{ section, fill: { total, room, fits: total.value <= room.value } }] : [];
    });
    return fills.toSorted((a, b) => fullness(b) - fullness(a))[0];
  }

  #rooms() {
    const { trunking, isConduit, size } = this;
    if (!isConduit) return trunking ? [{ section: undefined, run: undefined, room: trunkingRoom(trunking) }] : [];
    return this.sections.map((section) => {
      const run = runOf(section);
      return { section, run, room: conduitRoom({ ...run, size }) };
    });
  }

  /** How full the fullest section is, %. */
  get percent(): number | undefined {
    return this.fullest && fullness(this.fullest) * 100;
  }

  /** How many more single cables of each size would go into every section. */
  get room(): readonly { readonly csa: number; readonly count: number }[] {
    if (this.missing.length > 0) return [];
    return singleSizes.flatMap((csa) => {
      const count = this.#more(csa);
      return count === undefined ? [] : [{ csa, count }];
    });
  }

  #more(csa: number): number | undefined {
    const insulation = this.cables.some((cable) => cable.insulation === "thermosetting") ? "thermosetting" : "pvc";
    const counts = this.#rooms().map(({ run, room }) => {
      const sum = (cables: readonly Cables[]) => (run ? conduitSum(cables, run) : trunkingSum(cables, this.spare));
      const one = sum([{ csa, count: 1, insulation }])?.value;
      const already = this.cables.length === 0 ? 0 : sum(this.cables)?.value;
      if (!room || one === undefined || already === undefined) return undefined;
      return Math.max(0, Math.floor((room.value - already) / one + 1e-9));
    });
    const known = counts.filter((count) => count !== undefined);
    return known.length < counts.length || known.length === 0 ? undefined : Math.min(...known);
  }

  /** The least size that holds what is in it: a conduit in mm, a trunking by its sides. Nothing where no table's does. */
  get wanted(): number | Trunking | undefined {
    if (this.cables.length === 0) return undefined;
    if (!this.isConduit) return smallestTrunking(this.cables, this.spare, this.trunking);
    const least = this.sections.map((section) => smallestConduit(this.cables, runOf(section)));
    const known = least.filter((size) => size !== undefined);
    return known.length < least.length ? undefined : Math.max(...known);
  }
}

const fullness = ({ fill }: SectionFill): number => fill.total.value / fill.room.value;

/** What is not written is taken at its best, so that what is found over-full is so in any case. */
const runOf = ({ length, bends }: Section): Run => ({ length: length ?? 0, bends: bends ?? 0 });

const carriesLive = (route: FactOf<"way", "route">): boolean =>
  (["line", "neutral"] as const satisfies readonly Carried[]).some((part) => carriedBy(route).has(part));

function sectionsOf(fact: ContainmentFact): Section[] {
  const { length, bends } = fact.args;
  const inner = fact.inner as Facts<"containment"> | undefined;
  const listed = (inner?.all("section") ?? []).map((section) => ({
    fact: section,
    length: section.args.length.value,
    bends: section.args.bends?.value,
  }));
  const own = { fact, length: length?.value, bends: bends?.value };
  return listed.length > 0 && !length && !bends ? listed : [own, ...listed];
}

function missingIn(study: ContainmentStudy): string[] {
  const { contents, isConduit, size, trunking, sections, cables } = study;
  const ofWays = contents.flatMap(({ missing, study: { way } }) => (missing ? [`way ${way.id}: ${missing}`] : []));
  const broken = study.fact.inner?.broken.includes("section") ? ["a section could not be read"] : [];
  const unknown = cables.filter((cable) =>
    isConduit
      ? sections.some((section) => conduitSum([cable], runOf(section)) === undefined)
      : trunkingSum([cable]) === undefined,
  );
  const sizes = unknown.map(
    ({ csa, wire }) => `no factor is given here for ${wire ? `${wire} ` : ""}${plain(csa)} mm² in such a run`,
  );
  const all = [...ofWays, ...broken, ...sizes];
  if (!isConduit) {
    if (!trunking) return [...all, "the depth of the trunking is not stated: write 50 mm by 50 mm"];
    return trunkingRoom(trunking) ? all : [...all, `no factor is given here for ${study.title}`];
  }
  if (!isConduitSize(size)) return [...all, `factors are given here for ${conduitSizes.join(", ")} mm conduit only`];
  const beyond = sections.filter((section) => !conduitRoom({ ...runOf(section), size }));
  return [
    ...all,
    ...beyond.map(
      ({ length, bends }) =>
        `the factors end before ${metres(length ?? 0)} with ${bends ?? 0} bends: a draw-in box would divide it`,
    ),
  ];
}

/** Every containment of a block that has a name. One still being typed has none. */
export const allContainments = (facts: Facts<"installation"> | Facts<"board">): readonly ContainmentFact[] =>
  (facts as Facts<"board">).all("containment").filter(({ args }) => args.name && args.kind && args.size);

type Named = ReadonlyMap<string, ContainmentFact>;

const named = keptWith((facts: Facts<"installation"> | Facts<"board">): Named => {
  const found = new Map<string, ContainmentFact>();
  for (const fact of allContainments(facts))
    if (!found.has(fact.args.name.value)) found.set(fact.args.name.value, fact);
  return found;
});

/** The containments a board's ways can name; nothing where a broken line may have defined more. */
export function containmentNames(board: BoardHead | undefined, head: InstallationHead): Named | undefined {
  const blocks = [head.facts, ...(board ? [board.facts] : [])];
  if (blocks.some(({ broken }) => broken.includes("containment"))) return undefined;
  return board ? new Map([...named(head.facts), ...named(board.facts)]) : named(head.facts);
}

/** What a way's route means by a name: the board's own containment before the installation's. */
export const containmentOf = ({ board, installation }: Context, name: string): ContainmentFact | undefined =>
  named(board.facts).get(name) ?? named(installation.facts).get(name);

type ByContainment = ReadonlyMap<ContainmentFact, readonly Content[]>;

interface Place {
  readonly board: Board;
  readonly context: Context;
}

const contentsKept = new WeakMap<Board, { readonly context: Context; readonly found: ByContainment }>();

/** What each containment holds of one board's ways. */
function contentsOn({ board, context }: Place): ByContainment {
  const before = contentsKept.get(board);
  if (before?.context === context) return before.found;
  const found = new Map<ContainmentFact, Content[]>();
  for (const way of board.ways) {
    for (const route of way.facts.all("route")) {
      const fact = route.args.in && containmentOf(context, route.args.in.value);
      if (!fact) continue;
      const study = studyWay(way, context);
      if (study.isSpare) continue;
      found.set(fact, [...(found.get(fact) ?? []), { study, route, ...conductorsOf(study, route) }]);
    }
  }
  contentsKept.set(board, { context, found });
  return found;
}

/** The containments of a board, with what runs in them. */
export function containmentsOn(place: Place): ContainmentStudy[] {
  const contents = contentsOn(place);
  return allContainments(place.board.head.facts).map((fact) => new ContainmentStudy(fact, contents.get(fact) ?? []));
}

/** The containments of the installation itself, with what runs in them from all boards. */
export function containmentsOf({ head, boards }: Installation): ContainmentStudy[] {
  const own = allContainments(head.facts);
  if (own.length === 0) return [];
  return own.map((fact) => {
    const contents = boards.flatMap((place) => contentsOn(place).get(fact) ?? []);
    return new ContainmentStudy(fact, contents);
  });
}
