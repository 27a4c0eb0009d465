/** The protective conductor at the fault that flows in its circuit; figures by hand from Tables 41.2 and 41.4. */
import { describe, expect, it } from "vitest";
import { networkOf } from "../../server/boards/network.ts";
import { installationsOf } from "../../server/model/installation.ts";
import { protectiveAtFault } from "../../server/readings/loop.ts";
import { fileOfText } from "../../server/workspace/loaded-file.ts";
import { findingsOf, inSetting } from "../helpers/sample.ts";

const text = (Ze: string, cpc: string, device = "BS 88-2 32 A 80 kA gG") => `wayfile 1
installation "Sample" {
  standard BS 7671:2018+A2:2022
  stage design
  supply {
    earthing TN-S
    Ze ${Ze}
    Ipf 2 kA
  }
  board A "Main" {
    fed-from supply
    way 1 radial "Heater" {
      device ${device}
      cable multicore line 6 mm² cpc ${cpc} cores 3
      route clipped method C
      length 20 m
      serves heating
      Ib 25 A
    }
  }
}`;

const needOf = (schedule: string) => {
  const [installation] = installationsOf([fileOfText("a.ways", schedule)]);
  const [study] = (installation && networkOf(installation).nodes[0]?.studies) ?? [];
  return study && protectiveAtFault(study);
};

describe("a cpc behind a fuse", () => {
  it("is asked at the fault that flows: between 0.4 s and 5 s along the curve", () => {
    // 6 and 1.5 mm² over 20 m: (3.08 + 12.1) × 0.02 × 1.2 = 0.364 Ω hot; with 0.80 Ω: 218.5 / 1.164 = 188 A.
    const found = needOf(text("0.80 Ω", "1.5 mm²"));
    // 32 A gG: 5 s at 125 A, 0.4 s at 220 A (Tables 41.2, 41.4). On logarithmic paper 188 A is 0.84 s: S = 188 × √0.84 / 115.
    expect(found?.need.value).toBeGreaterThan(1.3);
    expect(found?.need.value).toBeLessThan(1.6);
    expect(found?.certain).toBe(true);
  });

  it("and beyond the curve by the last point of it, 220 A for 0.4 s, which is the most", () => {
    const found = needOf(text("0.10 Ω", "1.0 mm²"));
    expect(found?.need.value).toBeCloseTo((220 * Math.sqrt(0.4)) / 115, 1);
    expect(found?.certain).toBe(false);
    // What may be less is a question and no error.
    const grade = (Ze: string, cpc: string) =>
      findingsOf(text(Ze, cpc)).find(({ check }) => check === "design/cpc-too-small")?.severity;
    expect(grade("0.10 Ω", "1.0 mm²")).toBe("warning");
    expect(grade("0.10 Ω", "1.5 mm²")).toBeUndefined();
  });

  it("needs no more the more current flows", () => {
    const needs = ["0.80 Ω", "0.60 Ω", "0.40 Ω", "0.20 Ω", "0.05 Ω"].map(
      (Ze) => needOf(text(Ze, "1.0 mm²"))?.need.value ?? Number.NaN,
    );
    expect(needs).toEqual(needs.toSorted((one, other) => other - one));
  });
});

// 70/16 mm² twice: (0.268 + 1.15) / 2 mΩ/m (BS EN 60228), 50 m in service 0.0425 Ω. 63 A gG opens in 5 s at 218.5 V / 0.78 Ω and
// in 0.4 s at 218.5 V / 0.44 Ω (Tables 41.4, 41.2), 280 A and 497 A. Next to the supply a fault is fed by the faulty one alone,
// and k of copper in a cable is 115 (Table 54.3).
describe("a cpc of two in parallel", () => {
  const need = (Zs: string, length = "length 50 m") => {
    const lines = `way 1 radial "Press" {
device BS 88-2 63 A 80 kA gG
cable singles line 70 mm² cpc 16 mm² parallel 2
${length}
serves heating
live 2026-03-05 {
Zs ${Zs}
}
}`;
    return needOf(inSetting(lines, { stage: "tested", supply: "earthing TN-S\nZe 0.01 Ω\nIpf 2 kA" }).text)?.need.value;
  };
  const between = (current: number) => 5 * (280.1 / current) ** (Math.log(5 / 0.4) / Math.log(496.6 / 280.1));

  it.each([
    // All that was read may lie before it: 280 A for 5 s.
    ["0.78 Ω", "", (280.1 * Math.sqrt(5)) / 115],
    // Next to the supply 0.78 − 0.0425 Ω, 296 A.
    ["0.78 Ω", "length 50 m", (296.3 * Math.sqrt(between(296.3))) / 115],
    // A reading below what the cable itself has: nothing lies before it, and the last point of the curve is the most.
    ["0.02 Ω", "length 50 m", (496.6 * Math.sqrt(0.4)) / 115],
  ])("where Zs reads %s, with %j, is %d mm²", (Zs, length, wanted) => {
    expect(need(Zs, length)).toBeCloseTo(wanted, 1);
  });
});
