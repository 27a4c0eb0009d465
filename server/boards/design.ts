/**
 * The design of an installation with its working, for reports: a list of answers for the origin, for each board and for
 * each way. Checks and reports draw on the same answers, so they cannot disagree.
 */
import type { Installation } from "../model/installation.ts";
import { originDemand } from "./demand-origin.ts";
import { demandNotes } from "./demand-words.ts";
import { lineFigures } from "./design-board.ts";
import { compared, type DesignLine, open, stated } from "./design-line.ts";

export { designOfBoard } from "./design-board.ts";
export type { DesignLine, Figure, Verdict } from "./design-line.ts";
export { designOfWay, lengthsOfWay } from "./design-way.ts";

/** Demand against the cut-out and against the demand that is stated. */
export function designOfOrigin(installation: Installation): readonly DesignLine[] {
  const demand = originDemand(installation);
  const cutout = installation.supply?.one("cutout")?.args.rating.value;
  const written = installation.supply?.one("demand")?.args.value.value;
  if (!demand) return [open("Demand", "no circuit tells what it takes")];
  const guidance = !demand.diverse;
  const { greatest } = demand;
  return [
    ...lineFigures(demand),
    ...(cutout === undefined
      ? []
      : [
          compared({
            title: "Demand against the cut-out",
            value: greatest,
            limit: stated(cutout, "A"),
            guidance,
            reason: demandNotes(demand, cutout),
          }),
        ]),
    ...(written === undefined
      ? []
      : [
          compared({
            title: "Demand as stated",
            value: stated(written, "A"),
            limit: greatest,
            least: true,
            guidance: true,
            reason: demandNotes(demand, written),
          }),
        ]),
  ];
}
