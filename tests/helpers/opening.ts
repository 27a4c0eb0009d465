/** The lines a made-up schedule begins with, down to the supply: a tested installation and the instrument of its tests. */
export const opening = (name: string): string[] => [
  "wayfile 1",
  'instrument M1 "Multifunction tester" {',
  '  serial      "0417"',
  "  calibrated  2025-11-03",
  "  due         2026-11-03",
  "  tests       AC A F B",
  "}",
  `installation "${name}" {`,
  "  standard  BS 7671:2018+A2:2022",
  "  stage     tested",
  "  work      new",
  "  premises  commercial",
  '  designed  by "K.A." 2026-01-20',
  '  installed by "D.O." 2026-02-27',
  '  tested    by "K.A." 2026-03-05',
];
