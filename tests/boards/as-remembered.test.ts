import { expect, it } from "vitest";
import { asRemembered } from "../../server/boards/as-remembered.ts";
import { installationOf, nodeOf, wayOf } from "../helpers/place.ts";
import { inSetting } from "../helpers/sample.ts";

const said = (lines: string, kind = "radial") => {
  const text = inSetting(`way 1 ${kind} "Panel" {\n${lines}\n}`, { stage: "tested" }).text;
  return asRemembered(wayOf(nodeOf(installationOf(text), "A"), "1")).map(
    ({ what, value, limit, unit }) =>
      `${what}: ${Number(value.toPrecision(4))} of ${Number(limit.toPrecision(4))} ${unit}`,
  );
};
// Table 4D2A gives 2.5 mm² clipped direct 27 A, from memory within a tenth: 25 A may be more than it is, 24 A not.
const cable = "cable multicore line 2.5 mm² cpc 2.5 mm² cores 3\nroute clipped method C";
const motor = (relay: number, Ib: number) =>
  `device BS EN 60898 C32 6 kA\n${cable}\nserves motor\noverload ${relay} A\nIb ${Ib} A`;

it.each([
  // I2 ≤ 1.45 × Iz is as near as In ≤ Iz: the plainer of the two is stated.
  [`device BS EN 60898 B25 6 kA\n${cable}\nIb 15 A`, ["In ≤ Iz holds: 25 of 27 A"]],
  [`device BS EN 60898 B20 6 kA\n${cable}\nIb 15 A`, []],
  // More load than the device is for is another matter, and so is a device that is too large as remembered.
  [`device BS EN 60898 B25 6 kA\n${cable}\nIb 26 A`, ["In ≤ Iz holds: 25 of 27 A"]],
  [`device BS EN 60898 B32 6 kA\n${cable}\nIb 15 A`, []],
  // Of relations that hold the one with least left; what does not hold is no reason to look up what does.
  [motor(26, 20), ["Ir ≤ Iz holds: 26 of 27 A"]],
  [motor(25, 26), ["Ib ≤ Iz holds: 26 of 27 A"]],
  [motor(26, 25), ["Ir ≤ Iz holds: 26 of 27 A"]],
  [motor(26, 28), ["Ir ≤ Iz holds: 26 of 27 A"]],
  [motor(24, 20), []],
  ["device BS EN 60898 B25 6 kA\nIb 15 A", []],
])("%j passes by what is remembered: %j", (lines, wanted) => expect(said(lines)).toEqual(wanted));

it("says nothing of a ring, whose 2.5 mm² is published to do", () => {
  expect(said(`device BS EN 60898 B25 6 kA\n${cable}`, "ring")).toEqual([]);
});
