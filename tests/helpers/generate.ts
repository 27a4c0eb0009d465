/**
 * Sound installations, made up: every figure follows from the ones before it by the physics of copper, and is then
 * rounded as a meter shows it. What comes out must raise nothing, whatever the seed.
 */

import { resistancePerMetre } from "../../server/calc/conductor-resistance.ts";
import { loopLimit } from "../../server/calc/loop-limit.ts";
import { readingAt } from "../../server/calc/ring.ts";
import { editionOf } from "../../server/tables/editions.ts";
import { generateMixed } from "./generate-mixed.ts";
import { atOrigin, opening } from "./opening.ts";
import { asRead, random } from "./random.ts";

export { random } from "./random.ts";

interface Size {
  readonly ways: number;
  readonly waysPerBoard?: number;
  readonly seed?: number;
  /** Many kinds of supply and circuit instead of the plain TN-S ones. */
  readonly mix?: boolean;
}

/** What a circuit of one kind is made of. Sizes and routes are those for which the tables stand published or computed. */
interface Pattern {
  readonly title: string;
  readonly kind: "ring" | "radial";
  readonly curve: "B" | "C";
  readonly rating: number;
  readonly cable: string;
  readonly line: number;
  readonly cpc: number;
  readonly route: string;
  readonly serves: string;
  /** Share of the rating the load takes. */
  readonly load: number;
  readonly least: number;
  readonly most: number;
  readonly rcd: boolean;
}

const singles = (line: number, cpc: number) => ({ cable: `singles 70 °C line ${line} mm² cpc ${cpc} mm²`, line, cpc });
const twin = (line: number, cpc: number) => ({ cable: `flat-twin line ${line} mm² cpc ${cpc} mm²`, line, cpc });

const patterns: readonly Pattern[] = [
  {
    title: "Sockets",
    kind: "ring",
    curve: "B",
    rating: 32,
    ...singles(2.5, 2.5),
    route: "conduit 25 mm method B",
    serves: "sockets",
    load: 0.7,
    least: 30,
    most: 70,
    rcd: true,
  },
  {
    title: "Sockets",
    kind: "ring",
    curve: "B",
    rating: 32,
    ...twin(2.5, 1.5),
    route: "clipped method C",
    serves: "sockets",
    load: 0.7,
    least: 25,
    most: 60,
    rcd: true,
  },
  {
    title: "Bench sockets",
    kind: "radial",
    curve: "B",
    rating: 20,
    ...singles(2.5, 2.5),
    route: "conduit 20 mm method B",
    serves: "sockets",
    load: 0.6,
    least: 6,
    most: 30,
    rcd: true,
  },
  {
    title: "Lighting",
    kind: "radial",
    curve: "B",
    rating: 6,
    ...twin(1.5, 1),
    route: "clipped method C",
    serves: "lighting",
    load: 0.5,
    least: 8,
    most: 35,
    rcd: false,
  },
  {
    title: "Lighting",
    kind: "radial",
    curve: "B",
    rating: 6,
    ...singles(1.5, 1.5),
    route: "conduit 20 mm method B grouped 2",
    serves: "lighting",
    load: 0.5,
    least: 8,
    most: 40,
    rcd: false,
  },
  {
    title: "Water heater",
    kind: "radial",
    curve: "B",
    rating: 16,
    ...singles(2.5, 2.5),
    route: "conduit 20 mm method B",
    serves: "water-heater",
    load: 0.8,
    least: 4,
    most: 25,
    rcd: false,
  },
  {
    title: "Oven",
    kind: "radial",
    curve: "B",
    rating: 32,
    ...singles(6, 6),
    route: "conduit 25 mm method B",
    serves: "cooker",
    load: 0.8,
    least: 4,
    most: 25,
    rcd: false,
  },
  {
    title: "Extractor",
    kind: "radial",
    curve: "C",
    rating: 10,
    ...singles(2.5, 2.5),
    route: "conduit 20 mm method B grouped 3",
    serves: "ventilation",
    load: 0.6,
    least: 4,
    most: 20,
    rcd: false,
  },
];

const edition = editionOf("BS 7671:2018+A2:2022");
const fixed = (value: number) => (Math.round(value * 100) / 100).toFixed(2);

/** A tested TN-S installation of as many ways as asked, on boards fed from the origin. */
export function generate({ ways, waysPerBoard = 24, seed = 1, mix = false }: Size): string {
  if (mix) return generateMixed({ ways, waysPerBoard, seed });
  const next = random(seed);
  const Ze = 0.12 + next() * 0.1;
  const lines = [
    ...opening(`Generated ${seed}`),
    "  supply {",
    "    earthing            TN-S",
    "    U0                  230 V",
    `    Ze                  ${fixed(Ze)} Ω`,
    `    Ipf                 ${fixed(((230 / Number(fixed(Ze))) * 1.1) / 1000)} kA`,
    ...atOrigin,
  ];
  let left = ways;
  for (let board = 1; left > 0; board++) {
    const count = Math.min(left, waysPerBoard);
    lines.push(...boardLines(board, count, Ze, next, inUse(ways)));
    left -= count;
  }
  lines.push("}", "");
  return lines.join("\n");
}

/** What of all circuits is in use at once, %: so much that the cut-out bears it. */
const inUse = (ways: number): string => String(Number(Math.min(100, 250 / ways).toPrecision(2)));

function boardLines(board: number, ways: number, Ze: number, next: () => number, share: string): string[] {
  const Zdb = Ze + 0.01 + next() * 0.03;
  const lines = [
    `  board D${board} "Board ${board}" {`,
    "    fed-from     supply",
    `    diversity    ${share} %`,
    "    main-switch  BS EN 60947-3 100 A",
    `    Zdb          ${fixed(Zdb)} Ω`,
    `    Ipf          ${fixed(((230 / Number(fixed(Zdb))) * 1.05) / 1000)} kA`,
    "    spd          fitted",
    "    polarity     ok",
  ];
  for (let way = 1; way <= ways; way++) lines.push(...wayLines(way, Number(fixed(Zdb)), next));
  lines.push("  }");
  return lines;
}

function wayLines(way: number, Zdb: number, next: () => number): string[] {
  const pattern = patterns[Math.floor(next() * patterns.length)] as Pattern;
  const metre = { line: perMetre(pattern.line), cpc: perMetre(pattern.cpc) };
  const length = Math.min(
    Math.round(pattern.least + next() * (pattern.most - pattern.least)),
    longest(pattern, Zdb, metre),
  );
  const ring = pattern.kind === "ring" ? ringOf(length, metre, next) : undefined;
  const R1R2 = ring ? ring.highest : length * (metre.line + metre.cpc);
  const device = pattern.rcd
    ? `BS EN 61009 ${pattern.curve}${pattern.rating} 6 kA 30 mA type A`
    : `BS EN 60898 ${pattern.curve}${pattern.rating} 6 kA`;
  const dead = [
    ...(ring?.tests ?? []),
    `        R1+R2       ${fixed(ring ? R1R2 : asRead(R1R2, length))} Ω`,
    `        insulation  500 V  L-N ${megohms(next)}  L-E ${megohms(next)}  N-E ${megohms(next)}`,
    "        polarity    ok",
  ];
  const live = [
    `        Zs           ${fixed(Number(fixed(Zdb)) + R1R2 + scatter(next))} Ω`,
    ...(pattern.rcd
      ? [`        rcd          30 mA 1x ${(17 + next() * 12).toFixed(1)} ms`, "        test-button  ok"]
      : []),
  ];
  return [
    `    way ${way} ${pattern.kind} "${pattern.title} ${way}" {`,
    `      device  ${device}`,
    `      cable   ${pattern.cable}`,
    `      route   ${pattern.route}`,
    ...(ring ? ring.runs : [`      length  ${length} m`]),
    `      serves  ${pattern.serves}`,
    `      Ib      ${(pattern.rating * pattern.load * (0.8 + next() * 0.2)).toFixed(1)} A`,
    "      dead 2026-03-04 with M1 {",
    ...dead,
    "      }",
    "      live 2026-03-05 with M1 {",
    ...live,
    "      }",
    "    }",
  ];
}

/** Two meters on two days: a hundredth or two either way, and never the sum to the last digit on every circuit. */
const scatter = (next: () => number): number => (next() < 0.5 ? -1 : 1) * (0.012 + next() * 0.01);

interface PerMetre {
  readonly line: number;
  readonly cpc: number;
}

/** The length at which a cold reading still stands well inside its limit. */
function longest(pattern: Pattern, Zdb: number, metre: PerMetre): number {
  if (!edition) throw new Error("the edition is not known");
  const limit = loopLimit({
    standard: "BS EN 60898",
    curve: pattern.curve,
    rating: pattern.rating,
    time: 0.4,
    U0: 230,
    edition,
  });
  const room = (limit?.value ?? 0) * 0.7 - Zdb;
  const share = pattern.kind === "ring" ? 4 : 1;
  return Math.floor((room * share) / (metre.line + metre.cpc));
}

const perMetre = (csa: number): number => resistancePerMetre(csa)?.value ?? Number.NaN;

function ringOf(
  length: number,
  metre: PerMetre,
  next: () => number,
): { runs: string[]; tests: string[]; highest: number } {
  const points = 4 + Math.floor(next() * 3);
  const legs = legsOf(length, points + 1, next);
  const r1 = length * metre.line;
  const r2 = length * metre.cpc;
  const spurFrom = 1 + Math.floor(next() * points);
  const spur = next() < 0.5 ? 2 + Math.floor(next() * 2) : 0;
  const run = legs.map((leg, index) => `${leg} m ${index === points ? "A" : `S${index + 1}`}`).join(" ");
  const tests: string[] = [`        ends        r1 ${fixed(r1)} Ω  rn ${fixed(r1)} Ω  r2 ${fixed(r2)} Ω`];
  let along = 0;
  let highest = 0;
  const at = (name: string, fraction: number, extra: number) => {
    const LN = (readingAt(r1, r1, fraction)?.value ?? 0) + extra * 2 * metre.line + (next() - 0.5) * 0.012;
    const LE = (readingAt(r1, r2, fraction)?.value ?? 0) + extra * (metre.line + metre.cpc) + (next() - 0.5) * 0.012;
    highest = Math.max(highest, Number(fixed(LE)));
    tests.push(`        at ${name}       L-N ${fixed(LN)} Ω  L-E ${fixed(LE)} Ω  polarity ok`);
  };
  for (let point = 1; point <= points; point++) {
    along += legs[point - 1] ?? 0;
    at(`S${point}`, along / length, 0);
    if (spur > 0 && point === spurFrom) at("X1", along / length, spur);
  }
  const runs = [`      run     A ${run}`, ...(spur > 0 ? [`      run     S${spurFrom} ${spur} m X1`] : [])];
  return { runs, tests, highest };
}

/** Whole metres that sum to the length, none of them short. */
function legsOf(length: number, count: number, next: () => number): number[] {
  const least = Math.max(2, Math.floor(length / count / 2));
  const legs = Array.from({ length: count }, () => least);
  for (let left = length - least * count; left > 0; left--) {
    const index = Math.floor(next() * count);
    legs[index] = (legs[index] ?? 0) + 1;
  }
  return legs;
}

const megohms = (next: () => number): string => (next() < 0.4 ? ">999 MΩ" : `${Math.round(220 + next() * 700)} MΩ`);
