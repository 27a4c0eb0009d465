/**
 * Designs at their limits: what a board draws by the diversity of the On-Site Guide, what cables carry by Appendix 4 of BS
 * 7671 (4D1A, clipped and in conduit), how large a device may be. Limits of a standard are named; the others are common
 * practice of `tables/practice.ts`.
 */
import { holdAtLimits, type Limit } from "../helpers/limits.ts";

const installation = (lines: string): string =>
  `wayfile 1\ninstallation "Sample" {\nstandard BS 7671:2018+A2:2022\npremises dwelling\n${lines}\n}\n`;
/** A shower of 10.5 kW, 45.7 A, and a charging point of 32 A: both in full, 77.7 A. */
const heavy = (before: string, way = ""): string =>
  installation(`board A "Main" {
fed-from supply
${before}
way 1 radial "Shower" {
${way}
serves shower
load 10.5 kW
}
way 2 radial "Charging point" {
${way}
serves ev-charger
Ib 32 A
}
}`);
/** A board behind a feeder of another. */
const annexe = (feeder: string, ways: string): string =>
  installation(`board A "Main" {
fed-from supply
way 1 feeder "Annexe" {
${feeder}
feeds B
}
}
board B "Annexe" {
fed-from A
${ways}
}`);
const shower = (load: string): string => `way 1 radial "Shower" {\nserves shower\nload ${load}\n}`;
const lights = 'way 2 radial "Lighting" {\nserves lighting\nIb 4 A\n}';
const kiln = (device: string): string => `way 1 radial "Kiln" {\ndevice ${device}\n}`;
/** Loads of L1, L2 and L3 in amperes, circuit by circuit. */
const threeLines = (...lines: readonly (readonly [line: string, ...loads: readonly string[]])[]): string => {
  const ways = lines.flatMap(([line, ...loads]) => loads.map((load) => `phase ${line}\nIb ${load} A`));
  return `wayfile 1
installation "Sample" {
standard BS 7671:2018+A2:2022
premises commercial
supply {
phases three
}
board A "Main" {
fed-from supply
${ways.map((lines, at) => `way ${at + 1} radial "Bench ${at + 1}" {\n${lines}\n}`).join("\n")}
}
}
`;
};
const tails = (supply: string): string =>
  installation(`supply {\nearthing TN-S\n${supply}\n}\nboard A "Board" {\nfed-from supply\n}`);
const way = (lines: string, kind = "radial"): string => `way 1 ${kind} "Circuit" {\n${lines}\n}`;

const motor = (device: string, lines: string): string =>
  `way 1 radial "Saw" {\ndevice BS EN 60898 ${device} 6 kA\n${lines}\nIb 18 A\n}`;

const limits: readonly Limit[] = [
  // The best a cable may be laid, of BS 7671:2018+A2:2022: 4 mm² of singles 37 A (4D1A, C), 16 mm² of 90 °C armoured 115 A
  // (4E4A, E), 10 mm² of aluminium by method B the root of 1.83 over 3.08 of the 57 A of copper (4D1A; BS EN 60228); flat twin 2.5 mm² no more than armoured brought
  // to 70 °C, 33.3 A, and behind a rewirable fuse 0.725 of it (433.1.202).
  {
    check: "design/over-any-capacity",
    text: `way 1 radial "Kiln" {\n#\n}`,
    found: {
      "device BS EN 60898 B32 6 kA\ncable singles line 4 mm² cpc 2.5 mm²": "",
      "device BS EN 60898 B40 6 kA\ncable singles line 4 mm² cpc 2.5 mm²": ["error", "rated above 37 A: 4 mm²"],
      "device BS 88-2 63 A\ncable singles line 4 mm² cpc 2.5 mm² parallel 2": "",
      "device BS 88-2 80 A\ncable singles line 4 mm² cpc 2.5 mm² parallel 2": ["error", "rated above 74 A"],
      "device BS 88-2 100 A\ncable armoured 90 °C line 16 mm² cpc 16 mm² cores 3": "",
      "device BS 88-2 125 A\ncable armoured 90 °C line 16 mm² cpc 16 mm² cores 3": ["error", "rated above 115 A"],
      "device BS EN 60898 B40 6 kA\ncable multicore aluminium line 10 mm² cpc 10 mm²\nroute conduit method B": "",
      // That the tables of aluminium keep this ratio is from memory: near it nothing is proved, and what grows is no less.
      "device BS 88-2 45 A\ncable multicore aluminium line 10 mm² cpc 10 mm²\nroute conduit method B": [
        "warning",
        "rated above 44 A",
      ],
      "device BS EN 60898 B50 6 kA\ncable multicore aluminium line 10 mm² cpc 10 mm²\nroute conduit method B": [
        "error",
        "rated above 44 A: 10 mm² aluminium",
      ],
      "device BS EN 60898 B63 6 kA\ncable multicore aluminium line 10 mm² cpc 10 mm²\nroute conduit method B": [
        "error",
        "rated above 44 A: 10 mm² aluminium",
      ],
      "device BS EN 60898 B32 6 kA\ncable flat-twin line 2.5 mm² cpc 1.5 mm²": "",
      "device BS EN 60898 B40 6 kA\ncable flat-twin line 2.5 mm² cpc 1.5 mm²": ["error", "rated above 33 A: 2.5 mm²"],
      "device BS 3036 20 A\ncable flat-twin line 2.5 mm² cpc 1.5 mm²": "",
      "device BS 3036 30 A\ncable flat-twin line 2.5 mm² cpc 1.5 mm²": ["error", "rated above 24 A: 2.5 mm²"],
      // A size below the first of its table (armoured 1.5 mm² by method D, 25 A; flat twin 1 mm², 20.2 A of 90 °C brought to
      // 70 °C) carries no more than that.
      "device BS EN 60898 B25 6 kA\ncable armoured 90 °C line 1 mm² cpc 1 mm² cores 3\nroute buried method D": "",
      "device BS EN 60898 B32 6 kA\ncable armoured 90 °C line 1 mm² cpc 1 mm² cores 3\nroute buried method D": [
        "error",
        "rated above 25 A: 1 mm²",
      ],
      "device BS EN 60898 B10 6 kA\ncable singles line 0.75 mm² cpc 0.75 mm²": "",
      "device BS EN 60898 B16 6 kA\ncable singles line 0.75 mm² cpc 0.75 mm²": [
        "error",
        "rated above 15.5 A: 0.75 mm²",
      ],
      // Where its own figure is known, another check speaks; where single cables may lie in free air, none.
      "device BS EN 60898 B40 6 kA\ncable singles line 4 mm² cpc 2.5 mm²\nroute conduit method B": "",
      "device BS 88-2 400 A\ncable singles line 25 mm² cpc 16 mm²": "",
    },
  },
  // BS EN 60898: type D opens at once from 10 to 20 times its rating, 200 to 400 A of D20. What is stated is asked about
  // where it may trip; an estimate (six times Ib direct, 108 A) only where it surely does: type B20 opens by 100 A.
  {
    check: "design/trips-on-start",
    text: motor("D20", "serves motor\nstarting direct # A"),
    found: {
      "200": "",
      "201": ["information", "device may trip (10 to 20 × In)"],
      "400": ["information", "device may trip"],
      "401": [
        "warning",
        "The motor takes 401 A while it starts, and a D20 BS EN 60898 device trips at that (10 to 20 × In)",
      ],
    },
  },
  {
    check: "design/trips-on-start",
    text: motor("#", "serves motor"),
    found: {
      B20: ["warning", "The motor takes about 108 A while it starts"],
      C20: "",
      C10: ["warning", "5 to 10 × In"],
    },
  },
  // A transformer of 3 kVA draws 10 to 15 times its 13 A, 130 to 195 A: type B16 opens by 80 A, C16 by 160 A, C20 by 200 A.
  {
    check: "design/trips-on-start",
    text: motor("#", "serves transformer").replace("Ib 18 A", "Ib 13 A"),
    found: {
      B16: [
        "warning",
        "The transformer draws about 130 A to 195 A as it is switched on, and a B16 BS EN 60898 device trips at that",
      ],
      B25: ["warning", "trips at that (3 to 5 × In)"],
      B32: ["information", "may trip"],
      B40: "",
      C13: ["information", "may trip"],
      C16: ["information", "may trip"],
      C20: "",
      D16: "",
    },
  },
  {
    check: "design/trips-on-start",
    text: motor("B16", "serves #").replace("Ib 18 A", "Ib 13 A"),
    found: { transformer: "warning", "transformer sockets": "", shaver: "" },
  },
  // What else is on the circuit does not start like a motor; a line that is half written is not guessed at.
  {
    check: "design/trips-on-start",
    text: motor("B20", "serves #"),
    found: { "motor lighting": "", appliance: "", motor: "warning" },
  },
  { check: "demand/over-busbar", text: heavy("busbar # A"), found: { "77": "warning", "78": "" } },
  // A cut-out no larger than the busbars keeps the current within their rating.
  {
    check: "demand/over-busbar",
    text: heavy("busbar 63 A").replace("board A", "supply {\nearthing TN-S\ncutout BS 88-3 # A\n}\nboard A"),
    // Charging points and showers are drawn in full: a cut-out that lets it pass burns the busbars.
    found: { "63": "", "80": "error" },
  },
  {
    check: "demand/over-main-switch",
    text: heavy("main-switch BS EN 60947-3 63 A").replace(
      "board A",
      "supply {\nearthing TN-S\ncutout BS 88-3 # A\n}\nboard A",
    ),
    found: { "63": "", "80": "error" },
  },
  // Sockets may come to less.
  {
    check: "demand/over-main-switch",
    text: heavy("main-switch BS EN 60947-3 63 A")
      .replace("board A", "supply {\nearthing TN-S\ncutout BS 88-3 # A\n}\nboard A")
      .replaceAll(/serves (shower|ev-charger)/gu, "serves data"),
    found: { "63": "", "80": "warning" },
  },
  {
    check: "demand/over-rcd",
    text: heavy("rcd east BS EN 61008 # A 30 mA type A", "behind east"),
    found: { "77": "warning", "78": "" },
  },
  // A tenth less may be stated: 77.7 A / 1.1 is 70.6 A.
  {
    check: "demand/stated-too-low",
    text: heavy("").replace("board A", "supply {\ndemand # A\n}\nboard A"),
    found: { "70": ["information", "the circuits come to 77.7 A"], "71": "" },
  },
  // 9.5 kW are 41.3 A, and two thirds of 4 A: 43.9 A, less a tenth 40.0 A. What the device carries opens nothing.
  {
    check: "demand/over-feeder-load",
    text: annexe("#", `${shower("9.5 kW")}\n${lights}`),
    found: {
      "Ib 39 A": "warning",
      "Ib 40 A": "",
      "device BS EN 60898 C40 6 kA\nIb 39 A": "warning",
      "device BS EN 60898 C50 6 kA\nIb 39 A": "information",
    },
  },
  // 9.2 kW at 230 V are 40 A.
  {
    check: "demand/over-device",
    text: annexe("device BS EN 60898 C40 6 kA", shower("#")),
    found: { "9.2 kW": "", "9.25 kW": ["warning", "Fit 45 A with a cable to match."] },
  },
  {
    check: "demand/over-device",
    text: annexe("device BS EN 60898 C40 6 kA\n#", shower("9.5 kW")),
    found: { "": "warning", "Ib 42 A": "" },
  },
  // 20 A and # against 24 A: more than four tenths of the greatest. A circuit that is moved must be less than the difference.
  {
    check: "demand/unbalanced",
    text: threeLines(["L1", "10", "10", "#"], ["L2", "24"], ["L3", "24"]),
    found: {
      "20": "",
      "20.1": ["information", "draws 40.1 A on L1, 24 A on L2, 24 A on L3: move way 1 from L1 to L2."],
    },
  },
  // And 15 A at least.
  {
    check: "demand/unbalanced",
    text: threeLines(["L1", "5", "5", "#"], ["L2", "2"], ["L3", "2"]),
    found: { "6.9": "", "7": "information" },
  },
  {
    check: "demand/unbalanced",
    text: threeLines(["L1", "#", "17"], ["L2", "20"], ["L3", "18"]),
    found: { "17.9": "", "18": "", "19": ["information", "move way 2 from L1 to L3."] },
  },
  // 722.311.201: in full, unless its load is controlled.
  {
    check: "demand/charger-without-load-control",
    text: way("serves ev-charger\n#\nIb 32 A"),
    found: { "diversity 100 %": "", "diversity 99 %": "error", 'diversity 99 %\nload-control "Clamp"': "" },
  },
  // 4D1A, clipped direct: 87 A of 16 mm² and 114 A of 25 mm² with two loaded, 79 A of 16 mm² with three; 65 A of 10 mm².
  {
    check: "coordination/tails-below-cutout",
    text: tails("#"),
    found: {
      "cutout BS 88-3 100 A\ntails 25 mm²": "",
      "cutout BS 88-3 100 A\ntails 16 mm²": [
        "warning",
        "Tails of 16 mm² carry 87 A clipped direct, below the 100 A cut-out: fit tails of 25 mm²",
      ],
      "cutout BS 88-3 80 A\ntails 16 mm²": "",
      "cutout BS 88-3 80 A\ntails 16 mm²\nphases three": "warning",
      // A stated demand beyond them is an overload; within them, one size below the cut-out is accepted.
      "cutout BS 88-3 100 A\ntails 16 mm²\ndemand 88 A": [
        "error",
        "below the 100 A cut-out; the stated demand is 88 A: fit tails of 25 mm².",
      ],
      // Larger ones are for both, the cut-out and what is drawn: 120 A need 35 mm², 141 A.
      "cutout BS 88-3 80 A\ntails 10 mm²\ndemand 120 A": ["error", "fit tails of 35 mm²."],
      "cutout BS 88-3 100 A\ntails 10 mm²\ndemand 70 A": ["error", "fit tails of 25 mm²."],
      // Nor does it need a cut-out to overload them.
      "tails 16 mm²\ndemand 88 A": ["error", "carry 87 A clipped direct; the stated demand is 88 A"],
      "tails 16 mm²\ndemand 87 A": "",
      "cutout BS 88-3 100 A\ntails 16 mm²\ndemand 87 A": ["information", "(enough for the present demand)"],
      "cutout BS 88-3 100 A\ntails 10 mm²\ndemand 60 A": ["warning", "(enough for the present demand)"],
      "cutout BS 88-3 80 A\ntails 10 mm²\ndemand 60 A": "information",
      "cutout BS 88-3 80 A\ntails 10 mm²\ndemand 66 A": "error",
      // A size that no table has carries no more than the next it has: 4 mm² 37 A, 1 mm² 15.5 A.
      "cutout BS 88-3 45 A\ntails 3 mm²": ["warning", "Tails of 3 mm² carry no more than 37 A clipped direct"],
      "cutout BS 88-3 32 A\ntails 3 mm²": "",
      "cutout BS 88-3 20 A\ntails 0.75 mm²": ["warning", "carry no more than 15.5 A"],
    },
  },
  // What is calculated bears them too, but not where a second board may draw anything.
  {
    check: "coordination/tails-below-cutout",
    text: tails("cutout BS 88-3 100 A\ntails 16 mm²").replace("fed-from supply", "fed-from supply\n#"),
    found: {
      'way 1 radial "Heater" {\nIb 20 A\n}': ["information", "(enough for the present demand)"],
      'way 1 radial "Heater" {\nIb 20 A\n}\nway 2 radial "Kiln" {\nserves heating\n}': "warning",
      'way 1 radial "Heater" {\nIb 20 A\n}\n}\nboard B "Barn" {\nfed-from supply\nway 1 radial "Kiln" {\nserves heating\n}':
        "warning",
    },
  },
  // What is drawn with the most favourable diversity overloads them, whatever is stated: two charging points at 87 A, in
  // full without load control; of lighting two thirds; of sockets nothing, for nobody knows what is plugged in.
  {
    check: "coordination/tails-below-cutout",
    text: tails("cutout BS 88-3 100 A\ntails 16 mm²\ndemand 60 A").replace("fed-from supply", "fed-from supply\n#"),
    found: {
      'way 1 radial "Charger" {\nserves ev-charger\nIb 44 A\n}\nway 2 radial "Charger" {\nserves ev-charger\nIb 44 A\n}':
        ["error", "below the 100 A cut-out; the circuits draw at least 88 A: fit tails of 25 mm²."],
      'way 1 radial "Charger" {\nserves ev-charger\nIb 44 A\n}\nway 2 radial "Charger" {\nserves ev-charger\nIb 43 A\n}':
        "information",
      'way 1 radial "Charger" {\nserves ev-charger\nIb 44 A\n}\nway 2 radial "Charger" {\nserves ev-charger\nload-control "Limiter"\nIb 44 A\n}':
        "information",
      'way 1 radial "Lights" {\nserves lighting\nIb 130 A\n}': "error",
      'way 1 radial "Sockets" {\nserves sockets\nIb 60 A\n}\nway 2 radial "Sockets" {\nserves sockets\nIb 60 A\n}':
        "information",
      'diversity 50 %\nway 1 radial "Lights" {\nserves lighting\nIb 174 A\n}': "information",
      'diversity 50 %\nway 1 radial "Lights" {\nserves lighting\nIb 176 A\n}': "error",
    },
  },
  // Distributors declare 16 kA at the most for one phase and 25 kA for three, behind a service fuse of up to 100 A.
  {
    check: "fault/above-declared",
    text: tails("#"),
    found: {
      "Ipf 16 kA": "",
      "Ipf 16.1 kA": ["warning", "above 16 kA, the most distributors declare for one phase"],
      "PSCC 24.6 kA": "warning",
      "U0 55 V\nIpf 24.6 kA": "",
      "source private\nIpf 24.6 kA": "",
      "phases three\nIpf 30 kA": "",
      "phases three\ncutout BS 88-2 200 A\nIpf 30 kA": "",
      "phases three\ncutout BS 88-3 100 A\nIpf 25 kA": "",
      "phases three\ncutout BS 88-3 100 A\nIpf 25.1 kA": [
        "warning",
        "above 25 kA, the most distributors declare for three",
      ],
    },
  },
  {
    check: "coordination/feeder-below-circuit",
    text: annexe("device BS EN 60898 #", kiln("BS EN 60898 B40 6 kA")),
    found: { "C32 6 kA": "warning", "C40 6 kA": "", "C50 6 kA": "" },
  },
  // BS EN 60898: type C opens at 10 × In at the latest, and may from 5 × In; type D from 10 × In. Of one rating either may open.
  {
    check: "coordination/no-selectivity",
    text: annexe("device BS EN 60898 #", kiln("BS EN 60898 C32 6 kA")),
    found: {
      "C63 6 kA": ["information", "315 A, at least 320 A required"],
      "D40 6 kA": "",
      "D32 6 kA": "information",
      "C50 6 kA": "information",
    },
  },
  // Fuses of one kind: 1.6 times.
  {
    check: "coordination/no-selectivity",
    text: annexe("device BS 88-2 # 80 kA gG", kiln("BS 88-2 20 A 80 kA gG")),
    found: { "32 A": "", "25 A": "information" },
  },
  // 551.7.2: the supply's 100 A and 16 A of the panels.
  {
    check: "coordination/busbar-below-sources",
    text: installation(`supply {
earthing TN-S
cutout BS 88-3 100 A
}
board A "Hall" {
fed-from supply
#
way 1 radial "Panels" {
device BS EN 61009 B16 6 kA 30 mA type A bidirectional
serves pv
}
}`),
    found: {
      "busbar 115 A": "error",
      "busbar 116 A": "",
      "main-switch BS EN 60947-3 115 A": ["warning", "whose rating is not stated"],
      "main-switch BS EN 60947-3 116 A": "",
    },
  },
  {
    check: "design/setting-above-rating",
    text: `way 1 feeder "Annexe" {\n#\n}`,
    found: {
      "device BS EN 60947-2 100 A 36 kA\nsettings instantaneous 1 kA": "",
      "device BS EN 60947-2 36 kA\nsettings thermal 125 A": "",
      "device BS EN 60947-2 100 A 36 kA": "",
      "settings thermal 125 A": "",
    },
  },
  {
    check: "design/setting-above-rating",
    text: way("device BS EN 60947-2 100 A 36 kA\nsettings thermal # A instantaneous 1 kA", "feeder"),
    found: { "100": "", "101": "error" },
  },
  {
    check: "design/relay-below-load",
    text: way("device BS EN 60898 D20 10 kA\nserves motor\noverload # A\nIb 14 A"),
    // It holds a motor that draws 5 % more than it is set to.
    found: { "13.3": "warning", "13.4": "" },
  },
  // A quarter above the plate; what a motor draws is not known of its shaft alone.
  {
    check: "design/relay-above-load",
    text: way("device BS EN 60898 D20 10 kA\nserves motor\noverload # A\nIb 14 A"),
    found: { "17.5": "", "17.6": ["warning", "The relay is set to 17.6 A, and the motor draws 14 A"] },
  },
  {
    check: "design/relay-above-load",
    text: way("device BS EN 60898 D20 10 kA\nserves motor\noverload 25 A\n#"),
    found: {
      "load 3 kW": "",
      "load 3 kW efficiency 84 %": "",
      "load 3 kW efficiency 84 %\npower-factor 80 %": "warning",
      "Ib 12 A\nload 1.5 kW\nload 1.1 kW": "",
    },
  },
  // 433.1.204: a fuse of 13 A, a device of 30 A or 32 A, 2.5 mm², of mineral cable 1.5 mm².
  {
    check: "design/fused-spur-rating",
    text: way("run A 7 m S1 9 m S2 8 m A\nfused S2 # A", "ring"),
    found: { "13": "", "14": "error" },
  },
  {
    check: "design/ring-device",
    text: way("device #", "ring"),
    found: { "BS EN 60898 B32 6 kA": "", "BS EN 60898 B40 6 kA": "error", "BS 3036 30 A": "", "BS 3036 45 A": "error" },
  },
  {
    check: "design/ring-cable-size",
    text: way("cable #", "ring"),
    found: {
      "singles line 2.5 mm² cpc 1.5 mm²": "",
      "singles line 1.5 mm² cpc 1.5 mm²": "error",
      "singles line 4 mm² neutral 1.5 mm² cpc 1.5 mm²": ["error", "this one has 1.5 mm²"],
      "mineral line 1.5 mm² cpc-by sheath": "",
      "mineral line 1 mm² cpc-by sheath": "error",
    },
  },
  // On-Site Guide, Table H2.1: 100 m² of a ring, 75 m² of a 32 A radial, 50 m² of a 20 A one.
  {
    check: "design/floor-area-exceeded",
    text: "#",
    found: {
      [way("floor-area 100 m²", "ring")]: "",
      [way("floor-area 101 m²", "ring")]: "warning",
    },
  },
  ...(
    [
      ["B32", "75", "76"],
      ["B20", "50", "51"],
    ] as const
  ).map(
    ([device, most, more]): Limit => ({
      check: "design/floor-area-exceeded",
      text: way(`device BS EN 60898 ${device} 6 kA\nserves sockets\nfloor-area # m²`),
      found: { [most]: "", [more]: "warning" },
    }),
  ),
  {
    check: "design/floor-area-exceeded",
    text: way("device BS 3036 30 A\nserves sockets\nfloor-area # m²"),
    found: { "75": "", "76": "warning" },
  },
  // The same table: 4 mm² for a radial of sockets at 30 A or 32 A, of thermoplastic copper.
  {
    check: "design/socket-radial-cable",
    text: "#",
    found: {
      [way("device BS EN 60898 B32 6 kA\nserves sockets\ncable flat-twin line 2.5 mm² cpc 1.5 mm²")]: [
        "error",
        "2.5 mm² with 32 A is allowed only for a ring; this is a radial: fit a 20 A device, or 4 mm².",
      ],
      [way("device BS 3036 30 A\nserves sockets\ncable flat-twin line 2.5 mm² cpc 1.5 mm²")]: "error",
      [way("device BS EN 60898 B32 6 kA\nserves sockets\ncable flat-twin line 4 mm² cpc 1.5 mm²")]: "",
      [way("device BS EN 60898 B25 6 kA\nserves sockets\ncable flat-twin line 2.5 mm² cpc 1.5 mm²")]: "",
      [way("device BS EN 60898 B32 6 kA\nserves sockets\ncable flat-twin line 2.5 mm² cpc 1.5 mm²", "ring")]: "",
      [way("device BS EN 60898 B32 6 kA\nserves sockets\ncable singles 90 °C line 2.5 mm² cpc 1.5 mm²")]: "",
      [way("device BS EN 60898 B32 6 kA\nserves cooker\ncable flat-twin line 2.5 mm² cpc 1.5 mm²")]: "",
    },
  },
  {
    check: "design/floor-area-exceeded",
    text: way("device BS EN 60898 #\nfloor-area 200 m²"),
    found: { "B40 6 kA\nserves sockets": "", "B32 6 kA\nserves cooker": "" },
  },
  // BS EN 60061 lampholders: 16 A at most.
  {
    check: "design/lampholder-device",
    text: way("device BS EN 60898 #"),
    found: {
      "B16 6 kA\nserves lighting": "",
      "B20 6 kA\nserves lighting": "warning",
      "B20 6 kA\nserves lighting sockets": "",
      "B20 6 kA\nserves lighting\ndrivers 4": "",
    },
  },
  // 2 kW for long periods: 8.7 A at 230 V are 2001 W.
  {
    check: "design/ring-heavy-load",
    text: way("#", "ring"),
    found: {
      "load 2 kW": "",
      "load 2.01 kW": "information",
      "load 8.6 A": "",
      "load 8.7 A": "information",
      "serves cooker": "warning",
      "serves sockets": "",
    },
  },
  // Twice the next rating above the load: 13 A asks for 13 A and 13.1 A for 16 A; below 6 A nothing is asked.
  {
    check: "design/device-oversized",
    text: way("device BS EN 60898 #"),
    found: {
      "B25 6 kA\nserves water-heater\nIb 13 A": "",
      "B32 6 kA\nserves water-heater\nIb 13 A": ["information", ": 13 A would protect its flex as well"],
      "B32 6 kA\nserves water-heater\nIb 16 A": "",
      "B32 6 kA\nserves water-heater\nIb 6 A": "information",
      "B32 6 kA\nserves water-heater\nIb 5.9 A": "",
      "B32 6 kA\nserves water-heater\nIb 13.1 A": "",
      "B40 6 kA\nserves water-heater\nIb 13 A\npoints 2": "",
      "B40 6 kA\nserves sockets\nIb 13 A": "",
    },
  },
  // 4D1A, in conduit: 32 A of 4 mm² with two loaded, 24 A of 2.5 mm², 21 A with three. The relay is to protect the cable.
  {
    check: "design/load-over-cable",
    text: way(
      "device BS EN 60898 D50 10 kA\ncable singles line 4 mm² cpc 4 mm²\nroute conduit method B\nserves motor\n#",
    ),
    found: {
      "overload 30 A\nIb 32 A": "",
      "overload 30 A\nIb 32.1 A": ["error", "exceeds the 32 A this cable can carry. Fit 6 mm²."],
      "overload 33 A\nIb 33 A": "",
    },
  },
  // A relay watches the motor alone: with sockets on the circuit it protects nothing.
  {
    check: "design/device-over-capacity",
    text: way(
      "device BS EN 60898 D50 10 kA\ncable singles line 4 mm² cpc 4 mm²\nroute conduit method B\noverload 30 A\nserves #",
    ),
    found: { motor: "", "motor ventilation": "", "motor sockets": "error" },
  },
  {
    check: "design/neutral-below-device",
    text: way("device BS EN 60898 #\ncable singles line 6 mm² neutral 2.5 mm² cpc 2.5 mm²\nroute conduit method B"),
    found: { "B20 6 kA": "", "B25 6 kA": "error" },
  },
  {
    check: "design/neutral-below-device",
    setting: { supply: "earthing TN-S\nphases three", board: "fed-from supply\nphases three" },
    text: way(
      "device BS EN 60898 #\nphase three\ncable singles line 6 mm² neutral 2.5 mm² cpc 2.5 mm²\nroute conduit method B",
    ),
    found: { "C20 three-pole 6 kA": "", "C25 three-pole 6 kA": ["warning", "state why the lines balance"] },
  },
  // Table 52.1: 1.5 mm² of copper for power, 1 mm² for lighting.
  {
    check: "design/conductor-below-minimum",
    text: way("cable singles line #"),
    found: {
      "1 mm² cpc 1 mm²\nserves sockets": "error",
      "1.5 mm² cpc 1.5 mm²\nserves sockets": "",
      "0.75 mm² cpc 1 mm²\nserves lighting": "error",
      "1 mm² cpc 1 mm²\nserves lighting": "",
      "1 mm² cpc 1 mm²\nfeeds B": ["error", "minimum of 1.5 mm² for power"],
      "1.5 mm² cpc 1.5 mm²\nfeeds B": "",
    },
  },
  // Common practice after the On-Site Guide, Appendix E: two right angles between places where cables are drawn in.
  {
    check: "containment/too-many-bends",
    text: 'wayfile 1\ninstallation "Mill" {\nboard A "Board" {\nfed-from supply\ncontainment C1 conduit 25 mm length 5 m bends #\n}\n}\n',
    found: { "2": "", "3": "warning" },
  },
  {
    check: "rcd/delayed-for-additional-protection",
    text: way("device BS EN 60898 B32 6 kA\nrcd BS EN 61008 63 A #\nserves sockets", "ring"),
    found: { "30 mA type A delayed": "error", "30 mA type A": "", "100 mA type A delayed": "" },
  },
  {
    check: "rcd/sensitivity-unusual",
    text: way("device BS EN 61009 B32 6 kA # mA type A"),
    found: { "10": "", "30": "", "100": "", "300": "", "500": "", "31": "warning", "29": "warning" },
  },
  // 605-06 of the 16th edition: 25 V where livestock is; 0.3 A through 83.4 Ω are 25.02 V.
  {
    check: "place/touch-voltage",
    setting: { standard: "BS 7671:2001", supply: "earthing TT\nelectrode rod 90 Ω\nIpf 1.2 kA" },
    text: way(
      "device BS EN 61009 C16 6 kA 300 mA type A\nserves motor\nplace agricultural\nlive 2006-03-05 {\nZs # Ω\n}",
    ),
    found: { "83.3": "", "83.4": "error" },
  },
  // Table 41.3, cold: 0.8 × 0.68 Ω of C32 and 0.8 × 1.37 Ω of B32.
  {
    check: "loop/type-b-would-do",
    setting: { stage: "tested", premises: "dwelling" },
    text: way("device BS EN 61009 C32 6 kA 30 mA type A\nserves sockets\nlive 2026-03-05 {\nZs # Ω\n}", "ring"),
    found: { "0.54": "", "0.56": "information", "1.09": "information", "1.10": "" },
  },
  // 544.1.1 with PME: as good as 10 mm² of copper, for tails to 35 mm².
  {
    check: "protective/outbuilding-bonding",
    text: installation(`supply {
#
Ze 0.25 Ω
tails 25 mm²
}
board A "Hall" {
fed-from supply
way 1 feeder "Garage" {
device BS 88-2 40 A
feeds G
cable armoured 90 °C line 10 mm² cpc 6 mm² cores 3
route buried method D
}
}
board G "Garage" {
fed-from A
}`),
    found: { "earthing TN-C-S": "information", "earthing TN-S": "" },
  },
  {
    check: "protective/outbuilding-bonding",
    text: installation(`supply {
earthing TN-C-S
Ze 0.25 Ω
tails 25 mm²
}
board A "Hall" {
fed-from supply
way 1 feeder "Garage" {
device BS 88-2 40 A
feeds G
cable armoured 90 °C line 10 mm² cores 3 cpc #
}
}
board G "Garage" {
fed-from A
}`),
    found: {
      "10 mm²\nroute buried method D": "",
      "6 mm²\nroute duct method D": "information",
      "6 mm²\nroute clipped method C": "",
    },
  },
];

holdAtLimits(limits);
