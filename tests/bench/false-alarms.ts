/**
 * How many findings a thousand sound installations raise. First the generated ones as they are; then boards of rings and
 * radials that are drawn point by point, every resistance read with a meter's errors: anywhere within ± (2 % + 0.02 Ω),
 * then two decimals. Run: node tests/bench/false-alarms.ts [installations] [first seed]
 */
import { type CircuitRuns, legEnd } from "../../server/calc/circuit-network.ts";
import { soundReading, standings } from "../../server/calc/sound-readings.ts";
import { limitOf, usualAccuracy } from "../../server/diagnosis/sheet.ts";
import type { Sources } from "../../server/workspace/gather.ts";
import { fileOfText } from "../../server/workspace/loaded-file.ts";
import { radialOf, ringOf } from "../diagnosis/helpers.ts";
import { generate } from "../helpers/generate.ts";
import { generateStanding, generateWorks } from "../helpers/generate-wide.ts";
import { random } from "../helpers/random.ts";
import { findingsOf } from "../helpers/sample.ts";

const count = Number(process.argv[2] ?? 1000);
/** Where the seeds begin: other installations each time another number is given. */
const fresh = Number(process.argv[3] ?? 0);
const next = random(7671 + fresh);
const between = (low: number, high: number): number => low + (high - low) * next();
const whole = (low: number, high: number): number => Math.floor(between(low, high + 1));

/** Cable is drawn in whole metres; what is laid is a little more or less. */
const laid = (circuit: CircuitRuns): CircuitRuns => {
  const by = between(0.92, 1.1);
  return { ...circuit, legs: circuit.legs.map((leg) => ({ ...leg, length: leg.length * by })) };
};

const read = (ohms: number): string =>
  `${Math.max(0.01, ohms + between(-1, 1) * limitOf(usualAccuracy, ohms)).toFixed(2)} Ω`;

const cables = [
  { text: "flat-twin line 2.5 mm² cpc 1.5 mm²", perMetre: { line: 0.00741, neutral: 0.00741, cpc: 0.0121 } },
  { text: "singles 70 °C line 2.5 mm² cpc 2.5 mm²", perMetre: { line: 0.00741, neutral: 0.00741, cpc: 0.00741 } },
];

function anyRing(perMetre: CircuitRuns["perMetre"]): CircuitRuns {
  const points = whole(4, 10);
  const gaps = Array.from({ length: points + 1 }, () => whole(2, 7));
  const along = gaps.map((_, at) => gaps.slice(0, at + 1).reduce((sum, gap) => sum + gap, 0));
  const spurs = next() < 0.4 ? [[`s${whole(1, points)}`, "x1", whole(1, 2)] as const] : [];
  return ringOf(along.at(-1) ?? 0, along.slice(0, -1), spurs, perMetre);
}

const anyRadial = (perMetre: CircuitRuns["perMetre"]): CircuitRuns =>
  radialOf(
    Array.from({ length: whole(2, 5) }, () => whole(2, 7)),
    [],
    perMetre,
  );

/** The runs as a schedule has them. */
function drawn({ legs }: CircuitRuns): string[] {
  const main = legs.filter((leg) => leg.main);
  const path = main.map(({ length, to }) => `${length} m ${to === legEnd ? "A" : to}`).join(" ");
  const branches = legs.filter((leg) => !leg.main).map(({ from, to, length }) => `run ${from} ${length} m ${to}`);
  return [`run A ${path}`, ...branches];
}

function way(id: number): string[] {
  const { text, perMetre } = cables[whole(0, 1)] as (typeof cables)[number];
  const ring = next() < 0.5;
  const circuit = ring ? anyRing(perMetre) : anyRadial(perMetre);
  const actual = laid(circuit);
  const places = standings(actual);
  const value = (measurement: Parameters<typeof soundReading>[2]) => soundReading(actual, places, measurement);
  const round = (other: "neutral" | "cpc", place: string) => read(value({ kind: "round", other, place }));
  const toEarth = circuit.places.map((place) => [place, round("cpc", place)] as const);
  const highest = toEarth.map(([, ohms]) => Number.parseFloat(ohms)).sort((one, other) => other - one)[0] ?? 0;
  const ends = (["line", "neutral", "cpc"] as const).map((conductor) => read(value({ kind: "ends", conductor })));
  const at = toEarth.map(([place, LE]) => `at ${place} ${ring ? `L-N ${round("neutral", place)} ` : ""}L-E ${LE}`);
  return [
    `way ${id} ${ring ? "ring" : "radial"} "Sockets ${id}" {`,
    `  cable ${text}`,
    ...drawn(circuit),
    "  serves sockets",
    "  dead 2026-03-04 {",
    ...(ring ? [`    ends r1 ${ends[0]} rn ${ends[1]} r2 ${ends[2]}`] : []),
    ...at,
    `    R1+R2 ${highest.toFixed(2)} Ω`,
    "  }",
    "}",
  ];
}

function board(): string {
  const ways = Array.from({ length: whole(1, 8) }, (_, at) => way(at + 1));
  return [
    "wayfile 1",
    'installation "Sound" {',
    "  standard BS 7671:2018+A2:2022",
    "  stage design",
    '  board A "Board" {',
    "    fed-from supply",
    ...ways.flat(),
    "  }",
    "}",
    "",
  ].join("\n");
}

/** Checks of what is read, which is what this is about; what a bare schedule does not say is another matter. */
const ofReadings = /^(diagnosis|continuity|ring|drift|loop|insulation|polarity|rcd|live)\//;

interface Schedule {
  readonly text: string;
  /** A board in a file of its own. */
  readonly island?: string | undefined;
}

function sources({ island }: Schedule): Sources {
  return {
    file: (path) => (path === "hut.ways" && island ? fileOfText(path, island) : { failure: "there is no such file." }),
    resolve: (_, use) => use,
  };
}

function run(title: string, schedules: Iterable<Schedule>, isAsked: (check: string) => boolean): void {
  const found = new Map<string, number>();
  let [installations, raising] = [0, 0];
  for (const schedule of schedules) {
    installations++;
    const findings = findingsOf(schedule.text, sources(schedule)).filter(({ check }) => isAsked(check));
    if (findings.length > 0) raising++;
    for (const { check } of findings) found.set(check, (found.get(check) ?? 0) + 1);
  }
  const sum = [...found.values()].reduce((total, one) => total + one, 0);
  console.log(`${title}: ${installations} sound installations, ${sum} findings in ${raising} of them`);
  for (const [check, times] of [...found].sort(([, one], [, other]) => other - one)) console.log(`  ${check} ${times}`);
}

function* generated(mix: boolean, of: number): Generator<Schedule> {
  for (let seed = 1; seed <= of; seed++)
    yield { text: generate({ ways: 1 + (seed % 24), waysPerBoard: 12, seed: seed + fresh, mix }) };
}

function* noisy(): Generator<Schedule> {
  for (let at = 0; at < count; at++) yield { text: board() };
}

function* standing(): Generator<Schedule> {
  for (let seed = 1; seed <= count; seed++) yield { text: generateStanding(seed + fresh) };
}

function* works(): Generator<Schedule> {
  for (let seed = 1; seed <= count; seed++) yield generateWorks(seed + fresh);
}

run("plain", generated(false, Math.ceil(count / 2)), () => true);
run("mixed", generated(true, Math.floor(count / 2)), () => true);
run("read with a meter's errors, points drawn", noisy(), (check) => ofReadings.test(check));
// A test that was left out is listed, which is no alarm.
run(
  "in service, old devices, tested twice",
  standing(),
  (check) => check !== "record/limitations" && check !== "record/edition-unverified",
);
run("three-phase works with a TT island", works(), () => true);
