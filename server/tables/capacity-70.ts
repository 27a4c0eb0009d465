import { memory, quoted, type Row, table } from "./table.ts";

/** Current-carrying capacity. Columns are reference method and loaded conductors. */
interface Capacity4D1A {
  /** Size, mm². */
  readonly csa: number;
  /** Method A, 2 cables, A. */
  readonly A2: number;
  /** Method A, 3-4 cables, A. */
  readonly A3: number;
  /** Method B, 2 cables, A. */
  readonly B2: number;
  /** Method B, 3-4 cables, A. */
  readonly B3: number;
  /** Method C, 2 cables, A. */
  readonly C2: number;
  /** Method C, 3-4 cables, A. */
  readonly C3: number;
}

export const capacity4D1A = table<Capacity4D1A>({
  id: "ccc-4D1A",
  title: "Current-carrying capacity: single-core 70 °C thermoplastic, non-armoured, copper",
  ref: "BS 7671:2018+A2:2022, Table 4D1A",
  edition: "18th Edition; A-C columns unchanged since the 16th (old methods 4, 3, 1)",
  applies:
    "Ambient 30 °C, conductor 70 °C, one circuit. 1ph = two cables single-phase; 3ph = three or four cables three-phase.",
  units: { csa: "mm²", A2: "A", A3: "A", B2: "A", B3: "A", C2: "A", C3: "A" },
  standing: "quoted",
  rows: () => [
    { csa: 1, A2: 11, A3: 10.5, B2: 13.5, B3: 12, C2: 15.5, C3: 14 },
    { csa: 1.5, A2: 14.5, A3: 13.5, B2: 17.5, B3: 15.5, C2: 20, C3: 18 },
    { csa: 2.5, A2: 20, A3: 18, B2: 24, B3: 21, C2: 27, C3: 25 },
    { csa: 4, A2: 26, A3: 24, B2: 32, B3: 28, C2: 37, C3: 33 },
    { csa: 6, A2: 34, A3: 31, B2: 41, B3: 36, C2: 47, C3: 43 },
    { csa: 10, A2: 46, A3: 42, B2: 57, B3: 50, C2: 65, C3: 59 },
    { csa: 16, A2: 61, A3: 56, B2: 76, B3: 68, C2: 87, C3: 79 },
    { csa: 25, A2: 80, A3: 73, B2: 101, B3: 89, C2: 114, C3: 104 },
    { csa: 35, A2: 99, A3: 89, B2: 125, B3: 110, C2: 141, C3: 129 },
    { csa: 50, A2: 119, A3: 108, B2: 151, B3: 134, C2: 182, C3: 167 },
    { csa: 70, A2: 151, A3: 136, B2: 192, B3: 171, C2: 234, C3: 214 },
    { csa: 95, A2: 182, A3: 164, B2: 232, B3: 207, C2: 284, C3: 261 },
    { csa: 120, A2: 210, A3: 188, B2: 269, B3: 239, C2: 330, C3: 303 },
    { csa: 150, A2: 240, A3: 216, B2: 300, B3: 262, C2: 381, C3: 349 },
    { csa: 185, A2: 273, A3: 245, B2: 341, B3: 296, C2: 436, C3: 400 },
    { csa: 240, A2: 320, A3: 286, B2: 400, B3: 346, C2: 515, C3: 472 },
    { csa: 300, A2: 367, A3: 328, B2: 458, B3: 394, C2: 594, C3: 545 },
  ],
  notes: [
    "Free-air columns changed between editions and are not kept here.",
    "Only typographic changes to these tables are reported for the 18th Edition, so 17th Edition copies are good evidence.",
    "240 mm², method A, two cables: 321 A on the newer of two pages, 320 A on the sheet of the 16th Edition; the lesser is kept.",
  ],
  // Quoted on these pages:
  // - Cable-supplier sheet: Table 4D1A single-core PVC (16th Edition reference methods 4/3/1)
  // - Cable-supplier sheet: Table 4D1A single-core PVC, sizes to 300 mm2
  // - Batt Cables: Current Ratings Table 4D1A
  // - Cable size guide (108 pages), pp.1-3: Table 4D1A with method C to 1 000 mm²
  quotedOn: 4,
});

/** Current-carrying capacity. Columns are reference method and loaded conductors. */
interface Capacity4D2A {
  /** Size, mm². */
  readonly csa: number;
  /** A, one 2-core, A. */
  readonly A2: number;
  /** A, one 3-4 core, A. */
  readonly A3: number;
  /** B, one 2-core, A. */
  readonly B2: number;
  /** B, one 3-4 core, A. */
  readonly B3: number;
  /** C, one 2-core, A. */
  readonly C2: number;
  /** C, one 3-4 core, A. */
  readonly C3: number;
  /** E, one 2-core, A. */
  readonly E2: number;
  /** E, one 3-4 core, A. */
  readonly E3: number;
}

export const capacity4D2A = table<Capacity4D2A>({
  id: "ccc-4D2A",
  title: "Current-carrying capacity: multicore 70 °C thermoplastic, non-armoured, copper",
  ref: "BS 7671:2018+A2:2022, Table 4D2A",
  edition: "17th/18th Edition",
  applies: "Ambient 30 °C. Round PVC/PVC and similar cables; flat twin-and-earth has its own table (ccc-4D5).",
  units: { csa: "mm²", A2: "A", A3: "A", B2: "A", B3: "A", C2: "A", C3: "A", E2: "A", E3: "A" },
  standing: "memory",
  rows: () => [
    memory({ csa: 1, A2: 11, A3: 10, B2: 13, B3: 11.5, C2: 15, C3: 13.5, E2: 17, E3: 14.5 }, { B2: "quoted" }),
    memory({ csa: 1.5, A2: 14, A3: 13, B2: 16.5, B3: 15, C2: 19.5, C3: 17.5, E2: 22, E3: 18.5 }, { B2: "quoted" }),
    { csa: 2.5, A2: 18.5, A3: 17.5, B2: 23, B3: 20, C2: 27, C3: 24, E2: 30, E3: 25 },
    memory({ csa: 4, A2: 25, A3: 23, B2: 30, B3: 27, C2: 36, C3: 32, E2: 40, E3: 34 }, { B3: "quoted" }),
    memory(
      { csa: 6, A2: 32, A3: 29, B2: 38, B3: 34, C2: 46, C3: 41, E2: 51, E3: 43 },
      { A2: "quoted", B2: "quoted", B3: "quoted", C2: "quoted" },
    ),
    memory(
      { csa: 10, A2: 43, A3: 39, B2: 52, B3: 46, C2: 63, C3: 57, E2: 70, E3: 60 },
      { A2: "quoted", B2: "quoted", B3: "quoted", C2: "quoted" },
    ),
    memory(
      { csa: 16, A2: 57, A3: 52, B2: 69, B3: 62, C2: 85, C3: 76, E2: 94, E3: 80 },
      { A2: "quoted", B2: "quoted", B3: "quoted", C2: "quoted" },
    ),
    memory({ csa: 25, A2: 75, A3: 68, B2: 90, B3: 80, C2: 112, C3: 96, E2: 119, E3: 101 }, { B3: "quoted" }),
    memory({ csa: 35, A2: 92, A3: 83, B2: 111, B3: 99, C2: 138, C3: 119, E2: 148, E3: 126 }, { B3: "quoted" }),
    memory({ csa: 50, A2: 110, A3: 99, B2: 133, B3: 118, C2: 168, C3: 144, E2: 180, E3: 153 }, { B3: "quoted" }),
    memory({ csa: 70, A2: 139, A3: 125, B2: 168, B3: 149, C2: 213, C3: 184, E2: 232, E3: 196 }, { B3: "quoted" }),
    memory({ csa: 95, A2: 167, A3: 150, B2: 201, B3: 179, C2: 258, C3: 223, E2: 282, E3: 238 }, { B3: "quoted" }),
    memory({ csa: 120, A2: 192, A3: 172, B2: 232, B3: 206, C2: 299, C3: 259, E2: 328, E3: 276 }, { B3: "quoted" }),
  ],
  notes: [
    "The column for method B and three loaded cores equals one a machine maker prints from IEC 60364-5-52 for 4 to 120 mm².",
    "Two cores of 6, 10 and 16 mm² are printed by a maker of showers, as the 16th Edition had them; the rest is from memory.",
    "For round cables; flat twin cable has a table of its own.",
  ],
  // Quoted on these pages:
  // - Compressor manual: IEC 60364-5-52 method B2 ratings, PVC, three loaded conductors
  // - Shower manual: twin cable of 6, 10 and 16 mm² in an insulated wall, in conduit or trunking, and clipped direct
  // - Personal reference page 'Table 4D5 ... plus 4E2A thermosetting (90 C) and 4D2A thermoplastic' (fsnet.co.uk host)
  quotedOn: 3,
});

/** Current-carrying capacity and volt drop of flat twin cable. */
interface Capacity4D5 {
  /** Size, mm². */
  readonly csa: number;
  /** Method 100, A. */
  readonly m100: number;
  /** Method 101, A. */
  readonly m101: number;
  /** Method 102, A. */
  readonly m102: number;
  /** Method 103, A. */
  readonly m103: number;
  /** Method A, A. */
  readonly A: number;
  /** Method C, A. */
  readonly C: number;
  /** Voltage drop, mV/A/m. */
  readonly drop: number;
}

export const capacity4D5 = table<Capacity4D5>({
  id: "ccc-4D5",
  title: "Current-carrying capacity and volt drop: 70 °C flat cable with protective conductor (twin and earth)",
  ref: "BS 7671:2018+A2:2022, Table 4D5",
  edition: "17th/18th Edition",
  applies:
    "Ambient 30 °C. 100: above plasterboard ceiling, insulation ≤ 100 mm. 101: same, > 100 mm. 102: stud wall with insulation, cable touching inner surface. 103: stud wall, not touching. C: clipped direct. A: conduit in insulated wall.",
  units: { csa: "mm²", m100: "A", m101: "A", m102: "A", m103: "A", A: "A", C: "A", drop: "mV/A/m" },
  standing: "memory",
  rows: () => [
    quoted({ csa: 1, m100: 13, m101: 10.5, m102: 13, m103: 8, A: 11.5, C: 16, drop: 44 }),
    quoted({ csa: 1.5, m100: 16, m101: 13, m102: 16, m103: 10, A: 14.5, C: 20, drop: 29 }),
    memory(
      { csa: 2.5, m100: 21, m101: 17, m102: 21, m103: 13.5, A: 20, C: 27, drop: 18 },
      { drop: "quoted", m101: "quoted" },
    ),
    memory({ csa: 4, m100: 27, m101: 22, m102: 27, m103: 17.5, A: 26, C: 37, drop: 11 }, { drop: "quoted" }),
    memory(
      { csa: 6, m100: 34, m101: 27, m102: 35, m103: 23.5, A: 32, C: 47, drop: 7.3 },
      { drop: "quoted", C: "quoted" },
    ),
    memory(
      { csa: 10, m100: 45, m101: 36, m102: 47, m103: 32, A: 44, C: 64, drop: 4.4 },
      { drop: "quoted", C: "quoted", m100: "quoted" },
    ),
    memory(
      { csa: 16, m100: 57, m101: 46, m102: 63, m103: 42.5, A: 57, C: 85, drop: 2.8 },
      { drop: "quoted", C: "quoted", m100: "quoted" },
    ),
  ],
  notes: ["Before the 17th Edition 4 and 6 mm² clipped direct stood at 36 and 46 A."],
  // Quoted on these pages:
  // - Personal reference page 'Table 4D5 - 70 C thermoplastic insulated and sheathed flat cable with protective conductor' (fsnet.co.uk host)
  // - Engineering firm page: fixed-wiring cable sizes and ratings
  // - Contractor page: voltage drop limits and mV/A/m for 70 C and 90 C
  // - Trade article on wiring a shower: 6 mm² clipped direct, 10 and 16 mm² by method 100
  // - Contractor's article on method 101: 2.5 mm², 17 A
  quotedOn: 5,
});

/** Current-carrying capacity. Columns are reference method and loaded conductors. */
interface Capacity4D4A {
  /** Size, mm². */
  readonly csa: number;
  /** C 2-core, A. */
  readonly C2: number;
  /** C 3-4 core, A. */
  readonly C3: number;
  /** E 2-core, A. */
  readonly E2: number;
  /** E 3-4 core, A. */
  readonly E3: number;
  /** D 2-core, A. */
  readonly D2: number;
  /** D 3-4 core, A. */
  readonly D3: number;
}

/** The pages give methods C and E; the ground is from memory. */
const armoured = (facts: Capacity4D4A): Row<Capacity4D4A> => quoted(facts, { D2: "memory", D3: "memory" });

export const capacity4D4A = table<Capacity4D4A>({
  id: "ccc-4D4A",
  title: "Current-carrying capacity: multicore 70 °C armoured thermoplastic, copper",
  ref: "BS 7671:2018+A2:2022, Table 4D4A",
  edition: "17th/18th Edition",
  applies: "C clipped direct; D in ground/ducts (ground 20 °C, 2.5 K.m/W); E free air/tray.",
  units: { csa: "mm²", C2: "A", C3: "A", E2: "A", E3: "A", D2: "A", D3: "A" },
  standing: "memory",
  rows: () => [
    armoured({ csa: 1.5, C2: 21, C3: 18, E2: 22, E3: 19, D2: 22, D3: 18 }),
    armoured({ csa: 2.5, C2: 28, C3: 25, E2: 31, E3: 26, D2: 29, D3: 24 }),
    armoured({ csa: 4, C2: 38, C3: 33, E2: 41, E3: 35, D2: 37, D3: 30 }),
    armoured({ csa: 6, C2: 49, C3: 42, E2: 53, E3: 45, D2: 46, D3: 38 }),
    armoured({ csa: 10, C2: 67, C3: 58, E2: 72, E3: 62, D2: 60, D3: 50 }),
    armoured({ csa: 16, C2: 89, C3: 77, E2: 97, E3: 83, D2: 78, D3: 64 }),
    armoured({ csa: 25, C2: 118, C3: 102, E2: 128, E3: 110, D2: 99, D3: 82 }),
    armoured({ csa: 35, C2: 145, C3: 125, E2: 157, E3: 135, D2: 119, D3: 98 }),
    armoured({ csa: 50, C2: 175, C3: 151, E2: 190, E3: 163, D2: 140, D3: 116 }),
    armoured({ csa: 70, C2: 222, C3: 192, E2: 241, E3: 207, D2: 173, D3: 143 }),
    armoured({ csa: 95, C2: 269, C3: 231, E2: 291, E3: 251, D2: 204, D3: 169 }),
    armoured({ csa: 120, C2: 310, C3: 267, E2: 336, E3: 290, D2: 231, D3: 192 }),
    armoured({ csa: 150, C2: 356, C3: 306, E2: 386, E3: 332, D2: 261, D3: 217 }),
    armoured({ csa: 185, C2: 405, C3: 348, E2: 439, E3: 378, D2: 292, D3: 243 }),
    armoured({ csa: 240, C2: 476, C3: 409, E2: 516, E3: 445, D2: 336, D3: 280 }),
    armoured({ csa: 300, C2: 547, C3: 469, E2: 592, E3: 510, D2: 379, D3: 316 }),
  ],
  notes: [
    "Methods C and E are printed as 1 and 11 of the 16th Edition. The page gives the ground by other terms, 15 °C and direct or in a duct, so method D stays from memory.",
  ],
  // Quoted on these pages:
  // - IET EngX: derating question (4D4A 10 mm2 method E; 4C1 eight circuits)
  // - Cable maker's page: multicore PVC cables with steel wire armour, capacities of 1.5 to 400 mm²
  quotedOn: 2,
});
