/**
 * Conductors in service: their reactance by how they lie, the drop at the temperature they reach, and what opens in time.
 * Figures of Tables 4D1A, 4D1B and 4E4B of BS 7671; a conductor's x is half of √(z² − r²) of the two of a drop.
 */
import { describe, expect, it } from "vitest";
import { conductorPerMetre } from "../../server/circuit/cpc.ts";
import { disconnectionOf, readingLimit, serviceLimit } from "../../server/circuit/disconnection.ts";
import { cableDrop } from "../../server/circuit/drop.ts";
import { corrected } from "../../server/circuit/drop-corrected.ts";
import { farthestPlace, faultPlaces, placeWords, shareStep, timesAt } from "../../server/circuit/parallel.ts";
import { reactanceOf } from "../../server/circuit/reactance.ts";
import { operatingCurrent, trippingOf, tripTime } from "../../server/circuit/trip.ts";
import type { WayStudy } from "../../server/circuit/way.ts";
import type { Setting } from "../../server/rules/frame/rule.ts";
import { installationOf, nodeOf, wayOf } from "../helpers/place.ts";
import { inSetting } from "../helpers/sample.ts";

const studied = (lines: string, setting: Setting = {}, kind = "radial"): WayStudy =>
  wayOf(nodeOf(installationOf(inSetting(`way 1 ${kind} "Pump" {\n${lines}\n}`, setting).text), "A"), "1");

describe("the reactance of a conductor", () => {
  const of = (lines: string, kind = "radial") => {
    const X = reactanceOf(studied(`${lines}\nlength 100 m`, {}, kind), ["line"]);
    return X && Number(X.value.toFixed(5));
  };
  // 70 mm²: z 0.72 in conduit and 0.66 touching, r 0.63; x1 of two cores 0.15 mV/A/m. Up to 35 mm² it does not count.
  it.each([
    ["singles line 70 mm² cpc 35 mm²\nroute conduit method B", 0.01743],
    ["singles line 70 mm² cpc 35 mm²\nroute conduit method A", 0.01743],
    ["singles line 70 mm² cpc 35 mm²\nroute clipped method C", 0.00984],
    ["singles line 70 mm² cpc 35 mm²", 0.01743],
    ["armoured 90 °C line 70 mm² cpc 35 mm² cores 3\nroute clipped method C", 0.0075],
    ["multicore line 70 mm² cpc 35 mm² cores 3\nroute conduit method B", 0.0075],
    ["singles line 50 mm² cpc 25 mm²\nroute conduit method B", 0.01838],
    ["singles line 35 mm² cpc 16 mm²\nroute conduit method B", undefined],
  ])("of %s: %s Ω in 100 m", (cable, ohms) => expect(of(`cable ${cable}`)).toBe(ohms));

  // 0.3 mΩ/m of the armour (BS 7671, notes to Appendix 4) beside 0.075 mΩ/m of the core: Z = Z1 Z2 / (Z1 + Z2).
  it("of armour is its own, and of armour and a core side by side that of the two in parallel", () => {
    const cpc = (lines: string) =>
      studied(`cable armoured 90 °C line 70 mm² ${lines}\nroute clipped method C\nlength 1 m`);
    const ways = ["cpc-by armour cores 2", "cpc 35 mm² cores 2", "cpc 35 mm² cpc-by armour cores 2"].map(cpc);
    const [steel, core, both] = ways.map((way) => reactanceOf(way, ["cpc"])?.value ?? Number.NaN) as number[];
    expect([steel, core]).toEqual([0.0003, 0.000075]);
    const [R, r] = ways.map(({ cable }) => (cable && conductorPerMetre(cable, "cpc")?.value) ?? Number.NaN) as number[];
    const at = (r: number, x: number) => ({ G: r / (r * r + x * x), B: x / (r * r + x * x) });
    const [one, other] = [at(R ?? 0, steel ?? 0), at(r ?? 0, core ?? 0)];
    const [G, B] = [one.G + other.G, one.B + other.B];
    expect(both).toBeCloseTo(B / (G * G + B * B), 12);
  });

  it("of a protective conductor is the one stated for it, and of its line the other", () => {
    const stated = studied('cable singles line 16 mm² cpc 16 mm² x 0.1 mΩ/m x2 0.3 mΩ/m by "Sheet 3"\nlength 100 m');
    expect(reactanceOf(stated, ["line"])?.value).toBeCloseTo(0.01, 12);
    expect(reactanceOf(stated, ["cpc"])?.value).toBeCloseTo(0.03, 12);
  });

  it("counts at any size where it is stated", () => {
    expect(of('cable singles line 16 mm² cpc 16 mm² x 0.1 mΩ/m by "Sheet 3"\nroute conduit method B')).toBe(0.01);
  });

  it("is left out of a ring, whose two ways round share it", () => {
    expect(of("cable singles line 70 mm² cpc 35 mm²", "ring")).toBeUndefined();
  });
});

// Flat twin 2.5 mm², clipped: 27 A by Table 4D5. 10 A warm it to 70 − (1 − (10/27)²) × 40 °C, of 300 K that is 0.885.
describe("a drop at its real conditions", () => {
  const share = (lines: string, { current = 10, csa = 2.5 } = {}) => {
    const drop = { value: 1, unit: "%", steps: [], source: { ref: "Table 4D5", standing: "printed" } } as const;
    return corrected(studied(lines), drop, current, csa).value;
  };
  const warm = (Iz: number, Ib: number) => (300 - ((Iz / 27) ** 2 - (Ib / 27) ** 2) * 40) / 300;
  const twin = "cable flat-twin line 2.5 mm² cpc 1.5 mm²\nroute clipped method C";
  const breaker = "device BS EN 60898 B16 6 kA";

  it.each([
    [`${breaker}\n${twin}`, warm(27, 10)],
    // 35 °C takes 0.94 off the capacity (Table 4B1), a second circuit 0.80 (4C1).
    [`${breaker}\n${twin} ambient 35 °C`, warm(27 * 0.94, 10)],
    [`${breaker}\n${twin} grouped 2`, warm(27 * 0.8, 10)],
    [`${breaker}\n${twin}\npower-factor 80 %`, 0.8 * warm(27, 10)],
    // Not where it is cooler than the tables assume, behind a rewirable fuse, or where the route is not known.
    [`${breaker}\n${twin} ambient 25 °C`, 1],
    [`${breaker}\n${twin} ambient 30 °C`, warm(27, 10)],
    [`device BS 3036 15 A\n${twin}`, 1],
    [`${breaker}\ncable flat-twin line 2.5 mm² cpc 1.5 mm²`, 1],
    [`${breaker}\ncable flat-twin line 2.5 mm² cpc 1.5 mm²\npower-factor 80 %`, 0.8],
  ])("%j", (lines, wanted) => expect(share(lines)).toBeCloseTo(wanted, 9));

  it("is never more than what is tabulated, and of another size left as it is", () => {
    expect(share(`${breaker}\n${twin}`, { current: 27 })).toBe(1);
    expect(share(`${breaker}\n${twin}`, { current: 30 })).toBe(1);
    expect(share(`${breaker}\n${twin}`, { csa: 4 })).toBe(1);
  });

  // (0.33 × 0.8 + 0.12 × 0.6) / √(0.33² + 0.12²) of busbar trunking.
  it("of busbar trunking goes by its r and x", () => {
    const bars = (more: string) =>
      share(
        `cable busbar-trunking line 122 mm² cpc-by casing carries 250 A r1 0.26 mΩ/m r1-hot 0.33 mΩ/m x 0.12 mΩ/m by "Sheet 3"\n${more}`,
        { csa: 122 },
      );
    expect(bars("power-factor 80 %")).toBeCloseTo(0.336 / Math.hypot(0.33, 0.12), 9);
    expect(bars("")).toBe(1);
  });

  it("of busbar trunking is asked for where its maker states one of the two", () => {
    const drop = (stated: string) =>
      cableDrop(
        studied(`cable busbar-trunking line 122 mm² cpc-by casing carries 250 A ${stated} by "Sheet 3"\nlength 10 m`),
        100,
      );
    expect("missing" in drop("r1 0.26 mΩ/m r1-hot 0.33 mΩ/m x 0.12 mΩ/m")).toBe(false);
    expect("missing" in drop("r1 0.26 mΩ/m r1-hot 0.33 mΩ/m")).toBe(true);
    expect("missing" in drop("r1 0.26 mΩ/m x 0.12 mΩ/m")).toBe(true);
  });
});

describe("what opens in time", () => {
  const of = (lines: string, setting: Setting = {}) => {
    const found = disconnectionOf(studied(lines, setting));
    return found && [found.by, Number(found.limit.value.toFixed(2)), found.rcd?.sensitivity];
  };
  const board = "fed-from supply\nmain-switch BS EN 61008 100 A 100 mA type A delayed";
  const TT: Setting = { supply: "earthing TT\nelectrode rod 62 Ω", board };

  // 50 V / IΔn of the one nearest to the load: 1667 Ω of 30 mA, 500 Ω of 100 mA.
  it.each([
    ["device BS EN 61009 B16 6 kA 30 mA type A", TT, ["rcd", 1667, 0.03]],
    ["device BS EN 60898 B16 6 kA", TT, ["rcd", 500, 0.1]],
    ["device BS EN 60898 B16 6 kA", { supply: TT.supply ?? "" }, undefined],
    // 230 V × 0.95 / 80 A.
    ["device BS EN 60898 B16 6 kA", { board }, ["overcurrent", 2.73, 0.1]],
    ["device BS EN 60898 B16 6 kA", {}, ["overcurrent", 2.73, undefined]],
    ["", {}, undefined],
  ])("%s: %j", (lines, setting, wanted) => expect(of(lines, setting)).toEqual(wanted));

  it("is compared with a reading on cold conductors, but for an RCD", () => {
    const breaker = disconnectionOf(studied("device BS EN 60898 B16 6 kA"));
    const rcd = disconnectionOf(studied("device BS EN 61009 B16 6 kA 30 mA type A", TT));
    expect(breaker && [serviceLimit(breaker).which, readingLimit(breaker).which]).toEqual(["hot", "cold"]);
    expect(rcd && [serviceLimit(rcd).which, readingLimit(rcd).which]).toEqual(["by the RCD", "by the RCD"]);
  });
});

// A fault in one of n alike in parallel is fed from both ends: at x of the length the faulty one carries 1 − x (n − 1) / n,
// and the loop is n x (1 − x (n − 1) / n) times that of all from end to end, most at x = n / (2 (n − 1)).
describe("a fault in one of several in parallel", () => {
  const cable = (count: number) => {
    const found = studied(`cable singles line 70 mm² cpc 70 mm²${count > 1 ? ` parallel ${count}` : ""}`).cable;
    if (!found) throw new Error("no cable");
    return found;
  };
  const both = ["line", "cpc"] as const;

  it.each([
    [1, 1, 1],
    [2, 1, 1],
    [3, 0.75, 1.125],
    [4, 2 / 3, 4 / 3],
  ])("of %i is judged at %f of the length, %f times the loop to the end", (count, at, times) => {
    const place = farthestPlace(cable(count), both);
    expect(place.at).toBeCloseTo(at, 9);
    expect(timesAt(cable(count), place, both)).toBeCloseTo(times, 9);
  });

  it("is tried from the end to the supply", () => {
    const places = faultPlaces(cable(3));
    expect([places.at(0)?.at, places.at(-1)?.at]).toEqual([1, 0]);
    expect(faultPlaces(cable(1)).map(({ at }) => at)).toEqual([1]);
  });

  it("is named by where it is, and by what flows in the faulty one", () => {
    expect([1, 0, 0.5].map(placeWords)).toEqual(["at the end", "next to the supply", "50 % of the way"]);
    expect(shareStep(3, farthestPlace(cable(3), both), "line")).toMatchObject([
      { formula: "in the faulty one of 3, 75 % of the way", result: "50 %" },
    ]);
    expect(shareStep(1, farthestPlace(cable(1), both), "line")).toEqual([]);
  });
});

// 63 A gG: 230 V × 0.95 over 0.78 Ω and 0.44 Ω, the limits of 5 s and 0.4 s as they are printed (Tables 41.4 and 41.2), and
// the curve a straight line between them where both scales are logarithms.
describe("the time of a device at a current", () => {
  const time = (device: string, current: number) => {
    const found = tripTime(studied(`device ${device}`), current);
    return found && [Number(found.time.value.toFixed(3)), found.atMost];
  };
  const at = (device: string, within: number) => {
    const tripping = trippingOf(studied(`device ${device}`));
    return (tripping && operatingCurrent(tripping, within)?.value) ?? Number.NaN;
  };
  const fuse = "BS 88-2 63 A 80 kA gG";
  const [slow, quick] = [at(fuse, 5), at(fuse, 0.4)];

  it("of a fuse is kept from five seconds to 0.4 s", () => {
    expect(slow).toBeCloseTo(218.5 / 0.78, 0);
    expect(time(fuse, slow * 0.99)).toBeUndefined();
    expect(time(fuse, slow)).toEqual([5, false]);
    expect(time(fuse, Math.sqrt(slow * quick))).toEqual([Number(Math.sqrt(5 * 0.4).toFixed(3)), false]);
    expect(time(fuse, quick)).toEqual([0.4, true]);
    expect(time(fuse, quick * 2)).toEqual([0.4, true]);
  });

  it("of a breaker is a tenth of a second at most in its magnetic range", () => {
    expect(time("BS EN 60898 B16 6 kA", 80)).toEqual([0.1, true]);
    expect(time("BS EN 60898 B16 6 kA", 79)).toBeUndefined();
    expect(time("BS EN 60898 D16 6 kA", 319)).toBeUndefined();
    expect(time("BS EN 60898 D16 6 kA", 320)).toEqual([0.1, true]);
  });

  it("is nothing where its rating is not known", () => expect(time("BS EN 60898 6 kA", 1000)).toBeUndefined());
});
