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
