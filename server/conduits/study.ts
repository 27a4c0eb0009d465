/** How full a conduit or trunking is, what would still go in, and which size would hold what is in it. */
import {
  type Cables,
  conduitRoom,
  conduitSum,
  singleSizes,
  smallestConduit,
  smallestTrunking,
  type Trunking,
  trunkingRoom,
  trunkingSum,
} from "../calc/containment.ts";
import type { Fill } from "../calc/index.ts";
import { plain } from "../calc/result.ts";
import { type Carried, carriedBy, merged } from "../circuit/conductors.ts";
import { lazy } from "../circuit/lazy.ts";
import type { WayStudy } from "../circuit/way.ts";
import type { FactOf } from "../model/values.ts";
import type { Content } from "./contents.ts";
import { missingIn } from "./missing.ts";
import { type ContainmentFact, isStated, runOf, type Section, sectionsOf } from "./sections.ts";

/** The sum of factors in one section against the factor of the section. */
interface SectionFill {
  readonly section: Section | undefined;
  readonly fill: Fill;
}

/** Ways that rely on the protective conductors of others. */
interface SharedCpc {
  readonly lenders: readonly WayStudy[];
  readonly borrowers: readonly Content[];
  /** mm². */
  readonly largest: number;
}

export class ContainmentStudy {
  readonly fact: ContainmentFact;
  readonly contents: readonly Content[];

  constructor(fact: ContainmentFact, contents: readonly Content[]) {
    this.fact = fact;
    this.contents = contents;
  }

  /** With all worked out that is kept. */
  settled(): this {
    this.#sections();
    this.#missing();
    this.#fullest();
    return this;
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

  /** How many circuits warm each other in it: each of several sets in parallel counts as one (523.7). */
  get circuitCount(): number {
    return this.circuits.reduce((sum, { cable }) => sum + (cable?.parallel.line ?? 1), 0);
  }

  /** How many of them a route has to count as `grouped`: its own circuit once, since its sets are counted by themselves. */
  groupedFor({ cable }: WayStudy): number {
    return this.circuitCount - (cable?.parallel.line ?? 1) + 1;
  }

  readonly #missing = lazy(() => missingIn(this));
  /** Why the sum or the room is not known, or not known in full. */
  get missing(): readonly string[] {
    return this.#missing();
  }

  /** Whether all that is in it is counted and every run is stated: otherwise it is fuller than it looks. */
  get isWhole(): boolean {
    return this.missing.length === 0 && (!this.isConduit || this.sections.every(isStated));
  }

  /** Whether a size counts as stranded because its kind is not stated, though solid takes less room. */
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

  /** Whether 90 °C singles are counted by factors of thermoplastic ones: of conduit no others are published. */
  get assumesThermoplastic(): boolean {
    return this.isConduit && this.cables.some(({ insulation }) => insulation === "thermosetting");
  }

  /** The protective conductors that serve more than their own circuit, and the ways that have none of their own here. */
  get sharedCpc(): SharedCpc | undefined {
    const circuits = this.contents.filter(({ route }) => carriesLive(route));
    const own = circuits.filter(({ study, route }) => carriedBy(route).has("cpc") && study.cable?.cpc !== undefined);
    const borrowers = circuits.filter(
      ({ study, route }) =>
        carriedBy(route).has("line") && !carriedBy(route).has("cpc") && !study.cable?.cpcBy && study.cable,
    );
    const largest = Math.max(...own.map(({ study }) => study.cable?.cpc ?? 0));
    if (own.length === 0 || borrowers.length === 0) return undefined;
    const once = (some: readonly Content[]): WayStudy[] => [...new Set(some.map(({ study }) => study))];
    return { lenders: once(own), borrowers, largest };
  }

  readonly #fullest = lazy(() => this.#fillOf(this.cables));
  /** The section that is fullest: it decides. With what cannot be counted left out, it is fuller still. */
  get fullest(): SectionFill | undefined {
    return this.#fullest();
  }

  /** Every section, in the order of the file. */
  get fills(): readonly SectionFill[] {
    return this.#fillsOf(this.cables);
  }

  #fillOf(cables: readonly Cables[]): SectionFill | undefined {
    return this.#fillsOf(cables).toSorted((a, b) => fullness(b) - fullness(a))[0];
  }

  #fillsOf(cables: readonly Cables[]): SectionFill[] {
    return this.#rooms().flatMap(({ section, room, run }): SectionFill[] => {
      const sum = (some: readonly Cables[]) => (run ? conduitSum(some, run) : trunkingSum(some, this.spare));
      const total = sum(cables.filter((cable) => sum([cable]) !== undefined));
      return total && room ? [{ section, fill: { total, room, fits: total.value <= room.value } }] : [];
    });
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
    if (!this.isWhole) return [];
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
    if (this.cables.length === 0 || !this.isWhole) return undefined;
    if (!this.isConduit) return smallestTrunking(this.cables, this.spare, this.trunking);
    const least = this.sections.map((section) => smallestConduit(this.cables, runOf(section)));
    const known = least.filter((size) => size !== undefined);
    return known.length < least.length ? undefined : Math.max(...known);
  }
}

const fullness = ({ fill }: SectionFill): number => fill.total.value / fill.room.value;

const carriesLive = (route: FactOf<"way", "route">): boolean =>
  (["line", "neutral"] as const satisfies readonly Carried[]).some((part) => carriedBy(route).has(part));
