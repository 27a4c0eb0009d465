/**
 * What follows from a way's lines and from the place it stands in: the one reading of the model that checks, hovers and
 * reports share. Each answer is worked out when first asked for and kept with the way.
 */

import type { Use } from "../../grammar/choices.ts";
import type { LoopLimit } from "../calc/loop-limit.ts";
import type { Calculated } from "../calc/result.ts";
import { Memo } from "../memo/memo.ts";
import type { Way } from "../model/file.ts";
import type { Context } from "../model/installation.ts";
import { Reads, recordedBy } from "../model/reads.ts";
import { isThreePhase } from "../model/three-lines.ts";
import type { Fact, FactOf, Facts } from "../model/values.ts";
import { boardImpedance } from "./board-impedance.ts";
import { type Cable, cableOf } from "./cable.ts";
import { type DesignCurrent, designCurrentOf, type LineCurrent, loadCurrentOf } from "./design-current.ts";
import { type Device, deviceOf } from "./device.ts";
import { type Disconnection, disconnectionOf } from "./disconnection.ts";
import { disconnectionTimeOf, overcurrentLimitOf } from "./overcurrent-limit.ts";
import { specialLocationsOf, type WayPlaces } from "./place-words.ts";
import { type Rcd, rcdsOf } from "./rcds.ts";
import { capacitiesOf, type SectionCapacity } from "./route-capacity.ts";
import { type Runs, runsOf } from "./runs.ts";
import { type ExactReading, type ReadingAt, type SupplyStudy, studySupply, type Test, testsOf } from "./supply.ts";
import { expectedR1R2, farthestSpur } from "./way-resistance.ts";

export type { Cable } from "./cable.ts";
export type { Device } from "./device.ts";
export type { Rcd } from "./rcds.ts";

/** What stands where an answer will be kept, until somebody asks. */
const unasked: unique symbol = Symbol("unasked");
type Unasked = typeof unasked;

/** What is kept of a way, numbered: who takes an answer over depends on what it was made of. */
const fields = {
  supply: 0,
  places: 1,
  device: 2,
  rcds: 3,
  cable: 4,
  runs: 5,
  dead: 6,
  live: 7,
  Zs: 8,
  R1R2: 9,
  zdb: 10,
  time: 11,
  overcurrentLimit: 12,
  disconnection: 13,
  expectedR1R2: 14,
  greatestR1R2: 15,
  capacities: 16,
  threePhase: 17,
  boardThree: 18,
} as const satisfies Record<string, number>;

type Field = (typeof fields)[keyof typeof fields];

// Answers are kept in plain fields: a closure for each of them weighed more than all that is written of a way.
export class WayStudy {
  readonly way: Way;
  readonly context: Context;

  constructor(way: Way, context: Context) {
    this.way = way;
    this.context = context;
  }

  /** What was asked of the things this way shares with others. */
  get reads(): Reads {
    const { context, facts } = this;
    this.#reads ??= new Reads(context.parts, context.board === context.parts.board ? facts : undefined);
    return this.#reads;
  }
  #reads: Reads | undefined;

  #ask<T>(field: Field, compute: () => T): T {
    return this.#askers.answer(field, () => recordedBy(this.reads, compute));
  }

  /** Whoever is given what is kept depends on what it was made of. */
  #took(field: Field): void {
    this.#askers.took(field);
  }

  get #askers() {
    return this.context.parts.questions.askers;
  }

  get facts(): Facts<"way"> {
    return this.way.facts;
  }

  get supply(): SupplyStudy {
    if (this.#supply === unasked) this.#supply = this.#ask(fields.supply, () => studySupply(this.context, this.facts));
    else this.#took(fields.supply);
    return this.#supply;
  }
  #supply: SupplyStudy | Unasked = unasked;

  get isSpare(): boolean {
    return this.way.kind === "spare";
  }

  /** A way with nothing written in it yet: that is said once, not by every check that misses something. */
  get isBare(): boolean {
    return this.facts.list.length === 0;
  }

  get isFeeder(): boolean {
    return this.way.kind === "feeder" || this.facts.has("feeds");
  }

  get isRing(): boolean {
    return this.way.kind === "ring";
  }

  /** A circuit that feeds current-using equipment directly. */
  get isFinal(): boolean {
    return !this.isSpare && !this.isFeeder;
  }

  get uses(): ReadonlySet<Use> {
    if (this.#uses === unasked) this.#uses = usesIn(this.facts);
    return this.#uses;
  }
  #uses: ReadonlySet<Use> | Unasked = unasked;

  get servesSockets(): boolean {
    return this.uses.has("sockets") || this.uses.has("outdoor-sockets");
  }

  /** Where the circuit is, by its own line or its board's. */
  get places(): ReadonlySet<string> {
    return this.#named().names;
  }

  /** The line that says it is in a place. */
  placeLine(name: string): Fact | undefined {
    return this.#named().lineOf(name);
  }

  #named(): WayPlaces {
    if (this.#places === unasked)
      this.#places = this.#ask(fields.places, () => specialLocationsOf(this.facts, this.context.board.facts));
    else this.#took(fields.places);
    return this.#places;
  }
  #places: WayPlaces | Unasked = unasked;

  /** Whether the circuit has three line conductors. */
  get threePhase(): boolean {
    if (this.#threePhase === undefined) this.#threePhase = this.#ask(fields.threePhase, () => this.#hasThreeLines());
    else this.#took(fields.threePhase);
    return this.#threePhase;
  }
  #threePhase: boolean | undefined;

  #hasThreeLines(): boolean {
    const phase = this.facts.one("phase")?.args.phase.value;
    if (phase !== undefined) return phase === "three";
    // A star-delta starter has three lines to change over.
    if (this.facts.one("starting")?.args.method.value === "star-delta" && this.boardIsThreePhase) return true;
    const cores = this.cable?.cores;
    return this.isFeeder && this.boardIsThreePhase && (cores === undefined || cores > 3);
  }

  get boardIsThreePhase(): boolean {
    if (this.#boardThree === undefined)
      this.#boardThree = this.#ask(fields.boardThree, () => isThreePhase(this.context));
    else this.#took(fields.boardThree);
    return this.#boardThree;
  }
  #boardThree: boolean | undefined;

  get device(): Device | undefined {
    if (this.#device === unasked) this.#device = this.#ask(fields.device, () => deviceOf(this.facts));
    else this.#took(fields.device);
    return this.#device;
  }
  #device: Device | undefined | Unasked = unasked;

  /** Nearest to the load first. */
  get rcds(): readonly Rcd[] {
    if (this.#rcds === unasked) this.#rcds = this.#ask(fields.rcds, () => rcdsOf(this.facts, this.context));
    else this.#took(fields.rcds);
    return this.#rcds;
  }
  #rcds: readonly Rcd[] | Unasked = unasked;

  get cable(): Cable | undefined {
    if (this.#cable === unasked) this.#cable = this.#ask(fields.cable, () => cableOf(this.facts, this.context));
    else this.#took(fields.cable);
    return this.#cable;
  }
  #cable: Cable | undefined | Unasked = unasked;

  get runs(): Runs | undefined {
    if (this.#runs === unasked) this.#runs = this.#ask(fields.runs, () => runsOf(this.way));
    else this.#took(fields.runs);
    return this.#runs;
  }
  #runs: Runs | undefined | Unasked = unasked;

  /** Metres to the far point, or all the way round a ring, and the lines that say so. */
  get length(): { readonly value: number; readonly facts: readonly Fact[] } | undefined {
    const stated = this.facts.one("length");
    if (stated) return { value: stated.args.value.value, facts: [stated] };
    const { runs } = this;
    if (!runs || this.facts.isUnread("run")) return undefined;
    return { value: runs.closed ? runs.mainLength : runs.farthest, facts: this.facts.all("run") };
  }

  /** Dead tests, the latest first. */
  get deadTests(): readonly Test<"dead">[] {
    if (this.#dead === unasked) this.#dead = this.#ask(fields.dead, () => testsOf<"dead">(this.facts.all("dead")));
    else this.#took(fields.dead);
    return this.#dead;
  }
  #dead: readonly Test<"dead">[] | Unasked = unasked;

  get liveTests(): readonly Test<"live">[] {
    if (this.#live === unasked) this.#live = this.#ask(fields.live, () => testsOf<"live">(this.facts.all("live")));
    else this.#took(fields.live);
    return this.#live;
  }
  #live: readonly Test<"live">[] | Unasked = unasked;

  /** The latest dead tests. */
  get dead(): Test<"dead"> | undefined {
    return this.deadTests[0];
  }

  get live(): Test<"live"> | undefined {
    return this.liveTests[0];
  }

  /** The latest of the live tests that says Zs: one made later for another purpose leaves it standing. */
  get Zs(): ReadingAt | undefined {
    if (this.#Zs === unasked) this.#Zs = this.#ask(fields.Zs, () => this.#findZs());
    else this.#took(fields.Zs);
    return this.#Zs;
  }
  #Zs: ReadingAt | undefined | Unasked = unasked;

  #findZs(): ReadingAt | undefined {
    const test = this.liveTests.find(({ facts }) => facts.has("Zs"));
    const fact = test?.facts.one("Zs");
    return test && fact && { value: fact.args.value, fact, on: test.on };
  }

  get R1R2(): ReadingAt | undefined {
    if (this.#R1R2 === unasked) this.#R1R2 = this.#ask(fields.R1R2, () => this.#findR1R2());
    else this.#took(fields.R1R2);
    return this.#R1R2;
  }
  #R1R2: ReadingAt | undefined | Unasked = unasked;

  #findR1R2(): ReadingAt | undefined {
    const test = this.deadTests.find(({ facts }) => facts.has("R1+R2"));
    const fact = test?.facts.one("R1+R2");
    return test && fact && { value: fact.args.value, fact, on: test.on };
  }

  /**
   * Loop impedance at the board, or what it is calculated from: the supply's. A circuit with an electrode of its own
   * starts from that and not from its board.
   */
  get boardImpedance(): (ExactReading & { readonly name: "Ze" | "Zdb" }) | undefined {
    if (this.#zdb === unasked)
      this.#zdb = this.#ask(fields.zdb, () => (this.facts.has("earthing") ? undefined : boardImpedance(this.context)));
    else this.#took(fields.zdb);
    return this.#zdb;
  }
  #zdb: (ExactReading & { readonly name: "Ze" | "Zdb" }) | undefined | Unasked = unasked;

  /** The disconnection time the standard allows. */
  get disconnectionTime(): Calculated | undefined {
    if (this.#time === unasked) this.#time = this.#ask(fields.time, () => disconnectionTimeOf(this));
    else this.#took(fields.time);
    return this.#time;
  }
  #time: Calculated | undefined | Unasked = unasked;

  /** Greatest Zs for the overcurrent device to disconnect in time, hot. */
  get overcurrentLimit(): LoopLimit | undefined {
    if (this.#overcurrentLimit === unasked)
      this.#overcurrentLimit = this.#ask(fields.overcurrentLimit, () => overcurrentLimitOf(this));
    else this.#took(fields.overcurrentLimit);
    return this.#overcurrentLimit;
  }
  #overcurrentLimit: LoopLimit | undefined | Unasked = unasked;

  /** What disconnects a fault to earth, and the limit that follows. */
  get disconnection(): Disconnection | undefined {
    if (this.#disconnection === unasked)
      this.#disconnection = this.#ask(fields.disconnection, () => disconnectionOf(this));
    else this.#took(fields.disconnection);
    return this.#disconnection;
  }
  #disconnection: Disconnection | undefined | Unasked = unasked;

  /** Temperature of the conductors when R1+R2 or Zs was read, °C, where it was noted. */
  temperatureAt(test: "dead" | "live"): number | undefined {
    const dead = () => this.deadTests.find(({ facts }) => facts.has("R1+R2")) ?? this.dead;
    const live = () => this.liveTests.find(({ facts }) => facts.has("Zs")) ?? this.live;
    const noted = test === "dead" ? dead()?.facts.one("temperature") : live()?.facts.one("temperature");
    return noted?.args.value.value;
  }

  /** What R1+R2 should read at the far point at 20 °C, from length and sizes. For a ring, a quarter of the sum of the ends. */
  get expectedR1R2(): Calculated | undefined {
    if (this.#expectedR1R2 === unasked) this.#expectedR1R2 = this.#ask(fields.expectedR1R2, () => expectedR1R2(this));
    else this.#took(fields.expectedR1R2);
    return this.#expectedR1R2;
  }
  #expectedR1R2: Calculated | undefined | Unasked = unasked;

  /** The most R1+R2 that any point of the circuit should show at 20 °C: on a ring, at the end of a spur. */
  get greatestR1R2(): Calculated | undefined {
    if (this.#greatestR1R2 === unasked)
      this.#greatestR1R2 = this.#ask(fields.greatestR1R2, () => farthestSpur(this) ?? this.expectedR1R2);
    else this.#took(fields.greatestR1R2);
    return this.#greatestR1R2;
  }
  #greatestR1R2: Calculated | undefined | Unasked = unasked;

  /** Capacity of each stretch of the route. */
  get capacities(): readonly SectionCapacity[] {
    if (this.#capacities === unasked) this.#capacities = this.#ask(fields.capacities, () => capacitiesOf(this));
    else this.#took(fields.capacities);
    return this.#capacities;
  }
  #capacities: readonly SectionCapacity[] | Unasked = unasked;

  /** The least capacity of any stretch; nothing if one of them could not be calculated. */
  get capacity(): { readonly fact: FactOf<"way", "route">; readonly value: Calculated } | undefined {
    let least: { fact: FactOf<"way", "route">; value: Calculated } | undefined;
    for (const { fact, capacity } of this.capacities) {
      if ("missing" in capacity) return undefined;
      if (!least || capacity.value < least.value.value) least = { fact, value: capacity };
    }
    return least;
  }

  /** Design current Ib, A: stated, or from the loads. */
  get designCurrent(): DesignCurrent | undefined {
    return designCurrentOf(this);
  }

  /** What the loads take all at once, A in each line. */
  get loadCurrent(): LineCurrent | undefined {
    return loadCurrentOf(this);
  }

  /** Power factor of the loads as a share; 1 where nothing is said. */
  get powerFactor(): number {
    return (this.facts.one("power-factor")?.args.value.value ?? 100) / 100;
  }
}

/** What a circuit supplies, as its schedule states it. */
export const usesIn = (facts: Facts<"way">): ReadonlySet<Use> =>
  new Set((facts.one("serves")?.args.uses ?? []).map(({ value }) => value));

const studies = new Memo<Context, WeakMap<Way, WayStudy> | undefined>();

/**
 * The study of a way in its place; the same one for as long as neither changes and the board is one of those looked at
 * last. Eight times what is written of a way is worked out of it, and few are looked at again: so two studies of one way
 * are told to be of the same by their way.
 */
export function studyWay(way: Way, context: Context): WayStudy {
  const here = studies.get(context) ?? begunStudies(context);
  const before = here.get(way);
  if (before) return before;
  const study = new WayStudy(way, context);
  here.set(way, study);
  return study;
}

function begunStudies(context: Context): WeakMap<Way, WayStudy> {
  const fresh = new WeakMap<Way, WayStudy>();
  studies.set(context, fresh);
  context.parts.recent.add(() => studies.set(context, undefined));
  return fresh;
}
