/** What a cable carries at the most, however it is laid. */
import { expect, test } from "vitest";
import { capacityCeiling } from "../../server/circuit/capacity-ceiling.ts";
import { installationOf, nodeOf, wayOf } from "../helpers/place.ts";
import { inSetting } from "../helpers/sample.ts";

const most = (cable: string): number | undefined =>
  capacityCeiling(
    wayOf(
      nodeOf(installationOf(inSetting(`way 1 radial "Heater" {\ndevice BS EN 60898 B16 6 kA\n${cable}\n}`).text), "A"),
      "1",
    ),
  )?.value;

// Clipped direct they carry 27 A and 85 A (Table 4D5), and no more than the next size does.
test.each([
  ["2.5 mm² cpc 1.5 mm²", 27, 37],
  ["16 mm² cpc 6 mm²", 85, 112],
])("%s carries between %d A and %d A", (sizes, least, greatest) => {
  expect(most(`cable flat-twin line ${sizes}`)).toBeGreaterThan(least);
  expect(most(`cable flat-twin line ${sizes}`)).toBeLessThan(greatest);
});

test.each([
  // Single cables of 25 mm² and more carry more in free air than any column that is kept.
  "cable singles line 25 mm² cpc 16 mm²",
  // What is stated goes before any bound.
  "cable flat-twin line 2.5 mm² cpc 1.5 mm² carries 24 A",
  "",
])("nothing is said of “%s”", (cable) => expect(most(cable)).toBeUndefined());

// Table 4E4A, clipped direct: 70 mm² carries 238 A with three loaded, 279 A with two. Aluminium by the root of 0.268/0.443.
test.each([
  ["phase three", 238],
  ["", 279],
])("aluminium of 70 mm² on %j is bounded by copper with as many loaded conductors", (phase, amperes) => {
  const lines = `cable armoured 90 °C aluminium line 70 mm² cpc 70 mm² cores 5\nroute clipped method C\n${phase}`;
  expect(most(lines)).toBeCloseTo(amperes * Math.sqrt(0.268 / 0.443), 6);
});
