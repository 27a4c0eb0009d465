/**
 * Sound installations of two further kinds. Standing ones: old fuses and breakers under the edition they were put in by,
 * tested years ago and again, with what could not be reached. New works of three phases: busbars, shared trunking,
 * leakage, a photovoltaic generator, ramp tests, and a TT island behind a feeder, in this file or in one of its own.
 * Every reading is what copper gives, with the errors the instrument's own data allow.
 */
import { atOrigin, installed } from "./opening.ts";
import { random } from "./random.ts";
import { copper } from "./sheet.ts";

type Next = () => number;

/** A reading within the stated accuracy: a share of it and so many of the last digit; two decimals to 10 Ω, one above. */
function shown(ohms: number, share: number, next: Next): string {
  const digit = ohms < 10 ? 0.01 : 0.1;
  const read = ohms + (2 * next() - 1) * 0.8 * (ohms * share + 2 * digit);
  return `${Math.max(digit, read).toFixed(ohms < 10 ? 2 : 1)} Ω`;
}

const continuity = (ohms: number, next: Next): string => shown(ohms, 0.02, next);
const loop = (ohms: number, next: Next): string => shown(ohms, 0.03, next);
const megohms = (next: Next): string => (next() < 0.4 ? ">999 MΩ" : `${Math.round(220 + next() * 700)} MΩ`);
const whole = (low: number, high: number, next: Next): number => Math.floor(low + (high - low + 1) * next());
const pick = <T>(items: readonly T[], next: Next): T => items[Math.floor(next() * items.length)] as T;
const ohmsPer = (line: number, cpc: number): number => (copper[line] ?? Number.NaN) + (copper[cpc] ?? Number.NaN);

const instrument = (name: string, calibrated: string, due: string): string[] => [
  `instrument ${name} "Multifunction tester" {`,
  `  serial      "${name}-0417"`,
  `  calibrated  ${calibrated}`,
  `  due         ${due}`,
  "  tests       AC A F B",
  "  accuracy    continuity 2 % 2 digits",
  "  accuracy    insulation 3 % 3 digits",
  "  accuracy    loop 3 % 3 digits",
  "}",
];

interface Old {
  readonly title: string;
  readonly device: string;
  readonly line: number;
  readonly cpc: number;
  readonly serves: string;
  readonly Ib: number;
}

const olds: readonly Old[] = [
  { title: "Lights", device: "BS 3036 5 A", line: 1.5, cpc: 1, serves: "lighting", Ib: 3 },
  { title: "Immersion", device: "BS 3036 15 A", line: 2.5, cpc: 1.5, serves: "water-heater", Ib: 12.5 },
  { title: "Cooker", device: "BS 3036 30 A", line: 6, cpc: 2.5, serves: "cooker", Ib: 22 },
  { title: "Lights", device: "BS 3871 type-2 5 A 3 kA", line: 1.5, cpc: 1, serves: "lighting", Ib: 3 },
  { title: "Immersion", device: "BS 3871 type-2 15 A 3 kA", line: 2.5, cpc: 1.5, serves: "water-heater", Ib: 12.5 },
  { title: "Fan", device: "BS 3871 type-3 10 A 3 kA", line: 2.5, cpc: 1.5, serves: "motor", Ib: 6 },
  { title: "Lights", device: "BS 1361 5 A 16.5 kA", line: 1.5, cpc: 1, serves: "lighting", Ib: 3 },
  { title: "Cooker", device: "BS 1361 30 A 16.5 kA", line: 6, cpc: 2.5, serves: "cooker", Ib: 22 },
];

/** An installation in service, tested when it was put in and again years later. */
export function generateStanding(seed: number): string {
  const next = random(seed);
  // A rewirable fuse breaks a kiloampere at most.
  const Ze = 0.27 + next() * 0.08;
  const Zdb = Ze + 0.02;
  const tests = [
    { day: "2004-05-1", by: "M1" },
    { day: "2026-03-1", by: "M2" },
  ];
  const ways = Array.from({ length: whole(2, 9, next) }, (_, index) => {
    const { title, device, line, cpc, serves, Ib } = pick(olds, next);
    const length = whole(5, 16, next);
    const R = length * ohmsPer(line, cpc);
    const unreached = next() < 0.15;
    return [
      `    way ${index + 1} radial "${title} ${index + 1}" {`,
      `      device  ${device}`,
      `      cable   flat-twin line ${line} mm² cpc ${cpc} mm²`,
      "      route   clipped method C",
      `      length  ${length} m`,
      `      serves  ${serves}`,
      `      Ib      ${Ib} A`,
      ...tests.flatMap(({ day, by }, at) => [
        `      dead ${day}0 with ${by} {`,
        `        R1+R2       ${unreached && at === 1 ? 'LIM "In use night and day, agreed with the owner"' : continuity(R, next)}`,
        `        insulation  500 V  L-N ${megohms(next)}  L-E ${megohms(next)}  N-E ${megohms(next)}`,
        "        polarity    ok",
        "      }",
      ]),
      ...tests.flatMap(({ day, by }) => [
        `      live ${day}1 with ${by} {`,
        `        Zs  ${loop(Zdb + R, next)}`,
        "      }",
      ]),
      "    }",
    ];
  });
  return [
    "wayfile 1",
    ...instrument("M1", "2004-01-12", "2005-01-12"),
    ...instrument("M2", "2025-11-03", "2026-11-03"),
    `installation "Standing ${seed}" {`,
    "  standard  BS 7671:2001",
    "  stage     tested",
    "  work      existing",
    "  premises  industrial",
    '  designed  by "K.A." 2004-02-20',
    '  installed by "D.O." 2004-05-02',
    '  tested    by "K.A." 2026-03-12',
    "  supply {",
    "    earthing            TN-S",
    "    U0                  230 V",
    "    cutout              BS 1361 100 A",
    "    tails               25 mm²",
    "    earthing-conductor  16 mm²",
    "    bonding             water 10 mm² continuity 0.02 Ω",
    ...tests.flatMap(({ day, by }) => [
      `    live ${day}1 with ${by} {`,
      `      Ze        ${loop(Ze, next)}`,
      `      Ipf       ${(0.24 / Ze).toFixed(2)} kA`,
      "      polarity  ok",
      "    }",
    ]),
    "  }",
    '  board A "Board" {',
    "    fed-from     supply",
    `    diversity    ${Math.round(Math.min(100, 500 / ways.length))} %`,
    "    main-switch  BS EN 60947-3 100 A",
    "    polarity     ok",
    ...tests.flatMap(({ day, by }) => [
      `    live ${day}1 with ${by} {`,
      `      Zdb  ${loop(Zdb, next)}`,
      `      Ipf  ${(0.235 / Zdb).toFixed(2)} kA`,
      "    }",
    ]),
    ...ways.flat(),
    "  }",
    "}",
    "",
  ].join("\n");
}

/** A way of the new works, tested once. */
function newWay(
  id: string,
  head: readonly string[],
  R: number,
  Zs: number,
  live: readonly string[],
  next: Next,
): string[] {
  const insulated = head.some((line) => /data|pv/.test(line))
    ? `        insulation  500 V joined  L-E ${megohms(next)} "Unplugged"`
    : `        insulation  500 V  L-N ${megohms(next)}  L-E ${megohms(next)}  N-E ${megohms(next)}`;
  return [
    `    way ${id} {`,
    ...head.map((line) => `      ${line}`),
    "      dead 2026-03-04 with M1 {",
    `        R1+R2       ${continuity(R, next)}`,
    insulated,
    "        polarity    ok",
    "      }",
    "      live 2026-03-05 with M1 {",
    `        Zs  ${loop(Zs, next)}`,
    ...live.map((line) => `        ${line}`),
    "      }",
    "    }",
  ];
}

const tripped = (next: Next): string[] => [
  `rcd          30 mA 1x ${(17 + next() * 12).toFixed(1)} ms`,
  `trip-current ${(19 + next() * 7).toFixed(0)} mA`,
  "test-button  ok",
];

/** The island behind the last way: an electrode of its own, a delayed RCD before it, and so many kA from line to neutral. */
function island(RA: number, Ipf: number, next: Next): string[] {
  const ways = Array.from({ length: whole(1, 3, next) }, (_, index) => {
    const length = whole(5, 15, next);
    const R = length * ohmsPer(2.5, 1.5);
    const head = [
      "device  BS EN 61009 B16 6 kA 30 mA type A",
      "cable   flat-twin line 2.5 mm² cpc 1.5 mm²",
      "route   clipped method C",
      `length  ${length} m`,
      "serves  sockets",
      "Ib      8.0 A",
    ];
    return newWay(`${index + 1} radial "Hut sockets ${index + 1}"`, head, R, RA + R, tripped(next), next);
  });
  return [
    '  board H "Hut board" {',
    "    fed-from     A",
    "    earthing     TT",
    `    electrode    rod ${RA.toFixed(1)} Ω`,
    "    phase        L1",
    "    diversity    60 %",
    "    main-switch  BS EN 61008 63 A 100 mA type A delayed",
    `    Ipf          ${Ipf.toFixed(2)} kA`,
    "    spd          fitted",
    "    polarity     ok",
    "    live 2026-03-05 with M1 {",
    `      rcd          100 mA 1x ${whole(180, 290, next)} ms`,
    "      test-button  ok",
    "    }",
    ...ways.flat(),
    "  }",
  ];
}

/** New works: the schedule, and the island's own file where it has one. */
export function generateWorks(seed: number): { text: string; island: string | undefined } {
  const next = random(seed);
  const Ze = 0.14 + next() * 0.08;
  const Zdb = Ze + 0.02;
  const apart = next() < 0.5;
  const count = whole(2, 5, next);
  const many = count > 1 ? ` grouped ${count}` : "";
  const offices = Array.from({ length: count }, (_, index) => {
    const length = whole(8, 22, next);
    const R = length * ohmsPer(4, 4);
    const head = [
      "device   BS EN 61009 B16 10 kA 30 mA type A",
      `phase    L${1 + (index % 3)}`,
      "cable    singles 70 °C line 4 mm² cpc 4 mm²",
      `route    trunking method B${many} in T`,
      `length   ${length} m`,
      "serves   sockets data",
      `leakage  ${(1 + next() * 6).toFixed(1)} mA`,
      "Ib       9.0 A",
    ];
    return newWay(`${index + 1} radial "Office ${index + 1}"`, head, R, Zdb + R, tripped(next), next);
  });
  const roof = whole(6, 14, next) * ohmsPer(4, 4);
  const array = newWay(
    `${count + 1} radial "Roof array"`,
    [
      "device  BS EN 60898 C20 10 kA",
      "phase   L2",
      "cable   armoured 90 °C line 4 mm² cpc 4 mm² cores 3",
      "route   clipped method C",
      `length  ${Math.round(roof / ohmsPer(4, 4))} m`,
      "serves  pv",
      "Ib      14.0 A",
    ],
    roof,
    Zdb + roof,
    [],
    next,
  );
  const far = whole(10, 30, next);
  const reach = far * ohmsPer(10, 10);
  const feeder = newWay(
    `${count + 2} feeder "Hut board"`,
    [
      "device  BS 88-2 40 A 80 kA gG",
      "phase   L1",
      "feeds   H",
      "cable   armoured 90 °C line 10 mm² cpc 10 mm² cores 3",
      "route   clipped method C",
      `length  ${far} m`,
      "Ib      20.0 A",
    ],
    reach,
    Zdb + reach,
    [],
    next,
  );
  const threePhase = (0.23 / Zdb) * 1.85;
  const hut = island(40 + next() * 90, 0.23 / (0.46 / threePhase + reach), next);
  const lines = [
    "wayfile 1",
    ...(apart ? ['use "hut.ways"'] : []),
    ...instrument("M1", "2025-11-03", "2026-11-03"),
    ...installed(`Works ${seed}`),
    "  supply {",
    "    earthing            TN-C-S",
    "    phases              three",
    "    phase-sequence      ok",
    '    notice              "Two sources: at the cut-out, the meter and the board"',
    "    U0                  230 V",
    `    Ze                  ${Ze.toFixed(2)} Ω`,
    `    Ipf                 ${(0.23 / Ze) * 1.9 > 9.5 ? "9.50" : ((0.23 / Ze) * 1.9).toFixed(2)} kA`,
    ...atOrigin,
    '  board A "Works board" {',
    "    fed-from        supply",
    "    phases          three",
    "    main-switch     BS EN 60947-3 125 A",
    "    diversity       40 %",
    "    busbar          125 A",
    `    Zdb             ${Zdb.toFixed(2)} Ω`,
    `    Ipf             ${threePhase.toFixed(2)} kA`,
    "    spd             fitted",
    "    phase-sequence  ok",
    "    polarity        ok",
    "    containment T trunking 50 mm by 50 mm steel",
    ...offices.flat(),
    ...array,
    ...feeder,
    "  }",
    ...(apart ? [] : hut),
    "}",
    "",
  ];
  return { text: lines.join("\n"), island: apart ? ["wayfile 1", ...hut, ""].join("\n") : undefined };
}
