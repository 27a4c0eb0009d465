/**
 * Sound installations of many kinds: TN-S, PME and TT, one phase and three, boards behind feeders, fuses and breakers,
 * armoured cable, motors, lights and showers. As in the plain ones every figure follows from those before it.
 */
import { armourPerMetre } from "../../server/calc/armour.ts";
import { resistancePerMetre } from "../../server/calc/conductor-resistance.ts";
import { loopLimit } from "../../server/calc/loop-limit.ts";
import { editionOf } from "../../server/tables/editions.ts";
import { atOrigin, opening } from "./opening.ts";
import { asRead, random } from "./random.ts";

/** Where a circuit stands. Zb is the loop impedance of its board, in TT that of the electrode. */
interface Place {
  readonly system: "TN-S" | "TN-C-S" | "TT";
  readonly three: boolean;
  readonly Zb: number;
  readonly next: () => number;
  /** Which of three lines a single-phase circuit is on, from 0. */
  readonly line?: number;
}

interface Kind {
  readonly title: string;
  readonly standard: string;
  /** A breaker's type; a fuse has none. */
  readonly curve?: "B" | "C" | "D";
  readonly rating: number;
  /** What stands behind the rating: breaking capacity and, of an RCBO, its residual current. */
  readonly tail: string;
  readonly cable: string;
  readonly line: number;
  readonly cpc: number;
  /** Cores of a cable whose armour is the protective conductor. */
  readonly armour?: 2 | 3 | 4;
  /** Ω per metre of line and protective conductor, where they are not of a size. */
  readonly metre?: number;
  /** How many such cables lie side by side. */
  readonly sets?: number;
  readonly route: string;
  readonly lines: readonly string[];
  readonly Ib: number;
  readonly most: number;
  readonly phase?: "three";
  /** A circuit with an electrode of its own on any supply, or one that may not be earthed by a PME supply. */
  readonly earth?: "own" | "not-PME";
}

const rcbo = "6 kA 30 mA type A";
const hasRcd = ({ tail }: Kind): boolean => tail.includes("mA");
const twin = (line: number, cpc: number) => ({ cable: `flat-twin line ${line} mm² cpc ${cpc} mm²`, line, cpc });
const armoured = (csa: number, cores: number) => ({
  cable: `armoured 90 °C line ${csa} mm² cpc ${csa} mm² cores ${cores}`,
  line: csa,
  cpc: csa,
});
const byArmour = (csa: number, armour: 2 | 3 | 4) => ({
  cable: `armoured 90 °C line ${csa} mm² cpc-by armour cores ${armour}`,
  line: csa,
  cpc: csa,
  armour,
});
const round = (csa: number, cores: number) => ({
  cable: `multicore line ${csa} mm² cpc ${csa} mm² cores ${cores}`,
  line: csa,
  cpc: csa,
});

const kinds: readonly Kind[] = [
  {
    title: "Lights",
    standard: "BS EN 60898",
    curve: "B",
    rating: 6,
    tail: "6 kA",
    ...twin(1.5, 1),
    route: "clipped method C",
    lines: ["serves lighting"],
    Ib: 2,
    most: 30,
  },
  {
    title: "Yard lights",
    standard: "BS EN 61009",
    curve: "C",
    rating: 10,
    tail: rcbo,
    ...armoured(2.5, 3),
    route: "clipped method C",
    lines: ["serves lighting", "place outdoors"],
    Ib: 4,
    most: 35,
  },
  {
    title: "Shower",
    standard: "BS EN 61009",
    curve: "B",
    rating: 40,
    tail: rcbo,
    ...twin(10, 4),
    route: "clipped method C",
    lines: ["serves shower", "place bathroom", 'load 8.5 kW "Shower"'],
    Ib: 37,
    most: 12,
  },
  {
    title: "Bench sockets",
    standard: "BS EN 61009",
    curve: "B",
    rating: 20,
    tail: rcbo,
    ...twin(2.5, 1.5),
    route: "clipped method C",
    lines: ["serves sockets"],
    Ib: 9,
    most: 22,
  },
  {
    title: "Fan",
    standard: "BS EN 60898",
    curve: "C",
    rating: 16,
    tail: "6 kA",
    ...round(2.5, 3),
    route: "clipped method C",
    lines: ["serves motor"],
    Ib: 8,
    most: 20,
  },
  {
    title: "Heater bank",
    standard: "BS 88-2",
    rating: 32,
    tail: "80 kA gG",
    ...armoured(6, 3),
    route: "tray method E",
    lines: ["serves heating"],
    Ib: 24,
    most: 25,
  },
  {
    title: "Boiler room panel",
    standard: "BS 88-3",
    rating: 20,
    tail: "33 kA",
    ...round(4, 3),
    route: "clipped method C",
    lines: ["serves appliance"],
    Ib: 11,
    most: 20,
  },
];

const sockets = (title: string, lines: readonly string[], earth: "own" | "not-PME" | undefined): Kind => ({
  title,
  standard: "BS EN 61009",
  curve: "C",
  rating: 16,
  tail: rcbo,
  ...armoured(4, 3),
  route: "clipped method C",
  lines: ["serves sockets", ...lines],
  Ib: 10,
  most: 25,
  ...(earth ? { earth } : {}),
});

/** Circuits of places with rules of their own. */
const placedKinds: readonly Kind[] = [
  sockets("Parlour sockets", ["place agricultural", "ingress IP66", "supplementary-bonding fitted"], undefined),
  sockets("Pitch", ["place caravan outdoors", "points 1", "ingress IP44"], "not-PME"),
  sockets("Berth", ["place marina", "points 1", "earthing TT"], "own"),
  sockets("Site sockets", ["place construction"], "not-PME"),
  sockets("Dressing room sockets", ["place bathroom zone outside distance 3.2 m"], undefined),
  {
    title: "Washroom lights",
    standard: "BS EN 61009",
    curve: "B",
    rating: 6,
    tail: rcbo,
    ...twin(1.5, 1),
    route: "clipped method C",
    lines: ["serves lighting", "place bathroom zone 1 2 outside", "ingress IPX5", "supplementary-bonding not-fitted"],
    Ib: 2,
    most: 25,
  },
  {
    title: "Pool plant",
    standard: "BS EN 61009",
    curve: "C",
    rating: 10,
    tail: rcbo,
    ...round(2.5, 3),
    route: "clipped method C",
    lines: ["serves motor", "place pool", "ingress IP55", "supplementary-bonding fitted"],
    Ib: 6,
    most: 20,
  },
  ...[{ more: ['open-PEN "Detector in the charging unit"'] }, { more: ["earthing TT"], earth: "own" as const }].map(
    ({ more, earth }): Kind => ({
      title: "Charging point",
      standard: "BS EN 61009",
      curve: "C",
      rating: 32,
      tail: rcbo,
      ...armoured(6, 3),
      route: "clipped method C",
      lines: [
        "serves ev-charger",
        'load-control "Clamp at the meter"',
        "place outdoors",
        'note "Detects direct current over 6 mA itself (RDC-DD)"',
        ...more,
      ],
      Ib: 28,
      most: 20,
      ...(earth ? { earth } : {}),
    }),
  ),
];

const armourKinds: readonly Kind[] = [
  {
    title: "Sump pump",
    standard: "BS EN 61009",
    curve: "C",
    rating: 16,
    tail: rcbo,
    ...byArmour(2.5, 2),
    route: "clipped method C",
    lines: ["serves motor", "place outdoors"],
    Ib: 7,
    most: 30,
  },
  {
    title: "Kiln",
    standard: "BS EN 60898",
    curve: "B",
    rating: 32,
    tail: "6 kA",
    ...byArmour(6, 2),
    route: "tray method E",
    lines: ["serves heating"],
    Ib: 25,
    most: 24,
  },
];

const threePhaseKinds: readonly Kind[] = [
  {
    title: "Saw",
    standard: "BS EN 60898",
    curve: "C",
    rating: 20,
    tail: "10 kA",
    ...round(4, 4),
    route: "clipped method C",
    lines: ["serves motor"],
    Ib: 12,
    most: 25,
    phase: "three",
  },
  {
    title: "Compressor",
    standard: "BS EN 60898",
    curve: "D",
    rating: 16,
    tail: "10 kA",
    ...armoured(2.5, 4),
    route: "tray method E",
    lines: ["serves motor"],
    Ib: 9,
    most: 20,
    phase: "three",
  },
  {
    title: "Conveyor",
    standard: "BS EN 60898",
    curve: "C",
    rating: 20,
    tail: "10 kA",
    ...byArmour(4, 4),
    route: "clipped method C",
    lines: ["serves motor"],
    Ib: 11,
    most: 24,
    phase: "three",
  },
];

const edition = editionOf("BS 7671:2018+A2:2022");
const perMetre = (csa: number): number => resistancePerMetre(csa)?.value ?? Number.NaN;
const pick = <T>(items: readonly T[], next: () => number): T => items[Math.floor(next() * items.length)] as T;
const scatter = (next: () => number): number => (next() < 0.5 ? -1 : 1) * (0.012 + next() * 0.008);
const megohms = (next: () => number): string => (next() < 0.4 ? ">999 MΩ" : `${Math.round(220 + next() * 700)} MΩ`);

/** As a meter shows it: two decimals to 10 Ω, one above. */
const shown = (value: number): string => (value < 10 ? value.toFixed(2) : value.toFixed(1));
const read = (value: number): number => Number(shown(value));

interface MixedSize {
  readonly ways: number;
  readonly waysPerBoard: number;
  readonly seed: number;
}

/** An installation of the kind its seed decides, with as many ways as asked and a board behind a feeder now and then. */
export function generateMixed({ ways, waysPerBoard, seed }: MixedSize): string {
  const next = random(seed);
  const system = pick(["TN-S", "TN-C-S", "TT"] as const, next);
  const three = next() < 0.5;
  const Ze = system === "TT" ? 20 + next() * 120 : 0.16 + next() * 0.12;
  const lines = openingOf(seed, { system, three, Zb: Ze, next });
  let left = ways;
  for (let board = 1; left > 0; board++) {
    const count = Math.min(left, waysPerBoard);
    const Zb = read(read(Ze) + 0.01 + next() * 0.03);
    lines.push(...boardLines(`D${board}`, "supply", count, inUse(ways), { system, three, Zb, next }));
    left -= count;
  }
  lines.push("}", "");
  return lines.join("\n");
}

function openingOf(seed: number, place: Place): string[] {
  const { system, three, Zb } = place;
  return [
    ...opening(`Mixed ${seed}`),
    "  supply {",
    `    earthing            ${system}`,
    ...(three ? ["    phases              three", "    phase-sequence      ok"] : []),
    "    U0                  230 V",
    system === "TT" ? `    electrode           rod ${shown(Zb)} Ω` : `    Ze                  ${shown(Zb)} Ω`,
    `    Ipf                 ${fault(place, 1)} kA`,
    ...atOrigin,
  ];
}

/** Between lines about twice what flows to earth; behind an electrode the neutral alone decides. */
function fault({ system, three, Zb }: Place, share: number): string {
  const loop = system === "TT" ? 0.2 : Zb;
  return ((230 / loop / 1000) * (three ? 1.9 : 1.06) * share).toFixed(2);
}

/** What of all circuits is in use at once, %: so much that the cut-out bears it. */
const inUse = (ways: number): number => Number(Math.min(100, 160 / ways).toPrecision(2));

/** Circuits with the line each is on, the largest placed first and each where least is drawn. */
function evened(kinds: readonly Kind[]): { kind: Kind; line: number }[] {
  const drawn = [0, 0, 0];
  const placed = kinds.map((kind) => ({ kind, line: 0 }));
  for (const circuit of placed.filter(({ kind }) => !kind.phase).sort((a, b) => b.kind.Ib - a.kind.Ib)) {
    circuit.line = drawn.indexOf(Math.min(...drawn));
    drawn[circuit.line] = (drawn[circuit.line] ?? 0) + circuit.kind.Ib;
  }
  return placed;
}

function boardLines(name: string, from: string, count: number, share: number, place: Place): string[] {
  const { system, three, Zb, next } = place;
  // A farm building: all that is fixed stands behind 300 mA, in TT behind the 100 mA that stand there anyway.
  const farm = from === "supply" && next() < 0.2;
  const delayed = (farm || system === "TT") && from === "supply";
  const residual = system === "TT" ? 100 : 300;
  const lines = [
    `  board ${name} "Board ${name}" {`,
    `    fed-from     ${from}`,
    `    diversity    ${share} %`,
    delayed
      ? `    main-switch  BS EN 61008 100 A ${residual} mA type A delayed`
      : "    main-switch  BS EN 60947-3 100 A",
    ...(system === "TT" ? [] : [`    Zdb          ${shown(Zb)} Ω`]),
    `    Ipf          ${fault(place, from === "supply" ? 0.96 : 0.9)} kA`,
    "    spd          fitted",
    ...(farm ? ["    place        agricultural"] : []),
    ...(three ? ["    phase-sequence ok"] : []),
    "    polarity     ok",
    ...(delayed
      ? [
          "    live 2026-03-05 with M1 {",
          `      rcd          ${residual} mA 1x ${Math.round(180 + next() * 120)} ms`,
          "      test-button  ok",
          "    }",
        ]
      : []),
  ];
  const fits = ({ earth }: Kind) => earth !== "not-PME" || system !== "TN-C-S";
  const feeds = from === "supply" && count > 2 && next() < 0.6;
  const fitting = [...kinds, ...armourKinds, ...placedKinds, ...(three ? threePhaseKinds : [])].filter(fits);
  const circuits = evened(Array.from({ length: count - (feeds ? 1 : 0) }, () => pick(fitting, next)));
  for (const [index, { kind, line }] of circuits.entries()) {
    const way = index + 1;
    const bonded = farm && way === 1 && !kind.lines.some((line) => line.startsWith("supplementary"));
    lines.push(
      ...wayLines(way, bonded ? { ...kind, lines: [...kind.lines, "supplementary-bonding fitted"] } : kind, {
        ...place,
        line,
      }),
    );
  }
  if (!feeds) return [...lines, "  }"];
  const { text, Zs } = feederLines(count, `${name}S`, place);
  return [...lines, ...text, "  }", ...boardLines(`${name}S`, name, 2, 80, { ...place, Zb: Zs })];
}

/** Busbar trunking by the figures of a maker there is none of. */
const busbars =
  'busbar-trunking line 60 mm² cpc-by casing carries 100 A r1 0.5 mΩ/m r2 0.6 mΩ/m r1-hot 0.62 mΩ/m r2-hot 0.7 mΩ/m x 0.1 mΩ/m Icw 10 kA by "Sheet 2"';

/** Busbar trunking, or one cable of a feeder, in air or in the ground, or two smaller ones in parallel. */
function feederCable(
  three: boolean,
  next: () => number,
): Pick<Kind, "cable" | "line" | "cpc" | "sets" | "metre" | "route"> {
  const cores = three ? 5 : 3;
  const which = next();
  if (which < 0.35) return { ...armoured(16, cores), route: "clipped method C" };
  if (which < 0.6) return { ...armoured(16, cores), route: "buried method D depth 600 mm soil 2 K·m/W" };
  if (which < 0.72) return { cable: busbars, line: 60, cpc: 60, metre: 0.0011, route: "clipped" };
  const one = armoured(6, cores);
  return { ...one, cable: `${one.cable} parallel 2`, sets: 2, route: "clipped method C" };
}

function feederLines(way: number, board: string, place: Place): { text: string[]; Zs: number } {
  const { three } = place;
  const kind: Kind = {
    title: `Board ${board}`,
    standard: "BS 88-2",
    rating: 63,
    tail: "80 kA gG",
    ...feederCable(three, place.next),
    lines: [`feeds ${board}`],
    Ib: 60,
    most: 18,
  };
  return circuitLines(way, "feeder", kind, place);
}

const wayLines = (way: number, kind: Kind, place: Place): string[] => circuitLines(way, "radial", kind, place).text;

function circuitLines(
  way: number,
  word: "radial" | "feeder",
  kind: Kind,
  place: Place,
): { text: string[]; Zs: number } {
  const { next } = place;
  const own = kind.earth === "own" && place.system !== "TT";
  const system = own ? "TT" : place.system;
  const Zb = own ? Math.round(30 + next() * 90) : place.Zb;
  const metre = kind.metre ?? (perMetre(kind.line) + returning(kind)) / (kind.sets ?? 1);
  const length = Math.max(
    3,
    Math.min(Math.round(5 + next() * (kind.most - 5)), longest(kind, word, { ...place, system, Zb }, metre)),
  );
  const R1R2 = length * metre;
  const Zs = read(Zb + R1R2 + (system === "TT" ? 0 : scatter(next)));
  const manyLines = kind.phase === "three" || (word === "feeder" && place.three);
  const text = [
    `    way ${way} ${word} "${kind.title}" {`,
    `      device  ${kind.standard} ${kind.curve ? `${kind.curve}${kind.rating}` : `${kind.rating} A`} ${kind.tail}`,
    `      cable   ${kind.cable}`,
    `      route   ${kind.route}`,
    `      length  ${length} m`,
    ...kind.lines.map((line) => `      ${line}`),
    ...(kind.phase ? [`      phase   ${kind.phase}`] : []),
    ...(place.three && !manyLines ? [`      phase   L${1 + (place.line ?? 0)}`] : []),
    `      Ib      ${(kind.Ib * (word === "feeder" ? 1 : 0.9 + next() * 0.1)).toFixed(1)} A`,
    "      dead 2026-03-04 with M1 {",
    `        R1+R2       ${asRead(R1R2, length).toFixed(2)} Ω`,
    `        insulation  500 V ${manyLines ? ` L-L ${megohms(next)}` : ""}${kind.phase ? "" : `  L-N ${megohms(next)}`}  L-E ${megohms(next)}${kind.phase ? "" : `  N-E ${megohms(next)}`}${kind.lines.includes("serves ev-charger") ? ' "Charging unit disconnected"' : ""}`,
    // Once the unit is back the circuit is tested again, gently.
    ...(kind.lines.includes("serves ev-charger")
      ? [`        insulation  250 V joined  L-E ${megohms(next)} "Charging unit connected"`]
      : []),
    "        polarity    ok",
    "      }",
    "      live 2026-03-05 with M1 {",
    `        Zs           ${shown(Zs)} Ω`,
    ...(hasRcd(kind)
      ? [`        rcd          30 mA 1x ${(17 + next() * 12).toFixed(1)} ms`, "        test-button  ok"]
      : []),
    ...(kind.phase ? ["        phase-sequence  ok"] : []),
    "      }",
    "    }",
  ];
  return { text, Zs };
}

/** The protective conductor by the metre. */
const returning = ({ line, cpc, armour }: Kind): number =>
  armour === undefined ? perMetre(cpc) : (armourPerMetre(line, armour)?.value ?? Number.NaN);

/** The length at which a cold reading still stands well inside its limit; behind an electrode an RCD decides. */
function longest(kind: Kind, word: string, { system, Zb }: Place, metre: number): number {
  if (system === "TT") return kind.most;
  if (!edition) throw new Error("the edition is not known");
  const { standard, rating, curve } = kind;
  const time = word === "feeder" || rating > 32 ? 5 : 0.4;
  const limit = loopLimit({ standard, ...(curve ? { curve } : {}), rating, time, U0: 230, edition });
  return Math.floor(((limit?.value ?? 0) * 0.72 - Zb) / metre);
}
