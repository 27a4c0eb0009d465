/** Breakers to BS EN 60947-2 by their settings: figures by hand, releases surely opening at 1.2 times what they are set to. */
import { describe, expect, it } from "vitest";
import { discrimination } from "../../server/boards/coordination.ts";
import { installationOf, nodeOf, wayOf } from "../helpers/place.ts";
import { findingsOf } from "../helpers/sample.ts";

const works = (settings: string, length = 30, below = "BS EN 60898 C32 10 kA") => `wayfile 1
installation "Works" {
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
      device BS EN 60947-2 160 A 36 kA
      settings ${settings}
      feeds B
      cable armoured 90 °C line 50 mm² cpc 50 mm² cores 3
      route tray method E
      length ${length} m
    }
  }
  board B "Shop" {
    fed-from A
    way 1 radial "Press" {
      device ${below}
      cable armoured 90 °C line 10 mm² cpc 10 mm² cores 3
      route tray method E
      length 20 m
      serves appliance
      Ib 25 A
    }
  }
}`;

const feeder = (text: string) => wayOf(nodeOf(installationOf(text), "A"), "1");
const checks = (text: string) => findingsOf(text).map(({ check, severity }) => `${severity} ${check}`);

describe("a breaker with settings", () => {
  it("protects against overload by what its release is set to", () => {
    const set = feeder(works("thermal 100 A instantaneous 1000 A"));
    expect(set.device?.rating).toBe(100);
  });

  it("has the loop limit of the release that opens in time", () => {
    // 230 × 0.95 over 1.2 × 1000 A, and over 1.2 × 500 A where the short-time release may take 0.3 s of the 5 s.
    expect(feeder(works("instantaneous 1000 A")).overcurrentLimit?.exact).toBeCloseTo(218.5 / 1200, 6);
    const short = feeder(works("short-time 500 A within 0.3 s instantaneous 1600 A"));
    expect(short.overcurrentLimit?.exact).toBeCloseTo(218.5 / 600, 6);
    expect(feeder(works("instantaneous 1000 A tolerance 10 %")).overcurrentLimit?.exact).toBeCloseTo(218.5 / 1100, 6);
    // Without the time it takes, a short-time release opens nothing that is known.
    expect(feeder(works("short-time 500 A")).overcurrentLimit).toBeUndefined();
  });

  it("that is set too high for its loop is an error", () => {
    expect(checks(works("instantaneous 500 A"))).not.toContain("error loop/design-loop-over-limit");
    expect(checks(works("instantaneous 5000 A", 120))).toContain("error loop/design-loop-over-limit");
  });

  it("discriminates up to where it may open at once", () => {
    const told = (text: string, most: number) => discrimination(nodeOf(installationOf(text), "B"), most);
    expect(told(works("instantaneous 1000 A"), 3000)).toMatchObject({ kind: "partial", upTo: { value: 800 } });
    expect(told(works("instantaneous 1000 A"), 700)?.kind).toBe("total");
    expect(told(works("short-time 800 A within 0.2 s"), 3000)?.kind).toBe("total");
    expect(told(works("instantaneous 1000 A", 30, "BS 88-2 32 A 80 kA gG"), 3000)?.kind).toBe("unknown");
  });
});
