import { describe, expect, it } from "vitest";
import type { Conductor } from "../../server/calc/circuit-network.ts";
import {
  boardLinks,
  type CircuitRuns,
  conductorNetwork,
  legEnd,
  nodeOf,
  pinOf,
} from "../../server/calc/circuit-network.ts";
import type { Resistor } from "../../server/calc/network.ts";
import { round } from "../../server/calc/result.ts";
import { type Sheet, usualAccuracy } from "../../server/diagnosis/sheet.ts";
import { asCrossed } from "../../server/diagnosis/two-rings.ts";
import { startNgspice } from "../calc/ngspice.ts";
import { find } from "../helpers/find.ts";
import { resistanceBetween } from "../helpers/resistance.ts";
import { findingsOf } from "../helpers/sample.ts";
import { measurementsOf, ringOf, written } from "./helpers.ts";

const ground = ringOf(60, [6, 14, 25, 37, 52]);
const first = ringOf(46, [9, 21, 30, 41], [["s2", "x1", 4]]);

/** Both rings as one network, with the last legs of some conductors in each other's terminals. */
function bothRings(crossed: readonly Conductor[]): Resistor[] {
  const of = (circuit: CircuitRuns, own: string, other: string) =>
    (["line", "neutral", "cpc"] as const).flatMap((conductor) => {
      const end = nodeOf(conductor, legEnd);
      const named = (node: string) => `${node === end && crossed.includes(conductor) ? other : own} ${node}`;
      return conductorNetwork(circuit, conductor).map(({ from, to, ohms }) => ({
        from: named(from),
        to: named(to),
        ohms,
      }));
    });
  return [...of(ground, "g", "f"), ...of(first, "f", "g")];
}

/** What is read of one of the two while the other lies beside it. */
function readingsOf(own: "g" | "f", crossed: readonly Conductor[], how = resistanceBetween) {
  const circuit = own === "g" ? ground : first;
  const network = bothRings(crossed);
  return measurementsOf(circuit).map(([name, measurement]) => {
    if (measurement.kind === "ends") {
      const [from, to] = ["board first leg", legEnd].map((end) => `${own} ${nodeOf(measurement.conductor, end)}`);
      return { name, measurement, ohms: how(network, from ?? "", to ?? "") };
    }
    if (measurement.kind !== "round") throw new Error("not of a ring");
    const links = boardLinks(circuit, measurement.other, "opposite").map(({ from, to, ohms }) => ({
      from: `${own} ${from}`,
      to: `${own} ${to}`,
      ohms,
    }));
    const pins = [pinOf("line", measurement.place), pinOf(measurement.other, measurement.place)];
    return {
      name,
      measurement,
      ohms: how([...network, ...links], `${own} ${pins[0]}`, `${own} ${pins[1]}`),
    };
  });
}

const sheetOf = (own: "g" | "f", crossed: readonly Conductor[]): Sheet => ({
  circuit: { ...(own === "g" ? ground : first), drawn: true, lengthKnown: true },
  readings: readingsOf(own, crossed).map(({ name, measurement, ohms }) => written(name, measurement, ohms)),
  accuracy: usualAccuracy,
});

const measured = await startNgspice();

describe("legs of two rings in each other's terminals", () => {
  it.each([[["line"]], [["neutral"]], [["cpc"]], [["line", "neutral", "cpc"]]] as const)(
    "both solved as one network read as crossed: %s",
    (crossed) => {
      for (const own of ["g", "f"] as const) {
        const found = asCrossed(sheetOf(own, crossed), crossed);
        // With all three crossed no point reads anything, so none can tell.
        expect(found.fits).toBe(crossed.length === 3 ? undefined : true);
        const length = own === "g" ? 60 : 46;
        for (const conductor of crossed)
          expect(found.ends[conductor]).toBeCloseTo(length * ground.perMetre[conductor], 1);
      }
    },
  );

  it("as ngspice reads both together", async () => {
    for (const own of ["g", "f"] as const) {
      const asked: [Resistor[], string, string][] = [];
      const values = readingsOf(own, ["line"], (...question) => {
        asked.push(question as [Resistor[], string, string]);
        return resistanceBetween(...question);
      });
      for (const [at, question] of asked.entries()) {
        const there = await measured(...question);
        const here = values[at]?.ohms ?? Number.NaN;
        if (Number.isFinite(there)) expect(Math.abs(here - there)).toBeLessThanOrEqual(1e-9 * there);
        else expect(here).toBe(there);
      }
    }
  });

  it("a break half way round does not look like it", () => {
    const sheet = sheetOf("g", ["line"]);
    expect(asCrossed(sheet, ["line"]).placed).toBe(true);
    const circuit = { ...ground, drawn: true, lengthKnown: true };
    const legs = ground.legs.map((leg, at) => (at === 2 ? { ...leg, to: "cut" } : leg));
    const broken = measurementsOf(ground).map(([name, measurement]) => {
      const network = (["line", "neutral", "cpc"] as const).flatMap((conductor) =>
        conductorNetwork(conductor === "line" ? { ...ground, legs } : ground, conductor),
      );
      if (measurement.kind === "ends")
        return written(
          name,
          measurement,
          resistanceBetween(
            network,
            nodeOf(measurement.conductor, "board first leg"),
            nodeOf(measurement.conductor, legEnd),
          ),
        );
      if (measurement.kind !== "round") throw new Error("not of a ring");
      const links = boardLinks(ground, measurement.other, "opposite");
      const ohms = resistanceBetween(
        [...network, ...links],
        pinOf("line", measurement.place),
        pinOf(measurement.other, measurement.place),
      );
      return written(name, measurement, ohms);
    });
    expect(asCrossed({ circuit, readings: broken, accuracy: usualAccuracy }, ["line"]).fits).toBe(false);
  });
});

/** The two rings on a board, as a schedule has them. */
function board(crossedG: readonly Conductor[], crossedF = crossedG): string {
  const way = (own: "g" | "f", id: number, crossed: readonly Conductor[]) => {
    const values = new Map(
      readingsOf(own, crossed).map(({ name, ohms }) => [
        name,
        Number.isFinite(ohms) ? `${round(ohms, 2).toFixed(2)} Ω` : ">99.9 Ω",
      ]),
    );
    const circuit = own === "g" ? ground : first;
    const at = circuit.places
      .map((place) => `at ${place} L-N ${values.get(`L-N at ${place}`)} L-E ${values.get(`L-E at ${place}`)}`)
      .join("\n        ");
    const run =
      own === "g"
        ? "run A 6 m s1 8 m s2 11 m s3 12 m s4 15 m s5 8 m A"
        : "run A 9 m s1 12 m s2 9 m s3 11 m s4 5 m A\n      run s2 4 m x1";
    return `    way ${id} ring "Sockets ${own}" {
      cable flat-twin line 2.5 mm² cpc 1.5 mm²
      ${run}
      dead 2026-03-04 {
        ends r1 ${values.get("r1")} rn ${values.get("rn")} r2 ${values.get("r2")}
        ${at}
      }
    }`;
  };
  return `wayfile 1
installation "Sample" {
  standard BS 7671:2018+A2:2022
  board A "Board" {
    fed-from supply
${way("g", 1, crossedG)}
${way("f", 2, crossedF)}
  }
}
`;
}

const said = (text: string) => findingsOf(text).filter(({ check }) => check === "ring/legs-swapped-between-rings");

describe("the check of a board", () => {
  it("names both rings, says that their points fit, and what to measure between them", () => {
    const [finding, ...more] = said(board(["line"]));
    expect(more).toEqual([]);
    expect(finding?.message).toMatch(/Ways 1 and 2 are open in the same conductors \(r1\)/);
    expect(finding?.message).toMatch(/readings at their points fit that, and no break further out/);
    const [next] = find("ring/legs-swapped-between-rings", board(["line"]))[0]?.related ?? [];
    expect(next?.message).toMatch(/line from each leg of way 1 to each of way 2\. .* about 0\.44 Ω and 0\.34 Ω/);
  });

  it("of a neutral, which reads the same wherever it is open, claims no more than the ends show", () => {
    const [finding] = said(board(["neutral"]));
    expect(finding?.message).toMatch(/legs interchanged/);
    expect(finding?.message).not.toMatch(/no break further out/);
  });

  it("is silent where the conductors are not the same, or one ring is whole", () => {
    expect(said(board(["line"], ["cpc"]))).toEqual([]);
    expect(said(board(["line"], []))).toEqual([]);
    expect(said(board([]))).toEqual([]);
  });
});
