/** Cables whose figures no table here has, or that come from a person's own book: judged like any other. */
import { describe, expect, it } from "vitest";
import { designOfWay } from "../../server/boards/design.ts";
import { capacity4D2A } from "../../server/tables/capacity-70.ts";
import { capacity4E1A, capacity4E2A } from "../../server/tables/capacity-90.ts";
import { installationOf, nodeOf, wayOf } from "../helpers/place.ts";
import { findingsOf } from "../helpers/sample.ts";

const plant = (type: string, device = "BS EN 60898 B32 6 kA", route = "tray method E", length = 40) => `wayfile 1
installation "Plant" {
  standard BS 7671:2018+A2:2022
  stage design
  supply {
    earthing TN-S
    Ze 0.20 Ω
    Ipf 1.2 kA
  }
  cable-type fire ${type}
  board A "Main" {
    fed-from supply
    way 1 radial "Sprinkler pump" {
      device ${device}
      cable fire
      route ${route}
      length ${length} m
      serves appliance
      Ib 25 A
    }
  }
}`;

const mineral =
  'mineral line 4 mm² cpc 4 mm² carries 40 A drop 10 mV/A/m r1 4.61 mΩ/m r2 1.8 Ω/km by "Maker’s list 2025, page 12"';
const design = (text: string) => {
  const node = nodeOf(installationOf(text), "A");
  return designOfWay(node, wayOf(node, "1"));
};
const checks = (text: string) => findingsOf(text).map(({ check, severity }) => `${severity} ${check}`);
const value = (text: string, title: string) => design(text).find((line) => line.title.startsWith(title))?.value?.value;

describe("a cable with figures of its own", () => {
  it("has its capacity, drop and loop by them", () => {
    expect(value(plant(mineral), "Capacity of the cable")).toBe(40);
    // 10 mV × 25 A × 40 m = 10 V of 230 V.
    expect(value(plant(mineral), "Voltage drop")).toBeCloseTo((100 * 10) / 230, 2);
    // 0.20 + 40 m × (4.61 + 1.8) mΩ × 1.2, conductors of 70 °C.
    expect(value(plant(mineral), "Loop impedance")).toBeCloseTo(0.2 + 0.04 * 6.41 * 1.2, 3);
  });

  it("takes the factors of its route", () => {
    const grouped = plant(mineral, "BS EN 60898 B32 6 kA", "tray method E grouped 3");
    expect(value(grouped, "Capacity of the cable")).toBeLessThan(40 * 0.85);
  });

  it("condemns like a printed one, and names where it stands", () => {
    const found = findingsOf(plant(mineral, "BS EN 60898 B50 6 kA"));
    const over = found.find(({ check }) => check === "design/device-over-capacity");
    expect(over?.severity).toBe("error");
    expect(checks(plant(mineral))).not.toContain("error design/device-over-capacity");
    expect(design(plant(mineral)).some(({ source }) => source?.ref.includes("page 12"))).toBe(true);
    expect(checks(plant(mineral)).filter((one) => one.includes("capacity-not-calculated"))).toEqual([]);
  });
});

describe("90 °C multicore cable", () => {
  it("is between 70 °C multicore and 90 °C singles, and grows with its size", () => {
    for (const [at, { facts }] of capacity4E2A.rows.entries()) {
      const cooler = capacity4D2A.rows.find((row) => row.facts.csa === facts.csa)?.facts;
      const single = capacity4E1A.rows.find((row) => row.facts.csa === facts.csa)?.facts;
      const before = capacity4E2A.rows[at - 1]?.facts;
      for (const column of ["A2", "A3", "B2", "B3", "C2", "C3", "E2", "E3"] as const) {
        if (cooler) expect(facts[column]).toBeGreaterThan(cooler[column]);
        if (before) expect(facts[column]).toBeGreaterThan(before[column]);
      }
      for (const column of ["A2", "B2", "C2"] as const)
        if (single) expect(facts[column]).toBeLessThanOrEqual(single[column]);
      expect(facts.A2).toBeLessThan(facts.B2);
      expect(facts.B2).toBeLessThan(facts.C2);
      expect(facts.C2).toBeLessThan(facts.E2);
    }
  });

  it("is judged: certain beyond the band of what is remembered, unproven within it", () => {
    const cable = "multicore 90 °C line 4 mm² cpc 4 mm² cores 3";
    const on = (rating: number) =>
      findingsOf(plant(cable, `BS EN 60898 B${rating} 6 kA`, "clipped method C", 10)).find(
        ({ check }) => check === "design/device-over-capacity",
      );
    expect(on(40)).toBeUndefined();
    expect(on(63)?.severity).toBe("error");
    expect(on(50)?.severity).toBe("error");
    expect(on(45)).toBeUndefined();
  });
});

describe("mineral and flexible cable", () => {
  const way = (cable: string, device = "BS EN 60898 B32 6 kA", route = "clipped method C") =>
    plant("armoured line 4 mm² cpc 4 mm² cores 3", device, route).replace("cable fire", `cable ${cable}`);
  const capacity = (cable: string, route?: string) =>
    wayOf(nodeOf(installationOf(way(cable, undefined, route)), "A"), "1").capacity?.value;

  it("is rated by its own table", () => {
    expect(capacity("mineral line 2.5 mm² cpc 2.5 mm²")?.value).toBe(31);
    expect(capacity("mineral line 10 mm² cpc 10 mm²", "tray method E")?.value).toBe(82);
    expect(capacity("flex line 2.5 mm² cpc 2.5 mm²")?.value).toBe(25);
    expect(capacity("flex 90 °C line 6 mm² cpc 6 mm²")?.value).toBe(55);
    expect(capacity("mineral line 2.5 mm² cpc 2.5 mm²")?.source.ref).toContain("Table 4G1A");
    expect(checks(way("mineral line 2.5 mm² cpc 2.5 mm²"))).toContain("error design/device-over-capacity");
    expect(checks(way("mineral line 4 mm² cpc 4 mm²"))).not.toContain("error design/device-over-capacity");
  });

  it("has its own factors for warm air, or none", () => {
    expect(capacity("mineral line 10 mm² cpc 10 mm²", "clipped method C ambient 35 °C")?.value).toBeCloseTo(77 * 0.93);
    expect(capacity("flex line 2.5 mm² cpc 2.5 mm²", "clipped method C ambient 35 °C")).toBeUndefined();
  });

  it("drops by its table, or by its conductors", () => {
    const drop = (cable: string) => value(way(cable), "Voltage drop from the origin") ?? Number.NaN;
    expect(drop("flex line 2.5 mm² cpc 2.5 mm²")).toBeCloseTo((19e-3 * 25 * 40 * 100) / 230, 6);
    expect(drop("mineral line 4 mm² cpc 4 mm²")).toBeCloseTo((2 * 4.61e-3 * 1.2 * 25 * 40 * 100) / 230, 1);
  });

  it("in a conduit, and aluminium anywhere, asks for figures of one's own and says which", () => {
    for (const text of [
      way("flex line 2.5 mm² cpc 2.5 mm²", undefined, "conduit method B"),
      way("armoured aluminium line 25 mm² cpc 25 mm² cores 3"),
    ]) {
      const [found] = findingsOf(text).filter(({ check }) => check === "design/capacity-not-calculated");
      expect(found?.message).toMatch(/cable-type: carries, drop, r1, r2 and by\.$/);
    }
  });
});
