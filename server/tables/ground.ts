/** Factors of cables in the ground other than of its temperature: its resistivity, the depth, and what lies beside them. */
import { computed, memory, table } from "./table.ts";

/** What the capacities of method D suppose: K·m/W, and mm. */
export const groundAsTabulated = { soil: 2.5, depth: 700 } as const;

/** Factor for a thermal resistivity of the ground other than 2.5 K·m/W. */
interface SoilFactor {
  /** K·m/W. */
  readonly soil: number;
  /** Direct in the ground. */
  readonly buried: number;
  /** In ducts. */
  readonly duct: number;
}

export const soilFactors = table<SoilFactor>({
  id: "factor-4B3",
  title: "Factors (Cs) for the thermal resistivity of the ground",
  ref: "BS 7671:2018+A2:2022, Table 4B3",
  edition: "17th Edition, Amendment 1, and 18th Edition",
  applies: "Multiply tabulated rating of method D. 2.5 K·m/W base; between rows the next higher is taken.",
  units: { soil: "K·m/W", buried: "", duct: "" },
  standing: "memory",
  rows: () => [
    { soil: 0.5, buried: 1.88, duct: 1.28 },
    { soil: 0.7, buried: 1.62, duct: 1.2 },
    { soil: 1, buried: 1.5, duct: 1.18 },
    { soil: 1.5, buried: 1.28, duct: 1.1 },
    { soil: 2, buried: 1.12, duct: 1.05 },
    computed({ soil: 2.5, buried: 1, duct: 1 }),
    { soil: 3, buried: 0.9, duct: 0.96 },
  ],
  notes: ["Where nothing is known of the ground the tables suppose 2.5 K·m/W."],
});

/** Factor for a depth other than 0.7 m. */
interface DepthFactor {
  /** mm. */
  readonly depth: number;
  readonly buried: number;
  readonly duct: number;
}

export const depthFactors = table<DepthFactor>({
  id: "factor-4B4",
  title: "Factors (Cd) for the depth of cables in the ground",
  ref: "BS 7671:2018+A2:2022, Table 4B4",
  edition: "17th Edition, Amendment 1, and 18th Edition",
  applies: "Multiply tabulated rating of method D. 0.7 m base; between rows the next deeper is taken.",
  units: { depth: "mm", buried: "", duct: "" },
  standing: "memory",
  // Heat leaves by ln(4 depth / diameter) of IEC 60287, by which no factor can be further out than this.
  share: 0.05,
  rows: () => [
    { depth: 500, buried: 1.03, duct: 1.02 },
    computed({ depth: 700, buried: 1, duct: 1 }),
    { depth: 1000, buried: 0.97, duct: 0.98 },
    { depth: 1250, buried: 0.95, duct: 0.96 },
    { depth: 1500, buried: 0.94, duct: 0.95 },
    { depth: 1750, buried: 0.93, duct: 0.94 },
    { depth: 2000, buried: 0.92, duct: 0.93 },
    { depth: 2500, buried: 0.91, duct: 0.92 },
    { depth: 3000, buried: 0.9, duct: 0.91 },
  ],
});

/** Factor for several circuits in the ground, by how far they are apart. */
export interface GroundGroupingFactor {
  readonly key: "buried" | "duct";
  readonly circuits: number;
  /** Touching each other. */
  readonly touching: number;
  /** 0.125 m apart; of ducts nothing is printed. */
  readonly d125: number | null;
  readonly d250: number;
  readonly d500: number;
  /** Of ducts alone. */
  readonly d1000: number | null;
}

export const groundGroupingFactors = table<GroundGroupingFactor>({
  id: "factor-4C2",
  title: "Grouping factors (Cg) for cables in the ground",
  ref: "BS 7671:2018+A2:2022, Tables 4C2 and 4C3",
  edition: "17th/18th Edition",
  applies:
    "Method D: more than one circuit direct in the ground, or multicore cables in ducts side by side, one in each. Between distances the next smaller is taken.",
  units: { key: "", circuits: "", touching: "", d125: "", d250: "", d500: "", d1000: "" },
  standing: "memory",
  rows: () => [
    { key: "buried", circuits: 2, touching: 0.75, d125: 0.85, d250: 0.9, d500: 0.9, d1000: null },
    { key: "buried", circuits: 3, touching: 0.65, d125: 0.75, d250: 0.8, d500: 0.85, d1000: null },
    memory(
      { key: "buried", circuits: 4, touching: 0.6, d125: 0.7, d250: 0.75, d500: 0.8, d1000: null },
      { d500: "quoted" },
    ),
    memory(
      { key: "buried", circuits: 5, touching: 0.55, d125: 0.65, d250: 0.7, d500: 0.8, d1000: null },
      { d500: "quoted" },
    ),
    memory(
      { key: "buried", circuits: 6, touching: 0.5, d125: 0.6, d250: 0.7, d500: 0.8, d1000: null },
      { d500: "quoted" },
    ),
    { key: "duct", circuits: 2, touching: 0.85, d125: null, d250: 0.9, d500: 0.95, d1000: 0.95 },
    { key: "duct", circuits: 3, touching: 0.75, d125: null, d250: 0.85, d500: 0.9, d1000: 0.95 },
    { key: "duct", circuits: 4, touching: 0.7, d125: null, d250: 0.8, d500: 0.85, d1000: 0.9 },
    { key: "duct", circuits: 5, touching: 0.65, d125: null, d250: 0.8, d500: 0.85, d1000: 0.9 },
    memory(
      { key: "duct", circuits: 6, touching: 0.6, d125: null, d250: 0.8, d500: 0.8, d1000: 0.9 },
      { touching: "quoted" },
    ),
  ],
  // Quoted on these pages:
  // - IET EngX: grouping factors of Table 4C3
  // - IET EngX: cables buried directly, grouping factor and spacing (0.80 at 0.5 m from four circuits on)
  quotedOn: 2,
});
