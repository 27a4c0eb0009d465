import { memory, quoted, table } from "./table.ts";

/** Protective conductor by the size of the line, same metal: a share of it, or a fixed size. */
interface ProtectiveSize {
  /** Line above this, mm². */
  readonly over: number;
  /** Line up to this; null without end, mm². */
  readonly upTo: number | null;
  readonly share: number | null;
  /** Mm². */
  readonly fixed: number | null;
}

export const protectiveSizes = table<ProtectiveSize>({
  id: "cpc-54.7",
  title: "Minimum protective conductor, selection method (same material)",
  ref: "BS 7671:2018+A2:2022, Table 54.7",
  edition: "unchanged since the 17th Edition",
  applies: "S = line conductor; different materials: multiply by k1/k2.",
  units: { over: "mm²", upTo: "mm²", share: "", fixed: "mm²" },
  standing: "quoted",
  rows: () => [
    { over: 0, upTo: 16, share: 1, fixed: null },
    { over: 16, upTo: 35, share: null, fixed: 16 },
    quoted({ over: 35, upTo: null, share: 0.5, fixed: null }, {}, "Round up to the next standard size."),
  ],
  notes: ["Of a different metal, multiply by k1/k2."],
  // Quoted on these pages:
  // - Training blog: protective and bonding conductor sizes
  // - Basic Electrical Installation Work, p.250: protective conductor rule
  quotedOn: 2,
});

/** Main bonding conductor by the supply neutral, copper equivalent. */
interface BondingPme {
  /** Neutral above this, mm². */
  readonly over: number;
  /** Neutral up to this; null without end, mm². */
  readonly upTo: number | null;
  /** Mm². */
  readonly size: number;
}

export const bondingPme = table<BondingPme>({
  id: "bonding-54.8",
  title: "Main bonding with a PME supply",
  ref: "BS 7671:2018+A2:2022, Table 54.8",
  edition: "unchanged since the 17th Edition",
  applies:
    "TN-S/TT: from the earthing conductor. TN-C-S (PME): Table 54.8 from the supply neutral (copper equivalent).",
  units: { over: "mm²", upTo: "mm²", size: "mm²" },
  standing: "quoted",
  rows: () => [
    { over: 0, upTo: 35, size: 10 },
    { over: 35, upTo: 50, size: 16 },
    { over: 50, upTo: 95, size: 25 },
    { over: 95, upTo: 150, size: 35 },
    { over: 150, upTo: null, size: 50 },
  ],
  // Quoted on these pages:
  // - Training blog: protective and bonding conductor sizes
  // - Guide to the Wiring Regulations (17th Ed.), p.167: PME conductor sizes
  // - IET EngX: PME bonding need not exceed 50 mm2
  quotedOn: 3,
});

/** A size rule for bonding or earthing outside PME. */
interface BondingRule {
  /** Short name for look-up. */
  readonly key: string;
  readonly item: string;
  readonly value: number;
  readonly unit: string;
}

export const bondingRules = table<BondingRule>({
  id: "bonding",
  title: "Main and supplementary bonding sizes",
  ref: "BS 7671:2018+A2:2022, 544.1.1 and 544.2",
  edition: "unchanged since the 17th Edition",
  applies:
    "TN-S/TT: from the earthing conductor. TN-C-S (PME): Table 54.8 from the supply neutral (copper equivalent).",
  units: { key: "", item: "", value: "", unit: "" },
  standing: "quoted",
  rows: () => [
    { key: "main-share", item: "Main bonding, TN-S or TT: fraction of earthing conductor", value: 0.5, unit: "" },
    { key: "main-least", item: "Main bonding minimum, TN-S or TT", value: 6, unit: "mm²" },
    { key: "main-greatest", item: "Main bonding need not exceed (copper), TN-S or TT", value: 25, unit: "mm²" },
    { key: "supplementary-protected", item: "Supplementary bonding, mechanically protected", value: 2.5, unit: "mm²" },
    { key: "supplementary-unprotected", item: "Supplementary bonding, not protected", value: 4, unit: "mm²" },
    {
      key: "supplementary-share",
      item: "Supplementary bonding of an exposed to an extraneous part: fraction of the cpc",
      value: 0.5,
      unit: "",
    },
    {
      key: "pme-earthing",
      item: "PME earthing conductor, distributor requirement at origin (advice)",
      value: 16,
      unit: "mm²",
    },
  ],
  // Quoted on these pages:
  // - Training blog: protective and bonding conductor sizes
  // - Guide to the Wiring Regulations (17th Ed.), p.167: PME conductor sizes
  // - IET EngX: PME bonding need not exceed 50 mm2
  // - Training notes: earthing, protective conductors and bonding (Chapter 54)
  quotedOn: 4,
});

/** What the resistance of supplementary bonding goes by. */
interface SupplementaryRule {
  /** Short name for look-up. */
  readonly key: string;
  readonly item: string;
  readonly value: number;
  readonly unit: string;
}

export const supplementaryRules = table<SupplementaryRule>({
  id: "supplementary",
  title: "Resistance between parts joined by supplementary bonding",
  ref: "BS 7671:2018+A2:2022, 415.2.2",
  edition: "unchanged since the 17th Edition",
  applies: "R ≤ 50 V / Ia. Ia is IΔn of an RCD, or the current that operates an overcurrent device in 5 s.",
  units: { key: "", item: "", value: "", unit: "" },
  standing: "quoted",
  rows: () => [
    { key: "touch", item: "Touch voltage, alternating current", value: 50, unit: "V" },
    memory({ key: "time", item: "Time in which the current operates an overcurrent device", value: 5, unit: "s" }),
  ],
  // Quoted on these pages:
  // - DIYnot thread: for fans of bonding logic (415.2, R ≤ 50 V / Ia)
  quotedOn: 1,
});

/** Least size of an earthing conductor in the ground; null where Table 54.7 decides. */
interface BuriedEarthing {
  /** Short name for look-up. */
  readonly key: string;
  /** Mechanical/corrosion. */
  readonly protection: string;
  /** Copper, mm². */
  readonly copper: number | null;
  /** Steel, mm². */
  readonly steel: number | null;
}

export const buriedEarthing = table<BuriedEarthing>({
  id: "earth-54.1",
  title: "Buried earthing conductor minimum",
  ref: "BS 7671:2018+A2:2022, Table 54.1",
  edition: "unchanged",
  applies: "Earthing conductor buried in soil.",
  units: { key: "", protection: "", copper: "mm²", steel: "mm²" },
  standing: "quoted",
  rows: () => [
    { key: "both", protection: "both protected", copper: null, steel: null },
    { key: "corrosion", protection: "corrosion only", copper: 16, steel: 16 },
    { key: "mechanical", protection: "mechanical only", copper: 25, steel: 50 },
    { key: "neither", protection: "neither", copper: 25, steel: 50 },
  ],
  // Quoted on these pages:
  // - Training notes: earthing, protective conductors and bonding (Chapter 54)
  // - Wholesaler's book, 5.4.1: earthing conductors (16th Edition)
  // - ElectriciansForums thread: earthing for TT system (542.3.1 and Table 54.1)
  quotedOn: 3,
});

/** Least conductor size by use. */
export interface MinimumSize {
  /** Short name for look-up. */
  readonly key: "lighting" | "power" | "signalling" | "flexible" | "bare";
  readonly use: string;
  /** Copper, mm². */
  readonly copper: number;
}

export const minimumSizes = table<MinimumSize>({
  id: "csa-52.3",
  title: "Minimum conductor sizes",
  ref: "BS 7671:2018+A2:2022, Table 52.3",
  edition: "18th Edition",
  applies: "Lines, neutral, cpc within installations.",
  units: { key: "", use: "", copper: "mm²" },
  standing: "memory",
  rows: () => [
    memory(
      { key: "lighting", use: "lighting circuits (copper)", copper: 1 },
      {},
      "The 18th Edition sets lighting (1.0 mm²) apart from other final circuits.",
    ),
    { key: "power", use: "power circuits (copper)", copper: 1.5 },
    { key: "signalling", use: "signalling and control", copper: 0.5 },
    { key: "flexible", use: "flexible cords, specified appliances", copper: 0.5 },
    { key: "bare", use: "bare or uninsulated conductors", copper: 10 },
  ],
});
