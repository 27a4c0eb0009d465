import fc from "fast-check";
import { beforeAll, describe, expect, it } from "vitest";
import { faultLevels, faultLevelsOn, leastFaults } from "../../server/boards/fault-levels.ts";
import { onStandby, standbyOf, standbyOfWay } from "../../server/boards/standby.ts";
import { resistancePerMetre } from "../../server/calc/conductor-resistance.ts";
import { startNgspice } from "../calc/ngspice.ts";
import { installationOf, nodeOf, wayOf } from "../helpers/place.ts";
import { findingsOf } from "../helpers/sample.ts";

const clinic = (standby: string, lengths: readonly [number, number] = [20, 15], device = "BS EN 60898 B32 6 kA") =>
  `wayfile 1
installation "Clinic" {
  standard BS 7671:2018+A2:2022
  stage design
  supply {
    earthing TN-S
    Ze 0.20 Ω
    Ipf 1.2 kA
    standby "Diesel set" ${standby}
  }
  board A "Main" {
    fed-from supply
    way 1 feeder "Ward" {
      device BS 88-2 63 A 80 kA gG
      feeds B
      cable multicore line 16 mm² cpc 16 mm² cores 3
      route clipped method C
      length ${lengths[0]} m
    }
  }
  board B "Ward" {
    fed-from A
    way 1 radial "Cold store" {
      device ${device}
      cable multicore line 6 mm² cpc 6 mm² cores 3
      route clipped method C
      length ${lengths[1]} m
      serves appliance
      Ib 20 A
    }
  }
}`;

const store = (text: string) => onStandby(wayOf(nodeOf(installationOf(text), "B"), "1"));
const said = (text: string) => findingsOf(text).filter(({ check }) => check === "loop/standby-over-limit");

describe("a circuit on its second source", () => {
  let ask: Awaited<ReturnType<typeof startNgspice>>;
  beforeAll(async () => {
    ask = await startNgspice();
  });

  it("has the loop that a simulator finds with the source in place of the supply", async () => {
    const metres = fc.integer({ min: 2, max: 60 });
    const hot = (csa: number, length: number) => 1.2 * length * (resistancePerMetre(csa)?.value ?? Number.NaN);
    await fc.assert(
      fc.asyncProperty(metres, metres, fc.integer({ min: 25, max: 300 }), async (first, second, hundredths) => {
        const Ze = hundredths / 100;
        const [found] = store(clinic(`Ze ${Ze} Ω`, [first, second]));
        const voltage = await ask(
          [
            { from: "source", to: "line at A", ohms: Ze },
            { from: "line at A", to: "line at B", ohms: hot(16, first) },
            { from: "line at B", to: "fault", ohms: hot(6, second) },
            { from: "fault", to: "earth at B", ohms: hot(6, second) },
            { from: "earth at B", to: "earth", ohms: hot(16, first) },
          ],
          "source",
          "earth",
        );
        expect(found?.value.value).toBeCloseTo(voltage, 6);
      }),
      { numRuns: 12 },
    );
  });

  it("does not disconnect behind a high impedance, and that an RCD does instead is told", () => {
    expect(said(clinic("Ze 0.60 Ω"))).toEqual([]);
    expect(said(clinic("Ze 1.60 Ω"))[0]?.severity).toBe("error");
    const behindRcd = clinic("Ze 1.60 Ω", [20, 15], "BS EN 61009 B32 6 kA 30 mA type A");
    const excused = said(behindRcd).filter(({ message }) => message.includes("B32"));
    expect(excused.map(({ severity }) => severity)).toEqual(["information"]);
    expect(excused[0]?.message).toMatch(/^On “Diesel set” only the RCD would disconnect: the loop is 1\.77 Ω/);
  });

  it("does not where an inverter keeps up less than the device needs: 5 × 32 A", () => {
    const found = said(clinic("gives 60 A")).filter(({ message }) => message.includes("B32"));
    expect(found[0]?.message).toContain("at most 60 A flows, and the B32 BS EN 60898 device needs 160 A");
    expect(found[0]?.severity).toBe("error");
    expect(said(clinic("gives 600 A")).filter(({ message }) => message.includes("B32"))).toEqual([]);
  });

  it("is asked of the boards it supplies alone", () => {
    const ofB = said(clinic("Ze 1.60 Ω boards B"));
    expect(ofB.map(({ message }) => message)).toEqual([expect.stringMatching(/^On “Diesel set” .* of the B32 /)]);
    // The feeder that stands on board A is its own where that board is supplied as well.
    expect(said(clinic("Ze 1.60 Ω")).map(({ message }) => message)).toEqual([
      expect.stringMatching(/ of the 63 A BS 88-2 /),
      ofB[0]?.message,
    ]);
    const apart = clinic("Ze 1.60 Ω boards C").replace(/}$/, '  board C "Plant" {\n    fed-from A\n  }\n}');
    expect(said(apart)).toEqual([]);
  });
});

describe("what flows on a second source", () => {
  let ask: Awaited<ReturnType<typeof startNgspice>>;
  beforeAll(async () => {
    ask = await startNgspice();
  });

  const onFirst = (text: string) => {
    const node = nodeOf(installationOf(text), "B");
    const [source] = standbyOf(node.context);
    if (!source) throw new Error("The sample has no second source.");
    return { node, source, levels: faultLevelsOn(node, source) };
  };

  it("is what a simulator finds at the board and at the end, with the source in place of the supply", async () => {
    const metres = fc.integer({ min: 2, max: 60 });
    const cold = (csa: number, length: number) => length * (resistancePerMetre(csa)?.value ?? Number.NaN);
    await fc.assert(
      fc.asyncProperty(metres, metres, fc.integer({ min: 10, max: 300 }), async (first, second, hundredths) => {
        const Ze = hundredths / 100;
        const text = clinic(`Ze ${Ze} Ω`, [first, second]);
        const { node, source, levels } = onFirst(text);
        const loop = async (factor: number, all: boolean): Promise<number> =>
          ask(
            [
              { from: "source", to: "line at A", ohms: Ze },
              { from: "line at A", to: "line at B", ohms: factor * cold(16, first) },
              { from: "line at B", to: "fault", ohms: all ? factor * cold(6, second) : 1e-9 },
              { from: "fault", to: "earth at B", ohms: all ? factor * cold(6, second) : 1e-9 },
              { from: "earth at B", to: "earth", ohms: factor * cold(16, first) },
            ],
            "source",
            "earth",
          );
        expect(levels?.greatest.value).toBeCloseTo(230 / (await loop(1, false)), 2);
        const least = leastFaults(node, wayOf(node, "1"), source);
        expect(least.earth?.value).toBeCloseTo((230 * 0.95) / (await loop(1.2, true)), 2);
        expect(least.neutral?.value).toBeCloseTo((230 * 0.95) / (await loop(1.2, true)), 2);
      }),
      { numRuns: 12 },
    );
  });

  it("is no more than it gives, and its own greatest figure decides what is broken", () => {
    expect(onFirst(clinic("gives 60 A")).levels?.greatest.value).toBe(60);
    expect(onFirst(clinic("Ze 0.02 Ω Ipf 5 kA", [2, 15])).levels?.greatest.value).toBeLessThan(5000);
    const breaking = (standby: string) =>
      findingsOf(clinic(standby, [2, 15])).filter(({ check }) => check === "fault/standby-breaking-capacity");
    expect(breaking("Ze 0.01 Ω Ipf 14 kA").map(({ severity }) => severity)).toEqual(["error"]);
    expect(breaking("Ze 0.01 Ω").map(({ severity }) => severity)).toEqual(["warning"]);
    expect(breaking("Ze 0.30 Ω Ipf 1.4 kA")).toEqual([]);
  });

  it("says nothing where neither loop nor current is stated", () => {
    expect(onFirst(clinic("")).levels).toBeUndefined();
    // Only how it is earthed is asked.
    expect(
      findingsOf(clinic(""))
        .filter(({ check }) => /standby/.test(check))
        .map(({ check }) => check),
    ).toEqual(["network/standby-not-earthed"]);
  });

  it("never flows harder from a weaker source", () => {
    fc.assert(
      fc.property(fc.integer({ min: 5, max: 300 }), fc.integer({ min: 1, max: 200 }), (Ze, more) => {
        const one = onFirst(clinic(`Ze ${Ze / 100} Ω`)).levels?.greatest.value ?? Number.NaN;
        const weaker = onFirst(clinic(`Ze ${(Ze + more) / 100} Ω`)).levels?.greatest.value ?? Number.NaN;
        expect(weaker).toBeLessThan(one);
      }),
      { numRuns: 40 },
    );
  });
});

describe("a transformer at the origin", () => {
  const works = (plate: string, phases = "phases three") => `wayfile 1
installation "Works" {
  standard BS 7671:2018+A2:2022
  stage design
  supply {
    earthing TN-S
    ${phases}
    transformer ${plate}
  }
  board A "Main" {
    fed-from supply
    phases three
    way 1 radial "Press" {
      phase three
      device BS EN 60898 C32 10 kA
      cable armoured 90 °C line 10 mm² cpc 10 mm² cores 4
      length 30 m
    }
  }
}`;

  // I = S / (√3 × U × z), as makers of switchgear tabulate it: 500 kVA 4 % 18.0 kA, 1000 kVA 4.75 % 30.4 kA at 400 V.
  it.each([
    ["500 kVA impedance 4 %", 18_042],
    ["1000 kVA impedance 4.75 %", 30_387],
    ["315 kVA impedance 4 %", 11_367],
  ])("of %s lets %i A flow into a three-phase fault", (plate, amperes) => {
    const levels = faultLevels(nodeOf(installationOf(works(plate)), "A"));
    expect(Math.abs((levels?.three?.value ?? 0) - amperes) / amperes).toBeLessThan(0.005);
    expect(levels?.greatest.value).toBeGreaterThanOrEqual(levels?.neutral.value ?? Number.NaN);
  });

  it("condemns a breaker that cannot break it", () => {
    const found = findingsOf(works("1000 kVA impedance 4.75 %")).find(
      ({ check }) => check === "coordination/breaking-capacity-exceeded",
    );
    expect(found?.message).toContain("30.51 kA");
  });
});

describe("which circuits a second source supplies", () => {
  const board = (standby: string) => `wayfile 1
installation "Clinic" {
  standard BS 7671:2018+A2:2022
  stage design
  supply {
    earthing TN-S
    Ze 0.20 Ω
    Ipf 1.2 kA
    electrode rod 60 Ω
    standby "Battery" neutral linked ${standby}
  }
  board A "Main" {
    fed-from supply
    way 1 radial "Lights" {
      device BS EN 60898 B32 6 kA
      cable multicore line 6 mm² cpc 6 mm² cores 3
      length 10 m
      serves lighting
    }
    way 2 radial "Heater" {
      device BS EN 60898 B32 6 kA
      cable multicore line 6 mm² cpc 6 mm² cores 3
      length 10 m
      serves heating
    }
    way 3 feeder "Ward" {
      device BS 88-2 40 A 80 kA gG
      feeds B
      cable multicore line 16 mm² cpc 16 mm² cores 3
      length 12 m
    }
  }
  board B "Ward" {
    fed-from A
    way 1 radial "Pump" {
      device BS EN 60898 B32 6 kA
      cable multicore line 6 mm² cpc 6 mm² cores 3
      length 10 m
      serves appliance
    }
  }
}`;
  const supplied = (standby: string) => {
    const installation = installationOf(board(standby));
    return [
      ["A", "1"],
      ["A", "2"],
      ["A", "3"],
      ["B", "1"],
    ]
      .filter(([name = "", id = ""]) => standbyOfWay(wayOf(nodeOf(installation, name), id)).length > 0)
      .map(([name, id]) => `${name}/${id}`);
  };

  it.each([
    ["", ["A/1", "A/2", "A/3", "B/1"]],
    ["boards B", ["B/1"]],
    ["boards A", ["A/1", "A/2", "A/3", "B/1"]],
    ["board A", ["A/1", "A/2", "A/3", "B/1"]],
    ["board A way 1", ["A/1"]],
    ["board A way 1 3", ["A/1", "A/3", "B/1"]],
    ["board B way 1", ["B/1"]],
    ["board A way 2 boards B", ["A/2", "B/1"]],
    ["boards B C", ["B/1"]],
    ["boards C B", ["B/1"]],
    ["boards C", []],
    ["board B", ["B/1"]],
    ["board C", []],
    ["board B way 2", []],
    ["board A way 2 boards C", ["A/2"]],
  ])("with “%s”", (standby, expected) => {
    expect(supplied(standby)).toEqual(expected);
  });

  it("only those are judged on it", () => {
    const lines = (standby: string, check: string) =>
      findingsOf(board(standby)).filter((finding) => finding.check === check).length;
    expect(lines("gives 60 A", "loop/standby-over-limit")).toBe(4);
    expect(lines("gives 60 A board A way 1", "loop/standby-over-limit")).toBe(1);
    expect(lines("Ze 0.02 Ω Ipf 12 kA board A way 2", "fault/standby-breaking-capacity")).toBe(1);
  });

  it("ways that are not there, and of no board in particular, are pointed to", () => {
    const said = (standby: string) =>
      findingsOf(board(standby))
        .filter(({ check }) => check === "network/standby-unknown-way")
        .map(({ message }) => message);
    expect(said("gives 60 A board A way 1")).toEqual([]);
    expect(said("gives 60 A board A way 9")).toEqual([expect.stringMatching(/^Board A has no way 9/)]);
    expect(said("gives 60 A way 1")).toEqual([expect.stringMatching(/^Way 1 of which board\?/)]);
  });
});
