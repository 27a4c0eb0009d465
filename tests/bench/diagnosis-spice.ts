/**
 * The diagnosis against circuits it knows nothing of: this file draws rings and radials, puts a fault in, lets ngspice
 * measure them, writes the readings into a schedule and reads what `check` says of it. It shares nothing with the solver
 * that diagnoses: not the network, not the resistances of conductors, not the readings' formulas.
 * Run: node tests/bench/diagnosis-spice.ts [circuits of each] [only families of this name]; SHOW=name prints those missed.
 */
import { Simulation } from "eecircuit-engine";
import { verdictsOf } from "../helpers/verdicts.ts";

const each = Number(process.argv[2] ?? 25);
const only = new RegExp(process.argv[3] ?? ".");

/** Ω per metre at 20 °C of copper to BS EN 60228, class 1 or 2: 1.0, 1.5, 2.5, 4.0 mm². */
const copper: Readonly<Record<string, number>> = { "1": 0.0181, "1.5": 0.0121, "2.5": 0.00741, "4": 0.00461 };

let seed = 20260511;
const random = (): number => {
  seed ^= seed << 13;
  seed ^= seed >>> 17;
  seed ^= seed << 5;
  return (seed >>> 0) / 4294967296;
};
const between = (low: number, high: number): number => low + (high - low) * random();
const whole = (low: number, high: number): number => Math.floor(between(low, high + 1));
const pick = <T>(items: readonly T[]): T => items[whole(0, items.length - 1)] as T;

type Core = "L" | "N" | "E";
const cores: readonly Core[] = ["L", "N", "E"];

/** A wire of a netlist between two nodes; a break is left out. */
interface Wire {
  readonly a: string;
  readonly b: string;
  readonly ohms: number;
}

/** What is on the wall: nodes A1 and A2 are the two legs' ends at the board, S1 … the points, X1 a spur's. */
interface House {
  readonly ring: boolean;
  readonly stops: readonly string[];
  /** Metres from each stop to the next, board to board. */
  readonly gaps: readonly number[];
  readonly spur?: { readonly from: string; readonly metres: number };
  readonly live: string;
  readonly earth: string;
  readonly cable: "flat-twin" | "singles 70 °C";
}

/** What is wrong: with the wires, with what is put to the board, or with what is written. */
interface Trouble {
  /** Ω put into a core of a gap; infinite is a break. */
  readonly gap?: { readonly at: number; readonly core: Core | "all"; readonly ohms: number };
  /** Ω between a point's cable and its terminal. */
  readonly pin?: { readonly at: string; readonly core: Core | "all"; readonly ohms: number };
  readonly crossed?: { readonly at: string; readonly pair: readonly [Core, Core] };
  readonly extra?: { readonly a: string; readonly b: string; readonly core: Core | "all"; readonly metres: number };
  readonly hanging?: { readonly at: string; readonly metres: number };
  readonly links?: "same-leg" | "one" | "none";
  /** Size of the protective conductor that was really drawn in. */
  readonly earth?: string;
  /** Lengths as they are, over lengths as written. */
  readonly longer?: number;
  /** Figures that are written once more in place of another. */
  readonly copies?: Readonly<Record<string, string>> | undefined;
  readonly writes?: (name: string, ohms: number, all: ReadonlyMap<string, number>) => number;
  /** Ω by other metal from the far point's earth to the board. */
  readonly otherMetal?: number;
}

interface Family {
  readonly name: string;
  readonly ring: boolean;
  /** Shows only where line and protective conductor are of two sizes. */
  readonly unequal?: true;
  readonly make: (house: House) => {
    /** As it is drawn, where the trouble wants another. */
    readonly house?: House;
    readonly trouble: Trouble;
    readonly says: RegExp;
  };
}

const drawRing = (unequal = false): House => {
  const count = whole(4, 9);
  const stops = Array.from({ length: count }, (_, at) => `S${at + 1}`);
  const gaps = Array.from({ length: count + 1 }, () => whole(3, 10));
  const [live, earth] = pick([
    ["2.5", "1.5"],
    ["2.5", "1.5"],
    ["4", "1.5"],
    unequal ? ["2.5", "1.5"] : ["2.5", "2.5"],
  ] as const);
  const spur = random() < 0.4 ? { spur: { from: pick(stops), metres: whole(2, 6) } } : {};
  return { ring: true, stops, gaps, live, earth, cable: cableOf(live, earth), ...spur };
};
const drawRadial = (): House => {
  const count = whole(3, 6);
  const stops = Array.from({ length: count }, (_, at) => `P${at + 1}`);
  const gaps = Array.from({ length: count }, () => whole(3, 12));
  const [live, earth] = pick([
    ["2.5", "1.5"],
    ["1.5", "1"],
    ["4", "1.5"],
  ] as const);
  return { ring: false, stops, gaps, live, earth, cable: cableOf(live, earth) };
};
/** No sheathed cable is made with cores of these sizes alike. */
const cableOf = (live: string, earth: string): House["cable"] => (live === earth ? "singles 70 °C" : "flat-twin");

/** The wires of one core, at the temperature and length they have. */
function wiresOf(house: House, { gap, pin, crossed, extra, hanging, earth, longer = 1, otherMetal }: Trouble): Wire[] {
  const perMetre = (core: Core) => (core === "E" ? (copper[earth ?? house.earth] ?? 0) : (copper[house.live] ?? 0));
  const wires: Wire[] = [];
  const add = (a: string, b: string, ohms: number) => {
    if (Number.isFinite(ohms)) wires.push({ a, b, ohms: Math.max(ohms, 1e-6) });
  };
  const nodes = ["A1", ...house.stops, ...(house.ring ? ["A2"] : [])];
  for (const core of cores) {
    const concerns = (which: Core | "all" | undefined) => which === core || which === "all";
    for (const [at, metres] of house.gaps.entries())
      add(
        `${core}.${nodes[at]}`,
        `${core}.${nodes[at + 1]}`,
        metres * longer * perMetre(core) + (gap?.at === at && concerns(gap.core) ? gap.ohms : 0),
      );
    if (house.spur) add(`${core}.${house.spur.from}`, `${core}.X1`, house.spur.metres * longer * perMetre(core));
    if (extra && concerns(extra.core)) add(`${core}.${extra.a}`, `${core}.${extra.b}`, extra.metres * perMetre(core));
  }
  const points = [...house.stops, ...(house.spur ? ["X1"] : [])];
  for (const point of points)
    for (const core of cores) {
      const other = crossed?.at === point ? crossed.pair : undefined;
      const joined = other?.[0] === core ? other[1] : other?.[1] === core ? other[0] : core;
      const slack = hanging && (hanging.at === point || (point === "X1" && house.spur?.from === hanging.at));
      const own = pin?.at === point && (pin.core === core || pin.core === "all") ? pin.ohms : 0;
      add(`${joined}.${point}`, `${core}.pin.${point}`, own + (slack ? hanging.metres * perMetre(core) : 0));
    }
  if (otherMetal !== undefined) add(`E.pin.${house.stops.at(-1)}`, "E.A1", otherMetal);
  return wires;
}

const linksOf = (house: House, other: Core, how: Trouble["links"]): Wire[] => {
  if (how === "none") return [];
  const link = (a: string, b: string): Wire => ({ a, b, ohms: 1e-6 });
  if (!house.ring) return [link("L.A1", `${other}.A1`)];
  if (how === "same-leg") return [link("L.A1", `${other}.A1`), link("L.A2", `${other}.A2`)];
  return [link("L.A1", `${other}.A2`), ...(how === "one" ? [] : [link("L.A2", `${other}.A1`)])];
};

const simulation = new Simulation();
await simulation.start();
let runs = 0;

/** Ω between two nodes; 1 GΩ from each node to ground keeps the simulator from floating, and more than 1 MΩ is open. */
async function ohmsBetween(wires: readonly Wire[], from: string, to: string): Promise<number> {
  const names = new Map<string, string>();
  const node = (name: string): string => {
    if (name === to) return "0";
    const known = names.get(name) ?? `n${names.size + 1}`;
    names.set(name, known);
    return known;
  };
  const lines = wires.map(({ a, b, ohms }, at) => `R${at} ${node(a)} ${node(b)} ${ohms}`);
  const first = node(from);
  const leaks = [...names.values()].map((name, at) => `RG${at} ${name} 0 1e9`);
  const title = `house ${++runs}`;
  simulation.setNetList([title, `I0 0 ${first} DC 1`, ...lines, ...leaks, ".op", ".end"].join("\n"));
  const { header, data } = await simulation.runSim();
  if (!header.includes(title)) throw new Error(`${title}: ${simulation.getError().join("; ")}`);
  const volts = data.find(({ name }) => name === `v(${first})`)?.values[0];
  if (typeof volts !== "number") throw new Error(`${title}: no voltage`);
  return volts > 1e6 ? Number.POSITIVE_INFINITY : volts;
}

async function read(house: House, trouble: Trouble): Promise<Map<string, number>> {
  const wires = wiresOf(house, trouble);
  const found = new Map<string, number>();
  if (house.ring)
    for (const [name, core] of [
      ["r1", "L"],
      ["rn", "N"],
      ["r2", "E"],
    ] as const)
      found.set(name, await ohmsBetween(wires, `${core}.A1`, `${core}.A2`));
  for (const other of ["N", "E"] as const) {
    const joined = [...wires, ...linksOf(house, other, trouble.links)];
    for (const point of [...house.stops, ...(house.spur ? ["X1"] : [])])
      found.set(`L-${other} ${point}`, await ohmsBetween(joined, `L.pin.${point}`, `${other}.pin.${point}`));
  }
  return found;
}

/** What a meter makes of it: 2 % and two digits either way at the most, two decimals, off scale from 100 Ω. */
const shown = (ohms: number): string =>
  ohms >= 100 ? ">99.9 Ω" : `${Math.max(0.01, ohms + between(-1, 1) * (0.02 * ohms + 0.012)).toFixed(2)} Ω`;

function scheduleOf(
  house: House,
  readings: ReadonlyMap<string, number>,
  { live, copies = {} }: { readonly live: string; readonly copies?: Trouble["copies"] },
): string {
  const figures = new Map([...readings].map(([name, ohms]) => [name, shown(ohms)]));
  const at = (name: string) => figures.get(copies[name] ?? name) ?? "";
  const points = [...house.stops, ...(house.spur ? ["X1"] : [])];
  const run = ["A", ...house.stops, ...(house.ring ? ["A"] : [])]
    .map((stop, index) => (index === 0 ? stop : `${house.gaps[index - 1]} m ${stop}`))
    .join(" ");
  return `wayfile 1
installation "Bench" {
  standard BS 7671:2018+A2:2022
  stage tested
  work new
  premises commercial
  supply {
    earthing TN-S
    Ze 0.20 Ω
    Ipf 1.1 kA
  }
  board A "Board" {
    fed-from supply
    way 1 ${house.ring ? "ring" : "radial"} "Circuit" {
      cable ${house.cable} line ${house.live} mm² cpc ${house.earth} mm²
      run ${run}
${house.spur ? `      run ${house.spur.from} ${house.spur.metres} m X1\n` : ""}      dead 2026-03-04 {
${house.ring ? `        ends r1 ${at("r1")} rn ${at("rn")} r2 ${at("r2")}\n` : ""}${points.map((point) => `        at ${point} L-N ${at(`L-N ${point}`)} L-E ${at(`L-E ${point}`)}`).join("\n")}
      }
${live}    }
  }
}
`;
}

const legs = (house: House) => house.gaps.length - 1;
const anyPoint = (house: House) => pick(house.stops);
const words = { L: "line", N: "neutral", E: "protective conductor" } as const;
const anyCore = (): Core => pick(cores);
const scaled =
  (factor: number, which: RegExp): NonNullable<Trouble["writes"]> =>
  (name, ohms) =>
    which.test(name) ? ohms * factor : ohms;
const plus =
  (ohms: number, which: RegExp): NonNullable<Trouble["writes"]> =>
  (name, own) =>
    which.test(name) ? own + ohms : own;

const ofBoth = (ring: boolean): Family[] => [
  {
    name: "conductor open",
    ring,
    make: (house) => {
      const core = ring ? anyCore() : pick(["L", "E"] as const);
      const at = whole(0, legs(house));
      return {
        trouble: { gap: { at, core, ohms: Number.POSITIVE_INFINITY } },
        says: new RegExp(`The ${words[core]} is (open|not connected)`),
      };
    },
  },
  {
    name: "poor joint",
    ring,
    make: (house) => {
      const core = anyCore();
      const at = whole(0, legs(house) - 1);
      return {
        trouble: { gap: { at, core, ohms: between(0.2, 1.2) } },
        says: new RegExp(`poor joint of about .* in the ${words[core]}`),
      };
    },
  },
  {
    name: "poor contact at a point",
    ring,
    make: (house) => {
      const core = anyCore();
      const at = pick(house.stops.slice(0, -1));
      return {
        trouble: { pin: { at, core, ohms: between(0.2, 1.2) } },
        says: new RegExp(`The ${words[core]} has a poor contact of about .* at ${at}\\b`),
      };
    },
  },
  {
    name: "earth off its terminal",
    ring,
    make: (house) => {
      const at = pick(house.stops.slice(0, -1));
      return {
        trouble: { pin: { at, core: "E", ohms: Number.POSITIVE_INFINITY } },
        says: new RegExp(`protective conductor is not connected at ${at}\\b`),
      };
    },
  },
  {
    name: "point on another circuit",
    ring,
    make: (house) => {
      const at = pick(house.stops.slice(0, -1));
      return {
        trouble: { pin: { at, core: "all", ohms: Number.POSITIVE_INFINITY } },
        says: new RegExp(`another circuit, at ${at}\\b`),
      };
    },
  },
  {
    name: "cpc a size smaller",
    ring,
    make: (house) => {
      const smaller = house.earth === "2.5" ? "1.5" : "1";
      return {
        // None smaller than 1.0 mm² is drawn in: such a circuit is drawn with 1.5 mm², and has 1.0 mm².
        house: house.earth === "1" ? { ...house, earth: "1.5", cable: "singles 70 °C" } : house,
        trouble: { earth: smaller },
        says: new RegExp(`protective conductor is ${smaller}(\\.0)? mm² throughout`),
      };
    },
  },
  {
    name: "cpc as large as the line",
    ring,
    unequal: true,
    make: (house) => ({
      house: { ...house, cable: "singles 70 °C" },
      trouble: { earth: house.live },
      says: new RegExp(`protective conductor is ${house.live} mm² throughout`),
    }),
  },
  {
    name: "leads not nulled",
    ring,
    make: () => ({ trouble: { writes: plus(between(0.12, 0.35), /./) }, says: /leads were not nulled: every/ }),
  },
  {
    name: "leads not nulled, L-E only",
    ring,
    make: () => ({
      trouble: { writes: plus(between(0.12, 0.35), /^L-E/) },
      says: /leads were not nulled for .*(L-E|line to earth)/,
    }),
  },
  {
    name: "decimal point",
    ring,
    make: (house) => {
      const name = pick([...(ring ? ["r1", "r2"] : []), ...house.stops.map((stop) => `L-E ${stop}`)]);
      return {
        trouble: { writes: scaled(10, new RegExp(`^${name}$`)) },
        says: new RegExp(`${name.replace(" ", " at ")} is written 10 times too high`),
      };
    },
  },
  {
    name: "line to neutral read twice",
    ring,
    unequal: true,
    make: () => ({
      trouble: { writes: (name, own, all) => all.get(name.replace("L-E", "L-N")) ?? own },
      says: /L-E column repeats/,
    }),
  },
  {
    name: "length wrong",
    ring,
    make: () => ({ trouble: { longer: pick([0.45, 2.2, 2.6]) }, says: /All the cable is/ }),
  },
];

const families: Family[] = [
  { name: "sound", ring: true, make: () => ({ trouble: {}, says: /^$/ }) },
  ...ofBoth(true),
  {
    name: "cable cut",
    ring: true,
    make: (house) => ({
      trouble: { gap: { at: whole(0, legs(house)), core: "all", ohms: Number.POSITIVE_INFINITY } },
      says: /All conductors are open/,
    }),
  },
  {
    name: "figure of eight",
    ring: true,
    make: (house) => {
      const from = whole(0, house.stops.length - 3);
      const to = whole(from + 2, house.stops.length - 1);
      return {
        trouble: {
          extra: { a: house.stops[from] ?? "", b: house.stops[to] ?? "", core: "all", metres: between(2, 8) },
        },
        says: /bridges the ring/,
      };
    },
  },
  {
    name: "spur not drawn",
    ring: true,
    make: (house) => {
      const at = anyPoint(house);
      return {
        trouble: { hanging: { at, metres: between(4, 10) } },
        says: new RegExp(`(more cable than is drawn|spur that is not drawn) at ${at}\\b`),
      };
    },
  },
  {
    name: "crossed line and neutral",
    ring: true,
    make: (house) => {
      const at = anyPoint(house);
      return {
        trouble: { crossed: { at, pair: ["L", "N"] } },
        says: new RegExp(`(line and neutral are crossed|protective conductor is not connected) at ${at}\\b`),
      };
    },
  },
  {
    name: "legs not crossed",
    ring: true,
    make: () => ({ trouble: { links: "same-leg" }, says: /legs were not crossed/ }),
  },
  { name: "one link made", ring: true, make: () => ({ trouble: { links: "one" }, says: /one of the two links/ }) },
  {
    name: "links forgotten",
    ring: true,
    make: () => ({ trouble: { links: "none" }, says: /not joined at the board/ }),
  },
  {
    name: "r2 copied from r1",
    ring: true,
    unequal: true,
    make: () => ({
      trouble: { copies: { r2: "r1" } },
      says: /r2 repeats r1/,
    }),
  },
  {
    name: "leads not nulled, ends only",
    ring: true,
    make: () => ({
      trouble: { writes: plus(between(0.12, 0.35), /^r/) },
      says: /leads were not nulled for the end-to-end/,
    }),
  },
  { name: "sound", ring: false, make: () => ({ trouble: {}, says: /^$/ }) },
  ...ofBoth(false),
  {
    name: "cpc open, earth by metal",
    ring: false,
    make: (house) => ({
      trouble: {
        gap: { at: whole(0, legs(house)), core: "E", ohms: Number.POSITIVE_INFINITY },
        otherMetal: between(0.02, 0.3),
      },
      says: /other metal/,
    }),
  },
];

/** The loop, where a person would have read it live: the board's 0.20 Ω, the line out and the way back by the metal. */
async function liveOf(house: House, trouble: Trouble): Promise<string> {
  if (trouble.otherMetal === undefined) return "";
  const wires = wiresOf(house, trouble);
  const out = await ohmsBetween(wires, "L.A1", `L.pin.${house.stops.at(-1)}`);
  return `      live 2026-03-05 {\n        Zs ${(0.2 + out + trouble.otherMetal).toFixed(2)} Ω\n      }\n`;
}

const cell = (value: number, of: number): string => `${of > 0 ? Math.round((100 * value) / of) : 0} %`.padStart(8);
const heads = ["silent", "1st", "listed", "error", "warning", "apart"];
for (const ring of [true, false]) {
  console.log(`\n${ring ? "Rings of 4 to 9 points" : "Radials of 3 to 6 points"}, ${each} of each, by ngspice`);
  console.log(`${"".padEnd(29)}${heads.map((word) => word.padStart(8)).join(" ")}`);
  for (const family of families.filter((one) => one.ring === ring && only.test(one.name))) {
    const count = { silent: 0, first: 0, listed: 0, error: 0, warning: 0, apart: 0 };
    for (let at = 0; at < each; at++) {
      const any = ring ? drawRing(family.unequal) : drawRadial();
      const { trouble, says, house = any } = family.make(any);
      // The metal comes in where the circuit is live; the dead test was made with the load off it.
      const { otherMetal: _, ...dead } = trouble;
      const measured = await read(house, dead);
      const { writes } = trouble;
      const written = writes
        ? new Map([...measured].map(([name, own]) => [name, writes(name, own, measured)]))
        : measured;
      const text = scheduleOf(house, written, { live: await liveOf(house, trouble), ...trouble });
      const said = verdictsOf(text);
      if (!said.first && said.apart.length === 0) count.silent++;
      if (says.test(said.first)) count.first++;
      else if (process.env.SHOW && new RegExp(process.env.SHOW).test(family.name)) console.log(text, said, trouble);
      if (said.listed.some((one) => says.test(one))) count.listed++;
      if (said.severity === "error") count.error++;
      if (said.severity === "warning") count.warning++;
      count.apart += said.apart.length;
    }
    const { silent, first, listed, error, warning, apart } = count;
    const cells = [silent, first, listed, error, warning].map((one) => cell(one, each));
    const shares = family.name === "sound" ? [cells[0], "–".padStart(8), "–".padStart(8), ...cells.slice(3)] : cells;
    console.log(`${family.name.padEnd(29)}${[...shares, (apart / each).toFixed(2).padStart(8)].join(" ")}`);
  }
}
