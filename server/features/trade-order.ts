/**
 * The order in which the trade would look for a value: what is usual for this use, this route and this board comes first.
 * An order only: nothing is left out by it, and no check rests on it.
 */
import type { Use } from "../../grammar/choices.ts";
import { flatPairs, usualConstructions, usualCurves } from "../tables/sizing-practice.ts";
import { familyOf } from "../tables/standard-values.ts";
import type { Bearings } from "./bearings.ts";

/** Some of a list first, in their own order; the rest as it was. */
export function inFront<T>(list: readonly T[], first: readonly T[]): T[] {
  const known = [...new Set(first)].filter((one) => list.includes(one));
  return [...known, ...list.filter((one) => !known.includes(one))];
}

/** Reference methods by how the cable runs, the usual one first. */
const methodsByRoute: Readonly<Record<string, readonly string[]>> = {
  conduit: ["B", "A"],
  trunking: ["B", "A"],
  clipped: ["C"],
  tray: ["E", "F", "C"],
  ladder: ["E", "F"],
  "free-air": ["E", "F"],
  overhead: ["E", "F"],
  duct: ["D"],
  buried: ["D"],
  wall: ["102", "103", "A", "C"],
  ceiling: ["100", "101", "C"],
  floor: ["C", "B", "100"],
};

export const methodsFor = (route: string | undefined): readonly string[] =>
  (route && methodsByRoute[route]) || ["C", "B", "100", "101", "102", "103", "A", "E", "D", "F"];

/** Ratings by use in amperes, the usual one first. Of a circuit for several uses the first that is listed counts. */
const ratingsByUse: Readonly<Record<string, readonly number[]>> = {
  shower: [40, 45, 50, 32],
  cooker: [32, 40],
  "ev-charger": [40, 32],
  "heat-pump": [20, 32, 16],
  "water-heater": [16, 20],
  lighting: [6, 10],
  "emergency-lighting": [6, 10],
  alarms: [6],
  sockets: [32, 20, 16],
  "outdoor-sockets": [20, 16, 32],
  laundry: [20, 16, 32],
  heating: [16, 20, 6],
  motor: [16, 20, 32],
  ventilation: [6, 10, 16],
  appliance: [16, 20],
  storage: [32, 20],
  pv: [16, 20],
  data: [16, 20],
};

const usually: readonly number[] = [32, 6, 16, 20, 40, 10, 25, 50, 63];

/** In amperes. */
export function ratingsFor({ kind, uses }: Bearings): readonly number[] {
  if (kind === "ring") return [32];
  if (kind === "feeder") return [63, 40, 80, 100, 50, 32];
  const known = [...uses].map((use) => ratingsByUse[use]).find((ratings) => ratings !== undefined) ?? [];
  const radial = kind === "radial" && uses.has("sockets") ? [20, 32, 16] : known;
  return inFront(usually, radial);
}

/** B, C or D, by what the load draws as it starts. */
export function curvesFor({ uses }: Bearings): readonly ("B" | "C" | "D")[] {
  const row = usualCurves.rows.find(({ facts }) => uses.has(facts.use));
  return inFront(["B", "C", "D"] as const, row ? [row.facts.curve] : []);
}

/** Sizes of the line conductor that usually go with a rating, mm². */
const sizesByRating: readonly (readonly [rating: number, sizes: readonly number[]])[] = [
  [6, [1.5, 1]],
  [10, [1.5, 1, 2.5]],
  [16, [2.5, 1.5]],
  [20, [2.5, 4]],
  [25, [4, 6]],
  [32, [6, 4, 10]],
  [40, [10, 6]],
  [50, [10, 16]],
  [63, [16, 25]],
  [80, [25, 16]],
  [100, [25, 35]],
];

/** In mm². */
export function lineSizesFor(bearings: Bearings): readonly number[] {
  const { kind, uses, facts } = bearings;
  if (kind === "ring") return [2.5, 4];
  const device = facts?.one("device")?.args;
  const usual = uses.size > 0 ? ratingsFor(bearings)[0] : undefined;
  const rating = device?.curve?.rating ?? device?.rating?.value ?? usual;
  const known = sizesByRating.find(([most]) => rating !== undefined && rating <= most)?.[1];
  return known ?? [2.5, 1.5, 4, 6, 10, 16];
}

/** The protective conductor that comes with a line conductor, mm². */
export function cpcSizesFor(construction: string | undefined, line: number | undefined): readonly number[] {
  if (line === undefined) return [1.5, 1, 2.5];
  const pair = flatPairs.rows.find(({ facts }) => facts.line === line)?.facts.cpc;
  return construction === "flat-twin" || construction === undefined ? [pair ?? line, line] : [line, pair ?? line];
}

export function constructionsFor({ facts, premises }: Bearings): readonly string[] {
  const route = facts?.one("route")?.args.kind?.value;
  const row = usualConstructions.rows.find((one) => one.facts.route === route);
  const usual = ["flat-twin", "armoured", "multicore", "singles", "flex", "mineral"];
  const own = premises === "industrial" || premises === "commercial" ? ["singles", "flat-twin", "armoured"] : [];
  return row ? inFront(usual, [row.facts.single]) : inFront(usual, own);
}

/** Standards of devices: what the board is made of, or what its premises ask for. */
export function devicesFor({ usualDevice, rcds, premises, kind }: Bearings): readonly string[] {
  if (kind === "feeder") return ["BS 88-2", "BS EN 60947-2", "BS EN 60898"];
  if (usualDevice) return [usualDevice.standard];
  const needsRcd = rcds.length === 0 && premises !== "industrial" && premises !== "commercial";
  return needsRcd ? ["BS EN 61009"] : ["BS EN 60898"];
}

/** The words of a closed list in the trade's order: 30 mA before all other RCDs, type A before AC. */
export const residualsFirst: readonly number[] = [30, 100, 300, 10];
export const rcdTypesFirst: readonly string[] = ["A", "AC", "F", "B"];
export const switchRatings: readonly number[] = [100, 80, 63, 125, 60, 40, 160, 200, 250];
export const multiples: readonly string[] = ["1x", "5x", "½x"];
export const breakingFirst: readonly number[] = [6, 10];
export const earthingsFirst: readonly string[] = ["TN-C-S", "TN-S", "TT"];

/** Uses in the order they are met. */
export const usesFirst: readonly Use[] = [
  "sockets",
  "lighting",
  "cooker",
  "shower",
  "water-heater",
  "heating",
  "alarms",
  "appliance",
  "outdoor-sockets",
  "laundry",
  "ev-charger",
];

/** How a cable is usually run, the most usual first. */
export const routesFirst: readonly string[] = ["clipped", "conduit", "trunking", "ceiling", "wall", "floor", "tray"];

/** What is written next in a block, as a record is written down. Words that are left out follow in their own order. */
export const wordsNext = (block: string, { kind }: Bearings): readonly string[] => {
  const length = kind === "ring" ? ["run", "length"] : ["length", "run"];
  const end = kind === "feeder" ? ["feeds"] : ["serves", "load", "Ib", "behind", "place"];
  if (block === "way") return ["device", "cable", "route", ...length, ...end, "dead", "live"];
  return wordsFirst[block] ?? [];
};

const wordsFirst: Readonly<Record<string, readonly string[]>> = {
  file: ["wayfile", "use", "instrument", "installation"],
  installation: ["standard", "stage", "work", "premises", "supply", "board"],
  supply: ["earthing", "Ze", "Ipf", "cutout", "tails", "earthing-conductor", "bonding", "spd", "polarity", "phases"],
  board: ["fed-from", "main-switch", "way", "Zdb", "Ipf", "rcd", "spd", "polarity"],
};

/**
 * What a line usually states, in the usual order: what comes next is offered next, and the list goes on for as long
 * as something of this is left. Of words that are left out here, what they must say.
 */
export function argumentsFirst(word: string, said: readonly string[], standard: string | undefined): readonly string[] {
  switch (word) {
    case "device": {
      if (standard === undefined) return ["standard", "curve", "breaking"];
      if (standard.includes("3871")) return ["standard", "oldType", "rating"];
      if (familyOf(standard) !== "breaker") return ["standard", "rating"];
      return ["standard", "curve", "breaking", ...(standard.includes("61009") ? ["sensitivity", "type"] : [])];
    }
    case "cable":
      return said.includes("armoured")
        ? ["use", "construction", "line", "cpcBy", "cores"]
        : ["use", "construction", "line", "cpc"];
    case "route":
      return said.includes("conduit") ? ["kind", "size", "method"] : ["kind", "method"];
    case "rcd":
      return ["name", "standard", "rating", "sensitivity", "type", "multiple", "time"];
    case "outlet-rcd":
      return ["point", "standard", "rating", "sensitivity", "type"];
    case "dead":
    case "live":
      return ["on", "with"];
    case "insulation":
      return ["voltage", "each", "L-N", "L-E", "N-E", "N-N"];
    case "at":
      return ["point", "L-N", "L-E", "Zs", "polarity"];
    case "test-button":
      return ["verdict"];
    case "way":
      return ["id", "kind"];
    default:
      return [];
  }
}
