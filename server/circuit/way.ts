/**
 * What follows from a way's lines and from the place it stands in: the one reading of the model that checks, hovers and
 * reports share. Each answer is worked out when first asked for and kept with the way.
 */

import { type Calculated, disconnectionTime, type LoopLimit, loopLimit } from "../calc/index.ts";
import type { Way } from "../model/file.ts";
import type { Context } from "../model/installation.ts";
import { isThreePhase } from "../model/three-lines.ts";
import type { Fact, FactOf, Facts } from "../model/values.ts";
import { boardImpedance } from "./board-impedance.ts";
import { type Cable, cableOf } from "./cable.ts";
import { cookerCurrent } from "./cooker-load.ts";
import { type Device, deviceOf } from "./device.ts";
import { type Disconnection, disconnectionOf } from "./disconnection.ts";
import { lazy } from "./lazy.ts";
import { specialLocationsOf } from "./place-words.ts";
import { type Rcd, rcdsOf } from "./rcds.ts";
import { capacitiesOf, type SectionCapacity } from "./route-capacity.ts";
import { type Runs, runsOf } from "./runs.ts";
import { type ExactReading, type ReadingAt, type SupplyStudy, studySupply, type Test, testsOf } from "./supply.ts";
import { expectedR1R2, farthestSpur } from "./way-resistance.ts";

export type { Cable } from "./cable.ts";
export type { Device } from "./device.ts";
export type { Rcd } from "./rcds.ts";

export class WayStudy {
  readonly way: Way;
  readonly context: Context;

  constructor(way: Way, context: Context) {
    this.way = way;
    this.context = context;
  }

  get facts(): Facts<"way"> {
    return this.way.facts;
  }

  readonly #supply = lazy(() => studySupply(this.context, this.facts));
  get supply(): SupplyStudy {
    return this.#supply();
  }

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

  readonly #uses = lazy(() => new Set<string>((this.facts.one("serves")?.args.uses ?? []).map((use) => use.value)));
  get uses(): ReadonlySet<string> {
    return this.#uses();
  }

  get servesSockets(): boolean {
    return this.uses.has("sockets") || this.uses.has("outdoor-sockets");
  }

  readonly #places = lazy(() => specialLocationsOf(this.facts, this.context.board.facts));
  /** Where the circuit is, by its own line or its board's. */
  get places(): ReadonlySet<string> {
    return this.#places().names;
  }

  /** The line that says it is in a place. */
  readonly placeLine = (name: string): Fact | undefined => this.#places().lineOf(name);

  /** Whether the circuit has three line conductors. */
  get threePhase(): boolean {
    const phase = this.facts.one("phase")?.args.phase.value;
    if (phase !== undefined) return phase === "three";
    const cores = this.cable?.cores;
    return this.isFeeder && this.boardIsThreePhase && (cores === undefined || cores > 3);
  }

  get boardIsThreePhase(): boolean {
    return isThreePhase(this.context);
  }

  readonly #device = lazy(() => deviceOf(this.facts));
  get device(): Device | undefined {
    return this.#device();
  }

  readonly #rcds = lazy(() => rcdsOf(this.facts, this.context));
  /** Nearest to the load first. */
  get rcds(): readonly Rcd[] {
    return this.#rcds();
  }

  readonly #cable = lazy(() => cableOf(this.facts, this.context));
  get cable(): Cable | undefined {
    return this.#cable();
  }

  readonly #runs = lazy(() => runsOf(this.way));
  get runs(): Runs | undefined {
    return this.#runs();
  }

  /** Metres to the far point, or all the way round a ring, and the lines that say so. */
  get length(): { readonly value: number; readonly facts: readonly Fact[] } | undefined {
    const stated = this.facts.one("length");
    if (stated) return { value: stated.args.value.value, facts: [stated] };
    const { runs } = this;
    if (!runs || this.facts.broken.includes("run")) return undefined;
    return { value: runs.closed ? runs.mainLength : runs.farthest, facts: this.facts.all("run") };
  }

  readonly #dead = lazy(() => testsOf<"dead">(this.facts.all("dead")));
  /** Dead tests, the latest first. */
  get deadTests(): readonly Test<"dead">[] {
    return this.#dead();
  }

  readonly #live = lazy(() => testsOf<"live">(this.facts.all("live")));
  get liveTests(): readonly Test<"live">[] {
    return this.#live();
  }

  /** The latest dead tests. */
  get dead(): Test<"dead"> | undefined {
    return this.deadTests[0];
  }

  get live(): Test<"live"> | undefined {
    return this.liveTests[0];
  }

  /** The latest of the live tests that says Zs: one made later for another purpose leaves it standing. */
  readonly #Zs = lazy((): ReadingAt | undefined => {
    const test = this.liveTests.find(({ facts }) => facts.has("Zs") || facts.broken.includes("Zs"));
    const fact = test?.facts.one("Zs");
    return test && fact && { value: fact.args.value, fact, on: test.on };
  });
  get Zs(): ReadingAt | undefined {
    return this.#Zs();
  }

  readonly #R1R2 = lazy((): ReadingAt | undefined => {
    const test = this.deadTests.find(({ facts }) => facts.has("R1+R2") || facts.broken.includes("R1+R2"));
    const fact = test?.facts.one("R1+R2");
    return test && fact && { value: fact.args.value, fact, on: test.on };
  });
  get R1R2(): ReadingAt | undefined {
    return this.#R1R2();
  }

  // A circuit with an electrode of its own starts from that and not from its board.
  readonly #zdb = lazy(() => (this.facts.has("earthing") ? undefined : boardImpedance(this.context)));
  /** Loop impedance at the board, or what it is calculated from: the supply's. */
  get boardImpedance(): (ExactReading & { readonly name: "Ze" | "Zdb" }) | undefined {
    return this.#zdb();
  }

  readonly #time = lazy((): Calculated | undefined => {
    const { device, supply, context } = this;
    if (device?.rating === undefined || !supply.earthing || !context.edition || this.isSpare) return undefined;
    return disconnectionTime({
      system: supply.earthing,
      U0: supply.U0,
      final: this.isFinal,
      sockets: this.servesSockets,
      rating: device.rating,
      edition: context.edition,
    });
  });
  /** The disconnection time the standard allows. */
  get disconnectionTime(): Calculated | undefined {
    return this.#time();
  }

  readonly #overcurrentLimit = lazy((): LoopLimit | undefined => {
    const { device, supply, context } = this;
    const time = this.disconnectionTime?.value;
    if (device?.rating === undefined || time === undefined || !context.edition) return undefined;
    return loopLimit({
      standard: device.standard,
      ...(device.curve ? { curve: device.curve } : {}),
      rating: device.rating,
      time,
      U0: supply.U0,
      edition: context.edition,
    });
  });
  /** Greatest Zs for the overcurrent device to disconnect in time, hot. */
  get overcurrentLimit(): LoopLimit | undefined {
    return this.#overcurrentLimit();
  }

  readonly #disconnection = lazy(() => disconnectionOf(this));
  /** What disconnects a fault to earth, and the limit that follows. */
  get disconnection(): Disconnection | undefined {
    return this.#disconnection();
  }

  /** Temperature of the conductors when R1+R2 or Zs was read, °C, where it was noted. */
  temperatureAt(test: "dead" | "live"): number | undefined {
    const dead = () => this.deadTests.find(({ facts }) => facts.has("R1+R2")) ?? this.dead;
    const live = () => this.liveTests.find(({ facts }) => facts.has("Zs")) ?? this.live;
    const noted = test === "dead" ? dead()?.facts.one("temperature") : live()?.facts.one("temperature");
    return noted?.args.value.value;
  }

  readonly #expectedR1R2 = lazy(() => expectedR1R2(this));
  /** What R1+R2 should read at the far point at 20 °C, from length and sizes. For a ring, a quarter of the sum of the ends. */
  get expectedR1R2(): Calculated | undefined {
    return this.#expectedR1R2();
  }

  readonly #greatestR1R2 = lazy(() => farthestSpur(this) ?? this.expectedR1R2);
  /** The most R1+R2 that any point of the circuit should show at 20 °C: on a ring, at the end of a spur. */
  get greatestR1R2(): Calculated | undefined {
    return this.#greatestR1R2();
  }

  readonly #capacities = lazy(() => capacitiesOf(this));
  /** Capacity of each stretch of the route. */
  get capacities(): readonly SectionCapacity[] {
    return this.#capacities();
  }

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
    const stated = this.facts.one("Ib");
    if (stated) return { value: stated.args.value.value, fact: stated, stated: true };
    const all = this.loadCurrent;
    const diversity = all && cookerCurrent(this, all.value);
    return diversity ? { ...all, value: diversity.value, diversity } : all;
  }

  /** What the loads take all at once, A in each line. */
  get loadCurrent(): { readonly value: number; readonly fact: Fact; readonly stated: boolean } | undefined {
    return loadCurrent(this);
  }

  /** Power factor of the loads as a share; 1 where nothing is said. */
  get powerFactor(): number {
    return (this.facts.one("power-factor")?.args.value.value ?? 100) / 100;
  }
}

export interface DesignCurrent {
  /** A. */
  readonly value: number;
  readonly fact: Fact;
  readonly stated: boolean;
  /** How it follows from the whole of its loads, where it is not all of them at once. */
  readonly diversity?: Calculated;
}

const studies = new WeakMap<Context, WeakMap<Way, WayStudy>>();

/** The study of a way in its place; the same one for as long as neither changes. */
export function studyWay(way: Way, context: Context): WayStudy {
  const here = studies.get(context) ?? new WeakMap<Way, WayStudy>();
  const before = here.get(way);
  if (before) return before;
  const study = new WayStudy(way, context);
  here.set(way, study);
  studies.set(context, here);
  return study;
}

function loadCurrent(study: WayStudy): { value: number; fact: Fact; stated: boolean } | undefined {
  const loads = study.facts.all("load");
  const [first] = loads;
  if (!first || study.facts.broken.includes("load")) return undefined;
  const voltage = (study.threePhase ? study.supply.U0 * 3 : study.supply.U0) * (study.powerFactor || 1);
  const value = loads.reduce(
    (sum, { args }) => sum + (args.current?.value ?? 0) + (args.power?.value ?? 0) / voltage,
    0,
  );
  return { value, fact: first, stated: false };
}
