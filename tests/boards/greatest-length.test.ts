import { describe, expect, it } from "vitest";
import { lengthsOfWay } from "../../server/boards/design.ts";
import { networkOf } from "../../server/boards/network.ts";
import { installationOf } from "../helpers/place.ts";

const board = (length: number, more = "") => `wayfile 1
installation "Store" {
  standard BS 7671:2018+A2:2022
  supply {
    earthing TN-C-S
    Ze       0.35 Ω
  }
  board A "Board" {
    fed-from supply
    way 1 radial "Heater" {
      device BS EN 60898 B32 6 kA
      cable  flat-twin line 4 mm² cpc 1.5 mm²
      route  clipped method C
      length ${length} m
      serves heating
      Ib     26 A
      ${more}
    }
  }
}`;

const lengths = (length: number, more?: string): Map<string, number> => {
  const [node] = networkOf(installationOf(board(length, more))).nodes;
  const [study] = node?.studies ?? [];
  if (!node || !study) throw new Error("no way");
  return new Map(
    lengthsOfWay(node, study).flatMap(({ title, value }) =>
      /ength/.test(title) && value ? [[title, value.value]] : [],
    ),
  );
};

describe("the greatest length", () => {
  // 4.61 and 12.10 mΩ/m (On-Site Guide, Table I1) × 1.20 (Table I3) = 20.05 mΩ/m; 1.37 Ω for a B32 (Table 41.3).
  it("by loop impedance is what is left of the limit, over the hot resistance of a metre", () => {
    expect(lengths(20).get("Greatest length by loop impedance")).toBeCloseTo((1.37 - 0.35) / 0.020052, 1);
  });

  // 11 mV/A/m for 4 mm² (Table 4D5); 5 % of 230 V (Appendix 4, section 6.4).
  it("by voltage drop is the limit over the drop of a metre", () => {
    expect(lengths(20).get("Greatest length by voltage drop")).toBeCloseTo(11.5 / (26 * 0.011), 1);
  });

  it("does not depend on the length that is stated", () => {
    expect(lengths(3).get("Greatest length by loop impedance")).toBeCloseTo(
      lengths(44).get("Greatest length by loop impedance") ?? 0,
      6,
    );
  });
});

describe("a reading of R1+R2", () => {
  it("stands for the length whose conductors it is the resistance of", () => {
    // 0.50 Ω / (4.61 + 12.10) mΩ/m
    expect(lengths(20, "dead 2026-03-04 { R1+R2 0.50 Ω }").get("Length that R1+R2 stands for")).toBeCloseTo(
      0.5 / 0.01671,
      1,
    );
  });
});
