/** The lines a made-up schedule begins with, down to the supply: a tested installation and the instrument of its tests. */
export const opening = (name: string): string[] => [
  "wayfile 1",
  'instrument M1 "Multifunction tester" {',
  '  serial      "0417"',
  "  calibrated  2025-11-03",
  "  due         2026-11-03",
  "  tests       AC A F B",
  "}",
  ...installed(name),
];

/** The head of a tested installation of new work. */
export const installed = (name: string): string[] => [
  `installation "${name}" {`,
  "  standard  BS 7671:2018+A2:2022",
  "  stage     tested",
  "  work      new",
  "  premises  commercial",
  '  designed  by "K.A." 2026-01-20',
  '  installed by "D.O." 2026-02-27',
  '  tested    by "K.A." 2026-03-05',
];

/** What stands at the origin of every one, to the end of the supply. */
export const atOrigin: readonly string[] = [
  "    cutout              BS 88-3 100 A",
  "    tails               25 mm²",
  "    earthing-conductor  16 mm²",
  "    bonding             water 10 mm² continuity 0.02 Ω",
  "    spd                 fitted",
  "    polarity            ok",
  "    measured            2026-03-05 with M1",
  "  }",
];
