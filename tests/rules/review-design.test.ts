import { describe, expect, it } from "vitest";
import { studyWay } from "../../server/circuit/way.ts";
import { settings } from "../../server/cli/reporting.ts";
import { installationsOf } from "../../server/model/installation.ts";
import { propose } from "../../server/proposal/propose.ts";
import { workingOf } from "../../server/reports/working/working.ts";
import type { Setting } from "../../server/rules/frame/rule.ts";
import { fileOfText } from "../../server/workspace/loaded-file.ts";
import { fixed } from "../helpers/fixing.ts";
import { findingsOf, inSetting } from "../helpers/sample.ts";

/** Mistakes of judgement that a designer found in circuits on paper, each named after what was seen. */

const says = (way: string, check: string, setting: Setting = {}): string | undefined =>
  findingsOf(inSetting(way, setting).text).find((finding) => finding.check === check)?.message;

const installationOf = (way: string, setting: Setting = {}) => {
  const [installation] = installationsOf([fileOfText("sample.ways", inSetting(way, setting).text)]);
  if (!installation) throw new Error("The sample holds no installation.");
  return installation;
};
const working = (way: string, setting: Setting = {}): string => settings.text(workingOf(installationOf(way, setting)));

const sized = (way: string, setting: Setting = {}) => {
  const installation = installationOf(way, setting);
  const [board] = installation.boards;
  const [only] = board?.board.ways ?? [];
  if (!board || !only) throw new Error("The sample holds no way.");
  return propose(studyWay(only, board.context), {}, installation);
};

const home: Setting = { premises: "dwelling" };

describe("a cooker in a home", () => {
  const cooker = (load: string, serves = "cooker") => `way 1 radial "Cooker" {
device BS EN 60898 B32 6 kA
cable flat-twin line 6 mm² cpc 2.5 mm²
route clipped method C
length 12 m
serves ${serves}
load ${load}
}`;

  it("of 10.8 kW stands on 32 A: its rings and oven are never all on for long", () => {
    // 46.96 A all at once: 10 A + 30 % × 36.96 A = 21.09 A.
    expect(says(cooker("10.8 kW"), "design/load-over-device", home)).toBeUndefined();
    expect(working(cooker("10.8 kW"), home)).toContain("cooker = 10 A + 30 % × 37 A = 21.1 A");
  });

  it("takes 5 A more where its control unit has a socket", () => {
    expect(working(cooker("10.8 kW", "cooker sockets"), home)).toContain("10 A + 30 % × 37 A + 5 A = 26.1 A");
  });

  it("too large for its device even so is still found", () => {
    // 104.3 A at once: 10 A + 30 % × 94.35 A = 38.3 A.
    expect(says(cooker("24 kW"), "design/load-over-device", home)).toContain("38.3 A");
  });

  it("elsewhere takes all it has", () => {
    expect(says(cooker("10.8 kW"), "design/load-over-device")).toContain("47 A");
  });

  it("is given the 32 A such a circuit is made for, and not 50 A", () => {
    expect(sized(cooker("10.8 kW"), home).device).toBe("device BS EN 60898 B32 6 kA");
    expect(sized(cooker("3 kW"), home).device).toBe("device BS EN 60898 B16 6 kA");
  });
});

describe("a rewirable fuse", () => {
  it("that the cable bears is not said to fail in the working: its factor holds what I2 asks for", () => {
    const way = `way 1 radial "Heater" {
device BS 3036 15 A
cable flat-twin line 2.5 mm² cpc 1.5 mm²
route clipped method C
serves water-heater
Ib 13 A
}`;
    const text = working(way, { work: "existing" });
    expect(text).toContain("In 15 A ≤ Iz 19.6 A: holds");
    expect(text).not.toContain("1.45 × Iz");
  });
});

describe("a cable in the ground", () => {
  const buried = (device: string, route: string) => `way 1 radial "Gate house" {
device ${device}
cable armoured 90 °C line 16 mm² cpc 16 mm² cores 3
route ${route}
length 12 m
serves heating
Ib 60 A
}`;

  it("has less in hand for an overload: its device may be 0.9 of what it carries", () => {
    // Table 4E4A, method D: 91 A, of which 0.9 is 81.9 A.
    expect(says(buried("BS 88-3 80 A", "buried method D"), "design/device-over-capacity")).toBeUndefined();
    const small = buried("BS EN 60898 B50 6 kA", "buried method D").replace(
      "line 16 mm² cpc 16 mm²",
      "line 6 mm² cpc 6 mm²",
    );
    expect(says(small, "design/device-over-capacity")).toContain("47.7 A");
    expect(working(small)).toContain("In 50 A > 0.9 × Iz in the ground, 47.7 A");
  });

  it("is made as large as that asks by its fix", () => {
    const way = buried("BS EN 60898 B50 6 kA", "buried method D").replace(
      "line 16 mm² cpc 16 mm²",
      "line 6 mm² cpc 6 mm²",
    );
    const text = fixed("design/device-over-capacity", inSetting(way).text);
    expect(text).toContain("line 10 mm²");
    expect(findingsOf(text).map(({ check }) => check)).not.toContain("design/device-over-capacity");
  });

  it("beside others is grouped by the table for the ground, which takes more off than the one for air", () => {
    // 91 A × 0.65 for three direct in the ground; × 0.75 in ducts.
    expect(working(buried("BS 88-3 63 A", "buried method D grouped 3"))).toContain("Iz = 91 A × 0.65 = 59.2 A");
    expect(working(buried("BS 88-3 63 A", "duct method D grouped 3"))).toContain("Iz = 91 A × 0.75 = 68.3 A");
  });
});

describe("a plastic conduit that is to be the protective conductor", () => {
  it("is told once, and nobody is sent to its maker", () => {
    const way = `way 1 radial "Lathe" {
device BS EN 60898 C32 6 kA
cable singles line 6 mm² cpc-by conduit
route conduit 25 mm plastic method B
length 15 m
serves motor
Ib 28 A
}`;
    expect(says(way, "protective/steel-not-continuous")).toContain("here it is of plastic");
    expect(says(way, "protective/not-calculated")).toBeUndefined();
    expect(says(way.replace("plastic", "steel"), "protective/not-calculated")).toContain("goes by its make");
  });
});

describe("what is offered as a cure", () => {
  const after = (check: string, way: string, setting: Setting = {}): string[] =>
    findingsOf(fixed(check, inSetting(way, setting).text)).map((finding) => finding.check);

  it("takes the core that serves as the protective conductor along with the others", () => {
    const way = `way 1 radial "Press" {
device BS EN 60898 B63 6 kA
cable multicore line 6 mm² cpc 6 mm² cores 3
route clipped method C
length 10 m
serves heating
Ib 45 A
}`;
    const text = fixed("design/device-over-capacity", inSetting(way).text);
    expect(text).toContain("line 10 mm² cpc 10 mm²");
  });

  it("does not give flat cable a protective conductor it is never made with", () => {
    const way = `way 1 radial "Heater" {
device BS 88-2 63 A 80 kA gG
cable flat-twin line 2.5 mm² cpc 1.5 mm²
route clipped method C
length 10 m
serves heating
Ib 50 A
}`;
    expect(says(way, "design/cpc-too-small")).toMatch(/ 1\.5 mm² cpc is too small: .* needs 3\.45 mm²: fit 4 mm²\.$/);
    expect(after("design/cpc-too-small", way)).not.toContain("design/cable-does-not-exist");
  });

  it("does not name a larger device that would not disconnect", () => {
    const way = `way 1 radial "Heat pump" {
device BS EN 60898 D10 6 kA
cable flat-twin line 2.5 mm² cpc 1.5 mm²
route ceiling method 100
length 8 m
serves heat-pump
Ib 13 A
}`;
    const setting = { supply: "earthing TN-S\nZe 0.8 Ω declared\nIpf 1 kA" };
    expect(says(way, "design/load-over-device", setting)).toContain("but Zs is too high for it");
    expect(() => fixed("design/load-over-device", inSetting(way, setting).text)).toThrow("offers no fix");
  });

  it("does not put a ring behind a larger device: its load is shared out", () => {
    const way = `way 1 ring "Sockets" {
device BS EN 61009 B32 6 kA 30 mA type A
cable flat-twin line 2.5 mm² cpc 1.5 mm²
route clipped method C
length 50 m
serves sockets
Ib 38 A
}`;
    expect(says(way, "design/load-over-device")).toContain("Divide the load between two circuits");
    expect(() => fixed("design/load-over-device", inSetting(way).text)).toThrow("offers no fix");
  });
});

describe("what is proposed", () => {
  it("for a socket-outlet carries what may be plugged in, whatever load is named", () => {
    const way = `way 1 radial "Bench" {
device BS EN 61009 B32 6 kA 30 mA type A
cable flat-twin line 4 mm² cpc 1.5 mm²
route clipped method C
length 30 m
serves sockets
load 0.6 kW
}`;
    expect(sized(way).device).toBe("device BS EN 61009 B16 6 kA 30 mA type A");
  });

  const annexe = (more: string) => `way 9 feeder "Annexe" {
device BS 88-3 63 A
cable armoured 90 °C line 10 mm² cores 3 cpc 10 mm²
route clipped method C
length 60 m
feeds B
${more}
}
}
board B "Annexe" {
fed-from A
main-switch BS EN 60947-3 63 A
way 1 radial "Heaters" {
device BS EN 60898 B32 6 kA
cable flat-twin line 6 mm² cpc 2.5 mm²
route clipped method C
length 12 m
serves heating
load 6 kW
}
way 2 radial "Lights" {
device BS EN 60898 B6 6 kA
cable flat-twin line 1.5 mm² cpc 1.0 mm²
route clipped method C
length 12 m
serves lighting
load 400 W
}`;

  it("for a feeder leaves the circuits behind it enough of the voltage drop", () => {
    const found = sized(annexe(""));
    const drop = found.decisions.find(({ title }) => title === "Voltage drop")?.result;
    expect(drop).toContain("that the circuits behind it leave");
    expect(found.ruledOut.map(({ why }) => why).join(" ")).toContain("voltage drop");
    expect(found.cable).toBe("cable armoured 90 °C line 16 mm² cores 3 cpc 16 mm²");
  });

  it("for a feeder designed for less than its board draws says so", () => {
    expect(sized(annexe("Ib 10 A")).open.join(" ")).toContain("the board it feeds draws more, 27.");
  });

  it("for a feeder is no smaller than the devices behind it, which would leave the board dead", () => {
    const found = sized(annexe("Ib 10 A"));
    expect(found.device).toBe("device BS 88-3 32 A");
    expect(found.ruledOut.map(({ why }) => why)).toContain("a device of 32 A is downstream: this one would open first");
  });
});

describe("a cable where it is hotter than the cable may be", () => {
  it("is said to carry nothing there", () => {
    const way = `way 1 radial "Boiler" {
device BS EN 60898 B16 6 kA
cable flat-twin line 2.5 mm² cpc 1.5 mm²
route clipped method C ambient 75 °C
serves heating
}`;
    expect(says(way, "design/capacity-not-calculated")).toContain(
      "a 70 °C cable carries nothing where it is 75 °C around it",
    );
  });
});
