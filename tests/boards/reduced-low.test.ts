/** Reduced low voltage, 411.8: figures by hand from U0 of 55 V to earth and 110 V between lines. */
import { describe, expect, it } from "vitest";
import { designOfWay } from "../../server/boards/design.ts";
import { leastFaults } from "../../server/boards/fault-levels.ts";
import { networkOf } from "../../server/boards/network.ts";
import { installationsOf } from "../../server/model/installation.ts";
import { fileOfText } from "../../server/workspace/loaded-file.ts";
import { findingsOf } from "../helpers/sample.ts";

const yard = (device: string, U0 = "55 V", more = "") => `wayfile 1
installation "Yard" {
  standard BS 7671:2018+A2:2022
  stage design
  supply {
    earthing TN-S
    U0 ${U0}
    Ze 0.10 Ω
    Ipf 0.6 kA
    ${more}
  }
  board A "Tools" {
    fed-from supply
    way 1 radial "Sockets" {
      device ${device}
      cable flex line 2.5 mm² cpc 2.5 mm²
      serves sockets
      load 1650 W
    }
    way 2 radial "Lights" {
      device BS EN 60898 B16 6 kA
      cable multicore line 2.5 mm² cpc 2.5 mm² cores 3
      route clipped method C
      length 20 m
      serves lighting
      Ib 10 A
    }
  }
}`;

const waysOf = (text: string) => {
  const [installation] = installationsOf([fileOfText("a.ways", text)]);
  const node = installation && networkOf(installation).nodes[0];
  if (!node) throw new Error("no board");
  return { node, studies: node.studies };
};

describe("reduced low voltage", () => {
  it.each([
    // U0 × Cmin / Ia: 55 × 0.95 over 5, 10 and 20 times 16 A; of a 16 A gG fuse the 4.00 Ω of Table 41.4 by 55 / 230.
    ["BS EN 60898 B16 6 kA", 0.65],
    ["BS EN 60898 C16 6 kA", 0.33],
    ["BS EN 60898 D16 6 kA", 0.16],
    ["BS 88-2 16 A 80 kA gG", 0.96],
  ])("%s needs a loop of %f Ω or less, within 5 s", (device, limit) => {
    const [way] = waysOf(yard(device)).studies;
    expect(way?.disconnectionTime?.value).toBe(5);
    expect(way?.overcurrentLimit?.value).toBeCloseTo(limit, 2);
  });

  it("takes the load of one phase between lines, and its drop as a share of 110 V", () => {
    const { node, studies } = waysOf(yard("BS EN 60898 B16 6 kA"));
    const [sockets, lights] = studies;
    expect(sockets?.designCurrent?.value).toBeCloseTo(15, 6);
    const drop = lights && designOfWay(node, lights).find(({ title }) => title.startsWith("Voltage drop"));
    // 18 mV/A/m × 10 A × 20 m = 3.6 V, of 110 V.
    expect(drop?.value?.value).toBeCloseTo((100 * 3.6) / 110, 2);
  });

  it("lets flow at the end of a circuit what 110 V drives between its lines, and 55 V to earth", () => {
    const { node, studies } = waysOf(yard("BS EN 60898 B16 6 kA"));
    const lights = studies[1];
    const { neutral, earth } = lights ? leastFaults(node, lights) : {};
    // Both conductors of 20 m of 2.5 mm² (7.41 mΩ/m), hot: × 1.2.
    const cable = 1.2 * 2 * 20 * 0.00741;
    expect(neutral?.value).toBeCloseTo((110 * 0.95) / (110 / 600 + cable), 3);
    expect(earth?.value).toBeCloseTo((55 * 0.95) / (0.1 + cable), 3);
  });

  it("of three phases has 110 V between lines, 63.5 V to earth", () => {
    const [sockets] = waysOf(yard("BS EN 60898 B16 6 kA", "63.5 V", "phases three")).studies;
    expect(sockets?.designCurrent?.value).toBeCloseTo(1650 / 110, 1);
    expect(sockets?.overcurrentLimit?.value).toBeCloseTo(0.75, 2);
  });

  it("asks for no RCD, and tells a circuit whose loop is too high", () => {
    const found = findingsOf(yard("BS EN 60898 B16 6 kA"));
    expect(found.filter(({ check }) => check.startsWith("rcd/"))).toEqual([]);
    const far = findingsOf(yard("BS EN 60898 B16 6 kA").replace("length 20 m", "length 60 m"));
    expect(far.find(({ check }) => check === "loop/design-loop-over-limit")?.severity).toBe("error");
  });

  it.each(["110 V", "48 V", "400 V"])("and %s to earth is refused in one sentence, and nothing half judged", (U0) => {
    const found = findingsOf(yard("BS EN 60898 B16 6 kA", U0).replace("length 20 m", "length 300 m"));
    expect(found.filter(({ check }) => check === "network/voltage-not-judged")).toHaveLength(1);
    expect(found.filter(({ check }) => /^(loop|drop|rcd)\//.test(check))).toEqual([]);
  });
});
