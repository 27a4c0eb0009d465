/** Where the points of a circuit are, by the metres of its runs: sums that anybody can add up. */
import { describe, expect, it } from "vitest";
import type { WayStudy } from "../../server/circuit/way.ts";
import { editionDates } from "../../server/readings/edition-dates.ts";
import { r2BelowLoop, r2OffLength, r2Share } from "../../server/readings/r2.ts";
import { farthestFromSpur, spurPoints, unfusedSpurs } from "../../server/readings/spurs.ts";
import { installationOf, nodeOf, wayOf } from "../helpers/place.ts";
import { inSetting } from "../helpers/sample.ts";

const studied = (lines: string, kind = "radial"): WayStudy =>
  wayOf(
    nodeOf(installationOf(inSetting(`way 1 ${kind} "Sockets" {\n${lines}\n}`, { stage: "dead-tested" }).text), "A"),
    "1",
  );

describe("the runs of a circuit", () => {
  const of = (lines: string, kind?: string) => {
    const runs = studied(lines, kind).runs;
    return (
      runs && {
        places: Object.fromEntries([...runs.places].map(([name, { fromBoard }]) => [name, fromBoard])),
        main: [...runs.places.values()].flatMap(({ name, onMain }) => (onMain ? [name.value] : [])),
        spurs: Object.fromEntries(
          [...runs.places].flatMap(([name, { spur }]) => (spur ? [[name, [spur.from, spur.length, spur.depth]]] : [])),
        ),
        lengths: [runs.mainLength, runs.farthest, runs.total],
        closed: runs.closed,
        odd: [runs.detached.length, runs.twice.map(({ value }) => value)],
      }
    );
  };

  it("of a radial go on from the board, and branch where a run begins at a point", () => {
    expect(of("run A 9 m S1 8 m S2")).toEqual({
      places: { S1: 9, S2: 17 },
      main: ["S1", "S2"],
      spurs: {},
      lengths: [17, 17, 17],
      closed: false,
      odd: [0, []],
    });
    expect(of("run A 9 m S1 8 m S2\nrun S1 10 m X1 2 m X2\nrun X1 1 m Y1\nrun A 3 m Z1")).toEqual({
      places: { S1: 9, S2: 17, X1: 19, X2: 21, Y1: 20, Z1: 3 },
      main: ["S1", "S2"],
      spurs: { X1: ["S1", 10, 1], X2: ["S1", 12, 2], Y1: ["S1", 11, 2], Z1: ["A", 3, 1] },
      lengths: [17, 21, 33],
      closed: false,
      odd: [0, []],
    });
  });

  it("of a ring come back to the board, and its spurs go on from it", () => {
    expect(of("run A 8 m S1 9 m S2 7 m A\nrun S2 3 m X1 2 m X2", "ring")).toEqual({
      places: { S1: 8, S2: 17, X1: 20, X2: 22 },
      main: ["S1", "S2"],
      spurs: { X1: ["S2", 3, 1], X2: ["S2", 5, 2] },
      lengths: [24, 22, 29],
      closed: true,
      odd: [0, []],
    });
  });

  it("that begin nowhere, or come to a point again, are known as that", () => {
    expect(of("run A 8 m S1\nrun S9 3 m X1")?.odd).toEqual([1, []]);
    expect(of("run A 8 m S1 9 m S2 7 m A\nrun S1 4 m S2", "ring")?.odd).toEqual([0, ["S2"]]);
    expect(of("run A 8 m S1 9 m S1")?.odd).toEqual([0, ["S1"]]);
    expect(of("run A 8 m S1\nrun S1 4 m A")?.odd).toEqual([0, ["A"]]);
  });
});

describe("spurs", () => {
  const of = (lines: string) =>
    spurPoints(studied(`run A 8 m S1 9 m S2 7 m A\n${lines}`, "ring")).map(
      ({ place, from, fused, offSpur }) =>
        `${place.name.value} from ${from}${fused ? ", fused" : ""}${offSpur ? ", off a spur" : ""}`,
    );
  it.each([
    ["", []],
    ["run S1 3 m X1", ["X1 from S1"]],
    ["run S1 3 m X1 2 m X2", ["X1 from S1", "X2 from X1, off a spur"]],
    ["run S1 3 m X1\nrun X1 2 m X2", ["X1 from S1", "X2 from X1, off a spur"]],
    // A fuse at its beginning protects all that follows.
    ["run S1 3 m X1 2 m X2\nfused X1 13 A", ["X1 from S1, fused", "X2 from X1, fused"]],
    ["run S1 3 m X1 2 m X2 2 m X3\nfused X1 13 A", ["X1 from S1, fused", "X2 from X1, fused", "X3 from X2, fused"]],
    ["run S1 3 m X1 2 m X2\nfused X2 13 A", ["X1 from S1", "X2 from X1, fused, off a spur"]],
    // A fused point on the ring itself protects nothing behind it that leaves the ring there.
    ["run S1 3 m X1\nfused S1 13 A", ["X1 from S1"]],
    // What comes back to the ring, or to a point that is there, is no spur there.
    ["run S1 3 m X1 2 m S2", ["X1 from S1"]],
    ["run S1 3 m X1\nrun S2 3 m X1", ["X1 from S1"]],
  ])("of %j: %j", (lines, wanted) => expect(of(lines)).toEqual(wanted));

  it("without a fuse are counted, and are half the ring from the farthest point", () => {
    const study = studied("run A 8 m S1 9 m S2 7 m A\nrun S1 3 m X1\nrun S2 3 m X2\nfused X2 13 A", "ring");
    expect(unfusedSpurs(study).map(({ place }) => place.name.value)).toEqual(["X1"]);
    expect(unfusedSpurs(study).map((spur) => farthestFromSpur(study, spur))).toEqual([12]);
    const open = studied("run A 8 m S1\nrun S1 3 m X1");
    expect(spurPoints(open).map((spur) => farthestFromSpur(open, spur))).toEqual([undefined]);
  });
});

// 6/2.5 mm²: 3.08 and 7.41 mΩ/m (BS EN 60228), of 0.52 Ω together 0.367 Ω are R2; a quarter of the ratio either way is 0.027 Ω, and
// 0.05 Ω at the least (common practice).
describe("R2 as its part of R1+R2", () => {
  const cable = "cable flat-twin line 6 mm² cpc 2.5 mm²";
  const of = (readings: string, lines = cable, kind?: string) => {
    const found = r2Share(studied(`${lines}\ndead 2026-03-04 {\n${readings}\n}`, kind));
    return found && [found.expected && Number(found.expected.toFixed(4)), found.swapped];
  };
  const part = Number(((0.52 * 7.41) / 10.49).toFixed(4));

  it.each([
    ["R1+R2 0.52 Ω\nR2 0.37 Ω", cable, [part, false]],
    // 0.52 − 0.367 Ω is what the line has: they changed places.
    ["R1+R2 0.52 Ω\nR2 0.15 Ω", cable, [part, true]],
    ["R1+R2 0.52 Ω\nR2 0.25 Ω", cable, [part, false]],
    ["R1+R2 0.52 Ω\nR2 0.15 Ω", "cable multicore line 6 mm² cpc 6 mm² cores 3", [0.26, false]],
    ["R1+R2 0.52 Ω\nR2 0.15 Ω", "", [undefined, false]],
    [
      "R1+R2 0.52 Ω\nR2 0.15 Ω",
      "cable armoured 90 °C line 6 mm² cpc 2.5 mm² cpc-by armour cores 3",
      [undefined, false],
    ],
    ["R1+R2 0.52 Ω", cable, undefined],
    ["R2 0.15 Ω", cable, undefined],
    ["R1+R2 >0.52 Ω\nR2 0.15 Ω", cable, undefined],
    ["R1+R2 0.52 Ω\nR2 <0.15 Ω", cable, undefined],
  ])("of %j, %j: %j", (readings, lines, wanted) => expect(of(readings, lines)).toEqual(wanted));

  // Of 3 Ω a quarter of the ratio is 0.25 × 2.119 × 0.294, 0.156 Ω; of 0.52 Ω two digits of each meter, 0.045 Ω, are more.
  it.each([
    ["R1+R2 3.00 Ω\nR2 0.72 Ω", false, 0.1556],
    ["R1+R2 3.00 Ω\nR2 0.73 Ω", true, 0.1556],
    ["R1+R2 3.00 Ω\nR2 1.03 Ω", true, 0.1556],
    ["R1+R2 3.00 Ω\nR2 1.04 Ω", false, 0.1556],
    ["R1+R2 0.52 Ω\nR2 0.11 Ω", true, 0.045],
    ["R1+R2 0.52 Ω\nR2 0.10 Ω", false, 0.045],
  ])("of %j changed places: %s, within %d Ω", (readings, swapped, room) => {
    const found = r2Share(studied(`${cable}\ndead 2026-03-04 {\n${readings}\n}`));
    expect(found?.swapped).toBe(swapped);
    expect(found?.room).toBeCloseTo(room, 4);
  });
  it("of a cpc larger than its line is the smaller part, and never interchanged", () => {
    expect(of("R1+R2 0.52 Ω\nR2 0.32 Ω", "cable singles line 2.5 mm² cpc 4 mm²")).toEqual([
      Number(((0.52 * 4.61) / 12.02).toFixed(4)),
      false,
    ]);
  });

  // Zs of 0.62 Ω less 0.30 Ω leaves 0.32 Ω, of which 0.226 Ω are R2; loops agree within 0.1 Ω (common practice).
  const below = (R2: string, lines = cable, live = "Zs 0.62 Ω", more = "") => {
    const text = inSetting(
      `way 1 radial "W" {\n${lines}\n${more}\ndead 2026-03-04 {\nR2 ${R2}\n}\nlive 2026-03-05 {\n${live}\n}\n}`,
      { stage: "tested" },
    ).text;
    const found = r2BelowLoop(wayOf(nodeOf(installationOf(text), "A"), "1"));
    return found && Number(found.expected.value.toFixed(4));
  };
  const left = Number(((0.32 * 7.41) / 10.49).toFixed(4));
  it.each([
    ["0.12 Ω", cable, "Zs 0.62 Ω", "", left],
    ["0.13 Ω", cable, "Zs 0.62 Ω", "", undefined],
    ["<0.12 Ω", cable, "Zs 0.62 Ω", "", undefined],
    ["0.12 Ω", cable, "Zs <0.62 Ω", "", undefined],
    ["0.12 Ω", cable, "polarity ok", "", undefined],
    ["0.12 Ω", "", "Zs 0.62 Ω", "", undefined],
    ["0.12 Ω", "cable singles line 6 mm² cpc-by conduit", "Zs 0.62 Ω", "", undefined],
    ["0.12 Ω", cable, "Zs 0.62 Ω", 'parallel-path "Pipes"', undefined],
    // 60 m of 2.5 mm² are 0.44 Ω: that R2 is off is reported of its length.
    ["0.12 Ω", cable, "Zs 0.62 Ω", "length 60 m", undefined],
  ])("of %s beside %j, %j, %j leaves out %s Ω", (R2, lines, live, more, wanted) => {
    expect(below(R2, lines, live, more)).toBe(wanted);
  });

  it("is of radials", () => expect(of("R1+R2 0.52 Ω\nR2 0.15 Ω", cable, "ring")).toBeUndefined());

  // 20 m of 2.5 mm² are 0.148 Ω: 0.25 Ω is a tenth of an ohm more, and too much from there on.
  it.each([
    ["0.24 Ω", "length 20 m\n", false],
    ["0.26 Ω", "length 20 m\n", true],
    ["0.26 Ω", "", false],
  ])("of %s, with %j, is far from its length: %s", (R2, length, wanted) => {
    expect(r2OffLength(studied(`${cable}\n${length}dead 2026-03-04 {\nR2 ${R2}\n}`))).toBe(wanted);
  });
});

// Amendment 2 of 2018 took the place of the edition before it on 28 March 2022.
describe("the days an edition is judged by", () => {
  const of = (lines: string, { head = "", standard = "BS 7671:2018" } = {}) => {
    const installation = installationOf(
      `wayfile 1\ninstallation "Works" {\nstandard ${standard}\n${head}\nboard A "Main" {\nfed-from supply\n${lines}\n}\n}`,
    );
    const { edition } = installation;
    if (!edition) throw new Error("no edition");
    const { designed, supersededBy, lastTest } = editionDates(installation, edition);
    return [designed, supersededBy?.id, lastTest];
  };
  it("are the first design and the last test", () => {
    expect(of("")).toEqual([undefined, undefined, undefined]);
    expect(
      of('way 1 radial "W" {\ndesigned by "K.A." 2020-05-01\ndead 2020-06-02 {\n}\n}\nlive 2020-06-01 {\n}'),
    ).toEqual(["2020-05-01", undefined, "2020-06-02"]);
    expect(
      of(
        'way 1 radial "W" {\ndesigned by "K.A." 2020-05-01\n}\nway 2 radial "V" {\ndesigned by "K.A." 2020-04-01\n}',
      )[0],
    ).toBe("2020-04-01");
  });

  it("name the edition that had taken its place, and of old work none", () => {
    const designed = 'designed by "K.A." 2025-05-01';
    const way = `way 1 radial "W" {\n${designed}\n}`;
    expect(of(way)[1]).toMatch(/^BS 7671:2018\+A2/);
    // Six months are what a change is allowed (common practice): of Amendment 2, 28 September 2022.
    const by = (day: string, standard?: string) =>
      of(`way 1 radial "W" {\ndesigned by "K.A." ${day}\n}`, standard === undefined ? {} : { standard })[1];
    expect(by("2022-09-27")).toBeUndefined();
    expect(by("2022-09-28")).toBe("BS 7671:2018+A2:2022");
    expect(by("2024-07-30")).toBe("BS 7671:2018+A2:2022");
    expect(by("2024-07-31")).toBe("BS 7671:2018+A2:2022+A3:2024");
    // Amendment 1 of 2020 asks for nothing else; Amendment 3 of the 17th Edition brought in Cmin.
    expect(by("2021-05-01")).toBeUndefined();
    expect(by("2015-12-31", "BS 7671:2008+A1:2011")).toBeUndefined();
    expect(by("2016-01-01", "BS 7671:2008+A1:2011")).toBe("BS 7671:2008+A3:2015");
    expect(of(way, { head: "work existing" })).toEqual([undefined, undefined, undefined]);
  });
});
