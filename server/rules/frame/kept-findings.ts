/**
 * What was found on a way or a board, with what was asked of the things it shares with others: it stands as long as the
 * answers are the same, whatever else was edited and whichever schedule asks.
 */

import { type ContextChange, changeBetween } from "../../model/context-change.ts";
import type { Board, Way } from "../../model/file.ts";
import type { Bits } from "../../model/reads.ts";
import type { SharedParts } from "../../model/shared-parts.ts";
import type { Segment } from "../../syntax/split.ts";
import type { PlacedDeparture } from "./departures.ts";
import type { Finding, Related, Spot } from "./rule.ts";

export interface KeptFindings {
  /** Not the context itself: with it all that was worked out of the ways there would stay. */
  readonly parts: SharedParts;
  readonly reads: Bits;
  readonly findings: readonly Finding[];
  readonly isNew?: true;
}

/** A file can be part of several schedules, each with a context of its own. */
const mostKept = 6;

const waysKept = new WeakMap<Way, readonly KeptFindings[]>();

export function keepForWay(way: Way, fresh: KeptFindings): void {
  const others = (waysKept.get(way) ?? []).filter(({ parts }) => parts !== fresh.parts);
  waysKept.set(way, [fresh, ...others.slice(0, mostKept - 1)]);
}

/** With what is found on its ways. */
export interface KeptForBoard extends KeptFindings {
  readonly board: Board;
  readonly departures: readonly PlacedDeparture[];
}

const boardsKept = new WeakMap<SharedParts, KeptForBoard>();

export const keptForBoard = (parts: SharedParts): KeptForBoard | undefined => boardsKept.get(parts);

export function keepForBoard(fresh: KeptForBoard): void {
  boardsKept.set(fresh.parts, fresh);
}

/** What is still known in a context of what was found in others. */
export class StillKnown {
  readonly #parts: SharedParts;

  constructor(parts: SharedParts) {
    this.#parts = parts;
  }

  ofWay(way: Way): KeptFindings | undefined {
    const kept = waysKept.get(way);
    if (!kept) return undefined;
    const own = () => new Set(segmentsOf(way));
    for (const one of kept) {
      if (one.parts === this.#parts) return one;
      const findings = this.#findings(one, own);
      if (!findings) continue;
      const here = { ...one, parts: this.#parts, findings };
      keepForWay(way, here);
      return here;
    }
    return undefined;
  }

  /** What was found on a board as a whole, where its ways are the same. */
  ofBoard({ ways }: Board): KeptFindings | undefined {
    const [first] = ways;
    const own = () => new Set(ways.flatMap(segmentsOf));
    for (const { parts } of (first && waysKept.get(first)) ?? []) {
      const kept = boardsKept.get(parts);
      if (!kept || !sameWays(kept.board.ways, ways)) continue;
      const findings = this.#findings(kept, own);
      if (findings) return { parts: this.#parts, reads: kept.reads, findings };
    }
    return undefined;
  }

  #findings({ parts, reads, findings }: KeptFindings, own: () => ReadonlySet<Segment>): readonly Finding[] | undefined {
    const change = changeBetween(parts, this.#parts);
    if (!change.leaves(reads)) return undefined;
    if (findings.length === 0) return findings;
    const segments = own();
    const now = findings.map((finding) => inPlaceNow(finding, segments, change));
    return now.every((finding) => finding !== undefined) ? now : undefined;
  }
}

/** Where all that is said of a way stands: none of it changes without the way. */
const segmentsOf = ({ segment, type }: Way): Segment[] => (type ? [segment, type.segment] : [segment]);

const sameWays = (one: readonly Way[], other: readonly Way[]): boolean =>
  one.length === other.length && one.every((way, index) => way === other[index]);

/** A finding with all its places where they stand now; nothing where one of them cannot be followed. */
function inPlaceNow(finding: Finding, own: ReadonlySet<Segment>, change: ContextChange): Finding | undefined {
  const spot = spotNow(finding.spot, own, change);
  if (!spot) return undefined;
  const related: Related[] = [];
  for (const one of finding.related) {
    const there = spotNow(one.spot, own, change);
    if (!there) return undefined;
    related.push(there === one.spot ? one : { ...one, spot: there });
  }
  const stays = spot === finding.spot;
  // A fix takes hold of the text round its line too, which may be another now.
  if (!stays && finding.fixes.length > 0) return undefined;
  return stays && related.every((one, index) => one === finding.related[index])
    ? finding
    : { ...finding, spot, related };
}

function spotNow(spot: Spot, own: ReadonlySet<Segment>, change: ContextChange): Spot | undefined {
  if (own.has(spot.segment)) return spot;
  const moved = change.moved(spot);
  if (!moved) return undefined;
  if (moved.segment === spot.segment && moved.by === 0) return spot;
  return { segment: moved.segment, start: spot.start + moved.by, end: spot.end + moved.by };
}
