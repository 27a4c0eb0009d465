import { quoted, table } from "./table.ts";

/** Current-carrying capacity. Columns are reference method and loaded conductors. */
interface Capacity4E4A {
  /** Size, mm². */
  readonly csa: number;
  /** C 2-core, A. */
  readonly C2: number;
  /** C 3-4 core, A. */
  readonly C3: number;
  /** D 2-core, A. */
  readonly D2: number | null;
  /** D 3-4 core, A. */
  readonly D3: number | null;
  /** E 2-core, A. */
  readonly E2: number;
  /** E 3-4 core, A. */
  readonly E3: number;
}

export const capacity4E4A = table<Capacity4E4A>({
  id: "ccc-4E4A",
  title: "Current-carrying capacity: multicore 90 °C armoured thermosetting, copper",
  ref: "BS 7671:2018+A2:2022, Table 4E4A",
  edition: "17th/18th Edition",
  applies: "Conductor 90 °C. If connected to 70 °C accessories, use the 70 °C table (512.1.5 / note to the table).",
  units: { csa: "mm²", C2: "A", C3: "A", D2: "A", D3: "A", E2: "A", E3: "A" },
  standing: "quoted",
  rows: () => [
    { csa: 1.5, C2: 27, C3: 23, D2: 25, D3: 21, E2: 29, E3: 25 },
    { csa: 2.5, C2: 36, C3: 31, D2: 33, D3: 28, E2: 39, E3: 33 },
    quoted(
      { csa: 4, C2: 49, C3: 42, D2: 43, D3: 36, E2: 52, E3: 44 },
      {},
      "Method D, two cores: 43 A on one page and 46 A on another; the lower, which fits the sequence, is kept.",
    ),
    { csa: 6, C2: 62, C3: 53, D2: 53, D3: 44, E2: 66, E3: 56 },
    { csa: 10, C2: 85, C3: 73, D2: 71, D3: 58, E2: 90, E3: 78 },
    { csa: 16, C2: 110, C3: 94, D2: 91, D3: 75, E2: 115, E3: 99 },
    { csa: 25, C2: 146, C3: 124, D2: 116, D3: 96, E2: 152, E3: 131 },
    { csa: 35, C2: 180, C3: 154, D2: 139, D3: 115, E2: 188, E3: 162 },
    { csa: 50, C2: 219, C3: 187, D2: 164, D3: 135, E2: 228, E3: 197 },
    { csa: 70, C2: 279, C3: 238, D2: 203, D3: 167, E2: 291, E3: 251 },
    { csa: 95, C2: 338, C3: 289, D2: 239, D3: 197, E2: 354, E3: 304 },
    { csa: 120, C2: 392, C3: 335, D2: 271, D3: 223, E2: 410, E3: 353 },
    { csa: 150, C2: 451, C3: 386, D2: 306, D3: 251, E2: 472, E3: 406 },
    { csa: 185, C2: 515, C3: 441, D2: 343, D3: 281, E2: 539, E3: 463 },
    { csa: 240, C2: 607, C3: 520, D2: 395, D3: 324, E2: 636, E3: 546 },
    { csa: 300, C2: 698, C3: 599, D2: 446, D3: 365, E2: 732, E3: 628 },
    { csa: 400, C2: 787, C3: 673, D2: null, D3: null, E2: 847, E3: 728 },
  ],
  // Quoted on these pages:
  // - R&M Electrical technical resource: SWA cables, Tables 4E4A/4E4B
  // - Wholesaler catalogue 2024-25 p.488: SWA 90 C ratings and voltage drop
  quotedOn: 2,
});

/** Current-carrying capacity. Columns are reference method and loaded conductors. */
interface Capacity4E1A {
  /** Size, mm². */
  readonly csa: number;
  /** A single-phase, A. */
  readonly A2: number;
  /** A three-phase, A. */
  readonly A3: number;
  /** B single-phase, A. */
  readonly B2: number;
  /** B three-phase, A. */
  readonly B3: number;
  /** C single-phase, A. */
  readonly C2: number;
  /** C three-phase, A. */
  readonly C3: number;
}

export const capacity4E1A = table<Capacity4E1A>({
  id: "ccc-4E1A",
  title: "Current-carrying capacity: single-core 90 °C thermosetting, non-armoured, copper",
  ref: "BS 7671:2018+A2:2022, Table 4E1A",
  edition: "17th/18th Edition manufacturer copy",
  applies: "Conductor 90 °C; note on 70 °C terminations applies.",
  units: { csa: "mm²", A2: "A", A3: "A", B2: "A", B3: "A", C2: "A", C3: "A" },
  standing: "quoted",
  rows: () => [
    { csa: 1, A2: 14, A3: 13, B2: 17, B3: 15, C2: 19, C3: 17.5 },
    { csa: 1.5, A2: 19, A3: 17, B2: 23, B3: 20, C2: 25, C3: 23 },
    { csa: 2.5, A2: 26, A3: 23, B2: 31, B3: 28, C2: 34, C3: 31 },
    { csa: 4, A2: 35, A3: 31, B2: 42, B3: 37, C2: 46, C3: 41 },
    { csa: 6, A2: 45, A3: 40, B2: 54, B3: 48, C2: 59, C3: 54 },
    { csa: 10, A2: 61, A3: 54, B2: 75, B3: 66, C2: 81, C3: 74 },
    { csa: 16, A2: 81, A3: 73, B2: 100, B3: 88, C2: 109, C3: 99 },
    { csa: 25, A2: 106, A3: 95, B2: 133, B3: 117, C2: 143, C3: 130 },
    { csa: 35, A2: 131, A3: 117, B2: 164, B3: 144, C2: 176, C3: 161 },
    { csa: 50, A2: 158, A3: 141, B2: 198, B3: 175, C2: 228, C3: 209 },
    { csa: 70, A2: 200, A3: 179, B2: 253, B3: 222, C2: 293, C3: 268 },
    { csa: 95, A2: 241, A3: 216, B2: 306, B3: 269, C2: 355, C3: 326 },
    { csa: 120, A2: 278, A3: 249, B2: 354, B3: 312, C2: 413, C3: 379 },
    quoted(
      { csa: 150, A2: 318, A3: 285, B2: 393, B3: 342, C2: 476, C3: 436 },
      {},
      "Method C three-phase is printed 4036, a slip for 436.",
    ),
    { csa: 185, A2: 362, A3: 324, B2: 449, B3: 384, C2: 545, C3: 500 },
    { csa: 240, A2: 424, A3: 380, B2: 528, B3: 450, C2: 644, C3: 590 },
    { csa: 300, A2: 486, A3: 435, B2: 603, B3: 514, C2: 743, C3: 681 },
  ],
  // Quoted on these pages:
  // - Doncaster Cables: single-core 90 C thermosetting ratings
  quotedOn: 1,
});

/** Current-carrying capacity. Columns are reference method and loaded conductors. */
interface Capacity4E2A {
  /** Size, mm². */
  readonly csa: number;
  readonly A2: number;
  readonly A3: number;
  readonly B2: number;
  readonly B3: number;
  readonly C2: number;
  readonly C3: number;
  readonly E2: number;
  readonly E3: number;
}

export const capacity4E2A = table<Capacity4E2A>({
  id: "ccc-4E2A",
  title: "Current-carrying capacity: multicore 90 °C thermosetting, not armoured, copper",
  ref: "BS 7671:2018+A2:2022, Table 4E2A",
  edition: "17th/18th Edition",
  applies: "Ambient 30 °C, conductor 90 °C. If connected to 70 °C accessories, use the 70 °C table (512.1.5).",
  units: { csa: "mm²", A2: "A", A3: "A", B2: "A", B3: "A", C2: "A", C3: "A", E2: "A", E3: "A" },
  standing: "quoted",
  rows: () => [
    { csa: 1.5, A2: 18.5, A3: 16.5, B2: 22, B3: 19.5, C2: 24, C3: 22, E2: 26, E3: 23 },
    { csa: 2.5, A2: 25, A3: 22, B2: 30, B3: 26, C2: 33, C3: 30, E2: 36, E3: 32 },
    { csa: 4, A2: 33, A3: 30, B2: 40, B3: 35, C2: 45, C3: 40, E2: 49, E3: 42 },
    { csa: 6, A2: 42, A3: 38, B2: 51, B3: 44, C2: 58, C3: 52, E2: 63, E3: 54 },
    { csa: 10, A2: 57, A3: 51, B2: 69, B3: 60, C2: 80, C3: 71, E2: 86, E3: 75 },
    { csa: 16, A2: 76, A3: 68, B2: 91, B3: 80, C2: 107, C3: 96, E2: 115, E3: 100 },
    { csa: 25, A2: 99, A3: 89, B2: 119, B3: 105, C2: 138, C3: 119, E2: 149, E3: 127 },
    { csa: 35, A2: 121, A3: 109, B2: 146, B3: 128, C2: 171, C3: 147, E2: 185, E3: 158 },
    { csa: 50, A2: 145, A3: 130, B2: 175, B3: 154, C2: 209, C3: 179, E2: 225, E3: 192 },
    { csa: 70, A2: 183, A3: 164, B2: 221, B3: 194, C2: 269, C3: 229, E2: 289, E3: 246 },
    { csa: 95, A2: 220, A3: 197, B2: 265, B3: 233, C2: 328, C3: 278, E2: 352, E3: 298 },
    { csa: 120, A2: 253, A3: 227, B2: 305, B3: 268, C2: 382, C3: 322, E2: 410, E3: 346 },
    { csa: 150, A2: 290, A3: 259, B2: 334, B3: 300, C2: 441, C3: 371, E2: 473, E3: 399 },
    { csa: 185, A2: 329, A3: 295, B2: 384, B3: 340, C2: 506, C3: 424, E2: 542, E3: 456 },
    { csa: 240, A2: 386, A3: 346, B2: 459, B3: 398, C2: 599, C3: 500, E2: 641, E3: 538 },
    { csa: 300, A2: 442, A3: 396, B2: 532, B3: 455, C2: 693, C3: 576, E2: 741, E3: 621 },
  ],
  notes: ["Printed by the methods of the 16th Edition, 4, 3, 1 and 11, which are A, B, C and E."],
  // Quoted on these pages:
  // - Cable maker's page: multicore XLPE cables without armour, capacities of 1.5 to 400 mm²
  // - Personal reference page 'Table 4D5 ... plus 4E2A thermosetting (90 C) and 4D2A thermoplastic' (fsnet.co.uk host)
  quotedOn: 2,
});
