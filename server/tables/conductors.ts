import { computed, table } from "./table.ts";

/** Greatest d.c. resistance of a conductor at 20 °C. Ω/km equals mΩ/m. */
interface ConductorResistance {
  /** Nominal cross-section, mm². */
  readonly csa: number;
  /** Plain copper, class 2 (stranded), Ω/km. */
  readonly copper2: number;
  /** Plain copper, class 1 (solid), Ω/km. */
  readonly copper1: number;
  /** Plain copper, class 5 (flexible), Ω/km. */
  readonly copper5: number;
  /** Aluminium, class 2, Ω/km. */
  readonly aluminium2: number | null;
}

export const conductorResistance = table<ConductorResistance>({
  id: "cond-r20",
  title: "Maximum d.c. resistance of copper (and aluminium) conductors at 20 °C",
  ref: "BS EN 60228, Tables 1 to 3",
  edition: "IEC 60228:2004 (values unchanged from BS 6360 for the sizes listed)",
  applies: "Per conductor, per kilometre (numerically equal to mΩ per metre).",
  units: { csa: "mm²", copper2: "Ω/km", copper1: "Ω/km", copper5: "Ω/km", aluminium2: "Ω/km" },
  standing: "quoted",
  rows: () => [
    { csa: 0.5, copper2: 36, copper1: 36, copper5: 39, aluminium2: null },
    { csa: 0.75, copper2: 24.5, copper1: 24.5, copper5: 26, aluminium2: null },
    { csa: 1, copper2: 18.1, copper1: 18.1, copper5: 19.5, aluminium2: null },
    { csa: 1.5, copper2: 12.1, copper1: 12.1, copper5: 13.3, aluminium2: null },
    { csa: 2.5, copper2: 7.41, copper1: 7.41, copper5: 7.98, aluminium2: null },
    { csa: 4, copper2: 4.61, copper1: 4.61, copper5: 4.95, aluminium2: null },
    { csa: 6, copper2: 3.08, copper1: 3.08, copper5: 3.3, aluminium2: null },
    { csa: 10, copper2: 1.83, copper1: 1.83, copper5: 1.91, aluminium2: 3.08 },
    { csa: 16, copper2: 1.15, copper1: 1.15, copper5: 1.21, aluminium2: 1.91 },
    { csa: 25, copper2: 0.727, copper1: 0.727, copper5: 0.78, aluminium2: 1.2 },
    { csa: 35, copper2: 0.524, copper1: 0.524, copper5: 0.554, aluminium2: 0.868 },
    { csa: 50, copper2: 0.387, copper1: 0.387, copper5: 0.386, aluminium2: 0.641 },
    { csa: 70, copper2: 0.268, copper1: 0.268, copper5: 0.272, aluminium2: 0.443 },
    { csa: 95, copper2: 0.193, copper1: 0.193, copper5: 0.206, aluminium2: 0.32 },
    { csa: 120, copper2: 0.153, copper1: 0.153, copper5: 0.161, aluminium2: 0.253 },
    { csa: 150, copper2: 0.124, copper1: 0.124, copper5: 0.129, aluminium2: 0.206 },
    { csa: 185, copper2: 0.0991, copper1: 0.101, copper5: 0.106, aluminium2: 0.164 },
    { csa: 240, copper2: 0.0754, copper1: 0.0775, copper5: 0.0801, aluminium2: 0.125 },
    { csa: 300, copper2: 0.0601, copper1: 0.062, copper5: 0.0641, aluminium2: 0.1 },
    { csa: 400, copper2: 0.047, copper1: 0.0465, copper5: 0.0486, aluminium2: 0.0778 },
  ],
  notes: [
    "Classes 1 and 2 agree up to 150 mm² and differ from 185 mm².",
    "Class 1 copper above 16 mm² is for special cables, such as mineral insulated.",
    "Class 5 at 50 mm² is slightly lower than class 2: so published, not an error.",
  ],
  // Quoted on these pages:
  // - Guide to the Wiring Regulations (17th Ed.), Appendix 4 cable resistance data
  // - Conductor resistance (DIN VDE 0295 / IEC 60228)
  // - Cable maker: IEC 60228 Table A.1/A.2
  // - Connector-maker catalogue p.204: IEC 60228:2004 Class 1 and 2 tables
  // - Cable maker: IEC 60228 conductor classes
  // - Cable maker: copper conductors to IEC 60228 (class 2 and 5) and temperature factors
  quotedOn: 6,
});

/** R1+R2 per metre of copper at 20 °C. */
interface PairResistance {
  /** Line conductor, mm². */
  readonly line: number;
  /** Protective conductor, mm². */
  readonly cpc: number;
  /** R1+R2, mΩ/m. */
  readonly r1r2: number;
  /** Typical product. */
  readonly cable: string;
}

export const pairResistance = table<PairResistance>({
  id: "cond-r1r2",
  title: "R1+R2 per metre at 20 °C, copper line / copper cpc",
  ref: "IET On-Site Guide, Table I1",
  edition: "18th Edition OSG; same numbers in earlier editions (there Table 9A)",
  applies: "Cold (20 °C) resistance, both conductors copper, same length. Use with factors cond-i2 and cond-i3.",
  units: { line: "mm²", cpc: "mm²", r1r2: "mΩ/m", cable: "" },
  standing: "quoted",
  rows: () => [
    computed({ line: 1, cpc: 1, r1r2: 36.2, cable: "1.0 flat T&E" }),
    { line: 1.5, cpc: 1, r1r2: 30.2, cable: "1.5 flat T&E" },
    { line: 1.5, cpc: 1.5, r1r2: 24.2, cable: "" },
    computed({ line: 2.5, cpc: 1, r1r2: 25.51, cable: "" }),
    { line: 2.5, cpc: 1.5, r1r2: 19.51, cable: "2.5 flat T&E" },
    { line: 2.5, cpc: 2.5, r1r2: 14.82, cable: "" },
    { line: 4, cpc: 1.5, r1r2: 16.71, cable: "4 flat T&E" },
    computed({ line: 4, cpc: 2.5, r1r2: 12.02, cable: "" }),
    { line: 4, cpc: 4, r1r2: 9.22, cable: "" },
    { line: 6, cpc: 2.5, r1r2: 10.49, cable: "6 flat T&E" },
    computed({ line: 6, cpc: 4, r1r2: 7.69, cable: "" }),
    { line: 6, cpc: 6, r1r2: 6.16, cable: "" },
    { line: 10, cpc: 4, r1r2: 6.44, cable: "10 flat T&E" },
    computed({ line: 10, cpc: 6, r1r2: 4.91, cable: "" }),
    { line: 10, cpc: 10, r1r2: 3.66, cable: "" },
    { line: 16, cpc: 6, r1r2: 4.23, cable: "16 flat T&E" },
    computed({ line: 16, cpc: 10, r1r2: 2.98, cable: "" }),
    { line: 16, cpc: 16, r1r2: 2.3, cable: "" },
    computed({ line: 25, cpc: 10, r1r2: 2.557, cable: "" }),
    computed({ line: 25, cpc: 16, r1r2: 1.877, cable: "" }),
    { line: 25, cpc: 25, r1r2: 1.454, cable: "" },
    computed({ line: 35, cpc: 16, r1r2: 1.674, cable: "" }),
    computed({ line: 35, cpc: 25, r1r2: 1.251, cable: "" }),
    { line: 35, cpc: 35, r1r2: 1.048, cable: "" },
    computed({ line: 50, cpc: 25, r1r2: 1.114, cable: "" }),
    computed({ line: 50, cpc: 35, r1r2: 0.911, cable: "" }),
    { line: 50, cpc: 50, r1r2: 0.774, cable: "" },
  ],
  notes: [
    "Every row is the sum of two figures of class 1 or 2.",
    "1.0/1.0, 1.5/1.0, 2.5/1.5, 4/1.5, 6/2.5, 10/4 and 16/6 are the flat twin cables.",
  ],
  // Quoted on these pages:
  // - Guide to the Wiring Regulations (17th Ed.), Appendix 4 cable resistance data
  // - ElectriciansForums thread: 2394 revision (7.41, 12.10, 19.51 mohm/m)
  quotedOn: 2,
});
