import { memory, quoted, table } from "./table.ts";

/** k of the adiabatic equation, by conductor and insulation. A large conductor is one above 300 mm². */
export interface AdiabaticFactor {
  /** BS 7671 table. */
  readonly table: string;
  /** Use. */
  readonly case: string;
  /** Conductor. */
  readonly material: string;
  /** 70 °C thermoplastic, A√s/mm². */
  readonly pvc70: number;
  /** 70 °C thermoplastic above 300 mm², A√s/mm². */
  readonly pvc70Large: number | null;
  /** 90 °C thermoplastic, A√s/mm². */
  readonly pvc90: number | null;
  /** 90 °C thermoplastic above 300 mm², A√s/mm². */
  readonly pvc90Large: number | null;
  /** 60 °C thermosetting, A√s/mm². */
  readonly ts60: number | null;
  /** 90 °C thermosetting, A√s/mm². */
  readonly ts90: number | null;
}

export const adiabaticFactors = table<AdiabaticFactor>({
  id: "k-values",
  title: "k factors for the adiabatic equation",
  ref: "BS 7671:2018, Tables 43.1 and 54.2 to 54.5",
  edition: "18th Edition (trade-body pocket guide)",
  applies: "S = √(I²·t)/k for t up to 5 s.",
  units: {
    table: "",
    case: "",
    material: "",
    pvc70: "A√s/mm²",
    pvc70Large: "A√s/mm²",
    pvc90: "A√s/mm²",
    pvc90Large: "A√s/mm²",
    ts60: "A√s/mm²",
    ts90: "A√s/mm²",
  },
  standing: "quoted",
  rows: () => [
    {
      table: "43.1",
      case: "line conductor",
      material: "copper",
      pvc70: 115,
      pvc70Large: 103,
      pvc90: 100,
      pvc90Large: 86,
      ts60: 141,
      ts90: 143,
    },
    {
      table: "43.1",
      case: "mineral insulated, thermoplastic sheath",
      material: "copper",
      pvc70: 115,
      pvc70Large: null,
      pvc90: null,
      pvc90Large: null,
      ts60: null,
      ts90: null,
    },
    {
      table: "43.1",
      case: "mineral insulated, bare",
      material: "copper",
      pvc70: 135,
      pvc70Large: null,
      pvc90: null,
      pvc90Large: null,
      ts60: null,
      ts90: null,
    },
    {
      table: "43.1",
      case: "mineral insulated, bare and exposed to touch",
      material: "copper",
      pvc70: 115,
      pvc70Large: null,
      pvc90: null,
      pvc90Large: null,
      ts60: null,
      ts90: null,
    },
    {
      table: "54.2",
      case: "separate insulated or bare protective conductor, not bunched",
      material: "copper",
      pvc70: 143,
      pvc70Large: 133,
      pvc90: 143,
      pvc90Large: 133,
      ts60: null,
      ts90: 176,
    },
    {
      table: "54.2",
      case: "separate insulated or bare protective conductor, not bunched",
      material: "aluminium",
      pvc70: 95,
      pvc70Large: 88,
      pvc90: 95,
      pvc90Large: 88,
      ts60: null,
      ts90: 116,
    },
    {
      table: "54.2",
      case: "separate insulated or bare protective conductor, not bunched",
      material: "steel",
      pvc70: 52,
      pvc70Large: null,
      pvc90: 52,
      pvc90Large: null,
      ts60: null,
      ts90: 64,
    },
    {
      table: "54.3",
      case: "incorporated in a cable or bunched",
      material: "copper",
      pvc70: 115,
      pvc70Large: 103,
      pvc90: 100,
      pvc90Large: 86,
      ts60: null,
      ts90: 143,
    },
    memory(
      {
        table: "54.3",
        case: "incorporated in a cable or bunched",
        material: "aluminium",
        pvc70: 76,
        pvc70Large: 68,
        pvc90: 66,
        pvc90Large: 57,
        ts60: null,
        ts90: 94,
      },
      { pvc70: "quoted", ts90: "quoted" },
    ),
    {
      table: "54.4",
      case: "sheath or armour as protective conductor",
      material: "aluminium",
      pvc70: 93,
      pvc70Large: null,
      pvc90: 85,
      pvc90Large: null,
      ts60: null,
      ts90: 85,
    },
    {
      table: "54.4",
      case: "sheath or armour as protective conductor",
      material: "steel",
      pvc70: 51,
      pvc70Large: null,
      pvc90: 46,
      pvc90Large: null,
      ts60: null,
      ts90: 46,
    },
    {
      table: "54.4",
      case: "sheath or armour as protective conductor",
      material: "lead",
      pvc70: 26,
      pvc70Large: null,
      pvc90: 23,
      pvc90Large: null,
      ts60: null,
      ts90: 23,
    },
    {
      table: "54.5",
      case: "steel conduit, ducting, trunking as protective conductor",
      material: "steel",
      pvc70: 47,
      pvc70Large: null,
      pvc90: 44,
      pvc90Large: null,
      ts60: null,
      ts90: 58,
    },
  ],
  notes: ["Table 54.6, bare conductors with no risk to what is near, is not kept here."],
  // Quoted on these pages:
  // - NICEIC/ELECSA Pocket Guides (2018), p.25: k values
  // - Electricians Blog: max Zs for MCBs (OSG Table B6)
  // - Chapter 543 of the Dutch edition of IEC 60364-5-54: aluminium in a cable, 76 and 94
  quotedOn: 3,
});

/** A form of the adiabatic equation. */
interface AdiabaticForm {
  /** Short name for look-up. */
  readonly key: string;
  /** Equation. */
  readonly form: string;
  /** Meaning. */
  readonly symbols: string;
}

export const adiabaticForms = table<AdiabaticForm>({
  id: "adiabatic",
  title: "Adiabatic equation",
  ref: "BS 7671:2018+A2:2022, 543.1.3 and 434.5.2",
  edition: "unchanged",
  applies: "Fault duration up to 5 s; where t < 0.1 s compare I²t let-through with k^2*S^2.",
  units: { key: "", form: "", symbols: "" },
  standing: "quoted",
  rows: () => [
    { key: "size", form: "S = sqrt(I^2 * t) / k", symbols: "S mm², I fault current A, t s, k from k-values" },
    memory({
      key: "energy",
      form: "k^2 * S^2 ≥ I²t (let-through)",
      symbols: "for current-limiting devices, t < 0.1 s",
    }),
    quoted(
      {
        key: "example",
        form: "Example: I = 460 A, t = 0.1 s, k = 115 gives S = 1.26 mm²",
        symbols: "32 A type B, Zs 0.5 Ω, 230 V",
      },
      {},
      "Worked on a forum with U0 and no Cmin.",
    ),
  ],
  // Quoted on these pages:
  // - Guide to the Wiring Regulations (17th Ed.), p.167: PME conductor sizes
  // - ElectriciansForums post: energy limiting class figures from BS EN 60898
  // - Basic Electrical Installation Work, p.250: protective conductor rule
  quotedOn: 3,
});
