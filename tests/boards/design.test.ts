import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { type DesignLine, designOfBoard, designOfOrigin, designOfWay } from "../../server/boards/design.ts";
import { networkOf } from "../../server/boards/network.ts";
import { installationsOf } from "../../server/model/installation.ts";
import { rules } from "../../server/rules/list.ts";
import { fileOfText } from "../../server/workspace/loaded-file.ts";
import { foundBy } from "../helpers/fixing.ts";
import { generate } from "../helpers/generate.ts";
import { unmark } from "../helpers/sample.ts";

const installations = (text: string) => installationsOf([fileOfText("sample.ways", text)]);

const linesOf = (text: string): DesignLine[] =>
  installations(text).flatMap((installation) => [
    ...designOfOrigin(installation),
    ...networkOf(installation).nodes.flatMap((node) => [
      ...designOfBoard(node),
      ...node.studies.flatMap((study) => designOfWay(node, study)),
    ]),
  ]);

const badOf = (id: string, index = 0): string => {
  const rule = rules.find((one) => one.id === id);
  const bad = rule?.examples[index]?.bad;
  if (!bad?.startsWith("wayfile")) throw new Error(`${id} has no sample ${index} of a whole file`);
  return unmark(bad).text;
};

describe("the design with its working", () => {
  it("of a sound installation has nothing that fails, whatever the seed", () => {
    fc.assert(
      fc.property(fc.integer({ min: 1, max: 100_000 }), fc.integer({ min: 1, max: 20 }), (seed, ways) => {
        const lines = linesOf(generate({ ways, waysPerBoard: 8, seed }));
        expect(lines.filter(({ verdict }) => verdict === "fails").map(({ title }) => title)).toEqual([]);
        expect(lines.filter(({ verdict }) => verdict === "holds").length).toBeGreaterThan(ways);
      }),
      { numRuns: 20 },
    );
  });

  it("says of every figure where it comes from, and of every open question why it is open", () => {
    for (const line of linesOf(generate({ ways: 12, seed: 7 }))) {
      if (line.verdict === "open") expect(line.reason).toMatch(/\S/);
      else {
        expect(Number.isFinite(line.value?.value)).toBe(true);
        // A figure without a limit may stand in the schedule as it is.
        if (line.verdict !== "figure") expect(line.source?.ref, line.title).toMatch(/\S{3}/);
      }
      if (line.verdict === "fails") expect(line.source?.standing).not.toBe("memory");
    }
  });

  it.each([
    ["drop/over-limit", 1, "Voltage drop from the origin"],
    ["demand/over-cutout", 0, "Demand against the cut-out"],
    ["demand/over-device", 0, "Demand against the feeder's device"],
    ["demand/over-main-switch", 0, "Demand against the main switch"],
    ["coordination/breaking-capacity-exceeded", 0, "Breaking capacity"],
    ["energy/live-conductor-too-thin", 0, "Live conductors in a fault"],
  ])("%s and the report speak of the same figures", (id, index, title) => {
    const text = badOf(id, index);
    const [finding] = foundBy(id, text);
    const figures = [finding?.value?.amount, finding?.limit?.amount].toSorted();
    const same = linesOf(text).filter(
      (line) =>
        line.title === title &&
        JSON.stringify([line.value?.value, line.limit?.value].toSorted()) === JSON.stringify(figures),
    );
    expect(figures.map((figure) => typeof figure)).toEqual(["number", "number"]);
    expect(same.map(({ verdict }) => verdict)).toEqual([same[0]?.verdict === "ask" ? "ask" : "fails"]);
  });

  it("takes for a feeder without a design current the demand of the board it feeds", () => {
    const [installation] = installations(badOf("demand/over-device"));
    const node = installation && networkOf(installation).nodes[0];
    const lines = node?.studies[0] ? designOfWay(node, node.studies[0]) : [];
    const current = lines.find(({ title }) => title === "Design current");
    expect(current?.value?.value).toBeCloseTo(9500 / 230, 9);
    expect(lines.find(({ title }) => title === "Voltage drop of the feeder")?.verdict).toBe("open");
  });

  it("is made of any text, however much of it is missing", () => {
    const text = generate({ ways: 6, waysPerBoard: 3, seed: 3 });
    const lines = text.split("\n");
    fc.assert(
      fc.property(fc.subarray(lines), (some) => {
        expect(Array.isArray(linesOf(some.join("\n")))).toBe(true);
      }),
      { numRuns: 150 },
    );
  });
});
