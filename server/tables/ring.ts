import { memory, quoted, table } from "./table.ts";

/** What the ring test should show. */
interface RingContinuity {
  /** Short name for look-up. */
  readonly key: string;
  /** What. */
  readonly quantity: string;
  /** Relation or number. */
  readonly expected: string;
  readonly unit: string;
  /** Acceptance. */
  readonly tolerance: string;
}

export const ringContinuity = table<RingContinuity>({
  id: "ring-continuity",
  title: "Ring final circuit continuity: expected relations",
  ref: "BS 7671:2018+A2:2022, 643.2.1, and Guidance Note 3",
  edition: "18th Edition; 612.2.2 in the 17th Edition",
  applies: "Dead test, ring disconnected at the board, all accessories connected, no spurs at the measured point.",
  units: { key: "", quantity: "", expected: "", unit: "", tolerance: "" },
  standing: "quoted",
  rows: () => [
    {
      key: "line-neutral-ends",
      quantity: "End-to-end line r1 v neutral rn",
      expected: "r1 = rn",
      unit: "Ω",
      tolerance: "within 0.05 Ω",
    },
    quoted(
      {
        key: "cpc-ratio",
        quantity: "End-to-end cpc r2, 2.5/1.5 mm² cable",
        expected: "r2 = 1.67 * r1",
        unit: "Ω",
        tolerance: "ratio of conductor areas, 2.5/1.5",
      },
      {},
      "The exact ratio of 20 °C resistances is 12.1/7.41 = 1.633; 1.67 is the area ratio used in practice.",
    ),
    {
      key: "quarter-line-neutral",
      quantity: "Line and neutral cross-connected, reading at each socket",
      expected: "(r1+rn)/4",
      unit: "Ω",
      tolerance: "substantially the same at every point on the ring",
    },
    {
      key: "quarter-line-cpc",
      quantity: "Line and cpc cross-connected, reading at each socket",
      expected: "(r1+r2)/4",
      unit: "Ω",
      tolerance: "small variation around the ring; highest value is R1+R2 for the circuit",
    },
    {
      key: "spur",
      quantity: "Socket on a spur",
      expected: "higher than ring points",
      unit: "Ω",
      tolerance: "by the resistance of the spur cable (x2 conductors)",
    },
    {
      key: "line-per-metre",
      quantity: "r1 per metre, 2.5 mm² copper",
      expected: "7.41",
      unit: "mΩ/m",
      tolerance: "at 20 °C",
    },
    {
      key: "cpc-per-metre",
      quantity: "r2 per metre, 1.5 mm² copper",
      expected: "12.1",
      unit: "mΩ/m",
      tolerance: "at 20 °C",
    },
  ],
  notes: ["Half of one end-to-end reading and (r1+rn)/4 are one statement when r1 = rn."],
  // Quoted on these pages:
  // - ElectriciansForums thread: ring end-to-end readings within 0.05 ohm
  // - Ring final circuit notes: 7.41/12.1 mohm/m, 0.05 ohm, quarter rule
  // - ElectriciansForums thread: 2394 revision (7.41, 12.10, 19.51 mohm/m)
  // - Training page: checking continuity of a ring final circuit
  // - ElectriciansForums thread: ring continuity three-step test
  // - Guide to the Wiring Regulations (17th Ed.), Appendix 4 cable resistance data
  quotedOn: 6,
});

/** A rule for ring final circuits. */
interface RingRule {
  /** Short name for look-up. */
  readonly key: string;
  readonly rule: string;
  /** Number. */
  readonly value: number | string;
  readonly unit: string;
}

export const ringRules = table<RingRule>({
  id: "ring-rules",
  title: "Ring final circuit design rules and spurs",
  ref: "BS 7671:2018+A2:2022, 433.1.204",
  edition: "433.1.5 in BS 7671:2008; renumbered 433.1.204",
  applies: "BS 1363 accessories on a ring, copper conductors.",
  units: { key: "", rule: "", value: "", unit: "" },
  standing: "quoted",
  rows: () => [
    { key: "device", rule: "Protective device rating", value: "30 or 32", unit: "A" },
    { key: "csa", rule: "Minimum line and neutral conductor", value: 2.5, unit: "mm²" },
    { key: "csa-mineral", rule: "Minimum conductor, two-core mineral-insulated", value: 1.5, unit: "mm²" },
    { key: "capacity", rule: "Minimum current-carrying capacity Iz (ring and unfused spur)", value: 20, unit: "A" },
    {
      key: "spurs-per-point",
      rule: "Unfused spurs: not more than the number of points on the ring",
      value: 1,
      unit: "ratio",
    },
    {
      key: "points-per-spur",
      rule: "Points fed by one unfused spur: one single or one twin socket, or one fixed appliance",
      value: 1,
      unit: "accessory",
    },
    { key: "fused-spur", rule: "Fused spur (fused connection unit) maximum fuse", value: 13, unit: "A" },
    { key: "fused-spurs", rule: "Number of fused spurs", value: "unlimited", unit: "" },
    quoted(
      { key: "area", rule: "Floor area served by one ring (household guidance)", value: 100, unit: "m²" },
      {},
      "Quoted in part; 100 m² is the figure in common use.",
    ),
    {
      key: "load",
      rule: "Load on any part of the ring unlikely to exceed Iz for long periods",
      value: "condition of 433.1.204",
      unit: "",
    },
  ],
  // Quoted on these pages:
  // - DIYnot wiki: Regulation 433.1.5 (now 433.1.204)
  // - Electrical Installation Work, 5th edition, p.272 (flip-book page): radial and ring points to note
  // - IET EngX: 433.1.204, 2.5 mm2 ring and spur, 20 A
  // - UK Electrical Forum thread: fused spurs and 433.1.204
  // - Basic Electrical Installation Work, p.302, Table 14.4 cable size for standard domestic circuits
  quotedOn: 5,
});

/** A conventional circuit with 13 A socket-outlets. */
export interface ConventionalCircuit {
  /** Type. */
  readonly circuit: string;
  /** Overcurrent device, A. */
  readonly rating: number | string;
  /** Live conductors, mm². */
  readonly csa: number;
  /** Cpc in flat T&E, mm². */
  readonly cpc: number;
  /** Floor area, m². */
  readonly area: number;
  /** Mineral insulated, mm². */
  readonly csaMineral: number;
}

export const conventionalCircuits = table<ConventionalCircuit>({
  id: "std-circuits",
  title: "Conventional final circuits (areas and sizes)",
  ref: "IET On-Site Guide, Table H2.1",
  edition: "18th Edition OSG; earlier guides used smaller areas for radials",
  applies:
    "Household and similar premises, 13 A BS 1363 accessories, PVC copper unless stated. Subject to volt drop, Zs and grouping.",
  units: { circuit: "", rating: "A", csa: "mm²", cpc: "mm²", area: "m²", csaMineral: "mm²" },
  standing: "memory",
  rows: () => [
    quoted(
      { circuit: "A1 ring", rating: "30 or 32", csa: 2.5, cpc: 1.5, area: 100, csaMineral: 1.5 },
      { cpc: "memory" },
    ),
    memory(
      { circuit: "A2 radial", rating: "30 or 32", csa: 4, cpc: 1.5, area: 75, csaMineral: 2.5 },
      { csa: "quoted", csaMineral: "quoted" },
    ),
    memory(
      { circuit: "A3 radial", rating: 20, csa: 2.5, cpc: 1.5, area: 50, csaMineral: 1.5 },
      { csa: "quoted", csaMineral: "quoted" },
    ),
  ],
  notes: ["Older textbooks give 50 m² for the 4 mm² radial and 20 m² for the 2.5 mm² one."],
  // Quoted on these pages:
  // - Basic Electrical Installation Work, p.302, Table 14.4 cable size for standard domestic circuits
  // - DIYnot wiki: Regulation 433.1.5 (now 433.1.204)
  quotedOn: 2,
});
