import { describe, expect, it } from "vitest";
import { faultCurrent, impedanceOf } from "../../server/calc/fault-current.ts";
import { loopLimit } from "../../server/calc/loop-limit.ts";
import { adiabaticFactors } from "../../server/tables/adiabatic.ts";
import { capacity4D1A, capacity4D2A, capacity4D4A, capacity4D5 } from "../../server/tables/capacity-70.ts";
import { capacity4E1A, capacity4E4A } from "../../server/tables/capacity-90.ts";
import { conductorResistance } from "../../server/tables/conductors.ts";
import { breakingCapacities, energyClasses, tripBands } from "../../server/tables/devices.ts";
import { disconnectionScope, disconnectionTimes } from "../../server/tables/disconnection.ts";
import { diversityAllowances } from "../../server/tables/diversity.ts";
import { diversityShares } from "../../server/tables/diversity-shares.ts";
import { drop4D1B, drop4D2B, drop4E1B, flexibleCords } from "../../server/tables/drop.ts";
import { overloadRules } from "../../server/tables/factors.ts";
import { breakerLoop, loopTerms } from "../../server/tables/loop-breakers.ts";
import { fuseLoop5, fuseLoop04 } from "../../server/tables/loop-fuses.ts";
import { rcdTestRules, rcdTimes } from "../../server/tables/rcd.ts";
import { ringContinuity } from "../../server/tables/ring.ts";
import { supplyValues } from "../../server/tables/supply.ts";
import { known } from "../../server/tables/table.ts";
import { testPrecautions } from "../../server/tables/testing.ts";
import { recent } from "../calc/helpers.ts";

/** Tables that were printed apart from one another, and say of one thing the same by the physics behind both. */

const r20 = (csa: number, column: "copper2" | "copper5" = "copper2") =>
  known(conductorResistance, { csa }, column).value;
const rise = (celsius: number) => 1 + 0.004 * (celsius - 20);
const within = (value: number, of: number, share: number) => {
  expect(value / of).toBeGreaterThan(1 - share);
  expect(value / of).toBeLessThan(1 + share);
};

describe("voltage drop is the resistance of two conductors, or √3 of one, at operating temperature", () => {
  const times = { phase1: 2, phase3: Math.sqrt(3) } as const;

  // To 16 mm², where reactance counts for nothing; the tables print two figures, so 3 % is their rounding.
  it.each([
    [
      "4D1B",
      drop4D1B.rows.map(({ facts }) => ({ csa: facts.csa, phase1: facts.phase1AB, phase3: facts.phase3CF })),
      70,
    ],
    ["4D2B", drop4D2B.rows.map(({ facts }) => facts), 70],
    ["4D5", capacity4D5.rows.map(({ facts }) => ({ csa: facts.csa, phase1: facts.drop, phase3: null })), 70],
    ["4E1B", drop4E1B.rows.map(({ facts }) => facts), 90],
  ] as const)("Table %s to 16 mm²", (_, rows, celsius) => {
    const small = rows.filter(({ csa }) => csa <= 16);
    expect(small.length).toBeGreaterThanOrEqual(7);
    for (const row of small)
      for (const phases of ["phase1", "phase3"] as const) {
        const printed = row[phases];
        if (printed !== null) within(printed, times[phases] * r20(row.csa) * rise(celsius), 0.03);
      }
  });

  it("Table 4D1B for direct current in every size, and more with reactance", () => {
    for (const { facts } of drop4D1B.rows) {
      within(facts.dc, 2 * r20(facts.csa) * rise(70), 0.04);
      expect(facts.phase1CF).toBeGreaterThanOrEqual(facts.dc);
      expect(facts.phase1AB).toBeGreaterThanOrEqual(facts.phase1CF);
      expect(facts.phase3AB).toBeGreaterThanOrEqual(facts.phase3CF);
    }
  });

  it("Table 4F3B by fine wires at 60 °C", () => {
    for (const { facts } of flexibleCords.rows.filter(({ facts: { csa } }) => csa !== 1.25)) {
      within(facts.phase1, 2 * r20(facts.csa, "copper5") * rise(60), 0.05);
      within(facts.phase3 ?? 0, Math.sqrt(3) * r20(facts.csa, "copper5") * rise(60), 0.05);
    }
  });
});

describe("k is what heats a conductor from its working to its final temperature", () => {
  // IEC 60364-5-54, annex A: k = K × √ln(1 + (final − initial)/(β + initial)).
  const metals = {
    copper: { K: 226, beta: 234.5 },
    aluminium: { K: 148, beta: 228 },
    steel: { K: 78, beta: 202 },
    lead: { K: 41, beta: 230 },
  } as const;
  const k = (metal: keyof typeof metals, initial: number, final: number) => {
    const { K, beta } = metals[metal];
    return K * Math.sqrt(Math.log(1 + (final - initial) / (beta + initial)));
  };
  const working = { pvc70: 70, pvc70Large: 70, pvc90: 90, pvc90Large: 90, ts60: 60, ts90: 90 } as const;
  const final = { pvc70: 160, pvc70Large: 140, pvc90: 160, pvc90Large: 140, ts60: 200, ts90: 250 } as const;
  type Column = keyof typeof working;

  /** Temperatures before the fault, and where they differ at its end, by the case a row is for. */
  const temperatures = (table: string, name: string, column: Column): readonly [number, number] => {
    if (table === "54.2") return [30, final[column]];
    if (table === "54.4") return [working[column] - 10, 200];
    if (table === "54.5") return [column === "pvc70" ? 50 : 60, final[column]];
    return name === "mineral insulated, bare" ? [105, 250] : [working[column], final[column]];
  };

  const cells = adiabaticFactors.rows.flatMap(({ facts }) =>
    (Object.keys(working) as Column[]).flatMap((column) => {
      const value = facts[column];
      return value === null
        ? []
        : [[`Table ${facts.table}, ${facts.material}, ${column}: ${value}`, facts, column, value] as const];
    }),
  );

  it.each(cells)("%s", (_, facts, column, printed) => {
    const [initial, end] = temperatures(facts.table, facts.case, column);
    // The last figure may be cut instead of rounded.
    expect(Math.abs(printed - k(facts.material as keyof typeof metals, initial, end))).toBeLessThan(0.6);
  });

  it("is checked in every table", () => expect(cells.length).toBeGreaterThan(35));
});

describe("current-carrying capacity", () => {
  const better = (less: number | null, more: number | null) => {
    if (less !== null && more !== null) expect(less).toBeLessThanOrEqual(more);
  };

  it("is more the better a cable is cooled, and less with a third loaded conductor", () => {
    for (const { facts } of [...capacity4D1A.rows, ...capacity4E1A.rows, ...capacity4D2A.rows])
      for (const loaded of ["2", "3"] as const) {
        better(facts[`A${loaded}`], facts[`B${loaded}`]);
        better(facts[`B${loaded}`], facts[`C${loaded}`]);
      }
    for (const { facts } of capacity4D2A.rows) better(facts.C2, facts.E2);
    for (const { facts } of capacity4D5.rows) {
      for (const poor of ["m103", "m101"] as const) better(facts[poor], facts.m100);
      better(facts.m100, facts.C);
      better(facts.A, facts.C);
    }
    for (const { facts } of [...capacity4D4A.rows, ...capacity4E4A.rows])
      for (const method of ["C", "D", "E"] as const) better(facts[`${method}3`], facts[`${method}2`]);
  });

  it("is more for insulation that stands 90 °C, size by size", () => {
    const pairs = [
      [capacity4D1A, capacity4E1A, ["A2", "A3", "B2", "B3", "C2", "C3"]],
      [capacity4D4A, capacity4E4A, ["C2", "C3", "D2", "D3", "E2", "E3"]],
    ] as const;
    for (const [cooler, hotter, columns] of pairs)
      for (const { facts } of cooler.rows) {
        const twin = hotter.rows.find((row) => row.facts.csa === facts.csa)?.facts as unknown as Record<string, number>;
        for (const column of columns)
          better((facts as unknown as Record<string, number>)[column] ?? null, twin[column] ?? null);
      }
  });

  // Heat of the conductor, I²R a metre, over what the surface of a cable of that size sheds: no row steps far from its
  // neighbours, so a slipped digit shows.
  it("grows from size to size by no more than the metal does", () => {
    for (const table of [capacity4D1A, capacity4D2A, capacity4D5, capacity4D4A, capacity4E1A, capacity4E4A])
      for (const column of Object.keys(table.units).filter((name) => !["csa", "drop"].includes(name))) {
        const rows = table.rows.map(({ facts }) => facts as unknown as Record<string, number | null>);
        for (const [index, row] of rows.entries()) {
          const [csa, value, next] = [row.csa ?? 0, row[column], rows[index + 1]];
          const more = next?.[column];
          if (!next || typeof value !== "number" || typeof more !== "number") continue;
          const exponent = Math.log(more / value) / Math.log((next.csa ?? 0) / csa);
          expect(exponent).toBeGreaterThan(0.4);
          expect(exponent).toBeLessThan(0.9);
        }
      }
  });
});

describe("limits of loops and currents", () => {
  it("at its greatest loop every breaker gets the current that trips it, by the fault current formula", () => {
    for (const { facts } of breakerLoop.rows) {
      const limit = loopLimit({ standard: "BS EN 60898", time: 0.4, U0: 230, edition: recent, ...facts });
      expect(faultCurrent(230 * 0.95, limit?.exact ?? 0).value).toBeCloseTo(facts.Ia, 6);
      expect(impedanceOf(230 * 0.95, facts.Ia).value).toBeCloseTo(limit?.exact ?? 0, 9);
    }
  });

  it("a breaker's band ends where its loop is calculated from", () => {
    for (const key of ["B", "C", "D"] as const)
      expect(known(tripBands, { key }, "to").value).toBe(known(loopTerms, { key }, "value").value);
    expect(known(tripBands, { key: "trip" }, "from").value).toBe(
      known(overloadRules, { key: "breaker" }, "value").value,
    );
  });

  it("a fuse of a larger rating, or one given less time, never has the greater limit", () => {
    for (const { rows } of [fuseLoop04, fuseLoop5])
      for (const { facts } of rows)
        for (const { facts: larger } of rows.filter((row) => row.facts.standard === facts.standard))
          if (larger.rating > facts.rating && larger.zs !== null)
            expect(larger.zs).toBeLessThan(facts.zs ?? Number.NaN);
    for (const { facts } of fuseLoop04.rows) {
      const slow = fuseLoop5.rows.find(
        ({ facts: { standard, rating } }) => standard === facts.standard && rating === facts.rating,
      );
      if (facts.zs !== null) expect(slow?.facts.zs).toBeGreaterThan(facts.zs);
    }
  });

  it("times of final circuits are those of the table for 230 V", () => {
    for (const key of ["final-sockets", "final-fixed"] as const)
      for (const [system, column] of [
        ["TN", "tn"],
        ["TT", "tt"],
      ] as const)
        expect(known(disconnectionScope, { key }, column).value).toBe(
          known(disconnectionTimes, { system, over: 120 }, "ac").value,
        );
  });

  it("the test of an RCD is held against the time of its standard", () => {
    for (const key of ["general", "delayed"] as const)
      expect(known(rcdTestRules, { key }, "value").value).toBe(known(rcdTimes, { key }, "times1").value);
  });
});

describe("devices", () => {
  it("break no more in service than they are rated for", () => {
    const rows = breakingCapacities.rows.filter(({ facts }) => facts.ics !== null);
    expect(rows).toHaveLength(8);
    for (const { facts } of rows) expect(facts.ics).toBeLessThanOrEqual(facts.icn);
  });

  it("let through more of a larger fault, with a worse class, a slower type, a larger rating", () => {
    for (const { facts } of energyClasses.rows) {
      expect(facts.b16).toBeLessThan(facts.c16);
      expect(facts.b32).toBeLessThan(facts.c32);
      expect(facts.b16).toBeLessThan(facts.b32);
      expect(facts.c16).toBeLessThan(facts.c32);
      for (const { facts: other } of energyClasses.rows)
        if (other.class <= facts.class && other.icn >= facts.icn && other !== facts)
          for (const column of ["b16", "c16", "b32", "c32"] as const)
            expect(other[column]).toBeGreaterThan(facts[column]);
    }
  });
});

describe("words and numbers of one table", () => {
  it("diversity as it is printed and as it is calculated with", () => {
    const columns = { households: "household", smallShops: "shop", hotels: "hotel" } as const;
    let compared = 0;
    for (const { facts } of diversityAllowances.rows)
      for (const [printed, column] of Object.entries(columns)) {
        const shares = diversityShares.rows.find((row) => row.facts.key === facts.key && row.facts.column === column);
        const text = facts[printed as keyof typeof columns];
        const percents = [...text.matchAll(/(\d+) ?%/g)].map(([, number]) => Number(number) / 100);
        const amperes = [...text.matchAll(/(\d+) A\b/g)].map(([, number]) => Number(number));
        if (!shares || percents.length === 0) continue;
        compared++;
        const { full, largest, second, rest, socket } = shares.facts;
        expect(amperes).toEqual([full, socket].filter((value) => value > 0));
        // "100 % to 10 A" is the part in full. One share for all is printed once, one for Y and Z together once.
        const own = percents.slice(text.includes("to 10 A") ? 1 : 0);
        const [first, middle = first, last = middle] = own;
        expect([first, middle, last]).toEqual([largest, second, rest]);
      }
    expect(compared).toBeGreaterThan(10);
  });

  it("the tolerance of a supply in volts", () => {
    const high = 230 * (1 + known(supplyValues, { key: "tolerance-high" }, "value").value / 100);
    const low = 230 * (1 - known(supplyValues, { key: "tolerance-low" }, "value").value / 100);
    const text = String(supplyValues.rows.find(({ facts }) => facts.key === "tolerance")?.facts.value);
    expect(text).toContain(`(${low.toFixed(1)} V to ${high.toFixed(0)} V)`);
  });

  it("0.725 of a rewirable fuse is half of 1.45", () => {
    expect(known(overloadRules, { key: "semi-enclosed" }, "value").value).toBe(1.45 / 2);
  });

  it("what a ring's cable reads per metre is the table of resistances", () => {
    const printed = ringContinuity.rows.flatMap(({ facts }) => {
      const csa = /per metre, ([\d.]+) mm/.exec(facts.quantity)?.[1];
      return csa === undefined ? [] : [[Number(csa), Number(facts.expected)] as const];
    });
    expect(printed).toHaveLength(2);
    for (const [csa, milliohms] of printed) expect(milliohms).toBe(r20(csa));
  });
});

// HSE guidance note GS 38: no more than 4 mm of a tip is bare, 2 mm or less is better. Below 1 kV.
it("bare tips of probes are no longer than the safety guidance allows", () => {
  const { value, source } = known(testPrecautions, { key: "tips" }, "value");
  expect(value).toBe(4);
  expect(source.ref).not.toBe("");
});
