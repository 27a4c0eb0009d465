/** The protective conductor at the fault that flows in its circuit; figures by hand from Tables 41.2 and 41.4. */
import { describe, expect, it } from "vitest";
import { networkOf } from "../../server/boards/network.ts";
import { installationsOf } from "../../server/model/installation.ts";
import { protectiveAtFault } from "../../server/readings/loop.ts";
import { fileOfText } from "../../server/workspace/loaded-file.ts";
import { findingsOf } from "../helpers/sample.ts";

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
