/** What several boards draw from one supply, line by line, and in which words: sums that anybody can add up again. */
import { describe, expect, it } from "vitest";
import { originDemand } from "../../server/boards/demand-origin.ts";
import { demandNotes } from "../../server/boards/demand-words.ts";
import { installationOf } from "../helpers/place.ts";

interface BoardText {
  readonly name: string;
  readonly lines?: string;
  readonly ways: readonly string[];
  readonly from?: string;
}

const boardOf = ({ name, lines = "", ways, from = "supply" }: BoardText): string => {
  const texts = ways.map((way, at) => `way ${at + 1} ${/\bfeeds /.test(way) ? "feeder" : "radial"} "W" {\n${way}\n}`);
  return `board ${name} "${name}" {\nfed-from ${from}\n${lines}\n${texts.join("\n")}\n}`;
};

const demandOf = (supply: string, ...boards: readonly BoardText[]) => {
  const demand = originDemand(
    installationOf(
      `wayfile 1\ninstallation "Works" {\nstandard BS 7671:2018+A2:2022\npremises dwelling\nsupply {\nearthing TN-S\n${supply}\n}\n${boards.map(boardOf).join("\n")}\n}\n`,
    ),
  );
  const last = demand?.greatest.steps.at(-1);
  return {
    lines: Object.fromEntries([...(demand?.lines ?? [])].map(([line, { value }]) => [line, value])),
    words: demand && demandNotes(demand),
    sum: last && "formula" in last ? `${last.formula} = ${last.numbers} = ${last.result}` : undefined,
    steps: demand?.greatest.steps.length,
    spread: demand?.spread,
    diverse: demand?.diverse,
  };
};

const single = (name: string, lines: string, ...ways: string[]): BoardText => ({ name, lines, ways });
const three = (name: string, ...ways: string[]): BoardText => ({ name, lines: "phases three", ways });

describe("the demand of several boards at the origin", () => {
  it("is their sum on one line", () => {
    expect(demandOf("", single("A", "", "Ib 10 A"), single("B", "", "Ib 12 A"))).toMatchObject({
      lines: { L: 22 },
      words: "22 A with diversity",
      sum: "demand at the origin = A 10 A + B 12 A = 22 A",
    });
  });

  it("is on three lines where any of them has three, and with diversity where all have", () => {
    const one = demandOf("", single("A", "", "Ib 10 A"), three("B", "phase L1\nIb 12 A"));
    expect(Object.keys(one.lines)).toEqual(["L1", "L2", "L3"]);
    const judged = (...lines: readonly string[]) =>
      demandOf("", ...lines.map((line, at) => single(`B${at}`, line, "Ib 10 A", "serves floor-heating\nIb 12 A")))
        .diverse;
    expect(judged("diversity 80 %", "diversity 80 %")).toBe(true);
  });

  it("is that of the only one, where it has the lines of the supply", () => {
    expect(demandOf("phases three", three("A", "phase L1\nIb 10 A"))).toMatchObject({
      lines: { L1: 10, L2: 0, L3: 0 },
      sum: "demand of L1 = 10 A = 10 A",
    });
  });

  it("puts a single-phase board on its line, the only one on a supply of three too", () => {
    const onL2 = single("B", "phases single\nphase L2", "Ib 12 A");
    expect(demandOf("phases three", three("A", "phase L1\nIb 10 A", "phase L2\nIb 4 A"), onL2)).toMatchObject({
      lines: { L1: 10, L2: 16, L3: 0 },
      words: "16 A on L2 with diversity",
      sum: "demand at the origin, L2 = A 4 A + B 12 A = 16 A",
    });
    expect(demandOf("phases three", onL2).lines).toEqual({ L1: 0, L2: 12, L3: 0 });
  });

  it("counts a board on every line where nothing says which it is on, and says so", () => {
    const main = three("A", "phase L1\nIb 10 A", "phase L2\nIb 4 A");
    const unlined = single("B", "phases single", "Ib 12 A");
    expect(demandOf("phases three", main, unlined)).toMatchObject({
      lines: { L1: 22, L2: 16, L3: 12 },
      words: "22 A on L1 with every circuit in full (board B counted on every line)",
      sum: "demand at the origin, L1 = A 10 A + B 12 A (counted on every line) = 22 A",
      diverse: false,
    });
    const two = demandOf("phases three", main, unlined, single("C", "phases single", "Ib 5 A"));
    expect(two.words).toBe("27 A on L1 with every circuit in full (2 boards counted on every line)");
  });

  it("counts a board behind a feeder of three lines in the same manner", () => {
    const main = three("A", "phase L1\nIb 10 A", "phase three\nfeeds B");
    const behind = { ...single("B", "phases single", "Ib 12 A"), from: "A" };
    expect(demandOf("phases three", main, behind)).toMatchObject({
      lines: { L1: 22, L2: 12, L3: 12 },
      words: "22 A on L1 with every circuit in full (board B counted on every line)",
    });
    const onL3 = { ...single("B", "phases single\nphase L3", "Ib 12 A"), from: "A" };
    expect(demandOf("phases three", main, onL3).lines).toEqual({ L1: 10, L2: 0, L3: 12 });
  });

  it("adds up what is spread, a third on each line", () => {
    const some = (name: string, ...loads: number[]) => three(name, ...loads.map((load) => `Ib ${load} A`));
    expect(demandOf("phases three", some("A", 6), some("B", 9, 3))).toMatchObject({
      lines: { L1: 6, L2: 6, L3: 6 },
      spread: 18,
      words: "6 A on L1 with diversity (3 circuits spread evenly over the lines)",
    });
  });

  it("names what it rests on, one or several", () => {
    const ring = "serves sockets\ndevice BS EN 60898 B20 6 kA";
    expect(demandOf("", single("A", "", ring, "serves heating"), single("B", "", "Ib 1 A")).words).toBe(
      "at least 21 A with diversity (one circuit taken at the rating of the device; one circuit not counted, load not given)",
    );
    const several = demandOf("", single("A", "", ring, ring), single("B", "", "serves heating", "serves heating"));
    expect(several.words).toMatch(
      /^at least .* \(2 circuits taken at the rating of the device; 2 circuits not counted, load not given\)$/,
    );
  });

  // The working of each board stands in the sum of a few, and with the boards where there are many.
  it("has the working of twelve boards, and of thirteen only their sum", () => {
    const boards = (count: number) => Array.from({ length: count }, (_, at) => single(`B${at + 1}`, "", "Ib 1 A"));
    expect(demandOf("", ...boards(12)).steps).toBe(25);
    expect(demandOf("", ...boards(13))).toMatchObject({ steps: 1, lines: { L: 13 } });
  });
});

it("diversity of a board is a share of all that it draws, of what is spread too", () => {
  const board = three("A", "phase L1\nIb 10 A", "Ib 6 A");
  expect(demandOf("phases three", { ...board, lines: "phases three\ndiversity 50 %" })).toMatchObject({
    lines: { L1: 6, L2: 1, L3: 1 },
    spread: 3,
    sum: "diversity of the board = 50 % × 12 A = 6 A",
  });
});
