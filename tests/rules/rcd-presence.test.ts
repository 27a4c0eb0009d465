import { describe, expect, it } from "vitest";
import type { Setting } from "../../server/rules/frame/rule.ts";
import { fixed, foundBy } from "../helpers/fixing.ts";
import { findingsOf, inSetting } from "../helpers/sample.ts";

const presence = /^rcd\/(missing|sensitivity|delayed|type|no-sel|one-way|charger|afdd)/;
const checksOf = (way: string, setting: Setting = {}) =>
  findingsOf(inSetting(way, setting).text)
    .filter(({ check }) => presence.test(check))
    .map(({ check, severity }) => `${check} ${severity}`);

const plain = (serves: string, rating: string, more = "") => `way 1 radial "Circuit" {
  device  BS EN 60898 ${rating} 6 kA
  serves  ${serves}
  ${more}
}`;

describe("where an RCD is needed depends on the edition", () => {
  it.each([
    ["BS 7671:2001", "sockets", "B32", []],
    ["BS 7671:2008", "sockets", "B32", []],
    ["BS 7671:2008", "sockets", "B20", ["rcd/missing-for-sockets error"]],
    ["BS 7671:2018", "sockets", "B32", ["rcd/missing-for-sockets error"]],
    ["BS 7671:2018+A2:2022", "sockets", "B40", []],
    // Nobody puts lights on the circuit of a large socket; a motor may be.
    ["BS 7671:2018+A2:2022", "sockets lighting", "B40", ["rcd/missing-for-sockets error"]],
    ["BS 7671:2018+A2:2022", "sockets water-heater", "B40", ["rcd/missing-for-sockets error"]],
    ["BS 7671:2018+A2:2022", "sockets motor", "B40", []],
    ["BS 7671:2001", "outdoor-sockets", "B32", ["rcd/missing-outdoors error"]],
  ])("%s: %s on %s", (standard, serves, rating, expected) => {
    expect(checksOf(plain(serves, rating), { standard })).toEqual(expected);
  });

  it("and for lights on the premises", () => {
    const home: Setting = { premises: "dwelling" };
    expect(checksOf(plain("lighting", "B6"), home)).toEqual(["rcd/missing-for-lighting error"]);
    expect(checksOf(plain("lighting", "B6"), { ...home, standard: "BS 7671:2008" })).toEqual([]);
    expect(checksOf(plain("lighting", "B6"))).toEqual([]);
  });
});

// An RCD may stand in the part of the way up that cannot be followed; a board that names none is at the origin.
it.each([
  ["fed-from supply", ["rcd/missing-for-sockets error"]],
  ["", ["rcd/missing-for-sockets error"]],
  ["fed-from Z", []],
  ["fed-from", []],
])("behind a board with %j", (board, expected) => {
  expect(checksOf(plain("sockets", "B32"), { board, standard: "BS 7671:2018+A2:2022" })).toEqual(expected);
});

describe("old work", () => {
  it("is told of the rule and not condemned by it", () => {
    const [finding] = foundBy(
      "rcd/missing-for-sockets",
      inSetting(plain("sockets", "B32"), { work: "existing", standard: "BS 7671:2018+A2:2022" }).text,
    );
    expect(finding?.severity).toBe("information");
    expect(finding?.message).toContain("later than this work");
  });
});

describe("what excuses a circuit", () => {
  it("a place for skilled persons", () => {
    expect(checksOf(plain("sockets", "B16", "place skilled-only"))).toEqual([]);
  });

  it("earthed metal round a shallow cable", () => {
    const route = "route wall method 102 depth 20 mm";
    const flat = `cable flat-twin line 2.5 mm² cpc 1.5 mm²\n  ${route}`;
    const armoured = `cable armoured line 2.5 mm² cpc-by armour\n  ${route}`;
    expect(checksOf(plain("heating", "B16", flat))).toEqual(["rcd/missing-for-concealed error"]);
    expect(checksOf(plain("heating", "B16", armoured))).toEqual([]);
  });

  it("an RCD upstream of the board", () => {
    expect(
      checksOf(plain("sockets", "B16"), { board: "fed-from supply\nmain-switch BS EN 61008 63 A 30 mA type A" }),
    ).toEqual([]);
  });

  it("a departure that names the regulation", () => {
    const way = plain("sockets", "B16", 'departure 411.3.3 "Fridge store, risk assessment kept on site"');
    expect(checksOf(way)).toEqual([]);
  });
});

describe("the fixes", () => {
  it("make the breaker an RCBO", () => {
    const text = fixed("rcd/missing-for-sockets", inSetting(plain("sockets", "B32")).text);
    expect(text).toContain("BS EN 61009 B32 6 kA 30 mA type A");
    expect(foundBy("rcd/missing-for-sockets", text)).toEqual([]);
  });

  it("or put it behind the board's RCD", () => {
    const board = "fed-from supply\nrcd east BS EN 61008 63 A 30 mA type A";
    const text = fixed("rcd/missing-for-sockets", inSetting(plain("sockets", "B32"), { board }).text);
    expect(text).toContain("behind east");
    expect(foundBy("rcd/missing-for-sockets", text)).toEqual([]);
  });
});

describe("an RCD that several ways stand behind", () => {
  const board = "fed-from supply\nrcd east BS EN 61008 63 A 30 mA type AC";
  const ways = ["sockets", "lighting", "cooker"]
    .map((use, index) => `way ${index + 1} radial "W" {\n device BS EN 60898 B16 6 kA\n behind east\n serves ${use}\n}`)
    .join("\n");

  it("is spoken of once", () => {
    expect(checksOf(ways, { board })).toEqual(["rcd/type-unsuitable error"]);
  });

  it("is no matter for a shower, which has no direct component", () => {
    const shower = `way 1 radial "Shower" {\n device BS EN 60898 B40 6 kA\n behind east\n serves shower\n place bathroom\n}`;
    expect(checksOf(shower, { board })).toEqual([]);
  });
});

describe("a half-typed RCD", () => {
  it("is not taken for a missing one", () => {
    const typed = inSetting(
      `way 1 radial "W" {\n device BS EN 60898 B16 6 kA\n rcd BS EN 61008\n serves sockets\n}`,
    ).text;
    const found = findingsOf(typed).map(({ check }) => check);
    expect(found).not.toContain("rcd/missing-for-sockets");
    expect(found).toContain("language/missing-argument");
  });

  it("nor one whose name is not defined yet", () => {
    const way = plain("sockets", "B16", "behind west");
    expect(checksOf(way)).toEqual([]);
  });
});
