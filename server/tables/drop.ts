import { computed, memory, table } from "./table.ts";

/** Voltage drop at operating temperature. */
interface Drop4D1B {
  /** Size, mm². */
  readonly csa: number;
  /** Two cables d.c., mV/A/m. */
  readonly dc: number;
  /** Single-phase, methods A and B, mV/A/m. */
  readonly phase1AB: number;
  /** Single-phase, C and F, touching, mV/A/m. */
  readonly phase1CF: number;
  /** Three-phase, A and B, mV/A/m. */
  readonly phase3AB: number;
  /** Three-phase, C and F, touching trefoil, mV/A/m. */
  readonly phase3CF: number;
}

export const drop4D1B = table<Drop4D1B>({
  id: "vd-4D1B",
  title: "Voltage drop: single-core 70 °C thermoplastic, copper",
  ref: "BS 7671:2018+A2:2022, Table 4D1B",
  edition: "17th/18th Edition wholesaler copies",
  applies:
    "mV per ampere per metre at 70 °C. A-B: enclosed in conduit/trunking. C-F touching: clipped direct or tray touching.",
  units: { csa: "mm²", dc: "mV/A/m", phase1AB: "mV/A/m", phase1CF: "mV/A/m", phase3AB: "mV/A/m", phase3CF: "mV/A/m" },
  standing: "quoted",
  rows: () => [
    { csa: 1, dc: 44, phase1AB: 44, phase1CF: 44, phase3AB: 38, phase3CF: 38 },
    { csa: 1.5, dc: 29, phase1AB: 29, phase1CF: 29, phase3AB: 25, phase3CF: 25 },
    { csa: 2.5, dc: 18, phase1AB: 18, phase1CF: 18, phase3AB: 15, phase3CF: 15 },
    { csa: 4, dc: 11, phase1AB: 11, phase1CF: 11, phase3AB: 9.5, phase3CF: 9.5 },
    { csa: 6, dc: 7.3, phase1AB: 7.3, phase1CF: 7.3, phase3AB: 6.4, phase3CF: 6.4 },
    { csa: 10, dc: 4.4, phase1AB: 4.4, phase1CF: 4.4, phase3AB: 3.8, phase3CF: 3.8 },
    { csa: 16, dc: 2.8, phase1AB: 2.8, phase1CF: 2.8, phase3AB: 2.4, phase3CF: 2.4 },
    { csa: 25, dc: 1.75, phase1AB: 1.8, phase1CF: 1.75, phase3AB: 1.55, phase3CF: 1.5 },
    { csa: 35, dc: 1.25, phase1AB: 1.3, phase1CF: 1.25, phase3AB: 1.1, phase3CF: 1.1 },
    { csa: 50, dc: 0.93, phase1AB: 1, phase1CF: 0.95, phase3AB: 0.85, phase3CF: 0.82 },
    { csa: 70, dc: 0.63, phase1AB: 0.72, phase1CF: 0.66, phase3AB: 0.61, phase3CF: 0.57 },
    { csa: 95, dc: 0.46, phase1AB: 0.56, phase1CF: 0.5, phase3AB: 0.48, phase3CF: 0.43 },
    { csa: 120, dc: 0.36, phase1AB: 0.47, phase1CF: 0.41, phase3AB: 0.41, phase3CF: 0.36 },
    { csa: 150, dc: 0.29, phase1AB: 0.41, phase1CF: 0.34, phase3AB: 0.36, phase3CF: 0.3 },
    { csa: 185, dc: 0.23, phase1AB: 0.37, phase1CF: 0.29, phase3AB: 0.32, phase3CF: 0.26 },
    { csa: 240, dc: 0.18, phase1AB: 0.33, phase1CF: 0.25, phase3AB: 0.29, phase3CF: 0.22 },
  ],
  notes: [
    "Up to 16 mm² resistance decides; from 25 mm² the tables give r, x and z, and z is kept here, read by its position in the row.",
  ],
  // Quoted on these pages:
  // - Wholesaler catalogue 2025/26 p.489: voltage drop, single-core 70 C
  // - Wholesaler catalogue 2024-25 p.486: voltage drop, single-core 70 C
  // - Contractor page: voltage drop limits and mV/A/m for 70 C and 90 C
  quotedOn: 3,
});

/** Voltage drop at operating temperature. */
interface Drop4D2B {
  /** Size, mm². */
  readonly csa: number;
  /** Single-phase, mV/A/m. */
  readonly phase1: number;
  /** Three-phase, mV/A/m. */
  readonly phase3: number;
}

export const drop4D2B = table<Drop4D2B>({
  id: "vd-4D2B",
  title: "Voltage drop: multicore 70 °C thermoplastic, copper",
  ref: "BS 7671:2018+A2:2022, Tables 4D2B, 4D4B and 4D5",
  edition: "17th/18th Edition",
  applies: "Two-core d.c. and single-phase; three/four-core three-phase.",
  units: { csa: "mm²", phase1: "mV/A/m", phase3: "mV/A/m" },
  standing: "quoted",
  rows: () => [
    { csa: 1, phase1: 44, phase3: 38 },
    { csa: 1.5, phase1: 29, phase3: 25 },
    { csa: 2.5, phase1: 18, phase3: 15 },
    { csa: 4, phase1: 11, phase3: 9.5 },
    { csa: 6, phase1: 7.3, phase3: 6.4 },
    { csa: 10, phase1: 4.4, phase3: 3.8 },
    { csa: 16, phase1: 2.8, phase3: 2.4 },
    memory({ csa: 25, phase1: 1.75, phase3: 1.5 }),
    memory({ csa: 35, phase1: 1.25, phase3: 1.1 }),
  ],
  notes: ["Up to 16 mm² the three-phase column is that of the single-core table, which is the same there."],
  // Quoted on these pages:
  // - Contractor page: voltage drop limits and mV/A/m for 70 C and 90 C
  // - Wholesaler catalogue 2025/26 p.489: voltage drop, single-core 70 C
  // - Personal reference page 'Table 4D5 - 70 C thermoplastic insulated and sheathed flat cable with protective conductor' (fsnet.co.uk host)
  quotedOn: 3,
});

/** Voltage drop at operating temperature. */
interface Drop4E1B {
  /** Size, mm². */
  readonly csa: number;
  /** Single-phase, mV/A/m. */
  readonly phase1: number;
  /** Three-phase, mV/A/m. */
  readonly phase3: number | null;
}

export const drop4E1B = table<Drop4E1B>({
  id: "vd-4E1B",
  title: "Voltage drop, 90 °C thermosetting (small sizes)",
  ref: "BS 7671:2018+A2:2022, Tables 4E1B, 4E2B and 4E4B",
  edition: "17th/18th Edition",
  applies: "Single-phase, up to 16 mm².",
  units: { csa: "mm²", phase1: "mV/A/m", phase3: "mV/A/m" },
  standing: "quoted",
  rows: () => [
    { csa: 1, phase1: 46, phase3: null },
    { csa: 1.5, phase1: 31, phase3: 27 },
    { csa: 2.5, phase1: 19, phase3: 16 },
    { csa: 4, phase1: 12, phase3: 10 },
    { csa: 6, phase1: 7.9, phase3: 6.8 },
    { csa: 10, phase1: 4.7, phase3: 4 },
    { csa: 16, phase1: 2.9, phase3: 2.5 },
  ],
  // Quoted on these pages:
  // - Contractor page: voltage drop limits and mV/A/m for 70 C and 90 C
  // - R&M Electrical technical resource: SWA cables, Tables 4E4A/4E4B
  // - Wholesaler catalogue 2024-25 p.488: SWA 90 C ratings and voltage drop
  quotedOn: 3,
});

/** Rating and voltage drop of a flexible cord. */
interface FlexibleCord {
  /** Size, mm². */
  readonly csa: number;
  /** D.c. or single-phase, A. */
  readonly rating: number;
  /** Single-phase, mV/A/m. */
  readonly phase1: number;
  /** Three-phase, mV/A/m. */
  readonly phase3: number | null;
}

export const flexibleCords = table<FlexibleCord>({
  id: "flex-4F3",
  title: "Flexible cords 60 °C: ratings and volt drop",
  ref: "BS 7671:2018+A2:2022, Tables 4F3A and 4F3B",
  edition: "17th/18th Edition",
  applies: "Flexes to BS 6500/BS 6141; ambient 30 °C.",
  units: { csa: "mm²", rating: "A", phase1: "mV/A/m", phase3: "mV/A/m" },
  standing: "quoted",
  rows: () => [
    { csa: 0.5, rating: 3, phase1: 93, phase3: 80 },
    { csa: 0.75, rating: 6, phase1: 62, phase3: 54 },
    { csa: 1, rating: 10, phase1: 46, phase3: 40 },
    { csa: 1.25, rating: 13, phase1: 37, phase3: null },
    { csa: 1.5, rating: 16, phase1: 32, phase3: 27 },
    { csa: 2.5, rating: 25, phase1: 19, phase3: 16 },
    { csa: 4, rating: 32, phase1: 12, phase3: 10 },
  ],
  // Quoted on these pages:
  // - R&M Electrical technical resource: flexible cords, Tables 4F3A/4F3B
  // - Cable distributor: Table 4F3B voltage drop
  quotedOn: 2,
});

/** Voltage drop guidance from the origin to the load. */
interface DropLimit {
  /** Short name for look-up. */
  readonly key: string;
  /** Load. */
  readonly use: string;
  /** Limit, %. */
  readonly percent: number;
  /** The same in volts, V. */
  readonly volts: number;
}

export const dropLimits = table<DropLimit>({
  id: "vd-limits",
  title: "Voltage drop guidance",
  ref: "BS 7671:2018+A2:2022, Appendix 4, section 6.4",
  edition: "18th Edition; 4 % overall in the 16th Edition",
  applies: "From the origin to the load, full load, public LV supply.",
  units: { key: "", use: "", percent: "%", volts: "V" },
  standing: "quoted",
  rows: () => [
    { key: "lighting", use: "Lighting", percent: 3, volts: 6.9 },
    { key: "other", use: "Other uses", percent: 5, volts: 11.5 },
    { key: "lighting-private", use: "Lighting, private LV supply", percent: 6, volts: 13.8 },
    { key: "other-private", use: "Other uses, private LV supply", percent: 8, volts: 18.4 },
    computed({
      key: "lighting-three-phase",
      use: "Three-phase, lighting at 400 V (volts column is at 400 V)",
      percent: 3,
      volts: 12,
    }),
    computed({ key: "other-three-phase", use: "Three-phase, other uses at 400 V", percent: 5, volts: 20 }),
  ],
  notes: ["A way of meeting Section 525, not a limit by itself; the 16th Edition had 4 % overall."],
  // Quoted on these pages:
  // - Contractor page: voltage drop limits and mV/A/m for 70 C and 90 C
  // - Training centre guide: volt drop limits
  // - Voltimum Q&A (SELECT, ECA): 3 % and 5 % from the origin
  // - DIYnot thread: 3 % / 6.9 V is guidance, not a limit
  quotedOn: 4,
});
