import { describe, expect, it } from "vitest";
import type { Setting } from "../../server/rules/frame/rule.ts";
import { fixed, foundBy } from "../helpers/fixing.ts";
import { inSetting } from "../helpers/sample.ts";

const of = (check: string, way: string, setting: Setting = {}) => foundBy(check, inSetting(way, setting).text);

describe("the worst stretch governs", () => {
  const way = `way 1 radial "Kiln" {
  device  BS EN 60898 B32 6 kA
  cable   singles line 6 mm² cpc 2.5 mm²
  route   conduit method B
  route   conduit method B grouped 3 ambient 40 °C
  route   trunking method B grouped 2
}`;
  const [finding] = of("design/device-over-capacity", way);

  it("with every factor in the working", () => {
    // 41 × 0.87 × 0.70 = 25.0 A.
    expect(finding?.limit?.amount).toBeCloseTo(24.97, 2);
    expect(finding?.working).toMatch(/Ca.*40 °C.*0.87/);
    expect(finding?.working).toMatch(/Cg.*3 circuits.*0.7/);
    expect(finding?.severity).toBe("error");
  });

  it("and related information points at it", () => {
    const [stretch] = finding?.related ?? [];
    expect(stretch?.message).toContain("25 A");
    expect(stretch?.spot.segment.text.slice(stretch.spot.start, stretch.spot.end)).toContain("grouped 3");
  });

  it("and the size offered passes", () => {
    const text = fixed("design/device-over-capacity", inSetting(way).text);
    expect(text).toContain("line 10 mm²");
    expect(foundBy("design/device-over-capacity", text)).toEqual([]);
  });
});

describe("In against Iz", () => {
  it("asks, and does not condemn, where the factors are rounded by more than what is short", () => {
    const way = `way 1 radial "Lights" {
  device  BS EN 60898 B10 6 kA
  cable   singles line 1.5 mm² cpc 1.5 mm²
  route   trunking method B grouped 6
  serves  lighting
  Ib      2.0 A
}`;
    // 17.5 × 0.57 = 9.975 A, and a factor that is printed as 0.57 may be 0.574: 10.05 A.
    const [finding] = of("design/device-over-capacity", way);
    expect(finding?.limit?.amount).toBeCloseTo(9.975, 3);
    expect(finding?.severity).toBe("warning");
    expect(finding?.message).toContain("by less than its factors are rounded to");
  });

  it("takes 0.725 for a rewirable fuse once", () => {
    const way = `way 1 radial "Cooker" {
  device  BS 3036 30 A
  cable   singles line 6 mm² cpc 2.5 mm²
  route   conduit method B
}`;
    // 41 × 0.725 = 29.7 A, a hair below 30 A.
    expect(of("design/device-over-capacity", way)[0]?.limit?.amount).toBeCloseTo(29.725, 3);
    expect(of("design/device-over-capacity", way.replace("6 mm²", "10 mm²"))).toEqual([]);
  });

  // 433.2.2: a relay along the run may protect the cable, where its setting is no more than the cable carries.
  it("is excused by a motor's relay only where its setting is stated and the cable carries it", () => {
    const way = `way 1 radial "Pump" {
  device  BS EN 60898 D32 10 kA
  cable   singles line 4 mm² cpc 4 mm²
  route   conduit method B grouped 2
  serves  motor
}`;
    const set = (setting: string, use = "motor") =>
      way.replace("serves  motor", `serves  ${use}\n  overload ${setting}`);
    expect(of("design/device-over-capacity", way)[0]?.severity).toBe("error");
    expect(of("design/device-over-capacity", set("20 A"))).toEqual([]);
    expect(of("design/device-over-capacity", set("40 A"))[0]?.severity).toBe("error");
    expect(of("design/device-over-capacity", set("20 A", "motor sockets"))[0]?.severity).toBe("error");
  });

  it("is unproven where the table is from memory, and could be so far wrong that it holds", () => {
    const way = `way 1 radial "Kiln" {
  device  BS EN 60898 C50 6 kA
  cable   armoured line 6 mm² cpc 6 mm²
  route   buried method D
}`;
    expect(of("design/device-over-capacity", way)[0]).toMatchObject({ severity: "warning", verdict: "unproven" });
    expect(of("design/device-over-capacity", way.replace("C50", "C63"))[0]).toMatchObject({ verdict: "fails" });
  });

  it("uses the columns for three loaded conductors", () => {
    const way = `way 1 radial "Lathe" {
  device  BS EN 60898 C32 10 kA
  phase   three
  cable   singles line 4 mm² cpc 4 mm²
  route   conduit method B
}`;
    expect(of("design/device-over-capacity", way, { supply: "earthing TN-S\nphases three" })[0]?.limit?.amount).toBe(
      28,
    );
  });

  it("calculates 90 °C cable in the ground by its own table", () => {
    const way = `way 1 feeder "Yard" {
  device  BS 88-2 80 A gG
  cable   armoured 90 °C line 10 mm² cpc-by armour
  route   buried method D
}`;
    expect(of("design/device-over-capacity", way)[0]?.limit?.amount).toBe(71);
  });
});

describe("a radial that should be a ring", () => {
  const way = `way 1 radial "Sockets" {
  device  BS EN 61009 B32 6 kA 30 mA type A
  cable   flat-twin line 2.5 mm² cpc 1.5 mm²
  route   clipped method C
  serves  sockets
}`;

  it("is spoken of once, and not again as In over Iz", () => {
    expect(of("design/socket-radial-cable", way)).toHaveLength(1);
    expect(of("design/device-over-capacity", way)).toEqual([]);
  });

  it("either fix puts it right", () => {
    for (const which of [0, 1]) {
      const text = fixed("design/socket-radial-cable", inSetting(way).text, which);
      expect(foundBy("design/socket-radial-cable", text)).toEqual([]);
      expect(foundBy("design/device-over-capacity", text)).toEqual([]);
    }
  });

  it("is none in 90 °C conductors that carry it", () => {
    const hot = way.replace("flat-twin line", "singles 90 °C line").replace("cpc 1.5", "cpc 2.5");
    expect(of("design/socket-radial-cable", hot)).toEqual([]);
  });

  it("is offered a size that its route lets carry the device, and no device that the cable does not carry", () => {
    const bunched = `way 1 radial "Sockets" {
  device BS EN 60898 B32 6 kA
  cable singles line 2.5 mm² cpc 2.5 mm²
  route conduit method B grouped 6
  serves sockets
}`;
    const [finding] = of("design/socket-radial-cable", bunched);
    expect(finding?.message).toMatch(/fit 10 mm²\.$/);
    expect(finding?.fixes.map(({ title }) => title)).toEqual(["Make it 10 mm²"]);
    const text = fixed("design/socket-radial-cable", inSetting(bunched).text, 0);
    expect(foundBy("design/device-over-capacity", text)).toEqual([]);
  });
});

describe("a ring", () => {
  it("in mineral cable may be 1.5 mm²", () => {
    const way = (csa: string) => `way 1 ring "Sockets" {
  cable  mineral line ${csa} mm² cpc-by sheath
}`;
    expect(of("design/ring-cable-size", way("1.5"))).toEqual([]);
    expect(of("design/ring-cable-size", way("1.0"))).toHaveLength(1);
  });

  it("of 20 A is judged like any other circuit", () => {
    const way = `way 1 ring "Sockets" {
  device  BS EN 61009 B20 6 kA 30 mA type A
}`;
    expect(of("design/ring-device", way)).toEqual([]);
  });

  it("keeps its 20 A with the size offered", () => {
    const way = `way 1 ring "Sockets" {
  device  BS EN 61009 B32 6 kA 30 mA type A
  cable   singles line 2.5 mm² cpc 2.5 mm²
  route   conduit method B grouped 4
}`;
    const text = fixed("design/ring-capacity", inSetting(way).text);
    expect(foundBy("design/ring-capacity", text)).toEqual([]);
  });
});

describe("a protective conductor", () => {
  const way = (device: string, line: string, cpc: string) => `way 1 radial "Cooker" {
  device  ${device}
  cable   flat-twin line ${line} mm² cpc ${cpc} mm²
  serves  cooker
}`;

  it("of the usual flat cables is enough by calculation", () => {
    const usual: readonly [string, string, string][] = [
      ["BS EN 60898 B6 6 kA", "1.5", "1.0"],
      ["BS EN 60898 B32 6 kA", "2.5", "1.5"],
      ["BS EN 60898 C32 6 kA", "6", "2.5"],
      ["BS EN 60898 B50 6 kA", "16", "6"],
      ["BS 88-3 20 A", "2.5", "1.5"],
      ["BS 3036 30 A", "6", "2.5"],
    ];
    for (const [device, line, cpc] of usual) expect(of("design/cpc-too-small", way(device, line, cpc))).toEqual([]);
  });

  it("says by which method it was judged", () => {
    const [finding] = of("design/cpc-too-small", way("BS EN 60898 D32 6 kA", "6", "1.5"));
    // 640 A × 0.95 is taken out again: Ia = 640 A, √0.1 s, k = 115.
    expect(finding?.limit?.amount).toBeCloseTo((640 * Math.sqrt(0.1)) / 115, 2);
    expect(finding?.working).toContain("by the adiabatic equation");
    expect(finding?.severity).toBe("warning");
  });

  it("advises by the table where the device's curve is not known", () => {
    const [finding] = of("design/cpc-too-small", way("BS EN 60947-2 160 A 36 kA", "50", "10"));
    expect(finding?.limit?.amount).toBe(25);
    expect(finding?.severity).toBe("information");
    expect(finding?.working).toContain("Table 54.7");
  });
});

// 521.10.1 asks for an enclosure; a line between buildings (417.3.1) has none, and hangs out of reach.
describe("cables without a sheath in the open", () => {
  const said = (kind: string, cable = "singles") =>
    of(
      "design/singles-outside-containment",
      `way 1 radial "Yard" {\ncable ${cable} line 4 mm² cpc 4 mm²\nroute ${kind}\n}`,
    );

  it("are an overhead line where that is written, and what cannot be seen is asked", () => {
    expect(said("overhead")).toMatchObject([
      { severity: "information", message: expect.stringContaining("out of reach") },
    ]);
    expect(said("overhead method F")).toHaveLength(1);
    expect(said("overhead", "multicore 90 °C")).toEqual([]);
  });

  it("are told the word where they may be one, and nowhere else", () => {
    expect(said("free-air method F")).toMatchObject([
      { severity: "error", message: expect.stringContaining("write overhead") },
    ]);
    expect(said("clipped")).toMatchObject([{ severity: "error", message: expect.not.stringContaining("overhead") }]);
  });
});

// A star-delta starter changes three lines over: 7.5 kW are 10.9 A on each and not 32.6 A on one.
describe("a motor with a star-delta starter", () => {
  const planer = (more: string) => `way 1 radial "Planer" {
  device  BS EN 60898 C20 10 kA
  serves  motor
  load    7.5 kW
  ${more}
}`;
  const three = { supply: "earthing TN-S\nphases three\nZe 0.30 Ω" };

  it("is on three lines of a board that has them", () => {
    expect(of("design/load-over-device", planer("starting star-delta"), three)).toEqual([]);
    expect(of("design/load-over-device", planer("starting direct"), three)).toHaveLength(1);
    expect(of("design/load-over-device", planer("starting star-delta\nphase L1"), three)).toHaveLength(1);
    expect(of("design/load-over-device", planer("starting star-delta"))).toHaveLength(1);
  });
});

// 7.5 kW at 90 % and 0.85 draw 14.2 A from each line, and 8.2 A flow in each winding: relays stand in either.
describe("the overload relay of a star-delta starter", () => {
  const three = { supply: "earthing TN-S\nphases three\nZe 0.30 Ω" };
  const planer = (
    overload: string,
    starting = "star-delta",
    cable = "line 2.5 mm² cpc 2.5 mm² cores 4",
  ) => `way 1 radial "Planer" {
  device  BS EN 60898 C32 10 kA three-pole
  phase   three
  cable   armoured 90 °C ${cable}
  route   clipped method C grouped 4
  serves  motor
  load    7.5 kW efficiency 90 %
  power-factor 85 %
  starting ${starting}
  overload ${overload}
}`;
  const families = ["design/relay-below-load", "design/relay-above-load"];
  const said = (way: string) => families.flatMap((id) => of(id, way, three).map(({ message }) => message));

  it.each(["8.2 A", "9 A", "14.2 A", "15 A"])("may be set to %s", (setting) =>
    expect(said(planer(setting))).toEqual([]),
  );
  it("is too low for the windings too", () =>
    expect(said(planer("7 A"))).toEqual([
      expect.stringMatching(/set to 7 A, which before the windings lets 12\.1 A .*below/),
    ]));
  it("is too low for the lines and too high for the windings", () =>
    expect(said(planer("11 A"))).toEqual([expect.stringMatching(/lets 19\.1 A flow in the lines.*0\.58 times/)]));
  it("of a motor that is started otherwise stands in the lines", () =>
    expect(said(planer("8.2 A", "direct"))).toEqual([
      expect.stringMatching(/set to 8\.2 A, below the design current/),
    ]));
  it("protects the cable by what the lines carry", () => {
    const over = (setting: string) =>
      of("design/device-over-capacity", planer(setting, "star-delta", "line 1.5 mm² cpc 1.5 mm² cores 4"), three);
    expect(over("14.2 A")).toEqual([]);
    expect(over("11 A")).toHaveLength(1);
  });
  it("holds a motor that draws a little more than it is set to", () => {
    expect(said(planer("13.6 A", "direct"))).toEqual([]);
    expect(said(planer("13.4 A", "direct"))).toHaveLength(1);
  });
});

describe("what is not known", () => {
  it("asks for the part of BS 88, which has several", () => {
    const fuse = (standard: string) =>
      `way 1 radial "Kiln" {\n  device  ${standard} 23 A\n  cable singles line 6 mm² cpc 2.5 mm²\n  serves heating\n}`;
    expect(of("loop/limit-unknown", fuse("BS 88"))[0]?.message).toContain("such as BS 88-2 or BS 88-3");
    expect(of("loop/limit-unknown", fuse("BS 88-2"))[0]?.message).not.toContain("several parts");
  });

  it("names a table that lacks the method, and is not taken for a missing route", () => {
    const way = `way 1 radial "Kiln" {
  device  BS EN 60898 B32 6 kA
  cable   singles line 6 mm² cpc 2.5 mm²
  route   free-air method F
}`;
    expect(of("design/capacity-not-calculated", way)[0]?.message).toContain("method F");
    expect(of("design/route-not-stated", way)).toEqual([]);
  });

  it("is only mentioned of old work", () => {
    const way = `way 1 radial "Kiln" {
  device  BS EN 60898 B32 6 kA
  cable   flat-twin line 6 mm² cpc 2.5 mm²
}`;
    expect(of("design/route-not-stated", way)[0]?.severity).toBe("warning");
    expect(of("design/route-not-stated", way, { work: "existing" })[0]?.severity).toBe("information");
  });
});

describe("load and device", () => {
  it("offers a rating that carries the load and that the cable bears", () => {
    const way = `way 1 radial "Heater" {
  device  BS EN 60898 B16 6 kA
  cable   singles line 4 mm² cpc 4 mm²
  route   conduit method B
  Ib      18 A
}`;
    const text = fixed("design/load-over-device", inSetting(way).text);
    expect(text).toContain("B20");
    expect(foundBy("design/load-over-device", text)).toEqual([]);
  });

  it("names the voltage a power is stated at where that would let the device carry it", () => {
    const said = (load: string, curve = "B40") =>
      /rated 240 V/.test(
        foundBy(
          "design/load-over-device",
          inSetting(`way 1 radial "Shower" {\ndevice BS EN 60898 ${curve} 6 kA\nserves shower\n${load}\n}`).text,
        )[0]?.message ?? "nothing found",
      );
    expect(said("load 9.5 kW")).toBe(true);
    expect(said("load 9.5 kW", "B32")).toBe(false);
    expect(said("Ib 41.3 A")).toBe(false);
    expect(said("load 9.5 kW rated 230 V")).toBe(false);
  });

  it("does not add up loads that are never on at once", () => {
    const way = `way 1 radial "Cooker" {
  device  BS EN 60898 B32 6 kA
  load    7 kW "Hob"
  load    4 kW "Oven"
}`;
    expect(of("design/load-over-device", way)).toEqual([]);
  });

  it("says nothing of a fan behind a fused connection unit", () => {
    const way = `way 1 radial "Heater" {
  device  BS EN 60898 B40 6 kA
  run     A 7 m S1
  fused   S1 13 A
  Ib      12 A
  serves  heating
}`;
    expect(of("design/device-oversized", way)).toEqual([]);
  });
});

describe("a route that is known in part", () => {
  it("still tells that the known part is too small", () => {
    const way = `way 1 radial "Kiln" {
  device  BS EN 60898 B32 6 kA
  cable   singles line 2.5 mm² cpc 2.5 mm²
  route   conduit method B
  route   conduit method D
}`;
    expect(of("design/device-over-capacity", way)[0]?.limit?.amount).toBe(24);
    expect(of("design/capacity-not-calculated", way)).toHaveLength(1);
  });
});

it("a method that does not fit the route is told of in words a person would use", () => {
  const way = (route: string) => `way 1 radial "Kiln" {
  cable   flat-twin line 2.5 mm² cpc 1.5 mm²
  route   ${route}
}`;
  const said = (route: string) => of("design/method-against-route", way(route))[0]?.message;
  expect(said("clipped method A")).toContain("a cable clipped to a surface: write method C");
  expect(said("free-air method C")).toContain("a cable in free air, spaced from the wall: write method E or F");
});
