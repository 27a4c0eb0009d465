import { describe, expect, it } from "vitest";
import { findingsOf } from "../helpers/sample.ts";

/** Correct records of many kinds, each tested in full. Whatever is said about them here would be a false alarm. */
const families = /^(language|network|record|instrument|population|drift|live)\/|^rcd\/(time|test)-/;

interface Parts {
  readonly standard?: string;
  readonly stage?: string;
  readonly work?: string;
  readonly supply?: string;
  readonly hands?: string;
  readonly instrument?: string;
  readonly boards: string;
}

const usual = {
  standard: "BS 7671:2018+A2:2022",
  stage: "tested",
  work: "new",
  supply: "earthing TN-S\nZe 0.42 Ω\nIpf 0.92 kA\nmeasured 2026-03-05 with M1",
  hands: 'designed by "K.A." 2026-01-20\ninstalled by "D.O." 2026-02-27\ntested by "K.A." 2026-03-05',
  instrument: 'serial "0417"\ncalibrated 2025-11-03\ndue 2026-11-03\ntests AC A F',
};

const file = (parts: Parts): string => {
  const { standard, stage, work, supply, hands, instrument, boards } = { ...usual, ...parts };
  return `wayfile 1
instrument M1 "Multifunction tester" {
${instrument}
}
cable-type twin2 flat-twin line 2.5 mm² cpc 1.5 mm²
installation "Kiln house" {
standard ${standard}
stage ${stage}
work ${work}
premises commercial
${hands}
supply {
${supply}
}
${boards}
}
`;
};

interface WayParts {
  readonly id?: number;
  readonly device?: string;
  readonly R?: string;
  readonly Z?: string;
  readonly length?: number;
  readonly lines?: string;
  readonly live?: string;
  readonly on?: readonly [string, string];
}

const way = ({
  id = 1,
  device = "BS EN 60898 B16 6 kA",
  R = "0.31",
  Z = "0.71",
  length = 16,
  lines = "serves water-heater",
  live = "",
  on = ["2026-03-04", "2026-03-05"],
}: WayParts = {}): string => `way ${id} radial "Circuit ${id}" {
device ${device}
cable twin2
length ${length} m
route clipped method C
Ib 10 A
${lines}
dead ${on[0]} with M1 {
R1+R2 ${R} Ω
insulation 500 V L-N 310 MΩ L-E >999 MΩ N-E >999 MΩ
polarity ok
}
live ${on[1]} with M1 {
Zs ${Z} Ω
${live}
}
}`;

const board = (ways: string, lines = "fed-from supply\nmain-switch BS EN 60947-3 100 A"): string =>
  `board A "Front board" {\n${lines}\n${ways}\n}`;

const rcbo = { device: "BS EN 61009 B16 6 kA 30 mA type A", lines: "serves sockets" };

const records: Readonly<Record<string, string>> = {
  "a plain radial": file({ boards: board(way()) }),
  "an RCBO tested once at its rating, as since 2022": file({
    boards: board(way({ ...rcbo, live: "rcd 30 mA 1x 24.1 ms\ntest-button ok" })),
  }),
  "an RCBO tested at half, once and five times, as before 2022": file({
    standard: "BS 7671:2018",
    hands: 'designed by "K.A." 2019-05-20\ninstalled by "D.O." 2019-06-01\ntested by "K.A." 2019-06-05',
    instrument: 'serial "0417"\ncalibrated 2019-02-03\ndue 2020-02-03\ntests AC A',
    supply: "earthing TN-S\nZe 0.42 Ω\nIpf 0.92 kA\nmeasured 2019-06-05 with M1",
    boards: board(
      way({
        ...rcbo,
        on: ["2019-06-04", "2019-06-05"],
        live: "rcd 30 mA 0.5x no-trip\nrcd 30 mA 1x 27.2 ms\nrcd 30 mA 5x 11.8 ms\ntest-button ok",
      }),
    ),
  }),
  "a shared RCD tested at the board": file({
    boards: board(
      `${way({ lines: "behind east\nserves sockets" })}\n${way({ id: 2, R: "0.42", Z: "0.86", length: 22, lines: "behind east\nserves sockets" })}`,
      "fed-from supply\nmain-switch BS EN 60947-3 100 A\nrcd east BS EN 61008 63 A 30 mA type A\nlive 2026-03-05 with M1 {\nrcd east 30 mA 1x 24.1 ms\ntest-button east ok\n}",
    ),
  }),
  "two shared RCDs, one tested at the board and one on a way behind it": file({
    boards: board(
      `${way({ lines: "behind east\nserves sockets" })}\n${way({ id: 2, lines: "behind west\nserves sockets", live: "rcd 30 mA 1x 26.3 ms\ntest-button ok" })}`,
      "fed-from supply\nrcd east BS EN 61008 63 A 30 mA type A\nrcd west BS EN 61008 63 A 30 mA type A\nlive 2026-03-05 with M1 {\nrcd east 30 mA 1x 24.1 ms\ntest-button east ok\n}",
    ),
  }),
  "a delayed RCD as main switch with RCBOs behind it, on a TT supply": file({
    supply: "earthing TT\nelectrode rod 84 Ω\nIpf 0.92 kA\nmeasured 2026-03-05 with M1",
    boards: board(
      way({ ...rcbo, Z: "84.6", live: "rcd 30 mA 1x 24.1 ms\ntest-button ok" }),
      "fed-from supply\nmain-switch BS EN 61008 100 A 100 mA type A delayed\nlive 2026-03-05 with M1 {\nrcd 100 mA 1x 214 ms\ntest-button ok\n}",
    ),
  }),
  "an old device of BS 4293 in work that was there already": file({
    standard: "BS 7671:2018+A2:2022",
    work: "existing",
    hands: 'tested by "K.A." 2026-03-05',
    boards: board(
      way({ lines: "behind old\nserves sockets" }),
      "fed-from supply\nrcd old BS 4293 63 A 30 mA type AC\nlive 2026-03-05 with M1 {\nrcd old 30 mA 1x 164 ms\ntest-button old ok\n}",
    ),
  }),
  "existing work measured live before it was switched off": file({
    work: "existing",
    hands: 'tested by "K.A." 2026-03-05',
    boards: board(way({ on: ["2026-03-05", "2026-03-04"] })),
  }),
  "a three-phase board with its sequence and a three-phase circuit": file({
    supply: "earthing TN-S\nphases three\nZe 0.22 Ω\nIpf 2.1 kA\nphase-sequence ok\nmeasured 2026-03-05 with M1",
    boards: board(
      way({ Z: "0.51", lines: "phase three\nserves motor", live: "voltage 402 V\nphase-sequence ok\nfunction ok" }),
      "fed-from supply\nphases three\nphase-sequence ok",
    ),
  }),
  "a board fed from another, on one line of a three-phase supply": file({
    supply: "earthing TN-S\nphases three\nZe 0.22 Ω\nIpf 2.1 kA\nphase-sequence ok\nmeasured 2026-03-05 with M1",
    boards: `${board(
      `way 1 feeder "Drying room board" {
device BS 88-2 40 A gG
cable twin2
length 14 m
phase L2
feeds B
dead 2026-03-04 with M1 {
R1+R2 0.27 Ω
insulation 500 V L-N 310 MΩ L-E >999 MΩ N-E >999 MΩ
polarity ok
}
live 2026-03-05 with M1 {
Zs 0.51 Ω
}
}`,
      "fed-from supply\nphase-sequence ok",
    )}
board B "Drying room board" {
fed-from A
Zdb 0.51 Ω
${way({ R: "0.20", Z: "0.73" })}
way 2 spare
}`,
  }),
  "a ring with its points, a spur, and polarity at each": file({
    boards: board(`way 1 ring "Hall sockets" {
device BS EN 61009 B32 6 kA 30 mA type A
cable singles line 2.5 mm² cpc 2.5 mm²
route conduit 25 mm method B
run A 7 m S1 6 m S2 9 m S3 8 m A
run S2 4 m S4
fused S4 3 A
serves sockets
Ib 20 A
dead 2026-03-04 with M1 {
ends r1 0.22 Ω rn 0.22 Ω r2 0.22 Ω
at S1 L-N 0.11 Ω L-E 0.11 Ω polarity ok
at S4 L-N 0.17 Ω L-E 0.17 Ω polarity ok
R1+R2 0.17 Ω
insulation 500 V L-N 310 MΩ L-E >999 MΩ N-E >999 MΩ
polarity ok
}
live 2026-03-05 with M1 {
at S4 Zs 0.61 Ω
rcd 30 mA 1x 24.1 ms
test-button ok
}
}`),
  }),
  "loop impedance by calculation on every circuit, and said to be": file({
    boards: board(
      [
        ["0.20", "0.62"],
        ["0.31", "0.73"],
        ["0.44", "0.86"],
      ]
        .map(([R = "", Z = ""], index) => way({ id: index + 1, R, Z, length: 10 + 6 * index }))
        .join("\n")
        .replaceAll("Zs 0", "Zs calculated 0"),
    ),
  }),
  "a retest with everything in it, a little higher": file({
    work: "existing",
    hands: 'tested by "K.A." 2026-03-05',
    boards: board(
      way({ Z: "0.74" }).replace(
        "live 2026-03-05",
        "dead 2026-02-10 with M1 {\nR1+R2 0.29 Ω\ninsulation 500 V L-N >999 MΩ L-E >999 MΩ N-E >999 MΩ\npolarity ok\n}\nlive 2026-02-11 with M1 {\nZs 0.69 Ω\n}\nlive 2026-03-05",
      ),
    ),
  }),
  "an AFDD with its button, and a query that was answered": file({
    boards: board(
      way({
        ...rcbo,
        lines: 'serves sockets\nafdd BS EN 62606\nquery "Why so long?"\nanswer "Round the yard"',
        live: "rcd 30 mA 1x 24.1 ms\ntest-button ok\nafdd-button ok",
      }),
    ),
  }),
  "a design on paper, with no test made": file({
    stage: "design",
    hands: 'designed by "K.A." 2026-01-20',
    supply: "earthing TN-C-S\nZe declared 0.35 Ω\nIpf declared 16 kA",
    boards: board(`way 1 radial "Oven" {
device BS EN 61009 B32 6 kA 30 mA type A
cable flat-twin line 6 mm² cpc 2.5 mm²
route clipped method C
length 12 m
serves cooker
afdd BS EN 62606
}
way 2 spare`),
  }),
};

describe("a correct record raises nothing", () => {
  it.each(Object.entries(records))("%s", (_, text) => {
    expect(findingsOf(text).filter(({ check }) => families.test(check))).toEqual([]);
  });
});
