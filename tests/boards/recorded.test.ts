/**
 * Figures of whole schedules as `recorded/` keeps them, and each line of their working calculated again from its own
 * figures. A change that is meant is written there by `node tests/boards/recorded/write.ts`, and its difference is read.
 */
import { describe, expect, it } from "vitest";
import { disagreement } from "../helpers/arithmetic.ts";
import { keptOf, records } from "./recorded/record.ts";

describe.each(records)("$name", ({ name, text }) => {
  it("comes to what is recorded", () =>
    expect(`${text()}\n`.split("\n"), "node tests/boards/recorded/write.ts").toEqual(keptOf(name).split("\n")));

  it("is right line by line", () => {
    const lines = keptOf(name)
      .split("\n")
      .map((line) => line.replace(/^(?:[+−] )?(?:origin|board \S+|way \S+):\s+/, ""));
    expect(lines.flatMap((line) => disagreement(line) ?? [])).toEqual([]);
  });
});
