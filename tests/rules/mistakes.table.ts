/** What goes wrong in schedules and readings: the slip, a schedule that has it, and what finds it on which line. */
import type { Setting } from "../../server/rules/frame/rule.ts";

interface Mistake {
  readonly what: string;
  /** Checks that find it, each with the line it must stand at. */
  readonly finds: Readonly<Record<string, string>>;
  readonly lines: string;
  readonly setting: Setting;
}

export const mistakes: Mistake[] = [];

const add = (what: string, finds: Mistake["finds"], lines: string, setting: Setting = { stage: "installed" }): void => {
  mistakes.push({ what, finds, lines, setting });
};
const way = (body: string, kind = "radial", title = "Bench sockets") => `way 1 ${kind} "${title}" {\n${body}\n}`;
const twin =
  "device BS EN 61009 B16 6 kA 30 mA type A\ncable flat-twin line 2.5 mm² cpc 1.5 mm²\nroute clipped method C\n";
const ring =
  "device BS EN 61009 B32 6 kA 30 mA type A\ncable flat-twin line 2.5 mm² cpc 1.5 mm²\nroute clipped method C\nlength 60 m\n";
const dead = (t: string, on = "2026-03-04") => `dead ${on} {\n${t}\n}`;
const live = (t: string, on = "2026-03-05") => `live ${on} {\n${t}\n}`;
const T: Setting = { stage: "tested" };
add(
  "insulation written in ohms",
  { "language/wrong-unit": "insulation 500 V L-E 300 Ω" },
  way(twin + dead("insulation 500 V L-E 300 Ω")),
);
add("continuity written in megohms", { "language/wrong-unit": "R1+R2 0.45 MΩ" }, way(twin + dead("R1+R2 0.45 MΩ")));
add(
  "a decimal point lost from R1+R2",
  { "continuity/r1r2-against-length": "R1+R2 45 Ω" },
  way(`${twin}length 23 m\n${dead("R1+R2 45 Ω")}`),
);
add(
  "a nought too many in Zs",
  { "loop/zs-below-board": "Zs 0.046 Ω" },
  way(`${twin}length 8 m\n${dead("R1+R2 0.16 Ω")}\n${live("Zs 0.046 Ω")}`),
);
add(
  "a trip time in seconds",
  { "language/wrong-argument": "rcd 30 mA 1x 28 s" },
  way(twin + live("rcd 30 mA 1x 28 s"), "radial"),
  T,
);
add(
  "seconds written as milliseconds",
  { "rcd/time-too-short": "rcd 30 mA 1x 0.028 ms" },
  way(twin + live("rcd 30 mA 1x 0.028 ms")),
  T,
);
add("amperes written as kiloamperes", { "language/implausible": "Ipf 950 kA" }, way("device BS EN 60898 B16 6 kA"), {
  supply: "earthing TN-S\nZe 0.24 Ω\nIpf 950 kA",
});
add("kiloamperes written as amperes", { "language/implausible": "Ipf 0.95 A" }, way("device BS EN 60898 B16 6 kA"), {
  supply: "earthing TN-S\nZe 0.24 Ω\nIpf 0.95 A",
});
add(
  "a rating of an RCD in the wrong thousand, small",
  { "language/implausible": "device BS EN 61009 B16 6 kA 0.03 mA type A" },
  way("device BS EN 61009 B16 6 kA 0.03 mA type A"),
);
add(
  "a rating of an RCD in the wrong thousand, great",
  { "language/wrong-argument": "rcd BS EN 61008 63 A 30 A type A" },
  way("rcd BS EN 61008 63 A 30 A type A"),
);
add("a decimal comma", { "language/number-slip": "R1+R2 0,45 Ω" }, way(twin + dead("R1+R2 0,45 Ω")));
add("a bare decimal point", { "language/number-slip": "R1+R2 .45 Ω" }, way(twin + dead("R1+R2 .45 Ω")));
add("the letter O for a nought", { "language/number-slip": "R1+R2 O.45 Ω" }, way(twin + dead("R1+R2 O.45 Ω")));

const several = (count: number, f: (i: number) => string) =>
  Array.from(
    { length: count },
    (_, at) => `way ${at + 1} radial "Circuit ${at + 1}" {\nlength ${6 * (at + 1)} m\n${f(at + 1)}\n}`,
  ).join("\n");
const four = (f: (i: number) => string) => several(4, f);
add(
  "one reading copied down a column",
  { "population/equal-readings": "R1+R2 0.31 Ω" },
  four(() => twin + dead("R1+R2 0.31 Ω")),
);
add(
  "a negative reading",
  { "continuity/negative-or-zero": "R1+R2 -0.02 Ω" },
  way(`${twin}length 12 m\n${dead("R1+R2 -0.02 Ω")}`),
);
add(
  "nothing at all over twelve metres",
  { "continuity/negative-or-zero": "R1+R2 0.00 Ω" },
  way(`${twin}length 12 m\n${dead("R1+R2 0.00 Ω")}`),
);
add(
  "more digits than a meter shows",
  { "continuity/too-many-digits": "R1+R2 0.2347 Ω" },
  way(twin + dead("R1+R2 0.2347 Ω")),
);
add(
  "live tests before the dead ones",
  { "live/before-dead": "live 2026-03-05 {" },
  way(`${twin + dead("R1+R2 0.3 Ω", "2026-03-09")}\n${live("Zs 0.6 Ω", "2026-03-05")}`),
  T,
);
add(
  "tests before the work was done",
  { "live/before-installation": "live 2026-03-05 {" },
  way(`${twin}installed by "A.B." 2026-03-20\n${dead("R1+R2 0.3 Ω")}\n${live("Zs 0.6 Ω")}`),
  T,
);
add(
  "a meter without a serial number",
  { "instrument/no-serial": 'instrument M1 "Tester" {' },
  way(`${twin}dead 2026-03-04 with M1 {\nR1+R2 0.3 Ω\n}`),
  { before: 'instrument M1 "Tester" {\ndue 2027-01-01\n}' },
);
add(
  "a meter out of calibration",
  { "instrument/calibration-lapsed": "dead 2026-03-04 with M1 {" },
  way(`${twin}dead 2026-03-04 with M1 {\nR1+R2 0.3 Ω\n}`),
  { before: 'instrument M1 "Tester" {\nserial "7731"\ndue 2026-01-01\n}' },
);
add(
  "two ways of one number",
  { "language/duplicate-name": 'way 1 radial "Bench sockets" {' },
  `${way(twin)}\n${way(twin)}`,
);
add(
  "tests left blank",
  {
    "insulation/missing": 'way 1 radial "Bench sockets" {',
    "live/not-tested": 'way 1 radial "Bench sockets" {',
    "polarity/missing": 'way 1 radial "Bench sockets" {',
  },
  way(`${twin}length 10 m\nserves sockets\n${dead("R1+R2 0.2 Ω")}`),
  T,
);
add(
  "not applicable where it applies",
  { "record/not-applicable": 'R1+R2 N/A "not needed"' },
  way(twin + dead('R1+R2 N/A "not needed"\npolarity N/A "not needed"')),
  T,
);
add(
  "a limitation without a reason",
  { "language/limitation-without-reason": "R1+R2 LIM" },
  way(twin + dead("R1+R2 LIM")),
  T,
);
add(
  "a limitation on new work",
  { "record/limitation-on-new": 'R1+R2 LIM "No access"' },
  way(twin + dead('R1+R2 LIM "No access"')),
  T,
);
add(
  "a failing value among verdicts",
  {
    "insulation/below-minimum": "insulation 500 V L-N 0.4 MΩ L-E 0.4 MΩ N-E 0.5 MΩ",
    "polarity/wrong": "polarity wrong",
  },
  way(`${twin}length 10 m\n${dead("R1+R2 0.2 Ω\ninsulation 500 V L-N 0.4 MΩ L-E 0.4 MΩ N-E 0.5 MΩ\npolarity wrong")}`),
  T,
);
add("a tick where a figure belongs", { "language/wrong-argument": "insulation ok" }, way(twin + dead("insulation ok")));
add(
  "a spare way with a load",
  { "record/spare-in-use": "Ib 4 A" },
  "way 1 spare {\ndevice BS EN 60898 B32 6 kA\nIb 4 A\n}",
);
add(
  "a spare way with readings",
  { "record/spare-in-use": "dead 2026-03-04 {" },
  way(`device BS EN 60898 B32 6 kA\n${dead("R1+R2 0.3 Ω")}`, "spare"),
);
add(
  "R1+R2 and R2 both",
  { "continuity/both-recorded": "R2 0.12 Ω" },
  way(`${twin}length 10 m\n${dead("R1+R2 0.20 Ω\nR2 0.12 Ω")}`),
);
add(
  "neither R1+R2 nor R2",
  { "continuity/missing": 'way 1 radial "Bench sockets" {' },
  way(`${twin}length 10 m\n${dead("insulation 500 V L-N 300 MΩ L-E 300 MΩ N-E 300 MΩ\npolarity ok")}`),
  { stage: "dead-tested" },
);
add(
  "ends of a ring on a radial",
  { "ring/ends-on-radial": "ends r1 0.3 Ω rn 0.3 Ω r2 0.5 Ω" },
  way(twin + dead("ends r1 0.3 Ω rn 0.3 Ω r2 0.5 Ω")),
);
add(
  "R1+R2 of a ring worked out and no point read",
  { "ring/r1r2-from-ends": "R1+R2 0.29 Ω" },
  way(ring + dead("ends r1 0.44 Ω rn 0.44 Ω r2 0.72 Ω\nR1+R2 0.29 Ω"), "ring"),
  { stage: "dead-tested" },
);
add(
  "the demand copied from the cut-out",
  { "population/demand-copied": "demand 80 A" },
  `way 1 radial "x" {\n${twin}}\nway 2 radial "y" {\n${twin}}`,
  { supply: "earthing TN-S\nZe 0.3 Ω\nIpf 1 kA\ncutout BS 88-3 80 A\ndemand 80 A" },
);
add(
  "R1+R2 too high for its length",
  { "continuity/r1r2-against-length": "R1+R2 0.80 Ω" },
  way(`${twin}length 20 m\n${dead("R1+R2 0.80 Ω")}`),
);
add(
  "R1+R2 too low for its length",
  { "continuity/r1r2-against-length": "R1+R2 0.12 Ω" },
  way(`${twin}length 20 m\n${dead("R1+R2 0.12 Ω")}`),
);
add(
  "R2 through pipework",
  { "continuity/r2-against-length": "R2 0.01 Ω" },
  way(`${twin}length 5 m\n${dead("R2 0.01 Ω")}`),
);
add(
  "Zs far from what it is made of",
  { "loop/zs-disagrees": "Zs 1.20 Ω" },
  way(`${twin}length 20 m\n${dead("R1+R2 0.39 Ω")}\n${live("Zs 1.20 Ω")}`),
  T,
);
add(
  "R1+R2 worked backwards on every way",
  { "population/worked-backwards": "Zs 0.52 Ω" },
  several(9, (i) => `${twin + dead(`R1+R2 0.${17 + i * 5} Ω`)}\n${live(`Zs 0.${47 + i * 5} Ω`)}`),
  T,
);
add("Zs below what lies upstream", { "loop/zs-below-board": "Zs 0.20 Ω" }, way(twin + live("Zs 0.20 Ω")), T);
add(
  "Zs below its own conductors",
  { "loop/zs-below-conductors": "Zs 0.52 Ω" },
  way(`${twin}length 40 m\n${dead("R1+R2 0.78 Ω")}\n${live("Zs 0.52 Ω")}`),
  T,
);
add(
  "lights read at the first point only",
  { "continuity/r1r2-against-length": "R1+R2 0.22 Ω" },
  way(
    "device BS EN 61009 B6 6 kA 30 mA type A\ncable flat-twin line 1.5 mm² cpc 1.0 mm²\nlength 30 m\nserves lighting\n" +
      dead("R1+R2 0.22 Ω"),
    "radial",
    "Lights",
  ),
);
add(
  "lights without a protective conductor",
  { "continuity/no-protective-conductor": "cable singles line 1.5 mm² cpc-by none" },
  way("device BS EN 60898 B6 6 kA\ncable singles line 1.5 mm² cpc-by none\nserves lighting", "radial", "Lights"),
);
add(
  "R2 below R1 in a cable with the smaller protective conductor",
  { "continuity/r2-ratio": "R2 0.15 Ω" },
  way(`cable flat-twin line 6 mm² cpc 2.5 mm²\n${dead("R1+R2 0.51 Ω\nR2 0.15 Ω")}`),
);
add(
  "bonding that reads more than its length",
  { "protective/bonding-reads-high": "bonding water 10 mm² length 12 m continuity 0.31 Ω" },
  way(twin),
  { supply: "earthing TN-S\nZe 0.3 Ω\nbonding water 10 mm² length 12 m continuity 0.31 Ω" },
);
add("bonding without a size", { "protective/bonding-size-missing": "bonding water" }, way(twin), {
  supply: "earthing TN-C-S\nZe 0.3 Ω\ntails 25 mm²\nbonding water",
  stage: "tested",
});
add(
  "bonding too small for a combined neutral and earth",
  { "protective/bonding-too-small": "bonding gas 6 mm²" },
  way(twin),
  { supply: "earthing TN-C-S\nZe 0.3 Ω\ntails 25 mm²\nbonding gas 6 mm²" },
);
add(
  "aluminium taken for copper",
  { "continuity/r1r2-against-length": "R1+R2 0.99 Ω" },
  way(`cable singles line 10 mm² cpc 10 mm²\nlength 160 m\n${dead("R1+R2 0.99 Ω")}`, "feeder"),
);
add(
  "line and neutral of a ring that differ",
  { "ring/ends-differ": "ends r1 0.44 Ω rn 0.58 Ω r2 0.72 Ω" },
  way(ring + dead("ends r1 0.44 Ω rn 0.58 Ω r2 0.72 Ω"), "ring"),
);
add(
  "r2 like r1 with the smaller protective conductor",
  { "ring/cpc-ratio": "ends r1 0.44 Ω rn 0.44 Ω r2 0.44 Ω" },
  way(ring + dead("ends r1 0.44 Ω rn 0.44 Ω r2 0.44 Ω"), "ring"),
);
add(
  "r2 far above the ratio",
  { "ring/cpc-ratio": "ends r1 0.44 Ω rn 0.44 Ω r2 1.15 Ω" },
  way(ring + dead("ends r1 0.44 Ω rn 0.44 Ω r2 1.15 Ω"), "ring"),
);
add(
  "R1+R2 of a ring not divided by four",
  { "ring/r1r2-against-ring": "R1+R2 1.16 Ω" },
  way(ring + dead("ends r1 0.44 Ω rn 0.44 Ω r2 0.72 Ω\nR1+R2 1.16 Ω"), "ring"),
);
add(
  "R1+R2 of a ring divided by two",
  { "ring/r1r2-against-ring": "R1+R2 0.58 Ω" },
  way(ring + dead("ends r1 0.44 Ω rn 0.44 Ω r2 0.72 Ω\nR1+R2 0.58 Ω"), "ring"),
);
add(
  "an open ring",
  { "ring/open-conductor": "ends r1 >20 Ω rn 0.44 Ω r2 0.72 Ω" },
  way(ring + dead("ends r1 >20 Ω rn 0.44 Ω r2 0.72 Ω"), "ring"),
);
add(
  "a radial on a ring's device",
  { "design/socket-radial-cable": "device BS EN 61009 B32 6 kA 30 mA type A" },
  way(
    "device BS EN 61009 B32 6 kA 30 mA type A\ncable flat-twin line 2.5 mm² cpc 1.5 mm²\nroute clipped method C\nserves sockets\nlength 20 m\nIb 20 A",
  ),
);
add(
  "a ring too long for its loop",
  { "loop/design-loop-over-limit": "length 216 m" },
  way(ring.replace("60 m", "216 m"), "ring"),
);
add(
  "a ring for too large a floor",
  { "design/floor-area-exceeded": "floor-area 140 m²" },
  way(`${ring}floor-area 140 m²`, "ring"),
);
add(
  "a spur off a spur",
  { "ring/spur-off-spur": "run X1 2 m X2" },
  way(
    `${ring.replace("length 60 m\n", "")}run A 8 m S1 9 m S2 9 m A\nrun S1 3 m X1\nrun X1 2 m X2\nserves sockets`,
    "ring",
  ),
);
add(
  "more spurs than points on the ring",
  { "ring/too-many-spurs": "spurs 5" },
  way(`${ring}points 8\nspurs 5`, "ring"),
);
add(
  "a spur too long",
  { "ring/spur-too-long": "run S1 14 m X1" },
  way(`${ring.replace("length 60 m\n", "")}run A 8 m S1 9 m S2 9 m A\nrun S1 14 m X1`, "ring"),
);
add(
  "a fused spur above 13 A",
  { "design/fused-spur-rating": "fused S1 20 A" },
  way(`${ring.replace("length 60 m\n", "")}run A 8 m S1 9 m S2 9 m A\nfused S1 20 A`, "ring"),
);
add(
  "a lasting heavy load on a ring",
  { "design/ring-heavy-load": 'load 3 kW "Water heater"' },
  way(`${ring}load 3 kW "Water heater"`, "ring"),
);
const unequal = ring.replace("length 60 m\n", "").replace("2.5 mm² cpc 1.5", "4 mm² cpc 1.5");
add(
  "every point alike where they cannot be",
  { "ring/identical-readings": "at S1 L-N 0.23 Ω L-E 0.40 Ω" },
  way(
    unequal +
      "run A 5 m S1 30 m S2 30 m S3 30 m S4 5 m A\n" +
      dead(
        "ends r1 0.46 Ω rn 0.46 Ω r2 1.21 Ω\nat S1 L-N 0.23 Ω L-E 0.40 Ω\nat S2 L-N 0.23 Ω L-E 0.40 Ω\nat S3 L-N 0.23 Ω L-E 0.40 Ω\nat S4 L-N 0.23 Ω L-E 0.40 Ω",
      ),
    "ring",
  ),
);
const worked = [
  ["0.30", "0.50", "0.20"],
  ["0.36", "0.60", "0.24"],
  ["0.42", "0.70", "0.28"],
];
add(
  "ends that are exact multiples of R1+R2",
  { "ring/ends-worked-back": "ends r1 0.30 Ω rn 0.30 Ω r2 0.50 Ω" },
  worked
    .map(
      ([r1, r2, both], i) =>
        `way ${i + 1} ring "Ring ${i + 1}" {\n${ring}${dead(`ends r1 ${r1} Ω rn ${r1} Ω r2 ${r2} Ω\nR1+R2 ${both} Ω`)}\n}`,
    )
    .join("\n"),
);
const pts = (a: string) =>
  `${ring.replace("length 60 m\n", "")}run A 5 m S1 10 m S2 10 m S3 10 m S4 10 m S5 10 m S6 5 m A\n${dead(a)}`;
add(
  "a point open to earth alone",
  { "ring/point-open": "at S4 L-N 0.22 Ω L-E >20 Ω" },
  way(
    pts(
      "ends r1 0.44 Ω rn 0.44 Ω r2 0.73 Ω\nat S1 L-N 0.22 Ω L-E 0.28 Ω\nat S2 L-N 0.22 Ω L-E 0.29 Ω\nat S4 L-N 0.22 Ω L-E >20 Ω",
    ),
    "ring",
  ),
);
add(
  "a point open in both rounds",
  { "ring/point-open": "at S4 L-N >20 Ω L-E >20 Ω" },
  way(
    pts(
      "ends r1 0.44 Ω rn 0.44 Ω r2 0.73 Ω\nat S1 L-N 0.22 Ω L-E 0.28 Ω\nat S2 L-N 0.22 Ω L-E 0.29 Ω\nat S4 L-N >20 Ω L-E >20 Ω",
    ),
    "ring",
  ),
);
add(
  "a poor contact at one point",
  { "ring/poor-contact": "at S4 L-N 0.52 Ω L-E 0.59 Ω" },
  way(
    pts(
      "ends r1 0.44 Ω rn 0.44 Ω r2 0.73 Ω\nat S1 L-N 0.22 Ω L-E 0.28 Ω\nat S2 L-N 0.22 Ω L-E 0.29 Ω\nat S4 L-N 0.52 Ω L-E 0.59 Ω",
    ),
    "ring",
  ),
);
add(
  "an open line, seen at every point",
  { "ring/open-conductor": "ends r1 >20 Ω rn 0.44 Ω r2 0.73 Ω" },
  way(
    pts(
      "ends r1 >20 Ω rn 0.44 Ω r2 0.73 Ω\nat S1 L-N 0.44 Ω L-E 0.70 Ω\nat S2 L-N 0.44 Ω L-E 0.66 Ω\nat S3 L-N 0.44 Ω L-E 0.61 Ω\nat S4 L-N 0.44 Ω L-E 0.61 Ω\nat S5 L-N 0.44 Ω L-E 0.66 Ω\nat S6 L-N 0.44 Ω L-E 0.70 Ω",
    ),
    "ring",
  ),
);
add(
  "a ring bridged across",
  { "ring/bridged": "at S3 L-N 0.21 Ω L-E 0.28 Ω" },
  way(
    pts(
      "ends r1 0.25 Ω rn 0.25 Ω r2 0.41 Ω\nat S1 L-N 0.13 Ω L-E 0.16 Ω\nat S2 L-N 0.13 Ω L-E 0.17 Ω\nat S3 L-N 0.21 Ω L-E 0.28 Ω\nat S4 L-N 0.21 Ω L-E 0.28 Ω\nat S5 L-N 0.13 Ω L-E 0.17 Ω\nat S6 L-N 0.13 Ω L-E 0.16 Ω",
    ),
    "ring",
  ),
);
add(
  "a ring linked leg to itself",
  { "ring/links-not-crossed": "at S1 L-N 0.07 Ω L-E 0.09 Ω" },
  way(
    pts(
      "ends r1 0.44 Ω rn 0.44 Ω r2 0.73 Ω\nat S1 L-N 0.07 Ω L-E 0.09 Ω\nat S2 L-N 0.17 Ω L-E 0.22 Ω\nat S3 L-N 0.22 Ω L-E 0.28 Ω\nat S4 L-N 0.22 Ω L-E 0.28 Ω\nat S5 L-N 0.17 Ω L-E 0.22 Ω\nat S6 L-N 0.07 Ω L-E 0.09 Ω",
    ),
    "ring",
  ),
);
add(
  "one of the two links forgotten",
  { "ring/link-missing": "at S1 L-N 0.44 Ω L-E 0.70 Ω" },
  way(
    pts(
      "ends r1 0.44 Ω rn 0.44 Ω r2 0.73 Ω\nat S1 L-N 0.44 Ω L-E 0.70 Ω\nat S2 L-N 0.44 Ω L-E 0.66 Ω\nat S3 L-N 0.44 Ω L-E 0.61 Ω\nat S4 L-N 0.44 Ω L-E 0.56 Ω\nat S5 L-N 0.44 Ω L-E 0.51 Ω\nat S6 L-N 0.44 Ω L-E 0.47 Ω",
    ),
    "ring",
  ),
);
const I = (t: string, more = "") => way(twin + more + dead(`insulation ${t}`));
add(
  "insulation of nothing",
  { "insulation/zero": "insulation 500 V L-N 0 MΩ L-E 300 MΩ N-E 300 MΩ" },
  I("500 V L-N 0 MΩ L-E 300 MΩ N-E 300 MΩ"),
);
add(
  "off scale without a range",
  { "language/off-scale-sign": "insulation 500 V L-N OL L-E 300 MΩ N-E 300 MΩ" },
  I("500 V L-N OL L-E 300 MΩ N-E 300 MΩ"),
);
add(
  "one meter with two ends of its scale",
  { "insulation/differing-ranges": "insulation 500 V L-N >999 MΩ L-E >999 MΩ N-E >999 MΩ" },
  'way 1 radial "a" {\ndead 2026-03-04 with M1 {\ninsulation 500 V L-N >200 MΩ L-E >200 MΩ N-E >200 MΩ\n}\n}\nway 2 radial "b" {\ndead 2026-03-04 with M1 {\ninsulation 500 V L-N >999 MΩ L-E >999 MΩ N-E >999 MΩ\n}\n}',
  { stage: "installed", before: 'instrument M1 "Tester" {\nserial "1"\ndue 2027-01-01\n}' },
);
add(
  "insulation below the minimum",
  { "insulation/below-minimum": "insulation 500 V L-N 0.8 MΩ L-E 300 MΩ N-E 300 MΩ" },
  I("500 V L-N 0.8 MΩ L-E 300 MΩ N-E 300 MΩ"),
);
add(
  "new wiring only just above the minimum",
  { "insulation/low-on-new": "insulation 500 V L-N 1.4 MΩ L-E 300 MΩ N-E 300 MΩ" },
  I("500 V L-N 1.4 MΩ L-E 300 MΩ N-E 300 MΩ"),
);
const many = (v: (i: number) => string) =>
  [1, 2, 3, 4, 5]
    .map(
      (i) =>
        `way ${i} radial "Circuit ${i}" {\n${dead(`insulation 500 V L-N ${v(i)} MΩ L-E ${v(i)} MΩ N-E ${v(i)} MΩ`)}\n}`,
    )
    .join("\n");
add(
  "one way far below its neighbours",
  { "insulation/outlier": "insulation 500 V L-N 9 MΩ L-E 9 MΩ N-E 9 MΩ" },
  many((i) => (i === 3 ? "9" : `${300 + i * 17}`)),
);
add(
  "every way low and alike",
  { "insulation/all-low": "insulation 500 V L-N 11.5 MΩ L-E 11.5 MΩ N-E 11.5 MΩ" },
  many((i) => `${11 + i * 0.5}`),
);
add(
  "a board better than its ways",
  { "insulation/board-disagrees": "insulation 500 V L-E 320 MΩ" },
  many((i) => `${200 + i * 7}`),
  {
    stage: "installed",
    board: "fed-from supply\nmain-switch BS EN 60947-3 100 A\ndead 2026-03-04 {\ninsulation 500 V L-E 320 MΩ\n}",
  },
);
add(
  "line to neutral left out",
  { "insulation/pair-missing": "insulation 500 V L-E 300 MΩ N-E 300 MΩ" },
  I("500 V L-E 300 MΩ N-E 300 MΩ"),
);
add(
  "half the test voltage without a word",
  { "insulation/test-voltage": "insulation 250 V L-N 300 MΩ L-E 300 MΩ N-E 300 MΩ" },
  I("250 V L-N 300 MΩ L-E 300 MΩ N-E 300 MΩ"),
);
add(
  "the full test voltage on electronics",
  { "insulation/electronics-not-disconnected": "insulation 500 V L-N 300 MΩ L-E 300 MΩ N-E 300 MΩ" },
  I("500 V L-N 300 MΩ L-E 300 MΩ N-E 300 MΩ", "serves alarms\n"),
);
add(
  "the full test voltage on a surge device",
  { "insulation/spd-not-disconnected": "insulation 500 V L-E 120 MΩ" },
  "way 1 spare",
  {
    stage: "installed",
    board:
      "fed-from supply\nmain-switch BS EN 60947-3 100 A\nspd fitted\ndead 2026-03-04 {\ninsulation 500 V L-E 120 MΩ\n}",
  },
);
add(
  "extra-low voltage tested as mains",
  { "insulation/test-voltage": "insulation 500 V L-N 300 MΩ L-E 300 MΩ N-E 300 MΩ" },
  I("500 V L-N 300 MΩ L-E 300 MΩ N-E 300 MΩ", "serves selv\n"),
);
add(
  "neutral to earth left out",
  { "insulation/pair-missing": "insulation 500 V L-N 300 MΩ L-E 300 MΩ" },
  I("500 V L-N 300 MΩ L-E 300 MΩ"),
);
const Z = (t: string, more = twin, s: Setting = T) => [way(more + live(t)), s] as const;
add(
  "Zs over the limit",
  { "loop/zs-over-limit": "Zs 3.10 Ω" },
  ...Z("Zs 3.10 Ω", "device BS EN 60898 B16 6 kA\ncable flat-twin line 2.5 mm² cpc 1.5 mm²\nserves motor\n"),
);
add("Zs under the limit, over the cold one", { "loop/zs-over-cold-limit": "Zs 2.50 Ω" }, ...Z("Zs 2.50 Ω"));
add("the cold limit written as the limit", { "loop/max-zs-wrong": "max-Zs 2.18 Ω" }, way(`${twin}max-Zs 2.18 Ω`));
add(
  "the limit of another type",
  { "loop/max-zs-wrong": "max-Zs 2.73 Ω" },
  way(`${twin.replace("B16", "C16")}max-Zs 2.73 Ω`),
);
add("the limit of an older edition", { "loop/max-zs-wrong": "max-Zs 2.87 Ω" }, way(`${twin}max-Zs 2.87 Ω`));
add(
  "five seconds for sockets",
  { "loop/disconnection-too-long": "disconnect 5 s" },
  way(`${twin}serves sockets\ndisconnect 5 s`),
);
add(
  "an overcurrent device alone in TT",
  { "rcd/missing-in-tt": "device BS EN 60898 B16 6 kA" },
  way(`device BS EN 60898 B16 6 kA\ncable flat-twin line 2.5 mm² cpc 1.5 mm²\nserves motor\n${live("Zs 61 Ω")}`),
  { stage: "tested", supply: "earthing TT\nZe 60 Ω\nIpf 0.5 kA" },
);
add("a limit written as a reading", { "loop/reading-is-a-limit": "Zs 1667 Ω" }, way(twin + live("Zs 1667 Ω")), {
  stage: "tested",
  supply: "earthing TT\nZe 60 Ω\nIpf 0.5 kA",
});
add("an electrode that may not last", { "loop/electrode-unstable": "electrode rod 240 Ω" }, way(twin), {
  supply: "earthing TT\nelectrode rod 240 Ω",
});
add(
  "an electrode too high for its RCD",
  { "loop/electrode-over-limit": "electrode rod 173 Ω" },
  way("device BS EN 60898 B16 6 kA\nserves motor"),
  {
    supply: "earthing TT\nelectrode rod 173 Ω",
    board: "fed-from supply\nmain-switch BS EN 61008 63 A 300 mA type A delayed",
  },
);
add("Ze lower than a supply gives", { "loop/ze-too-low": "Ze 0.02 Ω" }, way(twin), {
  supply: "earthing TN-S\nZe 0.02 Ω\nIpf 1.2 kA",
});
add("Ze from the book", { "loop/ze-textbook": "Ze 0.35 Ω" }, way(twin), {
  supply: "earthing TN-C-S\nZe 0.35 Ω\nIpf 1.2 kA",
});
add("Ze that does not fit a combined neutral and earth", { "loop/ze-above-declared": "Ze 0.80 Ω" }, way(twin), {
  supply: "earthing TN-C-S\nZe 0.80 Ω\nIpf 0.3 kA",
});
add("Ze that does not fit a cable sheath", { "loop/ze-above-declared": "Ze 15 Ω" }, way(twin), {
  supply: "earthing TN-S\nZe 15 Ω\nIpf 0.3 kA",
});
add("a board below what feeds it", { "loop/board-below-upstream": "Zdb 0.12 Ω" }, way(twin), {
  board: "fed-from supply\nmain-switch BS EN 60947-3 100 A\nZdb 0.12 Ω",
});
const sub = (dead: string, zs: string) =>
  `way 1 feeder "Annexe" {\ndevice BS 88-2 63 A\ncable armoured 90 °C line 16 mm² cpc 16 mm² cores 3\nlength 60 m\nfeeds B\n}\n}\nboard B "Annexe" {\nfed-from A\nmain-switch BS EN 60947-3 63 A\nZdb 0.50 Ω\nway 1 radial "x" {\n${twin}${dead}\n${zs}\n}`;
add(
  "a further board calculated from the origin",
  { "loop/feeder-left-out": "Zs 0.61 Ω" },
  sub(dead("R1+R2 0.31 Ω"), live("Zs 0.61 Ω")),
  T,
);
add(
  "every way just under the limit",
  { "population/all-near-limit": "Zs 2.15 Ω" },
  four((i) => twin + live(`Zs 2.${14 + i} Ω`.replace("2.14", "2.10").replace("2.18", "2.12"))),
  T,
);
add("a board's fault current taken further out", { "fault/disagrees-with-loop": "Ipf 0.4 kA" }, way(twin), {
  board: "fed-from supply\nmain-switch BS EN 60947-3 100 A\nZdb 0.20 Ω\nIpf 0.4 kA",
});
add(
  "a short-circuit current worked from the earth loop",
  { "fault/short-circuit-from-loop": "PSCC 0.92 kA" },
  way(twin),
  { supply: "earthing TN-S\nZe 0.25 Ω\nPSCC 0.92 kA" },
);
add("the lower of two fault currents", { "fault/larger-not-recorded": "Ipf 0.92 kA" }, way(twin), {
  supply: "earthing TN-S\nZe 0.25 Ω\nPSCC 1.6 kA\nPEFC 0.92 kA\nIpf 0.92 kA",
});
add("one phase's fault current for three", { "fault/one-phase-figure": "Ipf 2.3 kA" }, way(twin), {
  supply: "earthing TN-S\nphases three\nZe 0.10 Ω\nPEFC 2.3 kA\nIpf 2.3 kA",
});
add(
  "a device that cannot break the fault",
  { "fault/breaking-capacity-exceeded": "device BS EN 61009 B16 6 kA 30 mA type A" },
  way(twin),
  { supply: "earthing TN-S\nZe 0.03 Ω\nIpf 8 kA" },
);
add(
  "a device without its breaking capacity",
  { "fault/breaking-capacity-missing": "device BS EN 60898 B16" },
  way("device BS EN 60898 B16\ncable flat-twin line 2.5 mm² cpc 1.5 mm²"),
);
add(
  "a device above its cable",
  { "design/device-over-capacity": "device BS EN 60898 B32 6 kA" },
  way(
    "device BS EN 60898 B32 6 kA\ncable flat-twin line 2.5 mm² cpc 1.5 mm²\nroute conduit method A\nIb 20 A\nserves motor\nlength 8 m",
  ),
);
add("a load above its device", { "design/load-over-device": "Ib 22 A" }, way(`${twin}Ib 22 A`));
add(
  "a rewirable fuse calculated as a breaker",
  { "design/device-over-capacity": "device BS 3036 30 A" },
  way(
    "device BS 3036 30 A\ncable flat-twin line 4 mm² cpc 1.5 mm²\nroute clipped method C\nIb 20 A\nserves cooker\nlength 10 m",
  ),
);
add(
  "a rating no device has",
  { "design/device-rating-unusual": "device BS EN 60898 B33 6 kA" },
  way("device BS EN 60898 B33 6 kA"),
);
add(
  "a long run on type C",
  { "loop/design-loop-over-limit": "length 40 m" },
  way(
    `${twin.replace("B16", "C32").replace("2.5 mm² cpc 1.5", "4 mm² cpc 1.5")}serves sockets\nlength 40 m\nIb 15 A`,
    "radial",
  ),
  { stage: "design", premises: "dwelling" },
);
add("two RCDs alike in a row", { "rcd/no-selectivity": "device BS EN 61009 B16 6 kA 30 mA type A" }, way(twin), {
  board: "fed-from supply\nmain-switch BS EN 61008 63 A 30 mA type A",
});
add(
  "a protective conductor too small for the fault",
  { "design/cpc-too-small": "cable singles line 16 mm² cpc 1.5 mm²" },
  way("device BS 3036 60 A\ncable singles line 16 mm² cpc 1.5 mm²\nserves motor\nlength 10 m"),
);
add(
  "sockets without an RCD",
  { "rcd/missing-for-sockets": "serves sockets" },
  way("device BS EN 60898 B16 6 kA\ncable flat-twin line 2.5 mm² cpc 1.5 mm²\nserves sockets"),
  { premises: "dwelling", stage: "design" },
);
add(
  "a concealed cable without an RCD",
  { "rcd/missing-for-concealed": "route wall depth 20 mm" },
  way("device BS EN 60898 B16 6 kA\ncable flat-twin line 2.5 mm² cpc 1.5 mm²\nroute wall depth 20 mm\nserves motor"),
  { premises: "dwelling", stage: "design" },
);
add(
  "lights of a home without an RCD",
  { "rcd/missing-for-lighting": "serves lighting" },
  way("device BS EN 60898 B6 6 kA\ncable flat-twin line 1.5 mm² cpc 1.0 mm²\nserves lighting"),
  { premises: "dwelling", stage: "design" },
);
add(
  "100 mA for people",
  { "rcd/sensitivity-too-high": "serves sockets" },
  way("device BS EN 61009 B16 6 kA 100 mA type A\nserves sockets"),
);
add(
  "an RCD blind to its load",
  { "rcd/type-unsuitable": "device BS EN 61009 B32 6 kA 30 mA type AC" },
  way("device BS EN 61009 B32 6 kA 30 mA type AC\nserves ev-charger"),
);
add(
  "type B behind a weaker type",
  { "rcd/upstream-blinded-by-dc": "device BS EN 61009 B32 6 kA 30 mA type B" },
  way("device BS EN 61009 B32 6 kA 30 mA type B\nserves ev-charger"),
  { board: "fed-from supply\nmain-switch BS EN 61008 63 A 300 mA type AC delayed" },
);
const R = (t: string, dev = twin, s: Setting = T) => [way(dev + live(t)), s] as const;
add(
  "a longer time at five times the current",
  { "rcd/time-columns-swapped": "rcd 30 mA 5x 31 ms" },
  ...R("rcd 30 mA 1x 18 ms\nrcd 30 mA 5x 31 ms"),
);
add("over 40 ms at five times", { "rcd/time-over-limit": "rcd 30 mA 5x 46 ms" }, ...R("rcd 30 mA 5x 46 ms"));
add("over 300 ms at the rating", { "rcd/time-over-limit": "rcd 30 mA 1x 340 ms" }, ...R("rcd 30 mA 1x 340 ms"));
add("a delayed RCD that does not wait", { "rcd/time-delayed-too-fast": "rcd 100 mA 1x 62 ms" }, way(twin), {
  stage: "tested",
  board:
    "fed-from supply\nmain-switch BS EN 61008 63 A 100 mA type A delayed\nlive 2026-03-05 {\nrcd 100 mA 1x 62 ms\n}",
});
add(
  "an older RCD by a later limit",
  { "rcd/time-over-limit": "rcd 30 mA 1x 240 ms" },
  ...R("rcd 30 mA 1x 240 ms", "device BS EN 60898 B16 6 kA\nrcd BS 4293 30 mA\n"),
);
add("a time without its current", { "rcd/time-without-multiple": "rcd 30 mA 24 ms" }, ...R("rcd 30 mA 24 ms"));
add("tripped at half its rating", { "rcd/tripped-at-half": "rcd 30 mA 0.5x 24 ms" }, ...R("rcd 30 mA 0.5x 24 ms"));
add(
  "a test button not pressed",
  { "rcd/test-button-missing": "device BS EN 61009 B16 6 kA 30 mA type A" },
  ...R("rcd 30 mA 1x 24 ms"),
);
add(
  "an AFDD's button not pressed",
  { "afdd/test-button-missing": "afdd BS EN 62606" },
  ...R("rcd 30 mA 1x 24 ms\ntest-button ok", `${twin}afdd BS EN 62606\n`),
);
add("no word on surge protection", { "surge/not-stated": "supply {" }, way(twin), {
  premises: "dwelling",
  stage: "tested",
});
add(
  "a one-way RCD with a source behind it",
  { "rcd/unidirectional-with-source": "serves pv" },
  way("device BS EN 61009 B16 6 kA 30 mA type A unidirectional\nserves pv"),
);
add(
  "an RCD without a time",
  { "rcd/test-missing": "device BS EN 61009 B16 6 kA 30 mA type A" },
  ...R("Zs 0.6 Ω\ntest-button ok"),
);
add(
  "polarity left blank",
  { "polarity/missing": 'way 1 radial "Bench sockets" {' },
  way(twin + dead("R1+R2 0.3 Ω")),
  T,
);
add("polarity wrong", { "polarity/wrong": "polarity wrong" }, way(twin + dead("polarity wrong")));
add(
  "three phases and no sequence",
  { "live/phase-sequence-missing": 'board A "Board" {' },
  way(`device BS EN 60898 C16 6 kA\nphase three\nserves motor\n${live("Zs 0.5 Ω")}`),
  { stage: "tested", supply: "earthing TN-S\nphases three\nZe 0.2 Ω\nIpf 2.4 kA" },
);
add(
  "polarity not applicable to sockets",
  { "record/not-applicable": 'polarity N/A "ring"' },
  way(ring + dead('polarity N/A "ring"'), "ring"),
);
add(
  "no word on how a cable runs",
  { "design/route-not-stated": "cable flat-twin line 2.5 mm² cpc 1.5 mm²" },
  way("device BS EN 60898 B16 6 kA\ncable flat-twin line 2.5 mm² cpc 1.5 mm²\nserves motor\nlength 10 m\nIb 9 A"),
  { stage: "design" },
);
add(
  "a method that is not the route's",
  { "design/method-against-route": "route conduit method C" },
  way("device BS EN 60898 B16 6 kA\ncable flat-twin line 2.5 mm² cpc 1.5 mm²\nroute conduit method C\nserves motor"),
);
add(
  "lights by the drop of other uses",
  { "drop/over-limit": "cable flat-twin line 1.5 mm² cpc 1.0 mm²" },
  way(
    "device BS EN 60898 B10 6 kA\ncable flat-twin line 1.5 mm² cpc 1.0 mm²\nroute clipped method C\nserves lighting\nlength 40 m\nIb 8 A",
  ),
  { stage: "design" },
);
add(
  "a feeder that takes all the drop",
  { "drop/feeder-uses-allowance": "cable armoured 90 °C line 16 mm² cpc 16 mm² cores 3" },
  sub("", "route clipped method C\nlength 40 m\nIb 15 A").replace(
    "length 60 m\nfeeds",
    "length 160 m\nroute clipped method C\nIb 55 A\nfeeds",
  ),
  { stage: "design" },
);
add(
  "bends left out of a run",
  { "containment/run-not-stated": "containment C1 conduit 20 mm length 6 m" },
  way("cable singles line 2.5 mm² cpc 2.5 mm²\nroute method B in C1"),
  { board: "fed-from supply\ncontainment C1 conduit 20 mm length 6 m" },
);
add(
  "a fuse with a breaker's type",
  { "design/device-does-not-exist": "device BS 88-3 B32 16 kA" },
  way("device BS 88-3 B32 16 kA"),
);
add(
  "a conduit over-full",
  { "containment/over-full": "containment C1 conduit 16 mm length 6 m bends 2" },
  ["1", "2"]
    .map((id) => `way ${id} radial "Kiln ${id}" {\ncable singles line 2.5 mm² cpc 2.5 mm²\nroute method B in C1\n}`)
    .join("\n"),
  { board: "fed-from supply\ncontainment C1 conduit 16 mm length 6 m bends 2" },
);
add(
  "the conductors of a circuit apart",
  { "containment/circuit-divided": "route conduit 20 mm method B carries line cpc" },
  way(
    "cable singles line 6 mm² cpc 6 mm²\nroute conduit 20 mm method B carries line cpc\nroute conduit 20 mm method B carries neutral\nserves motor",
  ),
);
add(
  "cores outside any containment",
  { "design/singles-outside-containment": "route clipped method C" },
  way("cable singles line 2.5 mm² cpc 2.5 mm²\nroute clipped method C\nserves motor"),
);
add(
  "a way in use that is called a spare",
  { "record/spare-in-use": 'way 1 radial "Spare" {' },
  way(`device BS EN 60898 B16 6 kA\nlength 9 m\n${dead("R1+R2 0.18 Ω")}`, "radial", "Spare"),
);

const points = (Zs: string) => way(`${twin}run A 9 m S1 8 m S2\n${live(`Zs 0.62 Ω\nat S2 Zs ${Zs}`)}`);
add(
  "a point above the limit, the circuit's own Zs within it",
  { "loop/point-over-limit": "at S2 Zs 3.10 Ω" },
  points("3.10 Ω"),
  T,
);
add("a point above the Zs written for the circuit", { "loop/highest-not-recorded": "Zs 0.62 Ω" }, points("0.90 Ω"), T);

add(
  "one trip time on every RCD of a board",
  { "population/equal-trip-times": "rcd 30 mA 1x 24.0 ms" },
  four(() => twin + live("rcd 30 mA 1x 24.0 ms")),
  T,
);
add(
  "signed as tested before the tests",
  { "record/signed-before-tests": 'tested by "A.B." 2026-03-01' },
  way(`${twin}tested by "A.B." 2026-03-01\n${dead("R1+R2 0.18 Ω")}`),
);
add(
  "Zs of a long circuit no higher than at its board, R1+R2 not recorded",
  { "loop/zs-against-length": "Zs 0.30 Ω" },
  way(`${twin}length 25 m\n${live("Zs 0.30 Ω")}`),
  T,
);
add(
  "Zs far above what the circuit's length can give, R1+R2 not recorded",
  { "loop/zs-against-length": "Zs 1.90 Ω" },
  way(`${twin}length 25 m\n${live("Zs 1.90 Ω")}`),
  T,
);

add(
  "an old breaker judged by a newer one's limit",
  { "loop/max-zs-wrong": "max-Zs 2.73 Ω", "loop/zs-over-limit": "Zs 2.20 Ω" },
  way(
    `device BS 3871 16 A type-2 3 kA\ncable flat-twin line 2.5 mm² cpc 1.5 mm²\nserves motor\nmax-Zs 2.73 Ω\n${live("Zs 2.20 Ω")}`,
  ),
);

const lit = (at: string, more = "") =>
  way(
    `device BS EN 61009 B6 6 kA 30 mA type A\ncable flat-twin line 1.5 mm² cpc 1.0 mm²\nserves lighting\nrun A 6 m S1 5 m S2 5 m S3\n${dead(`at S1 L-N 0.15 Ω L-E 0.18 Ω\n${at}\nat S3 L-N 0.39 Ω L-E 0.48 Ω\n${more}`)}`,
  );
add(
  "an earth missing at one switch or light of a radial",
  { "continuity/point-open": "at S2 L-N 0.27 Ω L-E >99.9 Ω" },
  lit("at S2 L-N 0.27 Ω L-E >99.9 Ω"),
);
add(
  "a neutral missing at one point of a radial",
  { "continuity/point-open": "at S2 L-N >99.9 Ω L-E 0.33 Ω" },
  lit("at S2 L-N >99.9 Ω L-E 0.33 Ω"),
);
add(
  "a poor joint at one point of a radial",
  { "continuity/point-against-length": "at S2 L-E 0.91 Ω" },
  lit("at S2 L-E 0.91 Ω"),
);
add(
  "R1+R2 of a radial read at a near point",
  { "continuity/highest-not-recorded": "R1+R2 0.33 Ω" },
  lit("at S2 L-E 0.33 Ω", "R1+R2 0.33 Ω"),
);
add("a trip time of nothing", { "rcd/time-zero": "rcd 30 mA 1x 0 ms" }, way(twin + live("rcd 30 mA 1x 0 ms")), T);
add("a board off the end of the scale", { "loop/board-off-scale": "Zdb >20 Ω" }, way(twin), {
  stage: "tested",
  board: "fed-from supply\nmain-switch BS EN 60947-3 100 A\nlive 2026-03-05 {\nZdb >20 Ω\n}",
});

const runs = (readings: readonly string[], first = 14, step = 5) =>
  readings
    .map(
      (R, i) =>
        `way ${i + 1} radial "Circuit ${i + 1}" {\n${twin}length ${first + step * i} m\n${dead(`R1+R2 ${R} Ω`)}\n}`,
    )
    .join("\n");
add(
  "R1+R2 of every circuit worked out of its length",
  { "population/calculated-from-length": "R1+R2 0.27 Ω" },
  runs(["0.27", "0.37", "0.47", "0.57", "0.66"]),
);
add(
  "leads that were not nulled",
  { "population/leads-not-nulled": "R1+R2 0.37 Ω" },
  runs(["0.37", "0.48", "0.57", "0.66"]),
);
add(
  "one circuit that leaves its length where its neighbours keep to theirs",
  { "population/unlike-neighbours": "R1+R2 0.64 Ω" },
  runs(["0.27", "0.38", "0.64", "0.56", "0.67"]),
);
add(
  "a board read in round figures",
  { "population/round-figures": "R1+R2 0.25 Ω" },
  ["0.25", "0.40", "0.15", "0.35"]
    .map(
      (R, i) =>
        `way ${i + 1} radial "Circuit ${i + 1}" {\n${twin}${dead(`R1+R2 ${R} Ω`)}\n${live(`Zs ${["0.60", "0.75", "0.50", "0.70"][i]} Ω`)}\n}`,
    )
    .join("\n"),
  T,
);
add(
  "one insulation reading written for three pairs of conductors",
  { "population/equal-pairs": "insulation 500 V L-N 310 MΩ L-E 310 MΩ N-E 310 MΩ" },
  ["310", "420", "285", "390"]
    .map(
      (R, i) =>
        `way ${i + 1} radial "Circuit ${i + 1}" {\n${twin}${dead(`insulation 500 V L-N ${R} MΩ L-E ${R} MΩ N-E ${R} MΩ`)}\n}`,
    )
    .join("\n"),
);

add(
  "polarity of a circuit called right beside a point that is wrong",
  { "record/polarity-disagrees": "polarity ok" },
  way(
    `${ring.replace("length 60 m\n", "")}run A 7 m S1 6 m S2 9 m A\n${dead("at S1 L-N 0.16 Ω polarity wrong\npolarity ok")}`,
    "ring",
  ),
  T,
);
add(
  "a neutral that serves two circuits, seen at an accessory",
  { "design/neutral-shared": 'shared-neutral "Way 5, at the landing switch"' },
  way(`${twin}serves lighting\nshared-neutral "Way 5, at the landing switch"`),
);
add("polarity of the supply wrong", { "polarity/wrong-upstream": "polarity wrong" }, way(twin), {
  stage: "tested",
  supply: "earthing TN-S\nZe 0.3 Ω\npolarity wrong",
});
add("an open earthing conductor", { "protective/open": "earthing-conductor 16 mm² continuity >20 Ω" }, way(twin), {
  supply: "earthing TN-S\nZe 0.3 Ω\nearthing-conductor 16 mm² continuity >20 Ω",
});
add(
  "an earthing conductor with a poor joint",
  { "protective/earthing-reads-high": "earthing-conductor 16 mm² continuity 0.9 Ω" },
  way(twin),
  { supply: "earthing TN-S\nZe 0.3 Ω\nearthing-conductor 16 mm² continuity 0.9 Ω" },
);
add(
  "not applicable against neutral to earth",
  { "record/not-applicable": 'insulation 500 V L-N 310 MΩ L-E 300 MΩ N-E N/A "x"' },
  I('500 V L-N 310 MΩ L-E 300 MΩ N-E N/A "x"'),
);
add("main bonding that nobody measured", { "protective/bonding-not-tested": "bonding water 10 mm²" }, way(twin), {
  stage: "tested",
  work: "new",
  supply: "earthing TN-S\nZe 0.3 Ω\nbonding water 10 mm²",
});
add("no word on main bonding", { "protective/bonding-not-stated": "supply {" }, way(twin), {
  stage: "tested",
  supply: "earthing TN-S\nZe 0.3 Ω\nearthing-conductor 16 mm²",
});
add("no word on the earthing conductor", { "protective/earthing-not-stated": "supply {" }, way(twin), {
  stage: "dead-tested",
  supply: "earthing TN-S\nZe 0.3 Ω\nbonding water 10 mm²",
});
add(
  "insulation tested for the first time after the circuit was live",
  { "live/before-dead": "live 2026-03-05 {" },
  way(
    `${twin}${dead("R1+R2 0.3 Ω")}\n${live("Zs 0.6 Ω")}\n${dead("insulation 500 V L-N 310 MΩ L-E 300 MΩ N-E 320 MΩ", "2026-03-09")}`,
  ),
  T,
);
add(
  "a test with an instrument nobody has described",
  { "language/unknown-name": "dead 2026-03-04 with M7 {" },
  way(`${twin}dead 2026-03-04 with M7 {\nR1+R2 0.3 Ω\n}`),
  { before: 'instrument M1 "Tester" {\nserial "7731"\ndue 2027-01-01\n}' },
);

/** The patterns of a ring of six points, 60 m round, as a meter shows them. */
const pattern = (ends: string, LN: readonly string[], LE: readonly string[]) =>
  way(pts([`ends ${ends}`, ...LN.map((value, i) => `at S${i + 1} L-N ${value} Ω L-E ${LE[i]} Ω`)].join("\n")), "ring");
const alike = (value: string) => Array.from({ length: 6 }, () => value);
const soundLE = ["0.28", "0.29", "0.29", "0.29", "0.29", "0.28"];
const but = (values: readonly string[], at: number, value: string) => values.map((v, i) => (i === at ? value : v));
add(
  "an open neutral, seen at every point",
  { "ring/open-conductor": "ends r1 0.44 Ω rn >20 Ω r2 0.73 Ω" },
  pattern("r1 0.44 Ω rn >20 Ω r2 0.73 Ω", alike("0.44"), soundLE),
);
add(
  "an open protective conductor, seen at every point",
  { "ring/open-conductor": "ends r1 0.44 Ω rn 0.44 Ω r2 >20 Ω" },
  pattern("r1 0.44 Ω rn 0.44 Ω r2 >20 Ω", alike("0.22"), ["0.47", "0.51", "0.56", "0.56", "0.51", "0.47"]),
);
add(
  "a ring cut through",
  { "ring/open-conductor": "ends r1 >20 Ω rn >20 Ω r2 >20 Ω" },
  pattern("r1 >20 Ω rn >20 Ω r2 >20 Ω", alike(">20"), alike(">20")),
);
add(
  "a poor joint in the line of a ring",
  { "ring/ends-differ": "ends r1 0.94 Ω rn 0.44 Ω r2 0.73 Ω" },
  pattern("r1 0.94 Ω rn 0.44 Ω r2 0.73 Ω", alike("0.30"), ["0.41", "0.40", "0.39", "0.39", "0.40", "0.41"]),
);
add(
  "a poor joint in the protective conductor of a ring",
  { "ring/cpc-ratio": "ends r1 0.44 Ω rn 0.44 Ω r2 1.23 Ω" },
  pattern("r1 0.44 Ω rn 0.44 Ω r2 1.23 Ω", alike("0.22"), ["0.34", "0.36", "0.37", "0.37", "0.36", "0.34"]),
);
add(
  "line and earth changed over at one point of a ring",
  { "ring/point-open": "at S4 L-N >20 Ω L-E 0.29 Ω" },
  pattern("r1 0.44 Ω rn 0.44 Ω r2 0.73 Ω", but(alike("0.22"), 3, ">20"), soundLE),
);
add(
  "the legs of two rings changed over at the board",
  { "ring/legs-swapped-between-rings": "ends r1 >20 Ω rn 0.44 Ω r2 0.73 Ω" },
  [1, 2]
    .map(
      (i) =>
        `way ${i} ring "Ring ${i}" {\n${ring}${dead(`ends r1 >20 Ω rn 0.${i === 1 ? 44 : 46} Ω r2 0.7${i === 1 ? 3 : 6} Ω`)}\n}`,
    )
    .join("\n"),
);

/** What no schedule shows, and why: listed so that nobody looks for them twice. */
export const notVisible = {
  "a result of a sum in the wrong unit": "The language holds readings; sums are made here, with their units.",
  "a sheet of tests that belongs to another design": "Readings stand in the way they were read on.",
  "one observation classed in two ways": "There are no classes of observations in the language.",
  "R1+R2 taken for the voltage drop": "The drop is calculated here, from its own table.",
  "a ratio of resistances turned upside down, or one ratio for every cable": "Ratios are calculated from the sizes.",
  "a metal switch without an earth where no point was read":
    "No line says of a single accessory what it is made of; a reading at the point shows it.",
  "a single-pole switch in the neutral, ticked as right":
    "No line says which pole a switch breaks; polarity is asked for.",
  "an expectation of a ring left unworked": "It is worked here and shown beside the readings.",
  "a limit of an older edition quoted for insulation": "The limit follows from the edition, and cannot be written.",
  "a bound compared as if it were a value": "Bounds keep their sign.",
  "a screw lampholder with its shell on the line": "No line describes a lampholder; polarity is asked for instead.",
  "a neutral borrowed from another circuit, before anybody has seen it":
    "The usual readings look sound; only a switched test shows it. Once it is seen a word says so, and a check asks to part them.",
  "a drop calculated on the device's rating": "It is calculated here on the design current.",
  "a limit of drop for another use": "It follows from what the circuit serves.",
  "a cable's factor read from the wrong row": "It is looked up here.",
  "a current and a time of two different faults in one sum": "The sum is made here, of one fault.",
  "a least size rounded down": "Sizes are rounded up here.",
  "a constant of the wrong kind of conductor": "It follows from how the cable is made.",
  "a cold reading held against the limit of warm conductors, or the reverse":
    "Limits cold and warm are both calculated here, by the temperature of the test where it is noted.",
  "tests at five times the rating asked of a record to a later text": "The edition decides which times are asked for.",
  "a rating of another reference method": "It is looked up for the method that is written.",
} as const;
add(
  "R1+R2 of a ring not divided, where its length is known",
  { "diagnosis/readings-disagree": "R1+R2 1.17 Ω" },
  way(`${ring}${dead("ends r1 0.44 Ω rn 0.44 Ω r2 0.73 Ω\nR1+R2 1.17 Ω")}`, "ring"),
);
add(
  "an RCD that did not trip at a current nobody noted",
  { "rcd/time-without-multiple": "rcd 30 mA no-trip" },
  way(twin + live("rcd 30 mA no-trip")),
  T,
);
add(
  "leakage by clamp that will trip the RCD",
  { "rcd/leakage-too-high": "device BS EN 61009 B16 6 kA 30 mA type A" },
  way(twin + live("leakage 14 mA")),
  T,
);
add(
  "a cable without its protective conductor",
  { "record/cable-incomplete": "cable flat-twin line 6 mm²" },
  way("device BS EN 60898 B32 6 kA\ncable flat-twin line 6 mm²"),
);
add(
  "a cable by its size alone",
  { "record/cable-incomplete": "cable line 1.5 mm² cpc 1 mm²" },
  way("device BS EN 60898 B6 6 kA\ncable line 1.5 mm² cpc 1 mm²"),
);
add(
  "a meter at the foot of its scale at the origin",
  { "loop/ze-too-low": "Ze <0.01 Ω" },
  way("device BS EN 60898 B16 6 kA"),
  {
    supply: "earthing TN-S\nZe <0.01 Ω\nIpf 0.95 kA",
  },
);
add("no earth at the origin", { "loop/ze-above-declared": "Ze >1999 Ω" }, way("device BS EN 60898 B16 6 kA"), {
  supply: "earthing TN-S\nZe >1999 Ω\nIpf 0.95 kA",
});
