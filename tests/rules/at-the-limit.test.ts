/**
 * Checks at their limits: the value that still passes and the one beside it that does not, in one schedule that holds `#`
 * where it stands. Limits of a standard are named with their regulation; the others are common practice of `tables`.
 */
import { holdAtLimits, type Limit } from "../helpers/limits.ts";

const supplyOnly = (line: string): string =>
  `wayfile 1\ninstallation "Sample" {\n  standard BS 7671:2018+A2:2022\n  supply {\n    earthing TN-S\n    ${line}\n  }\n  board A "Board" {\n    fed-from supply\n  }\n}\n`;
const tested = { stage: "tested" } as const;
const delayed = {
  stage: "tested",
  board:
    "fed-from supply\nrcd main BS EN 61008 100 A 100 mA type A delayed\nlive 2026-03-05 {\nrcd main 100 mA 1x 210 ms\n}",
} as const;

const limits: readonly Limit[] = [
  // 534.4.10, by type of the device.
  {
    check: "surge/conductor-too-small",
    text: supplyOnly("spd fitted #"),
    found: {
      "T1 earth 15.9 mm²": "warning",
      "T1 earth 16 mm²": "",
      "T1-T2 earth 15.9 mm²": "warning",
      "T1-T2 earth 16 mm²": "",
      "T2 earth 5.9 mm²": "warning",
      "T2 earth 6 mm²": "",
      "T3 earth 1.5 mm²": "",
    },
  },
  // 534.4.8: 0.5 m, and 1 m at most.
  {
    check: "surge/leads-too-long",
    text: supplyOnly("spd fitted T2 leads # m"),
    found: { "0.5": "", "0.51": "information", "1": "information", "1.01": "warning" },
  },
  // 543.1.1: 2.5 mm² where it is protected, 4 mm² where it is not.
  {
    check: "protective/separate-below-minimum",
    text: `way 1 radial "Heater" {
device BS EN 60898 B16 6 kA
cable singles line 4 mm² cpc #
}`,
    found: {
      "2.4 mm²\nroute conduit 20 mm method B carries cpc": "error",
      "2.5 mm²\nroute conduit 20 mm method B carries cpc": "",
      "2.4 mm²\nroute trunking method B carries cpc": "error",
      "2.5 mm²\nroute clipped carries cpc": "error",
      "3.9 mm²\nroute clipped carries cpc": "error",
      "4 mm²\nroute clipped carries cpc": "",
      "2.5 mm²\nroute clipped carries cpc line": "",
    },
  },
  // Guidance Note 3, Table 3.2: three years for a workshop; 45 days later is no longer interval.
  {
    check: "inspection/next-too-late",
    text: `wayfile 1
installation "Kiln house" {
  premises industrial
  inspection periodic 2026-03-05 {
    next-inspection # "Kept dry"
  }
}
`,
    found: { "2029-03-05": "", "2029-04-18": "", "2029-04-20": "information", "2036-03-05": "information" },
  },
  // 643.8: no RCD opens in less than a millisecond, and its mechanism hardly in less than five.
  {
    check: "rcd/time-too-short",
    setting: tested,
    text: `way 1 radial "Bench sockets" {
device BS EN 61009 B20 6 kA 30 mA type A
live 2026-03-05 {
rcd 30 mA #
}
}`,
    found: {
      "1x 0.9 ms": "warning",
      "1x 1 ms": "information",
      "1x 4.9 ms": "information",
      "1x 5 ms": "",
      "2x 4.9 ms": "",
      "5x 0.9 ms": "warning",
    },
  },
  // BS EN 61008-1: a delayed RCD waits at least 130 ms at its rated current, 50 ms at five times it.
  {
    check: "rcd/time-delayed-too-fast",
    setting: delayed,
    text: `way 1 radial "Bench sockets" {
behind main
live 2026-03-05 {
rcd 100 mA #
}
}`,
    found: {
      "1x 129 ms": "error",
      "1x 130 ms": "",
      "1x <130 ms": "error",
      "1x <131 ms": "",
      "1x >10 ms": "",
      "1x 0 ms": "",
      "0.5x 10 ms": "",
      "5x 49 ms": "error",
      "5x 50 ms": "",
    },
  },
  // The maker's figure, else twelve.
  {
    check: "design/too-many-drivers",
    text: `way 1 radial "Workshop lights" {
device BS EN 61009 B10 6 kA 30 mA type A
serves lighting
drivers #
}`,
    found: { "23 at-most 23": "", "24 at-most 23": "warning", "12": "", "13": "information" },
  },
  // Table 4C1 has columns for twenty at most.
  {
    check: "design/cable-does-not-exist",
    text: `way 1 radial "Kiln" {
device BS 88-2 100 A 80 kA
cable armoured 90 °C line 16 mm² cpc 16 mm² #
}`,
    found: {
      "parallel 0": "error",
      "parallel 1": "",
      "parallel 20": "",
      "parallel 21": "error",
      "parallel 2 cpcs 2": "",
      "parallel 2 cpcs 3": "error",
      "parallel 2 cpcs 0": "error",
      "cpcs 2": "error",
    },
  },
  {
    check: "design/cable-does-not-exist",
    text: `way 1 radial "Heater" {
device BS EN 60898 B16 6 kA
cable #
}`,
    found: {
      "singles line 4 mm² neutral 4 mm² cpc 4 mm²": "",
      "singles line 4 mm² neutral 2.5 mm² cpc 4 mm²": "error",
      "flat-twin line 2.5 mm² cpc 2.5 mm²": "",
      "flat-twin line 2.5 mm² cpc 4 mm²": "error",
      // Flat cable is sold as 2.5 with 1.5 mm² and was with 1 mm²; as 6 with 2.5 mm².
      "flat-twin line 2.5 mm² cpc 1 mm²": "",
      "flat-twin line 2.5 mm² cpc 0.75 mm²": [
        "warning",
        "has a cpc of 1.5 mm², and never had one as small as 0.75 mm²",
      ],
      "flat-twin line 6 mm² cpc 1.5 mm²": "",
      "flat-twin line 6 mm² cpc 1 mm²": "warning",
      "singles line 2.5 mm² cpc 4 mm²": "",
      "multicore line 2.5 mm² cpc-by armour": "error",
      "armoured line 2.5 mm² cpc-by armour": "",
      "multicore line 2.5 mm² cpc-by sheath": "error",
      "mineral line 2.5 mm² cpc-by sheath": "",
    },
  },
  // 431.1.1: a device opens every line of its circuit.
  {
    check: "coordination/device-poles",
    setting: { supply: "earthing TN-S\nphases three\nZe 0.20 Ω", board: "fed-from supply\nphases three" },
    text: `way 1 radial "Saw" {
device BS EN 60898 C16 # 10 kA
phase three
}`,
    found: { "single-pole": "warning", "double-pole": "warning", "three-pole": "", "four-pole": "" },
  },
  // Table 41.5: 1667 Ω is also met as 1666 Ω and 1670 Ω.
  {
    check: "loop/max-zs-wrong",
    setting: { supply: "earthing TT\nIpf 1.2 kA" },
    text: `way 1 radial "Heater" {
device BS EN 61009 B32 6 kA 30 mA type A
max-Zs # Ω
}`,
    found: { "1666": "", "1670": "", "1675": "", "1676": "warning", "1.37": "warning" },
  },
  // A supply of 230 V +10 % −6 %: 216.2 V to 253 V, and between lines 374.5 V to 438.2 V.
  {
    check: "live/voltage-outside",
    setting: tested,
    text: `way 1 radial "Water heater" {
live 2026-03-05 {
voltage # V
}
}`,
    found: { "216.1": "warning", "216.2": "", "253": "", "253.1": "warning" },
  },
  {
    check: "live/voltage-outside",
    setting: {
      stage: "tested",
      supply: "earthing TN-S\nphases three\nZe 0.20 Ω",
      board: "fed-from supply\nphases three",
    },
    text: `way 1 radial "Kiln" {
phase three
live 2026-03-05 {
voltage # V
}
}`,
    found: { "374": "warning", "375": "", "438": "", "439": "warning", "230": "" },
  },
  // 643.2.1: no conductor reads nothing, but a heavy one may on a meter that shows hundredths.
  {
    check: "continuity/negative-or-zero",
    setting: tested,
    text: `way 1 radial "Water heater" {
cable flat-twin line # cpc 1.5 mm²
length 20 m
dead 2026-03-04 {
R1+R2 RR Ω
}
}`
      .replace(" # cpc 1.5 mm²", " 2.5 mm² cpc 1.5 mm²")
      .replace("RR", "#"),
    found: { "-0.01": "error", "0.00": "error", "0.01": "", "<0.00": "", ">0.00": "" },
  },
  // Table 41.3: 1.37 Ω of B32; the RCD of the same device disconnects to 1667 Ω. Off the scale nothing is known of it.
  {
    check: "loop/relies-on-rcd",
    setting: tested,
    text: `way 1 radial "Outside lights" {
device BS EN 61009 B32 6 kA 30 mA type A
live 2026-03-05 {
Zs # Ω
}
}`,
    found: { "1.37": "", "1.38": "warning", ">1.52": "", "<1.52": "", "20.2": "warning", "20.4": "" },
  },
  // 20 Ω beyond the 0.30 Ω of the supply: 500 m of 1 mm² come to 18.1 Ω (BS EN 60228).
  {
    check: "loop/cpc-open",
    setting: tested,
    text: `way 1 radial "Outside lights" {
device BS EN 61009 B32 6 kA 30 mA type A
live 2026-03-05 {
Zs # Ω
}
}`,
    found: { "20.2": "", "20.4": "error", "1667": "error", "1668": "", ">1999": "", "<20.4": "" },
  },
  // 600 m of 1 mm²: 600 × 36.2 mΩ are 21.7 Ω.
  {
    check: "loop/cpc-open",
    setting: tested,
    text: `way 1 radial "Bell" {
device BS EN 61009 B6 6 kA 30 mA type A
cable flat-twin line 1 mm² cpc 1 mm²
length # m
live 2026-03-05 {
Zs 25 Ω
}
}`,
    found: { "600": "", "100": "error" },
  },
  // 9.2 kW at 230 V are 40 A: 15 % of it are 6 A. A small load may be out by an ampere.
  {
    check: "design/load-disagrees",
    text: `way 1 radial "Shower" {
device BS EN 60898 B50 6 kA
serves shower
#
}`,
    found: {
      "load 9.2 kW\nIb 34 A": "",
      "load 9.2 kW\nIb 33.9 A": "warning",
      "load 9.2 kW\nIb 46 A": "",
      "load 9.2 kW\nIb 46.1 A": "warning",
      "load 0.23 kW\nIb 2 A": "",
      "load 0.23 kW\nIb 2.1 A": "warning",
      "load 4.6 kW\nload 4.6 kW\nIb 20 A": "",
      "load 4.6 kW\nload 4.6 kW\nIb 81 A": "",
      "load 4.6 kW\nload 4.6 kW\nIb 81.1 A": "warning",
    },
  },
  // Of what is on the circuit besides, or what it is at all, nobody knows how closely the load tells the current.
  {
    check: "design/load-disagrees",
    text: `way 1 radial "Shower" {
device BS EN 60898 B50 6 kA
#
load 9.2 kW
Ib 30 A
}`,
    found: { "serves shower": "warning", "serves shower lighting": "", "serves lighting": "", "": "" },
  },
  // On-Site Guide, Table A2: of a cooker in a dwelling three tenths count, and no less of any other single load.
  {
    check: "design/load-disagrees",
    text: `way 1 radial "Kitchen" {
device BS EN 60898 B50 6 kA
#
}`,
    found: {
      "serves cooker\nload 23 kW\nIb 30 A": "",
      "serves cooker\nload 23 kW\nIb 29.9 A": ["warning", "come to 100 A, far more than diversity takes away"],
      "serves heat-pump\nload 23 kW\nload 2.3 kW\nIb 29.9 A": "warning",
      "serves ev-charger\nload 11.5 kW\nload 11.5 kW\nIb 29.9 A": "",
      "serves sockets\nload 23 kW\nIb 20 A": "",
      "load 23 kW\nIb 20 A": "",
    },
  },
  {
    check: "inspection/days-disagree",
    text: `wayfile 1
installation "Kiln house" {
  inspection periodic 2026-03-05 {
    #
  }
}
`,
    found: {
      "issued 2026-03-05": "",
      "issued 2026-03-04": "error",
      'next-inspection 2026-03-05 "At once"': "",
      'next-inspection 2026-03-04 "Before"': "error",
      "last-inspected 2026-03-05": "",
      "last-inspected 2026-03-06": "error",
    },
  },
  {
    check: "design/cable-does-not-exist",
    text: `way 1 radial "Alarm" {
device BS EN 60898 B6 6 kA
cable # line 1.5 mm² cpc 1.5 mm² fire-resisting
}`,
    found: { multicore: "", armoured: "", singles: "", "flat-twin": "error", flex: "error" },
  },
];

holdAtLimits(limits);
