/**
 * The design of one circuit, line by line: what each comes to, calculated here again from the tables of BS 7671 (4D1A and
 * 4D1B of 6 mm² in conduit: 41 A, 7.3 mV/A/m), BS EN 60228 (3.08 mΩ/m of 6 mm², 7.41 of 2.5 mm²) and k of Tables 43.1 and
 * 54.3; and what is said where something is missing.
 */
import { describe, expect, it } from "vitest";
import { type DesignLine, designOfWay } from "../../server/boards/design.ts";
import { networkOf } from "../../server/boards/network.ts";
import type { Setting } from "../../server/rules/frame/rule.ts";
import { installationOf } from "../helpers/place.ts";
import { inSetting } from "../helpers/sample.ts";

const town: Setting = { supply: "earthing TN-S\nZe 0.30 Ω\nIpf 1.2 kA\ncutout BS 88-3 100 A" };

function linesOf(lines: string, setting: Setting = {}, kind = "radial"): readonly DesignLine[] {
  const { text } = inSetting(`way 1 ${kind} "Kiln" {\n${lines}\n}`, { ...town, ...setting });
  return networkOf(installationOf(text)).nodes.flatMap((node) =>
    node.studies.flatMap((study) => designOfWay(node, study)),
  );
}

const amountOf = (figure: DesignLine["value"]): string =>
  figure ? ` ${Number(figure.value.toPrecision(4))} ${figure.unit}` : "";
const shown = ({ verdict, value, limit, reason }: DesignLine): string =>
  `${verdict}${amountOf(value)}${limit ? ` of${amountOf(limit)}` : ""}${reason === undefined ? "" : ` (${reason})`}`;
const lineOf = (lines: readonly DesignLine[], title: string): string | undefined => {
  const found = lines.find((one) => one.title === title);
  return found && shown(found);
};

const inConduit = "cable singles line 6 mm² cpc 2.5 mm²\nroute conduit method B\nlength 20 m";
const hot = 1.2;
/** Ω of so many metres, out and back. */
const loopOf = (start: number, length: number, line: number, other: number): number =>
  start + (length * (line + other) * hot) / 1000;
const least = (loop: number): number => (230 * 0.95) / loop;
const four = (value: number): number => Number(value.toPrecision(4));

describe("a circuit whose lines are all known", () => {
  const lines = `device BS EN 60898 B32 6 kA\n${inConduit}\nIb 30 A`;
  const [short, earth] = [least(loopOf(230 / 1200, 20, 3.08, 3.08)), least(loopOf(0.3, 20, 3.08, 7.41))];

  it.each([
    ["Design current", "figure 30 A"],
    ["Capacity of the cable", "figure 41 A"],
    ["Ib ≤ In", "holds 2 A (the value is what is left)"],
    ["In ≤ Iz", "holds 9 A (the value is what is left)"],
    ["I2 ≤ 1.45 × Iz", "holds 13.05 A (the value is what is left)"],
    ["Voltage drop from the origin", `holds ${four((7.3 * 30 * 20) / 2300)} % of 5 %`],
    ["Loop impedance, conductors hot", `holds ${four(loopOf(0.3, 20, 3.08, 7.41))} Ω of 1.37 Ω`],
    ["Least short-circuit current at the end", `figure ${four(short)} A`],
    ["Least earth fault current at the end", `figure ${four(earth)} A`],
    ["Breaking capacity", "holds 6000 A of 1200 A"],
    // 5 × 32 A open it within 0.1 s: the size is enough for the fault that flows.
    [
      "Live conductors in a fault",
      `holds 6 mm² of ${four((earth * Math.sqrt(0.1)) / 115)} mm² (the device also protects the cable against overload, by which 435.1 takes it to be protected against faults)`,
    ],
    [
      "Let-through energy at the board",
      `holds 7200 A²s of ${four(115 ** 2 * 2.5 ** 2)} A²s (for the protective conductor, the breaker taken as class 3)`,
    ],
  ])("%s: %s", (title, wanted) => expect(lineOf(linesOf(lines), title)).toBe(wanted));
});

describe("the overload of a cable", () => {
  it.each([
    ["Ib 30 A", "Overload", "open (the device or its rating is not stated)"],
    [
      "device BS EN 60898 B32 6 kA\ncable singles line 6 mm² cpc 2.5 mm²\nIb 30 A",
      "Overload",
      "open (the route is not stated)",
    ],
    [`device BS EN 60898 B32 6 kA\n${inConduit}`, "Ib ≤ In", undefined],
    [`device BS EN 60898 B32 6 kA\n${inConduit}\nIb 33 A`, "Ib ≤ In", "fails -1 A (the value is what is left)"],
    [`device BS EN 60898 B32 6 kA\n${inConduit}\nIb 32 A`, "Ib ≤ In", "holds 0 A (the value is what is left)"],
    [
      `device BS EN 60898 B32 6 kA\n${inConduit.replace("method B", "method B grouped 2")}`,
      "In ≤ Iz",
      "holds 0.8 A (the value is what is left)",
    ],
    [
      `device BS EN 60898 B32 6 kA\n${inConduit.replace("method B", "method B grouped 3")}`,
      "In ≤ Iz",
      "fails -3.3 A (the value is what is left)",
    ],
  ])("%j: %s is %s", (lines, title, wanted) => expect(lineOf(linesOf(lines), title)).toBe(wanted));

  // 433.1.204: 20 A of a ring's cable; 2.5 mm² carries 24 A in conduit, 0.8 of it beside another circuit.
  it("of a ring is 20 A at least", () => {
    const ring = (route: string) =>
      linesOf(`device BS EN 60898 B32 6 kA\ncable singles line 2.5 mm² cpc 2.5 mm²\nroute ${route}`, {}, "ring");
    expect(lineOf(ring("conduit method B"), "Capacity of a ring's cable")).toBe("holds 24 A of 20 A");
    expect(lineOf(ring("conduit method B grouped 2"), "Capacity of a ring's cable")).toBe("fails 19.2 A of 20 A");
    expect(lineOf(linesOf(`device BS EN 60898 B32 6 kA\n${inConduit}`), "Capacity of a ring's cable")).toBeUndefined();
  });

  // Table 4D4A: 6 mm² of 70 °C armoured cable in free air carries 53 A, which is what its terminals stand.
  it("of 90 °C is what terminals of 70 °C stand", () => {
    const of = (more: string) =>
      lineOf(
        linesOf(
          `device BS EN 60898 B50 6 kA\ncable armoured 90 °C line 6 mm² cpc 6 mm² cores 3\nroute tray method E\n${more}`,
        ),
        "Load of a 90 °C cable, for terminals of 70 °C",
      );
    expect(of("Ib 50 A\nterminals 70 °C")).toBe("holds 50 A of 53 A");
    expect(of("Ib 50 A")).toBe("holds 50 A of 53 A");
    expect(of("Ib 50 A\nterminals 90 °C")).toBeUndefined();
    // Of the device alone nothing is known of the load.
    expect(of("terminals 70 °C")).toBeUndefined();
  });
});

describe("the design current", () => {
  it.each([
    ["load 2.3 kW", {}, "figure 10 A", "Ib, sum of the loads"],
    ["load 2.3 kW\npower-factor 80 %", {}, "figure 12.5 A", "Ib, sum of the loads, by the power factor"],
    ["Ib 12 A", {}, "figure 12 A", "Ib, as stated"],
    // On-Site Guide: 10 A and three tenths of the other 30 A.
    [
      "serves cooker\nload 9.2 kW",
      { premises: "dwelling" },
      "figure 19 A",
      "Ib, the loads with the diversity of a cooker in a home",
    ],
    ["", {}, "open (neither a design current nor loads are stated)", undefined],
  ])("of %j", (lines, setting, wanted, how) => {
    const found = linesOf(lines, setting).find(({ title }) => title === "Design current");
    expect([
      found && shown(found),
      found?.steps[0] && "formula" in found.steps[0] ? found.steps[0].formula : undefined,
    ]).toEqual([wanted, how]);
  });
});

describe("breaking capacity", () => {
  const strong = "earthing TN-S\nIpf 8 kA\ncutout BS 88-3 100 A";
  const cable = "cable singles line 6 mm² cpc 2.5 mm²";

  it.each([
    ["B32 6 kA", { supply: strong }, "fails 6000 A of 8000 A"],
    ["B32 10 kA", { supply: strong }, "holds 1e4 A of 8000 A"],
    ["B32 back-up 6 kA", { supply: strong }, "figure 6000 A (it breaks the fault together with the device upstream)"],
    [
      "B32 6 kA",
      { supply: strong, board: "fed-from supply\nconditional-rating 16 kA" },
      "figure 6000 A (the assembly's conditional rating covers it)",
    ],
    [
      "B32 6 kA",
      { supply: strong, board: "fed-from supply\nconditional-rating 8 kA" },
      "figure 6000 A (the assembly's conditional rating covers it)",
    ],
    ["B32 6 kA", { supply: strong, board: "fed-from supply\nconditional-rating 7.9 kA" }, "fails 6000 A of 8000 A"],
    ["B32", {}, "open (the breaking capacity of the device is not stated)"],
    ["B32 6 kA", { supply: "earthing TN-S" }, "open (no fault current is recorded here or upstream)"],
  ])("of %s", (device, setting, wanted) => {
    const found = lineOf(linesOf(`device BS EN 60898 ${device}\n${cable}`, setting), "Breaking capacity");
    expect(found?.replace("10000", "1e4")).toBe(wanted);
  });
});

describe("the heat of a fault", () => {
  const fused = (device: string, more: string) => linesOf(`device ${device}\n${more}\nroute conduit method B`);
  const title = "Live conductors in a fault";

  // A fuse to BS 88-2 of 32 A, 0.99 Ω at 0.4 s, opens no slower at 333 A: 0.30 Ω and 20 m of 2.5 mm² both ways.
  it("of a fuse that does not protect against overload is asked of the size", () => {
    const earth = least(loopOf(0.3, 20, 7.41, 7.41));
    expect(lineOf(fused("BS 88-2 32 A 80 kA gG", "cable singles line 2.5 mm² cpc 2.5 mm²\nlength 20 m"), title)).toBe(
      `holds 2.5 mm² of ${four((earth * Math.sqrt(0.4)) / 115)} mm²`,
    );
  });

  it.each([
    [
      "BS 88-2 63 A 80 kA gG",
      "cable singles line 2.5 mm² cpc 2.5 mm²\nlength 60 m",
      "open (the least fault current or the time of the device is not known)",
    ],
    [
      "BS EN 60898 B32 6 kA",
      "cable singles line 1 mm² cpc 1 mm²\nlength 2 m",
      "open (the device is quicker than its curve is kept for: the maker's I²t decides)",
    ],
  ])("of %s and %s is %s", (device, more, wanted) => expect(lineOf(fused(device, more), title)).toBe(wanted));

  it("of a breaker is what it lets through at the board, for the smaller conductor", () => {
    const title = "Let-through energy at the board";
    const of = (more: string, setting: Setting = {}) => lineOf(linesOf(more, setting), title);
    expect(of("device BS EN 60898 B32 6 kA\ncable singles line 1 mm² cpc 1 mm²")).toBe(
      `holds 7200 A²s of ${four(115 ** 2)} A²s (for the line conductor, the breaker taken as class 3)`,
    );
    expect(of("device BS 88-2 32 A 80 kA gG\ncable singles line 1 mm² cpc 1 mm²")).toBeUndefined();
    expect(of("device BS EN 60898 B32 6 kA\ncable singles line 1 mm² cpc 1 mm²", { supply: "earthing TN-S" })).toBe(
      "open (no fault current is recorded here or upstream)",
    );
  });
});

// 18 mV/A/m of 2.5 mm² (4D1B), 8.7 A of 2 kW: 2.7 %, and six times that while it starts direct on line.
it("a motor that starts drops more, by common practice 15 % at most", () => {
  const motor = (length: number) =>
    linesOf(
      `device BS EN 60898 C16 6 kA\nserves motor\nload 2 kW\ncable singles line 2.5 mm² cpc 2.5 mm²\nroute conduit method B\nlength ${length} m\nstarting direct`,
    );
  const drop = (length: number) => (18 * (2000 / 230) * length) / 2300;
  const title = "Voltage drop while the motor starts";
  expect(lineOf(motor(36), title)).toBe(`holds ${four(6 * drop(36))} % of 15 %`);
  expect(lineOf(motor(37), title)).toBe(`ask ${four(6 * drop(37))} % of 15 %`);
});

it("of a spare way nothing is designed", () => expect(linesOf("", {}, "spare")).toEqual([]));
