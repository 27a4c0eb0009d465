/** What is expected at one point of a circuit, from the lengths and sizes that are drawn, beside what was read there. */

import { marginOf } from "../../calc/margin.ts";
import type { Calculated } from "../../calc/result.ts";
import { ohms, round } from "../../calc/result.ts";
import type { WayStudy } from "../../circuit/way.ts";
import { exact, type Fact, readingAt } from "../../model/values.ts";
import { type ExpectedPoint, expectedCircuit, expectedPoint } from "../../readings/expected.ts";
import { continuityBounds } from "../../readings/plan-dead.ts";
import { loopBounds } from "../../readings/plan-live.ts";
import { boundRows, type Card, card, type Row, row } from "./card.ts";

const readingOf = (fact: Fact | undefined, name: string): number | undefined => exact(readingAt(fact, name));

/** A figure that is expected and, where one was read, by how much it is away. */
function beside(name: string, expected: Calculated | undefined, read: number | undefined): string[] {
  if (!expected || !Number.isFinite(expected.value)) return [];
  if (read === undefined) return [`${name}${ohms(expected.value)}`];
  const away = round(read - expected.value, 2);
  const by = away === 0 ? "as read" : `read ${Math.abs(away).toFixed(2)} Ω ${away < 0 ? "lower" : "higher"}`;
  return [`${name}${ohms(expected.value)} (${by})`];
}

/** The rows for a point, and what they were calculated from. */
export function pointRows(
  study: WayStudy,
  name: string,
  fact?: Fact,
): { readonly rows: readonly (Row | undefined)[]; readonly from: readonly (Calculated | undefined)[] } {
  const point = expectedPoint(study, name);
  if (!point) return { rows: [], from: [] };
  const [LN, LE, R2] = [readingOf(fact, "L-N"), readingOf(fact, "L-E"), readingOf(fact, "R2")];
  const texts = study.isRing ? roundTexts(point, LN, LE) : plainTexts(point, LN, LE, R2);
  return {
    rows: [
      row(
        study.isRing ? "by lengths and sizes, cross-connected" : "by lengths and sizes",
        texts.join(", ") || undefined,
      ),
      ...(LE === undefined || study.isRing ? [] : boundRows(continuityBounds(study), { value: LE })),
      loopRow(study, point),
      note(study, point),
    ],
    from: study.isRing ? [point["L-N"], point["L-E"]] : [...(LN === undefined ? [] : [point["L-N"]]), point["L-E"]],
  };
}

const roundTexts = (point: ExpectedPoint, LN: number | undefined, LE: number | undefined): string[] => [
  ...beside("L-N ", point["L-N"], LN),
  ...beside("L-E ", point["L-E"], LE),
];

/** Line and neutral are rarely read along a radial: what they should read is shown where somebody did. */
const plainTexts = (
  point: ExpectedPoint,
  LN: number | undefined,
  LE: number | undefined,
  R2: number | undefined,
): string[] => [
  ...(LN === undefined ? [] : beside("R1+Rn ", point["L-N"], LN)),
  ...beside("R1+R2 ", point["L-E"], LE),
  ...(R2 === undefined ? [] : beside("R2 ", point.R2, R2)),
];

/** Loop impedance there on cold conductors, with what is left to the limit for a cold reading. */
function loopRow(study: WayStudy, { Zs }: ExpectedPoint): Row | undefined {
  if (!Zs) return undefined;
  const [limit] = loopBounds(study);
  const margin = limit && marginOf("most", Zs.value, limit.value);
  return row("Zs there, cold", `${ohms(Zs.value)}${margin ? `, ${limit.text}, ${margin.text}` : ""}`);
}

function note(study: WayStudy, point: ExpectedPoint): Row | undefined {
  const circuit = expectedCircuit(study);
  if (!circuit || circuit.points.length < 2) return undefined;
  const most = [
    ...(point === circuit.highest ? ["reads the highest to earth"] : []),
    ...(point === circuit.farthest ? ["is the farthest for Zs"] : []),
  ];
  return row("this point", most.length > 0 ? most.join(" and ") : undefined);
}

/** On the name of a point in a run, or wherever it is used. */
export function namedPointCard(study: WayStudy, name: string): Card | undefined {
  const { rows, from } = pointRows(study, name);
  const shown = rows.filter((one) => one !== undefined);
  return shown.length === 0 ? undefined : card(shown, ...from);
}
