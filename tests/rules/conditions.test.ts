/**
 * Checks of whether something is there, or goes together: each with what turns it and with what does not. Clauses are
 * those the checks cite.
 */
import { holdAtLimits, type Limit } from "../helpers/limits.ts";

const way = (lines: string, kind = "radial", id = "1"): string => `way ${id} ${kind} "Circuit" {\n${lines}\n}`;
const breaker = "device BS EN 60898 B16 6 kA";
const rcbo = "device BS EN 61009 B16 6 kA 30 mA type A";
const twin = "cable flat-twin line 2.5 mm² cpc 1.5 mm²";
const home = { premises: "dwelling" } as const;
const three = {
  supply: "earthing TN-S\nphases three\nZe 0.20 Ω",
  board: "fed-from supply\nphases three",
} as const;
const live = "live 2026-03-05 {\nZs 0.62 Ω\n}";

const limits: readonly Limit[] = [
  {
    check: "afdd/test-button-missing",
    setting: { stage: "tested" },
    text: way(`${breaker}\n#`),
    found: {
      [`afdd BS EN 62606\n${live}`]: "error",
      [`afdd BS EN 62606\n${live.replace("\n}", "\nafdd-button ok\n}")}`]: "",
      [live]: "",
      "afdd BS EN 62606": "",
    },
  },
  {
    check: "containment/circuit-divided",
    text: way(`cable singles line 2.5 mm² cpc 1.5 mm²\nroute conduit 25 mm\n#`),
    found: {
      "route conduit 20 mm carries line\nroute conduit 16 mm carries neutral": ["error", "run all conductors"],
      "route conduit 20 mm carries line neutral\nroute conduit 16 mm carries cpc": "",
      "route conduit 20 mm carries line\nroute conduit 16 mm carries line": "",
      "route conduit 20 mm carries neutral\nroute conduit 16 mm carries cpc": "",
    },
  },
  // 20 m of 2.5/1.5 mm² to a point: 0.39 Ω. Half as much again is 0.585 Ω, and 0.7 of it 0.273 Ω.
  {
    check: "continuity/point-against-length",
    text: way(`${twin}\n#`),
    found: {
      "run A 20 m S1\ndead 2026-03-04 {\nat S1 L-E 0.58 Ω\n}": "",
      "run A 20 m S1\ndead 2026-03-04 {\nat S1 L-E 0.59 Ω\n}": [
        "warning",
        "S1 reads 0.59 Ω to earth, where the cable to it gives 0.39 Ω. Look for a poor joint",
      ],
      "run A 20 m S1\ndead 2026-03-04 {\nat S1 L-E 0.28 Ω\n}": "",
      "run A 20 m S1\ndead 2026-03-04 {\nat S1 L-E 0.27 Ω\n}": ["warning", "Look for a parallel path"],
      'parallel-path "Pipework"\nrun A 20 m S1\ndead 2026-03-04 {\nat S1 L-E 0.27 Ω\n}': "",
      'parallel-path "Pipework"\nrun A 20 m S1\ndead 2026-03-04 {\nat S1 L-E 0.59 Ω\n}': "warning",
      "run A 20 m S1\ndead 2026-03-04 {\nat S1 L-E >2 Ω\n}": "",
      // The protective conductor alone: 20 m of 12.1 mΩ/m are 0.24 Ω.
      "run A 20 m S1\ndead 2026-03-04 {\nat S1 R2 0.32 Ω\n}": "",
      "run A 20 m S1\ndead 2026-03-04 {\nat S1 R2 0.45 Ω\n}": [
        "warning",
        "S1 reads 0.45 Ω for R2, where the cable to it gives 0.24 Ω. Look for a poor joint",
      ],
      "run A 20 m S1\ndead 2026-03-04 {\nat S1 R2 0.09 Ω\n}": ["warning", "Look for a parallel path"],
      'parallel-path "Pipework"\nrun A 20 m S1\ndead 2026-03-04 {\nat S1 R2 0.09 Ω\n}': "",
      "run A 20 m S1\ndead 2026-03-04 {\nat S1 R2 >99.9 Ω\n}": "",
      "run A 20 m S1\ndead 2026-03-04 {\nat S1 R2 0.00 Ω\n}": "",
      "length 20 m\ndead 2026-03-04 {\nat S1 L-E 0.59 Ω\nat S2 L-E 0.59 Ω\n}": "",
    },
  },
  {
    check: "continuity/point-open",
    text: way(`${twin}\nrun A 20 m S1\ndead 2026-03-04 {\nat S1 #\n}`),
    found: {
      "L-N 0.30 Ω L-E >200 Ω": [
        "error",
        "S1 is off scale to earth (>200 Ω): the protective conductor does not reach it",
      ],
      "L-N >200 Ω L-E 0.39 Ω": ["error", "off scale to neutral (>200 Ω): the neutral does not reach it"],
      "L-N >200 Ω L-E >200 Ω": ["error", "the line, or both the others, does not reach it"],
      "L-N 0.30 Ω L-E <0.39 Ω": "",
      "L-E 0.39 Ω": "",
    },
  },
  ...(
    [
      ["dwelling", "TN-S", "single-pole", ["error", "in a home it must. Fit a double-pole switch."]],
      ["dwelling", "TN-S", "double-pole", ""],
      ["student", "TN-S", "single-pole", ["error", "in a home it must."]],
      // 462.1.201: a household or similar installation; of a shop nobody knows who switches.
      ["commercial", "TN-S", "single-pole", ["warning", "it must wherever untrained persons operate it."]],
      ["commercial", "TN-S", "double-pole", ""],
      ["commercial", "TT", "single-pole", ["error", "with TT it must. Fit a double-pole switch."]],
      ["commercial", "TT", "four-pole", ""],
    ] as const
  ).map(
    ([premises, earthing, poles, found]): Limit => ({
      check: "coordination/main-switch-poles",
      setting: {
        premises,
        supply: `earthing ${earthing}`,
        board: `fed-from supply\nmain-switch BS EN 60947-3 100 A ${poles}`,
      },
      text: way("#"),
      found: { [breaker]: found },
    }),
  ),
  ...(
    [
      ["dwelling", "three-pole", ""],
      ["commercial", "three-pole", ""],
      ["commercial", "four-pole", ""],
      ["commercial", "double-pole", ["error", "has too few poles for three lines: one stays live."]],
      ["industrial", "single-pole", ["error", "Fit a four-pole switch."]],
    ] as const
  ).map(
    ([premises, poles, found]): Limit => ({
      check: "coordination/main-switch-poles",
      setting: { ...three, premises, board: `${three.board}\nmain-switch BS EN 60947-3 100 A ${poles}` },
      text: way("#"),
      found: { [breaker]: found },
    }),
  ),
  {
    check: "coordination/main-switch-poles",
    setting: {
      supply: "earthing TT\nphases three",
      board: `${three.board}\nmain-switch BS EN 60947-3 100 A three-pole`,
    },
    text: way("#"),
    found: { [breaker]: ["error", "Fit a four-pole switch"] },
  },
  {
    check: "coordination/source-poles",
    text: way("device BS EN 61009 B16 6 kA 30 mA type A #"),
    found: {
      "single-pole\nserves pv": ["warning", "A single-pole RCBO leaves the neutral of the source connected"],
      "double-pole\nserves pv": "",
      "single-pole\nserves storage": "warning",
      "single-pole\nserves sockets": "",
    },
  },
  {
    check: "coordination/source-poles",
    text: way("device BS EN 60898 B16 6 kA #"),
    found: { "single-pole\nserves pv": "" },
  },
  {
    check: "design/alarms-share-circuit",
    text: way(`${breaker}\nserves #`),
    found: {
      "alarms sockets": ["error", "this one serves sockets as well"],
      "alarms lighting": "error",
      "alarms emergency-lighting": "",
      "alarms control data": "",
      alarms: "",
      "sockets lighting": "",
    },
  },
  {
    check: "design/alarms-share-circuit",
    setting: home,
    text: way(`${breaker}\nserves #`),
    found: { "alarms lighting": ["information", "as they may in a home"], "alarms lighting sockets": "error" },
  },
  {
    check: "design/cable-not-for-ground",
    text: way("#"),
    found: {
      "cable flat-twin line 2.5 mm² cpc 1.5 mm²\nroute buried": ["error", "lies direct in the ground"],
      "cable armoured 70 °C line 2.5 mm² cpc-by armour cores 3\nroute buried": "",
      "cable flat-twin line 2.5 mm² cpc 1.5 mm²\nroute duct": "",
      "cable flat-twin line 2.5 mm² cpc 1.5 mm²\nroute clipped\nroute buried": "error",
      "serves selv\ncable flat-twin line 2.5 mm² cpc 1.5 mm²\nroute buried": "",
      "serves selv lighting\ncable flat-twin line 2.5 mm² cpc 1.5 mm²\nroute buried": "error",
    },
  },
  // BS EN 60228.
  {
    check: "design/cable-size-unusual",
    text: way("cable #"),
    found: {
      "flat-twin line 2.5 mm² cpc 1.5 mm²": "",
      "flat-twin line 3 mm² cpc 1.5 mm²": ["warning", "3 mm² is not a standard conductor size: the next is 4 mm²."],
      "flat-twin line 2.5 mm² cpc 1.7 mm²": ["warning", "the next is 2.5 mm²"],
      "singles line 16 mm² neutral 11 mm² cpc 16 mm²": "warning",
      "singles line 500 mm² cpc 240 mm²": ["warning", "500 mm² is not a standard conductor size."],
    },
  },
  {
    check: "design/charger-shares-circuit",
    text: way(`${rcbo}\nserves #`),
    found: {
      "ev-charger": "",
      "ev-charger sockets": ["error", "this one serves sockets as well"],
      "ev-charger control": "",
      "sockets lighting": "",
    },
  },
  {
    check: "design/class-two-with-sockets",
    text: way(`${breaker}\n#`),
    found: {
      'serves sockets\nclass-II "Lights only"': "error",
      'serves lighting\nclass-II "Lights only"': "",
      "serves sockets": "",
    },
  },
  {
    check: "design/current-not-stated",
    text: way("#"),
    found: {
      [`${breaker}\nserves shower`]: ["warning", "The load of way 1 is not stated"],
      [`${breaker}\nserves shower\nIb 30 A`]: "",
      [`${breaker}\nserves shower\nload 8.5 kW`]: "",
      [`${breaker}\nserves sockets`]: "",
      [`${breaker}\nserves sockets heating`]: "warning",
      "serves shower": "",
    },
  },
  {
    check: "design/current-not-stated",
    setting: { stage: "tested" },
    text: way("#"),
    found: { [`${breaker}\nserves shower`]: "" },
  },
  {
    check: "design/device-rating-missing",
    text: way("device BS EN 60898 #"),
    found: { "6 kA": "warning", "B16 6 kA": "" },
  },
  {
    check: "design/device-rating-unusual",
    text: way("device #"),
    found: {
      "BS EN 60898 B16 6 kA": "",
      "BS EN 60898 B17 6 kA": ["warning", "17 A is not a standard rating for a BS EN 60898 device"],
      "BS EN 60898 B45 6 kA": "",
      "BS 88-3 30 A": "warning",
      "BS 88-3 32 A": "",
      "BS EN 60947-2 57 A 36 kA": "",
    },
  },
  ...(
    [
      ["plastic", "dwelling", "BS 7671:2018+A2:2022", "error"],
      ["plastic", "commercial", "BS 7671:2018+A2:2022", ""],
      ["steel", "dwelling", "BS 7671:2018+A2:2022", ""],
      ["plastic", "dwelling", "BS 7671:2008", ""],
    ] as const
  ).map(
    ([made, premises, standard, found]): Limit => ({
      check: "design/enclosure-combustible",
      setting: { premises, standard, board: `fed-from supply\nenclosure ${made}` },
      text: way("#"),
      found: { [breaker]: found },
    }),
  ),
  // 552.1.2: above 370 W.
  {
    check: "design/motor-overload-missing",
    text: way(`device BS EN 60898 D16 6 kA\nserves #`),
    found: {
      "motor\nload 370 W": "",
      "motor\nload 371 W": ["warning", "needs overload protection"],
      "motor\nload 371 W\noverload 2 A": "",
      "motor\nload 371 W\nstarting drive": "",
      "motor\nload 371 W\nstarting direct": "warning",
      "motor\nload 3 A": "",
      "motor lighting\nload 3 kW": "",
      "heating\nload 3 kW": "",
    },
  },
  // IEC 60034-1: the power of a motor is what it delivers. Of 370 W and more it is asked what it draws.
  {
    check: "design/motor-input-not-stated",
    text: way(`device BS EN 60898 D16 6 kA\nserves #`),
    found: {
      "motor\nload 369 W": "",
      "motor\nload 370 W": [
        "warning",
        "state its efficiency (100 % if this is what it draws) and power-factor from its",
      ],
      "motor\nload 2 kW efficiency 85 %": ["warning", "state power-factor from its plate"],
      "motor\nload 2 kW efficiency 85 %\npower-factor 80 %": "",
      "motor\nload 2 kW\npower-factor 80 %": ["warning", "state its efficiency"],
      // A drive takes its current nearly in phase.
      "motor\nload 2 kW\nstarting drive": ["warning", "state its efficiency (100 % if this is what it draws) from"],
      "motor\nload 2 kW efficiency 85 %\nstarting drive": "",
      "motor\nload 2 kW efficiency 85 %\nstarting direct": "warning",
      "motor\nload 2 kW\nIb 10 A": "",
      "motor\nload 9 A": "",
      "motor lighting\nload 2 kW": "",
      "heating\nload 2 kW": "",
    },
  },
  // 643.7.3.201: prospective fault current at a board that another feeds, stated or tested; the origin's is not its own.
  ...(
    [
      ["Ze 0.30 Ω\nIpf 1.2 kA", "fed-from Z", "error"],
      ["Ze 0.30 Ω", "fed-from Z\nIpf 1.2 kA", ""],
      ["Ze 0.30 Ω", "fed-from Z\nlive 2026-03-05 {\nIpf 1.2 kA\n}", ""],
      ["Ze 0.30 Ω", "fed-from Z\nlive 2026-03-05 {\nZdb 0.31 Ω\n}", "error"],
      ["Ze 0.30 Ω", "fed-from supply", ""],
    ] as const
  ).map(
    ([supply, board, found]): Limit => ({
      check: "fault/current-missing",
      setting: { stage: "tested", supply: `earthing TN-S\n${supply}`, board },
      text: way("#"),
      found: { [breaker]: found },
    }),
  ),
  {
    check: "design/neutral-shared",
    text: way("#"),
    found: { [`${breaker}\nshared-neutral "Way 2"`]: ["error", "The neutral of way 1 is shared"], [breaker]: "" },
  },
  {
    check: "design/rcbo-without-sensitivity",
    text: way("device #"),
    found: {
      "BS EN 61009 B16 6 kA": "warning",
      "BS EN 61009 B16 6 kA 30 mA type A": "",
      "BS EN 60898 B16 6 kA": "",
    },
  },
  {
    check: "design/single-core-in-steel",
    text: way("cable #"),
    found: {
      "armoured 90 °C line 50 mm² cpc-by armour cores 1": "error",
      "armoured 90 °C line 50 mm² cpc-by armour cores 2": "",
      "armoured 90 °C line 50 mm² cpc 50 mm²": "",
      "singles line 50 mm² cpc 50 mm² cores 1": "",
    },
  },
  {
    check: "design/singles-outside-containment",
    text: way("cable #"),
    found: {
      "singles line 4 mm² cpc 4 mm²\nroute clipped": "error",
      "singles line 4 mm² cpc 4 mm²\nroute conduit": "",
      "singles line 4 mm² cpc 4 mm²\nroute trunking": "",
      "singles line 4 mm² cpc 4 mm²\nroute method C": "",
      "singles line 4 mm² cpc 4 mm²\nroute conduit\nroute tray": "error",
      "singles line 4 mm² cpc 4 mm²\nroute clipped carries cpc": "",
      "singles line 4 mm² cpc 4 mm²\nroute clipped carries line cpc": "error",
      [`${twin.slice(6)}\nroute clipped`]: "",
    },
  },
  {
    check: "design/source-with-loads",
    text: way(`${rcbo}\nserves #`),
    found: {
      pv: "",
      "pv storage": "",
      "pv control": "",
      "pv sockets": ["error", "A source feeds this circuit beside sockets"],
      "storage lighting": "error",
      "sockets lighting": "",
    },
  },
  {
    check: "design/three-phase-on-single-phase",
    text: way(`${breaker}\n#`),
    found: { "phase three": ["error", "Way 1 has three lines"], "": "" },
  },
  {
    check: "design/three-phase-on-single-phase",
    setting: three,
    text: way(`${breaker}\n#`),
    found: { "phase three": "" },
  },
  {
    check: "record/no-length",
    text: "#",
    found: {
      [way(breaker)]: ["warning", "The cable length of way 1 is not stated"],
      [way(`${breaker}\nlength 20 m`)]: "",
      [way(`${breaker}\nrun A 20 m S1`)]: "",
      "way 1 spare": "",
      [way("")]: "",
    },
  },
  {
    check: "record/no-length",
    setting: { work: "existing" },
    text: "#",
    found: { [way(breaker)]: "" },
  },
  {
    check: "record/no-device",
    text: "#",
    found: {
      [way("length 20 m")]: ["warning", "The device of way 1 is not described"],
      [way("")]: "warning",
      [way(breaker)]: "",
      "way 1 spare": "",
    },
  },
  {
    check: "place/medical-not-checked",
    text: way(`${rcbo}\nserves sockets\n#`),
    found: { "place medical": "information", "place agricultural": "", "": "" },
  },
  // 701.55 and 702.410.3.4.1: 12 V in zone 0.
  {
    check: "place/zone-not-selv",
    text: way(`${rcbo}\n#`),
    found: {
      "serves lighting\nplace bathroom zone 0": ["error", "is for SELV of 12 V at most; this circuit is at 230 V"],
      "serves lighting\nplace bathroom zone 1": "",
      "serves lighting\nplace pool zone 1": ["error", "Zone 1 of a pool"],
      "serves lighting\nplace pool zone 2": "",
      "serves selv\nplace bathroom zone 0": "",
      "place bathroom zone 0": "",
    },
  },
  {
    check: "place/ip-code-not-stated",
    text: way(`${rcbo}\n#`),
    found: {
      "serves lighting\nplace bathroom zone 1": ["information", "Equipment in zone 1 must be IPX4 or better"],
      "serves lighting\nplace bathroom zone 1\ningress IP44": "",
      "serves lighting\nplace bathroom zone outside": "",
      "serves shaver\nplace bathroom zone 2": "",
      "place bathroom zone 1": "",
      "serves lighting\nplace outdoors": "",
    },
  },
  {
    check: "place/ip-code-not-stated",
    setting: { work: "existing" },
    text: way(`${rcbo}\n#`),
    found: { "serves lighting\nplace bathroom zone 1": "" },
  },
  ...(
    [
      ["bonding water 10 mm²", "warning"],
      ["bonding water 10 mm² continuity 0.03 Ω", ""],
      ["bonding water 10 mm²\nbonding gas 10 mm² continuity 0.03 Ω", "warning"],
      ["bonding water 10 mm²\nbonding water 10 mm² continuity 0.03 Ω", ""],
    ] as const
  ).map(
    ([lines, found]): Limit => ({
      check: "protective/bonding-not-tested",
      setting: { stage: "tested", supply: `earthing TN-S\n${lines}` },
      text: way("#"),
      found: { [breaker]: found },
    }),
  ),
  ...(
    [
      ["tested", "new", "bonding water", "warning"],
      ["tested", "new", "bonding water 10 mm²", ""],
      ["design", "new", "bonding water", ""],
      ["tested", "new", 'bonding water missing "No clamp at the meter"', ""],
    ] as const
  ).map(
    ([stage, work, lines, found]): Limit => ({
      check: "protective/bonding-size-missing",
      setting: { stage, work, supply: `earthing TN-S\n${lines}` },
      text: way("#"),
      found: { [breaker]: found },
    }),
  ),
  ...(["existing", "new"] as const).map(
    (work): Limit => ({
      check: "protective/bonding-not-tested",
      setting: { stage: "tested", work, supply: "earthing TN-S\nbonding gas 10 mm²" },
      text: way("#"),
      found: { [breaker]: work === "new" ? ["warning", "The continuity of the gas bonding is not recorded"] : "" },
    }),
  ),
];

holdAtLimits(limits);
