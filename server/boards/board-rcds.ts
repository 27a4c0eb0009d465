/** The RCDs of a board, each once, with the ways behind it. */

import { rcdsOfBoard } from "../circuit/rcds.ts";
import { isOutsideWork } from "../circuit/supply.ts";
import type { Rcd, WayStudy } from "../circuit/way.ts";
import type { BoardHead } from "../model/file.ts";
import type { Fact, Span } from "../model/values.ts";

export interface BoardRcd {
  readonly rcd: Rcd;
  readonly ways: readonly WayStudy[];
}

/** Those that stand at this board; what lies upstream belongs to another. Spare ways count for nothing. */
export function rcdsAt(studies: readonly WayStudy[]): BoardRcd[] {
  const found = new Map<Fact, { rcd: Rcd; ways: WayStudy[] }>();
  for (const study of studies) {
    if (study.isSpare) continue;
    for (const rcd of study.rcds) {
      if (rcd.at === "upstream") continue;
      const entry = found.get(rcd.fact) ?? { rcd, ways: [] };
      entry.ways.push(study);
      found.set(rcd.fact, entry);
    }
  }
  return [...found.values()];
}

/** Those that several ways share and the work is of: of an old board those that protect a circuit of the work. */
export function rcdsInWork(board: BoardHead, studies: readonly WayStudy[]): readonly Rcd[] {
  const shared = rcdsOfBoard(board);
  if (!studies.some(isOutsideWork)) return shared;
  const protecting = new Set(
    studies.flatMap((study) => (study.isSpare || isOutsideWork(study) ? [] : study.rcds.map(({ fact }) => fact))),
  );
  return shared.filter(({ fact }) => protecting.has(fact));
}

/** The span of an RCD's type, or of its rating where no type is written. */
export function typeSpan({ fact }: Rcd): Span | undefined {
  const { type, sensitivity } = fact.args;
  return type ?? sensitivity;
}
