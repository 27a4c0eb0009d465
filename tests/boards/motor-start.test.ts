import { describe, expect, it } from "vitest";
import { designOfWay } from "../../server/boards/design.ts";
import { installationOf, nodeOf, wayOf } from "../helpers/place.ts";
import { findingsOf } from "../helpers/sample.ts";

const mill = (starting: string, size = "4 mm²") => `wayfile 1
installation "Mill" {
  standard BS 7671:2018+A2:2022
  stage design
  supply {
    earthing TN-S
    Ze 0.05 Ω
    Ipf 4 kA
  }
  board A "Main" {
    fed-from supply
    way 1 feeder "Shop" {
      device BS 88-2 63 A 80 kA gG
      feeds B
      cable multicore line 16 mm² cpc 16 mm² cores 3
      route clipped method C
      length 20 m
      Ib 40 A
    }
  }
  board B "Shop" {
    fed-from A
    way 1 radial "Saw" {
      device BS EN 60898 D20 10 kA
      cable multicore line ${size} cpc ${size} cores 3
      route clipped method C
      length 50 m
      serves motor
      Ib 18 A
      overload 19 A
      ${starting}
    }
  }
}`;

const drop = (text: string) => {
  const node = nodeOf(installationOf(text), "B");
  return designOfWay(node, wayOf(node, "1")).find(({ title }) => title === "Voltage drop while the motor starts");
};
const asked = (text: string) => findingsOf(text).filter(({ check }) => check === "drop/motor-start");

describe("the drop while a motor starts", () => {
  it("is that of its own cable with the starting current, and of the feeders with theirs", () => {
    // By hand: 2.8 mV/A/m × 40 A × 20 m, and 11 mV/A/m × 108 A × 50 m, of 230 V.
    const volts = 2.8e-3 * 40 * 20 + 11e-3 * 108 * 50;
    expect(drop(mill("starting direct 108 A"))?.value?.value).toBeCloseTo((volts * 100) / 230, 6);
  });

  it("is estimated from how the motor is started where no current is stated, and nothing is asked by an estimate", () => {
    const volts = 2.8e-3 * 40 * 20 + 11e-3 * 6 * 18 * 50;
    expect(drop(mill("starting direct"))?.value?.value).toBeCloseTo((volts * 100) / 230, 6);
    expect(drop(mill("starting soft-start"))?.value?.value).toBeLessThan(
      drop(mill("starting direct"))?.value?.value ?? 0,
    );
    expect(asked(mill("starting direct"))).toEqual([]);
  });

  it("is asked about beyond what is usual, and not below", () => {
    expect(asked(mill("starting direct 108 A")).map(({ severity }) => severity)).toEqual(["information"]);
    expect(asked(mill("starting direct 108 A", "16 mm²"))).toEqual([]);
  });
});
