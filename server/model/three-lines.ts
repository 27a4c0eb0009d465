/** Which lines boards and ways have, by what the schedule says. */
import type { BoardHead, Way } from "./file.ts";
import { saidToBeThree } from "./glance.ts";
import { recorder } from "./reads.ts";
import type { Facts } from "./values.ts";

/** One step from a board towards the origin: the board that feeds it, and the way it is fed by if that is known. */
export interface Upstream {
  readonly board: BoardHead;
  readonly feeder: Way | undefined;
}

interface Fed {
  readonly board: BoardHead;
  readonly upstream: readonly Upstream[];
  readonly supply: Facts<"supply"> | undefined;
}

/**
 * Whether a board has three lines: as it says itself, or as the way that feeds it says, or like what is above it. A board
 * that names the one line it is on has one.
 */
export function isThreePhase({ board, upstream, supply }: Fed): boolean {
  /** Whether no feeder so far has the number of one line. */
  let unnamed = true;
  let current = board;
  // Step by step: there may be hundreds of boards in a row.
  for (const { board: above, feeder } of upstream) {
    const own = saidOfBoard(current) ?? saidOfFeeder(feeder);
    if (own !== undefined) return own && unnamed;
    unnamed &&= feeder === undefined || namedLine(feeder) === undefined;
    current = above;
  }
  return (saidOfBoard(current) ?? supply?.one("phases")?.args.count.value === "three") && unnamed;
}

/** Whoever is recorded asks the lines themselves. */
const saidOfBoard = (board: BoardHead): boolean | undefined =>
  recorder === undefined ? board.glance.three : saidToBeThree(board.facts);

function saidOfFeeder(feeder: Way | undefined): boolean | undefined {
  const phase = feeder?.facts.one("phase")?.args.phase.value;
  return phase === undefined ? undefined : phase === "three";
}

/** The line that the number of a way says it is on; a cable of more cores than one line needs speaks against it. */
export function namedLine({ id, facts }: Pick<Way, "id" | "facts">): ReturnType<typeof lineInName> {
  const cores = facts.one("cable")?.args.cores?.value;
  return cores !== undefined && cores > 3 ? undefined : lineInName(id);
}

const nameWithLine = /^\d+\/?(L[123])$/;

/** The line in the number of a way, as boards are labelled: 1L2, 6/L3. On a board of three lines it says which it is on. */
export const lineInName = (id: string): "L1" | "L2" | "L3" | undefined =>
  nameWithLine.exec(id)?.[1] as "L1" | "L2" | "L3" | undefined;
