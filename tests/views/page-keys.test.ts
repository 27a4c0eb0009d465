/** Where Home, End and the arrows lead in the lists of the live view. */
import { expect, test } from "vitest";
import { ledTo, sideways, upAndDown } from "../../client/page/keys.ts";

const list = ["a", "b", "c"];

test.each([
  ["ArrowRight", "c"],
  ["ArrowLeft", "a"],
  ["Home", "a"],
  ["End", "c"],
  ["ArrowDown", undefined],
  ["x", undefined],
])("%s, from the middle of three that stand side by side, leads to %s", (key, to) => {
  expect(ledTo(key, list, 1, sideways)).toBe(to);
});

test("an arrow leads nowhere beyond the ends", () => {
  expect(ledTo("ArrowUp", list, 0, upAndDown)).toBeUndefined();
  expect(ledTo("ArrowDown", list, 2, upAndDown)).toBeUndefined();
});
