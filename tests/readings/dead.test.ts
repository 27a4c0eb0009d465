/** What conductors should read at the temperature of a test, and in the other metal: BS EN 60228, 0.4 % for each kelvin. */
import { describe, expect, it } from "vitest";
import { faultsNoted } from "../../server/circuit/faults.ts";
import { expectedConductorAt, expectedR1R2At, otherMetal } from "../../server/readings/dead.ts";
import { installationOf, nodeOf, wayOf } from "../helpers/place.ts";
import { inSetting } from "../helpers/sample.ts";

const studied = (lines: string) =>
  wayOf(nodeOf(installationOf(inSetting(`way 1 radial "Circuit" {\n${lines}\n}`).text), "A"), "1");

describe("what a run should read", () => {
  const at = (cable: string, temperature: string) => {
    const study = studied(`${cable}\nlength 20 m\ndead 2026-03-04 {\n${temperature}\nR1+R2 0.39 Ω\n}`);
    const [test] = study.deadTests;
    return test && [expectedConductorAt(study, "cpc", test)?.value, expectedR1R2At(study, test)?.value];
  };
  const twin = "cable flat-twin line 2.5 mm² cpc 1.5 mm²";

  it.each([
    ["", 1],
    ["temperature 20 °C", 1],
    ["temperature 5 °C", 0.94],
    ["temperature 30 °C", 1.04],
  ])("with %j is %f times that at 20 °C", (temperature, times) => {
    const [cpc, both] = at(twin, temperature) ?? [];
    expect(cpc).toBeCloseTo(20 * 0.0121 * times, 9);
    expect(both).toBeCloseTo(20 * 0.01951 * times, 9);
  });

  it("is not known without a cable of known size", () => {
    expect(at("cable flat-twin line 2.5 mm²", "temperature 5 °C")).toEqual([undefined, undefined]);
    expect(at("serves lighting", "temperature 5 °C")).toEqual([undefined, undefined]);
  });
});

it.each([
  ["cable singles line 16 mm² cpc 16 mm²", ["aluminium", 1.661]],
  ["cable singles aluminium line 16 mm² cpc 16 mm²", ["copper", 0.602]],
  // No aluminium is listed so thin, and of a mineral cable or a flexible one none is made.
  ["cable singles line 2.5 mm² cpc 2.5 mm²", undefined],
  ["cable mineral line 16 mm² cpc 16 mm²", undefined],
  ["cable flex line 16 mm² cpc 16 mm²", undefined],
  ["serves lighting", undefined],
] as const)("%s in the other metal: %j", (lines, wanted) => {
  const found = otherMetal(studied(lines));
  // 1.91 mΩ/m of aluminium and 1.15 of copper.
  expect(found && [found.name, Number(found.ratio.toFixed(3))]).toEqual(wanted);
});

describe("a fault current counts as noted", () => {
  const noted = (supply: string, board: string) =>
    faultsNoted(
      nodeOf(installationOf(`wayfile 1\ninstallation "Works" {\n${supply}\nboard A "Board" {\n${board}\n}\n}`), "A")
        .context,
    );
  const origin = (lines: string) => `supply {\nearthing TN-S\n${lines}\n}`;

  it.each([
    [origin("Ipf 1.2 kA"), "fed-from supply", true],
    [origin("PSCC 1.2 kA"), "fed-from supply", true],
    [origin('Ipf LIM "Locked"'), "fed-from supply", true],
    [origin("Ze 0.3 Ω"), "fed-from supply", false],
    [origin("Ipf 1.2 kA"), "fed-from Z", false],
    [origin("Ze 0.3 Ω"), "fed-from supply\nIpf 1.2 kA", true],
    [origin("Ze 0.3 Ω"), "fed-from Z\nlive 2026-03-05 {\nPEFC 1.2 kA\n}", true],
    ["", "fed-from supply", false],
  ])("%j, %j: %s", (supply, board, wanted) => expect(noted(supply, board)).toBe(wanted));
});
