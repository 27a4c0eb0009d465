import fc from "fast-check";
import { beforeAll, describe, expect, it } from "vitest";
import { letThroughAt, liveHeat } from "../../server/boards/energy.ts";
import { faultLevels, leastFaults, leastShort } from "../../server/boards/fault-levels.ts";
import { resistancePerMetre } from "../../server/calc/conductor-resistance.ts";
import { faultAlong, greatestAlong } from "../../server/calc/fault-path.ts";
import { harmonicNeed } from "../../server/calc/harmonics.ts";
import { tripTime } from "../../server/circuit/trip.ts";
import { startNgspice } from "../calc/ngspice.ts";
import { installationOf, nodeOf, wayOf } from "../helpers/place.ts";

const single = (Ipf: string, lengths: readonly [number, number]) => `wayfile 1
installation "Works" {
  standard BS 7671:2018+A2:2022
  supply {
    earthing TN-S
    Ze 0.25 Ω
    Ipf ${Ipf}
  }
  board A "Main" {
    fed-from supply
    way 1 feeder "Annexe" {
      device BS 88-2 63 A 80 kA gG
      feeds B
      cable armoured 70 °C line 16 mm² cpc 10 mm²
      length ${lengths[0]} m
    }
  }
  board B "Annexe" {
    fed-from A
    way 1 feeder "Shed" {
      device BS EN 60898 C32 6 kA
      feeds C
      cable armoured 70 °C line 6 mm² cpc 6 mm²
      length ${lengths[1]} m
    }
  }
  board C "Shed" {
    fed-from B
    way 1 radial "Kiln" {
      device BS EN 60898 B16 6 kA
      cable flat-twin line 2.5 mm² cpc 1.5 mm²
      length 12 m
    }
  }
}`;

const levelsAt = (text: string, board: string) => faultLevels(nodeOf(installationOf(text), board));

describe("fault levels", () => {
  // Prospective fault current calculation (course lesson): 230 V over 0.28, 0.35 and 0.20 Ω, to the nearest ampere.
  it.each([
    [0.28, 821],
    [0.35, 657],
    [0.2, 1150],
  ])("an earth fault through %f Ω: %i A", (Ze, amperes) => {
    const text = single("2 kA", [30, 20]).replace("Ze 0.25 Ω", `Ze ${Ze} Ω`);
    expect(Math.abs((levelsAt(text, "A")?.earth?.value ?? 0) - amperes)).toBeLessThanOrEqual(0.5);
  });

  it("are those recorded where they are recorded, and calculated from the nearest elsewhere", () => {
    const text = single("2 kA", [30, 20]);
    expect(levelsAt(text, "A")).toMatchObject({ recorded: true });
    expect(levelsAt(text, "A")?.greatest.value).toBeCloseTo(2000, 6);
    const recorded = text.replace("    fed-from A\n", "    fed-from A\n    Ipf 1.1 kA\n");
    expect(levelsAt(recorded, "B")).toMatchObject({ recorded: true });
    const C = levelsAt(recorded, "C");
    const ohms = 230 / 1100 + 2 * 20 * (resistancePerMetre(6)?.value ?? Number.NaN);
    expect(C?.neutral.value).toBeCloseTo(230 / ohms, 6);
    expect(C?.recorded).toBe(false);
  });

  it("take a three-phase figure for that of the lines, and the neutral like a line", () => {
    const text = single("4 kA", [30, 20]).replace("earthing TN-S", "earthing TN-S\n    phases three");
    const levels = levelsAt(text, "A");
    expect(levels?.three?.value).toBeCloseTo(4000, 6);
    expect(levels?.neutral.value).toBeCloseTo(2000, 6);
    const both = levelsAt(text.replace("Ipf 4 kA", "Ipf 4 kA\n    PSCC 2.2 kA"), "A");
    expect(both?.neutral.value).toBeCloseTo(2200, 6);
    expect(levelsAt(text, "B")?.three?.value).toBeCloseTo(230 / (230 / 4000 + 30 * 0.00115), 6);
  });

  it("are unknown without any record or with a feeder of no known length", () => {
    expect(levelsAt(single("2 kA", [30, 20]).replace("    Ipf 2 kA\n", ""), "B")).toBeUndefined();
    expect(levelsAt(single("2 kA", [30, 20]).replace("      length 20 m\n", ""), "C")).toBeUndefined();
  });

  it("at the end of a circuit are the smaller, hot and at the lowest voltage", () => {
    const node = nodeOf(installationOf(single("2 kA", [30, 20])), "C");
    const { neutral, earth } = leastFaults(node, wayOf(node, "1"));
    const perMetre = (csa: number) => resistancePerMetre(csa)?.value ?? Number.NaN;
    const hot = 1.2 * (2 * 30 * perMetre(16) + 2 * 20 * perMetre(6) + 2 * 12 * perMetre(2.5));
    expect(neutral?.value).toBeCloseTo((230 * 0.95) / (0.115 + hot), 6);
    const hotEarth =
      1.2 * (30 * (perMetre(16) + perMetre(10)) + 40 * perMetre(6) + 12 * (perMetre(2.5) + perMetre(1.5)));
    expect(earth?.value).toBeCloseTo((230 * 0.95) / (0.25 + hotEarth), 6);
  });
});

describe("against ngspice", () => {
  let ask: Awaited<ReturnType<typeof startNgspice>>;
  beforeAll(async () => {
    ask = await startNgspice();
  });

  it("a chain of boards lets flow what the simulator finds", async () => {
    const metres = fc.integer({ min: 1, max: 120 });
    await fc.assert(
      fc.asyncProperty(metres, metres, fc.integer({ min: 5, max: 60 }), async (first, second, hundreds) => {
        const text = single(`${hundreds / 10} kA`, [first, second]);
        const perMetre = (csa: number) => resistancePerMetre(csa)?.value ?? Number.NaN;
        const source = { from: "a", to: "l1", ohms: 230 / (hundreds * 100) };
        const run = (from: string, to: string, length: number, csa: number) => ({
          from,
          to,
          ohms: length * perMetre(csa),
        });
        const network = [
          source,
          run("l1", "l2", first, 16),
          run("l2", "l3", second, 6),
          run("n1", "n2", first, 16),
          run("n2", "n3", second, 6),
          { from: "l3", to: "n3", ohms: 0 },
        ];
        const impedance = await ask(network, "a", "n1");
        expect((levelsAt(text, "C")?.neutral.value ?? 0) / (230 / impedance)).toBeCloseTo(1, 6);
      }),
      { numRuns: 25 },
    );
  });
});

/** A ring of some legs with one spur from one of its points. */
const ringText = (legs: readonly number[], from: number, spur: number) => `wayfile 1
installation "Works" {
  standard BS 7671:2018+A2:2022
  supply {
    earthing TN-S
    Ze 0.25 Ω
    PSCC 1.8 kA
    Ipf 1.8 kA
  }
  board A "Main" {
    fed-from supply
    way 1 ring "Sockets" {
      device BS EN 60898 B32 6 kA
      cable flat-twin line 2.5 mm² cpc 1.5 mm²
      run A ${legs.map((metres, index) => `${metres} m ${index === legs.length - 1 ? "A" : `S${index + 1}`}`).join(" ")}
      run S${from} ${spur} m X1
    }
  }
}`;

describe("the far end of a ring against ngspice", () => {
  let ask: Awaited<ReturnType<typeof startNgspice>>;
  beforeAll(async () => {
    ask = await startNgspice();
  });

  it("least faults are never more than at any place, and those of the spur where it reads the most", async () => {
    const legs = fc.array(fc.integer({ min: 2, max: 20 }), { minLength: 3, maxLength: 6 });
    await fc.assert(
      fc.asyncProperty(legs, fc.nat(), fc.integer({ min: 1, max: 15 }), async (metres, at, spur) => {
        const from = 1 + (at % (metres.length - 1));
        const node = nodeOf(installationOf(ringText(metres, from, spur)), "A");
        const found = leastFaults(node, wayOf(node, "1"));
        const hot = (csa: number) => 1.2 * (resistancePerMetre(csa)?.value ?? Number.NaN);
        const conductor = (name: string, csa: number) => [
          ...metres.map((length, index) => ({
            from: index === 0 ? `${name}0` : `${name}${index}`,
            to: index === metres.length - 1 ? `${name}0` : `${name}${index + 1}`,
            ohms: length * hot(csa),
          })),
          { from: `${name}${from}`, to: `${name}x`, ohms: spur * hot(csa) },
        ];
        const places = [...metres.slice(1).map((_, index) => String(index + 1)), "x"];
        const impedance = async (other: string, csa: number, start: number): Promise<number[]> => {
          const line = conductor("l", 2.5);
          const back = conductor(other, csa);
          const source = { from: "s", to: "l0", ohms: start };
          const found: number[] = [];
          for (const place of places) {
            const joint = { from: `l${place}`, to: `${other}${place}`, ohms: 0 };
            found.push(await ask([source, ...line, ...back, joint], "s", `${other}0`));
          }
          return found;
        };
        const voltage = 230 * 0.95;
        const short = await impedance("n", 2.5, 230 / 1800);
        const earth = await impedance("e", 1.5, 0.25);
        for (const [value, all] of [
          [found.neutral?.value, short],
          [found.earth?.value, earth],
        ] as const) {
          const worst = Math.max(...all);
          expect(value ?? Number.NaN).toBeLessThanOrEqual((voltage / worst) * (1 + 1e-6));
          // Half way round there need not be a point: where a spur reads most, the two are one.
          if (
            all.at(-1) === worst &&
            value !== undefined &&
            value < (voltage / halfWay(metres, all === earth)) * (1 - 1e-6)
          ) {
            expect(value).toBeCloseTo(voltage / worst, 3);
          }
        }
      }),
      { numRuns: 12 },
    );
  });

  /** Ω to the middle of the ring, hot, with what lies before it. */
  function halfWay(metres: readonly number[], earth: boolean): number {
    const length = metres.reduce((sum, one) => sum + one, 0);
    const perMetre = (csa: number) => 1.2 * (resistancePerMetre(csa)?.value ?? Number.NaN);
    const start = earth ? 0.25 : 230 / 1800;
    return start + (length * (perMetre(2.5) + perMetre(earth ? 1.5 : 2.5))) / 4;
  }
});

describe("least faults of three lines", () => {
  const three = (cable: string) =>
    nodeOf(
      installationOf(`wayfile 1
installation "Works" {
  standard BS 7671:2018+A2:2022
  supply {
    earthing TN-S
    phases three
    Ze 0.1 Ω
    Ipf 6 kA
  }
  board A "Main" {
    fed-from supply
    way 1 radial "Motor" {
      device BS EN 60898 D20 10 kA
      phase three
      cable ${cable}
      length 40 m
    }
  }
}`),
      "A",
    );
  const perMetre = resistancePerMetre(4)?.value ?? Number.NaN;
  const voltage = 230 * 0.95;

  it("without a neutral are those between two lines", () => {
    const node = three("multicore 70 °C line 4 mm² cpc 4 mm² cores 4");
    const faults = leastFaults(node, wayOf(node, "1"));
    expect(faults.neutral).toBeUndefined();
    const ohms = 2 * (230 / 6000) + 2 * 1.2 * 40 * perMetre;
    expect(faults.lines?.value).toBeCloseTo((Math.sqrt(3) * voltage) / ohms, 6);
    expect(leastShort(faults)).toBe(faults.lines);
  });

  it("with a neutral are those to it", () => {
    const node = three("multicore 70 °C line 4 mm² cpc 4 mm² cores 5");
    const faults = leastFaults(node, wayOf(node, "1"));
    expect(faults.neutral?.value).toBeCloseTo(voltage / (2 * (230 / 6000) + 2 * 1.2 * 40 * perMetre), 6);
    expect(leastShort(faults)).toBe(faults.neutral);
  });
});

describe("properties of fault paths", () => {
  const ohms = fc.double({ min: 0.001, max: 2, noNaN: true });
  const at = (value: number) => ({ value, unit: "Ω", steps: [], source: { ref: "", standing: "quoted" } }) as const;
  it("a cable more never lets more flow, and the bound is never below the calculated current", () => {
    fc.assert(
      fc.property(ohms, ohms, ohms, (start, first, second) => {
        const cables = [{ name: "a", resistance: at(first) }];
        const path = { voltage: 230, start: at(start), cables };
        const longer = { ...path, cables: [...cables, { name: "b", resistance: at(second) }] };
        expect(faultAlong(longer).value).toBeLessThanOrEqual(faultAlong(path).value);
        expect(greatestAlong(path).value).toBeGreaterThanOrEqual(faultAlong(path).value);
      }),
    );
  });
});

describe("heat", () => {
  const way = (device: string, cable = "armoured 70 °C line 4 mm² cpc 4 mm²") => {
    const text = single("2 kA", [30, 20])
      .replace("BS EN 60898 B16 6 kA", device)
      .replace("flat-twin line 2.5 mm² cpc 1.5 mm²", cable);
    const node = nodeOf(installationOf(text), "C");
    return { node, study: wayOf(node, "1") };
  };

  it("a fuse takes its tabulated times at their currents, and less at more", () => {
    const { study } = way("BS 88-2 32 A 80 kA gG");
    const times = [130, 150, 180, 210].map((current) => tripTime(study, current)?.time.value ?? Number.NaN);
    expect(times).toEqual(times.toSorted((one, other) => other - one));
    for (const time of times) {
      expect(time).toBeLessThanOrEqual(5);
      expect(time).toBeGreaterThanOrEqual(0.4);
    }
    expect(tripTime(study, 5000)).toMatchObject({ atMost: true, time: { value: 0.4 } });
    // Too little to open it within the time the equation holds for.
    expect(tripTime(study, 60)).toBeUndefined();
  });

  it("a large fuse, of which only the slow end is kept, takes no longer than that", () => {
    const { study } = way("BS 88-2 100 A 80 kA gG");
    expect(tripTime(study, 2000)).toMatchObject({ atMost: true, time: { value: 5 } });
    expect(tripTime(study, 200)).toBeUndefined();
  });

  it("a breaker opens within a tenth of a second in its magnetic range, and below it is not judged", () => {
    const { study } = way("BS EN 60898 B16 6 kA");
    expect(tripTime(study, 80)).toMatchObject({ atMost: true, time: { value: 0.1 } });
    expect(tripTime(study, 79)).toBeUndefined();
  });

  it("of the least fault at the end and the time of that fault", () => {
    const { node, study } = way("BS EN 60898 B16 6 kA");
    const heat = liveHeat(node, study);
    const current = heat?.fault.value ?? Number.NaN;
    expect(heat?.need.value).toBeCloseTo((current * Math.sqrt(0.1)) / 115, 9);
  });

  it("is not judged by what little flows through an electrode", () => {
    const { node, study } = way("BS 88-2 16 A 80 kA gG");
    expect(liveHeat(node, study)?.fault.value).toBe(leastFaults(node, study).earth?.value);
    const text = single("2 kA", [30, 20]).replace("earthing TN-S", "earthing TT").replace("Ze 0.25 Ω", "Ze 84 Ω");
    const tt = nodeOf(installationOf(text), "C");
    expect(liveHeat(tt, wayOf(tt, "1"))?.fault.value).toBe(leastFaults(tt, wayOf(tt, "1")).neutral?.value);
  });

  it("a breaker lets through more at more, and at 10 kA what its class allows", () => {
    const { study } = way("BS EN 60898 B16 10 kA");
    const through = [1000, 3000, 6000, 10_000].map((fault) => letThroughAt(study, fault)?.energy.value ?? Number.NaN);
    expect(through).toEqual(through.toSorted((one, other) => one - other));
    // ElectriciansForums post: class 3, type B, 10 kA: 70 000 A²s.
    expect(through[3]).toBeCloseTo(70_000, 6);
    expect(letThroughAt(study, 12_000)).toBeUndefined();
    expect(letThroughAt(study, 5000)?.energy.source.standing).toBe("memory");
  });
});

it("third harmonics ask for no less cable the more there is of them, up to a third", () => {
  fc.assert(
    fc.property(
      fc.double({ min: 1, max: 400, noNaN: true }),
      fc.double({ min: 0, max: 0.33, noNaN: true }),
      (Ib, share) => {
        const { neutral, capacity } = harmonicNeed(Ib, share);
        expect(neutral.value).toBeCloseTo(3 * share * Ib, 9);
        expect(capacity.value).toBeGreaterThanOrEqual(Ib - 1e-9);
      },
    ),
  );
  expect(harmonicNeed(100, 0.3).capacity.value).toBeCloseTo(100 / 0.86, 9);
  expect(harmonicNeed(100, 0.4).capacity.value).toBeCloseTo(120 / 0.86, 9);
  expect(harmonicNeed(100, 0.5).capacity.value).toBeCloseTo(150, 9);
});
