/** Which readings of a supply belong to which day, and to which instrument. */
import { expect, it } from "vitest";
import { installationsOf } from "../../server/model/installation.ts";
import type { Facts } from "../../server/model/values.ts";
import { supplyTests } from "../../server/readings/meter-tests.ts";
import { fileOfText } from "../../server/workspace/loaded-file.ts";

function daysOf(lines: string): readonly (readonly [day: string, instruments: string, words: string])[] {
  const text = `wayfile 1
instrument M1 "Loop tester" {
}
instrument M2 "Multifunction tester" {
}
installation "House" {
  supply {
${lines}
  }
}
`;
  const [installation] = installationsOf([fileOfText("a.ways", text)]);
  const supply = installation?.head.facts.one("supply")?.inner as Facts<"supply"> | undefined;
  return supplyTests(supply).map(({ on, with: instruments, facts }) => [
    on,
    instruments.join(" "),
    facts.list.map(({ word }) => word).join(" "),
  ]);
}

it("plain lines are of the day they say, and blocks of tests of their own, the latest first", () => {
  const lines = `    earthing TN-S
    Ze 0.31 Ω
    measured 2026-03-05 with M1
    live 2026-04-09 with M2 {
      Ze 0.33 Ω
      voltage 238 V
    }`;
  expect(daysOf(lines)).toEqual([
    ["2026-04-09", "M2", "Ze voltage"],
    ["2026-03-05", "M1", "earthing Ze measured"],
  ]);
});

it("plain lines without a day are of none", () => {
  expect(daysOf("    Ze 0.31 Ω\n    live 2026-04-09 with M2 {\n      Ze 0.33 Ω\n    }")).toEqual([
    ["2026-04-09", "M2", "Ze"],
  ]);
  expect(daysOf("    Ze 0.31 Ω")).toEqual([]);
});
