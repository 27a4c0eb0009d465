import { expect, test } from "vitest";
import { readFile } from "../../server/model/file.ts";
import { covers, inspectionFor, inspectionsOf, isOf, itemsNamed } from "../../server/model/inspections.ts";
import { split } from "../../server/syntax/split.ts";

const headOf = (lines: string) => {
  const model = readFile(split(`wayfile 1\ninstallation "Boat shed" {\n${lines}\n}\n`));
  const head = model.installations[0]?.head;
  if (!head) throw new Error("no installation");
  return head;
};

const circuit = (board: string, way: string) => ({ board: { name: board }, way: { id: way } });

const three = headOf(`
inspection periodic 2026-03-03 to 2026-03-05 {
  sampled-out board A way 4 5 "Alike to way 3"
}
inspection initial 2016-02-11 {
}
inspection minor 2020-07-01 {
  covers board A way 7
}`);

test("inspections are in the order of their last days, wherever they stand", () => {
  expect(inspectionsOf(three).map(({ kind, from, to }) => [kind, from, to])).toEqual([
    ["initial", "2016-02-11", "2016-02-11"],
    ["minor", "2020-07-01", "2020-07-01"],
    ["periodic", "2026-03-03", "2026-03-05"],
  ]);
});

test("a test belongs to the first inspection that ends on its day or later and covers the circuit", () => {
  const kindOf = (on: string, way: string) => inspectionFor(inspectionsOf(three), on, circuit("A", way))?.kind;
  expect(kindOf("2016-02-10", "7")).toBe("initial");
  expect(kindOf("2016-02-11", "7")).toBe("initial");
  expect(kindOf("2020-07-01", "7")).toBe("minor");
  expect(kindOf("2020-07-01", "6")).toBeUndefined();
  expect(kindOf("2025-07-01", "6")).toBe("periodic");
  expect(kindOf("2026-03-05", "6")).toBe("periodic");
  expect(kindOf("2026-03-06", "6")).toBeUndefined();
});

test("a test of another time belongs to no inspection, also where no earlier one stands in the schedule", () => {
  const one = headOf("inspection periodic 2026-03-03 to 2026-03-05 {\n}");
  const has = (on: string) => inspectionFor(inspectionsOf(one), on, circuit("A", "1")) !== undefined;
  expect([has("2016-03-05"), has("2025-03-01"), has("2025-03-02"), has("2026-03-05")]).toEqual([
    false,
    false,
    true,
    true,
  ]);
});

test("a line of an inspection is of the ways it names, of its board, or of all", () => {
  const [line] = inspectionsOf(three).flatMap(({ facts }) => facts.all("sampled-out"));
  expect(line && isOf(line, circuit("A", "4"))).toBe(true);
  expect(line && isOf(line, circuit("A", "3"))).toBe(false);
  expect(line && isOf(line, circuit("B", "4"))).toBe(false);
  const [initial, minor] = inspectionsOf(three);
  expect(initial && covers(initial, circuit("B", "1"))).toBe(true);
  expect(minor && covers(minor, circuit("B", "7"))).toBe(false);
});

test("a half-typed inspection is one without a kind and a day", () => {
  expect(inspectionsOf(headOf("inspection {\n}")).map(({ kind, to }) => [kind, to])).toEqual([[undefined, ""]]);
});

test("a run of items is each of them; what is no run stays as it is", () => {
  expect(itemsNamed("4.1..4.4")).toEqual(["4.1", "4.2", "4.3", "4.4"]);
  expect(itemsNamed("4.9..11")).toEqual(["4.9", "4.10", "4.11"]);
  expect(itemsNamed("7..8")).toEqual(["7", "8"]);
  expect(itemsNamed("4.20")).toEqual(["4.20"]);
  expect(itemsNamed("4.6..4.1")).toEqual(["4.6..4.1"]);
  expect(itemsNamed("4.1..5.2")).toEqual(["4.1..5.2"]);
  expect(itemsNamed("1.1..1.9999")).toEqual(["1.1..1.9999"]);
});
