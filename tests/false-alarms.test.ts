import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { generate } from "./helpers/generate.ts";
import { findingsOf } from "./helpers/sample.ts";

/** A warning that should not be there costs more trust than ten right ones earn. */
describe("a sound installation raises nothing", () => {
  it("whatever the seed", () => {
    fc.assert(
      fc.property(fc.integer({ min: 1, max: 1_000_000 }), fc.integer({ min: 1, max: 40 }), (seed, ways) => {
        expect(findingsOf(generate({ ways, waysPerBoard: 12, seed }))).toEqual([]);
      }),
      { numRuns: 60 },
    );
  });
});
