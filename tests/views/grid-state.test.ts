/** What the grid for test readings makes of an answer of the schedule, without a browser. */
import { describe, expect, test } from "vitest";
import type { Place } from "../../client/page/grid-keys.ts";
import { answered, closed, moved, untouched } from "../../client/page/grid-state.ts";

const zs: Place = { row: "1", column: "Zs" };
const polarity: Place = { row: "1", column: "polarity" };

describe("what the schedule answers", () => {
  test("an entry that was written is kept as it was written, and clears the last problem", () => {
    const after = answered({ ...untouched, problem: "No figure." }, { ...zs, text: ".5", written: "0.5" });
    expect(after).toEqual({ ...untouched, drafts: new Map([["1|Zs", "0.5"]]) });
  });

  test("an entry that was not written is in its cell again, with why", () => {
    const after = answered({ ...untouched, at: polarity }, { ...zs, text: "x", problem: "No figure." });
    expect(after).toEqual({ ...untouched, at: zs, typed: "x", problem: "No figure." });
  });

  test("a reading that stands for that day asks for a reason, and its cell is the place again once that is closed", () => {
    const asking = answered({ ...untouched, at: polarity }, { ...zs, text: "0.6", stands: "0.5 Ω" });
    expect(asking.correction).toEqual({ place: zs, stands: "0.5 Ω", text: "0.6" });
    expect(closed(moved(asking, polarity))).toEqual({ ...untouched, at: zs });
  });
});

test("what leads nowhere leaves the cell, and what was typed in it is gone", () => {
  const typing = { ...untouched, at: zs, typed: "0." };
  expect(moved(typing, undefined)).toEqual({ ...untouched, at: zs });
  expect(moved(typing, polarity)).toEqual({ ...untouched, at: polarity });
});
