import type { Installation } from "../../model/installation.ts";
import { innerOf } from "../../model/values.ts";

/** Whether main bonding is recorded with the dead tests of a board, instead of in the supply. */
export const bondingWithTests = ({ boards }: Pick<Installation, "boards">): boolean =>
  boards.some(({ board }) => board.head.facts.all("dead").some((fact) => innerOf(fact, "boardDead")?.has("bonding")));
