/**
 * Conditions of several lines, ways, uses or boards: one of them is not all of them. Each check with what all of them are,
 * with what one of two is, in both orders, and with none; clauses are those the checks cite.
 */
import { holdAtLimits, type Limit } from "../helpers/limits.ts";

const way = (lines: string, { kind = "radial", id = "1" } = {}): string => `way ${id} ${kind} "Circuit" {\n${lines}\n}`;
const beside = (...ways: readonly string[]): string =>
  ways.map((lines, at) => way(lines, { id: `${at + 1}` })).join("\n");
const breaker = "device BS EN 60898 B16 6 kA";
const rcbo = "device BS EN 61009 B16 6 kA 30 mA type A";
const twin = "cable flat-twin line 2.5 mm² cpc 1.5 mm²";
const tested = { stage: "tested" } as const;
const live = (lines: string, day = "2026-03-05"): string => `live ${day} {\n${lines}\n}`;
const dead = (lines: string, day = "2026-03-04"): string => `dead ${day} {\n${lines}\n}`;
const limitation = 'LIM "Could not be isolated"';

const installation = (supply: string, boards: string, head = "stage tested\nwork new\npremises commercial"): string =>
  `wayfile 1
installation "Works" {
standard BS 7671:2018+A2:2022
${head}
supply {
earthing TN-S
Ze 0.30 Ω
${supply}
}
${boards}
}`;
const boards = (first: string, second = ""): string =>
  `board A "Main" {\nfed-from supply\n${first}\n}\nboard B "Annexe" {\nfed-from A\n${second}\n}`;

const limits: readonly Limit[] = [
  // One press stands for both visits.
  {
    check: "afdd/test-button-missing",
    setting: tested,
    text: way(`${breaker}\nafdd BS EN 62606\n#`),
    found: {
      [`${live("Zs 0.62 Ω\nafdd-button ok")}\n${live("Zs 0.61 Ω", "2021-03-05")}`]: "",
      [`${live("Zs 0.62 Ω")}\n${live("Zs 0.61 Ω\nafdd-button ok", "2021-03-05")}`]: "",
      [`${live("Zs 0.62 Ω")}\n${live("Zs 0.61 Ω", "2021-03-05")}`]: "error",
    },
  },
  {
    check: "containment/run-not-stated",
    text: `containment C1 conduit 20 mm\nsection\n}\n#`.replace("section\n}\n", ""),
    found: {
      [beside(
        "work existing\ncable singles line 2.5 mm² cpc 1.5 mm²\nroute in C1",
        "cable singles line 2.5 mm² cpc 1.5 mm²\nroute in C1",
      )]: "information",
      [beside(
        "cable singles line 2.5 mm² cpc 1.5 mm²\nroute in C1",
        "cable singles line 2.5 mm² cpc 1.5 mm²\nroute in C1",
      )]: "warning",
    },
  },
  // 528.1: what serves signals alone is low voltage's neighbour; with a socket on it, it is mains.
  {
    check: "containment/voltages-mixed",
    text: `containment T1 trunking 50 mm by 50 mm\n${beside(
      "cable singles line 2.5 mm² cpc 1.5 mm²\nroute in T1\nserves lighting",
      "cable singles line 1 mm² cpc 1 mm²\nroute in T1\nserves #",
    )}`,
    found: {
      data: "warning",
      selv: "warning",
      "data selv": "warning",
      "data sockets": "",
      "sockets data": "",
      lighting: "",
    },
  },
  {
    check: "design/cable-not-for-ground",
    text: way(`${twin}\nroute buried length 14 m\n#`),
    found: { "": "error", "serves selv": "", "serves selv lighting": "error", "serves lighting selv": "error" },
  },
  // 433.1 wants the device by the load: an appliance alone is judged, one of several on the circuit is not.
  {
    check: "design/device-oversized",
    text: way("device BS EN 60898 B40 6 kA\nIb 13 A\n#"),
    found: {
      "serves water-heater": "information",
      "serves water-heater heating": "",
      "serves water-heater sockets": "",
      "serves sockets": "",
      "serves water-heater\npoints 3": "",
      "": "",
    },
  },
  {
    check: "design/load-disagrees",
    text: way("device BS EN 60898 B45 6 kA\nload 9.5 kW\nIb 31 A\n#"),
    found: { "serves shower": "warning", "serves shower sockets": "", "serves sockets shower": "", "": "" },
  },
  {
    check: "insulation/not-tested-with-equipment",
    setting: { stage: "dead-tested", standard: "BS 7671:2018+A2:2022" },
    text: way(dead("#")),
    found: {
      'insulation 500 V L-N 310 MΩ L-E 280 MΩ N-E 290 MΩ "Alarms off"': "warning",
      "insulation 500 V L-N 310 MΩ L-E 280 MΩ N-E 290 MΩ": "",
      'insulation 500 V L-N 310 MΩ\ninsulation 500 V L-E 280 MΩ N-E 290 MΩ "Alarms off"': "warning",
      'insulation 500 V L-N 310 MΩ "Alarms off"\ninsulation 500 V L-E 280 MΩ N-E 290 MΩ': "warning",
      'insulation 500 V L-N 310 MΩ "Alarms off"\ninsulation 250 V L-E 280 MΩ joined': "",
    },
  },
  {
    check: "insulation/pair-missing",
    setting: { stage: "dead-tested" },
    text: way(dead("#")),
    found: {
      "insulation 500 V L-E 280 MΩ joined": "",
      "insulation 500 V L-E 280 MΩ joined\ninsulation 250 V L-E 260 MΩ": "",
      "insulation 250 V L-E 260 MΩ\ninsulation 500 V L-E 280 MΩ joined": "",
      "insulation 250 V L-E 260 MΩ\ninsulation 500 V L-E 280 MΩ": ["error", "L-N and N-E are not recorded"],
      "insulation 500 V L-E 280 MΩ\ninsulation 500 V L-N 310 MΩ\ninsulation 500 V N-E 290 MΩ": "",
    },
  },
  // One result is one, whatever else is a limitation, and a line that cannot be read may be one.
  {
    check: "inspection/nothing-tested",
    setting: { stage: "tested", work: "existing" },
    text: way("#"),
    found: {
      [`${dead(`R1+R2 ${limitation}\ninsulation 500 V ${limitation}`)}\n${live(`Zs ${limitation}`)}`]: "warning",
      [`${dead(`R1+R2 0.41 Ω\ninsulation 500 V ${limitation}`)}\n${live(`Zs ${limitation}`)}`]: "",
      [`${dead(`R1+R2 ${limitation}\ninsulation 500 V ${limitation}`)}\n${live("Zs 0.62 Ω")}`]: "",
      [`${dead(`R1+R2 N/A\ninsulation 500 V ${limitation}`)}\n${live("Zs N/A")}`]: "warning",
      [`${dead("R1+R2 N/A")}\n${live(`Zs ${limitation}`)}`]: "warning",
      [`${dead(`R1+R2 ${limitation}`)}\n${live("Zs N/A")}`]: "warning",
      [`${dead("R1+R2 N/A")}\n${live("Zs N/A")}`]: "",
    },
  },
  {
    check: "instrument/not-capable",
    setting: {
      before:
        'instrument M1 "Multimeter" {\ntest-current 7 mA\ntest-voltage 50 V 100 V\n}\ninstrument M2 "Tester" {\ntest-current 200 mA\ntest-voltage 250 V 500 V\n}\ninstrument M3 "Bought last" {\n}',
    },
    text: way("#"),
    found: {
      "dead 2026-03-04 with M1 {\nR1+R2 0.41 Ω\n}": "warning",
      "dead 2026-03-04 with M2 {\nR1+R2 0.41 Ω\n}": "",
      // Either will have made the test that it can make.
      "dead 2026-03-04 with M1 M2 {\nR1+R2 0.41 Ω\n}": "",
      "dead 2026-03-04 with M2 M1 {\nR1+R2 0.41 Ω\n}": "",
      "dead 2026-03-04 with M1 M3 {\nR1+R2 0.41 Ω\n}": "",
      "dead 2026-03-04 with M1 {\nR1+R2 0.41 Ω\npolarity ok\n}": "warning",
      "dead 2026-03-04 with M1 {\npolarity ok\nR1+R2 0.41 Ω\n}": "warning",
      "dead 2026-03-04 with M1 {\ninsulation 500 V L-E 280 MΩ joined\n}": "warning",
      "dead 2026-03-04 with M1 {\ninsulation 100 V L-E 280 MΩ joined\n}": "",
      "dead 2026-03-04 with M1 M2 {\ninsulation 500 V L-E 280 MΩ joined\n}": "",
      "dead 2026-03-04 with M2 M1 {\ninsulation 500 V L-E 280 MΩ joined\n}": "",
      "dead 2026-03-04 with M1 M3 {\ninsulation 500 V L-E 280 MΩ joined\n}": "",
    },
  },
  // One kind of continuity test is enough to have been made before the circuit was live.
  {
    check: "live/before-dead",
    setting: tested,
    text: way(`#\n${live("Zs 0.62 Ω", "2026-03-05")}`),
    found: {
      [`${dead("R1+R2 0.41 Ω\ninsulation 500 V L-E 280 MΩ joined")}`]: "",
      [`${dead("insulation 500 V L-E 280 MΩ joined")}\n${dead("R1+R2 0.41 Ω", "2026-03-06")}`]: [
        "warning",
        "before the first test of continuity on 2026-03-06",
      ],
      [`${dead("R1+R2 0.41 Ω")}\n${dead("insulation 500 V L-E 280 MΩ joined", "2026-03-06")}`]: [
        "warning",
        "before the first test of insulation on 2026-03-06",
      ],
      [`${dead("R2 0.25 Ω\ninsulation 500 V L-E 280 MΩ joined")}\n${dead("R1+R2 0.41 Ω", "2026-03-06")}`]: "",
    },
  },
  {
    check: "live/zs-missing",
    setting: tested,
    text: way(`${breaker}\n#`),
    found: {
      [live("polarity ok")]: "error",
      [`${live("polarity ok")}\n${live("Zs 0.62 Ω", "2021-03-05")}`]: "",
      [`${live("Zs 0.62 Ω")}\n${live("polarity ok", "2021-03-05")}`]: "",
      [live("at S1 Zs 0.62 Ω")]: "",
      [live("at S1 polarity ok\nat S2 Zs 0.62 Ω")]: "",
      [live("at S1 polarity ok\nat S2 polarity ok")]: "error",
      [live('Zs 0.62 Ω from-record "2021 report"')]: ["error", "is from a record"],
      [live('Zs 0.62 Ω from-record "2021 report"\nat S1 Zs 0.60 Ω')]: "",
      [live('Zs 0.62 Ω\nat S1 Zs 0.60 Ω from-record "2021 report"')]: "",
    },
  },
  {
    check: "population/equal-pairs",
    setting: { stage: "dead-tested" },
    text: [1, 2, 3, 4].map((id) => way(dead("insulation 500 V #"), { id: `${id}` })).join("\n"),
    found: {
      "L-N 310 MΩ L-E 310 MΩ N-E 310 MΩ": "warning",
      "L-N 310 MΩ L-E 310 MΩ N-E 402 MΩ": "",
      "L-N 310 MΩ L-E 402 MΩ N-E 310 MΩ": "",
      "L-N 402 MΩ L-E 310 MΩ N-E 310 MΩ": "",
      "L-N 310 MΩ L-E 310 MΩ N-E >310 MΩ": "",
      "L-N 310 MΩ L-E >310 MΩ N-E 310 MΩ": "",
      "L-N >310 MΩ L-E 310 MΩ N-E 310 MΩ": "",
      "L-N >310 MΩ L-E >310 MΩ N-E >310 MΩ": "",
      "L-N 310 MΩ L-E 310 MΩ": "",
    },
  },
  {
    check: "protective/separate-below-minimum",
    text: way(
      `${breaker}\ncable singles line 2.5 mm² cpc 2.5 mm²\nroute conduit 20 mm method B carries line neutral\nroute clipped carries #`,
    ),
    found: { cpc: "error", "cpc line": "", "line cpc": "" },
  },
  {
    check: "protective/outbuilding-bonding",
    text: installation(
      "",
      boards(
        'way 1 feeder "Garage" {\ndevice BS 88-2 40 A\nfeeds B\ncable armoured 90 °C line 6 mm² cpc-by armour cores 3\n#\nlength 20 m\n}',
      ),
      "stage design\npremises commercial",
    ).replace("TN-S", "TN-C-S"),
    found: {
      "route buried method D": "information",
      "route duct 50 mm method D": "information",
      "route clipped method C": "",
      "route clipped method C\nroute buried method D": "information",
      "route buried method D\nroute clipped method C": "information",
    },
  },
  {
    check: "place/socket-shares-rcd",
    setting: { board: "fed-from supply\nrcd east BS EN 61008 63 A 30 mA type A" },
    text: `${way("#\nbehind east\nserves sockets\nplace marina")}\n${way(`${breaker}\nbehind east\nserves lighting`, { id: "2" })}`,
    found: { [breaker]: "error", [rcbo]: "", "device BS EN 61009 B16 6 kA 10 mA type A": "" },
  },
  // A press that cannot be read may be any of them; one that is read is that of its own RCD alone.
  {
    check: "rcd/test-button-missing",
    setting: tested,
    text: `${way(`${rcbo}\n#`)}\n${way(`${rcbo}\n${live("rcd 30 mA 1x 24 ms\ntest-button ok")}`, { id: "2" })}`,
    found: {
      [live("rcd 30 mA 1x 24 ms")]: "error",
      [live("rcd 30 mA 1x 24 ms\ntest-button ok")]: "",
      [`${live("rcd 30 mA 1x 24 ms")}\n${live("test-button ok", "2021-03-05")}`]: "",
      "": "",
    },
  },
  {
    check: "rcd/test-missing",
    setting: { ...tested, board: "fed-from supply\nrcd east BS EN 61008 63 A 30 mA type A" },
    text: `${way(`${breaker}\nbehind east\n#`)}\n${way(`${breaker}\nbehind east`, { id: "2" })}`,
    found: { [live("Zs 0.62 Ω")]: "error", [live("rcd east 30 mA 1x 24 ms")]: "", "": "" },
  },
  {
    check: "record/not-applicable",
    setting: { stage: "dead-tested" },
    text: way(dead("#")),
    found: {
      "insulation 500 V L-N 310 MΩ L-E 280 MΩ N-E N/A": "error",
      "insulation 500 V L-E 280 MΩ N-E N/A joined": "",
      "insulation 500 V L-N 310 MΩ L-E 280 MΩ N-E N/A\ninsulation 250 V L-E 280 MΩ joined": "",
    },
  },
  {
    check: "record/not-signed",
    setting: tested,
    text: beside("#", 'designed by "K.A."\ninstalled by "K.A."\ntested by "K.A."'),
    found: {
      "": ["information", "who designed, installed and tested its circuits"],
      'designed by "K.A."\ninstalled by "K.A."': ["information", "who tested its circuits"],
      'designed by "K.A."\ninstalled by "K.A."\ntested by "K.A."': "",
    },
  },
  {
    check: "record/notice-missing",
    text: installation("#", boards(way("serves pv"), way("serves lighting")), "stage tested\nwork new"),
    found: {
      'standby "Diesel set" Ze 0.40 Ω': "warning",
      "": "warning",
      'standby "Diesel set" Ze 0.40 Ω\nnotice "At the cut-out"': "",
    },
  },
  {
    check: "record/supply-incomplete",
    text: installation("#", boards("", live("Ipf 0.9 kA"))),
    found: { "": "", "Ipf 1.2 kA": "", "PEFC 1.2 kA": "" },
  },
  {
    check: "record/supply-incomplete",
    text: installation("#", boards("")),
    found: {
      "": ["warning", "Ipf"],
      "Ipf 1.2 kA": "",
      "PSCC 1.2 kA": "",
      "PEFC 1.2 kA": "",
      "transformer 500 kVA impedance 4 %": "",
    },
  },
  {
    check: "ring/ends-on-radial",
    setting: { stage: "dead-tested" },
    text: way(dead("ends #")),
    found: {
      "r1 0.44 Ω rn 0.44 Ω r2 0.73 Ω": "warning",
      "r1 0.44 Ω rn N/A r2 N/A": "warning",
      "r1 N/A rn N/A r2 0.73 Ω": "warning",
      "r1 N/A rn N/A r2 N/A": "",
      "r1 N/A rn N/A": "",
    },
  },
  {
    check: "surge/not-stated",
    text: installation("", boards("#")),
    found: { "": "warning", "spd fitted": "" },
  },
  {
    check: "surge/not-stated",
    text: installation("", boards("", "#")),
    found: { "": "warning", "spd fitted": "" },
  },
  {
    check: "surge/omitted-without-reason",
    text: installation("spd not-fitted", boards("", "#")),
    found: { "": "warning", "spd fitted": "", "spd not-fitted": "warning", 'spd not-fitted "Owner declined"': "" },
  },
];

holdAtLimits(limits);
