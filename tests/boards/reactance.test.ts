import fc from "fast-check";
import { beforeAll, describe, expect, it } from "vitest";
import { faultLevels } from "../../server/boards/fault-levels.ts";
import { longestByLoop } from "../../server/boards/greatest-length.ts";
import { resistancePerMetre } from "../../server/calc/conductor-resistance.ts";
import { faultAlong } from "../../server/calc/fault-path.ts";
import { reactancePerMetre, sideBySide } from "../../server/calc/reactance.ts";
import { millivoltsByParts } from "../../server/calc/voltage-drop.ts";
import { designBoardImpedance, designLoop } from "../../server/readings/loop.ts";
import { drop4E4B } from "../../server/tables/reactance.ts";
import { startPhasors } from "../calc/ngspice.ts";
import { installationOf, nodeOf, wayOf } from "../helpers/place.ts";

interface Works {
  readonly csa: number;
  readonly feeder: number;
  readonly circuit: number;
  /** Hundredths of an ohm, and kA. */
  readonly Ze: number;
  readonly Ipf: number;
}

const text = ({ csa, feeder, circuit, Ze, Ipf }: Works): string => `wayfile 1
installation "Works" {
  standard BS 7671:2018+A2:2022
  stage design
  supply {
    earthing TN-S
    phases three
    Ze ${Ze / 100} Ω
    Ipf ${Ipf} kA
  }
  board A "Main" {
    fed-from supply
    way 1 feeder "Shop" {
      phase three
      device BS 88-2 160 A 80 kA gG
      cable armoured 90 °C line ${csa} mm² cpc ${csa} mm² cores 5
      route tray
      length ${feeder} m
      feeds B
    }
  }
  board B "Shop" {
    fed-from A
    phases three
    way 1 radial "Press" {
      phase three
      device BS 88-2 63 A 80 kA gG
      cable armoured 90 °C line 50 mm² cpc 50 mm² cores 5
      route tray
      length ${circuit} m
      Ib 50 A
    }
  }
}`;

const works = fc.record<Works>({
  csa: fc.constantFrom(50, 70, 95, 120, 150, 185, 240),
  feeder: fc.integer({ min: 5, max: 200 }),
  circuit: fc.integer({ min: 5, max: 120 }),
  Ze: fc.integer({ min: 1, max: 40 }),
  Ipf: fc.integer({ min: 2, max: 30 }),
});

const perMetre = (csa: number, factor: number) => ({
  r: factor * (resistancePerMetre(csa)?.value ?? Number.NaN),
  x: reactancePerMetre(csa, "armoured")?.value ?? Number.NaN,
});

const omega = 2 * Math.PI * 50;

/** Ω that a simulator finds of resistances and inductances in series: one ampere through them. */
async function inSeries(
  ask: Awaited<ReturnType<typeof startPhasors>>,
  parts: readonly { readonly R: number; readonly X: number }[],
): Promise<number> {
  const lines = parts.flatMap(({ R, X }, at) => [
    `R${at} n${at} m${at} ${Math.max(R, 1e-12)}`,
    `L${at} m${at} ${at + 1 === parts.length ? "0" : `n${at + 1}`} ${Math.max(X, 1e-12) / omega}`,
  ]);
  const voltage = (await ask(["I0 0 n0 DC 0 AC 1", ...lines]))("n0");
  return Math.hypot(voltage.real, voltage.across);
}

describe("loops and fault currents of large cables", () => {
  let ask: Awaited<ReturnType<typeof startPhasors>>;
  beforeAll(async () => {
    ask = await startPhasors();
  });

  it("are those of a simulator where the supply has the angle of the cables, and never less than it finds at another", async () => {
    await fc.assert(
      fc.asyncProperty(works, async (one) => {
        const node = nodeOf(installationOf(text(one)), "B");
        const study = wayOf(node, "1");
        const [first, second] = [perMetre(one.csa, 1.28), perMetre(50, 1.28)];
        const cables = [
          { R: 2 * first.r * one.feeder, X: 2 * first.x * one.feeder },
          { R: 2 * second.r * one.circuit, X: 2 * second.x * one.circuit },
        ];
        const Ze = one.Ze / 100;
        const angle = Math.atan2(
          cables.reduce((sum, { X }) => sum + X, 0),
          cables.reduce((sum, { R }) => sum + R, 0),
        );
        const at = (phi: number) => inSeries(ask, [{ R: Ze * Math.cos(phi), X: Ze * Math.sin(phi) }, ...cables]);
        const found = designLoop(study)?.value ?? Number.NaN;
        expect(found).toBeCloseTo(await at(angle), 6);
        for (const phi of [0, Math.PI / 4, Math.PI / 2]) expect(await at(phi)).toBeLessThanOrEqual(found + 1e-9);
        expect(designBoardImpedance(node.context)?.value).toBeCloseTo(
          Ze + Math.hypot(cables[0]?.R ?? 0, cables[0]?.X ?? 0),
          9,
        );
      }),
      { numRuns: 15 },
    );
  });

  it("let a current flow between the two figures, whatever the angle of the supply", async () => {
    await fc.assert(
      fc.asyncProperty(works, fc.integer({ min: 0, max: 90 }), async (one, degrees) => {
        const levels = faultLevels(nodeOf(installationOf(text(one)), "B"));
        const { r, x } = perMetre(one.csa, 1);
        const Z = 230 / (one.Ipf * 1000);
        const phi = (degrees * Math.PI) / 180;
        const total = await inSeries(ask, [
          { R: Z * Math.cos(phi), X: Z * Math.sin(phi) },
          { R: r * one.feeder, X: x * one.feeder },
        ]);
        const flows = 230 / total;
        expect(levels?.three?.value).toBeLessThanOrEqual(flows * (1 + 1e-9));
        expect(levels?.bound.value).toBeGreaterThanOrEqual(flows * (1 - 1e-9));
      }),
      { numRuns: 25 },
    );
  });
});

describe("a reactance", () => {
  it("fits the impedance printed beside it: z² = r² + x²", () => {
    for (const { facts } of drop4E4B.rows) {
      const { csa, r1, x1, phase1, r3, x3, phase3 } = facts;
      // Printed to two or three digits. Of 120 mm² the page prints 0.38 for three cores, and that is marked.
      expect([csa, Math.abs(Math.hypot(r1, x1) - phase1) / phase1 < 0.035]).toEqual([csa, true]);
      expect([csa, Math.abs(Math.hypot(r3, x3) - phase3) / phase3 < (csa === 120 ? 0.05 : 0.035)]).toEqual([csa, true]);
      // Two conductors in the one column, √3 of one in the other.
      expect([csa, Math.abs(x1 / 2 - x3 / Math.sqrt(3)) < 0.004]).toEqual([csa, true]);
    }
  });

  it("counts above 35 mm² alone, and of singles more where they lie apart", () => {
    expect(reactancePerMetre(35, "armoured")).toBeUndefined();
    for (const csa of [50, 95, 240]) {
      const [apart, touching] = [reactancePerMetre(csa, "enclosed"), reactancePerMetre(csa, "touching")];
      expect(apart?.value).toBeGreaterThan(touching?.value ?? Number.NaN);
      expect(reactancePerMetre(csa, "armoured")?.value).toBeLessThan(touching?.value ?? Number.NaN);
    }
  });

  it("is added apart from the resistance, as in a distributor's published sum of a works supply", () => {
    // IET EngX, “Calculation of earth fault loop impedance”: R and X of each part; 0.030, 0.066 and 0.097 Ω at the boards.
    const of = (value: number) => ({ value, unit: "Ω", steps: [], source: { ref: "", standing: "printed" } }) as const;
    const parts = [
      [0.021, 0.022],
      [0.04, 0.004],
      [0.03, 0.008],
    ] as const;
    const loop = (count: number) => {
      const cables = parts.slice(0, count).map(([R, X]) => ({ name: "", resistance: of(R), reactance: of(X) }));
      return 230 / faultAlong({ voltage: 230, start: of(0), cables }).value;
    };
    expect(loop(1)).toBeCloseTo(0.03, 3);
    expect(loop(2)).toBeCloseTo(0.066, 3);
    expect(loop(3)).toBeCloseTo(0.097, 3);
  });

  it("makes the drop of a published example: 50 mm² singles, 152 A over 80 m at 0.87, conductors cooler than 90 °C", () => {
    // A cable engineering site's worked example of Appendix 4: Ct 0.92, r 0.86 and x 0.29 mV/A/m, 10.06 V.
    const volts = (millivoltsByParts(0.86, 0.29, 0.87, 0.92) * 152 * 80) / 1000;
    expect(Math.abs(volts - 10.06) / 10.06).toBeLessThan(0.01);
  });

  it("of two side by side is that of the parallel impedance", () => {
    // j1 beside j1 is j0.5; 1 beside j1 is 0.5 + j0.5.
    expect(sideBySide([0, 1], [0, 1])).toBeCloseTo(0.5);
    expect(sideBySide([1, 0], [0, 1])).toBeCloseTo(0.5);
  });
});

describe("the greatest length of a large cable", () => {
  it("is the one at which its loop comes to the limit", () => {
    fc.assert(
      fc.property(works, (one) => {
        const study = wayOf(nodeOf(installationOf(text(one)), "B"), "1");
        const longest = longestByLoop(study)?.value;
        const limit = study.disconnection?.limit.value;
        fc.pre(longest !== undefined && longest > 1 && longest <= 4000 && limit !== undefined);
        const there = wayOf(nodeOf(installationOf(text({ ...one, circuit: longest })), "B"), "1");
        expect(designLoop(there)?.value).toBeCloseTo(limit, 6);
      }),
      { numRuns: 40 },
    );
  });
});
