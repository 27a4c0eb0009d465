/** An installation's own electrode, and the RCDs that rely on it. */
import { type Calculated, rcdLoopLimit } from "../calc/index.ts";
import type { Installation } from "../model/installation.ts";
import { type Rcd, studyWay } from "./way.ts";

/** Of the RCDs that stand nearest to a load, the one that needs the best electrode, and the most it may have. */
export function weakestRcd(installation: Installation): { readonly rcd: Rcd; readonly limit: Calculated } | undefined {
  const nearest = installation.boards.flatMap(({ board, context }) =>
    board.ways.flatMap((way) => {
      const study = studyWay(way, context);
      return study.isSpare ? [] : study.rcds.slice(0, 1);
    }),
  );
  const [rcd] = nearest.toSorted((one, other) => other.sensitivity - one.sensitivity);
  const limit = rcd && rcdLoopLimit(rcd.sensitivity);
  return rcd && limit && { rcd, limit };
}
