import { describe, expect, it } from "vitest";
import type { Setting } from "../../server/rules/frame/rule.ts";
import { fixed, foundBy } from "../helpers/fixing.ts";
import { findingsOf, inSetting } from "../helpers/sample.ts";

const tested: Setting = { stage: "tested" };
const of = (check: string, way: string, setting: Setting = tested) => foundBy(check, inSetting(way, setting).text);
const checksOf = (way: string, setting: Setting = tested) =>
  findingsOf(inSetting(way, setting).text)
    .map(({ check }) => check)
    .filter((check) => check.startsWith("loop/"));

const read = (device: string, Zs: string, more = "") => `way 1 radial "Heater" {
  device  ${device}
  ${more}
  live 2026-03-05 { Zs ${Zs} }
}`;

describe("a reading between the cold limit and the full one", () => {
  it("names the style used, and shows the others", () => {
    const [finding] = of("loop/zs-over-cold-limit", read("BS EN 60898 B6 6 kA", "5.85 Ω"));
    expect(finding?.limit?.amount).toBe(5.82);
    expect(finding?.message).toContain("0.8 of it, rounded down");
    expect(finding?.working).toContain("Guidance Note 3");
    expect(finding?.working).toContain("5.87 Ω");
  });

  it("is judged corrected where the temperature was noted", () => {
    const way = (celsius: number) => `way 1 radial "Heater" {
  device  BS EN 60898 B6 6 kA
  live 2026-03-05 {
    temperature ${celsius} °C
    Zs 6.00 Ω
  }
}`;
    expect(of("loop/zs-over-cold-limit", way(20))).toEqual([]);
    expect(of("loop/zs-over-cold-limit", way(5))).toHaveLength(1);
  });

  it("stops where the full limit begins", () => {
    expect(checksOf(read("BS EN 60898 B6 6 kA", "7.28 Ω"))).toContain("loop/zs-over-cold-limit");
    expect(checksOf(read("BS EN 60898 B6 6 kA", "7.29 Ω"))).toEqual(["loop/zs-over-limit"]);
  });
});

describe("an RCD as the means of disconnection", () => {
  it("turns the failure into a warning, not into silence", () => {
    expect(checksOf(read("BS EN 61009 B32 6 kA 30 mA type A", "1.52 Ω"))).toEqual(["loop/relies-on-rcd"]);
  });

  it("does not help where its own limit is passed", () => {
    expect(checksOf(read("BS EN 61009 B32 6 kA 30 mA type A", "1700 Ω"))).toContain("loop/zs-over-limit");
  });
});

describe("a TT installation", () => {
  const setting: Setting = { ...tested, supply: "earthing TT\nelectrode rod 84 Ω\nIpf 1.1 kA" };

  it("is never held against the breaker's table", () => {
    expect(checksOf(read("BS EN 61009 B32 6 kA 30 mA type A", "92 Ω"), setting)).toEqual([]);
  });

  it("fails over 50 V / IΔn", () => {
    expect(checksOf(read("BS EN 61009 B32 6 kA 300 mA type A", "167 Ω"), setting)).not.toContain(
      "loop/zs-over-rcd-limit",
    );
    expect(checksOf(read("BS EN 61009 B32 6 kA 300 mA type A", "168 Ω"), setting)).toContain("loop/zs-over-rcd-limit");
  });

  it("multiplies the electrode with the RCD that needs it best", () => {
    const text = inSetting(read("BS EN 61009 B32 6 kA 300 mA type A", "150 Ω"), {
      ...tested,
      supply: "earthing TT\nelectrode rod 173 Ω",
    }).text;
    const [finding] = foundBy("loop/electrode-over-limit", text);
    expect(finding?.message).toContain("51.9 V");
  });
});

describe("Zs against what it is made of", () => {
  const made = (R1R2: string, Zs: string, more = "") => `way 1 radial "Heater" {
  device  BS EN 60898 B16 6 kA
  ${more}
  dead 2026-03-04 { R1+R2 ${R1R2} }
  live 2026-03-05 { Zs ${Zs} }
}`;

  it.each([
    ["agrees", "0.40 Ω", "0.76 Ω", []],
    ["agrees within a fifth", "1.40 Ω", "2.00 Ω", []],
    ["is too high", "0.40 Ω", "0.90 Ω", ["loop/zs-disagrees"]],
    ["is too low", "0.60 Ω", "0.65 Ω", ["loop/zs-disagrees"]],
    ["is below the board", "0.40 Ω", "0.21 Ω", ["loop/zs-below-board"]],
    ["is below the conductors", "0.92 Ω", "0.45 Ω", ["loop/zs-below-conductors"]],
  ])("%s", (_, R1R2, Zs, expected) => {
    expect(checksOf(made(R1R2, Zs))).toEqual(expected);
  });

  // Ze 0.30 Ω: what is written as R1+R2 is Ze and what is written as Zs.
  it.each([
    ["0.50 Ω", "0.20 Ω", "loop/zs-below-board", true],
    ["0.71 Ω", "0.41 Ω", "loop/zs-below-conductors", true],
    ["0.76 Ω", "0.41 Ω", "loop/zs-below-conductors", false],
    ["0.40 Ω", "0.21 Ω", "loop/zs-below-board", false],
  ])("R1+R2 %s and Zs %s are taken for interchanged only where they add up so", (R1R2, Zs, check, isSlip) => {
    const [finding] = of(check, made(R1R2, Zs));
    expect(finding?.message.includes("seem interchanged")).toBe(isSlip);
  });

  it("nor where the length bears R1+R2 out as it is written", () => {
    const cable = (length: string) => `cable flat-twin line 2.5 mm² cpc 1.5 mm²\nlength ${length}`;
    const said = (length: string) => of("loop/zs-below-board", made("0.50 Ω", "0.20 Ω", cable(length)))[0]?.message;
    expect(said("10 m")).toContain("seem interchanged");
    expect(said("25 m")).toContain("record metal in parallel");
  });

  it("and R1+R2 is then not asked about by itself", () => {
    const cable = "cable flat-twin line 2.5 mm² cpc 1.5 mm²\nlength 10 m";
    const byLength = (R1R2: string, Zs: string) => of("continuity/r1r2-against-length", made(R1R2, Zs, cable));
    expect(byLength("0.50 Ω", "0.20 Ω")).toEqual([]);
    expect(byLength("0.50 Ω", "0.80 Ω")).toHaveLength(1);
  });

  // Ze 0.30 Ω and R1+R2 0.20 Ω.
  it.each([
    ["loop/zs-disagrees", "5.00 Ω", "It is about 10 times too much: check the decimal point."],
    ["loop/zs-below-board", "0.05 Ω", "It is about a tenth of it: check the decimal point."],
  ])("%s of a slip of the decimal point says so: %s", (check, Zs, words) => {
    expect(of(check, made("0.20 Ω", Zs))[0]?.message).toContain(words);
    expect(of(check, made("0.20 Ω", Zs === "5.00 Ω" ? "3.00 Ω" : "0.10 Ω"))[0]?.message).not.toContain("decimal point");
  });

  it("may be low beside a recorded path, never high", () => {
    const path = 'parallel-path "Frame bolted to bonded steel"';
    expect(checksOf(made("0.92 Ω", "0.31 Ω", path))).toEqual([]);
    expect(checksOf(made("0.40 Ω", "0.90 Ω", path))).toEqual(["loop/zs-disagrees"]);
  });
});

describe("the loop of a design", () => {
  const design = (feeder: string) => `wayfile 1
installation "Sample" {
  standard BS 7671:2018+A2:2022
  stage design
  supply {
    earthing TN-S
    Ze 0.30 Ω declared
  }
  board A "Main" {
    fed-from supply
    way 1 feeder "Annexe" {
      device BS EN 60898 C40 10 kA
      feeds  B
      cable  multicore line 10 mm² cpc 10 mm²
      route  clipped method C
      length ${feeder}
    }
  }
  board B "Annexe" {
    fed-from A
    way 1 radial "Heater" {
      device BS EN 60898 C16 6 kA
      cable  multicore line 2.5 mm² cpc 2.5 mm²
      route  clipped method C
      length 30 m
    }
  }
}
`;

  it("runs along the feeder, warm", () => {
    // 30 m × 14.82 mΩ/m × 1.2 = 0.53 Ω; 40 m × 3.66 mΩ/m × 1.2 = 0.18 Ω; with 0.30 Ω that is 1.01 Ω.
    expect(foundBy("loop/design-loop-over-limit", design("40 m"))).toEqual([]);
    const [feeder, final] = foundBy("loop/design-loop-over-limit", design("140 m"));
    expect(feeder?.limit?.amount).toBe(0.55);
    expect(final?.value?.amount).toBeCloseTo(0.3 + (140 * 0.00366 + 30 * 0.01482) * 1.2, 2);
    expect(final?.limit?.amount).toBe(1.37);
  });

  it("gives way to a reading", () => {
    const way = `way 1 radial "Gate" {
  device  BS EN 60898 C20 6 kA
  cable   flat-twin line 2.5 mm² cpc 1.5 mm²
  length  60 m
  live 2026-03-05 { Zs 0.60 Ω }
}`;
    expect(of("loop/design-loop-over-limit", way)).toEqual([]);
  });
});

describe("a limit as written", () => {
  const way = (device: string, limit: string, serves = "heating") => `way 1 radial "Heater" {
  device  ${device}
  serves  ${serves}
  max-Zs  ${limit}
}`;

  it.each([
    ["BS EN 60898 B32 6 kA", "1.37 Ω", undefined],
    ["BS EN 60898 B32 6 kA", "1.09 Ω", "cold"],
    ["BS EN 60898 B32 6 kA", "1.10 Ω", "cold"],
    ["BS EN 60898 B32 6 kA", "1.44 Ω", "Cmin"],
    ["BS EN 60898 C32 6 kA", "1.37 Ω", "type B"],
    ["BS EN 61009 B32 6 kA 30 mA type A", "1667 Ω", "30 mA RCD"],
    ["BS EN 60898 B32 6 kA", "0.9 Ω", undefined],
  ])("%s, %s", (device, limit, likeness) => {
    const messages = of("loop/max-zs-wrong", way(device, limit)).map(({ message }) => message);
    if (likeness === undefined) expect(messages).toEqual([]);
    else expect(messages.join()).toContain(likeness);
  });

  it("is right once the fix is taken", () => {
    const text = fixed("loop/max-zs-wrong", inSetting(way("BS EN 60898 C32 6 kA", "1.37 Ω"), tested).text);
    expect(foundBy("loop/max-zs-wrong", text)).toEqual([]);
  });

  it("belongs to its edition", () => {
    const older = { ...tested, standard: "BS 7671:2008" };
    expect(of("loop/max-zs-wrong", way("BS EN 60898 B32 6 kA", "1.44 Ω"), older)).toEqual([]);
  });
});

describe("the design of a ring with a spur", () => {
  const ring = (spur: string) => `way 1 ring "Sockets" {
  device  BS EN 61009 C32 6 kA 30 mA type A
  cable   singles 70 °C  line 2.5 mm²  cpc 2.5 mm²
  run     A 15 m S1 15 m S2 15 m S3 15 m A
  ${spur}
}`;
  const found = (spur: string) => of("loop/design-loop-over-limit", ring(spur), {});

  // 60 m × 14.82 mΩ/m / 4 × 1.2 + 0.30 Ω = 0.57 Ω, within 0.68 Ω; at the end of 12 m more it is 0.78 Ω.
  it("is judged at the end of the spur, where the loop is greatest", () => {
    expect(found("")).toEqual([]);
    expect(found("run S2 12 m X1").map(({ message }) => message)).toEqual([expect.stringContaining("0.78 Ω")]);
  });
});
