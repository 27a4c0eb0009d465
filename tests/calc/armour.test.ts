import { describe, expect, it } from "vitest";
import { adiabaticFactor, adiabaticSize } from "../../server/calc/adiabatic.ts";
import { armourArea, armourOperatingFactor, armourPerMetre } from "../../server/calc/armour.ts";
import { operatingFactor, resistancePerMetre } from "../../server/calc/conductor-resistance.ts";
import { inParallel } from "../../server/calc/loop-impedance.ts";
import { selectedOfOther } from "../../server/calc/protective-size.ts";
import { half } from "./helpers.ts";

const factor = (question: Parameters<typeof adiabaticFactor>[0]) => adiabaticFactor(question) ?? expect.fail("no k");

describe("worked examples", () => {
  // IET EngX, "a little sum": 30 m of 16 mm² four-core SWA run at 70 °C, the armour the cpc, (R1 + 1.1 R2): 0.162 Ω.
  it("the loop of a 16 mm² four-core cable in service", () => {
    const line = resistancePerMetre(16)?.value ?? Number.NaN;
    const armour = armourPerMetre(16, 4)?.value ?? Number.NaN;
    const cores = operatingFactor(70, "incorporated")?.value ?? Number.NaN;
    const ours = 30 * (line * cores + armour * armourOperatingFactor(70).value);
    expect(Math.abs(ours - 0.162)).toBeLessThanOrEqual(half(3));
  });

  // ElectriciansForums, "can we use the armour of an SWA as the cpc": √(1966² × 0.1)/46 = 13.5 mm², and 70 mm² four-core has 131.
  it("the armour of a 70 mm² four-core cable against 1966 A for 0.1 s", () => {
    const k = factor({ use: "armour", material: "steel", insulation: "ts90" });
    expect(k.value).toBe(46);
    expect(Math.abs((adiabaticSize(1966, 0.1, k)?.value ?? 0) - 13.5)).toBeLessThanOrEqual(half(1));
    expect(armourArea(70, 4)).toMatchObject({ value: 131, source: { standing: "quoted" } });
  });
});

describe("armour", () => {
  it("stays 10 °C cooler than its cores, and its field adds a tenth", () => {
    expect(armourOperatingFactor(70).value).toBeCloseTo((1 + 40 / 222) * 1.1, 9);
    expect(armourOperatingFactor(90).value).toBeCloseTo((1 + 60 / 222) * 1.1, 9);
    expect(armourOperatingFactor(70).source.standing).toBe("computed");
  });

  it("has nothing where the table has nothing", () => {
    expect(armourPerMetre(7, 2)).toBeUndefined();
    expect(armourPerMetre(10, 5)).toBeUndefined();
    expect(armourArea(10, 5)).toBeUndefined();
    expect(armourArea(7, 2)).toBeUndefined();
    expect(armourPerMetre(10, 2)?.source.standing).toBe("memory");
    expect(armourPerMetre(2.5, 3)?.source.standing).toBe("quoted");
  });

  it("Table 54.7 for steel is what it asks of copper, times k1 over k2", () => {
    const k1 = factor({ use: "line", material: "copper", insulation: "ts90" });
    const k2 = factor({ use: "armour", material: "steel", insulation: "ts90" });
    expect(selectedOfOther(10, k1, k2)?.value).toBeCloseTo((143 / 46) * 10, 9);
    expect(selectedOfOther(25, k1, k2)?.value).toBeCloseTo((143 / 46) * 16, 9);
    expect(selectedOfOther(50, k1, k2)?.value).toBeCloseTo((143 / 46) * 25, 9);
    // S/2 as it stands: rounded up to 50 mm² first, 95 mm² would ask for 155.4 and not 147.7.
    expect(selectedOfOther(95, k1, k2)?.value).toBeCloseTo(147.7, 1);
    expect(selectedOfOther(185, k1, k2)?.value).toBeCloseTo(287.6, 1);
    const enclosure = factor({ use: "enclosure", material: "steel", insulation: "pvc70" });
    const line = factor({ use: "line", material: "copper", insulation: "pvc70" });
    expect(selectedOfOther(2.5, line, enclosure)?.value).toBeCloseTo((115 / 47) * 2.5, 9);
  });

  it("a core beside it can only lower the resistance, per metre as well", () => {
    const core = resistancePerMetre(6) ?? expect.fail("no core");
    const armour = armourPerMetre(6, 3) ?? expect.fail("no armour");
    const both = inParallel(core, armour);
    expect(both.unit).toBe("Ω/m");
    expect(both.value).toBeLessThan(Math.min(core.value, armour.value));
  });
});
