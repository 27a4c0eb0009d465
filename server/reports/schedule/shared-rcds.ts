/**
 * The RCDs of a board that have no row of their circuit: those that several ways share, which are tested once, and those
 * that a way has besides the one in its row.
 */

import { rcdName } from "../../circuit/describe.ts";
import { outletRcds, rcdsOfBoard } from "../../circuit/rcds.ts";
import type { Rcd, WayStudy } from "../../circuit/way.ts";
import type { BoardInPlace } from "../../model/installation.ts";
import type { Fact } from "../../model/values.ts";
import {
  buttonOnBoard,
  buttonOnWay,
  type RcdTest,
  rcdLabel,
  rcdTestsOfBoard,
  rcdTestsOfWay,
  worstAtRated,
} from "../../readings/rcd-tests.ts";
import type { Fill } from "../common/paper-kinds.ts";
import { type Block, type Cell, table } from "../setting/document.ts";
import { readingCell, tripCell } from "./cell.ts";
import { ratingText } from "./row.ts";

/** An RCD with a row of its own, and its latest tests. */
interface RcdRow {
  readonly rcd: Rcd;
  /** What stands in the column “way”: `rcd east`, `main-switch`, `3 at S3`, `3 rcd`. */
  readonly way: string;
  readonly test: RcdTest | undefined;
  readonly button: Fact | undefined;
  /** The circuit it protects alone. */
  readonly study?: WayStudy;
}

export const rcdRowsOf = ({ board, context }: BoardInPlace, studies: readonly WayStudy[]): RcdRow[] => [
  ...rcdsOfBoard(board.head).map((rcd) => ({
    rcd,
    way: rcd.name === undefined ? "main-switch" : `rcd ${rcd.name}`,
    test: worstAtRated(rcdTestsOfBoard(context), rcd.fact),
    button: buttonOnBoard(rcd, context),
  })),
  ...studies.flatMap(rowsOfWay),
];

/** The way's own `rcd` where its device is an RCD too, and those in its outlets. */
const rowsOfWay = (study: WayStudy): RcdRow[] =>
  [...study.rcds.slice(1).filter(({ at }) => at === "way"), ...outletRcds(study.facts)].map((rcd) => ({
    rcd,
    way: `${study.way.id} ${rcd.point === undefined ? "rcd" : `at ${rcd.point}`}`,
    test: worstAtRated(rcdTestsOfWay(study), rcd.fact),
    button: buttonOnWay(rcd, study),
    study,
  }));

export function sharedRcds(place: BoardInPlace, studies: readonly WayStudy[], fill: Fill): Block[] {
  const rows = rcdRowsOf(place, studies).map(({ rcd, study, test, button }) => [
    study ? `way ${study.way.id}, ${rcdLabel(rcd)}` : rcdLabel(rcd),
    rcdName(rcd),
    ratingText(rcd) === "" ? "" : `${ratingText(rcd)} A`,
    cellText(tripCell(test?.fact, "blank", fill), "ms"),
    cellText(readingCell(button, "verdict", "", "blank", fill), ""),
  ]);
  return table(["RCD", "rated", "In", "at 1 × IΔn", "test button"], rows);
}

/** A cell in a table of words: a blank is a line to write on. */
function cellText({ text, kind, last }: Cell, unit: string): string {
  const shown = kind === "blank" ? "______" : text;
  const isFigure = kind === "measured" || kind === "blank" || kind === "calculated";
  const figure = unit !== "" && isFigure ? `${shown} ${unit}` : shown;
  return last === undefined ? figure : `${figure} (${last})`;
}
