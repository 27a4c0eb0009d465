/**
 * The smallest faults at the end of a circuit, by hand. 4 mm² copper: 4.61 mΩ/m (BS EN 60228), in service 1.20 times that; U0
 * of 230 V and Cmin of 0.95 since Amendment 3 of BS 7671:2008, before it none (Appendix 14 of later editions).
 */
import { describe, expect, it } from "vitest";
import { leastFaults, leastShort } from "../../server/boards/fault-levels.ts";
import type { Setting } from "../../server/rules/frame/rule.ts";
import { installationOf, nodeOf, wayOf } from "../helpers/place.ts";
import { inSetting } from "../helpers/sample.ts";

const length = 40;
const metre = 0.00461 * 1.2;
const whole = 2 * length * metre;

const faults = (lines: string, setting: Setting = {}, kind = "radial") => {
  const text = inSetting(`way 1 ${kind} "Press" {\n${lines}\nlength ${length} m\n}`, setting).text;
  const node = nodeOf(installationOf(text), "A");
  const found = leastFaults(node, wayOf(node, "1"));
  return { ...found, least: leastShort(found) };
};
const cores = (count: number, more = "") => `cable multicore line 4 mm² cpc 4 mm² cores ${count}${more}`;

describe("of one line", () => {
  const setting = (standard?: string): Setting => ({
    supply: "earthing TN-S\nZe 0.30 Ω\nIpf 1.2 kA",
    ...(standard === undefined ? {} : { standard }),
  });

  it.each([
    ["BS 7671:2018+A2:2022", 0.95],
    ["BS 7671:2008+A3:2015", 0.95],
    ["BS 7671:2008", 1],
  ])("by %s at %d of the voltage", (standard, cmin) => {
    const found = faults(cores(3), setting(standard));
    // What was read as 1.2 kA has 230 V / 1.2 kA before it, line and neutral.
    expect(found.neutral?.value).toBeCloseTo((230 * cmin) / (230 / 1200 + whole), 4);
    expect(found.earth?.value).toBeCloseTo((230 * cmin) / (0.3 + whole), 4);
    expect(found.lines).toBeUndefined();
    expect(found.least).toBe(found.neutral);
  });

  it("by an edition that nothing is known of at all of it", () => {
    const found = faults(cores(3), setting("BS 7671:2099"));
    expect(found.earth?.value).toBeCloseTo(230 / (0.3 + whole), 4);
  });
});

describe("of three lines", () => {
  const three = (supply: string): Setting => ({
    supply: `earthing TN-S\nphases three\n${supply}`,
    board: "fed-from supply\nphases three",
  });
  const line = 230 / 6000;
  const both = (2 * line + whole) / Math.sqrt(3);

  it.each([
    [4, undefined, both],
    [5, 2 * line + whole, both],
  ])("in cable of %i cores", (count, neutral, lines) => {
    const found = faults(`phase three\n${cores(count)}`, three("Ze 0.30 Ω\nIpf 6 kA"));
    if (neutral === undefined) expect(found.neutral).toBeUndefined();
    else expect(found.neutral?.value).toBeCloseTo((230 * 0.95) / neutral, 4);
    expect(found.lines?.value).toBeCloseTo((230 * 0.95) / lines, 4);
    expect(found.earth?.value).toBeCloseTo((230 * 0.95) / (0.3 + whole), 4);
    expect(found.least).toBe(found.neutral ?? found.lines);
  });

  it("to neutral by its own reading where there is one below that of the lines", () => {
    const of = (PSCC: string) =>
      faults(`phase L1\n${cores(3)}`, three(`Ze 0.30 Ω\nIpf 6 kA\nPSCC ${PSCC}`)).neutral?.value;
    expect(of("2.3 kA")).toBeCloseTo((230 * 0.95) / (0.1 + whole), 4);
    // What the lines can do at most, and half of it, neutral and line being alike.
    expect(of("6 kA")).toBeCloseTo((230 * 0.95) / (2 * line + whole), 4);
  });
});

// 411.8.1.2: the two conductors of a circuit of one phase are lines 110 V apart, each 55 V to earth.
it("of reduced low voltage, between the lines that are its live conductors", () => {
  const found = faults(cores(3), { supply: "earthing TN-S\nU0 55 V\nZe 0.10 Ω\nIpf 0.6 kA" });
  expect(found.neutral?.value).toBeCloseTo((110 * 0.95) / (110 / 600 + whole), 4);
  expect(found.earth?.value).toBeCloseTo((55 * 0.95) / (0.1 + whole), 4);
});

// A quarter of the way round and back again; 2.5/1.5 mm²: 7.41 and 12.1 mΩ/m.
it("of a ring at its middle", () => {
  const found = faults("cable flat-twin line 2.5 mm² cpc 1.5 mm²", {}, "ring");
  expect(found.neutral?.value).toBeCloseTo((230 * 0.95) / (230 / 1200 + (2 * 7.41 * 1.2 * length) / 4000), 3);
  expect(found.earth?.value).toBeCloseTo((230 * 0.95) / (0.3 + ((7.41 + 12.1) * 1.2 * length) / 4000), 3);
});
