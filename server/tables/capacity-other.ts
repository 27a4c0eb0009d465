import { table } from "./table.ts";

/** Capacity of mineral insulated cable with a sheath of 70 °C, A. */
interface MineralCapacity {
  /** Size, mm². */
  readonly csa: number;
  /** Clipped, two loaded conductors. */
  readonly C2: number;
  /** Clipped, three: trefoil, or one cable. */
  readonly C3: number;
  /** In free air, two. */
  readonly E2: number;
  /** In free air, three. */
  readonly E3: number;
}

export const capacity4G1A = table<MineralCapacity>({
  id: "ccc-4G1A",
  title: "Current-carrying capacity: mineral insulated, thermoplastic covered or bare and out of touch, 70 °C sheath",
  ref: "BS 7671:2018+A2:2022, Table 4G1A",
  edition: "17th Edition",
  applies: "To 4 mm² of light duty cable, 500 V; above of heavy duty, 750 V. Bare and within touch it is 0.9 of it.",
  units: { csa: "mm²", C2: "A", C3: "A", E2: "A", E3: "A" },
  standing: "quoted",
  rows: () => [
    { csa: 1, C2: 18.5, C3: 15, E2: 19.5, E3: 16.5 },
    { csa: 1.5, C2: 23, C3: 19, E2: 25, E3: 21 },
    { csa: 2.5, C2: 31, C3: 26, E2: 33, E3: 28 },
    { csa: 4, C2: 40, C3: 35, E2: 44, E3: 37 },
    { csa: 6, C2: 57, C3: 48, E2: 60, E3: 51 },
    { csa: 10, C2: 77, C3: 65, E2: 82, E3: 69 },
    { csa: 16, C2: 102, C3: 86, E2: 109, E3: 92 },
    { csa: 25, C2: 133, C3: 112, E2: 142, E3: 120 },
    { csa: 35, C2: 163, C3: 137, E2: 174, E3: 147 },
    { csa: 50, C2: 202, C3: 169, E2: 215, E3: 182 },
    { csa: 70, C2: 247, C3: 207, E2: 264, E3: 223 },
    { csa: 95, C2: 296, C3: 249, E2: 317, E3: 267 },
    { csa: 120, C2: 340, C3: 286, E2: 364, E3: 308 },
    { csa: 150, C2: 388, C3: 327, E2: 416, E3: 352 },
    { csa: 185, C2: 440, C3: 371, E2: 472, E3: 399 },
    { csa: 240, C2: 514, C3: 434, E2: 552, E3: 466 },
  ],
  notes: ["Heavy duty cable to 4 mm² carries some 10 % more."],
  // Quoted on these pages:
  // - R&M Electrical specification catalogue: Table 4G1A, MICC cables
  quotedOn: 1,
});

/** Capacity and drop of a flexible cable above the sizes of cords. */
interface FlexibleCable {
  /** Size, mm². */
  readonly csa: number;
  /** Two-core, A. */
  readonly rating2: number | null;
  /** Three to five cores, A. */
  readonly rating3: number;
  /** Single-phase, two-core, mV/A/m. */
  readonly phase1: number | null;
  /** Three-phase, mV/A/m. */
  readonly phase3: number | null;
}

const units = { csa: "mm²", rating2: "A", rating3: "A", phase1: "mV/A/m", phase3: "mV/A/m" } as const;

export const flexible60 = table<FlexibleCable>({
  id: "flex-4F1",
  title: "Flexible cables, 60 °C thermosetting",
  ref: "BS 7671:2018+A2:2022, Tables 4F1A and 4F1B",
  edition: "17th Edition",
  applies: "From 4 mm², in free air at 30 °C.",
  units,
  standing: "quoted",
  rows: () => [
    { csa: 4, rating2: 30, rating3: 26, phase1: 12, phase3: 10 },
    { csa: 6, rating2: 39, rating3: 34, phase1: 7.8, phase3: 6.7 },
    { csa: 10, rating2: 51, rating3: 47, phase1: 4.6, phase3: 4 },
    { csa: 16, rating2: 73, rating3: 63, phase1: 2.9, phase3: 2.5 },
    { csa: 25, rating2: 97, rating3: 83, phase1: 1.85, phase3: 1.55 },
    { csa: 35, rating2: null, rating3: 102, phase1: null, phase3: 1.15 },
    { csa: 50, rating2: null, rating3: 124, phase1: null, phase3: 0.84 },
    { csa: 70, rating2: null, rating3: 158, phase1: null, phase3: 0.58 },
    { csa: 95, rating2: null, rating3: 192, phase1: null, phase3: 0.44 },
  ],
  // Quoted on these pages:
  // - CSE Distributors: Table 4F1A and 4F1B
  quotedOn: 1,
});

export const flexible90 = table<FlexibleCable>({
  id: "flex-4F2",
  title: "Flexible cables, 90 °C thermosetting",
  ref: "BS 7671:2018+A2:2022, Tables 4F2A and 4F2B",
  edition: "17th and 18th Edition",
  applies: "From 4 mm², in free air at 30 °C.",
  units,
  standing: "quoted",
  rows: () => [
    { csa: 4, rating2: 42, rating3: 37, phase1: 13.2, phase3: 11.1 },
    { csa: 6, rating2: 55, rating3: 49, phase1: 8.5, phase3: 7.4 },
    { csa: 10, rating2: 76, rating3: 66, phase1: 5.1, phase3: 4.4 },
    { csa: 16, rating2: 103, rating3: 89, phase1: 3.2, phase3: 2.7 },
    { csa: 25, rating2: 136, rating3: 119, phase1: null, phase3: 1.73 },
    { csa: 35, rating2: null, rating3: 146, phase1: null, phase3: 1.23 },
    { csa: 50, rating2: null, rating3: 177, phase1: null, phase3: 0.93 },
    { csa: 70, rating2: null, rating3: 225, phase1: null, phase3: 0.64 },
    { csa: 95, rating2: null, rating3: 273, phase1: null, phase3: 0.49 },
    { csa: 120, rating2: null, rating3: 316, phase1: null, phase3: 0.39 },
    { csa: 150, rating2: null, rating3: 363, phase1: null, phase3: 0.32 },
    { csa: 185, rating2: null, rating3: 414, phase1: null, phase3: 0.27 },
    { csa: 240, rating2: null, rating3: 487, phase1: null, phase3: 0.231 },
    { csa: 300, rating2: null, rating3: 560, phase1: null, phase3: 0.195 },
  ],
  // Quoted on these pages:
  // - CSE Distributors: Table 4F2A
  // - Cable maker, Table 4F2A and 4F2B reproduced from BS 7671:2018
  quotedOn: 2,
});

/** Factor for air other than 30 °C of mineral cable with a sheath of 70 °C. */
interface MineralAmbient {
  /** °C. */
  readonly temperature: number;
  readonly factor: number;
}

export const mineralAmbient = table<MineralAmbient>({
  id: "factor-4B1-mineral",
  title: "Ambient air temperature factors (Ca), mineral insulated with 70 °C sheath",
  ref: "BS 7671:1992, ambient factors of mineral insulated cable",
  edition: "16th Edition",
  applies: "Multiply tabulated rating. 30 °C base.",
  units: { temperature: "°C", factor: "" },
  standing: "quoted",
  rows: () => [
    { temperature: 25, factor: 1.03 },
    { temperature: 30, factor: 1 },
    { temperature: 35, factor: 0.93 },
    { temperature: 40, factor: 0.85 },
    { temperature: 45, factor: 0.77 },
    { temperature: 50, factor: 0.67 },
    { temperature: 55, factor: 0.57 },
  ],
  // Quoted on these pages:
  // - IEE wiring regulation basic summary and tables: ambient factors
  quotedOn: 1,
});
