/** What is not measured: one sign for several figures of a line is one limitation, by the name of the line. */
import { expect, test } from "vitest";
import { absenceRows } from "../../server/reports/summary/parts.ts";
import { surveyOf } from "../../server/results/survey.ts";
import { fileOfText } from "../../server/workspace/loaded-file.ts";
import { inSetting } from "../helpers/sample.ts";

const dead = (...lines: string[]) =>
  fileOfText(
    "a.ways",
    inSetting(`way 1 radial "Lights" {\n  dead 2026-03-04 {\n${lines.join("\n")}\n  }\n}`, { stage: "tested" }).text,
  );

test.each([
  [['insulation 500 V LIM "Lamps in"'], 1, ["insulation"]],
  [['insulation 500 V each LIM "Lamps in"'], 1, ["insulation each"]],
  [['insulation 500 V L-N LIM "Lamps in" L-E 300 MΩ'], 1, ["insulation L-N"]],
  [
    ['insulation 500 V LIM "Lamps in"', 'R1+R2 LIM "Lamps in"', 'polarity LIM "Locked"'],
    3,
    ["insulation, R1+R2", "polarity"],
  ],
  [['at S1 LIM "Behind the freezer"'], 1, ["readings at S1"]],
  [["insulation 500 V L-N N/A L-E 300 MΩ", "R1+R2 0.4 Ω"], 0, []],
])("%j: %i", (lines, count, names) => {
  const { model } = dead(...lines);
  const [way] = model.installations.flatMap(({ boards }) => boards.flatMap(({ ways }) => ways));
  if (!way) throw new Error("There is no way.");
  expect(surveyOf(model).limitations).toBe(count);
  expect(absenceRows([{ where: "A/1", facts: way.facts }], "LIM").map(([, what]) => what)).toEqual(names);
});
