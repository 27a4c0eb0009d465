/** Which board of one version is which of the other. */
import { describe, expect, it } from "vitest";
import type { Board } from "../../server/model/file.ts";
import { matchBoards } from "../../server/reports/compare/match.ts";
import { fileOfText } from "../../server/workspace/loaded-file.ts";

const boardsOf = (...boards: readonly (readonly [name: string, title: string, ...ways: readonly string[]])[]) =>
  fileOfText(
    "a.ways",
    `wayfile 1\n${boards
      .map(
        ([name, title, ...ways]) =>
          `board ${name} "${title}" {\n${ways.map((way, at) => `way ${at + 1} radial "${way}" {\n}\n`).join("")}}\n`,
      )
      .join("")}`,
  ).model.boards;

const names = (before: readonly Board[], after: readonly Board[]) =>
  matchBoards(before, after).map(({ old, now }) => `${old?.head.name ?? "-"} → ${now?.head.name ?? "-"}`);

describe("a board", () => {
  const before = boardsOf(
    ["A", "Main", "Lights", "Sockets"],
    ["B", "Annexe", "Kiln", "Fan"],
    ["C", "", "Pump", "Heater", "Door"],
  );

  it.each([
    ["under its own name and title", boardsOf(["B", "Annexe", "Press"]), "B → B"],
    ["under its title, with a quarter of its ways", boardsOf(["D", "annexe", "Kiln", "Fan", "Press", "Saw"]), "B → D"],
    ["under its name, with half of its ways", boardsOf(["C", "Yard", "Pump", "Heater", "Saw"]), "C → C"],
    ["by its ways alone, where they are the same", boardsOf(["D", "Yard", "Door", "Heater", "Pump"]), "C → D"],
    ["by its name, where nothing else claims it", boardsOf(["C", "Yard", "Saw"]), "C → C"],
  ])("is found %s", (_, after, pair) => expect(names(before, after)).toContain(pair));

  it.each([
    ["some of its ways", boardsOf(["D", "Yard", "Pump", "Heater"])],
    ["ways that repeat one of its own", boardsOf(["D", "Yard", "Kiln", "Kiln"])],
    ["its title alone", boardsOf(["D", "Annexe", "Saw"])],
  ])("is another where it has %s", (_, after) => expect(names(before, after)).toContain("- → D"));

  it("is the more alike of two", () => {
    const after = boardsOf(["B", "Store", "Kiln", "Fan"], ["D", "Annexe", "Kiln", "Fan"]);
    expect(names(before, after).slice(0, 2)).toEqual(["- → B", "B → D"]);
  });
});

it("of two thousand boards with one title each finds its own", () => {
  const flats = (count: number, fan: number) =>
    boardsOf(
      ...Array.from(
        { length: count },
        (_, at) => [`F${at}`, "Consumer unit", "Lights", at === fan ? "Fan" : "Cooker", "Sockets"] as const,
      ),
    );
  const pairs = matchBoards(flats(2000, -1), flats(2000, 777));
  expect(pairs.filter(({ old, now }) => old?.head.name !== now?.head.name)).toEqual([]);
});
