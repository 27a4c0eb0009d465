/** What several boards, ways and devices are together, and what one of two is not. */
import { describe, expect, it } from "vitest";
import { rcdsInWork } from "../../server/boards/board-rcds.ts";
import { discrimination } from "../../server/boards/coordination.ts";
import { demandOf } from "../../server/boards/demand.ts";
import { originDemand } from "../../server/boards/demand-origin.ts";
import { circuitDrop } from "../../server/boards/drop-path.ts";
import { faultLevels } from "../../server/boards/fault-levels.ts";
import { rcdLeakages } from "../../server/boards/leakage.ts";
import type { Setting } from "../../server/rules/frame/rule.ts";
import { installationOf, nodeOf, wayOf } from "../helpers/place.ts";
import { inSetting } from "../helpers/sample.ts";

const board = (ways: readonly string[], setting: Setting = {}) => {
  const all = ways.map((lines, at) => `way ${at + 1} radial "Circuit" {\n${lines}\n}`).join("\n");
  return nodeOf(installationOf(inSetting(all, setting).text), "A");
};

// On-Site Guide, Table A1, of a home: 10 A, 30 % of the rest of all cookers, and 5 A for a socket on a control unit. 11.5 kW are 50 A.
it.each([
  [["cooker"], 10 + 0.3 * 40],
  [["cooker sockets"], 10 + 0.3 * 40 + 5],
  [["cooker", "cooker"], 10 + 0.3 * 90],
  [["cooker", "cooker sockets"], 10 + 0.3 * 90 + 5],
  [["cooker sockets", "cooker"], 10 + 0.3 * 90 + 5],
])("cookers of 11.5 kW that serve %j take %d A", (uses, amperes) => {
  const node = board(
    uses.map((use) => `serves ${use}\nload 11.5 kW`),
    { premises: "dwelling" },
  );
  expect(demandOf(node)?.greatest.value).toBeCloseTo(amperes, 9);
});

describe("a demand of several origins", () => {
  const diverse = (...boards: readonly string[]) => {
    const text = boards.map(
      (lines, at) =>
        `board B${at} "B${at}" {\nfed-from supply\n${lines}\nway 1 radial "W" {\nIb 10 A\n}\nway 2 radial "W" {\nIb 4 A\n}\n}`,
    );
    const found = originDemand(
      installationOf(
        `wayfile 1\ninstallation "Works" {\npremises industrial\nsupply {\nearthing TN-S\n}\n${text.join("\n")}\n}`,
      ),
    );
    return found && [found.greatest.value, found.diverse];
  };
  it("is one with diversity where all of them are", () => {
    expect(diverse("diversity 50 %", "diversity 50 %")).toEqual([14, true]);
    expect(diverse("diversity 50 %", "")).toEqual([21, false]);
    expect(diverse("", "diversity 50 %")).toEqual([21, false]);
  });
});

describe("the RCDs that several ways share, in the work", () => {
  const of = (...ways: readonly string[]) => {
    const rcds = "rcd east BS EN 61008 63 A 30 mA type A\nrcd west BS EN 61008 63 A 30 mA type A";
    const { board: at, studies } = board(ways, { board: `fed-from supply\n${rcds}` });
    return rcdsInWork(at.head, studies).map(({ name }) => name);
  };
  it("are all of them where all is in the work, and of an old board those before a circuit of it", () => {
    expect(of("behind east", "behind east")).toEqual(["east", "west"]);
    expect(of("behind east", "behind west\nwork not-part")).toEqual(["east"]);
    expect(of("behind east\nwork not-part", "behind west")).toEqual(["west"]);
    expect(of("behind east\nwork not-part", "behind west\nwork not-part")).toEqual([]);
  });
});

describe("what leaks behind an RCD", () => {
  const of = (...ways: readonly string[]) =>
    rcdLeakages(
      board(
        ways.map((lines) => `behind east\n${lines}`),
        { board: "fed-from supply\nrcd east BS EN 61008 63 A 30 mA type A" },
      ),
    ).map(({ sum, leakage }) => [Number((sum.value * 1000).toFixed(6)), leakage.silent.length]);
  const read = (milliamps: number, day = "2026-03-05") => `live ${day} {\nleakage ${milliamps} mA\n}`;
  const loop = "live 2026-03-05 {\nZs 0.62 Ω\n}";

  it.each([
    [["", ""], []],
    [["leakage 2 mA", ""], [[2, 1]]],
    [["", "leakage 2 mA"], [[2, 1]]],
    [["", read(3)], [[3, 1]]],
    [[`${loop}\n${read(3, "2021-03-05")}`, loop], [[3, 1]]],
    [[loop, `${read(3)}\n${loop.replace("2026", "2021")}`], [[3, 1]]],
    [["leakage 2 mA", read(3)], [[5, 0]]],
    [[`${read(3).replace("3 mA", 'LIM "No clamp"')}\nleakage 2 mA`, ""], [[2, 1]]],
    [[read(3).replace("3 mA", "<1 mA"), "leakage 2 mA"], [[2, 1]]],
  ])("of %j: %j", (ways, wanted) => expect(of(...ways)).toEqual(wanted));

  it("counts all of the board behind a feeder, or what the feeder states itself", () => {
    const behind = (feeder: string, ...ways: readonly string[]) => {
      const rest = ways.map((lines, at) => `way ${at + 1} radial "W" {\n${lines}\n}`).join("\n");
      const text = inSetting(
        `way 1 feeder "F" {\nbehind east\nfeeds B\n${feeder}\n}\n}\nboard B "Annexe" {\nfed-from A\n${rest}`,
        { board: "fed-from supply\nrcd east BS EN 61008 63 A 100 mA type A" },
      ).text;
      return rcdLeakages(nodeOf(installationOf(text), "A")).map(({ sum }) => [
        Number((sum.value * 1000).toFixed(6)),
        sum.steps.map(({ formula }) => formula).join(),
      ]);
    };
    const whole = "protective conductor currents";
    expect(behind("", "leakage 2 mA", "leakage 3 mA")).toEqual([[5, whole]]);
    expect(behind("", "leakage 2 mA", "")).toEqual([[2, `${whole}, at least`]]);
    expect(behind("leakage 7 mA", "leakage 2 mA", "")).toEqual([[7, whole]]);
    expect(behind("", "", "")).toEqual([]);
    // One of two boards further out states what leaks.
    const two = (one: string, other: string) =>
      inSetting(
        `way 1 feeder "F" {\nbehind east\nfeeds B\n}\nway 2 feeder "G" {\nbehind east\nfeeds C\n}\n}\nboard B "Annexe" {\nfed-from A\nway 1 radial "W" {\n${one}\n}\n}\nboard C "Store" {\nfed-from A\nway 1 radial "W" {\n${other}\n}`,
        { board: "fed-from supply\nrcd east BS EN 61008 63 A 100 mA type A" },
      ).text;
    const sums = (text: string) => rcdLeakages(nodeOf(installationOf(text), "A")).map(({ sum }) => sum.value);
    expect(sums(two("leakage 4 mA", ""))).toEqual([0.004]);
    expect(sums(two("", "leakage 4 mA"))).toEqual([0.004]);
  });
});

describe("the drop of a circuit", () => {
  const of = (uses: string) =>
    circuitDrop(
      wayOf(board([`cable flat-twin line 1.5 mm² cpc 1.0 mm²\nlength 10 m\nIb 5 A\nserves ${uses}`]), "1"),
    ) !== undefined;
  it.each([
    ["lighting", true],
    ["selv", false],
    ["pv", false],
    ["storage", false],
    ["storage lighting", false],
    ["lighting pv", false],
  ])("that serves %s is compared with a limit: %s", (uses, wanted) => expect(of(uses)).toBe(wanted));
});

describe("behind a feeder", () => {
  const works = (feeder: string, ...devices: readonly string[]) =>
    nodeOf(
      installationOf(`wayfile 1
installation "Works" {
  standard BS 7671:2018+A2:2022
  supply {
    earthing TN-S
    Ze 0.20 Ω
    Ipf 2 kA
  }
  board A "Main" {
    fed-from supply
    way 1 feeder "Annexe" {
      feeds B
      ${feeder}
    }
  }
  board B "Annexe" {
    fed-from A
${devices.map((device, at) => `way ${at + 1} radial "Bench" {\ndevice ${device}\n}`).join("\n")}
  }
}`),
      "B",
    );

  // BS EN 60898: a type C breaker of 63 A opens at once from 315 A; of a fuse no such figure is kept.
  it.each([
    [["BS EN 60898 B16 6 kA", "BS EN 60898 B20 6 kA"], "total"],
    [["BS EN 60898 B16 6 kA", "BS 88-3 32 A"], "unknown"],
    [["BS 88-3 32 A", "BS EN 60898 B16 6 kA"], "unknown"],
  ])("of C63 %j discriminate: %s", (devices, kind) => {
    expect(discrimination(works("device BS EN 60898 C63 10 kA", ...devices), 300)?.kind).toBe(kind);
  });

  it("without a length no fault level is known, and of a cable without a cpc none to earth", () => {
    const cable = (cpc: string, length = "length 20 m") => `cable multicore line 16 mm² ${cpc} cores 3\n${length}`;
    const levels = (feeder: string) => {
      const found = faultLevels(works(feeder));
      return found && [found.neutral !== undefined, found.earth !== undefined];
    };
    expect(levels(cable("cpc 16 mm²"))).toEqual([true, true]);
    expect(levels(cable(""))).toEqual([true, false]);
    expect(levels(cable("cpc 16 mm²", ""))).toBeUndefined();
  });
});
