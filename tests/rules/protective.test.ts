import { describe, expect, it } from "vitest";
import type { Setting } from "../../server/rules/frame/rule.ts";
import { fixed, foundBy } from "../helpers/fixing.ts";
import { inSetting } from "../helpers/sample.ts";

const of = (check: string, way: string, setting: Setting = {}) => foundBy(check, inSetting(way, setting).text);

describe("a loop through the armour", () => {
  const way = (cable: string, length: number) => `way 1 radial "Sump pump" {
  device  BS EN 60898 C16 10 kA
  cable   ${cable}
  length  ${length} m
  serves  motor
}`;
  const armour = "armoured 90 °C line 2.5 mm² cpc-by armour cores 2";
  const check = "loop/design-loop-over-limit";

  it("is judged warm, each conductor by its own factor", () => {
    const [finding] = of(check, way(armour, 60));
    // 0.30 + 60 × (7.41 × 1.28 + 8.8 × (1 + 60/222) × 1.1) mΩ.
    const expected = 0.3 + (60 * (7.41 * 1.28 + 8.8 * (1 + 60 / 222) * 1.1)) / 1000;
    expect(finding?.value?.amount).toBeCloseTo(expected, 9);
    expect(finding?.severity).toBe("error");
    expect(finding?.working).toMatch(/armour to 80 °C = 1 \+ \(80 − 20\) \/ \(202 \+ 20\)/);
    expect(finding?.source?.ref).toContain("PD CLC/TR 50480");
  });

  it("is longer than through a core of the same size, and shorter with both", () => {
    expect(of(check, way(armour, 50))).toHaveLength(1);
    expect(of(check, way("armoured 90 °C line 2.5 mm² cpc 2.5 mm² cores 3", 50))).toEqual([]);
    expect(of(check, way("armoured 90 °C line 2.5 mm² cpc 2.5 mm² cpc-by armour cores 3", 50))).toEqual([]);
  });

  it("fails by so much that a recalled figure of the armour cannot excuse it", () => {
    const [finding] = of(check, way("armoured 90 °C line 10 mm² cpc-by armour cores 2", 140));
    expect(finding).toMatchObject({ severity: "error", verdict: "fails" });
    expect(finding?.working).toContain("fails even at the favourable end of what is from memory: ");
  });

  it("is unproven where the recalled figure of the armour could excuse it, and says which to look up", () => {
    const [first] = of(check, way("armoured 90 °C line 10 mm² cpc-by armour cores 2", 104));
    expect(first).toMatchObject({ severity: "warning", verdict: "unproven" });
    expect(first?.message).toMatch(/Unproven: look up .*10 mm².*from memory/);
  });

  it.each([
    ["without the number of cores", "armoured 90 °C line 2.5 mm² cpc-by armour"],
    ["of a size no table has", "armoured 90 °C line 10 mm² cpc-by armour cores 5"],
    ["through a conduit", "singles line 2.5 mm² cpc-by conduit"],
    ["of a cable without armour", "multicore line 2.5 mm² cpc-by armour cores 2"],
  ])("is not judged %s", (_, cable) => {
    expect(of(check, way(cable, 400))).toEqual([]);
  });
});

describe("a reading through the armour", () => {
  const way = (cable: string, reading: string) => `way 1 radial "Sump pump" {
  cable   ${cable}
  length  60 m
  dead 2026-03-04 {
    ${reading}
  }
}`;
  const armour = "armoured 90 °C line 2.5 mm² cpc-by armour cores 2";

  it("is expected by direct current and cold", () => {
    // 60 × (7.41 + 8.8) mΩ = 0.97 Ω.
    expect(of("continuity/r1r2-against-length", way(armour, "R1+R2 0.97 Ω"))).toEqual([]);
    expect(of("continuity/r1r2-against-length", way(armour, "R1+R2 0.45 Ω"))).toHaveLength(1);
    expect(of("continuity/r1r2-against-length", way(armour, "R1+R2 1.60 Ω"))).toHaveLength(1);
    expect(of("continuity/r2-against-length", way(armour, "R2 0.53 Ω"))).toEqual([]);
    expect(of("continuity/r2-against-length", way(armour, "R2 0.20 Ω"))).toHaveLength(1);
  });

  it("may be less in cable with 70 °C insulation, which has more steel", () => {
    const soft = armour.replace("90 °C", "70 °C");
    expect(of("continuity/r2-against-length", way(soft, "R2 0.20 Ω"))).toEqual([]);
    expect(of("continuity/r2-against-length", way(soft, "R2 0.90 Ω"))).toHaveLength(1);
  });

  it("may be less where a steel conduit lies beside the copper", () => {
    const conduit = "singles line 2.5 mm² cpc 2.5 mm² cpc-by conduit";
    expect(of("continuity/r2-against-length", way(conduit, "R2 0.06 Ω"))).toEqual([]);
    expect(of("continuity/r1r2-against-length", way(conduit, "R1+R2 0.50 Ω"))).toEqual([]);
    expect(of("continuity/r1r2-against-length", way(conduit, "R1+R2 1.90 Ω"))).toHaveLength(1);
  });
});

describe("the section of the armour", () => {
  const way = (device: string, cable: string) => `way 1 feeder "Pavilion" {
  device  ${device}
  cable   ${cable}
}`;
  const check = "design/cpc-too-small";
  const large = "BS 88-2 200 A 80 kA gG";

  it("is held against Table 54.7 by k1 and k2, and that is enough", () => {
    // 143 / 46 × 6 mm² = 18.65 mm², and two cores of 6 mm² have 22.
    expect(of(check, way(large, "armoured 90 °C line 6 mm² cpc-by armour cores 2"))).toEqual([]);
  });

  it("is held against the heat of the fault with the k of an armour", () => {
    const [finding] = of(check, way(large, "armoured 90 °C line 25 mm² cpc-by armour cores 2"));
    expect(finding?.value).toEqual({ amount: 42, unit: "mm²" });
    expect(finding?.working).toContain("k = 46 (Table 54.4");
    expect(finding?.message).toContain("fit 35 mm² cable, or run a copper conductor beside it");
  });

  it("is large enough in the cable the fix writes", () => {
    const text = inSetting(way(large, "armoured 90 °C line 25 mm² cpc-by armour cores 2")).text;
    const after = fixed(check, text);
    expect(after).not.toContain("line 25 mm²");
    expect(foundBy(check, after)).toEqual([]);
  });

  it("shares the fault with a core beside it, by resistances", () => {
    const alone = of(check, way(large, "armoured 90 °C line 25 mm² cpc 6 mm² cores 2"))[0];
    const both = of(check, way(large, "armoured 90 °C line 25 mm² cpc 6 mm² cpc-by armour cores 2"))[0];
    expect(alone?.limit?.amount).toBeGreaterThan(both?.limit?.amount ?? Number.POSITIVE_INFINITY);
    expect(both?.working).toContain("share of the armour");
    expect(both?.working).toContain("share of the core");
  });

  it("is left alone where it is not known", () => {
    expect(of(check, way(large, "armoured 90 °C line 25 mm² cpc-by armour"))).toEqual([]);
    expect(of(check, way(large, "armoured 90 °C line 25 mm² cpc 6 mm² cpc-by armour"))).toEqual([]);
    expect(of(check, way(large, "singles line 25 mm² cpc-by trunking"))).toEqual([]);
  });
});

describe("steel that is to be the protective conductor", () => {
  const check = "protective/steel-not-continuous";
  const way = (cable: string, route: string) => `way 1 radial "Drill" {
  cable   ${cable}
  route   ${route}
}`;
  const conduit = "singles line 4 mm² cpc-by conduit";

  it.each(["plastic", "flexible"])("is not there in %s conduit", (made) => {
    const text = inSetting(way(conduit, `conduit 20 mm ${made} method B`)).text;
    expect(foundBy(check, text)[0]?.severity).toBe("error");
    expect(fixed(check, text)).toContain("cable   singles line 4 mm² cpc 4 mm²\n");
  });

  it("is looked for in a containment that is shared", () => {
    const setting = (made: string): Setting => ({ board: `fed-from supply\ncontainment C1 conduit 25 mm ${made}` });
    expect(of(check, way(conduit, "in C1"), setting("plastic"))).toHaveLength(1);
    expect(of(check, way(conduit, "in C1"), setting("steel"))).toEqual([]);
    expect(of(check, way(conduit, "in C1"), setting(""))).toEqual([]);
  });

  it("is only missed on a stretch where copper lies beside it", () => {
    const text = inSetting(way("singles line 4 mm² cpc 2.5 mm² cpc-by conduit", "clipped method C")).text;
    expect(foundBy(check, text)[0]?.severity).toBe("warning");
    expect(fixed(check, text)).toContain("cable   singles line 4 mm² cpc 2.5 mm²\n");
  });

  it.each(["wall method A", "ceiling method B", "conduit method B", "trunking method B", "method B"])(
    "may be there: %s",
    (route) => expect(of(check, way(conduit, route))).toEqual([]),
  );

  it("is not asked of an armour", () => {
    expect(of(check, way("armoured line 4 mm² cpc-by armour cores 2", "clipped method C"))).toEqual([]);
  });
});

describe("supplementary bonding", () => {
  const text = (line: string, device: string, rest = "") => `wayfile 1
installation "Sample" {
  standard BS 7671:2018+A2:2022
  supply {
    earthing TN-S
  }
  board A "Board" {
    fed-from supply
    ${line}
    way 1 radial "Shower" {
      device  ${device}
      cable   flat-twin line 10 mm² cpc 4 mm²
      serves  shower
      place   bathroom
    }
    ${rest}
  }
}`;
  const check = "protective/supplementary-reads-high";

  it("may read 50 V over what operates the device in 5 s", () => {
    // 50 V / (5 × 40 A) = 0.25 Ω.
    const [finding] = foundBy(check, text("supplementary-bonding bathroom continuity 0.26 Ω", "BS EN 60898 B40 6 kA"));
    expect(finding?.limit?.amount).toBeCloseTo(0.25, 9);
    expect(finding?.working).toContain("R = 50 V / Ia");
    expect(foundBy(check, text("supplementary-bonding bathroom continuity 0.25 Ω", "BS EN 60898 B40 6 kA"))).toEqual(
      [],
    );
  });

  it("may read 50 V / IΔn behind an RCD, whose limit is no memory", () => {
    const rcbo = "BS EN 61009 B40 6 kA 30 mA type A";
    expect(foundBy(check, text("supplementary-bonding bathroom continuity 30 Ω", rcbo))).toEqual([]);
    const [finding] = foundBy(check, text("supplementary-bonding bathroom continuity 1700 Ω", rcbo));
    expect(finding?.limit?.amount).toBeCloseTo(50 / 0.03, 6);
    expect(finding?.severity).toBe("error");
  });

  it("goes by the circuit whose device needs the most", () => {
    const lights = 'way 2 radial "Fan" {\ndevice BS EN 60898 C16 6 kA\nplace bathroom\n}';
    // 10 × 16 A is less than 5 × 40 A.
    const both = text("supplementary-bonding bathroom continuity 1 Ω", "BS EN 60898 B40 6 kA", lights);
    expect(foundBy(check, both)[0]?.limit?.amount).toBeCloseTo(0.25, 9);
    const less = text("supplementary-bonding bathroom continuity 1 Ω", "BS EN 60898 B6 6 kA", lights);
    expect(foundBy(check, less)[0]?.limit?.amount).toBeCloseTo(50 / 160, 9);
  });

  it.each([
    ["nothing of the board is there", "supplementary-bonding pool continuity 9 Ω", "BS EN 60898 B40 6 kA"],
    ["the device is not known", "supplementary-bonding bathroom continuity 9 Ω", "BS EN 60898"],
    ["it was not measured", 'supplementary-bonding bathroom continuity LIM "tiled over"', "BS EN 60898 B40 6 kA"],
    ["it reads less than the meter shows", "supplementary-bonding bathroom continuity <0.01 Ω", "BS EN 60898 B40 6 kA"],
  ])("is not judged where %s", (_, line, device) => {
    expect(foundBy(check, text(line, device))).toEqual([]);
  });

  it("off the scale is too much", () => {
    expect(
      foundBy(check, text("supplementary-bonding bathroom continuity >20 Ω", "BS EN 60898 B40 6 kA")),
    ).toHaveLength(1);
  });

  it("has its own least sizes, and offers both ways out", () => {
    const small = "protective/supplementary-too-small";
    const thin = text("supplementary-bonding bathroom 2.5 mm²", "BS EN 60898 B40 6 kA");
    expect(foundBy(small, thin)[0]?.limit?.amount).toBe(4);
    expect(fixed(small, thin, 0)).toContain("supplementary-bonding bathroom 4 mm²");
    expect(fixed(small, thin, 1)).toContain("supplementary-bonding bathroom 2.5 mm² protected");
    const thinner = text("supplementary-bonding bathroom 1.5 mm² protected", "BS EN 60898 B40 6 kA");
    expect(foundBy(small, thinner)[0]?.limit?.amount).toBe(2.5);
    expect(foundBy(small, text("supplementary-bonding bathroom", "BS EN 60898 B40 6 kA"))).toEqual([]);
  });
});

describe("earthing and bonding at the origin", () => {
  const supply = (lines: string) => `wayfile 1
installation "Sample" {
  standard BS 7671:2018+A2:2022
  supply {
    ${lines}
  }
}`;
  const check = "protective/earthing-conductor-too-small";
  const found = (lines: string) => foundBy(check, supply(lines));

  // Training notes on Chapter 54 and a wholesaler's book, 5.4.1: 16 mm² with a sheath, else 25 mm² of copper or 50 mm² of steel.
  it.each([
    ["10 mm² buried protected corrosion", 16],
    ["16 mm² buried", 25],
    ["16 mm² buried protected damage", 25],
    ["35 mm² steel buried", 50],
    ["10 mm² steel buried protected corrosion", 16],
  ])("in the ground: %s", (conductor, limit) => {
    const [finding] = found(`earthing TT\n    earthing-conductor ${conductor}`);
    expect(finding?.limit?.amount).toBe(limit);
    expect(finding?.severity).toBe("warning");
    const after = fixed(check, supply(`earthing TT\n    earthing-conductor ${conductor}`));
    expect(foundBy(check, after)).toEqual([]);
  });

  it("protected on both counts, or not in the ground, it is sized like any other", () => {
    expect(found("earthing TT\n    earthing-conductor 6 mm² buried protected both")).toEqual([]);
    expect(found("earthing TT\n    earthing-conductor 6 mm²")).toEqual([]);
  });

  it("of another metal, Table 54.7 by k1 and k2", () => {
    const [finding] = found("earthing TN-S\n    tails 25 mm²\n    earthing-conductor 16 mm² aluminium");
    expect(finding?.limit?.amount).toBeCloseTo((115 / 95) * 16, 9);
    expect(found("earthing TN-S\n    tails 25 mm²\n    earthing-conductor 25 mm² aluminium")).toEqual([]);
  });

  it("is shown by the heat of the fault where cut-out and loop are known", () => {
    const lines = (size: string, Ze: string) =>
      `earthing TN-S\n    Ze ${Ze} Ω\n    cutout BS 88-3 63 A\n    tails 25 mm²\n    earthing-conductor ${size}`;
    expect(found(lines("10 mm²", "0.30"))).toEqual([]);
    expect(found(lines("4 mm²", "0.30"))).toHaveLength(1);
    // A loop through which the cut-out takes longer than the equation holds for shows nothing.
    expect(found(lines("10 mm²", "1.20"))[0]?.limit?.amount).toBe(16);
  });

  it("with PME is no thinner than the main bonding, whatever the heat", () => {
    const lines =
      "earthing TN-C-S\n    Ze 0.20 Ω\n    cutout BS 88-3 63 A\n    tails 25 mm²\n    earthing-conductor 6 mm²";
    const [finding] = found(lines);
    expect(finding?.limit?.amount).toBe(10);
    expect(fixed(check, supply(lines))).toContain("earthing-conductor 16 mm²");
  });

  it.each([
    [16, 10],
    [35, 10],
    [50, 16],
    [70, 25],
    [95, 25],
    [120, 35],
    [185, 50],
  ])("Table 54.8: a neutral of %i mm² asks for %i mm²", (neutral, size) => {
    const lines = (own: number) => `earthing TN-C-S\n    tails ${neutral} mm²\n    bonding water ${own} mm²`;
    const bonding = "protective/bonding-too-small";
    expect(foundBy(bonding, supply(lines(size)))).toEqual([]);
    expect(foundBy(bonding, supply(lines(6)))[0]?.limit?.amount).toBe(size);
  });

  it("of aluminium, main bonding goes by its conductance", () => {
    const bonding = "protective/bonding-too-small";
    const lines = (own: number) => `earthing TN-C-S\n    tails 25 mm²\n    bonding water ${own} mm² aluminium`;
    expect(foundBy(bonding, supply(lines(16)))[0]?.limit?.amount).toBe(25);
    expect(foundBy(bonding, supply(lines(25)))).toEqual([]);
    // 20 m of 25 mm² aluminium read 0.024 Ω.
    const reads = (reading: string) =>
      `earthing TN-C-S\n    bonding water 25 mm² aluminium length 20 m continuity ${reading}`;
    expect(foundBy("protective/bonding-reads-high", supply(reads("0.03 Ω")))).toEqual([]);
    expect(foundBy("protective/bonding-reads-high", supply(reads("0.40 Ω")))).toHaveLength(1);
  });
});
