import { describe, expect, it } from "vitest";
import type { Setting } from "../../server/rules/frame/rule.ts";
import { findingsOf, inSetting } from "../helpers/sample.ts";

/** Correct work of many kinds raises nothing from the checks of design, loop, RCD, fault current and earthing. */

const families = ["design/", "loop/", "rcd/", "fault/", "protective/"];

/** What the tests of an RCD themselves say belongs to other pages. */
const ofTests = /^rcd\/(test|time)-/;

const raised = (text: string) =>
  findingsOf(text)
    .filter(({ check }) => families.some((family) => check.startsWith(family)) && !ofTests.test(check))
    .map(({ check, line, message }) => `${check} at ${line}: ${message}`);

interface Quiet {
  readonly name: string;
  readonly way: string;
  readonly setting?: Setting;
}

const home: Setting = {
  stage: "tested",
  premises: "dwelling",
  supply:
    "earthing TN-C-S\nZe 0.21 Ω\nIpf 1.2 kA\ntails 25 mm²\nearthing-conductor 16 mm²\nbonding water 10 mm² length 9 m continuity 0.04 Ω\nspd fitted",
  board: "fed-from supply\nmain-switch BS EN 60947-3 100 A\nZdb 0.21 Ω",
};
const electrode: Setting = {
  stage: "tested",
  premises: "agricultural",
  supply:
    'earthing TT\nZe 84 Ω\nelectrode rod 78 Ω\nIpf 1.1 kA\ntails 25 mm²\nearthing-conductor 10 mm²\nbonding none "Plastic water pipe, no gas"\nspd fitted',
  board: "fed-from supply\nmain-switch BS EN 61008 80 A 100 mA type A delayed",
};
const works: Setting = {
  stage: "tested",
  premises: "industrial",
  supply:
    "earthing TN-S\nphases three\nZe 0.11 Ω\nPSCC 2.2 kA\nIpf 4.4 kA\ntails 35 mm²\nearthing-conductor 16 mm²\nbonding structure 10 mm² continuity 0.02 Ω\nspd fitted",
  board: "fed-from supply\nphases three\nmain-switch BS EN 60947-3 160 A\nZdb 0.12 Ω",
};
const old: Setting = {
  standard: "BS 7671:2008",
  stage: "tested",
  work: "existing",
  premises: "dwelling",
  supply: "earthing TN-S\nZe 0.42 Ω\nIpf 0.62 kA\ntails 16 mm²\nearthing-conductor 16 mm²\nbonding gas 10 mm²",
};

const cases: readonly Quiet[] = [
  {
    name: "a ring in flat cable",
    setting: home,
    way: `way 1 ring "Kitchen sockets" {
  device  BS EN 61009 B32 6 kA 30 mA type A
  cable   flat-twin line 2.5 mm² cpc 1.5 mm²
  route   clipped method C
  route   wall method 102 depth 20 mm
  length  62 m
  floor-area 48 m²
  serves  sockets
  dead 2026-03-04 { R1+R2 0.30 Ω }
  live 2026-03-05 { Zs 0.52 Ω }
}`,
  },
  {
    name: "a 20 A radial of sockets",
    setting: home,
    way: `way 2 radial "Garage sockets" {
  device  BS EN 61009 B20 6 kA 30 mA type A
  cable   flat-twin line 2.5 mm² cpc 1.5 mm²
  route   clipped method C
  length  21 m
  floor-area 30 m²
  serves  sockets
  dead 2026-03-04 { R1+R2 0.41 Ω }
  live 2026-03-05 { Zs 0.63 Ω }
}`,
  },
  {
    name: "a 32 A radial of sockets in 4 mm²",
    setting: home,
    way: `way 3 radial "Utility sockets" {
  device  BS EN 61009 B32 6 kA 30 mA type A
  cable   flat-twin line 4 mm² cpc 1.5 mm²
  route   clipped method C
  length  18 m
  serves  sockets
}`,
  },
  {
    name: "lights in a dwelling",
    setting: home,
    way: `way 4 radial "Lights upstairs" {
  device  BS EN 61009 B6 6 kA 30 mA type A
  cable   flat-twin line 1.0 mm² cpc 1.0 mm²
  route   ceiling method C
  route   ceiling method C insulated 50 mm
  length  34 m
  Ib      3.1 A
  serves  lighting
  dead 2026-03-04 { R1+R2 1.20 Ω }
  live 2026-03-05 { Zs 1.39 Ω }
}`,
  },
  {
    name: "a cooker",
    setting: home,
    way: `way 5 radial "Cooker" {
  device  BS EN 61009 B32 6 kA 30 mA type A
  cable   flat-twin line 6 mm² cpc 2.5 mm²
  route   clipped method C
  length  11 m
  load    11 kW "Oven and hob"
  Ib      21 A
  serves  cooker
}`,
  },
  {
    name: "a shower",
    setting: home,
    way: `way 6 radial "Shower" {
  device  BS EN 61009 B40 6 kA 30 mA type A
  cable   flat-twin line 10 mm² cpc 4 mm²
  route   ceiling method 100
  route   clipped method C
  length  16 m
  load    8.5 kW
  Ib      37 A
  serves  shower
  place   bathroom
}`,
  },
  {
    name: "a charging point",
    setting: home,
    way: `way 7 radial "Charging point" {
  device  BS EN 61009 C40 6 kA 30 mA type A bidirectional
  cable   armoured 90 °C line 6 mm² cpc 6 mm² cores 3
  route   clipped method C
  length  14 m
  Ib      32 A
  serves  ev-charger
  note    "Detects 6 mA d.c. itself (RDC-DD)"
  dead 2026-03-04 { R1+R2 0.09 Ω }
  live 2026-03-05 { Zs 0.30 Ω }
}`,
  },
  {
    name: "a roof array to the latest amendments",
    setting: { ...home, standard: "BS 7671:2018+A2:2022+A3:2024" },
    way: `way 8 radial "Roof array" {
  device  BS EN 61009 B20 6 kA 30 mA type A bidirectional
  cable   armoured 90 °C line 4 mm² cpc 4 mm²
  route   clipped method C
  length  12 m
  Ib      16 A
  serves  pv
  inverter separated
}`,
  },
  {
    name: "sockets behind an RCD of the board",
    setting: { ...home, board: "fed-from supply\nrcd east BS EN 61008 63 A 30 mA type A" },
    way: `way 9 ring "Sockets" {
  device  BS EN 60898 B32 6 kA
  behind  east
  cable   flat-twin line 2.5 mm² cpc 1.5 mm²
  route   clipped method C
  serves  sockets
}`,
  },
  {
    name: "a pump behind an electrode",
    setting: electrode,
    way: `way 1 radial "Well pump" {
  device  BS EN 61009 B16 6 kA 30 mA type A
  cable   armoured 90 °C line 2.5 mm² cpc 2.5 mm²
  route   buried method D
  length  45 m
  Ib      7 A
  serves  motor
  place   outdoors
  dead 2026-03-04 { R1+R2 0.67 Ω }
  live 2026-03-05 { Zs 85 Ω }
  max-Zs  1667 Ω
}`,
  },
  {
    name: "a three-phase motor",
    setting: works,
    way: `way 1 radial "Lathe" {
  device  BS EN 60898 C20 10 kA
  phase   three
  cable   singles line 4 mm² cpc 4 mm²
  route   conduit 25 mm method B
  length  22 m
  load    7.5 kW
  Ib      15 A
  overload 16 A
  serves  motor
  dead 2026-03-04 { R1+R2 0.20 Ω }
  live 2026-03-05 { Zs 0.31 Ω }
}`,
  },
  {
    name: "a feeder behind a fuse to BS 88",
    setting: works,
    way: `way 2 feeder "Paint shop board" {
  device  BS 88-2 63 A gG 80 kA
  phase   three
  cable   armoured 90 °C line 16 mm² cpc-by armour cores 4
  route   tray method E grouped 2 arrangement-free
  length  38 m
  Ib      46 A
}`.replace(" arrangement-free", " tray-layer"),
  },
  {
    name: "armoured cable in the ground at 90 °C",
    setting: works,
    way: `way 3 radial "Yard lighting columns" {
  device  BS EN 60898 C16 10 kA
  phase   L2
  cable   armoured 90 °C line 6 mm² cpc 6 mm²
  route   duct method D
  length  40 m
  Ib      9 A
  serves  lighting
  place   outdoors
}`,
  },
  {
    name: "sockets that skilled persons alone use",
    setting: works,
    way: `way 4 radial "Test bench" {
  device  BS EN 60898 B16 10 kA
  phase   L1
  cable   singles line 2.5 mm² cpc 2.5 mm²
  route   trunking method B grouped 3
  length  12 m
  serves  sockets
  place   skilled-only
  departure 411.3.3 "Risk assessment 4 in the site file"
}`,
  },
  {
    name: "a high loop brought within time by temperature",
    setting: works,
    way: `way 5 radial "Fan" {
  device  BS EN 60898 B16 10 kA
  cable   singles line 2.5 mm² cpc 2.5 mm²
  route   conduit method B
  serves  ventilation
  live 2026-03-05 {
    temperature  20 °C
    Zs           2.25 Ω
  }
}`,
  },
  {
    name: "an existing immersion heater behind a rewirable fuse",
    setting: old,
    way: `way 1 radial "Immersion heater" {
  device  BS 3036 15 A 1 kA
  cable   singles line 2.5 mm² cpc 1.5 mm²
  route   conduit method B
  length  14 m
  load    3 kW
  Ib      13 A
  serves  water-heater
  dead 2019-06-12 { R1+R2 0.27 Ω }
  live 2019-06-12 { Zs 0.70 Ω }
}`,
  },
  {
    name: "existing lights of an edition that asked for no RCD",
    setting: old,
    way: `way 2 radial "Lights" {
  device  BS EN 60898 B6 6 kA
  cable   flat-twin line 1.5 mm² cpc 1.0 mm²
  route   ceiling method C
  length  30 m
  serves  lighting
  live 2019-06-12 { Zs 1.31 Ω }
}`,
  },
  {
    name: "a spare way",
    setting: home,
    way: "way 12 spare",
  },
];

describe("correct work raises nothing", () => {
  it.each(cases)("$name", ({ way, setting }) => {
    expect(raised(inSetting(way, setting).text)).toEqual([]);
  });

  it("a whole small installation with a board further out", () => {
    expect(raised(outbuilding)).toEqual([]);
  });

  it("a line that is half typed raises no more than its own error", () => {
    const typed = `way 1 ring "Sockets" {
  device  BS EN 61009 B32 6 kA 30
  cable   flat-twin line 2.5
  route   clipped meth
  serves  sockets
}`;
    expect(raised(inSetting(typed, home).text)).toEqual([]);
  });
});

const outbuilding = `wayfile 1
installation "Barn" {
  standard BS 7671:2018+A2:2022
  stage tested
  work new
  premises commercial
  supply {
    earthing TN-S
    bonding water 10 mm² continuity 0.03 Ω
    Ze 0.18 Ω
    Ipf 1.4 kA
    tails 25 mm²
    earthing-conductor 16 mm²
    spd fitted
  }
  board A "Main board" {
    fed-from supply
    way 1 feeder "Loft board" {
      device BS EN 60898 C40 6 kA
      feeds  B
      cable  armoured 90 °C line 10 mm² cpc 10 mm²
      route  clipped method C
      length 26 m
      Ib     24 A
      dead 2026-03-04 { R1+R2 0.10 Ω }
      live 2026-03-05 { Zs 0.28 Ω }
    }
  }
  board B "Loft board" {
    fed-from A
    Zdb 0.28 Ω
    Ipf 0.84 kA
    way 1 radial "Sockets" {
      device BS EN 61009 B16 6 kA 30 mA type A
      cable  flat-twin line 2.5 mm² cpc 1.5 mm²
      route  clipped method C
      length 12 m
      serves sockets
      dead 2026-03-04 { R1+R2 0.24 Ω }
      live 2026-03-05 { Zs 0.51 Ω }
    }
  }
}
`;
