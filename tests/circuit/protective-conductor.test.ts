/**
 * The protective conductor as an electrical path. Figures of 6 mm² cable: copper 3.08 mΩ/m, 2.5 mm² 7.41 (BS EN 60228); the
 * armour of three cores 6.7 mΩ/m, of four 4.3 (Guide to the Wiring Regulations, Table 4.4). In service copper of 70 °C cable
 * has 1.20 times as much, of 90 °C cable 1.28 (On-Site Guide, Table I3); steel at 60 and 80 °C (Table 54.4) with 1/β of 202 K
 * (IEC 60949) 262/222 and 282/222 times, and its lay a tenth more.
 */
import { describe, expect, it } from "vitest";
import { conductorPerMetre, fractionByArmour, operatingFactorOf, whyNoCpc } from "../../server/circuit/cpc.ts";
import type { Cable, WayStudy } from "../../server/circuit/way.ts";
import { installationOf, nodeOf, wayOf } from "../helpers/place.ts";
import { inSetting } from "../helpers/sample.ts";

const studied = (cable: string): WayStudy =>
  wayOf(nodeOf(installationOf(inSetting(`way 1 radial "Pump" {\ncable ${cable}\nlength 10 m\n}`).text), "A"), "1");
const cableOf = (line: string): Cable => {
  const { cable } = studied(line);
  if (!cable) throw new Error("no cable");
  return cable;
};
const milli = (line: string) => {
  const found = conductorPerMetre(cableOf(line), "cpc");
  return found && Number((found.value * 1000).toFixed(4));
};

describe("r of the protective conductor", () => {
  it.each([
    ["armoured 90 °C line 6 mm² cpc-by armour cores 3", 6.7],
    ["armoured 90 °C line 6 mm² cpc-by armour cores 4", 4.3],
    ["armoured 90 °C line 6 mm² cpc-by armour", undefined],
    ["armoured 90 °C line 6 mm² cpc-by armour cores 6", undefined],
    // What has no armour has none, however many cores it has.
    ["multicore line 6 mm² cpc-by armour cores 3", undefined],
    ["multicore line 6 mm² cpc 2.5 mm² cpc-by armour cores 3", undefined],
    // Side by side: 7.41 × 6.7 / 14.11.
    ["armoured 90 °C line 6 mm² cpc 2.5 mm² cpc-by armour cores 3", 3.5186],
    ["multicore line 6 mm² cpc 2.5 mm² cores 3", 7.41],
    ["armoured 90 °C line 6 mm² cpc 2.5 mm² cores 3", 7.41],
    ["singles line 6 mm² cpc 2.5 mm² parallel 2", 3.705],
  ])("of %s: %s mΩ/m", (line, wanted) => expect(milli(line)).toBe(wanted));

  it("says why it has none", () => {
    expect(whyNoCpc(cableOf("multicore line 6 mm² cpc-by armour cores 3"))).toBe("a multicore cable has no armour");
    expect(whyNoCpc(cableOf("armoured 90 °C line 6 mm² cpc-by armour"))).toMatch(/number of cores is not written$/);
    expect(whyNoCpc(cableOf("armoured 90 °C line 6 mm² cpc-by armour cores 6"))).toMatch(/armour of 6 × 6 mm² cable$/);
  });

  it("shares a fault with the armour by their resistances", () => {
    const share = (line: string) => fractionByArmour(cableOf(line))?.value;
    expect(share("armoured 90 °C line 6 mm² cpc 2.5 mm² cpc-by armour cores 3")).toBeCloseTo(7.41 / 14.11, 9);
    expect(share("armoured 90 °C line 6 mm² cpc-by armour cores 3")).toBeUndefined();
    expect(share("multicore line 6 mm² cpc 2.5 mm² cores 3")).toBeUndefined();
  });
});

describe("the factor from 20 °C to service", () => {
  const steel = { 70: (262 / 222) * 1.1, 90: (282 / 222) * 1.1 };
  const both = (line: number, cores: number, r: number, warm: number) => (line * cores + r * warm) / (line + r);
  const side = (one: number, other: number) => (one * other) / (one + other);
  it.each([
    ["multicore line 6 mm² cpc 2.5 mm² cores 3", 1.2],
    ["multicore 90 °C line 6 mm² cpc 2.5 mm² cores 3", 1.28],
    ["armoured 90 °C line 6 mm² cpc 2.5 mm² cores 3", 1.28],
    ["armoured 70 °C line 6 mm² cpc-by armour cores 3", both(3.08, 1.2, 6.7, steel[70])],
    ["armoured 90 °C line 6 mm² cpc-by armour cores 3", both(3.08, 1.28, 6.7, steel[90])],
    ["armoured 90 °C line 6 mm² cpc-by armour", undefined],
    [
      "armoured 90 °C line 6 mm² cpc 2.5 mm² cpc-by armour cores 3",
      (3.08 * 1.28 + side(7.41 * 1.28, 6.7 * steel[90])) / (3.08 + side(7.41, 6.7)),
    ],
  ])("of %s: %s", (line, wanted) => {
    const found = operatingFactorOf(cableOf(line))?.value;
    if (wanted === undefined) expect(found).toBeUndefined();
    else expect(found).toBeCloseTo(wanted, 6);
  });

  it("is that of the cores where no protective conductor is asked about, and of steel for it alone", () => {
    const cable = cableOf("armoured 90 °C line 6 mm² cpc-by armour cores 3");
    expect(operatingFactorOf(cable, ["line", "neutral"])?.value).toBeCloseTo(1.28, 9);
    expect(operatingFactorOf(cable, ["cpc"])?.value).toBeCloseTo(steel[90], 6);
  });

  // As many figures as its result needs to come out again: 6.7 × 1.298 would be 8.697.
  it.each([
    ["armoured 70 °C line 6 mm² cpc-by armour cores 3", "6.7 mΩ × 1.2982 = 8.698 mΩ/m"],
    ["armoured 70 °C line 400 mm² cpc-by armour cores 3", "0.52 mΩ × 1.298 = 0.675 mΩ/m"],
  ])("of %s is written with the figures it is made of", (line, wanted) => {
    const [armour, both] = operatingFactorOf(cableOf(line))?.steps.slice(-2) ?? [];
    expect(`${armour?.numbers} = ${armour?.result}`).toBe(wanted);
    expect(both?.formula).toBe("factor of both together");
  });
});
