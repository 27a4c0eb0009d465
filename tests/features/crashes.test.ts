/** A server that ends by itself: started again, said once, and given up where it ends each time. */
import { expect, it } from "vitest";
import { Crashes } from "../../client/crashes.ts";

it("is started again each time, and a person is told of the first", () => {
  let now = 0;
  const crashes = new Crashes(() => now);
  expect(crashes.crashed()).toEqual({ restarts: true, says: "restarted" });
  for (let hour = 1; hour < 20; hour++) {
    now = hour * 3_600_000;
    expect(crashes.crashed()).toEqual({ restarts: true });
  }
});

it("is given up where it ends five times within three minutes", () => {
  let now = 0;
  const crashes = new Crashes(() => now);
  const ends = [0, 40, 80, 120, 160].map((seconds) => {
    now = seconds * 1000;
    return crashes.crashed();
  });
  expect(ends.map(({ restarts }) => restarts)).toEqual([true, true, true, true, false]);
  expect(ends.map(({ says }) => says)).toEqual(["restarted", undefined, undefined, undefined, "given up"]);
});
