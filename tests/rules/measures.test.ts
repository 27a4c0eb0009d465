/** What is not automatic disconnection is refused in one sentence, wherever it is written, and nothing of it half judged. */
import { describe, expect, it } from "vitest";
import { studyWay } from "../../server/circuit/way.ts";
import { installationsOf } from "../../server/model/installation.ts";
import { planDead } from "../../server/readings/plan-dead.ts";
import { planLive } from "../../server/readings/plan-live.ts";
import { fileOfText } from "../../server/workspace/loaded-file.ts";
import { findingsOf } from "../helpers/sample.ts";

const house = ({ way = "", board = "", supply = "earthing TT" }): string => `wayfile 1
installation "House" {
  standard BS 7671:2018+A2:2022
  stage design
  work new
  premises dwelling
  supply {
    ${supply}
    Ipf 0.9 kA
  }
  board A "Board" {
    fed-from supply
    ${board}
    way 1 radial "Sockets" {
      ${way}
      device BS EN 60898 B32 6 kA
      cable flat-twin line 4 mm² cpc 1.5 mm²
      route clipped method C
      length 200 m
      serves sockets
      Ib 30 A
    }
  }
}`;

const judged = /^(?:loop|rcd|drop|energy)\//;
const checks = (text: string) => findingsOf(text).map(({ check }) => check);
const refused = (text: string) => checks(text).filter((check) => check === "network/measure-not-judged");

describe.each(["separation", "selv", "pelv", "it", "dc"])("%s", (measure) => {
  it.each(["way", "board"])(
    "of a %s is refused in one sentence, and neither loop nor drop nor RCD is judged",
    (where) => {
      const text = house({ [where]: `protective-measure ${measure}` });
      expect(refused(text)).toHaveLength(1);
      expect(checks(text).filter((check) => judged.test(check))).toEqual([]);
      const place = installationsOf([fileOfText("a.ways", text)])[0]?.boards[0];
      const way = place?.board.ways[0];
      if (!place || !way) throw new Error("no way");
      const study = studyWay(way, place.context);
      expect([study.disconnection, study.disconnectionTime]).toEqual([undefined, undefined]);
    },
  );

  it("leaves the cable and its device judged", () => {
    const text = house({ way: `protective-measure ${measure}` }).replace("line 4 mm²", "line 2.5 mm²");
    expect(checks(text)).toContain("design/socket-radial-cable");
  });
});

describe("the supply", () => {
  it("without such a measure is judged", () => {
    expect(refused(house({}))).toEqual([]);
    expect(checks(house({})).filter((check) => judged.test(check))).toEqual([
      "rcd/missing-in-tt",
      "drop/over-limit",
      "rcd/missing-for-sockets",
    ]);
  });

  it.each([
    ["earthing IT", "loop/it-system-not-checked"],
    ["earthing TN-C\n    Ze 0.2 Ω", "network/combined-conductor"],
    ["earthing TN-S\n    U0 48 V", "network/voltage-not-judged"],
    ["earthing TN-S\n    U0 110 V", "network/voltage-not-judged"],
  ])("%s is refused in one sentence", (supply, check) => {
    expect(checks(house({ supply })).filter((one) => one === check)).toHaveLength(1);
  });

  it.each(["earthing IT", "earthing TN-S\n    U0 48 V"])("%s is not half judged", (supply) => {
    const half = checks(house({ supply })).filter((check) => /^(?:drop|energy)\/|^loop\/(?!it-system)/.test(check));
    expect(supply.includes("IT") ? half.filter((check) => check.startsWith("loop/")) : half).toEqual([]);
  });
});

describe("the tests of what is not disconnected", () => {
  const tests = (measure: string) =>
    house({
      way: `protective-measure ${measure}
      dead 2026-03-04 {
        insulation 500 V L-N 5 MΩ L-E 5 MΩ N-E 5 MΩ
        polarity ok
      }`,
    }).replace("stage design", "stage tested");
  const missing = (measure: string) =>
    checks(tests(measure)).filter((check) => /^(?:continuity|live|polarity)\//.test(check));

  it.each([
    ["selv", []],
    ["separation", []],
    ["pelv", []],
    ["dc", ["continuity/missing"]],
    ["it", ["continuity/missing", "live/not-tested"]],
  ])("of %s: missing are %j", (measure, expected) => expect(missing(measure)).toEqual(expected));

  it.each([
    ["selv", []],
    ["separation", []],
    ["it", ["R1+R2, the far point", "Zs, the far point"]],
  ])("of %s: planned are %j of a loop and its conductor", (measure, expected) => {
    const place = installationsOf([fileOfText("a.ways", tests(measure))])[0]?.boards[0];
    const way = place?.board.ways[0];
    if (!place || !way) throw new Error("no way");
    const study = studyWay(way, place.context);
    const names = [...planDead(study), ...planLive(study)].map(({ name }) => name);
    expect(names.filter((name) => /^(?:R1|Zs)/.test(name))).toEqual(expected);
  });

  it("asks extra-low voltage for 0.5 MΩ at 250 V, by what protects it as by what it serves", () => {
    const low = (measure: string) =>
      findingsOf(tests(measure).replaceAll("5 MΩ", "0.4 MΩ"))
        .filter(({ check }) => check === "insulation/below-minimum")
        .map(({ message }) => /minimum of \S+ MΩ/.exec(message)?.[0]);
    expect(low("selv")[0]).toBe("minimum of 0.5 MΩ");
    expect(low("separation")[0]).toBe("minimum of 1 MΩ");
  });
});
