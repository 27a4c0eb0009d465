/** The uncertainty of the readings that Zs is compared with, all together. */

import { ohms } from "../../calc/result.ts";
import type { ExactReading } from "../../circuit/supply.ts";
import type { WayStudy } from "../../circuit/way.ts";
import { quantityOf, readingAt } from "../../model/values.ts";
import type { LoopAgreement } from "../../readings/loop.ts";
import { type Uncertainty, uncertaintyOnBoard, uncertaintyOnWay } from "../../readings/uncertainty.ts";
import { together } from "./uncertainty-words.ts";

type Parts = Pick<LoopAgreement, "Zs"> & Partial<Pick<LoopAgreement, "R1R2" | "board">>;

export function loopUncertainty(study: WayStudy, { Zs, R1R2, board }: Parts): Uncertainty | undefined {
  const reading = (number: ExactReading | undefined) => quantityOf(readingAt(number?.fact));
  const onWay = (number: ExactReading | undefined) => {
    const quantity = reading(number);
    return number && quantity && uncertaintyOnWay(study, number.fact, quantity);
  };
  const atBoard = reading(board);
  const ofBoard = board && atBoard && uncertaintyOnBoard(study.context, board.fact, atBoard);
  return together([onWay(Zs), onWay(R1R2), ofBoard], ohms);
}
