/** What whole jobs showed that were typed from nothing: said as a supervisor would say it. */
import { expect, test } from "vitest";
import { find } from "../helpers/find.ts";

const says = (id: string, lines: string, setting: Parameters<typeof find>[2] = {}): string[] =>
  find(id, lines, setting).map(({ severity, message }) => `${severity}: ${message}`);

const house = (cutout: string): string => `wayfile 1
installation "Bungalow" {
  standard     BS 7671:2018+A2:2022
  premises     dwelling
  supply {
    cutout       BS 88-3 ${cutout}
    demand       58 A
  }
  board A "Main" {
    fed-from     supply
    way 1 radial "Shower" {
      serves       shower
      load         8.5 kW
    }
    way 2 radial "Heat pump" {
      serves       heat-pump
      load         32 A
    }
  }
}`;

test("a stated demand that hides an overloaded cut-out is a warning", () => {
  expect(says("demand/stated-too-low", house("60 A"))).toEqual([
    "warning: The stated demand is 58 A; the circuits come to 69 A with diversity, above the 60 A cut-out: state the diversity that makes it less.",
  ]);
  expect(says("demand/stated-too-low", house("100 A"))).toEqual([
    "information: The stated demand is 58 A; the circuits come to 69 A with diversity: state the diversity that makes it less.",
  ]);
});

const immersion = (Zs: string): string => `way 2 radial "Immersion" {
  device       BS EN 60898 B16 6 kA
  dead 2026-03-04 {
    R1+R2        0.20 Ω
  }
  live 2026-03-05 {
    Zs           ${Zs}
  }
}`;

test("a Zs that is the reading of the board is called so", () => {
  const setting = { stage: "tested", supply: "earthing TN-S\nZe 0.21 Ω\nIpf 1.1 kA" } as const;
  const [same] = says("loop/zs-disagrees", immersion("0.21 Ω"), setting);
  const [other] = says("loop/zs-disagrees", immersion("0.25 Ω"), setting);
  expect(same).toContain("it is the reading of the board; read it at the far point");
  expect(other).toContain("record metal in parallel with parallel-path");
  expect(other).not.toContain("reading of the board");
});

const rise = (route: string): string => `wayfile 1
cable-type rise busbar-trunking  line 60 mm²  cpc-by casing  carries 160 A  by "Sheet 1"
installation "Hotel" {
  standard     BS 7671:2018+A2:2022
  board M "Main" {
    fed-from     supply
    way 1 feeder "Rising main" {
      device       BS 88-2 125 A
      cable        rise
${route}      length       12 m
    }
  }
}`;

test("what its maker rates needs to run somewhere, and no method of the tables", () => {
  expect(says("design/route-not-stated", rise(""))).toEqual([
    "warning: How this runs is not stated, so what its type carries is not compared: add a route, such as route clipped.",
  ]);
  expect(says("design/route-not-stated", rise("      route        clipped\n"))).toEqual([]);
});
