/**
 * Each rule of a calculation at the value where it turns, and just beside it. What is expected comes from the standard or
 * is worked out by hand beside it; that a line of working comes to what it says is looked at for every one.
 */
import { describe, expect, it } from "vitest";
import { adiabaticFactor, adiabaticSize, letThroughAtFault, withstand } from "../../server/calc/adiabatic.ts";
import { correctedCapacity, factorsOfOne } from "../../server/calc/capacity.ts";
import { groupingFactor } from "../../server/calc/capacity-factors.ts";
import { flexibleDrop, otherAmbient, otherCapacity } from "../../server/calc/capacity-other.ts";
import { r1r2PerMetre } from "../../server/calc/conductor-resistance.ts";
import {
  bendsText,
  conduitRoom,
  conduitSizes,
  isConduitSize,
  smallestTrunking,
  trunkingRoom,
} from "../../server/calc/containment.ts";
import { disconnectionTime } from "../../server/calc/disconnection-time.ts";
import { diversified } from "../../server/calc/diversity.ts";
import { dropPowerFactor, dropTemperatureFactor } from "../../server/calc/drop-figures.ts";
import { dropPaths, worstPlace } from "../../server/calc/drop-network.ts";
import { impedanceOf, threePhaseFault, transformerImpedance } from "../../server/calc/fault-current.ts";
import { faultAlong, greatestAlong } from "../../server/calc/fault-path.ts";
import { figure } from "../../server/calc/figure.ts";
import { groundGrouping } from "../../server/calc/ground.ts";
import { harmonicNeed } from "../../server/calc/harmonics.ts";
import { highLeakage, leakageLimit, residualFor, singleProtective } from "../../server/calc/leakage.ts";
import { loopLimit } from "../../server/calc/loop-limit.ts";
import { ownLimit, ownPoints } from "../../server/calc/own-device.ts";
import {
  buriedEarthingConductor,
  mainBonding,
  mainBondingPme,
  selectedOfOther,
  selectedProtective,
  supplementaryBonding,
  supplementaryByCpc,
  supplementaryResistance,
} from "../../server/calc/protective-size.ts";
import { rcdLoopLimit } from "../../server/calc/rcd-loop-limit.ts";
import { rcdTripBand } from "../../server/calc/rcd-time.ts";
import { armourReactance, reactancePerMetre, sideBySide } from "../../server/calc/reactance.ts";
import type { Calculated } from "../../server/calc/result.ts";
import { milliamps, working } from "../../server/calc/result.ts";
import { ringRatings, ringTolerance } from "../../server/calc/ring.ts";
import { opensAtOnceFrom, releasesOf, settingsLimit } from "../../server/calc/settings.ts";
import { soundReading } from "../../server/calc/sound-readings.ts";
import { metered, readingUncertainty } from "../../server/calc/uncertainty.ts";
import { unequalDrop } from "../../server/calc/unequal-drop.ts";
import {
  dropByParts,
  dropLimit,
  dropPerAmpereMetre,
  millivoltsByParts,
  voltageDrop,
} from "../../server/calc/voltage-drop.ts";
import type { Source } from "../../server/tables/source.ts";
import { disagreement } from "../helpers/arithmetic.ts";
import { edition, recent } from "./helpers.ts";

type Found = Calculated | { readonly value: number } | { readonly missing: string } | undefined;
/** What is calculated is so within its test. */
type Case = readonly [what: string, find: () => Found, value: number | undefined, words?: string];

const book: Source = { ref: "Maker’s book", standing: "quoted" };
const given = (value: number, unit = "Ω"): Calculated => ({ value, unit, steps: [], source: book });

/** The value, the arithmetic of its working, and words that stand in it. */
function holds(cases: readonly Case[]): void {
  it.each(cases.map((one) => [one[0], one] as const))("%s", (_, [, find, value, words = ""]) => {
    const found = find();
    const has = found && "value" in found ? found.value : undefined;
    if (value === undefined) expect(has).toBeUndefined();
    else expect(has).toBeCloseTo(value, 9);
    const lines = found && "steps" in found ? working(found.steps).split("\n") : [];
    expect(lines.flatMap((line) => disagreement(line) ?? [])).toEqual([]);
    expect(lines.join("\n")).toContain(words);
  });
}

// Table 43.1 of BS 7671: 115 to 300 mm² and 103 above it, for copper with 70 °C thermoplastic; thermosetting has no such step.
describe("k of a line conductor", () => {
  const k = (csa: number | undefined, insulation: "pvc70" | "ts90" = "pvc70") =>
    adiabaticFactor({ use: "line", material: "copper", insulation, ...(csa === undefined ? {} : { csa }) });
  holds([
    ["300 mm²", () => k(300), 115],
    ["300.5 mm²", () => k(300.5), 103],
    ["no size", () => k(undefined), 115],
    ["thermosetting", () => k(400, "ts90"), 143],
    ["what 1.5 mm² withstands", () => withstand(1.5, given(115, "")), 29_756.25, "115² × 1.5² = 29756 A²s"],
    ["size at 5 s", () => adiabaticSize(100, 5, given(115, "")), (100 * Math.sqrt(5)) / 115],
    ["size beyond 5 s", () => adiabaticSize(100, 5.01, given(115, "")), undefined],
    ["size in no time", () => adiabaticSize(100, 0, given(115, "")), undefined],
  ]);
});

// BS EN 60898-1, Annex ZA, class 3 type B: 15 000 A²s at 3 kA and 35 000 at 6 kA to 16 A; 18 000 and 45 000 to 32 A.
describe("let-through energy of class 3", () => {
  const through = (rating: number, fault: number) => letThroughAtFault({ curve: "B", rating, limitingClass: 3 }, fault);
  holds([
    ["16 A at 6 kA", () => through(16, 6000), 35_000, "at 3 kA and 35000 A²s at 6 kA"],
    ["17 A at 6 kA", () => through(17, 6000), 45_000],
    ["32 A at 3 kA", () => through(32, 3000), 18_000, "in proportion below"],
    ["32 A at 1.5 kA", () => through(32, 1500), 9000],
    ["33 A", () => through(33, 3000), undefined],
    ["beyond 10 kA", () => through(16, 10_001), undefined],
  ]);
});

// Table 4C1, bunched: its counts of circuits, and between them the next.
describe("grouping", () => {
  const grouped = (circuits: number) => groupingFactor(circuits, "bunched");
  const factors = [1, 0.8, 0.7, 0.65, 0.6, 0.57, 0.54, 0.52, 0.5, 0.45, 0.45, 0.45, 0.41, 0.41, 0.41, 0.41, 0.38];
  holds([
    ...factors.map((factor, at): Case => [`${at + 1} circuits`, () => grouped(at + 1), factor]),
    ["20 circuits", () => grouped(20), 0.38, "20 circuits, bunched"],
    ["21 circuits", () => grouped(21), undefined],
  ]);
});

describe("grouping in the ground, by the distance", () => {
  const apart = (mm: number, lie: "buried" | "duct" = "buried", circuits = 2) => groundGrouping(circuits, lie, mm);
  holds([
    ["touching", () => apart(0), 0.75, "direct in the ground, touching"],
    ["124 mm", () => apart(124), 0.75, "0.124 m apart, taken as touching"],
    ["125 mm", () => apart(125), 0.85, ", 0.125 m apart"],
    ["249 mm", () => apart(249), 0.85, "0.249 m apart, taken as 0.125 m apart"],
    ["250 mm", () => apart(250), 0.9],
    ["six at 500 mm", () => apart(500, "buried", 6), 0.8],
    ["two ducts at 499 mm", () => apart(499, "duct"), 0.9],
    ["two ducts at 500 mm", () => apart(500, "duct"), 0.95],
    ["six ducts at 999 mm", () => apart(999, "duct", 6), 0.8],
    ["six ducts at 1 m", () => apart(1000, "duct", 6), 0.9, "in ducts, 1 m apart"],
    ["seven", () => apart(0, "buried", 7), undefined],
  ]);
});

// Tables 4G1A, 4F1 to 4F3.
describe("mineral and flexible cable", () => {
  const mineral = { construction: "mineral", insulation: 70 } as const;
  const flex = { construction: "flex", method: "E" } as const;
  holds([
    ["mineral, clipped, two loaded", () => otherCapacity({ ...mineral, method: "C", loaded: 2, csa: 2.5 }), 31],
    ["mineral, free, three loaded", () => otherCapacity({ ...mineral, method: "E", loaded: 3, csa: 2.5 }), 28],
    ["mineral in conduit", () => otherCapacity({ ...mineral, method: "B", loaded: 2, csa: 2.5 }), undefined],
    ["a cord of 2.5 mm²", () => otherCapacity({ ...flex, insulation: 70, loaded: 2, csa: 2.5 }), 25],
    ["flexible, 60 °C, 10 mm², two", () => otherCapacity({ ...flex, insulation: 70, loaded: 2, csa: 10 }), 51],
    ["flexible, 60 °C, 10 mm², three", () => otherCapacity({ ...flex, insulation: 70, loaded: 3, csa: 10 }), 47],
    ["flexible, 90 °C, 4 mm², two", () => otherCapacity({ ...flex, insulation: 90, loaded: 2, csa: 4 }), 42],
    ["flexible, 90 °C, 4 mm², three", () => otherCapacity({ ...flex, insulation: 90, loaded: 3, csa: 4 }), 37],
    ["drop, 60 °C, 10 mm², two", () => flexibleDrop(10, 70, 2), 0.0046],
    ["drop, 60 °C, 10 mm², three", () => flexibleDrop(10, 70, 3), 0.004],
    ["drop, 90 °C, 10 mm², two", () => flexibleDrop(10, 90, 2), 0.0051],
    ["drop, 90 °C, 10 mm², three", () => flexibleDrop(10, 90, 3), 0.0044],
    ["drop of a size that is not made", () => flexibleDrop(11, 90, 3), undefined],
    ["mineral at 35 °C", () => otherAmbient("mineral", 35), 0.93, "Ca at 35 °C, mineral"],
    ["mineral at 36 °C", () => otherAmbient("mineral", 36), 0.85, "36 °C, taken as 40 °C"],
    ["mineral at 56 °C", () => otherAmbient("mineral", 56), undefined],
    ["flexible", () => otherAmbient("flex", 35), undefined],
  ]);
});

describe("conduit and trunking", () => {
  const room = (length: number, bends: number) => conduitRoom({ size: 20, length, bends });
  // On-Site Guide, Appendix E: 460 for 20 mm straight to 3 m; 286 for 4 m without a bend; 303 for 1 m with one.
  holds([
    ["3 m straight", () => room(3, 0), 460, "3 m, no bends"],
    ["3.1 m straight", () => room(3.1, 0), 290, "3.1 m, no bends"],
    ["1 m, one bend", () => room(1, 1), 303, "1 m, 1 bend"],
    ["1 m, two bends", () => room(1, 2), 286, "1 m, 2 bends"],
    ["no length", () => room(0, 0), 460, "however short"],
    ["50 × 38 is 50 × 37.5", () => trunkingRoom({ width: 50, depth: 38 }), 767],
    ["50 × 38.1", () => trunkingRoom({ width: 50, depth: 38.1 }), undefined],
  ]);
  it("has its sizes", () => {
    expect(conduitSizes).toEqual([16, 20, 25, 32]);
    expect([15, 16, 20, 25, 32, 33].filter(isConduitSize)).toEqual([16, 20, 25, 32]);
    expect([0, 1, 2].map(bendsText)).toEqual(["no bends", "1 bend", "2 bends"]);
  });
  it("is replaced by the smallest that is as wide and as deep", () => {
    const cables = [{ count: 10, csa: 2.5 }];
    expect(smallestTrunking(cables)).toMatchObject({ width: 75, depth: 25 });
    expect(smallestTrunking(cables, 0, { width: 75, depth: 37.5 })).toMatchObject({ width: 75, depth: 37.5 });
    expect(smallestTrunking(cables, 0, { width: 100, depth: 25 })).toMatchObject({ width: 100, depth: 25 });
  });
});

// 411.3.2.2 to 411.3.2.4 and Table 41.1. A supply of 230 V +10 % −6 % is one of 230 V: 216.2 V to 253 V.
describe("disconnection time", () => {
  const time = (U0: number, rating = 32, more: Partial<Parameters<typeof disconnectionTime>[0]> = {}) =>
    disconnectionTime({ system: "TN-S", U0, final: true, sockets: false, rating, edition: recent, ...more });
  const tt = { system: "TT" } as const;
  holds([
    ["50 V", () => time(50), undefined],
    ["51 V, reduced low voltage", () => time(51), 5, "at reduced low voltage"],
    ["63.5 V", () => time(63.5), 5],
    ["63.6 V", () => time(63.6), 0.8],
    ["120 V", () => time(120), 0.8],
    ["121 V", () => time(121), 0.4],
    ["216.2 V in TT", () => time(216.2, 32, tt), 0.2, "U0 230 V"],
    ["216.1 V in TT", () => time(216.1, 32, tt), 0.2, "U0 216.1 V"],
    ["253 V", () => time(253), 0.4, "U0 230 V"],
    ["253.1 V", () => time(253.1), 0.2, "U0 253.1 V"],
    ["400 V", () => time(400), 0.2],
    ["401 V", () => time(401), 0.1],
    ["32 A, fixed", () => time(230, 32), 0.4, "32 A, not above 32 A"],
    ["33 A, fixed", () => time(230, 33), 5, "33 A, above 32 A"],
    ["63 A with sockets", () => time(230, 63, { sockets: true }), 0.4],
    ["64 A with sockets", () => time(230, 64, { sockets: true }), 5],
    ["33 A in TT", () => time(230, 33, tt), 1],
    ["IT", () => time(230, 32, { system: "IT" }), undefined],
  ]);
});

// On-Site Guide, Table A2.
describe("diversity", () => {
  const home = (purpose: "cookers" | "standard-circuits" | "heating-power", currents: number[], socket?: boolean) =>
    diversified({ purpose, column: "household", currents, ...(socket === undefined ? {} : { socket }) });
  holds([
    ["a cooker of 10 A", () => home("cookers", [10]), 10, "10 A + 30 % × 0 A"],
    ["a cooker of 40 A", () => home("cookers", [40]), 19, "10 A + 30 % × 30 A"],
    ["with a socket", () => home("cookers", [40], true), 24, "30 % × 30 A + 5 A"],
    ["two rings", () => home("standard-circuits", [20, 32]), 40, "100 % × 32 A + 40 % × 20 A"],
    ["one ring alone", () => home("standard-circuits", [32]), 32, "cuits = 100 % × 32 A = 32 A"],
    ["three rings", () => home("standard-circuits", [20, 32, 32]), 52.8, "40 % × 32 A + 40 % × 20 A"],
    [
      "hotel sockets",
      () => diversified({ purpose: "sockets", column: "hotel", currents: [10, 20, 0.5] }),
      27.7,
      "75 % × 10 A + 40 % × 0.5 A",
    ],
  ]);
});

// Appendix 4, section 6: θ = tp − ((Iz/It)² − (Ib/It)²)(tp − 30); Ct = (230 + θ)/(230 + tp).
describe("drop of cooler conductors", () => {
  const Ct = (It: number, Iz: number, Ib: number, insulation: 70 | 90) =>
    dropTemperatureFactor({ It, Iz, Ib, insulation });
  holds([
    ["half loaded at 70 °C", () => Ct(40, 40, 20, 70), 270 / 300, "(230 + 40) / (230 + 70) = 0.9"],
    ["grouped, three quarters loaded", () => Ct(40, 32, 30, 70), (300 - (0.64 - 0.5625) * 40) / 300],
    ["half loaded at 90 °C", () => Ct(40, 40, 20, 90), (230 + 45) / 320],
    ["between two tenths of a degree", () => Ct(40, 33, 30, 70), 295.275 / 300, "(230 + 65.3) / (230 + 70) = 0.984"],
    ["loaded beyond what it carries", () => Ct(40, 20, 30, 70), 1],
    ["power factor", () => dropPowerFactor(0.85), 0.85, "85 %"],
  ]);
});

// Table 4E4B, 95 mm²: r 0.50, x 0.15, z 0.52 for two loaded cores; x 0.13 and z 0.45 for three.
describe("drop by its parts", () => {
  const armoured = { construction: "armoured", insulation: 90, method: "C", csa: 95 } as const;
  const two = { ...armoured, loaded: 2 } as const;
  const three = { ...armoured, loaded: 3 } as const;
  const z = (r: number, x: number, share: number) => r * share + x * Math.sqrt(1 - share ** 2);
  holds([
    [
      "two cores at 0.8",
      () => dropByParts(two, 0.8, undefined),
      z(0.5, 0.15, 0.8) / 0.52,
      "(0.5 × 0.8 + 0.15 × 0.6) / 0.52",
    ],
    ["two cores, cooler", () => dropByParts(two, 0.8, given(0.9, "")), z(0.45, 0.15, 0.8) / 0.52, "(0.9 × 0.5 × 0.8 +"],
    ["three cores at 0.6", () => dropByParts(three, 0.6, undefined), z(0.431, 0.13, 0.6) / 0.45],
    ["never above 1", () => dropByParts(three, 0.95, undefined), 1],
    ["power factor 1", () => dropByParts(two, 1, undefined), undefined],
    ["no power factor", () => dropByParts(two, 0, undefined), undefined],
    ["16 mm²", () => dropByParts({ ...two, csa: 16 }, 0.8, undefined), undefined],
    ["70 °C", () => dropByParts({ ...two, insulation: 70 }, 0.8, undefined), undefined],
    ["by hand", () => ({ value: millivoltsByParts(0.5, 0.15, 0.8) }), 0.49],
    ["by hand, cooler", () => ({ value: millivoltsByParts(0.5, 0.15, 0.8, 0.5) }), 0.29],
    ["beyond 1 by a hair", () => ({ value: millivoltsByParts(0.5, 0.15, 1.0000001) }), 0.50000005],
    ["armoured, 90 °C, 95 mm²", () => dropPerAmpereMetre(two), 0.00052],
    ["multicore, 90 °C, 95 mm²", () => dropPerAmpereMetre({ ...two, construction: "multicore" }), undefined],
    [
      "flat, three loaded",
      () => dropPerAmpereMetre({ ...three, construction: "flat-twin", insulation: 70 }),
      undefined,
    ],
    [
      "singles in conduit",
      () => dropPerAmpereMetre({ ...two, construction: "singles", insulation: 70, method: "B" }),
      0.00056,
    ],
  ]);
  it("rests on the column it is read in", () => {
    const standing = (loaded: 2 | 3) => dropByParts({ ...armoured, csa: 120, loaded }, 0.8, undefined)?.source.standing;
    expect([standing(2), standing(3)]).toEqual(["computed", "memory"]);
  });
  const per = { value: 0.0073, source: book };
  holds([
    [
      "a radial",
      () => voltageDrop({ perAmpereMetre: per, current: 20, length: 30 }),
      4.38,
      "7.3 mV/A/m × 20 A × 30 m = 4.38 V",
    ],
    ["a ring", () => voltageDrop({ perAmpereMetre: per, current: 32, length: 60, ring: true }), 3.504, "60 m / 4"],
  ]);
});

describe("drop of a line that is loaded apart from the others", () => {
  const drop = (own: number, others: readonly [number, number]) =>
    unequalDrop({
      perAmpereMetre: { value: 0.004, source: book },
      neutralPerAmpereMetre: { value: 0.006, source: book },
      own,
      others,
      length: 20,
    });
  const root = Math.sqrt(3);
  holds([
    [
      "alone",
      () => drop(10, [0, 0]),
      ((0.004 / root) * 10 + (0.006 / root) * 10) * 20,
      "4 mV/A/m / √3 × 10 A + 6 mV/A/m / √3",
    ],
    [
      "beside 6 A and 2 A",
      () => drop(10, [6, 2]),
      ((0.004 / root) * 10 + (0.006 / root) * 6) * 20,
      "(6 A + 2 A) / 2 = 6 A",
    ],
    ["balanced", () => drop(10, [10, 10]), (0.004 / root) * 200, "= 0 A"],
    ["the least of them", () => drop(2, [10, 10]), (0.004 / root) * 40, "−8 A, taken as none"],
  ]);
});

// By Kirchhoff's laws: the angle of what lies before the cables is not known, so the two ends are those of any angle.
describe("fault current along a path", () => {
  const cable = (R: number, X?: number) => ({
    name: "the feeder",
    resistance: given(R),
    ...(X === undefined ? {} : { reactance: given(X) }),
  });
  const path = (start: number, ...cables: ReturnType<typeof cable>[]) => ({
    voltage: 230,
    start: given(start),
    cables,
  });
  holds([
    [
      "surely, resistance alone",
      () => faultAlong(path(0.2, cable(0.1), cable(0.16))),
      500,
      "0.20 Ω + 0.10 Ω + 0.16 Ω = 0.46 Ω",
    ],
    [
      "surely, with reactance",
      () => faultAlong(path(0.2, cable(0.1), cable(0.2, 0.4))),
      230 / 0.7,
      "0.20 Ω + √(0.30 Ω² + 0.40 Ω²)",
    ],
    ["at most, resistance alone", () => greatestAlong(path(0.3, cable(0.4))), 460, "√(0.30 Ω² + 0.40 Ω²)"],
    // √(0.3² + (0.1 + 0.3)²) = 0.5 as reactance, √(0.4² + 0.3²) = 0.5 as resistance.
    ["at most, either way", () => greatestAlong(path(0.1, cable(0.3, 0.3))), 460, "√(0.30 Ω² + (0.10 Ω + 0.30 Ω)²)"],
    ["at most, by resistance", () => greatestAlong(path(0.1, cable(0.2, 0.4))), 460, "√((0.10 Ω + 0.20 Ω)² + 0.40 Ω²)"],
    ["at most, by reactance", () => greatestAlong(path(0.1, cable(0.4, 0.2))), 460, "√(0.40 Ω² + (0.10 Ω + 0.20 Ω)²)"],
  ]);
});

// By its plate: Z = z% × U² / S. Two in parallel carry the sum of what each does.
describe("impedances", () => {
  holds([
    ["500 kVA, 400 V, 4 %", () => transformerImpedance(4, 400, 500_000), 0.0128, "4 % × (400 V)² / 500 kVA"],
    ["63 kVA, 230 V, 5 %", () => transformerImpedance(5, 230, 63_000), (0.05 * 230 ** 2) / 63_000],
    ["three phases, doubled", () => threePhaseFault(1000), 2000, "= 2 × 1000 A"],
    ["three phases, by √3", () => threePhaseFault(1000, "root3"), Math.sqrt(3) * 1000, "= √3 × 1000 A"],
    ["of 1150 A", () => impedanceOf(230, 1150), 0.2, "230 V / 1150 A = 0.20 Ω"],
  ]);
});

// BS EN 61008-1 and BS EN 62423: type B on smooth direct current trips from half of IΔn to twice it.
describe("bands of RCDs", () => {
  const band = (...of: Parameters<typeof rcdTripBand>) => rcdTripBand(...of);
  holds([
    ["B, smooth, least", () => band("B", 0.03, "smooth")?.least, 0.015],
    ["B, smooth, greatest", () => band("B", 0.03, "smooth")?.greatest, 0.06, "200 % × 30 mA = 60 mA"],
    ["A, smooth", () => band("A", 0.03, "smooth")?.least, undefined],
    ["AC, pulsating", () => band("AC", 0.03, "pulsating")?.least, undefined],
    ["A of 10 mA, pulsating", () => band("A", 0.01, "pulsating")?.greatest, 0.02],
    ["A of 10.5 mA, pulsating", () => band("A", 0.0105, "pulsating")?.greatest, 0.0147],
  ]);
});

// Table 4Aa: 15, 33 and 45 % still belong to what stands before them.
describe("third harmonics", () => {
  const need = (share: number) => harmonicNeed(100, share).capacity;
  holds([
    ["none", () => need(0), 100],
    ["15 %", () => need(0.15), 100, "Iz ≥ Ib / factor = 100 A / 1"],
    ["15.1 %", () => need(0.151), 100 / 0.86, "Iz ≥ Ib / factor"],
    ["33 %", () => need(0.33), 100 / 0.86],
    ["33.1 %", () => need(0.331), 99.3 / 0.86, "Iz ≥ IN / factor"],
    ["45 %", () => need(0.45), 135 / 0.86],
    ["45.1 %", () => need(0.451), 135.3],
    ["in the neutral", () => harmonicNeed(100, 0.2).neutral, 60, "3 × 20 % × 100 A = 60 A"],
  ]);
});

// 531.3.2: 30 % of IΔn. 543.7.1.203: from 10 mA, 10 mm², or 4 mm² protected.
describe("currents in protective conductors", () => {
  holds([
    ["behind 30 mA", () => leakageLimit(0.03), 0.009, "30 % × 30 mA = 9 mA"],
    ["high", () => highLeakage(), 0.01, "10 mA"],
    ["a single conductor", () => singleProtective(), 10],
    ["one that is protected", () => singleProtective("mechanical"), 4],
    ["9 mA may flow behind", () => ({ value: residualFor(0.009) ?? 0 }), 0.03],
    ["9.1 mA may flow behind", () => ({ value: residualFor(0.0091) ?? 0 }), 0.1],
  ]);
  it("above 300 mA no RCD is made for", () => expect(residualFor(0.301)).toBeUndefined());
});

// BS EN 60947-2: short-circuit releases within 20 % of their setting; 230 V × 0.95 = 218.5 V.
describe("settings of a breaker", () => {
  const set = (instantaneous?: number, short?: { current: number; time: number }, tolerance?: number) => ({
    instantaneous,
    short,
    tolerance,
  });
  const both = set(2000, { current: 800, time: 0.3 });
  const limit = (of: typeof both, time: number) => settingsLimit(of, time, 230, recent);
  holds([
    ["at once", () => limit(both, 0.1), Math.floor((218.5 / 2400) * 1000) / 1000, "2000 A × (1 + 20 %) = 2400 A"],
    ["sooner than any", () => limit(both, 0.09), undefined],
    ["before the delay is over", () => limit(both, 0.29), 0.091],
    ["with the delay", () => limit(both, 0.3), Math.floor((218.5 / 960) * 1000) / 1000, "230 V × 0.95 / 960 A"],
    ["by its maker's tolerance", () => limit(set(1000, undefined, 0.1), 5), 0.198, "1000 A × (1 + 10 %)"],
    ["none set", () => limit(set(), 5), undefined],
    ["stays closed below", () => opensAtOnceFrom(both), 1600, "2000 A × (1 − 20 %) = 1600 A"],
    ["has no release at once", () => opensAtOnceFrom(set(undefined, both.short)), undefined],
  ]);
  it("rests on the standard where its maker says nothing", () => {
    const [first, second] = releasesOf(both);
    expect([first?.time, second?.time]).toEqual([0.1, 0.3]);
    expect(first?.current.source).toMatchObject({ standing: "memory", remembered: [{ share: 0.1 }] });
    expect(releasesOf(set(1000, undefined, 0.1))[0]?.current.source.standing).toBe("computed");
  });
});

describe("a device by its own book", () => {
  const figures = [
    { time: 0.4, loop: { value: 1.2, source: book } },
    { time: 5, opens: { value: 110, source: book } },
  ];
  const limit = (time: number, U0 = 230) => ownLimit(figures, time, { U0, edition: recent });
  holds([
    ["as it is printed", () => limit(0.4), 1.2],
    ["at 240 V", () => limit(0.4, 240), 1.25, "1.20 Ω × 240 / 230"],
    ["by its curve", () => limit(5), 1.99, "230 V × 0.95 / 110 A"],
    ["of another time", () => limit(1), undefined],
  ]);
  it("has the points of its curve, the slowest first", () => {
    const [slow, quick, ...others] = ownPoints([...figures, { time: 1 }], 0.95);
    expect(slow).toMatchObject({ current: 110, time: 5 });
    expect([quick?.time, quick?.current]).toEqual([0.4, (230 * 0.95) / 1.2]);
    expect(others).toEqual([]);
  });
});

// Tables 54.7, 54.8, 54.1; 544.1.1, 544.2, 415.2.2.
describe("protective conductors", () => {
  holds([
    ["of a line of 16 mm²", () => selectedProtective(16), 16, "= S ="],
    ["of a line of 25 mm²", () => selectedProtective(25), 16, "16 mm²"],
    ["of a line of 35 mm²", () => selectedProtective(35), 16, "16 mm²"],
    ["of a line of 50 mm²", () => selectedProtective(50), 25, "S/2, next size up"],
    ["of a line of 70 mm²", () => selectedProtective(70), 35],
    ["bonding, neutral of 35 mm²", () => mainBondingPme(35), 10],
    ["bonding, neutral of 36 mm²", () => mainBondingPme(36), 16],
    ["bonding, neutral of 50 mm²", () => mainBondingPme(50), 16],
    ["bonding, neutral of 95 mm²", () => mainBondingPme(95), 25],
    ["bonding, neutral of 150 mm²", () => mainBondingPme(150), 35],
    ["bonding, neutral of 151 mm²", () => mainBondingPme(151), 50],
    ["bonding in TN-S, 10 mm² of earthing", () => mainBonding(10), 6],
    ["bonding in TN-S, 16 mm² of earthing", () => mainBonding(16), 10],
    ["bonding in TN-S, 120 mm² of earthing", () => mainBonding(120), 25],
    ["supplementary, protected", () => supplementaryBonding(true), 2.5],
    ["supplementary, not protected", () => supplementaryBonding(false), 4],
    ["supplementary by a cpc of 4 mm²", () => supplementaryByCpc(4, true), undefined],
    ["supplementary by a cpc of 6 mm²", () => supplementaryByCpc(6, true), 4],
    ["supplementary by a cpc of 6 mm², not protected", () => supplementaryByCpc(6, false), undefined],
    ["supplementary resistance", () => supplementaryResistance(given(160, "A")), 0.3125, "50 V / 160 A"],
    // Of another metal: k1 / k2 × S; half a size is a size of steel.
    ["of steel beside 16 mm²", () => selectedOfOther(16, given(143, ""), given(52, "")), 44, "143 / 52 × 16 mm²"],
    [
      "of steel beside 25 mm²",
      () => selectedOfOther(25, given(143, ""), given(52, "")),
      44,
      "S = 25 mm² = 16 mm²\nk1, of the line = 143\nk2 = 52\n",
    ],
    ["of steel beside 70 mm²", () => selectedOfOther(70, given(143, ""), given(52, "")), 96.25, "= S/2 = 35 mm²"],
    ["buried, copper without protection", () => buriedEarthingConductor("neither"), 25],
    ["buried, steel without protection", () => buriedEarthingConductor("neither", "steel"), 50],
    ["buried, copper, where nothing corrodes it", () => buriedEarthingConductor("corrosion"), 16],
    ["buried, copper, where nothing damages it", () => buriedEarthingConductor("mechanical"), 25],
    ["buried, protected on both counts", () => buriedEarthingConductor("both"), undefined],
  ]);
});

// Table 4E4B: x of two loaded cores of 95 mm² is 0.15 mV/A/m, half of it a core's. Two like impedances make half of one.
describe("reactance", () => {
  holds([
    ["35 mm² has none that counts", () => reactancePerMetre(35, "armoured"), undefined],
    ["95 mm², armoured", () => reactancePerMetre(95, "armoured"), 0.000075, "0.075 mΩ/m"],
    // Table 4D1B, 95 mm²: 0.46 of d.c., 0.56 in conduit.
    ["95 mm², singles in conduit", () => reactancePerMetre(95, "enclosed"), Math.sqrt(0.56 ** 2 - 0.46 ** 2) / 2000],
    ["the armour of 35 mm²", () => armourReactance(35), undefined],
    ["the armour of 50 mm²", () => armourReactance(50), 0.0003, "0.3 mΩ/m"],
    ["two alike", () => ({ value: sideBySide([0.4, 0.3], [0.4, 0.3]) }), 0.15],
    // (0.4 + 0.3j) × 1 / (1.4 + 0.3j): imaginary part (0.3 × 1.4 − 0.4 × 0.3) / 2.05.
    ["beside a resistance", () => ({ value: sideBySide([0.4, 0.3], [1, 0]) }), 0.3 / 2.05],
    ["the other way round", () => ({ value: sideBySide([1, 0], [0.4, 0.3]) }), 0.3 / 2.05],
  ]);
  it("of singles is known less well than that of cores", () => {
    expect(reactancePerMetre(95, "touching")?.source.remembered?.map(({ share }) => share)).toEqual([0.15]);
  });
});

describe("limits of loops", () => {
  const limit = (time: number, more = {}) =>
    loopLimit({ standard: "BS EN 60898", curve: "B", rating: 32, time, U0: 230, edition: recent, ...more });
  // Table 41.3; before July 2015 U0 / Ia. A magnetic trip acts in 0.1 s.
  holds([
    ["in 0.1 s", () => limit(0.1), 1.37],
    ["in 0.09 s", () => limit(0.09), undefined],
    ["type D in 5 s, as ten times In", () => limit(5, { curve: "D", rating: 20 }), 1.09, "10 × In"],
    ["type D in 4.9 s", () => limit(4.9, { curve: "D", rating: 20 }), 0.55, "20 × In"],
    ["before 2015", () => limit(0.4, { edition: edition("BS 7671:2008"), rating: 6 }), 7.67],
    ["at 240 V", () => limit(0.4, { U0: 240 }), 1.43],
    ["half an ampere", () => limit(0.4, { rating: 0.5 }), 87.4],
    ["none", () => limit(0.4, { rating: 0 }), undefined],
    ["no voltage", () => limit(0.4, { U0: 0 }), undefined],
  ]);
  it("are as they are printed at 230 V, by the formula at any other", () => {
    const standing = (more: object) => limit(0.4, { rating: 6, ...more })?.source.standing;
    expect([standing({}), standing({ U0: 231 }), standing({ edition: edition("BS 7671:2008") })]).toEqual([
      "quoted",
      "computed",
      "quoted",
    ]);
  });
  // Appendix 4, section 6.4.
  holds([
    ["lighting", () => dropLimit("lighting"), 3, "at most, lighting, public supply"],
    ["other", () => dropLimit("other"), 5, "at most, other than lighting, public supply"],
    ["lighting, own supply", () => dropLimit("lighting", "private"), 6, "lighting, private supply"],
    ["other, own supply", () => dropLimit("other", "private"), 8],
  ]);
  it("of a ring are for 30 A and 32 A, and like readings within 0.05 Ω", () => {
    expect(ringRatings).toEqual([30, 32]);
    expect([ringTolerance.value, working(ringTolerance.steps)]).toEqual([0.05, expect.stringMatching(/0\.05 Ω$/)]);
  });
});

describe("figures as they are shown", () => {
  it.each([
    [99_999, "Ω", "99999 Ω"],
    [100_000, "Ω", "0.1 MΩ"],
    [0.00741, "Ω/m", "7.41 mΩ/m"],
    [0.0123456, "Ω/m", "12.346 mΩ/m"],
    [999, "W", "999 W"],
    [1500, "W", "1.5 kW"],
    [12.34567, "K·m/W", "12.346 K·m/W"],
    [3, "", "3"],
  ])("%d %s", (value, unit, text) => expect(figure(value, unit)).toBe(text));

  it.each([
    [4.99, "A", "4990 mA"],
    [5, "A", "0.005 kA"],
    [-4.99, "A", "-4990 mA"],
    [0.3, "s", "300 ms"],
    [99_999, "Ω", "99999 Ω"],
    [100_000, "Ω", "0.1 MΩ"],
  ] as const)("a meter shows %d %s", (value, unit, text) => expect(metered(value, unit)).toBe(text));

  // Reading × share + digits × last figure.
  const out = (value: number, step: number, unit: "Ω" | "A" | "s", percent: number, digits: number) =>
    readingUncertainty({ value, step, unit }, { percent, digits }, "M1");
  holds([
    ["0.50 Ω ± 2 % ± 3 digits", () => out(0.5, 0.01, "Ω", 2, 3), 0.04, "0.50 Ω × 2 % + 3 × 0.01 Ω = ±0.04 Ω"],
    ["21 mA ± 5 %", () => out(0.021, 0.001, "A", 5, 0), 0.00105, "21 mA × 5 % = ±1.05 mA"],
    ["6 kA ± 5 % ± 2 digits", () => out(6000, 10, "A", 5, 2), 320, "6 kA × 5 % + 2 × 0.01 kA = ±0.32 kA"],
    ["300 MΩ ± 3 % ± 1 digit", () => out(300e6, 1e6, "Ω", 3, 1), 10e6, "300 MΩ × 3 % + 1 × 1 MΩ = ±10 MΩ"],
  ]);
  it("milliamps", () => expect(milliamps(0.0105)).toBe("10.5 mA"));
});

// What the tables suppose is named as thought of: 30 °C of air, 20 °C of ground, 2.5 K·m/W, 0.7 m, one circuit alone.
describe("factors of one", () => {
  const named = (more: object, inGround: boolean) =>
    factorsOfOne({ insulation: 70, ...more } as Parameters<typeof factorsOfOne>[0], inGround).map(
      ({ formula }) => formula.split(" ")[0],
    );
  it.each([
    [{}, false, "Ca Cg Ci Cf,"],
    [{ ambient: 30 }, false, "Ca Cg Ci Cf,"],
    [{ ambient: 35 }, false, "Cg Ci Cf,"],
    [{ grouped: { circuits: 1, arrangement: "bunched" } }, false, "Ca Cg Ci Cf,"],
    [{ grouped: { circuits: 2, arrangement: "bunched" } }, false, "Ca Ci Cf,"],
    [{ insulated: 0 }, false, "Ca Cg Ci Cf,"],
    [{ insulated: 50 }, false, "Ca Cg Cf,"],
    [{ semiEnclosed: true }, false, "Ca Cg Ci"],
    [{}, true, "Ca Cs Cd Cg Ci Cf,"],
    [{ ground: 20, earth: { lie: "duct", soil: 2.5, depth: 700 } }, true, "Ca Cs Cd Cg Ci Cf,"],
    [{ ground: 15, earth: { lie: "duct", soil: 2, depth: 800 } }, true, "Cg Ci Cf,"],
    [{ ambient: 35 }, true, "Ca Cs Cd Cg Ci Cf,"],
  ])("%j, in the ground: %s", (more, inGround, names) => {
    expect(named(more, inGround).join(" ")).toBe(names);
  });
});

// By hand: along a radial to A at 10 m and B at 30 m, with a branch of 5 m at A; round a ring of 40 m, a place at half way.
describe("where the voltage drops most", () => {
  const to = (place: string, length: number) => ({ to: place, length });
  const radial = dropPaths([
    { from: "DB", legs: [to("A", 10), to("B", 20)] },
    { from: "A", legs: [to("C", 5)] },
    { from: "nowhere", legs: [to("D", 50)] },
  ]);
  const ring = dropPaths([
    { from: "DB", legs: [to("P", 10), to("Q", 10), to("R", 10), to("DB", 10)] },
    { from: "Q", legs: [to("S", 6)] },
  ]);
  it.each([
    [radial, "A", "A", 10],
    [radial, "A", "B", 10],
    [radial, "B", "B", 30],
    [radial, "B", "C", 10],
    [radial, "C", "C", 15],
    [radial, "D", "D", 0],
    [radial, "A", "DB", 0],
    // min(x, y) (L − max(x, y)) / L.
    [ring, "P", "P", 7.5],
    [ring, "Q", "Q", 10],
    [ring, "P", "R", 2.5],
    [ring, "S", "Q", 10],
    [ring, "S", "S", 16],
    [ring, "S", "P", 5],
  ] as const)("%# %s and %s", (paths, one, other, metres) => {
    expect(paths.shared(one, other)).toBeCloseTo(metres, 9);
    expect(paths.shared(other, one)).toBeCloseTo(metres, 9);
  });
  it.each([
    [radial, [], 0, "B", 0],
    [radial, [], 20, "B", 600],
    [radial, [{ place: "C", current: 20 }], 0, "C", 300],
    [radial, [{ place: "C", current: 20 }], 10, "B", 500],
    [ring, [], 32, "S", 512],
    [ring, [{ place: "P", current: 32 }], 0, "P", 240],
  ] as const)("%# of %j and %d A elsewhere", (paths, loads, elsewhere, place, ampereMetres) => {
    expect(worstPlace(paths, loads, elsewhere)).toEqual({ place, ampereMetres });
  });
  it("is nowhere without a run", () => {
    expect(worstPlace(dropPaths([]), [], 10)).toBeUndefined();
    expect(radial.places).toEqual(["A", "B", "C"]);
  });
});

// A factor of 1 is not written into the product; what applies is, in the order of the tables.
describe("a capacity in its conditions", () => {
  const It = { value: 27, unit: "A", steps: [], source: book };
  const in_ = (more: object) =>
    correctedCapacity({ It, insulation: 70, ...more } as Parameters<typeof correctedCapacity>[0]) as Found;
  const grouped = (circuits: number) => ({ grouped: { circuits, arrangement: "bunched" } });
  holds([
    ["30 °C", () => in_({ ambient: 30 }), 27, "It = 27 A"],
    ["31 °C", () => in_({ ambient: 31 }), 27 * 0.94, "27 A × 0.94"],
    ["one circuit alone", () => in_(grouped(1)), 27],
    ["two circuits", () => in_(grouped(2)), 21.6, "27 A × 0.8 = 21.6 A"],
    ["no insulation round it", () => in_({ insulated: 0 }), 27],
    ["1 mm of insulation", () => in_({ insulated: 1 }), 27 * 0.88],
    ["behind a rewirable fuse", () => in_({ semiEnclosed: true }), 27 * 0.725, "27 A × 0.725"],
  ]);
});

// BS EN 60228: 1.15 mΩ/m of 16 mm² copper and 1.91 of aluminium. Pairs are printed of copper alone.
describe("a pair of conductors", () => {
  const standing = (line: number, cpc: number, metals = {}) => r1r2PerMetre(line, cpc, metals)?.source.standing;
  it("is cited from where the pair is printed, which is copper alone", () => {
    const refOf = (metals = {}) => r1r2PerMetre(16, 16, metals)?.source.ref;
    expect(refOf()).toContain("IET On-Site Guide, Table I1");
    expect(refOf({ line: "aluminium", cpc: "aluminium" })).not.toContain("On-Site Guide");
  });
  holds([
    ["of copper", () => r1r2PerMetre(16, 16), 0.0023],
    ["of an aluminium line", () => r1r2PerMetre(16, 16, { line: "aluminium" }), 0.00306, "1.91 mΩ + 1.15 mΩ"],
    ["of an aluminium protective conductor", () => r1r2PerMetre(16, 16, { cpc: "aluminium" }), 0.00306],
  ]);

  it("rests on the printed pair only where both are of copper", () => {
    expect(standing(2.5, 1.5)).toBe("quoted");
    expect(standing(16, 16, { line: "aluminium" })).toBe("computed");
    expect(standing(16, 16, { cpc: "aluminium" })).toBe("computed");
  });
});

it("an uncertainty is in megohms from 100 kΩ on, however small it is", () => {
  const shown = (value: number) =>
    readingUncertainty({ value, step: 1000, unit: "Ω" }, { percent: 1, digits: 0 }, "M1").shown;
  expect([shown(100_000), shown(99_000)]).toEqual(["±0.001 MΩ", "±990 Ω"]);
});

it("a fault current says whether reactance is in it", () => {
  const of = (X: number) =>
    faultAlong({
      voltage: 230,
      start: given(0.2),
      cables: [{ name: "the feeder", resistance: given(0.3), reactance: given(X) }],
    });
  expect(of(0.1).value).toBeLessThan(of(0).value);
  expect(of(0.1).source).not.toEqual(of(0).source);
});

// Two paths in parallel round a ring; 24 m of 2.5/1.5 mm², a point a quarter of the way round and 4 m out on a spur.
describe("what a sound circuit reads", () => {
  const perMetre = { line: 0.00741, neutral: 0.00741, cpc: 0.0121 };
  const lying = { length: 24, of: new Map([["S1", { along: 6, branch: 4 }]]) };
  const of = (
    closed: boolean,
    measurement: Parameters<typeof soundReading>[2],
    links?: Parameters<typeof soundReading>[3],
  ) => soundReading({ closed, perMetre }, lying, measurement, links);
  const round = { kind: "round", other: "cpc", place: "S1" } as const;
  const [r1, r2, spur] = [24 * 0.00741, 24 * 0.0121, 4 * 0.01951];
  const [one, other] = [0.25 * r1 + 0.75 * r2, 0.75 * r1 + 0.25 * r2];

  it.each([
    ["a radial, to the end of its branch", () => of(false, round), 10 * 0.01951],
    ["a ring, end to end", () => of(true, { kind: "ends", conductor: "cpc" }), r2],
    ["a radial, end to end", () => of(false, { kind: "ends", conductor: "cpc" }), Number.POSITIVE_INFINITY],
    ["with a long lead", () => of(false, { kind: "lead", conductor: "cpc", place: "S1" }), 10 * 0.0121],
    ["to where the branch begins", () => of(false, { kind: "half", conductor: "cpc", place: "S1" }), 6 * 0.0121],
    ["opposite ends linked", () => of(true, round), (one * other) / (r1 + r2) + spur],
    ["each leg to itself", () => of(true, round, "same-leg"), 0.25 * 0.75 * (r1 + r2) + spur],
    ["the first link alone", () => of(true, round, "one"), one + spur],
    ["the last link alone", () => of(true, round, "last"), other + spur],
    ["no link", () => of(true, round, "none"), Number.POSITIVE_INFINITY],
  ])("%s", (_, read, ohms) => expect(read()).toBeCloseTo(ohms, 9));
});

// Table 41.5: those of 30 mA and 100 mA were seen quoted, the others follow from the formula.
it.each([
  [0.03, 1667, "quoted"],
  [0.1, 500, "quoted"],
  [0.3, 167, "computed"],
  [0.5, 100, "computed"],
  [0.05, 1000, "computed"],
])("an RCD of %d A disconnects to %d Ω, which is %s", (residual, ohms, standing) => {
  const found = rcdLoopLimit(residual);
  expect([found?.value, found?.source.standing]).toEqual([ohms, standing]);
});
