/** The design of a board as a report shows it. */

import { designBoardImpedance } from "../readings/loop.ts";
import { quotedIn } from "../tables/source.ts";
import { ratedParts } from "./board-ratings.ts";
import { protecting } from "./coordination.ts";
import { type BoardDemand, demandOf } from "./demand.ts";
import { demandNotes } from "./demand-words.ts";
import { compared, type DesignLine, figure, onSource, open, stated } from "./design-line.ts";
import { boardDrop } from "./drop-path.ts";
import { faultLevels, faultLevelsOn } from "./fault-levels.ts";
import type { BoardNode } from "./network.ts";
import { standbyOf } from "./standby.ts";

/** Demand, main switch, feeder, drop and fault levels of a board. */
export function designOfBoard(node: BoardNode): readonly DesignLine[] {
  return [...demandLines(node), ...dropLine(node), ...faultLines(node)];
}

/** The demand of each line. */
export const lineFigures = (demand: BoardDemand): DesignLine[] =>
  [...demand.lines].map(([line, value]) => figure(line === "L" ? "Demand" : `Demand of ${line}`, value));

function demandLines(node: BoardNode): DesignLine[] {
  const demand = demandOf(node);
  if (!demand) return [open("Demand", "no circuit tells what it takes")];
  const guidance = !demand.diverse;
  const against = (title: string, rating: number): DesignLine =>
    compared({
      title,
      value: demand.greatest,
      limit: stated(rating, "A"),
      guidance,
      reason: demandNotes(demand, rating),
    });
  const mainSwitch = node.board.head.facts.one("main-switch")?.args.rating.value;
  const { feeder } = node;
  const rating = feeder?.device?.rating;
  const above = protecting(node.context);
  const behind = ratedParts(node).find(({ kind }) => kind === "switch")?.behind?.value ?? Number.POSITIVE_INFINITY;
  const bySum = above !== undefined && mainSwitch !== undefined && mainSwitch < above.rating && behind < above.rating;
  return [
    ...lineFigures(demand),
    ...(mainSwitch === undefined ? [] : [against("Demand against the main switch", mainSwitch)]),
    ...(mainSwitch === undefined || !above
      ? []
      : [
          compared({
            title: "Main switch against what protects it",
            value: stated(mainSwitch, "A"),
            limit: { ...stated(bySum ? behind : above.rating, "A"), steps: [], source: quotedIn("536.4.202") },
            least: true,
            guidance: true,
            reason: bySum
              ? "protected by the devices behind it, which together come to no more"
              : `protected by ${above.name}`,
          }),
        ]),
    ...(feeder?.designCurrent
      ? [against("Demand against the feeder's design current", feeder.designCurrent.value)]
      : []),
    ...(rating === undefined ? [] : [against("Demand against the feeder's device", rating)]),
  ];
}

function dropLine(node: BoardNode): DesignLine[] {
  const { drop, whole, feeders } = boardDrop(node);
  if (feeders.length === 0)
    return whole ? [] : [open("Voltage drop up to the board", "a feeder on the way could not be calculated")];
  return [
    figure(
      "Voltage drop up to the board",
      drop,
      whole ? undefined : "a feeder could not be calculated: it is at least this much",
    ),
  ];
}

function faultLines(node: BoardNode): DesignLine[] {
  const levels = faultLevels(node);
  const loop = designBoardImpedance(node.context);
  const how = levels?.recorded ? "as recorded" : "calculated from what is recorded upstream";
  return [
    ...(loop ? [figure("Loop impedance at the board", loop)] : []),
    ...(levels
      ? [
          figure("Greatest fault current, line to neutral", levels.neutral, how),
          ...(levels.three ? [figure("Greatest fault current, three-phase", levels.three, how)] : []),
          ...(levels.earth ? [figure("Greatest earth fault current", levels.earth, how)] : []),
        ]
      : [open("Greatest fault current", "no fault current is recorded here or upstream")]),
    ...standbyOf(node.context).flatMap((source) => {
      const found = faultLevelsOn(node, source);
      const title = "Greatest fault current";
      const line = found ? figure(title, found.greatest) : open(title, "neither its Ze nor what it gives is stated");
      return [onSource(line, source.args.what.value)];
    }),
  ];
}
