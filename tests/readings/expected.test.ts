import { describe, expect, it } from "vitest";
import { studyWay, type WayStudy } from "../../server/circuit/way.ts";
import { installationsOf } from "../../server/model/installation.ts";
import { circuitOf } from "../../server/readings/circuit-network.ts";
import { coldBoardImpedance, expectedCircuit } from "../../server/readings/expected.ts";
import { fileOfText } from "../../server/workspace/loaded-file.ts";
import { readingOf } from "../helpers/reading.ts";
import { inSetting } from "../helpers/sample.ts";
import { electrode, feeder } from "../reports/samples.ts";

function studyOf(lines: string): WayStudy {
  const [installation] = installationsOf([fileOfText("sample.ways", inSetting(lines).text)]);
  const place = installation?.boards[0];
  const way = place?.board.ways[0];
  if (!place || !way) throw new Error("The sample has no way.");
  return studyWay(way, place.context);
}

const ring = (body: string) =>
  studyOf(`way 1 ring "Sockets" {
  cable flat-twin line 2.5 mm² cpc 1.5 mm²
  ${body}
}`);

const drawn = ring("run A 5 m S1 10 m S2 10 m S3 10 m S4 10 m S5 10 m S6 5 m A\n  run S3 5 m X1\n  run X1 5 m X2");
const point = (study: WayStudy, name: string) => expectedCircuit(study)?.points.find((one) => one.name === name);

describe("what a drawn ring should read", () => {
  it("end to end by length and size", () => {
    const ends = expectedCircuit(drawn)?.ends;
    expect(ends?.r1?.value).toBeCloseTo(60 * 0.00741, 9);
    expect(ends?.rn?.value).toBeCloseTo(60 * 0.00741, 9);
    expect(ends?.r2?.value).toBeCloseTo(60 * 0.0121, 9);
  });

  it("at every point as the network does, in both rounds and spurs included", () => {
    const expected = expectedCircuit(drawn);
    const network = circuitOf(drawn, [], undefined);
    expect(expected?.points.map(({ name }) => name)).toEqual(["S1", "S2", "S3", "S4", "S5", "S6", "X1", "X2"]);
    for (const one of expected?.points ?? []) {
      if (!network) throw new Error("no network");
      const read = (other: "neutral" | "cpc", links?: "same-leg") =>
        readingOf(network, { kind: "round", other, place: one.name }, [], links);
      expect(one["L-N"]?.value).toBeCloseTo(read("neutral"), 9);
      expect(one["L-E"]?.value).toBeCloseTo(read("cpc"), 9);
      // In service both legs carry a fault in parallel, as when line and protective conductor are joined leg by leg.
      expect(one.R1R2?.value).toBeCloseTo(read("cpc", "same-leg"), 9);
    }
  });

  it("to two decimals, as a meter shows it: 0.22 on the ring, 0.30 and 0.37 on the spurs", () => {
    const shown = (name: string) => [
      point(drawn, name)?.["L-N"]?.value.toFixed(2),
      point(drawn, name)?.["L-E"]?.value.toFixed(2),
    ];
    expect(shown("S1")).toEqual(["0.22", "0.28"]);
    expect(shown("S3")).toEqual(["0.22", "0.29"]);
    expect(shown("X1")).toEqual(["0.30", "0.39"]);
    expect(shown("X2")).toEqual(["0.37", "0.49"]);
  });

  it("R1+R2 is the highest of the points, and Zs adds the board's own", () => {
    expect(expectedCircuit(drawn)?.R1R2?.value).toBe(point(drawn, "X2")?.["L-E"]?.value);
    const far = point(drawn, "X2");
    expect(far?.Zs?.value).toBeCloseTo(0.3 + (far?.R1R2?.value ?? 0), 9);
    expect(far?.Zs?.steps.length).toBeGreaterThan(1);
  });
});

/** Figures of published exercises, through a schedule. */
describe("published examples", () => {
  it("75 m of ring in 2.5 mm²: 0.56 Ω end to end", () => {
    const ends = expectedCircuit(ring("length 75 m"))?.ends;
    expect(ends?.r1?.value.toFixed(2)).toBe("0.56");
    expect(ends?.rn?.value.toFixed(2)).toBe("0.56");
  });

  it.each([
    ["22 m of 2.5/1.5 mm²", "length 22 m", "line 2.5 mm² cpc 1.5 mm²", 3, "0.429"],
    ["25 m of 2.5/2.5 mm²", "length 25 m", "line 2.5 mm² cpc 2.5 mm²", 2, "0.37"],
    ["the same drawn point by point", "run A 9 m P1 7 m P2 9 m P3", "line 2.5 mm² cpc 2.5 mm²", 2, "0.37"],
  ])("%s", (_, length, cable, decimals, published) => {
    const study = studyOf(`way 1 radial "Sockets" {\n  cable flat-twin ${cable}\n  ${length}\n}`);
    expect(expectedCircuit(study)?.R1R2?.value.toFixed(decimals)).toBe(published);
  });
});

describe("what else is known of a circuit", () => {
  it("with a length alone the trade's arithmetic stands in, and says so", () => {
    const bare = expectedCircuit(ring("length 60 m\n  points 6"));
    expect(bare?.R1R2?.value).toBeCloseTo((60 * (0.00741 + 0.0121)) / 4, 9);
    expect(bare?.note).toMatch(/from the length alone/);
    expect(expectedCircuit(drawn)?.note).toBeUndefined();
  });

  it("a radial with a branch reads by the way to each point", () => {
    const radial = studyOf(`way 2 radial "Heaters" {
  cable flat-twin line 2.5 mm² cpc 1.5 mm²
  run A 10 m P1 8 m P2
  run P1 4 m X1
}`);
    const metre = 0.00741 + 0.0121;
    expect(point(radial, "P2")?.["L-E"]?.value).toBeCloseTo(18 * metre, 9);
    expect(point(radial, "X1")?.["L-E"]?.value).toBeCloseTo(14 * metre, 9);
    expect(point(radial, "X1")?.["L-N"]?.value).toBeCloseTo(14 * 2 * 0.00741, 9);
    const steps = point(radial, "X1")?.["L-E"]?.steps ?? [];
    expect(steps.flatMap((one) => ("numbers" in one ? [one.numbers] : []))).toEqual(["14 m × (7.41 mΩ + 12.1 mΩ)/m"]);
    expect(expectedCircuit(radial)?.highest?.name).toBe("P2");
    expect(expectedCircuit(radial)?.R1R2?.value).toBeCloseTo(18 * metre, 9);
  });

  it("three phases: each line with the protective conductor, and the neutral by its own size", () => {
    const motor = studyOf(`way 3 radial "Saws" {
  phase three
  cable singles 70 °C line 6 mm² neutral 4 mm² cpc 2.5 mm²
  run A 12 m P1 9 m P2
}`);
    expect(point(motor, "P2")?.R1R2?.value).toBeCloseTo(21 * (0.00308 + 0.00741), 9);
    expect(point(motor, "P2")?.["L-N"]?.value).toBeCloseTo(21 * (0.00308 + 0.00461), 9);
    expect(point(motor, "P1")?.Zs?.value).toBeCloseTo(0.3 + 12 * (0.00308 + 0.00741), 9);
  });

  it("spurs that are counted and not drawn are spoken of where the length stands in", () => {
    expect(expectedCircuit(ring("length 60 m\n  spurs 2"))?.note).toMatch(/end of a spur reads more/);
  });

  it("behind a feeder, before the board's own impedance is read: from the origin along the feeder", () => {
    const [installation] = installationsOf([fileOfText("sample.ways", feeder)]);
    const place = installation?.boards.find(({ board }) => board.head.name === "B");
    const way = place?.board.ways[0];
    if (!place || !way) throw new Error("The sample has no way.");
    const [far] = expectedCircuit(studyWay(way, place.context))?.points ?? [];
    expect(far?.Zs?.value).toBeCloseTo(0.21 + 30 * 2 * 0.00115 + 14 * 2 * 0.00461, 9);
  });

  it("in TT, with the electrode's resistance", () => {
    const [installation] = installationsOf([fileOfText("sample.ways", electrode)]);
    const place = installation?.boards[0];
    const way = place?.board.ways.find(({ kind }) => kind === "radial");
    if (!place || !way) throw new Error("The sample has no way.");
    const circuit = expectedCircuit(studyWay(way, place.context));
    const R1R2 = circuit?.farthest?.R1R2?.value ?? Number.NaN;
    expect(circuit?.farthest?.Zs?.value).toBeCloseTo((coldBoardImpedance(place.context)?.value ?? 0) + R1R2, 9);
    expect(circuit?.farthest?.Zs?.value).toBeGreaterThan(20);
  });

  it("at the temperature of the test", () => {
    const warm = ring("length 60 m\n  dead 2026-03-04 {\n    temperature 30 °C\n  }");
    expect(expectedCircuit(warm)?.ends.r1?.value).toBeCloseTo(60 * 0.00741 * 1.04, 9);
  });

  it("nothing is expected of a cable without sizes, or of runs that do not hang together", () => {
    expect(expectedCircuit(studyOf('way 3 ring "Sockets" {\n  length 40 m\n}'))).toBeUndefined();
    expect(expectedCircuit(ring("run A 5 m S1 10 m S2"))).toBeUndefined();
    expect(expectedCircuit(ring("run A 5 m S1 5 m A\n  run Q9 4 m X1"))).toBeUndefined();
  });
});

describe("a circuit as a network", () => {
  const twin = "cable flat-twin line 2.5 mm² cpc 1.5 mm²";
  const shape = (kind: string, lines: string, read: readonly string[] = []) => {
    const found = circuitOf(studyOf(`way 1 ${kind} "Circuit" {\n${lines}\n}`), read, undefined);
    return found?.legs.map(({ from, to, length }) => `${from} ${length} ${to}`).join(", ");
  };
  const [start, end] = ["board first leg", "board last leg"];

  it.each([
    // Points that no run draws lie evenly; a length nobody stated is 60 m, of which only ratios are used.
    ["ring", `${twin}\nlength 60 m`, [], `${start} 30 the far point, the far point 30 ${end}`],
    ["ring", `${twin}\nlength 60 m`, ["S1", "S2", "S3"], `${start} 15 S1, S1 15 S2, S2 15 S3, S3 15 ${end}`],
    ["ring", twin, ["S1"], `${start} 30 S1, S1 30 ${end}`],
    ["radial", `${twin}\nlength 20 m`, [], `${start} 20 the far point`],
    ["radial", `${twin}\nlength 20 m`, ["S1"], `${start} 20 S1`],
    ["radial", `${twin}\nlength 20 m`, ["S1", "S2"], undefined],
    ["radial", twin, [], undefined],
    // As they are drawn; one that was read and not drawn hangs half way round, and of a radial it may be anywhere.
    ["ring", `${twin}\nrun A 5 m S1 9 m S2 6 m A`, [], `${start} 5 S1, S1 9 S2, S2 6 ${end}`],
    ["ring", `${twin}\nrun A 5 m S1 6 m S2 9 m A`, ["S3"], `${start} 5 S1, S1 6 S2, S2 9 ${end}, S2 0 S3`],
    ["radial", `${twin}\nrun A 5 m S1 9 m S2`, ["S2"], `${start} 5 S1, S1 9 S2`],
    ["radial", `${twin}\nrun A 5 m S1 9 m S2`, ["S3"], undefined],
    // What does not hang together, or is half written, is no network; nor is a cable of no known size.
    ["ring", `${twin}\nrun A 5 m S1 9 m S2`, [], undefined],
    ["radial", `${twin}\nrun A 5 m S1 9 m A`, [], undefined],
    ["ring", `${twin}\nrun A 5 m S1 9 m A\nrun S7 2 m S8`, [], undefined],
    ["ring", `${twin}\nrun A 5 m S1 9 m S2 5 m A\nrun S1 2 m S2`, [], undefined],
    ["ring", `${twin}\nrun A 5 m S1 9 m A\nrun S1 2`, [], undefined],
    ["radial", `${twin}\nlength 20 m\nlength`, [], undefined],
    ["radial", "length 20 m", [], undefined],
    ["radial", "cable singles line 2.5 mm² neutral 2.7 mm² cpc 2.5 mm²\nlength 20 m", [], undefined],
    ["radial", "cable singles line 2.7 mm² neutral 2.5 mm² cpc 2.5 mm²\nlength 20 m", [], undefined],
    ["radial", "cable flat-twin line 2.7 mm² cpc 1.5 mm²\nlength 20 m", [], undefined],
  ] as const)("%s: %j, read at %j", (kind, lines, read, wanted) => expect(shape(kind, lines, read)).toBe(wanted));

  it("has its protective conductor as its line where nothing is known of it", () => {
    const network = circuitOf(
      studyOf('way 1 radial "Circuit" {\ncable flat-twin line 2.5 mm²\nlength 20 m\n}'),
      [],
      20,
    );
    expect(network?.perMetre).toEqual({ line: 0.00741, neutral: 0.00741, cpc: 0.00741 });
    expect(network?.sources.cpc).toBeUndefined();
  });
});
