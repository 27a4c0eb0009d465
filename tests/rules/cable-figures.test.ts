import { describe, expect, it } from "vitest";
import { cableDrop } from "../../server/circuit/drop.ts";
import { allIn } from "../helpers/fixing.ts";
import { installationOf, nodeOf, wayOf } from "../helpers/place.ts";

interface Circuit {
  readonly cable: string;
  readonly type?: string;
  readonly device?: string;
  readonly Ib?: number;
  readonly length?: number;
  readonly serves?: string;
}

const tower = ({ cable, type = "", device, Ib, length, serves }: Circuit) => `wayfile 1
installation "Tower" {
  standard     BS 7671:2018+A2:2022
  stage        design
  premises     commercial
  supply {
    earthing     TN-S
    Ze           0.20 Ω
    Ipf          2 kA
  }
  ${type}
  board A "Fire services" {
    fed-from     supply
    way 1 radial "Smoke fan" {
      device       ${device ?? "BS EN 60898 C20 6 kA"}
      cable        ${cable}
      route        clipped method C
      length       ${length ?? 20} m
      serves       ${serves ?? "ventilation"}
      Ib           ${Ib ?? 12} A
      terminals    70 °C
    }
  }
}`;

const study = (of: Circuit) => wayOf(nodeOf(installationOf(tower(of)), "A"), "1");
const found = (of: Circuit) => allIn(tower(of));

describe("fire-resisting cable", () => {
  it("is rated as cable of its make and insulation, with a band", () => {
    // Table 4D2A, two-core, method C, 2.5 mm²: 27 A.
    const capacity = study({ cable: "multicore 70 °C fire-resisting line 2.5 mm² cpc 2.5 mm² cores 3" }).capacity
      ?.value;
    expect(capacity?.value).toBe(27);
    expect(capacity?.source.standing).toBe("memory");
    expect(capacity?.source.remembered?.map(({ figure }) => figure).join()).toContain("Table 4A3");
  });

  it("fails for certain what is overloaded beyond it, and asks about the rest", () => {
    const at = (device: string, Ib: number) =>
      found({ cable: "multicore 70 °C fire-resisting line 2.5 mm² cpc 2.5 mm² cores 3", device, Ib })
        .filter(({ check }) => check === "design/device-over-capacity")
        .map(({ severity }) => severity);
    expect(at("BS EN 60898 C40 6 kA", 30)).toEqual(["error"]);
    expect(at("BS EN 60898 C20 6 kA", 12)).toEqual([]);
  });

  it("is neither flat nor flexible", () => {
    const checks = (cable: string) => found({ cable }).map(({ check }) => check);
    expect(checks("flat-twin fire-resisting line 2.5 mm² cpc 1.5 mm²")).toContain("design/cable-does-not-exist");
    expect(checks("multicore fire-resisting line 2.5 mm² cpc 2.5 mm² cores 3")).not.toContain(
      "design/cable-does-not-exist",
    );
  });
});

describe("a cable type with figures of one's own", () => {
  // Made-up figures of a fire-resisting cable whose maker rates it less, and drops more, than the tables would.
  const type = `cable-type fr2 multicore 90 °C fire-resisting line 2.5 mm² cpc 2.5 mm² cores 3 carries 24 A drop 19 mV/A/m r1 7.5 mΩ/m r2 8.1 mΩ/m by "Data sheet 7, page 2"`;

  it("is judged by them like any other", () => {
    const of = { cable: "fr2", type };
    const own = study(of);
    expect(own.capacity?.value.value).toBe(24);
    expect(own.expectedR1R2?.value).toBeCloseTo(20 * 0.0156, 9);
    const drop = cableDrop(own, 12);
    // 19 mV/A/m × 12 A × 20 m = 4.56 V of 230 V.
    expect("missing" in drop ? undefined : drop.drop.value).toBeCloseTo((4.56 / 230) * 100, 9);
    expect(found(of).map(({ check }) => check)).toEqual([]);
  });

  it("and condemned by them for certain: no figure is from memory", () => {
    const [over] = found({ cable: "fr2", type, device: "BS EN 60898 C25 6 kA", Ib: 23 }).filter(
      ({ check }) => check === "design/device-over-capacity",
    );
    expect(over?.severity).toBe("error");
    expect(over?.source?.ref).toContain("Data sheet 7, page 2");
  });
});
