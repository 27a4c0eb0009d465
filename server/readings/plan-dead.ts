/** The dead tests of a circuit, in the order of the trade. */
import { type Calculated, ohms, step, worked } from "../calc/result.ts";
import { needsNoCpc } from "../circuit/circuit-kind.ts";
import { readingLimit } from "../circuit/disconnection.ts";
import type { WayStudy } from "../circuit/way.ts";
import type { Fact } from "../model/values.ts";
import { fromFormula } from "../tables/source.ts";
import { hasDead, latestDead } from "./dead.ts";
import { expectedCircuit } from "./expected.ts";
import { insulationLimit, insulationOf } from "./insulation.ts";
import { type Bound, bound, type Expected, expecting, type PlannedTest, recordedAs } from "./planned.ts";
import { polarityOf } from "./polarity.ts";
import { type Expectation, expectationAt, type Round, rounds, studyRing } from "./ring.ts";

/** What is expected is worked out when somebody asks for it: who compares a reading with its limit does not. */
export function planDead(study: WayStudy): PlannedTest[] {
  if (study.isSpare) return [];
  return [
    ...(study.isRing ? [...ringEnds(study), ...ringRounds(study)] : []),
    ...continuity(study),
    ...insulation(study),
    ...polarity(study),
  ];
}

/** What the loop limit leaves to R1+R2 once the board's own impedance is taken off. */
function roomForR1R2(study: WayStudy): Calculated | undefined {
  const { disconnection, boardImpedance } = study;
  if (!disconnection?.cold || !boardImpedance) return undefined;
  const { limit } = readingLimit(disconnection);
  if (boardImpedance.value >= limit.value) return undefined;
  const value = limit.value - boardImpedance.value;
  return worked(value, "Ω", fromFormula(limit.source), () => [
    step(`Zs limit − ${boardImpedance.name}`, `${ohms(limit.value)} − ${ohms(boardImpedance.value)}`, ""),
  ]);
}

/** What R1+R2 is compared with, at the far point and at any other. */
export function continuityBounds(study: WayStudy): Bound[] {
  const { disconnection } = study;
  return bound("most", roomForR1R2(study), "Ω", disconnection && readingLimit(disconnection).which);
}

/** R1+R2, or R2 alone where that is what was written. Of a ring it is the highest of the line-earth round. */
function continuity(study: WayStudy): PlannedTest[] {
  const isRead = hasDead(study, "R1+R2") || hasDead(study, "R2");
  if (study.cable?.cpcBy === "none" || (!isRead && needsNoCpc(study))) return [];
  const alone = !hasDead(study, "R1+R2") && hasDead(study, "R2");
  const fact = latestDead(study, alone ? "R2" : "R1+R2")?.fact;
  const points = alone || study.isRing ? [] : continuityPoints(study, fact);
  const far = points.length > 1 ? "the highest of them" : "the far point";
  const highest = study.isRing ? "the highest line to earth" : far;
  return [
    ...points,
    {
      step: study.isRing ? "ring-rounds" : "continuity",
      live: false,
      name: alone ? "R2, by a long lead" : `R1+R2, ${highest}`,
      unit: "Ω",
      get expected() {
        return alone ? undefined : expecting(expectedCircuit(study)?.R1R2, "Ω");
      },
      bounds: alone ? [] : continuityBounds(study),
      recorded: recordedAs(fact, "value"),
    },
  ];
}

/**
 * Of a circuit whose points are drawn, a line for each, so that a joint shows between one and the next. Once the highest
 * is written and no other was, nothing more is asked for.
 */
function continuityPoints(study: WayStudy, highest: Fact | undefined): PlannedTest[] {
  const read = pointFacts(study);
  if (highest && read.size === 0) return [];
  const circuit = expectedCircuit(study);
  const drawn = circuit?.network.drawn && circuit.points.length > 1 ? circuit.points.map(({ name }) => name) : [];
  const names = highest ? [...read.keys()] : [...new Set([...drawn, ...read.keys()])];
  const room = continuityBounds(study);
  return names.map((name): PlannedTest => {
    const point = circuit?.points.find((one) => one.name === name);
    const most = names.length > 1 && point !== undefined && point === circuit?.highest;
    return {
      step: "continuity",
      live: false,
      name: `R1+R2 at ${name}${most ? ", the highest" : ""}`,
      unit: "Ω",
      expected: expecting(point?.R1R2, "Ω"),
      bounds: room,
      recorded: recordedAs(read.get(name), "L-E"),
      place: name,
    };
  });
}

/** The latest line of each point with a reading to earth, in the order of the file. */
function pointFacts({ deadTests }: WayStudy): Map<string, Fact> {
  const found = new Map<string, Fact>();
  for (const { facts } of deadTests)
    for (const fact of facts.all("at"))
      if (fact.args["L-E"] && !found.has(fact.args.point.value)) found.set(fact.args.point.value, fact);
  return found;
}

const endNames = { r1: "r1, line", rn: "rn, neutral", r2: "r2, protective conductor" } as const;

function ringEnds(study: WayStudy): PlannedTest[] {
  const fact = latestDead(study, "ends")?.fact;
  return (["r1", "rn", "r2"] as const).map((name) => ({
    step: "ring-ends",
    live: false,
    name: endNames[name],
    unit: "Ω",
    get expected() {
      return expecting(expectedCircuit(study)?.ends?.[name], "Ω");
    },
    bounds: [],
    recorded: recordedAs(fact, name),
  }));
}

/** Points that are drawn or were read; where neither is so, one line stands for each. */
function pointsOf(study: WayStudy): string[] {
  const read = studyRing(study).points.map(({ name }) => name);
  const drawn = [...(study.runs?.places.keys() ?? [])];
  return [...new Set([...drawn, ...read])];
}

function ringRounds(study: WayStudy): PlannedTest[] {
  const facts = new Map<string, Fact>(studyRing(study).points.map(({ name, fact }) => [name, fact]));
  const points = pointsOf(study);
  return rounds.flatMap((round) =>
    (points.length > 0 ? points : [undefined]).map((point): PlannedTest => {
      const fact = point === undefined ? undefined : facts.get(point);
      return {
        step: "ring-rounds",
        live: false,
        name: `${round} at ${point ?? "every point"}`,
        unit: "Ω",
        get expected() {
          return roundExpected(study, point, round);
        },
        bounds: [],
        recorded: recordedAs(fact, round),
        point: point ?? "every point",
      };
    }),
  );
}

/** By the ends once they are read, as the trade works it; before that by lengths and sizes. */
function roundExpected(study: WayStudy, point: string | undefined, round: Round): Expected | undefined {
  const byEnds = point === undefined ? undefined : expectationAt(study, point, round);
  if (byEnds) return fromSpan(byEnds);
  const quarter = studyRing(study).quarter[round];
  if (quarter) return expecting(quarter, "Ω");
  const points = expectedCircuit(study)?.points ?? [];
  const found = points.find(({ name }) => name === point) ?? (points.length === 1 ? points[0] : undefined);
  return expecting(found?.[round], "Ω");
}

function fromSpan({ least, greatest, by }: Expectation): Expected | undefined {
  const middle = expecting(by, "Ω");
  if (!middle || ohms(least) === ohms(greatest)) return middle;
  return { ...middle, text: `${ohms(least).replace(" Ω", "")} to ${ohms(greatest)}` };
}

/** The conductors of a pair, whichever of three lines it was read on. */
export const plainPair = (pair: string): string => pair.replace(/L\d/g, "L");

function insulation(study: WayStudy): PlannedTest[] {
  const limit = insulationLimit(study);
  const test = insulationOf(study);
  const bounds = bound("least", limit?.minimum, "MΩ");
  const joined = test?.facts.some((fact) => fact.args.joined) ?? false;
  const wanted = [...(study.threePhase && !joined ? ["L-L"] : []), ...(joined ? ["L-E"] : ["L-N", "L-E", "N-E"])];
  const read = [...(test?.values ?? []), ...(test?.absent ?? [])];
  const shown = read.map(({ pair, fact }) => ({ pair, fact }));
  const missing = wanted.filter((pair) => !shown.some((one) => plainPair(one.pair) === pair));
  return [...shown, ...missing.map((pair) => ({ pair, fact: undefined }))].map(({ pair, fact }) => ({
    step: "insulation",
    live: false,
    name: joined && pair === "L-E" ? "L and N together to E" : pair,
    unit: "MΩ",
    bounds,
    recorded: recordedAs(fact, pair),
  }));
}

function polarity(study: WayStudy): PlannedTest[] {
  const stated = polarityOf(study);
  return [
    {
      step: "polarity",
      live: false,
      name: "Polarity at every point",
      unit: "",
      bounds: [],
      recorded: recordedAs(stated?.fact, stated?.name ?? "verdict"),
    },
  ];
}
