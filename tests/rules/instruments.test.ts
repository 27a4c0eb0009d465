import { describe, expect, it } from "vitest";
import { hover } from "../../server/features/hover.ts";
import { atCursor, loftWith } from "../helpers/cursor.ts";
import { generate } from "../helpers/generate.ts";
import { findingsOf, inSetting } from "../helpers/sample.ts";

const meter = (lines: string) =>
  `instrument M1 "Multifunction tester" {\n  serial "7"\n  due 2027-01-01\n  ${lines}\n}`;
const stated = meter("accuracy loop 3 % 3 digits\naccuracy insulation 5 %\naccuracy rcd-time 2 % 2 digits");
const silent = meter("tests AC A");

function said(lines: string, before: string, ...checks: string[]) {
  const all = findingsOf(inSetting(lines, { stage: "tested", before }).text);
  expect(all.filter(({ check }) => check.startsWith("language/"))).toEqual([]);
  return all.filter(({ check }) => checks.includes(check));
}

const heater = (Zs: string) => `way 1 radial "Heater" {
  device BS EN 60898 B32 6 kA
  live 2026-03-05 with M1 {
    Zs ${Zs}
  }
}`;

const atPoint = (Zs: string) => `way 1 radial "Bench" {
  device BS EN 60898 B32 6 kA
  run A 9 m S1 8 m S2
  live 2026-03-05 with M1 {
    at S2 Zs ${Zs}
  }
}`;

const insulated = (reading: string, voltage = "500 V") => `way 1 radial "Heater" {
  device BS EN 60898 B32 6 kA
  dead 2026-03-05 with M1 {
    insulation ${voltage} L-N 310 MΩ L-E ${reading} N-E 310 MΩ
  }
}`;

const tripping = (time: string) => `way 1 radial "Bench" {
  device BS EN 61009 B20 6 kA 30 mA type A
  live 2026-03-05 with M1 {
    rcd 30 mA 1x ${time}
  }
}`;

describe("a reading that fails by less than its uncertainty", () => {
  it.each([
    ["loop/zs-over-limit", "error", heater("1.40 Ω"), heater("1.60 Ω"), "±0.072 Ω"],
    ["loop/zs-over-cold-limit", "warning", heater("1.12 Ω"), heater("1.30 Ω"), "±0.064 Ω"],
    ["loop/point-over-limit", "error", atPoint("1.40 Ω"), atPoint("1.60 Ω"), "±0.072 Ω"],
    ["insulation/below-minimum", "error", insulated("0.98 MΩ"), insulated("0.60 MΩ"), "±0.049 MΩ"],
    ["rcd/time-over-limit", "error", tripping("304 ms"), tripping("342 ms"), "±8.1 ms"],
  ])("%s stays as grave, and says what the meter may be out by", (check, severity, near, far, uncertainty) => {
    const [plain] = said(near, silent, check);
    const [told] = said(near, stated, check);
    const [clear] = said(far, stated, check);
    expect(plain?.severity).toBe(severity);
    expect(told?.severity).toBe(severity);
    expect(clear?.severity).toBe(severity);
    expect(plain?.message).not.toContain("uncertainty");
    expect(clear?.message).not.toContain("uncertainty");
    expect(told?.message).toContain(`by less than the uncertainty of M1 (${uncertainty})`);
  });

  it("so does a loop that the RCD must clear", () => {
    const pump = `way 1 radial "Pump" {
  device BS EN 61009 B16 6 kA 300 mA type A
  live 2026-03-05 with M1 {
    Zs 170 Ω
  }
}`;
    const { text } = inSetting(pump, { stage: "tested", before: stated, supply: "earthing TT\nIpf 1.2 kA" });
    const found = findingsOf(text).find(({ check }) => check === "loop/zs-over-rcd-limit");
    expect(found?.severity).toBe("error");
    expect(found?.message).toContain("by less than the uncertainty of M1 (±8.10 Ω)");
  });
});

describe("a reading that keeps its limit by less than its uncertainty", () => {
  it.each([
    ["Zs", heater("1.06 Ω"), heater("0.90 Ω")],
    ["insulation", insulated("1.02 MΩ"), insulated("1.20 MΩ")],
    ["a trip time", tripping("296 ms"), tripping("250 ms")],
  ])("is asked about where the instrument states its accuracy: %s", (_, near, far) => {
    const of = (lines: string, before: string) => said(lines, before, "instrument/within-uncertainty");
    expect(of(near, stated)).toMatchObject([{ severity: "information" }]);
    expect(of(near, silent)).toEqual([]);
    expect(of(far, stated)).toEqual([]);
  });

  it("is left alone where it was worked out and not read", () => {
    expect(said(heater("1.06 Ω calculated"), stated, "instrument/within-uncertainty")).toEqual([]);
  });
});

describe("what an instrument can do", () => {
  const range = meter("range insulation 999 MΩ\nrange continuity 99.9 Ω\ntest-voltage 250 V 500 V");
  const continuity = (reading: string) => `way 1 radial "Heater" {
  dead 2026-03-05 with M1 {
    R1+R2 ${reading}
  }
}`;

  it("a figure above its range is asked about, off scale or not", () => {
    const of = (lines: string) => said(lines, range, "instrument/beyond-range").map(({ line }) => line).length;
    expect(of(insulated("1200 MΩ"))).toBe(1);
    expect(of(insulated("1.2 GΩ"))).toBe(1);
    expect(of(insulated(">1200 MΩ"))).toBe(1);
    expect(of(insulated("999 MΩ"))).toBe(0);
    expect(of(continuity("120 Ω"))).toBe(1);
    expect(of(continuity("0.41 Ω"))).toBe(0);
  });

  it("with a second instrument whose range is not known nothing is said", () => {
    const two = `${range}\ninstrument M2 "Another" {\n  due 2027-01-01\n}`;
    const both = insulated("1200 MΩ").replace("with M1", "with M1 M2");
    expect(said(both, two, "instrument/beyond-range")).toEqual([]);
  });

  it("a voltage it does not give, and a current too small, are found", () => {
    expect(said(insulated("310 MΩ", "1000 V"), range, "instrument/not-capable")).toHaveLength(1);
    expect(said(insulated("310 MΩ"), range, "instrument/not-capable")).toEqual([]);
    expect(said(continuity("0.41 Ω"), meter("test-current 199 mA"), "instrument/not-capable")).toHaveLength(1);
    expect(said(continuity("0.41 Ω"), meter("test-current 200 mA"), "instrument/not-capable")).toEqual([]);
    expect(said(continuity("0.41 Ω"), silent, "instrument/not-capable")).toEqual([]);
  });
});

describe("the diagnosis", () => {
  // Lower at one point than the usual meter's uncertainty explains; a coarse meter may show it.
  const ring = `way 1 ring "Sockets" {
  cable flat-twin line 2.5 mm² cpc 1.5 mm²
  run A 5 m S1 10 m S2 10 m S3 10 m S4 10 m S5 10 m S6 5 m A
  dead 2026-03-04 with M1 {
    ends r1 0.44 Ω rn 0.44 Ω r2 0.73 Ω
    at S1 L-N 0.22 Ω L-E 0.28 Ω
    at S2 L-N 0.22 Ω L-E 0.29 Ω
    at S3 L-N 0.22 Ω L-E 0.29 Ω
    at S4 L-N 0.52 Ω L-E 0.59 Ω
    at S5 L-N 0.22 Ω L-E 0.29 Ω
    at S6 L-N 0.22 Ω L-E 0.28 Ω
  }
}`;

  it("goes by the accuracy of the meter", () => {
    const check = "diagnosis/readings-disagree";
    expect(said(ring, silent, check)).toHaveLength(1);
    expect(said(ring, meter("accuracy continuity 2 % 2 digits"), check)).toHaveLength(1);
    expect(said(ring, meter("accuracy continuity 10 % 50 digits"), check)).toEqual([]);
  });
});

describe("the hover of a reading", () => {
  it("shows what the meter may be out by", async () => {
    const sample = loftWith("Zs           0.6┆4 Ω");
    const accurate = sample.replace("{ due 2027-01-01 }", "{\n  due 2027-01-01\n  accuracy loop 3 % 3 digits\n}");
    const of = async (text: string) => {
      const { snapshot, cursor } = await atCursor(text);
      return hover(snapshot, cursor)?.markdown ?? "";
    };
    expect(await of(sample)).not.toContain("uncertainty");
    expect(await of(accurate)).toContain("- uncertainty of M1: ±0.049 Ω");
  });
});

describe("a sound installation whose instrument states what it can do", () => {
  it("raises nothing but questions about readings that are nearly at their limit", () => {
    const able = `accuracy continuity 2 % 2 digits
  accuracy loop 3 % 3 digits
  accuracy insulation 3 % 3 digits
  accuracy rcd-time 2 % 2 digits
  range insulation 999 MΩ
  range continuity 99.9 Ω
  test-current 200 mA
  test-voltage 250 V 500 V 1000 V`;
    for (let seed = 1; seed <= 20; seed++) {
      const text = generate({ ways: 20, waysPerBoard: 12, seed, mix: seed % 2 === 0 });
      const accurate = text.replace(/(instrument M1[^{]*\{)/, `$1\n  ${able}`);
      expect(accurate).toContain(able);
      expect(findingsOf(accurate).filter(({ check }) => check !== "instrument/within-uncertainty")).toEqual([]);
    }
  });
});

const everything = meter(
  "accuracy continuity 2 % 2 digits\naccuracy loop 3 % 3 digits\naccuracy insulation 5 %\naccuracy fault 5 %\naccuracy trip-current 5 %",
);

function inPlace(lines: string, check: string, setting: { supply?: string; board?: string; before?: string }) {
  const { text } = inSetting(lines, { stage: "tested", before: everything, ...setting });
  return findingsOf(text).filter((found) => found.check === check);
}

describe("every comparison with a limit tells what is just over it from what is clearly over", () => {
  const length = (R: string) => `way 1 radial "Heater" {
  cable singles line 2.5 mm² cpc 2.5 mm²
  length 40 m
  dead 2026-03-04 with M1 {
    R1+R2 ${R} Ω
  }
}`;
  const ends = (rn: string) => `way 1 ring "Bench" {
  dead 2026-03-04 with M1 {
    ends r1 0.44 Ω rn ${rn} Ω r2 0.73 Ω
  }
}`;
  const point = (E: string) => `way 1 ring "Bench" {
  cable flat-twin line 2.5 mm² cpc 1.5 mm²
  run A 10 m S1 10 m S2 20 m S3 20 m A
  dead 2026-03-04 with M1 {
    ends r1 0.44 Ω rn 0.44 Ω r2 0.73 Ω
    at S1 L-N 0.22 Ω L-E ${E} Ω
  }
}`;
  const heater = 'way 1 radial "Heater" {\ndevice BS EN 61009 B16 6 kA 300 mA type A\n}';
  const tt = (R: string) => ({ supply: `earthing TT\nIpf 0.4 kA\nlive 2026-03-05 with M1 {\nelectrode rod ${R} Ω\n}` });
  const tn = (Ze: string) => ({ supply: `earthing TN-S\nIpf 0.3 kA\nlive 2026-03-05 with M1 {\nZe ${Ze} Ω\n}` });
  const fault = (I: string) => ({ board: `fed-from supply\nlive 2026-03-05 with M1 {\nIpf ${I} kA\n}` });
  const total = (R: string) => ({
    board: `fed-from supply\ndead 2026-03-04 with M1 {\ninsulation 500 V L-E ${R} MΩ joined\n}`,
  });
  const bond = (R: string) => ({
    supply: `earthing TN-S\nZe 0.3 Ω\nIpf 0.8 kA\nbonding water 10 mm² length 20 m continuity ${R} Ω\nmeasured 2026-03-04 with M1`,
  });
  const ramp = (I: string) => `way 1 radial "Heater" {
  device BS EN 61009 B16 6 kA 30 mA type A
  live 2026-03-05 with M1 {
    trip-current ${I} mA
  }
}`;

  const agreeing = (Zs: string) =>
    `way 1 radial "Heater" {\ndead 2026-03-04 with M1 {\nR1+R2 0.41 Ω\n}\nlive 2026-03-05 with M1 {\nZs ${Zs} Ω\n}\n}`;

  it.each([
    ["continuity/r1r2-against-length", length("0.91"), length("1.40"), {}, {}],
    ["ring/ends-differ", ends("0.51"), ends("0.70"), {}, {}],
    ["ring/point-reading", point("0.35"), point("0.52"), {}, {}],
    ["loop/electrode-over-limit", heater, heater, tt("170"), tt("240")],
    ["loop/ze-above-declared", heater, heater, tn("0.83"), tn("1.60")],
    ["fault/breaking-capacity-exceeded", heater, heater, fault("6.1"), fault("9.2")],
    ["insulation/board-below-minimum", heater, heater, total("0.97"), total("0.50")],
    ["protective/bonding-reads-high", heater, heater, bond("0.10"), bond("0.31")],
    ["rcd/test-trip-current", ramp("43"), ramp("60"), {}, {}],
    ["loop/zs-disagrees", agreeing("0.87"), agreeing("1.40"), {}, {}],
    ["loop/zs-below-board", agreeing("0.25"), agreeing("0.10"), {}, {}],
  ])("%s", (check, near, far, nearIn, farIn) => {
    const [told] = inPlace(near, check, nearIn);
    const [clear] = inPlace(far, check, farIn);
    expect(told?.message).toContain("by less than the uncertainty of M1");
    expect(clear?.message).toMatch(/^(?!.*uncertainty).+\.$/);
  });

  it.each([
    ["RA", heater, tt("163")],
    ["Ipf", heater, fault("5.9")],
    ["The board's L-E", heater, total("1.02")],
    ["Trip current", ramp("41"), {}],
  ])("%s that keeps its limit by less than the uncertainty is asked about", (name, lines, setting) => {
    const told = inPlace(lines, "instrument/within-uncertainty", setting);
    expect(told.map(({ message }) => message.startsWith(name))).toEqual([true]);
  });

  it.each([
    [heater, tt("120")],
    [heater, fault("5.1")],
    [heater, total("1.40")],
    [ramp("22"), {}],
  ])("and is left alone where it keeps it clearly", (lines, setting) => {
    expect(inPlace(lines, "instrument/within-uncertainty", setting)).toEqual([]);
  });

  it("an instrument that cannot drive the current is told of for the bonding too", () => {
    const weak = { before: meter("test-current 7 mA"), ...bond("0.03") };
    expect(inPlace(heater, "instrument/not-capable", weak)).toHaveLength(1);
  });
});

describe("an instrument that was calibrated several times", () => {
  const tester = (lines: string) => `instrument M1 "Multifunction tester" {\n  serial "7"\n  ${lines}\n}`;
  const tests = (...days: string[]) =>
    days
      .map((on, at) =>
        heater("0.9 Ω")
          .replace("way 1", `way ${at + 1}`)
          .replace("2026-03-05", on),
      )
      .join("\n");
  const found = (lines: string, ...days: string[]) =>
    said(
      tests(...days),
      tester(lines),
      "instrument/calibration-lapsed",
      "instrument/test-before-calibration",
      "instrument/no-due",
    ).map(({ check, message }) => `${check} ${/\d{4}-\d\d-\d\d/.exec(message)?.[0] ?? ""}`);
  const twice = "calibrated 2024-11-01 due 2025-11-01\n  calibrated 2026-01-10 due 2027-01-10";

  it("judges each test by the one in force on its day", () => {
    expect(found(twice, "2025-03-05", "2026-03-05")).toEqual([]);
    expect(found(twice, "2025-12-05", "2026-03-05")).toEqual(["instrument/calibration-lapsed 2025-11-01"]);
    expect(found(twice, "2024-03-05")).toEqual(["instrument/test-before-calibration 2024-11-01"]);
    expect(found(twice, "2027-03-05")).toEqual(["instrument/calibration-lapsed 2027-01-10"]);
  });

  it("takes a due line of its own for the latest, and keeps to no order of the lines", () => {
    const mixed = "calibrated 2026-01-10\n  calibrated 2024-11-01\n  due 2027-01-10";
    expect(found(mixed, "2025-12-05", "2026-03-05")).toEqual([]);
    expect(found(mixed, "2027-03-05")).toEqual(["instrument/calibration-lapsed 2027-01-10"]);
    expect(found("calibrated 2024-11-01", "2025-03-05")).toEqual(["instrument/no-due "]);
  });
});

describe("tests that name no instrument", () => {
  const tests = (first: string, second: string) =>
    `way 1 radial "Heater" {\n  dead 2026-03-05${first} {\n    R1+R2 0.4 Ω\n  }\n  live 2026-03-06${second} {\n    Zs 0.6 Ω\n  }\n}`;
  const unnamed = (lines: string, stage: "tested" | "design" = "tested") =>
    findingsOf(inSetting(lines, { stage, before: meter("") }).text)
      .filter(({ check }) => check === "instrument/not-named")
      .map(({ message }) => message);

  it("are one omission of the board where none does", () => {
    const message =
      "None of the 2 blocks of tests of board A names its instrument: write “with” and the name after each date.";
    expect(unnamed(tests("", ""))).toEqual([message]);
    expect(unnamed(tests("", ""), "design")).toEqual([]);
  });

  it("are reported each where others do", () => {
    const message = "The instrument used on 2026-03-06 is not named: write “with” and its name after the date.";
    expect(unnamed(tests(" with M1", ""))).toEqual([message]);
    expect(unnamed(tests(" with M1", " with M1"))).toEqual([]);
  });
});
