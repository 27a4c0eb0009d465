import type { Setting } from "../../server/rules/frame/rule.ts";

/** A tested circuit and its surroundings, of which a sample says only what differs. */

export const board = `fed-from supply
main-switch BS EN 60947-3 100 A
spd fitted
polarity ok
Zdb 0.31 Ω
Ipf 0.9 kA
designed by "A.N." 2026-01-02
installed by "B.O." 2026-03-01
tested by "C.P." 2026-03-05`;

export const origin = `cutout BS 88-3 100 A
tails 25 mm²
earthing-conductor 16 mm²
bonding water 10 mm² continuity 0.03 Ω
spd fitted
polarity ok
measured 2026-03-05 with M1`;

export const supply = `earthing TN-S\nZe 0.30 Ω\nIpf 0.95 kA\n${origin}`;

const before = 'instrument M1 "Tester" {\nserial "0417"\ncalibrated 2025-11-03\ndue 2026-11-03\ntests AC A F B\n}';

export const tested: Setting = { stage: "tested", before, board, supply };

/** What a circuit has otherwise than the usual one. */
export interface Circuit {
  readonly kind?: string;
  readonly device?: string;
  readonly cable?: string;
  readonly route?: string;
  /** Its length or its run. */
  readonly length?: string;
  readonly more?: string;
  readonly dead?: string;
  readonly R1R2?: string;
  readonly insulation?: string;
  readonly Zs?: string;
  readonly live?: string;
  /** What follows its tests, such as those of a later day. */
  readonly later?: string;
}

export const way = ({
  kind = "radial",
  device = "BS EN 60898 B16 6 kA",
  cable = "flat-twin line 2.5 mm² cpc 1.5 mm²",
  route = "clipped method C",
  length = "length 20 m",
  more = "serves water-heater\nIb 10 A",
  dead = "",
  R1R2 = "0.39 Ω",
  insulation = "500 V L-N >999 MΩ L-E 500 MΩ N-E 700 MΩ",
  Zs = "0.71 Ω",
  live = "",
  later = "",
}: Circuit): string => `way 1 ${kind} "Circuit" {
device ${device}
cable ${cable}
route ${route}
${length}
${more}
dead 2026-03-04 with M1 {
${dead}
R1+R2 ${R1R2}
insulation ${insulation}
polarity ok
}
live 2026-03-05 with M1 {
Zs ${Zs}
${live}
}
${later}
}`;
