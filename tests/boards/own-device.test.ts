/** Limits and points of curves that a person copied from a book of their own: they go before the tables, and condemn. */
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { tripTime } from "../../server/circuit/trip.ts";
import { installationOf, nodeOf, wayOf } from "../helpers/place.ts";
import { findingsOf } from "../helpers/sample.ts";

const plant = (figures: readonly string[], device: string, { length = 40, standard = "BS 7671:2018+A2:2022" } = {}) =>
  `wayfile 1
${figures.join("\n")}
installation "Plant" {
  standard ${standard}
  stage design
  supply {
    earthing TN-S
    Ze 0.20 Ω
    Ipf 1.2 kA
  }
  board A "Main" {
    fed-from supply
    way 1 radial "Press" {
      device ${device}
      cable singles line 16 mm² cpc 16 mm²
      route conduit method B
      length ${length} m
      serves appliance
      Ib 20 A
    }
  }
}`;

const by = 'by "Own copy, Table 41.4"';
const study = (text: string) => wayOf(nodeOf(installationOf(text), "A"), "1");
const checks = (text: string) => findingsOf(text).map(({ check, severity }) => `${severity} ${check}`);

describe("a limit of Zs from a book of one's own", () => {
  it("judges a device that no table here knows, and condemns like a printed one", () => {
    const device = "BS EN 60947-2 50 A 36 kA";
    expect(checks(plant([], device))).toContain("information loop/limit-unknown");
    const known = plant([`device-figures BS EN 60947-2 50 A Zs 0.30 Ω within 5 s ${by}`], device);
    expect(checks(known)).not.toContain("information loop/limit-unknown");
    expect(study(known).overcurrentLimit?.value).toBe(0.3);
    expect(checks(known)).toContain("error loop/design-loop-over-limit");
    expect(study(known).overcurrentLimit?.source).toMatchObject({ ref: "As stated, “Own copy, Table 41.4”" });
  });

  it("goes before the table that is kept, and is for its own time, rating and kind", () => {
    const device = "BS 88-2 63 A 80 kA gG";
    const printed = study(plant([], device)).overcurrentLimit?.value ?? Number.NaN;
    const line = (kind: string, time = "5 s") => `device-figures ${kind} Zs 0.51 Ω within ${time} ${by}`;
    expect(study(plant([line("BS 88-2 63 A")], device)).overcurrentLimit?.value).toBe(0.51);
    for (const other of [line("BS 88-2 80 A"), line("BS 88-3 63 A"), line("BS 88-2 63 A", "0.4 s")])
      expect(study(plant([other], device)).overcurrentLimit?.value).toBe(printed);
  });

  it("is for the same family under another standard's number, and else for the one standard", () => {
    const line = (standard: string, of: string) => `device-figures ${standard} ${of} Zs 0.31 Ω within 0.4 s ${by}`;
    const breaker = (figures: readonly string[]) =>
      study(plant(figures, "BS EN 60898 C16 6 kA")).overcurrentLimit?.value;
    expect(breaker([line("BS EN 61009", "C16")])).toBe(0.31);
    expect(breaker([line("BS 3871", "C16")])).toBe(breaker([]));
    const other = (standard: string) =>
      study(plant([line(standard, "50 A").replace("0.4 s", "5 s")], "BS EN 60947-2 50 A 36 kA")).overcurrentLimit
        ?.value;
    expect(other("BS EN 60947-2")).toBe(0.31);
    expect(other("BS EN 60947-3")).toBeUndefined();
  });

  it("may come from a breaker's current instead: U0 × Cmin / Ia, by the edition", () => {
    const line = 'device-figures BS EN 60898 B32 opens 160 A within 0.4 s by "Maker, sheet 4"';
    expect(study(plant([line], "BS EN 60898 B32 6 kA")).overcurrentLimit?.value).toBe(1.37);
    const old = plant([line], "BS EN 60898 B32 6 kA", { standard: "BS 7671:2008" });
    expect(study(old).overcurrentLimit?.value).toBe(1.44);
  });
});

describe("points of a curve from a book of one's own", () => {
  const figures = [
    'device-figures BS 88-2 63 A opens 280 A within 5 s by "Maker"',
    'device-figures BS 88-2 63 A opens 450 A within 0.5 s by "Maker"',
    'device-figures BS 88-2 63 A opens 700 A within 0.1 s by "Maker"',
  ];
  // The table's own point for 0.4 s lies between them.
  const fuse = study(plant(figures, "BS 88-2 63 A 80 kA gG"));

  it("are met exactly, and between them the time falls with the current", () => {
    expect(tripTime(fuse, 280)?.time.value).toBeCloseTo(5, 9);
    expect(tripTime(fuse, 450)?.time.value).toBeCloseTo(0.5, 9);
    // A straight line where both scales are logarithms: half way along it both are geometric means.
    expect(tripTime(fuse, Math.sqrt(280 * 450))?.time.value).toBeCloseTo(Math.sqrt(5 * 0.5), 9);
    expect(tripTime(fuse, 700)).toMatchObject({ atMost: true });
    expect(tripTime(fuse, 250)).toBeUndefined();
    fc.assert(
      fc.property(fc.integer({ min: 280, max: 690 }), fc.integer({ min: 1, max: 200 }), (current, more) => {
        const [slow, quick] = [tripTime(fuse, current)?.time.value, tripTime(fuse, current + more)?.time.value];
        expect(quick).toBeLessThanOrEqual(slow ?? Number.NaN);
      }),
      { numRuns: 60 },
    );
  });

  it("go with the one that the tables keep where they lack it", () => {
    const one = study(
      plant(['device-figures BS 88-2 63 A opens 300 A within 5 s by "Maker"'], "BS 88-2 63 A 80 kA gG"),
    );
    expect(tripTime(one, 300)?.time.value).toBeCloseTo(5, 9);
    expect(tripTime(one, 299)).toBeUndefined();
    expect(tripTime(one, 2000)).toMatchObject({ atMost: true, time: { value: 0.4 } });
  });

  it("of one current tell nothing either", () => {
    const twice = [figures[0] ?? "", 'device-figures BS 88-2 63 A opens 280 A within 0.4 s by "Maker"'];
    expect(tripTime(study(plant(twice, "BS 88-2 63 A 80 kA gG")), 300)).toBeUndefined();
  });

  it("that are out of order tell nothing, and are found", () => {
    const wrong = [...figures.slice(0, 2), 'device-figures BS 88-2 63 A opens 300 A within 0.1 s by "Maker"'];
    expect(tripTime(study(plant(wrong, "BS 88-2 63 A 80 kA gG")), 460)).toBeUndefined();
    const table = [
      `device-figures BS 88-2 63 A Zs 0.78 Ω within 5 s ${by}`,
      `device-figures BS 88-2 80 A Zs 0.87 Ω within 5 s ${by}`,
    ];
    expect(checks(plant(table, "BS 88-2 63 A 80 kA gG"))).toContain("warning design/own-figures-disordered");
  });
});

describe("a factor from a book of one's own", () => {
  it("takes its share off the capacity, under its own name", () => {
    const text = plant([], "BS EN 60898 B50 6 kA");
    const before = study(text).capacity?.value.value ?? Number.NaN;
    const dry = text.replace("conduit method B", 'conduit method B factor 83 % by "Own copy, Table 4B3"');
    const found = study(dry).capacity?.value;
    expect(found?.value).toBeCloseTo(before * 0.83, 9);
    expect(found?.source.ref).toContain("As stated, “Own copy, Table 4B3”");
    const bunched = dry.replace("83 %", "40 %");
    expect(checks(bunched)).toContain("error design/device-over-capacity");
  });
});
