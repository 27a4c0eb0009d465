import fc from "fast-check";
import type { Conductor } from "../../server/calc/circuit-network.ts";
import { type CircuitFault, type CircuitRuns, legEnd } from "../../server/calc/circuit-network.ts";
import type { BoardLinks } from "../../server/calc/circuit-readings.ts";
import { flat25, radialOf, ringOf } from "./helpers.ts";

const cables = [
  flat25,
  { line: 0.00741, neutral: 0.00741, cpc: 0.00741 },
  { line: 0.00461, neutral: 0.00461, cpc: 0.0121 },
  { line: 0.0121, neutral: 0.0121, cpc: 0.0181 },
  // Three phases: each line is read with the neutral and the protective conductor as one line of a single phase is.
  { line: 0.00308, neutral: 0.00461, cpc: 0.00741 },
  { line: 0.00115, neutral: 0.00183, cpc: 0.0031 },
];

/** Rings and radials of up to so many points, with up to three spurs or branches. */
export function anyCircuit(most = 9): fc.Arbitrary<CircuitRuns> {
  const decimetres = fc.integer({ min: 10, max: 150 });
  return fc
    .record({
      ring: fc.boolean(),
      perMetre: fc.constantFrom(...cables),
      gaps: fc.array(decimetres, { minLength: 3, maxLength: most }),
      spurs: fc.array(fc.tuple(fc.nat(), decimetres), { maxLength: 3 }),
    })
    .map(({ ring, perMetre, gaps, spurs }) => {
      const lengths = gaps.map((gap) => gap / 10);
      const along = lengths.map((_, at) => lengths.slice(0, at + 1).reduce((sum, gap) => sum + gap, 0));
      const names = ring ? along.slice(0, -1).map((_, at) => `s${at + 1}`) : lengths.map((_, at) => `p${at + 1}`);
      const drawn = spurs.map(([from, length], at) => {
        const known = [...names, ...spurs.slice(0, at).map((_, before) => `x${before}`)];
        return [known[from % known.length] ?? "", `x${at}`, length / 10] as const;
      });
      return ring ? ringOf(along.at(-1) ?? 0, along.slice(0, -1), drawn, perMetre) : radialOf(lengths, drawn, perMetre);
    });
}

interface Faulty {
  readonly circuit: CircuitRuns;
  readonly faults: readonly CircuitFault[];
  readonly links: BoardLinks;
  readonly pick: number;
}

/** A circuit with up to three faults of any kind, and legs joined rightly or wrongly. */
export function anyFaulty(): fc.Arbitrary<Faulty> {
  return anyCircuit().chain((circuit) =>
    fc.record({
      circuit: fc.constant(circuit),
      faults: fc.array(anyFault(circuit), { maxLength: 3 }),
      links: fc.constantFrom<BoardLinks[]>("opposite", "opposite", "opposite", "same-leg", "one", "last"),
      pick: fc.nat({ max: 10_000 }),
    }),
  );
}

function anyFault({ legs, places }: CircuitRuns): fc.Arbitrary<CircuitFault> {
  const conductor = fc.constantFrom<Conductor[]>("line", "neutral", "cpc");
  const leg = fc.nat({ max: legs.length - 1 });
  const place = fc.constantFrom(...places);
  const ohms = fc.integer({ min: 5, max: 200 }).map((hundredths) => hundredths / 100);
  const length = fc.integer({ min: 1, max: 20 });
  const onMain = legs.filter(({ main, to }) => main && to !== legEnd).map(({ to }) => to);
  const apart = fc.constantFrom({
    from: onMain[0] ?? "",
    to: onMain.at(-1) ?? "",
  });
  const pair = fc.constantFrom<(readonly [Conductor, Conductor])[]>(
    ["line", "neutral"],
    ["line", "cpc"],
    ["neutral", "cpc"],
  );
  return fc.oneof(
    fc.record({
      kind: fc.constant("open"),
      conductors: fc.tuple(conductor),
      leg,
    }),
    fc.record({ kind: fc.constant("joint"), conductor, leg, ohms }),
    fc.record({ kind: fc.constant("contact"), conductor, place, ohms }),
    fc.record({ kind: fc.constant("spur"), place, length }),
    fc.record({ kind: fc.constant("swapped"), pair, place }),
    fc.tuple(apart, length).map(([ends, metres]) => ({
      kind: "bridge" as const,
      ...ends,
      length: metres,
    })),
    fc.tuple(apart, ohms).map(([ends, value]) => ({
      kind: "metal" as const,
      ...ends,
      ohms: value,
    })),
  );
}
