/** What whole jobs asked of single checks: each with what turns it and what does not. */
import { expect, it } from "vitest";
import { marginOf } from "../../server/calc/margin.ts";
import { find } from "../helpers/find.ts";
import { holdAtLimits, type Limit } from "../helpers/limits.ts";

const way = (lines: string, title = "Circuit", kind = "radial"): string => `way 1 ${kind} "${title}" {\n${lines}\n}`;
const breaker = "device BS EN 60898 B16 6 kA";
const twin = "cable flat-twin line 2.5 mm² cpc 1.5 mm²";
const file = (lines: string, standard = "BS 7671:2018+A2:2022"): string =>
  `wayfile 1\ninstallation "Works" {\nstandard ${standard}\nstage tested\n${lines}\n}`;
const supply = "earthing TN-S\nphases #\nZe 0.30 Ω\nIpf 0.8 kA";
const sub = (phases: string, of = "single") =>
  file(
    `supply {\n${supply.replace("#", of)}\n}\nboard A "Front" {\nfed-from supply\nway 1 feeder "Back" {\nfeeds B\n}\n}\nboard B "Back" {\nfed-from A\n${phases}\n}`,
  );
const barn = (cable: string, own = "earthing TT\nelectrode rod 84 Ω") =>
  file(
    `supply {\nearthing TT\nelectrode rod 60 Ω\n}\nboard A "House" {\nfed-from supply\nway 1 feeder "Barn" {\n${cable}\nfeeds B\n}\n}\nboard B "Barn" {\nfed-from A\n${own}\n}`,
  );

const inspected = (kind: string, on: string, more: string) =>
  `location "Kiln Lane"\ninspection ${kind} ${on} {\nclient "The owner"\nreason "Five years"\nextent "All"\n${more}\noutcome satisfactory\nnext-inspection 2031-03-05 "Five years"\ntested by "J.M." ${on}\n}`;

const minor = (name: string, lines: string): string =>
  file(
    `${lines}\ntested by "J.M." 2026-03-05\ninspection minor 2026-03-05 {\n#\nwork-done "Oven moved"\ncovers board A way 1\n}`,
  ).replace("Works", name);

const limits: readonly Limit[] = [
  // The nominal voltage was 240 V until 1995.
  {
    check: "network/voltage-not-nominal",
    text: file("supply {\nearthing TN-S\nU0 # V\n}"),
    found: {
      230: "",
      240: ["warning", "240 V was the nominal voltage until 1995"],
      241: ["warning", "read as voltage in a block of live tests"],
    },
  },
  {
    check: "network/voltage-not-nominal",
    text: file("supply {\nearthing TN-S\nU0 # V\n}", "BS 7671:2001"),
    found: { 230: "", 240: "", 241: "warning" },
  },
  {
    check: "network/voltage-not-nominal",
    text: file(
      'supply {\nearthing TN-S\nU0 240 V\n}\nboard A "Board" {\nfed-from supply\nway 1 radial "Pump" {\nlive # {\nZs 0.60 Ω\n}\n}\n}',
    ),
    found: { "1994-12-31": "", "1995-01-01": "warning" },
  },
  // A converter makes three lines of one.
  {
    check: "design/named-three-phase",
    text: way("device BS EN 60898 B40 6 kA", "#"),
    found: {
      "Three-phase saw": "warning",
      "Rotary converter 1 to 3 phase": "",
      "Single to three phase set": "",
      "3-phase inverter": "",
      "Saw, 3-phase, with converter": "",
    },
  },
  {
    check: "network/three-from-one",
    text: "#",
    found: {
      [sub("phases three")]: ["warning", "board A, which feeds it, is single-phase"],
      [sub("phases single")]: "",
      [sub("")]: "",
      [sub("phases three", "three")]: "",
    },
  },
  // A line without an earth to a building that has its own.
  {
    check: "continuity/no-protective-conductor",
    text: "#",
    found: {
      [barn("cable singles line 10 mm² cpc-by none\nroute overhead length 60 m")]: "",
      [barn("cable armoured line 10 mm² cpc-by none cores 2")]: "error",
      [barn("cable singles line 10 mm² cpc-by none", "")]: "error",
    },
  },
  {
    check: "design/buried-too-shallow",
    text: way("cable armoured line 6 mm² cpc 6 mm² cores 3\nroute buried length 9 m method D depth # mm"),
    found: { 450: "", 449: ["warning", "450 mm to 600 mm is common practice"] },
  },
  // The RCD at the origin of a stand: one that is there and too coarse is named.
  {
    check: "place/show-without-origin-rcd",
    setting: { board: "fed-from supply\nrcd M BS EN 61008 63 A 500 mA type A delayed" },
    text: way("device BS EN 61009 B6 6 kA 30 mA type A\nserves lighting\nplace fairground\n#"),
    found: {
      "behind M": ["error", "the 500 mA type A delayed BS EN 61008 there is too coarse"],
      "": ["error", "none protects way 1"],
    },
  },
  // An inverter needs more of its RCD than a load does, and one finding says so.
  {
    check: "rcd/inverter-direct-current",
    text: way("device BS EN 61009 B16 6 kA 30 mA type # bidirectional\nserves pv"),
    found: {
      B: "",
      A: ["warning", "Behind a type A RCD"],
      AC: ["warning", "fit type B, or type A where the inverter"],
    },
  },
  {
    check: "rcd/type-unsuitable",
    text: way("device BS EN 61009 B16 6 kA 30 mA type # bidirectional\nserves pv"),
    found: {
      AC: "",
      A: "",
    },
  },
  {
    check: "rcd/type-unsuitable",
    text: way("device BS EN 61009 B16 6 kA 30 mA type # bidirectional\nserves pv\ninverter separated"),
    found: { AC: ["warning", "fit type A or better"], A: "" },
  },
  // Table 531.3.3: B for three-phase drives, F for single-phase ones; whatever a drive is, it rectifies.
  {
    check: "rcd/type-unsuitable",
    text: way("device BS EN 61009 C16 6 kA 30 mA type #\nserves motor\nstarting drive"),
    found: { AC: ["error", "a single-phase drive"], A: ["warning", "fit type F or better"], F: "", B: "" },
  },
  {
    check: "rcd/type-unsuitable",
    text: way("device BS EN 61009 C16 6 kA 30 mA type #\nserves motor\nstarting direct"),
    found: { AC: "" },
  },
  {
    check: "rcd/type-unsuitable",
    setting: { supply: "earthing TN-S\nphases three", board: "fed-from supply\nphases three" },
    text: way("device BS EN 61009 C16 6 kA 30 mA type #\nphase three\nserves motor\nstarting drive"),
    found: { AC: ["error", "a three-phase drive gives smooth direct current: fit type B"], F: "warning", B: "" },
  },
  // 522.6.202: a cable in a wall of which nothing says how deep it lies.
  {
    check: "rcd/concealed-depth-not-stated",
    text: way(`${breaker}\n#\nserves heating`),
    found: {
      [`${twin}\nroute wall method 102`]: ["warning", "less than 50 mm deep needs an RCD of 30 mA or less"],
      [`${twin}\nroute wall method C`]: "warning",
      [`${twin}\nroute clipped method C`]: "",
      [`${twin}\nroute ceiling method 100`]: "",
      // What is stated is judged by its own rule.
      [`${twin}\nroute wall method 102 depth 49 mm`]: "",
      [`${twin}\nroute wall method 102 depth 50 mm`]: "",
      "cable armoured line 2.5 mm² cpc-by armour cores 2\nroute wall method C": "",
      "cable mineral line 2.5 mm² cpc-by sheath\nroute wall method C": "",
      "cable singles line 2.5 mm² cpc-by conduit\nroute wall method B": "",
    },
  },
  {
    check: "rcd/concealed-depth-not-stated",
    text: way(`#\n${twin}\nroute wall method 102\nserves heating`),
    found: {
      [breaker]: "warning",
      "device BS EN 61009 B16 6 kA 30 mA type A": "",
      "device BS EN 61009 B16 6 kA 31 mA type A": "warning",
    },
  },
  {
    check: "rcd/concealed-depth-not-stated",
    setting: { work: "existing" },
    text: way(`#\n${twin}\nroute wall method 102\nserves heating`),
    found: { [breaker]: ["information", "noted, not a fault"] },
  },
  {
    check: "rcd/concealed-depth-not-stated",
    setting: { standard: "BS 7671:2001" },
    text: way(`#\n${twin}\nroute wall method 102\nserves heating`),
    found: { [breaker]: "" },
  },
  {
    check: "rcd/concealed-depth-not-stated",
    setting: { standard: "BS 7671:2008" },
    text: way(`${breaker}\n${twin}\nroute wall method 102\nserves heating\n#`),
    found: { "": "warning", "place skilled-only": "" },
  },
  // One RCD is missing, and what surely needs it says so.
  {
    check: "rcd/concealed-depth-not-stated",
    text: way(`${breaker}\n${twin}\nroute wall method 102\nserves #`),
    found: { sockets: "", heating: "warning" },
  },
  // 714.411.3.4: lights within reach of the public.
  ...(["commercial", "industrial"] as const).map(
    (premises): Limit => ({
      check: "rcd/public-reach-not-stated",
      setting: { premises },
      text: way("#"),
      found: {
        [`${breaker}\nserves lighting\nplace outdoors`]: [
          premises === "commercial" ? "warning" : "",
          premises === "commercial" ? "record a departure with why they are out of reach" : "",
        ],
        [`${breaker}\nserves lighting\nplace indoors`]: "",
        [`${breaker}\nserves lighting`]: "",
        [`${breaker}\nserves lighting\nplace public`]: "",
        [`${breaker}\nserves heating\nplace outdoors`]: "",
        "device BS EN 61009 B16 6 kA 30 mA type A\nserves lighting\nplace outdoors": "",
      },
    }),
  ),
  {
    check: "rcd/public-reach-not-stated",
    text: way(`${breaker}\nserves lighting\nplace outdoors`),
    setting: { standard: "BS 7671:2008+A3:2015" },
    found: { "": "" },
  },
  {
    check: "rcd/public-reach-not-stated",
    text: way(`${breaker}\nserves lighting\nplace outdoors\n#`),
    found: { "": "warning", 'departure 714.411.3.4 "Wall lights 4 m up"': "" },
  },
  // In a home every light needs one.
  {
    check: "rcd/public-reach-not-stated",
    text: way(`${breaker}\nserves lighting\nplace outdoors`),
    setting: { premises: "dwelling" },
    found: { "": "" },
  },
  {
    check: "design/lift-shares-circuit",
    text: way("device BS EN 60898 C63 10 kA\nserves #"),
    found: {
      lift: "",
      "lift motor control alarms": "",
      "lift sockets": ["warning", "this one serves sockets as well"],
      "lift lighting": "warning",
      "sockets lighting": "",
    },
  },
  {
    check: "place/pool-by-name",
    text: way("device BS EN 60898 B32 6 kA\nserves appliance", "#"),
    found: {
      "Hot tub": ["error", "“Hot tub” has no RCD of 30 mA"],
      "Swim spa": "error",
      "Swimming pool plant": "warning",
      "Spa pool": "warning",
      "Pool pump": "warning",
      "Pool table lights": "",
      "Car pool office": "",
      "Space heater": "",
      Whirlpool: "",
    },
  },
  {
    check: "place/pool-by-name",
    text: way("device BS EN 60898 B32 6 kA\nserves appliance\n#", "Hot tub"),
    found: { "place outdoors": "error", "place pool zone outside": "", "place ordinary": "", "work existing": "" },
  },
  // Behind a fine RCD, or of extra-low voltage, what else is required there is still not judged.
  {
    check: "place/pool-by-name",
    text: way("#\nserves appliance", "Hot tub"),
    found: {
      "device BS EN 60898 B32 6 kA": "error",
      "device BS EN 61009 B32 6 kA 100 mA type A": "error",
      "device BS EN 61009 B32 6 kA 30 mA type A": ["warning", "“Hot tub” is a pool by its name"],
      "device BS EN 60898 B32 6 kA\nprotective-measure separation": "warning",
      "": "warning",
    },
  },
  // A shower stands in a room with one, whatever else is stated.
  {
    check: "rcd/missing-in-bathroom",
    text: way("#"),
    found: {
      [`${breaker}\nserves shower`]: ["error", "need an RCD of 30 mA or less"],
      [`${breaker}\nserves water-heater`]: "",
      [`${breaker}\nserves water-heater\nplace bathroom`]: "error",
      "device BS EN 61009 B40 6 kA 30 mA type A\nserves shower": "",
    },
  },
  // A circuit of three lines may have no neutral.
  {
    check: "insulation/pair-missing",
    setting: { stage: "tested", board: "fed-from supply\nphases three" },
    text: way(`${breaker}\nphase three\ndead 2026-03-04 {\ninsulation 500 V L-L 200 MΩ L-E 150 MΩ #\n}`),
    found: { "": "", 'L-N N/A "No neutral"': "", 'L-N LIM "Drive left in"': "error", "L-N 180 MΩ": "error" },
  },
  // 20 m of 1 mm² is 0.36 Ω (18.1 mΩ/m, Table B1 of the On-Site Guide), which no steel beside it lowers.
  ...(["Zs", "R1+R2"] as const).map(
    (name): Limit => ({
      check: name === "Zs" ? "loop/zs-below-conductors" : "continuity/r1r2-against-length",
      setting: { stage: "tested", supply: "earthing TN-S\nZe 0.05 Ω" },
      text: way(
        `${breaker}\ncable flat-twin line 1.0 mm² cpc 1.0 mm²\nlength 20 m\nparallel-path "Steel frame"\n${name === "Zs" ? "live" : "dead"} 2026-03-04 {\n${name} # Ω\n}`,
      ),
      found: {
        "0.10": ["warning", "metal in parallel lowers"],
        "0.24": "warning",
        "0.26": "",
        "0.41": "",
      },
    }),
  ),
  // What is above what cable and length give is still asked about.
  {
    check: "continuity/r1r2-against-length",
    setting: { stage: "tested" },
    text: way(
      `${breaker}\ncable flat-twin line 1.0 mm² cpc 1.0 mm²\nlength 20 m\nparallel-path "Steel frame"\ndead 2026-03-04 {\nR1+R2 # Ω\n}`,
    ),
    found: { "0.72": "", "1.90": "warning" },
  },
  // Through an electrode an RCD disconnects what flows; without an RCD or a reading Table 54.7 is what there is.
  {
    check: "design/cpc-too-small",
    setting: { supply: "earthing TT\nelectrode rod 85 Ω" },
    text: way("device BS 3036 30 A\n#\ncable flat-twin line 6 mm² cpc 2.5 mm²\nserves cooker"),
    found: { "rcd BS EN 61008 63 A 30 mA type A": "", "": "information" },
  },
  {
    check: "design/cpc-too-small",
    setting: { supply: "earthing TT" },
    text: way("device BS 3036 30 A\n#\ncable flat-twin line 6 mm² cpc 2.5 mm²\nserves cooker"),
    found: { "rcd BS EN 61008 63 A 30 mA type A": "information" },
  },
  // 230 V / 0.43 Ω for 0.3 s: √(535² × 0.3) / 115 = 2.55 mm².
  {
    check: "design/cpc-too-small",
    setting: { stage: "tested", supply: "earthing TT\nelectrode rod 85 Ω" },
    text: way(
      "device BS 3036 30 A\nrcd BS EN 61008 63 A 30 mA type A\ncable flat-twin line 6 mm² cpc 2.5 mm²\nserves cooker\nlive 2026-03-04 {\nZs #\n}",
    ),
    found: { "0.44 Ω": "", "0.43 Ω": "information" },
  },
  // The front of each paper has the client and the address, which may be the name of the installation.
  {
    check: "inspection/incomplete",
    text: minor("Works", ""),
    found: {
      "": ["information", "The inspection of minor work lacks “client” and “location”, which its paper must state."],
      'client "The owner"': ["information", "lacks “location”"],
    },
  },
  { check: "inspection/incomplete", text: minor("7 Kiln Lane", ""), found: { 'client "The owner"': "" } },
  {
    check: "inspection/incomplete",
    text: minor("Works", 'location "Kiln Lane"'),
    found: { 'client "The owner"': "" },
  },
  // The latest inspection states what was inspected by sight; the items of an earlier one stand in its own paper.
  {
    check: "inspection/incomplete",
    text: file(`#`),
    found: {
      [inspected("periodic", "2026-03-05", "")]: [
        "information",
        "A periodic inspection lacks “inspected”, which its paper must state.",
      ],
      [inspected("periodic", "2026-03-05", 'inspected ok "All that could be seen"')]: "",
      [`${inspected("periodic", "2021-03-05", "")}\n${inspected("periodic", "2026-03-05", "inspected 4.1..4.8 ok")}`]:
        "",
    },
  },
];

holdAtLimits(limits);

const board = (name: string, serves: string) =>
  `board ${name} "${name}" {\nfed-from supply\nway 1 radial "Array" {\ndevice BS EN 60898 B16 6 kA\nserves ${serves}\n}\n}`;
const sources = (boards: string, more = "") =>
  file(`work new\nsupply {\nearthing TN-S\nZe 0.30 Ω\n${more}\n}\n${boards}`);

it("asks for the notice of a second source once, wherever the sources are", () => {
  const found = (text: string) => find("record/notice-missing", text).map(({ spot }) => spot.segment.text.trim());
  expect(found(sources(board("A", "pv")))).toHaveLength(1);
  expect(found(sources(`${board("A", "lighting")}\n${board("B", "pv")}\n${board("C", "storage")}`))).toEqual([
    expect.stringContaining("serves pv"),
  ]);
  expect(found(sources(board("A", "pv"), 'notice "At the meter"'))).toEqual([]);
  expect(found(sources(board("A", "lighting")))).toEqual([]);
});

it("says how many times a limit is exceeded where per cent say little", () => {
  expect(marginOf("most", 10, 1)?.text).toBe("900 % over");
  expect(marginOf("most", 10.01, 1)?.text).toBe("more than 10 times it");
  expect(marginOf("most", 59, 1)).toMatchObject({
    passes: false,
    text: "more than 58 times it",
    upTo: "more than 58 times",
  });
  expect(marginOf("least", 59, 1)).toMatchObject({ passes: true, text: "59 times it" });
});

it("states the setting that would protect a cable by what the cable carries", () => {
  const text = way(
    "device BS 88-2 63 A\ncable armoured line 6 mm² cpc 6 mm² cores 3\nroute clipped method C\nserves motor",
  );
  const [found] = find("design/device-over-capacity", text);
  expect(found?.message).toMatch(/no more than \d+(\.\d+)? A, as overload and that figure\.$/);
  expect(found?.message).not.toContain("12 A");
});

it("names lines that were copied once, whichever of their figures repeat", () => {
  const circuit = (number: number, rest: string) =>
    `way ${number} radial "Pump ${number}" {\nlength ${10 + number * 4} m\ndead 2026-03-04 {\ninsulation 500 V L-N 200 MΩ ${rest}\n}\n}`;
  const found = (rests: readonly string[]) =>
    find("population/equal-readings", rests.map((rest, at) => circuit(at + 1, rest)).join("\n"), {
      stage: "dead-tested",
    });
  const same = "L-E 180 MΩ N-E 150 MΩ";
  expect(found([same, same, same, same, same])).toHaveLength(1);
  expect(found(["L-E 90 MΩ N-E 80 MΩ", same, same, same, same])).toHaveLength(1);
  expect(found(["L-E 90 MΩ N-E 80 MΩ", same, same, same, same])[0]?.message).toMatch(/^Ways 1, 2, 3, 4 and 5 /);
});
