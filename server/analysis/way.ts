/**
 * What follows from a way's lines and from the place it stands in: the one reading of the model that checks, hovers and
 * reports share. Each answer is worked out when first asked for and kept with the way.
 */

import type { Conductor } from "../calc/circuit-network.ts";
import {
  type Arrangement,
  type Calculated,
  type ColdLimit,
  type Construction,
  capacityBound,
  coldLimit,
  correctedCapacity,
  disconnectionTime,
  expectedResistance,
  type LoopLimit,
  loopLimit,
  type Metal,
  type Method,
  r1r2PerMetre,
  rcdLoopLimit,
  readingAt,
  tabulatedCapacity,
} from "../calc/index.ts";
import { milliohms, ohms, step } from "../calc/result.ts";
import type { Way } from "../model/file.ts";
import type { Context } from "../model/installation.ts";
import type { Fact, FactOf, Facts } from "../model/values.ts";
import { exact, measured } from "../model/values.ts";
import { combine, fromFormula } from "../tables/source.ts";
import { type Family, familyOf } from "../tables/standard-values.ts";
import { conductorPerMetre } from "./cpc.ts";
import { lazy } from "./lazy.ts";
import { placesOf } from "./place-words.ts";
import { type Runs, runsOf } from "./runs.ts";
import {
  isThreePhase,
  type NumberAt,
  numberAt,
  type ReadingAt,
  type SupplyStudy,
  studySupply,
  type Test,
  testsOf,
} from "./supply.ts";

export type OldCurve = "1" | "2" | "3" | "4";

export interface Device {
  readonly fact: FactOf<"way", "device">;
  readonly standard: string;
  readonly family: Family | undefined;
  /** B, C or D; 1 to 4 for a breaker to BS 3871. */
  readonly curve: "B" | "C" | "D" | OldCurve | undefined;
  /** Rated current In, A; missing where the line gives none. */
  readonly rating: number | undefined;
  /** Rated breaking capacity, A. */
  readonly breaking: number | undefined;
}

/** An RCD that protects a way, and where it is. */
export interface Rcd {
  readonly at: "device" | "way" | "board" | "main-switch" | "upstream";
  readonly fact: Fact;
  readonly name: string | undefined;
  readonly standard: string;
  /** Rated residual current IΔn, A. */
  readonly sensitivity: number;
  readonly type: "AC" | "A" | "F" | "B" | undefined;
  readonly delayed: boolean;
  readonly direction: "bidirectional" | "unidirectional" | undefined;
}

export interface Cable {
  /** The line the cable is named on. */
  readonly fact: FactOf<"way", "cable">;
  /** The line that describes it: the same, or that of its cable type. */
  readonly described: Fact;
  readonly construction: "singles" | "flat-twin" | "multicore" | "armoured" | "mineral" | "flex";
  /** 70 °C unless said otherwise. */
  readonly insulation: 70 | 90;
  readonly line: number;
  readonly neutral: number;
  readonly cpc: number | undefined;
  readonly cpcBy: "armour" | "conduit" | "trunking" | "sheath" | "none" | undefined;
  readonly material: Metal;
  readonly cores: number | undefined;
  readonly wire: "solid" | "stranded" | undefined;
}

/** The capacity of one stretch of the route. */
export interface StretchCapacity {
  readonly fact: FactOf<"way", "route">;
  /** Iz, A; or why it could not be reckoned. */
  readonly capacity: Calculated | { readonly missing: string };
}

/** What the circuit must disconnect by, and the greatest loop impedance that lets it. */
export interface Disconnection {
  readonly by: "overcurrent" | "rcd";
  readonly limit: Calculated;
  /** For a reading on cold conductors. The same as `limit` where an RCD disconnects. */
  readonly cold: ColdLimit | undefined;
  readonly time: Calculated | undefined;
  readonly rcd: Rcd | undefined;
}

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

  readonly #places = lazy(() => placesOf(this.facts, this.context.board.facts));
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
  /** Loop impedance at the board, or what it is reckoned from: the supply's. */
  get boardImpedance(): (NumberAt & { readonly name: "Ze" | "Zdb" }) | undefined {
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
  get capacities(): readonly StretchCapacity[] {
    return this.#capacities();
  }

  /** The least capacity of any stretch; nothing if one of them could not be reckoned. */
  get capacity(): { readonly fact: FactOf<"way", "route">; readonly value: Calculated } | undefined {
    let least: { fact: FactOf<"way", "route">; value: Calculated } | undefined;
    for (const { fact, capacity } of this.capacities) {
      if ("missing" in capacity) return undefined;
      if (!least || capacity.value < least.value.value) least = { fact, value: capacity };
    }
    return least;
  }

  /** Design current Ib, A: stated, or from the loads. */
  get designCurrent(): { readonly value: number; readonly fact: Fact; readonly stated: boolean } | undefined {
    const stated = this.facts.one("Ib");
    if (stated) return { value: stated.args.value.value, fact: stated, stated: true };
    return this.loadCurrent;
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

const studies = new WeakMap<Way, WayStudy>();

/** The study of a way in its place; the same one for as long as neither changes. */
export function studyWay(way: Way, context: Context): WayStudy {
  const before = studies.get(way);
  if (before?.context === context) return before;
  const study = new WayStudy(way, context);
  studies.set(way, study);
  return study;
}

function deviceOf(facts: Facts<"way">): Device | undefined {
  const fact = facts.one("device");
  if (!fact) return undefined;
  const { standard, curve, rating, breaking, oldType } = fact.args;
  const family = familyOf(standard.value);
  const old = family === "legacy-breaker" ? (oldType?.value.slice("type-".length) as OldCurve | undefined) : undefined;
  return {
    fact,
    standard: standard.value,
    family,
    curve: curve?.curve ?? old,
    rating: curve?.rating ?? rating?.value,
    breaking: breaking?.value,
  };
}

interface RcdArgs {
  readonly standard: { readonly value: string };
  readonly sensitivity?: { readonly value: number };
  readonly type?: { readonly value: Rcd["type"] & string };
  readonly delay?: unknown;
  readonly direction?: { readonly value: "bidirectional" | "unidirectional" };
}

function rcdFrom(at: Rcd["at"], fact: Fact & { readonly args: RcdArgs }, name?: string): Rcd[] {
  const { standard, sensitivity, type, delay, direction } = fact.args;
  if (!sensitivity) return [];
  return [
    {
      at,
      fact,
      name,
      standard: standard.value,
      sensitivity: sensitivity.value,
      type: type?.value,
      delayed: delay !== undefined,
      direction: direction?.value,
    },
  ];
}

type AnyRcdFact = Fact & { readonly args: RcdArgs };

function rcdsOf(facts: Facts<"way">, context: Context): Rcd[] {
  const device = facts.one("device");
  const own = facts.one("rcd");
  const behind = facts.one("behind")?.args.rcd.value;
  const board = context.board.facts.all("rcd").find((rcd) => rcd.args.name.value === behind);
  const main = context.board.facts.one("main-switch");
  return [
    ...(device ? rcdFrom("device", device as unknown as AnyRcdFact) : []),
    ...(own ? rcdFrom("way", own as unknown as AnyRcdFact) : []),
    ...(board ? rcdFrom("board", board as unknown as AnyRcdFact, board.args.name.value) : []),
    ...(main ? rcdFrom("main-switch", main as unknown as AnyRcdFact) : []),
    ...context.upstream.flatMap(({ board: above, feeder }) => upstreamRcds(above.facts, feeder)),
  ];
}

function upstreamRcds(board: Facts<"board">, feeder: Way | undefined): Rcd[] {
  const device = feeder?.facts.one("device");
  const own = feeder?.facts.one("rcd");
  const behind = feeder?.facts.one("behind")?.args.rcd.value;
  const shared = board.all("rcd").find((rcd) => rcd.args.name.value === behind);
  const main = board.one("main-switch");
  return [device, own, shared, main].flatMap((fact) =>
    fact ? rcdFrom("upstream", fact as unknown as AnyRcdFact) : [],
  );
}

function cableOf(facts: Facts<"way">, context: Context): Cable | undefined {
  const fact = facts.one("cable");
  if (!fact) return undefined;
  const typeName = fact.args.use?.value;
  const described = typeName === undefined ? fact : context.names.cableTypes.get(typeName)?.[0];
  if (!described) return undefined;
  const { construction, insulation, line, neutral, cpc, cpcBy, material, cores, wire } = described.args;
  if (!construction || !line) return undefined;
  const hot = insulation?.value ?? 70;
  return {
    fact,
    described,
    construction: construction.value,
    insulation: hot >= 90 ? 90 : 70,
    line: line.value,
    neutral: neutral?.value ?? line.value,
    cpc: cpc?.value,
    cpcBy: cpcBy?.value,
    material: material?.value ?? "copper",
    cores: cores?.value,
    wire: wire?.value,
  };
}

/** A figure for the board itself counts before the supply's; a board that is not at the origin has only its own. */
export function boardImpedance({
  board,
  supply,
}: Pick<Context, "board" | "supply">): (NumberAt & { readonly name: "Ze" | "Zdb" }) | undefined {
  const tested = testsOf<"boardLive">(board.facts.all("live")).map((test) => test.facts.one("Zdb"));
  const stated = [...tested, board.facts.one("Zdb")].find((fact) => fact !== undefined);
  const own = stated && numberAt({ value: stated.args.value, fact: stated });
  if (own) return { ...own, name: "Zdb" };
  // Off scale it is worse than any figure upstream, and nothing can be reckoned from it.
  if (stated && measured(stated.args.value)?.sign === ">") return undefined;
  if (board.facts.has("earthing")) return undefined;
  const Ze = supply?.one("Ze");
  const fedFromSupply = board.facts.one("fed-from")?.args.from.value === "supply";
  const value = Ze && exact(Ze.args.value);
  if (!Ze || value === undefined || !fedFromSupply) return undefined;
  const decimals = "decimals" in Ze.args.value ? Ze.args.value.decimals : 2;
  return { value, decimals, fact: Ze, name: "Ze" };
}

/**
 * In TT, and in TN where the loop is too high for the overcurrent device, an RCD disconnects. A TN circuit is still
 * judged by its overcurrent device where that is possible: the RCD is not there to excuse a poor loop.
 */
function disconnectionOf(study: WayStudy): Disconnection | undefined {
  const { overcurrentLimit, supply, disconnectionTime: time } = study;
  const rcd = study.rcds[0];
  const byRcd = (): Disconnection | undefined => {
    const limit = rcd && rcdLoopLimit(rcd.sensitivity);
    return limit && { by: "rcd", limit, cold: undefined, time, rcd };
  };
  if (supply.earthing === "TT") return byRcd();
  if (!overcurrentLimit) return undefined;
  const temperature = study.temperatureAt("live");
  const insulation = study.cable?.insulation ?? 70;
  const cold = coldLimit(overcurrentLimit, { insulation, ...(temperature === undefined ? {} : { temperature }) });
  return { by: "overcurrent", limit: overcurrentLimit, cold, time, rcd };
}

function expectedR1R2(study: WayStudy): Calculated | undefined {
  const { cable, length } = study;
  const perMetre = cable && pairPerMetre(cable);
  if (!perMetre || !length) return undefined;
  const whole = expectedResistance(perMetre, length.value);
  if (!study.isRing) return whole;
  const value = whole.value / 4;
  return { ...whole, value, steps: [...whole.steps, step("(r1 + r2) / 4", `${ohms(whole.value)} / 4`, ohms(value))] };
}

/** Line and protective conductor in series, Ω per metre at 20 °C. */
function pairPerMetre(cable: Cable): Calculated | undefined {
  if (cable.construction === "mineral" || cable.construction === "flex") return undefined;
  if (cable.cpcBy !== "armour") {
    return cable.cpc === undefined
      ? undefined
      : r1r2PerMetre(cable.line, cable.cpc, { line: cable.material, cpc: cable.material });
  }
  const [line, cpc] = [conductorPerMetre(cable, "line"), conductorPerMetre(cable, "cpc")];
  if (!line || !cpc) return undefined;
  const value = line.value + cpc.value;
  const sum = step(
    "(r1 + r2) per metre",
    `${milliohms(line.value)} + ${milliohms(cpc.value)}`,
    `${milliohms(value)}/m`,
  );
  const source = fromFormula(combine(line.source, cpc.source));
  return { value, unit: "Ω/m", steps: [...line.steps, ...cpc.steps, sum], source };
}

/** R1+R2 at the end of the spur that reads the most, where one reads more than the ring does half way round. */
function farthestSpur(study: WayStudy): Calculated | undefined {
  const { runs, cable, isRing } = study;
  const r1 = expectedConductor(study, "line");
  const r2 = expectedConductor(study, "cpc");
  if (!isRing || !cable || !runs?.closed || runs.mainLength <= 0 || !r1 || !r2 || !study.expectedR1R2) return undefined;
  const perMetre = pairPerMetre(cable);
  if (!perMetre) return undefined;
  let most = (r1.value + r2.value) / 4;
  let farthest: Calculated | undefined;
  for (const { name, spur } of runs.places.values()) {
    const origin = spur && (spur.from === runs.board ? 0 : runs.places.get(spur.from)?.fromBoard);
    if (!spur || origin === undefined) continue;
    const at = readingAt(r1.value, r2.value, origin / runs.mainLength);
    const own = expectedResistance(perMetre, spur.length);
    const value = (at?.value ?? 0) + own.value;
    if (!at || value <= most) continue;
    most = value;
    const sum = step(`R1 + R2 at ${name.value}, on a spur`, `${ohms(at.value)} + ${ohms(own.value)}`, ohms(value));
    const steps = [...r1.steps, ...r2.steps, ...at.steps, ...own.steps, sum];
    farthest = { value, unit: "Ω", steps, source: combine(r1.source, r2.source, at.source, own.source) };
  }
  return farthest;
}

/** What one conductor should read end to end at 20 °C, Ω. */
export function expectedConductor(study: WayStudy, which: Conductor): Calculated | undefined {
  const { cable, length } = study;
  if (!cable || !length) return undefined;
  const perMetre = conductorPerMetre(cable, which);
  return perMetre && expectedResistance(perMetre, length.value);
}

const groundBase = 20;

function capacitiesOf(study: WayStudy): StretchCapacity[] {
  return study.facts.all("route").map((fact) => ({ fact, capacity: stretchCapacity(study, fact) }));
}

const usualMethod: Readonly<Record<string, Method>> = {
  conduit: "B",
  trunking: "B",
  clipped: "C",
  tray: "E",
  ladder: "E",
  "free-air": "E",
  duct: "D",
  buried: "D",
};

const arrangements: Readonly<Record<string, Arrangement>> = {
  bunched: "bunched",
  layer: "wall",
  "tray-layer": "tray",
  "ladder-layer": "ladder",
};

/** The reference method that is written, or the one the kind of route implies. */
export function methodOf(fact: FactOf<"way", "route">): Method | undefined {
  const written = fact.args.method?.value;
  if (written !== undefined) return written === "F" ? undefined : written;
  const kind = fact.args.kind?.value;
  if (kind !== undefined) return usualMethod[kind];
  // What a route is in is a conduit or a trunking, and both are meant by the same method.
  return fact.args.in && usualMethod.conduit;
}

/** What else than the cable as it is a capacity is asked for. */
export interface CapacityWish {
  /** Another size, mm², to see what would serve. */
  readonly size?: number;
  /** Conductors that may get no hotter than that, °C. */
  readonly hottest?: 70;
  /** Not what the cable carries but what none of its kind exceeds, known better. */
  readonly atMost?: boolean;
}

/** Iz of one stretch of the route. */
export function stretchCapacity(
  study: WayStudy,
  fact: FactOf<"way", "route">,
  { size, hottest, atMost = false }: CapacityWish = {},
): StretchCapacity["capacity"] {
  const { cable, device } = study;
  if (!cable) return { missing: "the cable is not described" };
  const method = methodOf(fact);
  if (!method) {
    const written = fact.args.method?.value;
    return { missing: written ? `no table here gives method ${written}` : "the reference method is not stated" };
  }
  if (cable.construction === "mineral" || cable.construction === "flex" || cable.material !== "copper") {
    return { missing: `no table here gives the capacity of ${cable.material} ${cable.construction} cable` };
  }
  const construction: Construction = cable.construction;
  const insulation = hottest ?? cable.insulation;
  const csa = size ?? cable.line;
  const question = { construction, insulation, method, loaded: study.threePhase ? 3 : 2, csa } as const;
  const It = atMost ? capacityBound(question) : tabulatedCapacity(question);
  if (!It) return { missing: `no table here gives ${construction} ${csa} mm² by method ${method}` };
  const { grouped, ambient, insulated, arrangement } = fact.args;
  const inGround = method === "D";
  const conditions = {
    It,
    insulation,
    ...(ambient && !inGround ? { ambient: ambient.value } : {}),
    // Colder ground than the tables assume only helps.
    ...(ambient && inGround && ambient.value > groundBase ? { ground: ambient.value } : {}),
    ...(grouped
      ? { grouped: { circuits: grouped.value, arrangement: arrangements[arrangement?.value ?? ""] ?? "bunched" } }
      : {}),
    ...(insulated ? { insulated: insulated.value } : {}),
    // The 20 A of a ring are its cable's own, whichever of the permitted devices stands before it.
    ...(device?.family === "BS 3036" && !study.isRing ? { semiEnclosed: true } : {}),
  } as const;
  return correctedCapacity(conditions);
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
