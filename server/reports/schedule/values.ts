/**
 * The schedule as a table of values, to be filled in elsewhere and to come back: one row a circuit, one for each shared
 * RCD and one for the board itself, every pair of conductors for itself.
 */

import { isOwnRcd } from "../../circuit/rcds.ts";
import type { WayStudy } from "../../circuit/way.ts";
import type { BoardInPlace, Installation } from "../../model/installation.ts";
import type { Fact } from "../../model/values.ts";
import { planBoard } from "../../readings/plan-board.ts";
import type { Fill } from "../common/paper-kinds.ts";
import type { Column } from "../setting/document.ts";
import { sheetOf } from "./board.ts";
import { type Noted, nothing, readingCell, said, tripCell } from "./cell.ts";
import { valueBands } from "./columns.ts";
import { type Cells, wayCells } from "./row.ts";
import { rcdRowsOf } from "./shared-rcds.ts";

export interface ValueTable {
  readonly columns: readonly Column[];
  /** A text each; a figure is written as it was read, with a full stop. */
  readonly rows: readonly (readonly string[])[];
}

/** The name of the row of a board's own tests. */
const boardRowName = "board";

export function valuesOf(
  { boards }: Installation,
  { place, fill = "filled" }: { readonly place?: BoardInPlace | undefined; readonly fill?: Fill } = {},
): ValueTable {
  const columns = valueBands.flatMap((band) => [...band.columns]);
  const rows = (place ? [place] : boards).flatMap((one) => rowsOf(one, fill));
  return { columns, rows: rows.map((cells) => columns.map(({ key }) => valueText(cells[key] ?? nothing))) };
}

function rowsOf(place: BoardInPlace, fill: Fill): Cells[] {
  const name = said(place.board.head.name);
  const { studies } = sheetOf(place);
  return [
    boardCells(place, fill),
    ...rcdRows(place, studies, fill),
    ...studies.map((study) => wayRow(study, fill)),
  ].map((cells) => ({ ...cells, board: name }));
}

function wayRow(study: WayStudy, fill: Fill): Cells {
  const cells = wayCells(study, fill);
  if (study.isSpare) return cells;
  const shared = study.rcds[0] !== undefined && !isOwnRcd(study.rcds[0]);
  const [dead, live] = [study.dead, study.live];
  const days: Cells =
    fill === "filled"
      ? {
          "dead-on": said(dead?.on ?? ""),
          "dead-with": said(dead?.with.join(" ") ?? ""),
          "live-on": said(live?.on ?? ""),
          "live-with": said(live?.with.join(" ") ?? ""),
        }
      : {};
  return { ...cells, ...days, ...(shared ? { "rcd-time": nothing, "rcd-button": nothing } : {}) };
}

function boardCells(place: BoardInPlace, fill: Fill): Cells {
  const plan = planBoard(place.context);
  const factOf = (start: string): Fact | undefined => plan.find(({ name }) => name.startsWith(start))?.recorded?.fact;
  return {
    way: said(boardRowName),
    serves: said(place.board.head.title),
    Zs: readingCell(factOf("Zdb"), "value", "Ω", "blank", fill),
    Ipf: readingCell(factOf("Ipf"), "value", "kA", "blank", fill),
  };
}

const rcdRows = (place: BoardInPlace, studies: readonly WayStudy[], fill: Fill): Cells[] =>
  rcdRowsOf(place, studies).map(
    ({ rcd, way, test, button }): Cells => ({
      way: said(way),
      "rcd-sensitivity": said(String(Math.round(rcd.sensitivity * 1e6) / 1e3)),
      "rcd-type": said(rcd.type ?? ""),
      "rcd-time": tripCell(test?.fact, "blank", fill),
      "rcd-button": readingCell(button, "verdict", "", "blank", fill),
      ...(fill === "filled"
        ? { "live-on": said(test?.test.on ?? ""), "live-with": said(test?.test.with.join(" ") ?? "") }
        : {}),
    }),
  );

/** Words instead of signs, and the reason with what was not tested; a reading that is missing leaves its cell empty. */
function valueText({ text, kind, note }: Noted): string {
  if (kind === "missing" || kind === "blank" || kind === "nothing") return "";
  if (kind === "absent") return note === undefined ? text : `${text} ${note}`;
  if (kind === "calculated" || kind === "declared") return `${text} ${kind}`;
  return text === "✓" ? "ok" : text === "✗" ? "wrong" : text;
}
