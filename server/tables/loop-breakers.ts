import { computed, quoted, table } from "./table.ts";

/** A term of the loop impedance rule. */
interface LoopTerm {
  /** Short name for look-up. */
  readonly key: string;
  /** Name. */
  readonly quantity: string;
  readonly symbol: string;
  /** Number or expression. */
  readonly value: number | string;
  readonly unit: string;
}

export const loopTerms = table<LoopTerm>({
  id: "zs-formula",
  title: "Maximum earth fault loop impedance: formula and factors",
  ref: "BS 7671:2018+A2:2022, 411.4.4",
  edition: "18th Edition; Cmin introduced by BS 7671:2008+A3:2015",
  applies: "TN systems with automatic disconnection by an overcurrent device, U0 = 230 V.",
  units: { key: "", quantity: "", symbol: "", value: "", unit: "" },
  standing: "quoted",
  rows: () => [
    { key: "U0", quantity: "Nominal line-to-earth voltage", symbol: "U0", value: 230, unit: "V" },
    {
      key: "cmin",
      quantity: "Minimum voltage factor, BS 7671:2008+A3:2015 and later",
      symbol: "Cmin",
      value: 0.95,
      unit: "1",
    },
    quoted(
      {
        key: "cmin-before-2015",
        quantity: "Minimum voltage factor before BS 7671:2008+A3:2015",
        symbol: "Cmin",
        value: 1,
        unit: "1",
      },
      {},
      "Earlier tables were simply U0/Ia at 230 V (240 V in the 16th Edition).",
    ),
    { key: "limit", quantity: "Maximum loop impedance", symbol: "Zs", value: "U0*Cmin/Ia", unit: "Ω" },
    { key: "B", quantity: "Ia multiple of In, type B", symbol: "Ia/In", value: 5, unit: "1" },
    { key: "C", quantity: "Ia multiple of In, type C", symbol: "Ia/In", value: 10, unit: "1" },
    { key: "D", quantity: "Ia multiple of In, type D", symbol: "Ia/In", value: 20, unit: "1" },
    quoted(
      {
        key: "cold-factor",
        quantity: "Rule-of-thumb factor for a measured (cold) value",
        symbol: "",
        value: 0.8,
        unit: "1",
      },
      {},
      "0.8 is the factor of Appendix 3 (Appendix 14 in the 17th Edition).",
    ),
    {
      key: "cold-divisor",
      quantity: "Exact temperature divisor 70 °C to 10 °C, simple form",
      symbol: "1+0.004*(70-10)",
      value: 1.24,
      unit: "1",
    },
    quoted(
      {
        key: "cold-divisor-ratio",
        quantity: "Exact temperature divisor 70 °C to 10 °C, ratio form",
        symbol: "(1+0.004*50)/(1+0.004*(-10))",
        value: 1.25,
        unit: "1",
      },
      {},
      "1.20/0.96 = 1.25; this is the 0.8 factor exactly.",
    ),
    { key: "loop", quantity: "Total loop", symbol: "Zs", value: "Ze+(R1+R2)", unit: "Ω" },
  ],
  notes: [
    "Training pages still give 411.4.5, the number of this rule in the 17th Edition; 411.4.4 is from memory.",
    "The tables assume conductors at operating temperature, so a cold reading is compared with about 80 % or corrected.",
  ],
  // Quoted on these pages:
  // - Training notes: ADS, disconnection times and Zs (Chapter 41)
  // - ElectriciansForums thread: 45 A breaker max Zs
  // - Schneider Electric FAQ FA175048: Zs values and Cmin
  // - Professional Electrician (NAPIT): which maximum Zs values to use
  // - ElectriciansForums post reproducing IET Wiring Matters 54 (2015): reduction in maximum Zs, Cmin 0.95, ESQCR +10/-6 %
  // - ElectriciansForums thread: 17th Edition earth loop impedance table
  // - Electrical Academy: 17th Edition Amendment 3 changes
  // - ElectriciansForums thread: Zs values, p.6 (Ia multipliers)
  // - DIYnot thread: Zs figure for type B, C or D
  // - NICEIC/ELECSA Connections, Spring 2015, p.61: limiting values of measured Zs
  // - ElectriciansForums thread: Max Zs values in the On-Site Guide
  // - Electricians Blog: max Zs for MCBs (OSG Table B6)
  // - Q&A aggregator page 'What is the maximum Zs permitted by BS7671?'
  // - Q&A page quoting a regulations answer: 1667 ohm and the 200 ohm stability note
  quotedOn: 14,
});

/** Greatest Zs of a circuit-breaker, with its cold forms. */
interface BreakerLoop {
  /** B, C or D. */
  readonly curve: "B" | "C" | "D";
  /** Rated current, A. */
  readonly rating: number;
  /** Current for operation in 0.4 s (5/10/20 x In), A. */
  readonly Ia: number;
  /** Maximum Zs, 0.4 s, Ω. */
  readonly zs: number;
  /** Printed value x 0.8, rounded (GN3 / trade-body style), Ω. */
  readonly gn3: number;
  /** Unrounded value x 0.8, truncated (never above the true limit), Ω. */
  readonly strict: number;
  /** Unrounded value / 1.24, rounded (On-Site Guide Table B6 style), Ω. */
  readonly osg: number;
  /** Same device at Cmin = 1 (17th Edition before A3:2015), Ω. */
  readonly zsCmin1: number;
}

export const breakerLoop = table<BreakerLoop>({
  id: "zs-41.3",
  title: "Maximum Zs: circuit-breakers BS EN 60898 and RCBOs BS EN 61009-1 (overcurrent characteristic), U0 230 V",
  ref: "BS 7671:2018+A2:2022, Table 41.3",
  edition: "18th Edition, Cmin = 0.95",
  applies:
    "TN final or distribution circuits protected by the instantaneous trip. The value serves both 0.4 s (411.3.2.2) and, for types B and C, 5 s (411.3.2.3); for type D a separate 5 s value is printed (both statements from memory).",
  refs: { zsCmin1: "BS 7671:2008, Table 41.3" },
  units: { curve: "", rating: "A", Ia: "A", zs: "Ω", gn3: "Ω", strict: "Ω", osg: "Ω", zsCmin1: "Ω" },
  standing: "computed",
  rows: () => [
    { curve: "B", rating: 3, Ia: 15, zs: 14.57, gn3: 11.66, strict: 11.65, osg: 11.75, zsCmin1: 15.33 },
    quoted(
      { curve: "B", rating: 6, Ia: 30, zs: 7.28, gn3: 5.82, strict: 5.82, osg: 5.87, zsCmin1: 7.67 },
      { strict: "computed" },
    ),
    { curve: "B", rating: 10, Ia: 50, zs: 4.37, gn3: 3.5, strict: 3.49, osg: 3.52, zsCmin1: 4.6 },
    computed(
      { curve: "B", rating: 16, Ia: 80, zs: 2.73, gn3: 2.18, strict: 2.18, osg: 2.2, zsCmin1: 2.87 },
      { zsCmin1: "quoted" },
    ),
    { curve: "B", rating: 20, Ia: 100, zs: 2.19, gn3: 1.75, strict: 1.74, osg: 1.76, zsCmin1: 2.3 },
    { curve: "B", rating: 25, Ia: 125, zs: 1.75, gn3: 1.4, strict: 1.39, osg: 1.41, zsCmin1: 1.84 },
    quoted(
      { curve: "B", rating: 32, Ia: 160, zs: 1.37, gn3: 1.1, strict: 1.09, osg: 1.1, zsCmin1: 1.44 },
      { gn3: "computed", strict: "computed", osg: "computed", zsCmin1: "computed" },
    ),
    { curve: "B", rating: 40, Ia: 200, zs: 1.09, gn3: 0.87, strict: 0.87, osg: 0.88, zsCmin1: 1.15 },
    quoted(
      { curve: "B", rating: 45, Ia: 225, zs: 0.97, gn3: 0.78, strict: 0.77, osg: 0.78, zsCmin1: 1.02 },
      { gn3: "computed", strict: "computed", osg: "computed", zsCmin1: "computed" },
    ),
    { curve: "B", rating: 50, Ia: 250, zs: 0.87, gn3: 0.7, strict: 0.69, osg: 0.7, zsCmin1: 0.92 },
    { curve: "B", rating: 63, Ia: 315, zs: 0.69, gn3: 0.55, strict: 0.55, osg: 0.56, zsCmin1: 0.73 },
    computed(
      { curve: "B", rating: 80, Ia: 400, zs: 0.55, gn3: 0.44, strict: 0.43, osg: 0.44, zsCmin1: 0.57 },
      { zsCmin1: "quoted" },
    ),
    { curve: "B", rating: 100, Ia: 500, zs: 0.44, gn3: 0.35, strict: 0.34, osg: 0.35, zsCmin1: 0.46 },
    { curve: "B", rating: 125, Ia: 625, zs: 0.35, gn3: 0.28, strict: 0.27, osg: 0.28, zsCmin1: 0.37 },
    { curve: "C", rating: 3, Ia: 30, zs: 7.28, gn3: 5.82, strict: 5.82, osg: 5.87, zsCmin1: 7.67 },
    { curve: "C", rating: 6, Ia: 60, zs: 3.64, gn3: 2.91, strict: 2.91, osg: 2.94, zsCmin1: 3.83 },
    { curve: "C", rating: 10, Ia: 100, zs: 2.19, gn3: 1.75, strict: 1.74, osg: 1.76, zsCmin1: 2.3 },
    { curve: "C", rating: 16, Ia: 160, zs: 1.37, gn3: 1.1, strict: 1.09, osg: 1.1, zsCmin1: 1.44 },
    { curve: "C", rating: 20, Ia: 200, zs: 1.09, gn3: 0.87, strict: 0.87, osg: 0.88, zsCmin1: 1.15 },
    { curve: "C", rating: 25, Ia: 250, zs: 0.87, gn3: 0.7, strict: 0.69, osg: 0.7, zsCmin1: 0.92 },
    { curve: "C", rating: 32, Ia: 320, zs: 0.68, gn3: 0.54, strict: 0.54, osg: 0.55, zsCmin1: 0.72 },
    computed(
      { curve: "C", rating: 40, Ia: 400, zs: 0.55, gn3: 0.44, strict: 0.43, osg: 0.44, zsCmin1: 0.57 },
      { zsCmin1: "quoted" },
    ),
    { curve: "C", rating: 45, Ia: 450, zs: 0.49, gn3: 0.39, strict: 0.38, osg: 0.39, zsCmin1: 0.51 },
    { curve: "C", rating: 50, Ia: 500, zs: 0.44, gn3: 0.35, strict: 0.34, osg: 0.35, zsCmin1: 0.46 },
    computed(
      { curve: "C", rating: 63, Ia: 630, zs: 0.35, gn3: 0.28, strict: 0.27, osg: 0.28, zsCmin1: 0.36 },
      { zsCmin1: "quoted" },
    ),
    { curve: "C", rating: 80, Ia: 800, zs: 0.27, gn3: 0.22, strict: 0.21, osg: 0.22, zsCmin1: 0.29 },
    { curve: "C", rating: 100, Ia: 1000, zs: 0.22, gn3: 0.18, strict: 0.17, osg: 0.18, zsCmin1: 0.23 },
    { curve: "C", rating: 125, Ia: 1250, zs: 0.17, gn3: 0.14, strict: 0.13, osg: 0.14, zsCmin1: 0.18 },
    { curve: "D", rating: 3, Ia: 60, zs: 3.64, gn3: 2.91, strict: 2.91, osg: 2.94, zsCmin1: 3.83 },
    quoted(
      { curve: "D", rating: 6, Ia: 120, zs: 1.82, gn3: 1.46, strict: 1.45, osg: 1.47, zsCmin1: 1.92 },
      { strict: "computed", osg: "computed", zsCmin1: "computed" },
    ),
    { curve: "D", rating: 10, Ia: 200, zs: 1.09, gn3: 0.87, strict: 0.87, osg: 0.88, zsCmin1: 1.15 },
    { curve: "D", rating: 16, Ia: 320, zs: 0.68, gn3: 0.54, strict: 0.54, osg: 0.55, zsCmin1: 0.72 },
    computed(
      { curve: "D", rating: 20, Ia: 400, zs: 0.55, gn3: 0.44, strict: 0.43, osg: 0.44, zsCmin1: 0.57 },
      { zsCmin1: "quoted" },
    ),
    quoted(
      { curve: "D", rating: 25, Ia: 500, zs: 0.44, gn3: 0.35, strict: 0.34, osg: 0.35, zsCmin1: 0.46 },
      { gn3: "computed", strict: "computed", osg: "computed", zsCmin1: "computed" },
    ),
    { curve: "D", rating: 32, Ia: 640, zs: 0.34, gn3: 0.27, strict: 0.27, osg: 0.28, zsCmin1: 0.36 },
    { curve: "D", rating: 40, Ia: 800, zs: 0.27, gn3: 0.22, strict: 0.21, osg: 0.22, zsCmin1: 0.29 },
    { curve: "D", rating: 45, Ia: 900, zs: 0.24, gn3: 0.19, strict: 0.19, osg: 0.2, zsCmin1: 0.26 },
    { curve: "D", rating: 50, Ia: 1000, zs: 0.22, gn3: 0.18, strict: 0.17, osg: 0.18, zsCmin1: 0.23 },
    { curve: "D", rating: 63, Ia: 1260, zs: 0.17, gn3: 0.14, strict: 0.13, osg: 0.14, zsCmin1: 0.18 },
    { curve: "D", rating: 80, Ia: 1600, zs: 0.14, gn3: 0.11, strict: 0.1, osg: 0.11, zsCmin1: 0.14 },
    computed(
      { curve: "D", rating: 100, Ia: 2000, zs: 0.11, gn3: 0.09, strict: 0.08, osg: 0.09, zsCmin1: 0.11 },
      { zsCmin1: "quoted" },
    ),
    { curve: "D", rating: 125, Ia: 2500, zs: 0.09, gn3: 0.07, strict: 0.06, osg: 0.07, zsCmin1: 0.09 },
  ],
  notes: [
    "Rounded half up to two decimals, so a few printed values lie slightly above the quotient (0.437 is printed 0.44).",
    "The older figures were not always rounded: B16, B80, C40, C63, D20 and D100 were printed with the third digit cut off.",
    "45 A is not printed in the table; the formula value is used in practice and the On-Site Guide lists a cold value for it.",
    "The 3 A rows are formula values; whether each type prints one was not confirmed.",
    "Types B and C print one number for 0.4 s and 5 s; only type D prints a separate 5 s value (both from memory).",
    "Of the cold values only B6 (5.82 and 5.87) and D6 (1.46) were seen; the rest follow the same styles.",
  ],
  // Quoted on these pages:
  // - ElectriciansForums thread: Max Zs values in the On-Site Guide
  // - Training notes: ADS, disconnection times and Zs (Chapter 41)
  // - ElectriciansForums thread: max Zs on certification
  // - Q&A aggregator page 'What is the maximum Zs permitted by BS7671?'
  // - ElectriciansForums thread: 45 A breaker max Zs
  // - IET EngX: max Zs in BS 7671 A3 vs Guidance Note 3
  quotedOn: 6,
});

/** Greatest Zs of a type D breaker for 5 s. */
interface BreakerLoopD5s {
  /** D. */
  readonly curve: "D";
  /** Rated current, A. */
  readonly rating: number;
  /** Maximum Zs for 5 s, Ω. */
  readonly zs: number;
}

export const breakerLoopD5s = table<BreakerLoopD5s>({
  id: "zs-41.3-D-5s",
  title: "Type D circuit-breakers: maximum Zs for 5 s (printed separately)",
  ref: "BS 7671:2018+A2:2022, Table 41.3, type D at 5 s",
  edition: "18th Edition, Cmin = 0.95",
  applies:
    "Only where 5 s disconnection is allowed (411.3.2.3). Uses Ia for 5 s of about 10 x In from the Appendix 3 curves.",
  units: { curve: "", rating: "A", zs: "Ω" },
  standing: "memory",
  rows: () => [
    { curve: "D", rating: 6, zs: 3.64 },
    { curve: "D", rating: 10, zs: 2.19 },
    { curve: "D", rating: 16, zs: 1.37 },
    { curve: "D", rating: 20, zs: 1.09 },
    { curve: "D", rating: 25, zs: 0.87 },
    { curve: "D", rating: 32, zs: 0.68 },
    { curve: "D", rating: 40, zs: 0.55 },
    { curve: "D", rating: 50, zs: 0.44 },
    { curve: "D", rating: 63, zs: 0.35 },
    { curve: "D", rating: 80, zs: 0.27 },
    { curve: "D", rating: 100, zs: 0.22 },
    { curve: "D", rating: 125, zs: 0.17 },
  ],
  notes: ["From memory: the 5 s values equal those of type C (10 × In). No page seen prints them."],
});
