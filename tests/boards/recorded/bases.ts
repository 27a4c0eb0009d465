/** Schedules in which much is stated: each of their lines, and each of the words that may stand in its place, changes figures. */
export interface Base {
  readonly name: string;
  readonly text: string;
  /** What stands there, and what may instead. */
  readonly instead: readonly (readonly [words: string, ...others: readonly string[]])[];
}

const head = (supply: string): string =>
  `wayfile 1\ninstallation "Tannery" {\nstandard BS 7671:2018+A2:2022\nstage tested\npremises commercial\nsupply {\n${supply}\n}\n`;

export const bases: readonly Base[] = [
  {
    name: "a ring with a spur",
    text: `${head("earthing TN-S\nZe 0.30 Ω\nIpf 1.2 kA\ncutout BS 88-3 100 A\ntails 25 mm²")}board A "Main" {
fed-from supply
main-switch BS EN 60947-3 100 A
rcd east BS EN 61008 63 A 30 mA type A
way 1 ring "Benches" {
device BS EN 60898 B32 6 kA
behind east
cable flat-twin line 2.5 mm² cpc 1.5 mm²
route clipped method C
route ceiling method 100 length 9 m
run A 7 m S1 6 m S2 9 m S3 8 m S4 12 m A
run S3 4 m S5
Ib 26 A
serves sockets
dead 2026-03-04 {
temperature 16 °C
ends r1 0.31 Ω rn 0.31 Ω r2 0.51 Ω
at S1 L-N 0.16 Ω L-E 0.20 Ω
at S3 L-N 0.15 Ω L-E 0.21 Ω
at S5 L-N 0.21 Ω L-E 0.28 Ω
R1+R2 0.28 Ω
insulation 500 V L-N 310 MΩ L-E >999 MΩ N-E >999 MΩ
}
live 2026-03-05 {
Zs 0.57 Ω
rcd east 30 mA 1x 24 ms
trip-current east 22 mA
test-button east ok
}
}
}
}
`,
    instead: [
      ["earthing TN-S", "earthing TT\nelectrode rod 84 Ω", "earthing TN-C-S"],
      ['ring "Benches"', 'radial "Benches"'],
      ["method 100", "method 101", "method 102", "method 103", "method A"],
      ["B32", "C32", "B40"],
      ["BS EN 60898 B32 6 kA", "BS 3036 30 A", "BS 88-3 32 A", "BS 1361 30 A"],
      ["30 mA type A\n", "100 mA type A delayed\n", "30 mA type AC\n", "10 mA type F\n"],
      ["line 2.5 mm² cpc 1.5 mm²", "line 4 mm² cpc 1.5 mm²", "line 1.5 mm² cpc 1.0 mm²"],
      ["flat-twin", "singles", "multicore"],
      ["Ib 26 A", "load 6 kW", "load 3 kW at S2\nload 2 kW at S5", "load 4 kW efficiency 80 %\npower-factor 70 %"],
      ["BS 7671:2018+A2:2022", "BS 7671:2008", "BS 7671:2018"],
      ["1x 24 ms", "5x 24 ms", "0.5x no-trip", "1x no-trip", '1x LIM "Guest rooms"'],
      ["0.57 Ω", 'LIM "Guest rooms"', ">1.99 Ω", "<0.10 Ω"],
      ["R1+R2 0.28 Ω", 'R1+R2 LIM "Guest rooms"', "R2 0.17 Ω"],
      ["S4 12 m A", "S4 12 m S6"],
    ],
  },
  {
    name: "a feeder and a board behind it",
    text: `${head('earthing TN-C-S\nphases three\nZe 0.12 Ω\nIpf 4.2 kA\ncutout BS 88-2 160 A\ntails 50 mm²\nstandby "Diesel set" Ze 0.40 Ω Ipf 0.9 kA')}board A "Main" {
fed-from supply
phases three
main-switch BS EN 60947-3 160 A
busbar 160 A
Zdb 0.13 Ω
Ipf 4.1 kA
way 1 feeder "Workshop" {
device BS 88-2 63 A 80 kA gG
phase three
feeds B
cable armoured 90 °C line 16 mm² cpc-by armour cores 4
route buried method D soil 1.5 K·m/W grouped 2
length 45 m
power-factor 85 %
dead 2026-03-04 {
R1+R2 0.24 Ω
}
live 2026-03-05 {
Zs 0.36 Ω
}
}
way 2 radial "Pump" {
device BS EN 60898 C20 10 kA
phase three
cable armoured 70 °C line 4 mm² cpc 4 mm² cores 4
route tray method E grouped 3 ambient 35 °C
length 38 m
load 5.5 kW efficiency 86 %
power-factor 82 %
starting direct 70 A
overload 11 A
serves motor
}
}
board B "Workshop" {
fed-from A
phases three
diversity 80 %
Zdb 0.37 Ω
way 1L1 radial "Sockets" {
device BS EN 61009 B20 10 kA 30 mA type A
cable singles 70 °C line 4 mm² cpc 2.5 mm²
route trunking method B grouped 4
length 22 m
Ib 16 A
leakage 2 mA
serves sockets
dead 2026-03-04 {
R1+R2 0.26 Ω
R2 0.16 Ω
insulation 500 V L-N 210 MΩ L-E 180 MΩ N-E 190 MΩ
}
live 2026-03-05 {
Zs 0.64 Ω
rcd 30 mA 1x 28 ms
}
}
way 1L2 radial "Lights" {
device BS EN 60898 B10 10 kA
cable singles 70 °C line 1.5 mm² cpc 1.5 mm²
route conduit 20 mm method B
run B 12 m P1 9 m P2
Ib 6 A
serves lighting
dead 2026-03-04 {
at P1 L-E 0.30 Ω
at P2 L-E 0.51 Ω
}
}
}
}
`,
    instead: [
      ["earthing TN-C-S", "earthing TN-S", "earthing TT\nelectrode rod 40 Ω"],
      ["Ze 0.40 Ω Ipf 0.9 kA", "gives 90 A neutral linked", "Ze 0.40 Ω"],
      ["phases three\nZe", "Ze"],
      ["cpc-by armour cores 4", "cpc 16 mm² cores 4", "cpc-by armour cores 3", "cpc-by armour cpc 10 mm² cores 4"],
      ["cores 4\nroute tray", "cores 3\nroute tray", "cores 5\nroute tray", "\nroute tray"],
      [
        "method D soil 1.5 K·m/W grouped 2",
        "method D grouped 3 apart 250 mm",
        "method D depth 900 mm",
        "method D ambient 15 °C",
      ],
      ["tray method E", "clipped method C", "tray method F"],
      [
        "BS 88-2 63 A 80 kA gG",
        "BS EN 60947-2 63 A 36 kA\nsettings thermal 50 A instantaneous 0.4 kA",
        "BS EN 60898 C63 10 kA",
        "BS 1361 60 A 33 kA",
      ],
      ["C20", "D20", "B20"],
      ["starting direct 70 A", "starting star-delta", "starting direct"],
      ["phase three\ncable", "phase L2\ncable"],
      ["Ib 16 A", "load 3.5 kW", "load 20 A"],
      [
        "armoured 90 °C line 16 mm²",
        "armoured 90 °C aluminium line 16 mm²",
        "armoured 70 °C line 25 mm²",
        "armoured 90 °C line 16 mm² parallel 2",
      ],
      ["diversity 80 %\n", ""],
      ["R1+R2 0.24 Ω", "R1+R2 0.24 Ω L1 0.24 Ω L2 0.23 Ω L3 0.25 Ω"],
      ["serves motor", "serves motor\nneutral-harmonics 40 %"],
      ["Ze 0.12 Ω", "Ze 0.12 Ω\nU0 240 V", "Ze 0.12 Ω declared", "Ze 0.02 Ω"],
    ],
  },
  {
    name: "an electrode, a shower and a source",
    text: `${head('earthing TT\nelectrode rod 62 Ω\nIpf 0.8 kA\ncutout BS 1361 60 A\nstandby "Battery" gives 40 A electrode 84 Ω neutral linked')}board A "Main" {
fed-from supply
main-switch BS EN 61008 80 A 100 mA type A delayed
busbar 63 A
way 1 radial "Shower" {
device BS EN 61009 B40 6 kA 30 mA type A
cable flat-twin line 10 mm² cpc 4 mm²
route insulated 100 mm method 101 length 4 m
route clipped method C
length 16 m
load 8.5 kW
serves shower
place bathroom zone 1
live 2026-03-05 {
Zs 63 Ω
rcd 30 mA 1x 31 ms
rcd 30 mA 5x 18 ms
}
}
way 2 radial "Panels" {
device BS EN 61009 B16 double-pole 6 kA 30 mA type B bidirectional
cable armoured 90 °C line 2.5 mm² cpc 2.5 mm² cores 3
route buried method D
length 34 m
Ib 14 A
serves pv
}
way 3 radial "Charger" {
device BS EN 61009 C32 6 kA 30 mA type B
cable mineral line 6 mm² cpc-by sheath
route clipped method C
length 19 m
Ib 30 A
serves ev-charger
terminals 90 °C
}
way 4 radial "Kiln" {
device BS 88-3 45 A
cable multicore 90 °C line 6 mm² cpc 6 mm² cores 3
route ceiling method A ambient 40 °C
length 11 m
load 6 kW
power-factor 95 %
serves heating
}
}
}
`,
    instead: [
      ["earthing TT\nelectrode rod 62 Ω", "earthing TN-S\nZe 0.60 Ω", "earthing TN-C-S\nZe 0.20 Ω"],
      ["premises commercial", "premises dwelling"],
      ["100 mA type A delayed", "30 mA type A", "300 mA type A delayed"],
      ["gives 40 A electrode", "Ze 0.80 Ω electrode", "Ze 0.80 Ω Ipf 0.3 kA electrode"],
      ["mineral line 6 mm² cpc-by sheath", "mineral line 6 mm² cpc 6 mm²", "singles 90 °C line 6 mm² cpc 6 mm²"],
      ["BS 88-3 45 A", "BS 3036 45 A", "BS EN 60898 B45 6 kA", "BS 88-2 50 A 80 kA gM"],
      ["method 101", "method 102", "method 103"],
      ["cores 3\nroute ceiling", "cores 2\nroute ceiling", "\nroute ceiling"],
      ["terminals 90 °C\n", ""],
      ["BS 7671:2018+A2:2022", "BS 7671:2008", "BS 7671:2001"],
    ],
  },
];
