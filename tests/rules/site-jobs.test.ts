/** What whole jobs showed that a sample of one circuit does not: earths that were left joined, tests of two visits, codes. */
import { describe, expect, it } from "vitest";
import { find } from "../helpers/find.ts";
import { findingsOf } from "../helpers/sample.ts";

const island = (Zs: string, board = "earthing TT\nelectrode rod 240 Ω", earthing = "TN-C-S", path = "") => `wayfile 1
installation "House" {
  standard BS 7671:2018+A2:2022
  work new
  supply {
    earthing ${earthing}
    Ze 0.22 Ω
    ${earthing === "TT" ? "electrode rod 240 Ω" : ""}
  }
  board W "Workshop" {
    fed-from supply
    ${board}
    way 1 radial "Lathe" {
      device BS EN 61009 B16 6 kA 30 mA type A
      ${path}
      live 2026-03-05 {
        Zs ${Zs}
      }
    }
  }
}`;

describe("a building with an electrode of its own", () => {
  const id = "loop/zs-below-electrode";
  const severities = (text: string) => find(id, text).map(({ severity }) => severity);
  it.each([
    ["0.74 Ω", ["warning"]],
    ["119 Ω", ["warning"]],
    // The ground was wetter on that day.
    ["130 Ω", []],
    ["241 Ω", []],
  ])("that reads %s through 240 Ω: %j", (Zs, expected) => expect(severities(island(Zs))).toEqual(expected));

  it("of a TT supply may have better earth by its pipes", () =>
    expect(severities(island("40 Ω", "", "TT"))).toEqual([]));
  it("with metal in parallel that is recorded is left alone", () =>
    expect(
      severities(island("40 Ω", "earthing TT\nelectrode rod 240 Ω", "TN-C-S", 'parallel-path "Steel frame"')),
    ).toEqual([]));
});

const supplied = (supply: string) => `wayfile 1
installation "Trailer" {
  standard BS 7671:2018+A2:2022
  work new
  supply {
    ${supply}
  }
}`;

it("a generator has no impedance that a distributor declares", () => {
  const id = "loop/ze-above-declared";
  expect(find(id, supplied("earthing TN-S\nsource private\nZe 1.9 Ω"))).toEqual([]);
  expect(find(id, supplied("earthing TN-S\nZe 1.9 Ω"))).toHaveLength(1);
  expect(find(id, supplied("earthing TN-S\nsource private\nZe >20 Ω"))).toHaveLength(1);
});

it("the loop of a TT supply may be left out where its electrode was read", () => {
  const id = "record/limitation-on-new";
  const without = 'earthing TT\nZe LIM "Electrode read instead"';
  expect(find(id, supplied(without))).toHaveLength(1);
  expect(find(id, supplied(`${without}\nelectrode rod 35 Ω`))).toEqual([]);
});

const twice = (then: string, now: string) => `wayfile 1
installation "School" {
  standard BS 7671:2018+A2:2022
  work existing
  board E "East" {
    fed-from supply
    way 1 radial "Lights" {
      device BS EN 60898 B10 6 kA
      serves lighting
      dead 2021-04-12 {
        insulation ${then}
      }
      dead 2026-04-13 {
        insulation ${now}
      }
    }
  }
}`;

it.each([
  ["500 V L-E >999 MΩ", "250 V L-E 1.4 MΩ", 1],
  ["500 V L-E >999 MΩ", "500 V L-E 1.4 MΩ", 1],
  // A higher voltage may show what the lower one did not, and nothing has fallen.
  ["250 V L-E >999 MΩ", "500 V L-E 1.4 MΩ", 0],
])("insulation read at another voltage, %s then %s: %i", (then, now, count) =>
  expect(find("drift/insulation-fallen", twice(then, now))).toHaveLength(count),
);

const coded = (lines: string) => `wayfile 1
installation "School" {
  standard BS 7671:2018+A2:2022
  work existing
  inspection periodic 2026-04-13 {
    ${lines}
  }
  board E "East" {
    fed-from supply
    way 1 ring "Sockets" {
      device BS EN 60898 B32 6 kA
      cable flat-twin line 2.5 mm² cpc 1.5 mm²
      serves sockets
      dead 2026-04-13 {
        ends r1 0.52 Ω rn 0.53 Ω r2 >99 Ω
      }
    }
  }
}`;

it.each([
  ['observation 1 C3 "Ring cpc open" board E way 1', 1],
  ['observation 1 C2 "Ring cpc open" board E way 1', 0],
  ['observation 1 C3 "Ring cpc open" board E way 1 rule ring/open-conductor', 0],
  ['observation 1 C3 "Worn plates" board E way 1\nobservation 2 C2 "Ring cpc open" board E way 1', 0],
  ['observation 1 C3 "Ring cpc open" board E way 1 remedied 2026-04-20', 0],
])("an observation lighter than what is found there: %s: %i", (lines, count) =>
  expect(findingsOf(coded(lines)).filter(({ check }) => check === "inspection/code-lighter")).toHaveLength(count),
);

const flats = (title: string, board = "Panel", use = "lighting") => `wayfile 1
installation "Flats" {
  standard BS 7671:2018+A2:2022
  work new
  premises tall-residential
  board A "${board}" {
    fed-from supply
    way 1 radial "${title}" {
      device BS EN 60898 B32 6 kA
      serves ${use}
      load 11 kW
    }
  }
}`;

it("the lights of a common stair are in no dwelling, and a landing may be in one", () => {
  const severities = (...text: Parameters<typeof flats>) =>
    find("rcd/missing-for-lighting", flats(...text)).map(({ severity }) => severity);
  expect(severities("Stair lights", "Landlord's panel")).toEqual(["warning"]);
  expect(severities("Communal lighting")).toEqual(["warning"]);
  expect(severities("Landing lights")).toEqual(["error"]);
});

it("a cooker in a flat of a tall building draws what a household's does", () => {
  const over = (use: string) => find("design/load-over-device", flats("Kitchen", "Flat 3", use)).length;
  expect(over("cooker")).toBe(0);
  expect(over("heating")).toBe(1);
});

it("a device of three poles on a circuit of one line is asked about, and a double-pole one is not", () => {
  const found = (poles: string) =>
    find(
      "design/named-three-phase",
      `wayfile 1
installation "Yard" {
  standard BS 7671:2018+A2:2022
  work new
  supply {
    earthing TN-S
    phases three
  }
  board A "Main" {
    fed-from supply
    way 1 radial "Charger" {
      device BS EN 61009 C32 ${poles} 30 mA type B 10 kA
      load 22 kW
    }
  }
}`,
    ).map(({ message }) => message);
  expect(found("four-pole")).toEqual([
    "A four-pole device opens three lines, but way 1 is judged as having one: write phase three, or the poles on the device.",
  ]);
  expect(found("double-pole")).toEqual([]);
});

describe("a loop through the electrode of a TT supply", () => {
  const id = "loop/zs-below-board";
  const pontoon = (readings: readonly string[], { Zdb = "", path = "" } = {}) => `wayfile 1
installation "Pontoon" {
  standard BS 7671:2018+A2:2022
  supply {
    earthing TT
    Ze 240 Ω
    electrode rod 240 Ω
  }
  board P "Pedestal" {
    fed-from supply
    ${Zdb}
    ${readings
      .map(
        (Zs, index) => `way ${index + 1} radial "Berth ${index + 1}" {
      ${path}
      live 2026-03-05 {
        Zs ${Zs}
      }
    }`,
      )
      .join("\n    ")}
  }
}`;
  const found = (...asked: Parameters<typeof pontoon>) =>
    find(id, pontoon(...asked)).map(({ message }) => message.split(",")[0]);

  it("that is a tenth of the board's is asked about", () =>
    expect(found(["21.4 Ω", "2.14 Ω"], { Zdb: "Zdb 21.3 Ω" })).toEqual(["Zs 2.14 Ω is far below the 21.3 Ω of Zdb"]));
  it("that is a tenth of the other circuits' is asked about", () =>
    expect(found(["21.4 Ω", "2.14 Ω", "21.6 Ω"])).toEqual(["Zs 2.14 Ω is far below the 21.4 Ω of way 1"]));
  it("is no fault where all have it: bonded pipes earth better than the rod", () =>
    expect(found(["21.4 Ω", "21.5 Ω", "21.6 Ω"])).toEqual([]));
  it("of two circuits says nothing: either could be wrong", () => expect(found(["21.4 Ω", "2.14 Ω"])).toEqual([]));
  it("below the board's in all circuits is a slip of the board's", () =>
    expect(found(["21.4 Ω", "21.5 Ω"], { Zdb: "Zdb 213 Ω" })).toEqual([
      "All 2 Zs readings are below Zdb 213 Ω (highest 21.5 Ω): check Zdb and its decimal point.",
    ]));
  it("with metal in parallel that is recorded is left alone", () =>
    expect(found(["21.4 Ω", "2.14 Ω"], { Zdb: "Zdb 21.3 Ω", path: 'parallel-path "Steel piles"' })).toEqual([]));
});
