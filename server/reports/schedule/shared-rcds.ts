/** The RCDs that several ways of a board share: they are tested once, and have a row of their own. */
import { rcdName } from "../../circuit/describe.ts";
import { rcdsOfBoard } from "../../circuit/rcds.ts";
import type { Rcd } from "../../circuit/way.ts";
import type { BoardInPlace } from "../../model/installation.ts";
import { rcdLabel, rcdTestsOfBoard } from "../../readings/rcd-tests.ts";
import { type Block, type Cell, table } from "../setting/document.ts";
import { buttonFact } from "./button.ts";
import { type Fill, readingCell } from "./cell.ts";
import { ratingText } from "./row.ts";

/** What stands in the column “way” of a shared RCD's row. */
export const sharedRcdWay = ({ name }: Rcd): string => (name === undefined ? "main-switch" : `rcd ${name}`);

export function sharedRcds({ board, context }: BoardInPlace, fill: Fill): Block[] {
  const tests = rcdTestsOfBoard(context);
  const rows = rcdsOfBoard(board.head).map((rcd) => {
    const test = tests.find(({ device, multiple }) => device?.fact === rcd.fact && (multiple?.value ?? 1) === 1);
    return [
      rcdLabel(rcd),
      rcdName(rcd),
      ratingText(rcd) === "" ? "" : `${ratingText(rcd)} A`,
      cellText(readingCell(test?.fact, "time", "ms", "blank", fill), "ms"),
      cellText(readingCell(buttonFact(rcd.name, board), "verdict", "", "blank", fill), ""),
    ];
  });
  return table(["Shared RCD", "rated", "In", "at 1 × IΔn", "test button"], rows);
}

/** A cell in a table of words: a blank is a line to write on. */
function cellText({ text, kind, last }: Cell, unit: string): string {
  const shown = kind === "blank" ? "______" : text;
  const isFigure = kind === "measured" || kind === "blank" || kind === "calculated";
  const figure = unit !== "" && isFigure ? `${shown} ${unit}` : shown;
  return last === undefined ? figure : `${figure} (${last})`;
}
