/** Which line of a board of three carries what, and drops what: by hand, from the amperes and lines of the sample. */
import { describe, expect, it } from "vitest";
import { demandBehind, demandOf } from "../../server/boards/demand.ts";
import { boardDrop, dropAbove, lineAbove } from "../../server/boards/drop-path.ts";
import { installationOf, nodeOf, wayOf } from "../helpers/place.ts";

interface Annexe {
  readonly main?: string;
  readonly feeder?: string;
  readonly annexe?: string;
  readonly ways?: readonly string[];
  readonly cable?: string;
}

const threeCores = "cable armoured 70 °C line 16 mm² cpc 16 mm² cores 3\n      length 50 m";
const fourCores = "cable armoured 70 °C line 16 mm² cpc 16 mm² cores 4\n      length 50 m";

const works = ({ main = "", feeder = "", annexe = "", ways = ["Ib 12 A"], cable = fourCores }: Annexe) =>
  installationOf(`wayfile 1
installation "Works" {
  standard BS 7671:2018+A2:2022
  premises industrial
  supply {
    phases three
  }
  board A "Main" {
    fed-from supply
    ${main}
    way 1 feeder "Annexe" {
      feeds B
      ${cable}
      ${feeder}
    }
    way 2 radial "Kiln" {
      phase L1
      Ib 20 A
    }
  }
  board B "Annexe" {
    fed-from A
    ${annexe}
${ways.map((lines, at) => `way ${at + 1} radial "Load ${at + 1}" {\n${lines}\n}`).join("\n")}
  }
}`);

describe("the working of a demand", () => {
  const steps = (of: Annexe) =>
    (demandOf(nodeOf(works(of), "A"))?.lines.get("L2")?.steps ?? []).map(
      ({ formula, numbers, result }) => `${formula}: ${numbers === "" ? "" : `${numbers} = `}${result}`,
    );

  it.each([
    [{ annexe: "phases single\nphase L2" }, ["feeder, way 1: 12 A", "demand of L2: 12 A = 12 A"]],
    [{ annexe: "phases single" }, ["feeder, way 1, counted on every line: 12 A", "demand of L2: 12 A = 12 A"]],
    // Half an ampere without a line is a sixth of one on each.
    [
      { annexe: "phases single\nphase L2", main: 'way 3 radial "Clock" {\nIb 0.5 A\n}' },
      [
        "feeder, way 1: 12 A",
        "circuits whose line is not stated, a third: 0.17 A",
        "demand of L2: 12 A + 0.17 A = 12.2 A",
      ],
    ],
    [
      { annexe: "phases single\nphase L2", main: "diversity 50 %" },
      ["feeder, way 1: 12 A", "demand of L2: 12 A = 12 A", "diversity of the board: 50 % × 12 A = 6 A"],
    ],
  ])("of %j is %j", (of, wanted) => expect(steps(of)).toEqual(wanted));

  it("has no line for a board of one line", () => {
    const [last] =
      demandOf(nodeOf(works({ annexe: "phases single" }), "B"))
        ?.lines.get("L")
        ?.steps.slice(-1) ?? [];
    expect(last?.formula).toBe("demand");
  });
});

describe("what is spread over the lines", () => {
  const spread = (of: Annexe) => {
    const demand = demandOf(nodeOf(works(of), "A"));
    return demand && [demand.spread, demand.unplaced.map(({ way }) => way.id)];
  };
  const three = "phases three";

  it.each([
    [{ annexe: three }, [0, []]],
    [{ annexe: three, main: 'way 3 radial "Clock" {\nIb 8 A\n}' }, [8, ["3"]]],
    [{ annexe: three, main: 'way 3 radial "Clock" {\nIb 8 A\ndiversity 25 %\n}' }, [2, ["3"]]],
    [{ annexe: three, main: 'diversity 50 %\nway 3 radial "Clock" {\nIb 8 A\n}' }, [4, ["3"]]],
  ])("of %j: %j", (of, wanted) => expect(spread(of)).toEqual(wanted));
});

describe("a feeder", () => {
  const lines = (of: Annexe) => [...(demandOf(nodeOf(works(of), "A"))?.lines ?? [])].map(([, { value }]) => value);
  const annexe = "phases three";
  const ways = ["phase L2\nIb 10 A", "phase L3\nIb 6 A"];

  it.each([
    [{ annexe, ways }, [20, 10, 6]],
    [{ annexe, ways, feeder: "diversity 50 %" }, [20, 5, 3]],
    // What is stated is that of the line that carries most, and of each.
    [{ annexe, ways, feeder: "Ib 8 A" }, [28, 8, 8]],
    [{ annexe, ways, feeder: "Ib 8 A\ndiversity 50 %" }, [24, 4, 4]],
    [{ annexe: "phases single", ways: ["Ib 10 A"] }, [30, 10, 10]],
    [{ annexe: "phases single\nphase L3", ways: ["Ib 10 A"] }, [20, 0, 10]],
    [{ annexe: "phases single\nphase L3", feeder: "phase L2", ways: ["Ib 10 A"] }, [20, 10, 0]],
  ])("%j: %j", (of, wanted) => expect(lines(of)).toEqual(wanted));

  it("of one line that nobody names is spread like a circuit", () => {
    const one = (more: Annexe) => {
      const demand = demandOf(nodeOf(works({ annexe: "phases single", cable: threeCores, ...more }), "A"));
      return demand && [demand.spread, demand.unplaced.map(({ way }) => way.id), demand.unlined.length, demand.diverse];
    };
    expect(one({ ways: ["Ib 12 A"] })).toEqual([12, ["1"], 0, true]);
    expect(one({ ways: ["Ib 12 A"], feeder: "diversity 50 %" })).toEqual([6, ["1"], 0, true]);
    expect(one({ ways: ["Ib 12 A"], feeder: "Ib 9 A" })).toEqual([9, ["1"], 0, true]);
    // Two circuits in full are no demand with diversity, but for a designer's word on the feeder.
    expect(one({ ways: ["Ib 12 A", "Ib 6 A"] })).toEqual([18, ["1"], 0, false]);
    expect(one({ ways: ["Ib 12 A", "Ib 6 A"], feeder: "Ib 9 A" })).toEqual([9, ["1"], 0, true]);
    expect(one({ ways: ["Ib 12 A"], feeder: "phase L2" })).toEqual([0, [], 0, true]);
    expect(one({ ways: ["Ib 12 A"], cable: fourCores })).toEqual([0, [], 1, false]);
  });

  it("of a supply of one line is on that", () => {
    const text = `wayfile 1\ninstallation "House" {\nsupply {\nearthing TN-S\n}\nboard A "Main" {\nfed-from supply\nway 1 feeder "F" {\nfeeds B\n}\n}\nboard B "Shed" {\nfed-from A\nway 1 radial "W" {\nIb 5 A\n}\n}\n}`;
    const demand = demandOf(nodeOf(installationOf(text), "A"));
    expect([[...(demand?.lines.keys() ?? [])], demand?.unlined, demand?.unplaced]).toEqual([["L"], [], []]);
  });

  it("of which nothing tells what it draws is not known, and the rest is", () => {
    const demand = demandOf(nodeOf(works({ annexe, ways: ["serves heating"] }), "A"));
    expect([demand?.greatest.value, demand?.unknown.map(({ way }) => way.id)]).toEqual([20, ["1"]]);
  });

  it("is all that a board of nothing else draws", () => {
    const node = nodeOf(works({ annexe, ways }), "A");
    const behind = (id: string) => demandBehind(node, [wayOf(node, id)])?.greatest;
    expect([behind("1")?.value, behind("1")?.line, behind("2")?.value]).toEqual([10, "L2", 20]);
  });
});

// 16 mm², three-phase: 2.4 mV/A/m (Table 4D4B); of one line, out and back by the neutral, 2 × 2.4 / √3. A generator takes nothing.
describe("the drop before a circuit", () => {
  const worst = (((2 * 0.0024) / Math.sqrt(3)) * 40 * 50 * 100) / 230;
  const ways = ["phase L1\nIb 40 A", "phase L2\nserves pv", "phase three\nserves pv", "serves pv"];
  it.each([
    ["1", worst],
    ["2", 0],
    ["3", worst],
    ["4", worst],
  ])("of way %s is %d %", (id, percent) => {
    const node = nodeOf(works({ annexe: "phases three", ways }), "B");
    expect(dropAbove(boardDrop(node), wayOf(node, id)).drop.value).toBeCloseTo(percent, 9);
  });
});

it("of a circuit of three lines is the worst of them, whichever that is", () => {
  const node = nodeOf(
    works({ annexe: "phases three", ways: ["phase L2\nIb 40 A", "phase L1\nserves pv", "phase three\nserves pv"] }),
    "B",
  );
  const of = (id: string) => dropAbove(boardDrop(node), wayOf(node, id)).drop.value;
  expect([of("2"), of("3") === of("1"), of("1") > 1]).toEqual([0, true, true]);
});

describe("the line above that a line of a board comes from", () => {
  const of = (annexe: string, feeder: string, cable: string, line: "L" | "L1" = "L") => {
    const installation = works({ annexe, feeder, cable, ways: ["Ib 6 A"] });
    return lineAbove(nodeOf(installation, "B"), wayOf(nodeOf(installation, "A"), "1"), line);
  };
  it.each([
    ["phases single", "phase L2", threeCores, "L2"],
    ["phases single\nphase L3", "", fourCores, "L3"],
    ["phases single", "", fourCores, "L"],
  ] as const)("%j behind a feeder with %j is %s, %s", (annexe, feeder, cable, wanted) => {
    expect(of(annexe, feeder, cable)).toBe(wanted);
  });
  it("is its own where it has a name", () => expect(of("phases three", "", fourCores, "L1")).toBe("L1"));
});
