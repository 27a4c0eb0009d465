/** Ways that somebody looks at are checked before the rest of their board, and whoever waits for them is told when they are. */
import { expect, it } from "vitest";
import {
  checkBoardInSlices,
  checkWaysInSlices,
  foundOnWays,
  hasCheckedWays,
  isChecked,
} from "../../server/rules/frame/check-board.ts";
import { installationOf, nodeOf } from "../helpers/place.ts";
import { inSetting } from "../helpers/sample.ts";

const text = inSetting(`way 1 radial "Oven" {
device BS EN 60898 B40 6 kA
cable flat-twin line 2.5 mm² cpc 1.5 mm²
route clipped method C
length 10 m
serves cooker
}
way 2 radial "Kiln" {
device BS EN 60898 B40 6 kA
cable flat-twin line 2.5 mm² cpc 1.5 mm²
route clipped method C
length 10 m
serves cooker
}`).text;

it("some ways of a board are checked by themselves, and the board is not taken for checked", () => {
  const { board, context } = nodeOf(installationOf(text), "A");
  const place = { board, context };
  const has = (...ids: readonly string[]) => hasCheckedWays(place, ({ id }) => ids.includes(id));
  const overCapacity = () =>
    foundOnWays(place)
      .findings.filter(({ check }) => check === "design/device-over-capacity")
      .map(({ spot }) => board.ways.find(({ segment }) => segment === spot.segment)?.id);
  expect([has("1"), has("2"), isChecked(place), overCapacity()]).toEqual([false, false, false, []]);

  for (const _ of checkWaysInSlices(place, ({ id }) => id === "2")) expect(isChecked(place)).toBe(false);
  expect([has("1"), has("2"), has("1", "2"), isChecked(place)]).toEqual([false, true, false, false]);
  expect(overCapacity()).toEqual(["2"]);

  for (const _ of checkBoardInSlices(place)) expect(isChecked(place)).toBe(false);
  expect([has("1"), has("2"), has("1", "2"), isChecked(place)]).toEqual([true, true, true, true]);
});
