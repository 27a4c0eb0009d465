/**
 * RCDs, records and inspections: each check with what turns it and with what does not. Clauses are those the checks cite.
 */
import { holdAtLimits, type Limit } from "../helpers/limits.ts";

const way = (lines: string, id = "1"): string => `way ${id} radial "Circuit" {\n${lines}\n}`;
const breaker = "device BS EN 60898 B16 6 kA";
const rcbo = "device BS EN 61009 B16 6 kA 30 mA type A";
const twin = "cable flat-twin line 2.5 mm² cpc 1.5 mm²";
const east = "fed-from supply\nrcd east BS EN 61008 63 A 30 mA type A\nrcd west BS EN 61008 63 A 30 mA type A";
const behind = (serves: string, name = "east") => `${breaker}\nbehind ${name}\nserves ${serves}`;
/** One way, and what stands beside it. */
const beside = (first: string, ...others: readonly string[]): string =>
  [first, ...others].map((lines, at) => way(lines, String(at + 1))).join("\n");
const tested = { stage: "tested" } as const;
const inspected = (lines: string, more = ""): string => `wayfile 1
installation "Works" {
standard BS 7671:2018+A2:2022
stage tested
premises commercial
${more}
inspection #KIND 2026-03-05 {
${lines}
}
board A "Board" {
fed-from supply
way 1 radial "Kiln" {
device BS EN 60898 B16 6 kA
}
}
}`;

const limits: readonly Limit[] = [
  {
    check: "rcd/alarms-share-rcd",
    setting: { premises: "dwelling", board: east },
    text: "#",
    found: {
      [beside(behind("alarms"), behind("sockets"))]: ["warning", "with the sockets of way 2"],
      [beside(behind("alarms"), behind("sockets", "west"))]: "",
      [beside(behind("alarms"), behind("lighting"))]: "",
      [beside(behind("alarms sockets"), behind("lighting"))]: "",
      [beside(behind("water-heater"), behind("sockets"))]: "",
    },
  },
  {
    check: "rcd/alarms-share-rcd",
    setting: { premises: "commercial", board: east },
    text: "#",
    found: {
      [beside(behind("alarms"), behind("sockets"))]: ["warning", "with way 2, so that a fault there silences it"],
      [beside(behind("alarms"), behind("water-heater"))]: ["warning", "with way 2, so that a fault there silences it"],
      [beside(behind("alarms"), behind("water-heater", "west"))]: "",
      [beside(behind("alarms"), behind("sockets")).replace('"Circuit"', '"Intruder alarm"')]: "",
    },
  },
  // What waits leaves a fault to the RCD of its circuit.
  ...["commercial", "dwelling"].map(
    (premises): Limit => ({
      check: "rcd/alarms-share-rcd",
      setting: { premises, board: "fed-from supply\nmain-switch BS EN 61008 100 A 100 mA type A delayed" },
      text: "#",
      found: {
        [beside("serves alarms", "serves sockets")]: "",
      },
    }),
  ),
  {
    check: "rcd/alarms-share-rcd",
    setting: { premises: "dwelling", board: "fed-from supply\nmain-switch BS EN 61008 100 A 100 mA type A" },
    text: "#",
    found: { [beside("serves alarms", "serves sockets")]: ["warning", "with the sockets of way 2"] },
  },
  // 722.531.3.101 excepts what is supplied by separation: a large charger is told how that is stated.
  {
    check: "rcd/missing-for-charger",
    text: "#",
    found: {
      [way("device BS EN 60898 B63 6 kA\nserves ev-charger")]: ["error", "way 1 has none."],
    },
  },
  ...(
    [
      ["", ["error", "write departure 722.531.3.101 with that"]],
      ['\ndeparture 722.531.3.101 "The maker states a separated output"', ""],
    ] as const
  ).map(
    ([line, found]): Limit => ({
      check: "rcd/missing-for-charger",
      text: "#",
      found: { [way(`device BS 88-2 250 A 80 kA\nserves ev-charger${line}`)]: found },
    }),
  ),
  // 722.531.3.101: an RCD of its own.
  {
    check: "rcd/charger-shares-rcd",
    setting: { board: east },
    text: "#",
    found: {
      [beside(behind("ev-charger"), behind("lighting"))]: ["error", "it needs one of its own"],
      [beside(behind("ev-charger"), behind("lighting", "west"))]: "",
      [beside(`${rcbo}\nbehind east\nserves ev-charger`, behind("lighting"))]: "",
      [beside(behind("sockets"), behind("lighting"))]: "",
    },
  },
  // The line of a circuit type is one line, and an RCBO in every circuit of it.
  {
    check: "rcd/charger-shares-rcd",
    setting: {
      board: east,
      before: "circuit-type point radial {\ndevice BS EN 61009 B32 6 kA 30 mA type A\nserves ev-charger\n}",
    },
    text: 'way 1 as point "North" {\nbehind #\n}\nway 2 as point "South" {\nbehind #\n}',
    found: { east: "" },
  },
  // 712.530.3.101.
  {
    check: "rcd/inverter-direct-current",
    text: way("#"),
    found: {
      [`${rcbo}\nserves pv`]: ["warning", "Behind a type A RCD an inverter must separate its two sides"],
      [`${rcbo}\nserves pv\ninverter separated`]: "",
      [`${rcbo}\nserves pv\ninverter unseparated`]: ["warning", "An inverter without separation needs a type B RCD"],
      [`${rcbo}\nserves pv\ninverter unseparated allows A by "Maker"`]: "",
      [`${rcbo}\nserves pv\ninverter unseparated allows B by "Maker"`]: "warning",
      [`${rcbo.replace("type A", "type B")}\nserves pv`]: "",
      [`${rcbo.replace(" type A", "")}\nserves pv`]: "",
      [`${breaker}\nserves pv`]: "",
      [`${rcbo}\nserves sockets`]: "",
    },
  },
  {
    check: "rcd/inverter-direct-current",
    setting: { standard: "BS 7671:2008" },
    text: way("#"),
    found: { [`${rcbo}\nserves pv`]: "" },
  },
  // 411.3.3: sockets up to 32 A.
  {
    check: "rcd/omitted-without-assessment",
    text: way("#"),
    found: {
      [`${breaker}\nserves sockets\nplace skilled-only`]: ["warning", "need a documented risk assessment"],
      "device BS EN 60898 B32 6 kA\nserves sockets\nplace skilled-only": "warning",
      "device BS EN 60898 B40 6 kA\nserves sockets\nplace skilled-only": "",
      [`${rcbo}\nserves sockets\nplace skilled-only`]: "",
      [`${breaker}\nserves lighting\nplace skilled-only`]: "",
      [`${breaker}\nserves sockets`]: "",
    },
  },
  {
    check: "rcd/omitted-without-assessment",
    setting: { premises: "dwelling" },
    text: way("#"),
    found: { [`${breaker}\nserves sockets\nplace skilled-only`]: "" },
  },
  {
    check: "rcd/test-other-rcd",
    setting: { ...tested, board: east },
    text: way("#"),
    found: {
      [`${behind("sockets")}\nlive 2026-03-05 {\nrcd east 30 mA 1x 24 ms\n}`]: "",
      [`${behind("sockets")}\nlive 2026-03-05 {\nrcd west 30 mA 1x 24 ms\n}`]: [
        "warning",
        "RCD west does not protect way 1: RCD east does.",
      ],
      [`${breaker}\nlive 2026-03-05 {\nrcd west 30 mA 1x 24 ms\n}`]: [
        "warning",
        "RCD west does not protect way 1. Correct",
      ],
      [`${behind("sockets")}\nlive 2026-03-05 {\nrcd 30 mA 1x 24 ms\n}`]: "",
      [`${behind("sockets")}\nlive 2026-03-05 {\ntest-button west ok\n}`]: "warning",
      [`${behind("sockets")}\nlive 2026-03-05 {\ntest-button east ok\n}`]: "",
    },
  },
  {
    check: "rcd/test-without-result",
    setting: tested,
    text: way(`${rcbo}\nlive 2026-03-05 {\nrcd 30 mA #\n}`),
    found: { "1x": "warning", "1x 24 ms": "", "0.5x no-trip": "", "1x no-trip": "" },
  },
  {
    check: "rcd/type-not-stated",
    text: way("device BS EN 61009 B16 6 kA 30 mA#\nserves sockets"),
    found: { "": "information", " type AC": "" },
  },
  ...(
    [
      ["BS 7671:2008", "new"],
      ["BS 7671:2018+A2:2022", "existing"],
    ] as const
  ).map(
    ([standard, work]): Limit => ({
      check: "rcd/type-not-stated",
      setting: { standard, work },
      text: way("device BS EN 61009 B16 6 kA 30 mA#"),
      found: { "": "" },
    }),
  ),
  ...(["type A", "type B", ""] as const).map(
    (type): Limit => ({
      check: "rcd/upstream-blinded-by-dc",
      setting: { board: `fed-from supply\nmain-switch BS EN 61008 100 A 100 mA ${type} delayed` },
      text: way("device BS EN 61009 B16 6 kA 30 mA type #\nserves ev-charger"),
      found: { B: type === "type A" ? ["warning", "may stop it from tripping"] : "", A: "" },
    }),
  ),
  {
    check: "record/cable-incomplete",
    text: way(`${breaker}\n#`),
    found: {
      [twin]: "",
      "cable line 2.5 mm² cpc 1.5 mm²": [
        "warning",
        "The type of this cable is not stated. Write it, such as flat-twin.",
      ],
      "cable flat-twin line 2.5 mm²": ["warning", "Its protective conductor is not stated. Write cpc with its size"],
      "cable flat-twin cpc 1.5 mm²": ["warning", "Write line with the size."],
      "cable armoured 90 °C line 2.5 mm² cpc-by armour": "",
      "cable flat-twin": ["warning", "Write line with the size, and cpc with its size"],
    },
  },
  {
    check: "record/cable-incomplete",
    setting: { work: "existing" },
    text: way(`${breaker}\ncable #`),
    found: { "flat-twin line 2.5 mm²": "information" },
  },
  // 514.15.1.
  ...(
    [
      ["tested", "new", "", "warning"],
      ["tested", "new", 'notice "At the origin"', ""],
      ["tested", "existing", "", ""],
      ["design", "new", "", ""],
    ] as const
  ).map(
    ([stage, work, notice, found]): Limit => ({
      check: "record/notice-missing",
      setting: { stage, work, supply: `earthing TN-S\n${notice}` },
      text: way(`${rcbo}\nserves #`),
      found: { pv: found, sockets: "" },
    }),
  ),
  {
    check: "protective/open",
    setting: {
      ...tested,
      supply: "earthing TN-S\nearthing-conductor 16 mm² continuity 0.02 Ω\nbonding water 10 mm² continuity 0.03 Ω",
    },
    text: way("#"),
    found: { [breaker]: "" },
  },
  {
    check: "protective/open",
    setting: { ...tested, supply: "earthing TN-S\nbonding water 10 mm² continuity >200 Ω" },
    text: way("#"),
    found: { [breaker]: ["error", "The bonding of water is off scale (>200 Ω): no continuity."] },
  },
  {
    check: "protective/open",
    setting: { ...tested, supply: "earthing TN-S\nearthing-conductor 16 mm² continuity >200 Ω" },
    text: way("#"),
    found: { [breaker]: ["error", "The earthing conductor is off scale"] },
  },
  {
    check: "inspection/circuit-not-tested",
    text: inspected('extent "All"').replace("#KIND", "#"),
    found: { periodic: ["warning", "Way 1 was not tested at the inspection of 2026-03-05"], initial: "", minor: "" },
  },
  {
    check: "inspection/circuit-not-tested",
    text: inspected('extent "All"\n#').replace("#KIND", "periodic"),
    found: { 'sampled-out board A way 1 "One in ten"': "", 'sampled-out board A way 2 "One in ten"': "warning" },
  },
  {
    check: "inspection/existing-not-assessed",
    text: inspected("#").replace("#KIND", "minor"),
    found: {
      "existing earthing adequate\nexisting bonding adequate": "warning",
      "existing earthing inadequate\nexisting bonding adequate": "error,warning",
    },
  },
  {
    check: "inspection/limitation-without-cause",
    text: inspected('limitation agreed board A way 1 "Freezer circuit" why "#" with "The manager"').replace(
      "#KIND",
      "periodic",
    ),
    found: { "n/a": "warning", "Loft boarded over": "" },
  },
  {
    check: "instrument/not-named",
    setting: { ...tested, before: 'instrument M1 "Multifunction tester"' },
    text: way("live 2026-03-05 # {\nZs 0.62 Ω\n}"),
    found: { "": "information", "with M1": "" },
  },
  {
    check: "insulation/differing-ranges",
    setting: { ...tested, before: 'instrument M1 "Multifunction tester"\ninstrument M2 "Another"' },
    text: "#",
    found: Object.fromEntries(
      (
        [
          ["M1", "500 V L-E >999 MΩ", ["information", "off scale at >200 MΩ here and at >999 MΩ elsewhere"]],
          ["M1", "500 V L-E >200 MΩ", ""],
          ["M2", "500 V L-E >999 MΩ", ""],
          ["M1", "250 V L-E >999 MΩ", ""],
          ["M1", "500 V L-E 999 MΩ", ""],
        ] as const
      ).map(([instrument, line, found]) => [
        beside(
          `dead 2026-03-04 with ${instrument} {\ninsulation ${line}\n}`,
          "dead 2026-03-04 with M1 {\ninsulation 500 V L-E >200 MΩ\n}",
        ),
        found,
      ]),
    ),
  },
  // 411.5.1.
  {
    check: "network/electrodes-share-device",
    setting: { supply: "earthing TT", board: east },
    text: "#",
    found: {
      [beside(
        `${behind("lighting")}\nearthing TT\nelectrode rod 40 Ω`,
        `${behind("lighting")}\nearthing TT\nelectrode rod 60 Ω`,
      )]: ["warning", "Ways 1 and 2 have electrodes of their own and share"],
      [beside(
        `${behind("lighting")}\nearthing TT\nelectrode rod 40 Ω`,
        `${behind("lighting", "west")}\nearthing TT\nelectrode rod 60 Ω`,
      )]: "",
      [beside(`${behind("lighting")}\nearthing TT\nelectrode rod 40 Ω`, behind("lighting"))]: "",
    },
  },
  // 703.411.3.3: all but the heater, whose leakage when cold would trip an RCD without a fault.
  {
    check: "place/sauna-without-rcd",
    text: way(`${breaker}\nserves #`),
    found: {
      "lighting\nplace sauna": "error",
      "heating\nplace sauna": "",
      "heating lighting\nplace sauna": "error",
      "heating\nplace ordinary": "",
    },
  },
  // 705.560.6.
  {
    check: "place/fans-share-rcd",
    setting: { board: `${east}\nplace agricultural` },
    text: "#",
    found: {
      [beside(behind("ventilation"), behind("lighting"))]: ["warning", "The ventilation shares the"],
      [beside(behind("ventilation"), behind("ventilation"))]: "",
      [beside(behind("ventilation"), behind("lighting", "west"))]: "",
      [beside(behind("sockets"), behind("lighting"))]: "",
      [beside(`${behind("ventilation")}\nplace ordinary`, behind("lighting"))]: "",
    },
  },
];

holdAtLimits(limits);
