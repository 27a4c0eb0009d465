import { lasting, type Source, sourced } from "./source.ts";
import { computed, quoted, rowOf, sourceOf, table } from "./table.ts";

/** Factor for ambient air other than 30 °C. */
export interface AmbientFactor {
  /** Ambient air, °C. */
  readonly temperature: number;
  /** 70 °C thermoplastic. */
  readonly at70: number;
  /** 90 °C thermosetting. */
  readonly at90: number;
}

/** Temperatures the capacities are tabulated for, °C. */
export const tabulatedAt = { air: 30, ground: 20 } as const;

export const ambientFactors = table<AmbientFactor>({
  id: "factor-4B1",
  title: "Ambient air temperature factors (Ca)",
  ref: "BS 7671:2018+A2:2022, Table 4B1",
  edition: "17th/18th Edition; 25 °C entry is a long-standing rounded value",
  applies: "Multiply tabulated rating. 30 °C base.",
  units: { temperature: "°C", at70: "", at90: "" },
  standing: "quoted",
  rows: () => [
    quoted({ temperature: 25, at70: 1.03, at90: 1.02 }, { at90: "memory" }),
    quoted({ temperature: 30, at70: 1, at90: 1 }, { at90: "computed" }),
    quoted({ temperature: 35, at70: 0.94, at90: 0.96 }, { at90: "computed" }),
    quoted({ temperature: 40, at70: 0.87, at90: 0.91 }, { at90: "computed" }),
    quoted({ temperature: 45, at70: 0.79, at90: 0.87 }, { at90: "computed" }),
    quoted({ temperature: 50, at70: 0.71, at90: 0.82 }, { at90: "computed" }),
    quoted({ temperature: 55, at70: 0.61, at90: 0.76 }, { at90: "computed" }),
    computed({ temperature: 60, at70: 0.5, at90: 0.71 }),
  ],
  notes: [
    "1.03 at 25 °C is kept in BS 7671; the IEC table prints 1.06.",
    "The bracketed value 0.97 printed at 50 °C for rewirable-fuse circuits breaks the sequence and is not used.",
  ],
  // Quoted on these pages:
  // - IEE wiring regulation basic summary and tables: ambient factors
  // - IEE wiring regulation basic summary and tables: ambient and grouping factors
  // - US residential code ambient factors for 90 C insulation (same square-root law)
  quotedOn: 3,
});

/** Factor for ground other than 20 °C. */
interface GroundFactor {
  /** Ground, °C. */
  readonly temperature: number;
  /** 70 °C thermoplastic. */
  readonly at70: number;
  /** 90 °C thermosetting. */
  readonly at90: number;
}

export const groundFactors = table<GroundFactor>({
  id: "factor-4B2",
  title: "Ground temperature factors (Ca) for cables in the ground",
  ref: "BS 7671:2018+A2:2022, Table 4B2",
  edition: "any; the law is the same in every edition",
  applies: "Multiply tabulated rating of method D. 20 °C base.",
  units: { temperature: "°C", at70: "", at90: "" },
  standing: "computed",
  rows: () => [
    { temperature: 10, at70: 1.1, at90: 1.07 },
    { temperature: 15, at70: 1.05, at90: 1.04 },
    { temperature: 20, at70: 1, at90: 1 },
    { temperature: 25, at70: 0.95, at90: 0.96 },
    { temperature: 30, at70: 0.89, at90: 0.93 },
    { temperature: 35, at70: 0.84, at90: 0.89 },
    { temperature: 40, at70: 0.77, at90: 0.85 },
    { temperature: 45, at70: 0.71, at90: 0.8 },
    { temperature: 50, at70: 0.63, at90: 0.76 },
    { temperature: 55, at70: 0.55, at90: 0.71 },
    { temperature: 60, at70: 0.45, at90: 0.65 },
  ],
  notes: ["√((conductor − ground)/(conductor − 20)), to two decimals: no page was seen that prints the table."],
});

/** Factor for circuits grouped together, by their number. */
interface GroupingFactor {
  /** Short name for look-up. */
  readonly key: "bunched" | "wall" | "tray" | "ladder";
  /** How they lie. */
  readonly arrangement: string;
  /** 1 circuit. */
  readonly n1: number;
  /** 2 circuits. */
  readonly n2: number;
  /** 3 circuits. */
  readonly n3: number;
  /** 4 circuits. */
  readonly n4: number;
  /** 5 circuits. */
  readonly n5: number;
  /** 6 circuits. */
  readonly n6: number;
  /** 7 circuits. */
  readonly n7: number;
  /** 8 circuits. */
  readonly n8: number;
  /** 9 circuits. */
  readonly n9: number;
  /** 12 circuits. */
  readonly n12: number;
  /** 16 circuits. */
  readonly n16: number;
  /** 20 circuits. */
  readonly n20: number;
}

export const groupingFactors = table<GroupingFactor>({
  id: "factor-4C1",
  title: "Grouping factors (Cg)",
  ref: "BS 7671:2018+A2:2022, Table 4C1",
  edition: "17th/18th Edition (textbook copy)",
  applies:
    "Uniform groups, equally loaded, cables touching. Row 1 also applies to conduit/trunking. No factor if horizontal spacing exceeds 2 overall diameters.",
  units: {
    key: "",
    arrangement: "",
    n1: "",
    n2: "",
    n3: "",
    n4: "",
    n5: "",
    n6: "",
    n7: "",
    n8: "",
    n9: "",
    n12: "",
    n16: "",
    n20: "",
  },
  standing: "quoted",
  rows: () => [
    {
      key: "bunched",
      arrangement: "Bunched in air, on surface, embedded or enclosed",
      n1: 1,
      n2: 0.8,
      n3: 0.7,
      n4: 0.65,
      n5: 0.6,
      n6: 0.57,
      n7: 0.54,
      n8: 0.52,
      n9: 0.5,
      n12: 0.45,
      n16: 0.41,
      n20: 0.38,
    },
    {
      key: "wall",
      arrangement: "Single layer on wall or floor",
      n1: 1,
      n2: 0.85,
      n3: 0.79,
      n4: 0.75,
      n5: 0.73,
      n6: 0.72,
      n7: 0.72,
      n8: 0.71,
      n9: 0.7,
      n12: 0.7,
      n16: 0.7,
      n20: 0.7,
    },
    {
      key: "tray",
      arrangement: "Single layer multicore on perforated tray",
      n1: 1,
      n2: 0.88,
      n3: 0.82,
      n4: 0.77,
      n5: 0.75,
      n6: 0.73,
      n7: 0.73,
      n8: 0.72,
      n9: 0.72,
      n12: 0.72,
      n16: 0.72,
      n20: 0.72,
    },
    {
      key: "ladder",
      arrangement: "Single layer multicore on ladder or cleats",
      n1: 1,
      n2: 0.87,
      n3: 0.82,
      n4: 0.8,
      n5: 0.8,
      n6: 0.79,
      n7: 0.79,
      n8: 0.78,
      n9: 0.78,
      n12: 0.78,
      n16: 0.78,
      n20: 0.78,
    },
  ],
  // Quoted on these pages:
  // - Guide to the Wiring Regulations (17th Ed.), p.60: Table 4C1
  // - IET EngX: derating question (4D4A 10 mm2 method E; 4C1 eight circuits)
  // - IEE wiring regulation basic summary and tables: ambient and grouping factors
  quotedOn: 3,
});

/** Factor for a cable surrounded by thermal insulation. */
interface ThermalInsulationFactor {
  /** Length in insulation, mm. */
  readonly length: number;
  readonly factor: number;
  /** Note. */
  readonly condition: string;
}

export const thermalInsulationFactors = table<ThermalInsulationFactor>({
  id: "factor-ins",
  title: "Cable surrounded by thermal insulation",
  ref: "BS 7671:2018+A2:2022, 523.9 and Table 52.2",
  edition: "18th Edition",
  applies: "Cables totally surrounded; partial contact uses the 4D5 installation methods.",
  units: { length: "mm", factor: "", condition: "" },
  standing: "memory",
  rows: () => [
    { length: 50, factor: 0.88, condition: "up to this length" },
    { length: 100, factor: 0.78, condition: "up to this length" },
    { length: 200, factor: 0.63, condition: "up to this length" },
    { length: 400, factor: 0.51, condition: "up to this length" },
    quoted(
      { length: 500, factor: 0.5, condition: "totally surrounded for more than 0.5 m, or where no data" },
      {},
      "The factor and the 0.5 m from which it holds were seen.",
    ),
  ],
  // Quoted on these pages:
  // - The IEE Wiring Regulations (textbook), circuit design chapter: 0.725 for BS 3036, 0.5 in insulation
  // - TLC wholesaler book 4.3.7: combined factors example (thermal insulation 0.5, four circuits 0.65)
  quotedOn: 2,
});

/** A relation between device and cable. */
interface OverloadRule {
  /** Short name for look-up. */
  readonly key: string;
  readonly rule: string;
  readonly value: number | string;
}

export const overloadRules = table<OverloadRule>({
  id: "factor-fuse",
  title: "Rewirable fuse factor and overload relations",
  ref: "BS 7671:2018+A2:2022, 433.1 and Appendix 4",
  edition: "17th/18th Edition",
  applies: "Sizing with BS 3036.",
  units: { key: "", rule: "", value: "" },
  standing: "quoted",
  rows: () => [
    { key: "semi-enclosed", rule: "Factor Cf for BS 3036 semi-enclosed fuses (In ≤ 0.725 * Iz)", value: 0.725 },
    { key: "relation", rule: "Ib ≤ In ≤ Iz, and I2 ≤ 1.45 * Iz", value: "rule" },
    computed({ key: "semi-enclosed-reason", rule: "0.725 = 1.45/2 (fusing factor 2)", value: 0.725 }),
    { key: "breaker", rule: "Conventional operating current of a circuit-breaker", value: 1.45 },
    quoted(
      { key: "ground", rule: "Factor Cc for a cable in the ground (In ≤ 0.9 * Iz)", value: 0.9 },
      {},
      "433.1.203: ground of 20 °C leaves a cable less in hand for an overload than air of 30 °C.",
    ),
  ],
  // Quoted on these pages:
  // - IET EngX: cables in buried duct, Table 4C3
  // - IEE wiring regulation basic summary and tables: ambient factors
  // - The IEE Wiring Regulations (textbook), circuit design chapter: 0.725 for BS 3036, 0.5 in insulation
  // - DIYnot thread: 433.1 relations In, Iz, I2, 1.45 Iz
  // - RCBO maker data: trip tests and RCD break times
  quotedOn: 5,
});

/**
 * Fire-resisting cable has no table of its own: it is rated as cable of its insulation and make. That Table 4A3 assigns it
 * so was not read, and its capacity carries a band for that.
 */
export const fireResistingRating: Source = lasting(
  sourced(1, "BS 7671:2018+A2:2022, Table 4A3, the rating table of fire-resisting cable", "memory").source,
);

/** A rule of overload, cited by the regulation it stands in. */
const cited = (key: string, clause: string): Source => {
  const row = rowOf(overloadRules, { key });
  if (!row) throw new Error(`${overloadRules.id} lacks ${key}`);
  return lasting({ ...sourceOf(overloadRules, row, "value"), ref: `BS 7671:2018+A2:2022, ${clause}` });
};

export const overloadSources = {
  relation: cited("relation", "433.1.1"),
  breaker: cited("breaker", "433.1.1"),
  semiEnclosed: cited("semi-enclosed", "433.1.202"),
  ground: cited("ground", "433.1.203"),
} as const;
