/** One house over the years, as its file stood after each visit: rewired, added to, and inspected before it was sold. */

const instrument = (calibrated: string, due: string) => `instrument M1 "Multifunction tester" {
  serial       "4471"
  calibrated   ${calibrated}
  due          ${due}
}
`;

interface Circuit {
  readonly id: string;
  readonly header: string;
  readonly lines: readonly string[];
  readonly tests: readonly Tests[];
}
interface Tests {
  readonly dead: string;
  readonly live: string;
  readonly R1R2: string;
  readonly insulation?: string;
  readonly Zs: string;
  readonly trip: string;
}

const testLines = ({ dead, live, R1R2, insulation = "500 V  each >999 MΩ", Zs, trip }: Tests): string => `\
      dead ${dead} with M1 {
        R1+R2        ${R1R2} polarity ok
        insulation   ${insulation}
      }
      live ${live} with M1 {
        Zs           ${Zs}
        rcd          30 mA 1x ${trip} test-button ok
        function     ok
      }
`;

const circuit = ({ id, header, lines, tests }: Circuit): string =>
  `\n    way ${id} ${header} {\n${lines.map((line) => `      ${line}\n`).join("")}${tests.map(testLines).join("")}    }\n`;

const made: Pick<Tests, "dead" | "live"> = { dead: "2022-11-02", live: "2022-11-03" };
const added: Pick<Tests, "dead" | "live"> = { dead: "2024-05-21", live: "2024-05-21" };
const inspected: Pick<Tests, "dead" | "live"> = { dead: "2026-03-04", live: "2026-03-05" };

const cooker: Circuit = {
  id: "1",
  header: 'radial "Cooker"',
  lines: [
    "device       BS EN 61009 B32 6 kA 30 mA type A",
    "cable        flat-twin  line 6 mm²  cpc 2.5 mm²",
    "route        clipped  method C",
    "length       11 m",
    "serves       cooker",
    "load         7.2 kW",
  ],
  tests: [{ ...made, R1R2: "0.12 Ω", Zs: "0.33 Ω", trip: "22 ms" }],
};
const sockets: Circuit = {
  id: "2",
  header: 'radial "Sockets, living room"',
  lines: [
    "device       BS EN 61009 B20 6 kA 30 mA type A",
    "cable        flat-twin  line 2.5 mm²  cpc 1.5 mm²",
    "route        clipped  method C",
    "length       22 m",
    "serves       sockets",
    "Ib           14 A",
  ],
  tests: [{ ...made, R1R2: "0.43 Ω", Zs: "0.62 Ω", trip: "24 ms" }],
};
const lights: Circuit = {
  id: "3",
  header: 'radial "Lights"',
  lines: [
    "device       BS EN 61009 B6 6 kA 30 mA type A",
    "cable        flat-twin  line 1.5 mm²  cpc 1.0 mm²",
    "route        clipped  method C",
    "length       28 m",
    "serves       lighting",
    "Ib           2.5 A",
  ],
  tests: [{ ...made, R1R2: "0.85 Ω", Zs: "1.04 Ω", trip: "25 ms" }],
};
const shower: Circuit = {
  id: "4",
  header: 'radial "Shower"',
  lines: [
    "work         new",
    "device       BS EN 61009 B40 6 kA 30 mA type A",
    "cable        flat-twin 70 °C  line 10 mm²  cpc 4 mm²",
    "route        clipped  method C",
    "length       14 m",
    "serves       shower",
    "place        bathroom  zone 1",
    "ingress      IPX4",
    'supplementary-bonding not-fitted "All pipes are plastic"',
    "load         8.5 kW",
  ],
  tests: [{ ...added, R1R2: "0.09 Ω", Zs: "0.29 Ω", trip: "24 ms" }],
};
const tested = ({ tests, ...rest }: Circuit, again: Tests): Circuit => ({ ...rest, tests: [...tests, again] });

const rewire = `  inspection initial 2022-11-03 {
    client       "The owner" address "3 Weir Cottages"
    work-done    "Complete rewire"
    next-inspection 2032-11-03 "Own dwelling: ten years or change of occupant"
    tested       by "K.A." 2022-11-03  position "Electrician"
  }
`;
const addition = `
  inspection initial 2024-05-21 {
    client       "The owner" address "3 Weir Cottages"
    work-done    "Circuit for a shower, way 4"
    covers       board A  way 4
    existing     earthing adequate "16 mm² to the main terminal, continuous"
    existing     bonding adequate "Water, 10 mm², connection sound"
    existing     load adequate "61 A with the shower on an 80 A cut-out"
    existing     fault-level adequate "1.3 kA; every device is of 6 kA"
    next-inspection 2032-11-03 "As before"
    tested       by "K.A." 2024-05-21  position "Electrician"
  }
`;
const periodic = `
  inspection periodic 2026-03-03 to 2026-03-05 {
    reference    "WC-0311"
    issued       2026-03-09
    client       "The owner" address "3 Weir Cottages"
    reason       "Sale of the house"
    extent       "All circuits; one accessory in three opened"
    limitation   agreed  board A  way 3 "Insulation line to neutral not tested"  why "Lamps could not be taken out"  with "The owner"
    inspected    1.1..1.3 3.1..3.8 4.1..4.8 4.10..4.22 5.1..5.21 ok
    inspected    4.9 C3
    inspected    2 6 7 8 N/A
    observation  1 C3 "Chart of circuits missing at the board"  board A  item 4.9
    condition    "Sound, of its age"
    outcome      satisfactory
    next-inspection 2036-03-05 "Own dwelling: ten years or change of occupant"
    tested       by "J.M." 2026-03-05  position "Inspector"
    authorised   by "P.L." 2026-03-09  position "Qualified supervisor"
  }
`;

interface Visit {
  readonly calibrated: readonly [string, string];
  readonly work: string;
  readonly extent: string;
  readonly signed: readonly [designed: string, installed: string, tested: string];
  readonly inspections: string;
  /** A line of the board. */
  readonly board?: string;
  readonly ways: readonly Circuit[];
}

const house = ({ calibrated, work, extent, signed, inspections, board = "", ways }: Visit): string => `wayfile 1

${instrument(...calibrated)}
installation "3 Weir Cottages" {
  standard     BS 7671:2018+A2:2022
  stage        tested
  work         ${work}
  premises     dwelling
  extent       "${extent}"
  designed     ${signed[0]}
  installed    ${signed[1]}
  tested       ${signed[2]}

${inspections}
  supply {
    earthing     TN-C-S
    Ze           0.19 Ω
    Ipf          1.3 kA
    cutout       BS 88-3 80 A
    tails        25 mm²
    earthing-conductor 16 mm²
    bonding      water 10 mm²  continuity 0.03 Ω
    spd          fitted
    polarity     ok
    measured     2022-11-03 with M1
  }

  board A "Under the stairs" {
${board}    fed-from     supply
    main-switch  BS EN 60947-3 100 A
    Zdb          0.20 Ω
    Ipf          1.3 kA
    polarity     ok
${ways.map(circuit).join("")}${ways.includes(shower) || ways.length > 3 ? "" : "\n    way 4 spare\n"}  }
}
`;

export const rewired = house({
  calibrated: ["2022-05-10", "2023-05-10"],
  work: "new",
  extent: "Complete rewire",
  signed: ['by "R.M." 2022-09-12', 'by "D.O." 2022-11-01', 'by "K.A." 2022-11-03'],
  inspections: rewire,
  ways: [cooker, sockets, lights],
});

const additionOf: Visit = {
  calibrated: ["2023-10-30", "2024-10-30"],
  work: "addition",
  extent: "The new shower circuit, way 4",
  signed: ['by "K.A." 2024-05-02', 'by "D.O." 2024-05-20', 'by "K.A." 2024-05-21'],
  inspections: rewire + addition,
  board: "    work         existing\n",
  ways: [cooker, sockets, lights, shower],
};
export const addedTo = house(additionOf);

export const inspectedBefore = house({
  ...additionOf,
  calibrated: ["2025-11-04", "2026-11-04"],
  work: "existing",
  inspections: rewire + addition + periodic,
  ways: [
    tested(cooker, { ...inspected, R1R2: "0.13 Ω", Zs: "0.35 Ω", trip: "23 ms" }),
    tested(sockets, {
      ...inspected,
      R1R2: "0.44 Ω",
      insulation: "500 V  L-N 210 MΩ  L-E 190 MΩ  N-E >999 MΩ",
      Zs: "0.66 Ω",
      trip: "24 ms",
    }),
    tested(lights, {
      ...inspected,
      R1R2: "0.86 Ω",
      insulation: '500 V  L-N LIM "Lamps could not be taken out"  L-E >999 MΩ  N-E >999 MΩ',
      Zs: "1.09 Ω",
      trip: "26 ms",
    }),
    tested(shower, { ...inspected, R1R2: "0.09 Ω", Zs: "0.31 Ω", trip: "25 ms" }),
  ],
});
