import { describe, expect, it } from "vitest";
import { liveHeat } from "../../server/boards/energy.ts";
import { cableDrop } from "../../server/circuit/drop.ts";
import { tripTime } from "../../server/circuit/trip.ts";
import { containmentsOn } from "../../server/conduits/containment.ts";
import { designLoop } from "../../server/readings/loop.ts";
import { allIn } from "../helpers/fixing.ts";
import { installationOf, nodeOf, wayOf } from "../helpers/place.ts";

interface Hall {
  readonly cable?: string;
  readonly device?: string;
  readonly route?: string;
  readonly length?: number;
  readonly Ib?: number;
  readonly kind?: string;
  readonly more?: string;
}

const armoured = (csa: number, count: number, cpc = `cpc ${csa} mm²`) =>
  `armoured 90 °C line ${csa} mm² ${cpc} cores 5${count > 1 ? ` parallel ${count}` : ""}`;

const hall = (of: Hall = {}) => `wayfile 1
installation "Weir" {
  standard     BS 7671:2018+A2:2022
  stage        design
  premises     industrial
  supply {
    earthing     TN-S
    phases       three
    Ze           0.05 Ω
    Ipf          12 kA
  }
  board A "Main" {
    fed-from     supply
    containment  T1 trunking 100 mm by 100 mm
    way 1 ${of.kind ?? "radial"} "Hall" {
      phase        three
      device       ${of.device ?? "BS 88-2 160 A 80 kA gG"}
      cable        ${of.cable ?? armoured(70, 2)}
      route        ${of.route ?? "tray method E"}
      length       ${of.length ?? 60} m
      serves       heating
      Ib           ${of.Ib ?? 150} A
    }
    ${of.more ?? ""}
  }
}`;

const nodeIn = (of?: Hall) => nodeOf(installationOf(hall(of)), "A");
const study = (of?: Hall) => wayOf(nodeIn(of), "1");
const checks = (of?: Hall) => allIn(hall(of)).map(({ check }) => check);

describe("cables in parallel", () => {
  it("carry the sum of what each does beside the other", () => {
    // Table 4E4A, method E, three loaded, 70 mm²: 251 A; two circuits together by Table 4C1: 0.80. 2 × 251 × 0.8.
    expect(study().capacity?.value.value).toBeCloseTo(401.6, 6);
    expect(study().capacity?.value.steps.at(-1)?.formula).toBe("Iz of 2 in parallel");
    // A group of three circuits has four cables: 0.65.
    expect(study({ route: "tray method E grouped 3" }).capacity?.value.value).toBeCloseTo(2 * 251 * 0.65, 6);
  });

  it("have half the resistance and lose half the voltage", () => {
    // BS EN 60228: 0.268 Ω/km. Line and core: 2 × 0.268 / 2 over 60 m.
    expect(study().expectedR1R2?.value).toBeCloseTo(0.01608, 6);
    // Table 4E4B, three-phase, 70 mm²: 0.60 mV/A/m. 0.6 / 2 × 150 × 60 = 2.7 V of 398.37 V.
    const drop = cableDrop(study(), 150);
    expect("missing" in drop ? undefined : drop.drop.value).toBeCloseTo((2.7 / (230 * Math.sqrt(3))) * 100, 6);
  });

  it("with one protective conductor for all, the line alone is halved", () => {
    const cable = `${armoured(70, 2)} cpcs 1`;
    expect(study({ cable }).expectedR1R2?.value).toBeCloseTo(60 * (0.000268 / 2 + 0.000268), 6);
  });

  it("by armour, each armour carries its part, cold and hot", () => {
    const [one, two] = [1, 2].map((count) => study({ cable: armoured(70, count, "cpc-by armour").replace("5", "4") }));
    expect(two?.expectedR1R2?.value).toBeCloseTo((one?.expectedR1R2?.value ?? 0) / 2, 9);
    const behind = (way = one) => (way ? (designLoop(way)?.value ?? 0) - 0.05 : 0);
    expect(behind(two)).toBeCloseTo(behind(one) / 2, 9);
  });

  it("of three and more have their greatest loop before the end, in one of them", () => {
    // n / (4 (n − 1)) of one conductor's whole length, by the network of 434.4: 3/8 for three, against 1/3 at the end.
    const [one, two, three] = [1, 2, 3].map((count) => study({ cable: armoured(16, count), length: 20 }));
    const own = (way = one) => (way ? (designLoop(way)?.value ?? 0) - 0.05 : 0);
    expect(own(two)).toBeCloseTo(own(one) / 2, 9);
    expect(own(three)).toBeCloseTo((own(one) * 3) / 8, 9);
  });
});

describe("the heat of a fault in one of several in parallel", () => {
  // 434.4: anywhere along one conductor, fed from both ends; the bench's own sum over a thousand places.
  const length = 170;
  const of = { cable: armoured(6, 2), length, device: "BS 88-2 63 A 80 kA gG", Ib: 50 };
  const alone = (way = study(of)) => {
    // BS EN 60228: 3.08 Ω/km, at 90 °C 1.28 times that.
    const r = 0.00308 * 1.28 * length;
    const heats = Array.from({ length: 1001 }, (_, index) => {
      const x = index / 1000;
      const [near, round] = [x * r, (1 - x) * r + r];
      const Z = 0.05 + 2 * ((near * round) / (near + round));
      const current = (230 * 0.95) / Z;
      const trip = tripTime(way, current);
      const heat = trip && !trip.atMost ? current * (round / (near + round)) * Math.sqrt(trip.time.value) : 0;
      return { x, need: heat / 143 };
    });
    return heats.reduce((most, one) => (one.need > most.need ? one : most));
  };

  it("is found along it and not at the end alone", () => {
    const { x, need } = alone();
    expect(x).toBeLessThan(0.9);
    const heat = liveHeat(nodeIn(of), study(of));
    // The places that are tried are a twenty-fourth of the length apart.
    expect(heat?.need.value).toBeGreaterThan(need * 0.99);
    expect(heat?.need.steps.some(({ formula }) => formula.startsWith("in the faulty one of 2"))).toBe(true);
  });

  it("is asked though the device protects them against overload together", () => {
    // 2 × 1.5 mm² behind 25 A: together they carry it, one of them alone in a fault is another matter.
    const thin = { cable: armoured(1.5, 2), device: "BS 88-2 32 A 80 kA gG", length: 8, Ib: 20 };
    // One of 1.5 mm² alone carries a fault of 4.37 kA next to the supply until a 32 A fuse has opened.
    const heat = liveHeat(nodeIn(thin), study(thin));
    expect(heat?.need.value).toBeCloseTo(0.973, 3);
    expect(heat?.need.steps).toContainEqual(
      expect.objectContaining({ formula: "least fault at the end, line to earth", result: "4370 A" }),
    );
    expect(checks(thin)).not.toContain("design/device-over-capacity");
  });
});

describe("a conductor in parallel that one fault would overheat", () => {
  it("is an error that says where the fault is", () => {
    // Six together carry what the fuse lets through, and one of them does not stand a fault in it.
    const thin = { cable: armoured(1.5, 6), device: "BS 88-2 63 A 80 kA gG", length: 80, Ib: 55 };
    const [found] = allIn(hall(thin)).filter(({ check }) => check === "energy/live-conductor-too-thin");
    expect(found?.severity).toBe("error");
    expect(found?.message).toContain("fault in one of the 6 in parallel needs");
  });
});

describe("what conductors in parallel have to meet", () => {
  it.each([
    ["more than one point", "run A 20 m X1 20 m X2"],
    ["a branch", "run A 20 m X1\n      run X1 5 m X2"],
  ])("%s is an error", (_, run) => {
    const text = hall().replace(/length .*/, run);
    const found = allIn(text).filter(({ check }) => check === "design/parallel-branched");
    expect(found.map(({ severity }) => severity)).toEqual(["error"]);
  });

  it("one point at their end is none", () => {
    expect(allIn(hall().replace(/length .*/, "run A 40 m X1")).map(({ check }) => check)).toEqual([]);
  });

  it("singles above 50 mm² say how they lie", () => {
    const singles = (csa: number, more = "") => ({
      cable: `singles 90 °C line ${csa} mm² cpc 35 mm² parallel 2 ${more}`,
      route: "trunking method B",
      device: "BS 88-2 125 A 80 kA gG",
      Ib: 100,
    });
    expect(checks(singles(70))).toContain("design/parallel-not-arranged");
    expect(checks(singles(50))).not.toContain("design/parallel-not-arranged");
    expect(checks(singles(70, 'arranged "Two trefoil sets"'))).not.toContain("design/parallel-not-arranged");
  });

  it.each(["parallel 0", "parallel 400", "parallel 2 cpcs 3", "parallel 2 cpcs 0", "cpcs 2", 'arranged "so"'])(
    "%s is no count of any cable",
    (words) => {
      expect(checks({ cable: `armoured 90 °C line 70 mm² cpc 70 mm² cores 5 ${words}` })).toContain(
        "design/cable-does-not-exist",
      );
    },
  );
});

describe("singles in parallel in a trunking", () => {
  const two = "singles 70 °C line 10 mm² cpc 10 mm² parallel 2";
  const saw = (grouped: string) => `way 2 radial "Saw" {
      phase        three
      device       BS EN 60898 C16 10 kA
      cable        singles 70 °C line 4 mm² cpc 4 mm²
      route        method B in T1 ${grouped}
      length       10 m
      serves       motor
      Ib           9 A
    }`;
  const shared = { cable: two, route: "method B in T1 grouped 2", device: "BS 88-2 50 A 80 kA", Ib: 40 };

  it("fill it with all of them", () => {
    const node = nodeIn({ ...shared, more: saw("grouped 3") });
    const [trunking] = containmentsOn(node);
    const of = (csa: number) => trunking?.cables.find((one) => one.csa === csa)?.count;
    // Three lines, a neutral and a protective conductor, twice; and once.
    expect([of(10), of(4)]).toEqual([10, 5]);
    expect(trunking?.circuitCount).toBe(3);
  });

  it("each set counts as a circuit for those beside it, and for its own as one", () => {
    const found = (grouped: string) => checks({ ...shared, more: saw(grouped) });
    expect(found("grouped 3")).not.toContain("containment/grouping-understated");
    expect(found("grouped 2")).toContain("containment/grouping-understated");
  });
});
