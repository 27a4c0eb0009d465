import { describe, expect, it } from "vitest";
import { find, marked } from "../helpers/find.ts";

const tested = { stage: "tested" } as const;
const ways = (readings: readonly string[], length = (index: number) => 10 + 5 * index): string =>
  readings
    .map(
      (lines, index) => `way ${index + 1} radial "Bench ${index + 1}" {
  device BS EN 60898 B32 6 kA
  cable singles line 2.5 mm² cpc 2.5 mm²
  length ${length(index)} m
  ${lines}
}`,
    )
    .join("\n");
const dead = (lines: string): string => `dead 2026-03-04 with M1 {\n    ${lines}\n  }`;
const live = (lines: string): string => `live 2026-03-05 with M1 {\n    ${lines}\n  }`;
const four = (lines: string): readonly string[] => [lines, lines, lines, lines];

describe("figures that repeat down a board", () => {
  const equal = (text: string) => find("population/equal-readings", text, tested);

  it("loop impedance, R1+R2 and insulation, each by itself", () => {
    expect(equal(ways(four(live("Zs 0.62 Ω"))))).toHaveLength(1);
    expect(equal(ways(four(dead("R1+R2 0.32 Ω"))))).toHaveLength(1);
    expect(equal(ways(four(dead("insulation 500 V L-E 310 MΩ"))))).toHaveLength(1);
  });

  // Whatever a schedule has a word for: a column is copied whether it is that of earth or not.
  it.each([
    ["R2", dead("R2 0.26 Ω")],
    ["r2 end to end", dead("ends r1 0.31 Ω rn 0.32 Ω r2 0.52 Ω")],
    ["insulation L-N", dead("insulation 500 V L-N 310 MΩ L-E >999 MΩ")],
    ["Zs L2", live("Zs 0.62 Ω L1 >0.50 Ω L2 0.62 Ω")],
  ])("%s as well", (_, test) => {
    expect(equal(ways(four(test)))).toHaveLength(1);
    expect(equal(ways(four(test).slice(1)))).toEqual([]);
    expect(equal(ways(four(test), () => 20))).toEqual([]);
  });

  it("one copied line is asked about once, and the column beside it that differs not at all", () => {
    const [found, ...more] = equal(ways(four(dead("insulation 500 V L-N 310 MΩ L-E 310 MΩ N-E 310 MΩ"))));
    expect([found?.message, more]).toEqual([expect.stringContaining("insulation L-N 310 MΩ"), []]);
    const apart = ["301", "302", "303", "304"].map((L) => dead(`insulation 500 V L-N ${L} MΩ L-E 310 MΩ`));
    expect(equal(ways(apart)).map(({ message }) => message)).toEqual([
      expect.stringContaining("insulation L-E 310 MΩ"),
    ]);
  });

  // Points of one circuit and fault currents in steps of 0.1 kA say nothing about lengths.
  it("not the fault current, a point or a time", () => {
    expect(equal(ways(four(live("PEFC 0.3 kA"))))).toEqual([]);
    expect(equal(ways(four(dead("at S1 L-N 0.31 Ω L-E 0.31 Ω"))))).toEqual([]);
    expect(equal(ways(four(live("rcd 30 mA 1x 24.1 ms"))))).toEqual([]);
  });

  it("not off scale, not three, not circuits of one length, not figures said to be calculated", () => {
    expect(equal(ways(four(dead("insulation 500 V L-E >999 MΩ"))))).toEqual([]);
    expect(equal(ways(four(live("Zs 0.62 Ω")).slice(1)))).toEqual([]);
    expect(equal(ways(four(live("Zs 0.62 Ω")), () => 20))).toEqual([]);
    expect(equal(ways(four(live("Zs 0.62 Ω")), (index) => 20 + index))).toEqual([]);
    expect(equal(ways(four(live("Zs calculated 0.62 Ω"))))).toEqual([]);
  });
});

describe("sums that come out to the last digit", () => {
  const pair = (R: string, Z: string): string => `${dead(`R1+R2 ${R} Ω`)}\n  ${live(`Zs ${Z} Ω`)}`;
  const exact = (...pairs: string[]) => find("population/worked-backwards", ways(pairs), tested);

  const sums = ["0.20", "0.31", "0.44", "0.25", "0.37", "0.52", "0.29", "0.61", "0.33"].map((R) =>
    pair(R, (Number(R) + 0.3).toFixed(2)),
  );

  it("on every one of nine circuits", () => {
    expect(exact(...sums)).toHaveLength(1);
  });

  // 0.3 Ω of a stated supply says nothing of hundredths: sums are looked at to the finest digit of the three.
  it("not where the supply alone is stated to a tenth and the sums differ in the last digit", () => {
    const coarse = { ...tested, supply: "earthing TN-S\nZe 0.3 Ω" };
    const off = sums.map((text, index) =>
      text.replace(/Zs ([\d.]+)/, (_, Z: string) => `Zs ${(Number(Z) + (index % 2 === 0 ? 0.01 : 0.02)).toFixed(2)}`),
    );
    expect(find("population/worked-backwards", ways(sums), coarse)).toHaveLength(1);
    expect(find("population/worked-backwards", ways(off), coarse)).toEqual([]);
  });

  it("not where one differs, where few would by chance, or where it is said to be calculated", () => {
    expect(exact(...sums.slice(1), pair("0.20", "0.51"))).toEqual([]);
    expect(exact(...sums.slice(1))).toEqual([]);
    expect(exact(...sums.map((text) => text.replace("Zs ", "Zs calculated ")))).toEqual([]);
  });
});

describe("results just inside their limit", () => {
  const near = (...readings: string[]) =>
    find("population/all-near-limit", ways(readings.map((Z) => live(`Zs ${Z} Ω`))), tested);

  it("all of them, and none above", () => {
    expect(near("1.05", "1.07", "1.06")).toHaveLength(1);
    expect(near("1.05", "1.07", "0.90")).toEqual([]);
    expect(near("1.05", "1.07", "1.20")).toEqual([]);
    expect(near("1.05", "1.07")).toEqual([]);
  });
});

describe("demand", () => {
  const demand = (value: string, cutout = "cutout BS 88-3 80 A") =>
    find("population/demand-copied", ways(["", ""]), { supply: `earthing TN-S\nZe 0.3 Ω\n${cutout}\ndemand ${value}` });

  it("of the cut-out, or the sum of all devices", () => {
    expect(demand("80 A")[0]?.message).toContain("cut-out");
    expect(demand("64 A")[0]?.message).toContain("sum of all device ratings");
    expect(demand("43 A")).toEqual([]);
  });
});

describe("one circuit on two days", () => {
  const twice = (word: "dead" | "live", before: string, after: string): string =>
    `way 1 radial "Yard" {\n ${word} 2021-03-04 {\n ${before}\n }\n ${word} 2026-03-04 {\n ${after}\n }\n}`;

  it.each([
    ["Zs 0.40 Ω", "Zs 0.50 Ω", 0],
    ["Zs 0.40 Ω", "Zs 0.51 Ω", 1],
    ["Zs 1.00 Ω", "Zs 1.20 Ω", 0],
    ["Zs 1.00 Ω", "Zs 1.21 Ω", 1],
    ["Zs 1.00 Ω", "Zs 0.40 Ω", 0],
    ['Zs from-record "2016 report" 0.40 Ω', "Zs 0.80 Ω", 0],
  ])("%s, then %s", (before, after, count) => {
    expect(find("drift/resistance-risen", twice("live", before, after), tested)).toHaveLength(count);
  });

  it.each([
    ["L-E 500 MΩ", "L-E 50 MΩ", 0],
    ["L-E 500 MΩ", "L-E 49 MΩ", 1],
    ["L-E >999 MΩ", "L-E 99 MΩ", 1],
    ["L-E >999 MΩ", "L-E >200 MΩ", 0],
    ["L-E >999 MΩ", "N-E 12 MΩ", 0],
  ])("insulation %s, then %s", (before, after, count) => {
    const text = twice("dead", `insulation 500 V ${before}`, `insulation 500 V ${after}`);
    expect(find("drift/insulation-fallen", text, tested)).toHaveLength(count);
  });

  it("is compared with one at a higher test voltage, and not with one at a lower", () => {
    const fell = (then: number, now: number) => {
      const text = twice("dead", `insulation ${then} V L-E >999 MΩ`, `insulation ${now} V L-E 12 MΩ`);
      return find("drift/insulation-fallen", text, tested).map(marked);
    };
    expect(fell(500, 250)).toEqual(["12 MΩ"]);
    expect(fell(250, 500)).toEqual([]);
  });

  it("says what the retest left out", () => {
    const text = twice("live", "Zs 0.62 Ω\n rcd 30 mA 1x 24 ms", "rcd 30 mA 1x 25 ms");
    expect(find("drift/retest-incomplete", text, tested)[0]?.message).toContain("Zs was not read again");
  });

  it("two blocks of one day count in the order of the file", () => {
    const text = `way 1 radial "Yard" {\n live 2026-03-04 {\n Zs 0.40 Ω\n }\n live 2026-03-04 {\n Zs 0.80 Ω\n }\n}`;
    expect(find("drift/resistance-risen", text, tested).map(marked)).toEqual(["Zs 0.80 Ω"]);
  });
});

describe("instruments", () => {
  const one = (lines: string) => ({ ...tested, before: `instrument M1 "Tester" {\n${lines}\n}` });
  const text = `way 1 radial "Yard" {\n  ${live("Zs 0.62 Ω")}\n}`;

  it("a test on the last day of the calibration is in time", () => {
    expect(find("instrument/calibration-lapsed", text, one("due 2026-03-05"))).toEqual([]);
    expect(find("instrument/calibration-lapsed", text, one("due 2026-03-04"))).toHaveLength(1);
    expect(find("instrument/test-before-calibration", text, one("calibrated 2026-03-05"))).toEqual([]);
  });

  it("the supply's figures have an instrument too", () => {
    const setting = { ...one("due 2026-03-01"), supply: "earthing TN-S\nZe 0.3 Ω\nmeasured 2026-03-05 with M1" };
    expect(find("instrument/calibration-lapsed", "way 1 spare", setting).map(marked)).toEqual(["M1"]);
  });

  it("one that nobody used is not asked for its papers", () => {
    expect(find("instrument/no-serial", "way 1 spare", one("due 2026-11-03"))).toEqual([]);
    expect(find("instrument/no-serial", text, one("due 2026-11-03"))).toHaveLength(1);
  });
});
