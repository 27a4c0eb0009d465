import { memory, quoted, table } from "./table.ts";

/** Factors for straight runs to 3 m: of a conduit by its size, of a cable by its conductor. */
interface ConduitStraight {
  readonly item: "conduit" | "cable";
  /** Mm of a conduit, mm² of a cable. */
  readonly size: number;
  readonly wire: "solid" | "stranded" | null;
  readonly factor: number;
}

export const conduitStraight = table<ConduitStraight>({
  id: "con-straight",
  title: "Conduit: straight runs not exceeding 3 m",
  ref: "IET On-Site Guide, Tables E1 and E2",
  edition: "18th Edition OSG; unchanged since the 16th",
  applies: "Sum of cable factors ≤ conduit factor.",
  units: { item: "", size: "", wire: "", factor: "" },
  standing: "quoted",
  rows: () => [
    { item: "conduit", size: 16, wire: null, factor: 290 },
    { item: "conduit", size: 20, wire: null, factor: 460 },
    { item: "conduit", size: 25, wire: null, factor: 800 },
    { item: "conduit", size: 32, wire: null, factor: 1400 },
    { item: "cable", size: 1, wire: "solid", factor: 22 },
    { item: "cable", size: 1.5, wire: "solid", factor: 27 },
    { item: "cable", size: 2.5, wire: "solid", factor: 39 },
    { item: "cable", size: 1.5, wire: "stranded", factor: 31 },
    { item: "cable", size: 2.5, wire: "stranded", factor: 43 },
    { item: "cable", size: 4, wire: "stranded", factor: 58 },
    { item: "cable", size: 6, wire: "stranded", factor: 88 },
    { item: "cable", size: 10, wire: "stranded", factor: 146 },
  ],
  // Quoted on these pages:
  // - R&M Electrical technical resource: conduit and trunking capacity
  // - Wholesaler catalogue 2024-25 p.489: conduit factors
  // - Talk Electrician Forum: conduit factors 290/460
  // - Conduit and trunking capacity chart (Tables 4.14-4.17)
  quotedOn: 4,
});

/** Cable factor for runs over 3 m or with bends. */
interface ConduitCable {
  /** Cable, mm². */
  readonly csa: number;
  /** Cable factor. */
  readonly factor: number;
}

export const conduitCables = table<ConduitCable>({
  id: "con-bends",
  title: "Conduit: straight runs over 3 m, or any run with bends (cable factors)",
  ref: "IET On-Site Guide, Table E3",
  edition: "18th Edition OSG",
  applies: "Use with the run/bend table.",
  units: { csa: "mm²", factor: "" },
  standing: "quoted",
  rows: () => [
    { csa: 1, factor: 16 },
    { csa: 1.5, factor: 22 },
    { csa: 2.5, factor: 30 },
    { csa: 4, factor: 43 },
    { csa: 6, factor: 58 },
    { csa: 10, factor: 105 },
    { csa: 16, factor: 145 },
    { csa: 25, factor: 217 },
  ],
  // Quoted on these pages:
  // - R&M Electrical technical resource: conduit and trunking capacity
  // - Wholesaler catalogue 2024-25 p.489: conduit factors
  // - Conduit and trunking capacity chart (Tables 4.14-4.17)
  quotedOn: 3,
});

/** Cable factor in trunking. */
interface TrunkingCable {
  readonly wire: "solid" | "stranded";
  /** Mm². */
  readonly csa: number;
  /** PVC insulation. */
  readonly pvc: number;
  /** Thermosetting insulation. */
  readonly thermosetting: number;
}

export const trunkingCables = table<TrunkingCable>({
  id: "trunk-cables",
  title: "Trunking: cable factors (PVC and thermosetting)",
  ref: "IET On-Site Guide, Table E5",
  edition: "18th Edition OSG; older charts differ",
  applies: "Trunking fill; space factor 45 %.",
  units: { wire: "", csa: "mm²", pvc: "", thermosetting: "" },
  standing: "quoted",
  rows: () => [
    { wire: "solid", csa: 1, pvc: 3.6, thermosetting: 3.8 },
    { wire: "solid", csa: 1.5, pvc: 8, thermosetting: 8.6 },
    quoted(
      { wire: "stranded", csa: 1.5, pvc: 8.6, thermosetting: 9.1 },
      {},
      "The thermosetting figure may be 9.6: one digit is uncertain.",
    ),
    { wire: "solid", csa: 2.5, pvc: 11.9, thermosetting: 11.9 },
    { wire: "stranded", csa: 2.5, pvc: 12.6, thermosetting: 13.9 },
    { wire: "stranded", csa: 4, pvc: 16.6, thermosetting: 18.1 },
    { wire: "stranded", csa: 6, pvc: 21.2, thermosetting: 22.9 },
    { wire: "stranded", csa: 10, pvc: 35.3, thermosetting: 36.3 },
    { wire: "stranded", csa: 16, pvc: 47.8, thermosetting: 50.3 },
    { wire: "stranded", csa: 25, pvc: 73.9, thermosetting: 75.4 },
  ],
  notes: ["An older set gives 8.1 and 11.4 for 1.5 and 2.5 mm² stranded, and 15.2 for 4 mm²."],
  // Quoted on these pages:
  // - Conduit and trunking capacity chart (Tables 4.14-4.17)
  // - Worked note: trunking cable factors and trunking terms
  quotedOn: 2,
});

/** Trunking factor. */
interface TrunkingSize {
  /** Mm. */
  readonly width: number;
  /** Mm. */
  readonly depth: number;
  /** Number. */
  readonly factor: number;
}

export const trunkingSizes = table<TrunkingSize>({
  id: "trunk-sizes",
  title: "Trunking factors",
  ref: "IET On-Site Guide, Table E6",
  edition: "18th Edition OSG",
  applies: "Sum of cable factors ≤ trunking factor.",
  units: { width: "mm", depth: "mm", factor: "" },
  standing: "quoted",
  rows: () => [
    { width: 50, depth: 37.5, factor: 767 },
    { width: 50, depth: 50, factor: 1037 },
    { width: 75, depth: 25, factor: 738 },
    { width: 75, depth: 37.5, factor: 1146 },
    { width: 75, depth: 50, factor: 1555 },
    { width: 75, depth: 75, factor: 2371 },
    { width: 100, depth: 50, factor: 2091 },
    { width: 100, depth: 75, factor: 3189 },
    { width: 100, depth: 100, factor: 4252 },
    { width: 150, depth: 50, factor: 3091 },
    { width: 150, depth: 75, factor: 4743 },
    { width: 150, depth: 100, factor: 6394 },
    { width: 150, depth: 150, factor: 9697 },
    { width: 200, depth: 100, factor: 8572 },
    { width: 225, depth: 50, factor: 4671 },
    { width: 225, depth: 75, factor: 7167 },
    { width: 225, depth: 100, factor: 9662 },
    { width: 225, depth: 150, factor: 14652 },
    { width: 300, depth: 50, factor: 6251 },
    { width: 300, depth: 75, factor: 9590 },
    { width: 300, depth: 100, factor: 12929 },
    { width: 300, depth: 150, factor: 19607 },
    memory({ width: 100, depth: 25, factor: 993 }),
  ],
  notes: [
    "993 also stands against 100 × 50 on one page, a slip for 100 × 25.",
    "150 × 50, 75 and 150 also circulate as 3161, 4787 and 9575: two pages and the inner area of the steel support those kept here.",
  ],
  // Quoted on these pages:
  // - Worked note: trunking cable factors and trunking terms
  // - Wholesaler catalogue p.248: cable capacities of trunking
  // - Trunking maker's specification and installation guide: On-Site Guide factors
  quotedOn: 3,
});

/** A rule for conduit and trunking. */
interface ContainmentRule {
  /** Short name for look-up. */
  readonly key: string;
  readonly rule: string;
  readonly value: number | string;
  readonly unit: string;
}

export const containmentRules = table<ContainmentRule>({
  id: "trunk-rule",
  title: "Space factor rule",
  ref: "BS 7671:2018+A2:2022, 522.8, and On-Site Guide Appendix E",
  edition: "18th Edition",
  applies: "Trunking and conduit.",
  units: { key: "", rule: "", value: "", unit: "" },
  standing: "quoted",
  rows: () => [
    { key: "space-factor", rule: "Cables must not occupy more than", value: 45, unit: "%" },
    { key: "straight-run", rule: "A straight run has its own factors up to", value: 3, unit: "m" },
    { key: "conduit-sizes", rule: "Common conduit sizes", value: "16, 20, 25, 32", unit: "mm" },
    memory(
      { key: "bends", rule: "More than two bends in a run: use a draw-in point", value: 2, unit: "bends" },
      {},
      "Common practice.",
    ),
  ],
  notes: ["A worksheet that gives 55 % states the free space."],
  // Quoted on these pages:
  // - Textbook chapter 'Space factors' (CRC/Taylor & Francis, 2022), abstract: 45 %
  // - TLC wholesaler book 4.5.3: conduit/trunking capacity, 45 % space factor
  // - Conduit and trunking capacity chart (Tables 4.14-4.17)
  // - R&M Electrical technical resource: conduit and trunking capacity
  // - Wholesaler catalogue 2024-25 p.489: conduit factors
  quotedOn: 5,
});
