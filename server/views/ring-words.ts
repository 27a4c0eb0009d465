/** A ring in words: for whoever hears the drawing, and as its table. */
import { metres, ohms } from "../calc/result.ts";
import type { Explanation } from "../diagnosis/index.ts";
import type { DrawingTable, TableCell } from "../drawings/shapes.ts";
import { rounds } from "../readings/ring.ts";
import type { Point } from "./ring-points.ts";

export function describe(points: readonly Point[], leading: Explanation | undefined): string {
  const out = points.filter(({ readings }) => readings.some(({ value, inside }) => value && !inside));
  const words =
    out.length === 0 ? "" : ` ${out.length} read otherwise than expected: ${out.map(({ name }) => name).join(", ")}.`;
  const suspect = leading?.where.length ? " A suspected fault is marked where it would be." : "";
  return `${points.length} point${points.length === 1 ? "" : "s"}, in order from the first leg.${words}${suspect}`;
}

export const spoken = ({ name, spur, readings }: Point): string =>
  [
    `Point ${name}`,
    ...(spur === undefined ? [] : [`on a spur of ${metres(spur)}`]),
    ...readings.map(({ round, value, expectedText, inside }) => {
      const read = value ? `${value.open ? "more than " : ""}${ohms(value.quantity.value)}` : "not read";
      const should = expectedText === "" ? "" : `, expected ${expectedText}`;
      return `${round} ${read}${should}${value && !inside ? ", not as expected" : ""}`;
    }),
  ].join("; ");

export function tableOf(points: readonly Point[]): DrawingTable {
  return {
    head: ["Point", "On", ...rounds.flatMap((round) => [`${round} read`, `${round} expected`])],
    rows: points.map(({ name, spur, from, mark, readings }): TableCell[] => [
      { text: name, mark },
      { text: spur === undefined ? "the ring" : `a spur of ${metres(spur)} from ${from ?? "?"}` },
      ...readings.flatMap(({ value, expectedText, inside }) => [
        {
          text: value
            ? `${value.open ? ">" : ""}${ohms(value.quantity.value)}${inside ? "" : ", not as expected"}`
            : "not read",
        },
        { text: expectedText === "" ? "not known" : expectedText },
      ]),
    ]),
  };
}
