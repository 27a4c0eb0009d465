import { describe, expect, it } from "vitest";
import { cableDrop } from "../../server/circuit/drop.ts";
import { propose } from "../../server/proposal/propose.ts";
import { designLoop } from "../../server/readings/loop.ts";
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

describe("busbar trunking by its maker's figures", () => {
  // A sheet of nobody's: aluminium bars, the casing as protective conductor.
  const figures =
    'busbar-trunking aluminium line 122 mm² cpc-by casing carries 250 A r1 0.26 mΩ/m r2 0.21 mΩ/m r1-hot 0.33 mΩ/m r2-hot 0.25 mΩ/m x 0.12 mΩ/m x2 0.15 mΩ/m Icw 12 kA by "Sheet 3"';
  interface Riser {
    readonly cable?: string;
    readonly device?: string;
    readonly route?: string;
    readonly run?: string;
    readonly Ipf?: string;
    readonly load?: string;
  }
  const riser = (of: Riser = {}) => `wayfile 1
installation "Tower" {
  standard     BS 7671:2018+A2:2022
  stage        design
  premises     commercial
  supply {
    earthing     TN-S
    phases       three
    Ze           0.05 Ω
    Ipf          ${of.Ipf ?? "10 kA"}
  }
  board A "Main" {
    fed-from     supply
    way 1 radial "Riser" {
      device       ${of.device ?? "BS 88-2 200 A 80 kA gG"}
      phase        three
      cable        ${of.cable ?? figures}
      route        ${of.route ?? "clipped"}
      ${of.run ?? "length 45 m"}
      serves       heating
      ${of.load ?? "Ib 170 A"}
    }
  }
}`;
  const place = (of?: Riser) => nodeOf(installationOf(riser(of)), "A");
  const way = (of?: Riser) => wayOf(place(of), "1");
  const all = (of?: Riser) => allIn(riser(of));
  const checks = (of?: Riser) => all(of).map(({ check }) => check);

  it("carries, drops and loops by them, cold and hot", () => {
    expect(checks()).toEqual([]);
    expect(way().capacity?.value.value).toBe(250);
    // Cold: 45 m of 0.26 and 0.21 mΩ/m.
    expect(way().expectedR1R2?.value).toBeCloseTo(0.02115, 9);
    // Hot: R 45 × (0.33 + 0.25) mΩ = 26.1 mΩ, X 45 × (0.12 + 0.15) mΩ = 12.15 mΩ, behind 0.05 Ω.
    expect(designLoop(way())?.value).toBeCloseTo(0.05 + Math.hypot(0.0261, 0.01215), 9);
    // √3 × √(0.33² + 0.12²) = 0.6082 mV/A/m, × 170 A × 45 m = 4.653 V of 398.4 V.
    const drop = cableDrop(way(), 170);
    expect("missing" in drop ? undefined : drop.drop.value).toBeCloseTo(
      ((Math.sqrt(3) * Math.hypot(0.33, 0.12) * 170 * 45) / 1000 / (230 * Math.sqrt(3))) * 100,
      9,
    );
  });

  it("drops less by the power factor: r cos φ + x sin φ", () => {
    const load = "Ib 170 A\n      power-factor 80 %";
    const drop = cableDrop(way({ load }), 170);
    if ("missing" in drop) throw new Error(drop.missing);
    expect(drop.corrected.value / drop.drop.value).toBeCloseTo((0.33 * 0.8 + 0.12 * 0.6) / Math.hypot(0.33, 0.12), 9);
  });

  it("is a run with boxes along it, each load where it is", () => {
    const run = "run A 15 m T1 15 m T2 15 m T3";
    const load = 'load 60 A "Box" at T1\n      load 60 A "Box" at T2\n      load 50 A "Box" at T3';
    expect(checks({ run, load })).toEqual([]);
    const drop = cableDrop(way({ run, load }), 170);
    const perMetre = (Math.sqrt(3) * Math.hypot(0.33, 0.12)) / 1000;
    const metres = (60 * 15 + 60 * 30 + 50 * 45) / 170;
    expect("missing" in drop ? undefined : drop.drop.value).toBeCloseTo(
      ((perMetre * 170 * metres) / (230 * Math.sqrt(3))) * 100,
      9,
    );
  });

  it("is condemned for certain by them", () => {
    const graver = (check: string, of: Riser) =>
      all(of)
        .filter((one) => one.check === check)
        .map(({ severity }) => severity);
    expect(graver("design/device-over-capacity", { cable: figures.replace("250 A", "160 A") })).toEqual(["error"]);
    expect(graver("coordination/trunking-below-fault", { Ipf: "14 kA" })).toEqual(["error"]);
    expect(graver("coordination/trunking-below-fault", { Ipf: "12 kA" })).toEqual([]);
    expect(graver("loop/design-loop-over-limit", { run: "length 300 m" })).toEqual(["error"]);
    expect(graver("drop/over-limit", { run: "length 200 m" })).toEqual(["warning"]);
  });

  it("withstands a greater current behind the device it was tested with", () => {
    const cable = figures.replace("Icw 12 kA", "Icw 12 kA Icc 50 kA");
    expect(checks({ Ipf: "40 kA", cable })).not.toContain("coordination/trunking-below-fault");
    expect(checks({ Ipf: "60 kA", cable })).toContain("coordination/trunking-below-fault");
  });

  it("is asked about the heat of the fault that lasts longest", () => {
    // Some 2.8 kA for the 0.4 s that are set are 3 × 10⁶ A²s; 1.2 kA for 1 s are 1.4 × 10⁶.
    const device = "BS EN 60947-2 200 A 50 kA";
    const settings = "settings thermal 200 A short-time 1.5 kA within 0.4 s";
    const cable = figures.replace("Icw 12 kA", "Icw 1.2 kA Icc 50 kA");
    const text = riser({ device, cable }).replace("phase        three", `phase        three\n      ${settings}`);
    const found = allIn(text).filter(({ check }) => check === "coordination/trunking-below-fault");
    expect(found.map(({ severity }) => severity)).toEqual(["warning"]);
  });

  it("names what its maker's sheet is wanted for", () => {
    const [missing] = all({ cable: 'busbar-trunking line 122 mm² cpc-by casing carries 250 A by "Sheet 3"' }).filter(
      ({ check }) => check === "design/busbar-figures-missing",
    );
    expect(missing?.message).toContain("r1, r1-hot, r2, r2-hot, x, Icw or Icc are not stated");
    // A copper core as protective conductor has its resistance by size.
    const core = figures.replace("cpc-by casing", "cpc 50 mm²").replace(/r2 [\d.]+ mΩ\/m|r2-hot [\d.]+ mΩ\/m/g, "");
    expect(checks({ cable: core })).toEqual([]);
    expect(way({ cable: core }).expectedR1R2?.value).toBeCloseTo(45 * (0.00026 + 0.000387), 9);
  });

  it("is rated above 35 °C by its maker's factor alone", () => {
    expect(checks({ route: "clipped ambient 45 °C" })).toContain("design/capacity-not-calculated");
    const derated = way({ route: 'clipped ambient 45 °C factor 92 % by "Sheet 4"' }).capacity?.value.value;
    expect(derated).toBeCloseTo(230, 9);
  });

  it("has no less resistance hot than cold", () => {
    const swapped = figures.replace("r1-hot 0.33", "r1-hot 0.23");
    expect(checks({ cable: swapped })).toContain("design/cable-does-not-exist");
    // A sheet that gives one figure for both is coarse, and says nothing that cannot be.
    expect(checks({ cable: figures.replace("r1-hot 0.33", "r1-hot 0.26") })).toEqual([]);
  });

  it("has a casing, which no cable has", () => {
    expect(checks({ cable: "multicore line 95 mm² cpc-by casing cores 4" })).toContain("design/cable-does-not-exist");
  });
});

describe("a proposal among busbar trunkings", () => {
  const sheet = (name: string, carries: number, r: number, Icw: number) =>
    `cable-type ${name} busbar-trunking line ${carries} mm² cpc-by casing carries ${carries} A r1 ${r} mΩ/m r2 ${r} mΩ/m r1-hot ${r * 1.25} mΩ/m r2-hot ${r * 1.25} mΩ/m x 0.1 mΩ/m Icw ${Icw} kA by "Sheet 3"`;
  const text = (use: string) => `wayfile 1
${sheet("small", 160, 0.4, 8)}
${sheet("weak", 250, 0.26, 9)}
${sheet("strong", 315, 0.2, 15)}
installation "Tower" {
  standard     BS 7671:2018+A2:2022
  stage        design
  supply {
    earthing     TN-S
    phases       three
    Ze           0.05 Ω
    Ipf          10 kA
  }
  board A "Main" {
    fed-from     supply
    way 1 radial "Riser" {
      device       BS 88-2 200 A 80 kA gG
      phase        three
      cable        ${use}
      route        clipped
      length       45 m
      serves       heating
      Ib           170 A
    }
  }
}`;
  const proposed = (use: string) => {
    const installation = installationOf(text(use));
    return propose(wayOf(nodeOf(installation, "A"), "1"), {}, installation);
  };

  it("takes the smallest that carries the load and withstands the fault", () => {
    const found = proposed("small");
    expect(found.cable).toBe("cable strong");
    expect(found.ruledOut.flatMap(({ by }) => by ?? [])).toEqual(["Capacity of the cable", "Short-circuit withstand"]);
    expect(allIn(text("strong"))).toEqual([]);
    expect(allIn(text("weak")).map(({ check }) => check)).toContain("coordination/trunking-below-fault");
  });
});
