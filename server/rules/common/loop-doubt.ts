/** What the readings that Zs is held against may be out by, all together. */

import { ohms } from "../../calc/result.ts";
import type { NumberAt } from "../../circuit/supply.ts";
import type { WayStudy } from "../../circuit/way.ts";
import { measured, type Reading } from "../../model/values.ts";
import { type Doubt, doubtOnBoard, doubtOnWay } from "../../readings/doubt.ts";
import type { LoopAgreement } from "../../readings/loop.ts";
import { together } from "./doubt-words.ts";

type Parts = Pick<LoopAgreement, "Zs"> & Partial<Pick<LoopAgreement, "R1R2" | "board">>;

export function loopDoubt(study: WayStudy, { Zs, R1R2, board }: Parts): Doubt | undefined {
  const reading = (number: NumberAt | undefined) => measured(number?.fact.args.value as Reading | undefined);
  const onWay = (number: NumberAt | undefined) => {
    const quantity = reading(number);
    return number && quantity && doubtOnWay(study, number.fact, quantity);
  };
  const atBoard = reading(board);
  const ofBoard = board && atBoard && doubtOnBoard(study.context, board.fact, atBoard);
  return together([onWay(Zs), onWay(R1R2), ofBoard], ohms);
}
