/**
 * What was found on a way or a board, with what was asked of the things it shares with others: it stands as long as the
 * answers are the same, whatever else was edited and whichever schedule asks.
 */

import { type Bits, hasBit } from "../../memo/bits.ts";
import { Memo } from "../../memo/memo.ts";
import { type ContextChange, changeBetween } from "../../model/context-change.ts";
import type { Board, Way } from "../../model/file.ts";
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

/** What is found where a check itself fails. */
export const checkFailed = "check/failed";

export interface KeptForWay extends KeptFindings {
  /** By the rules one by one, before they are looked at together. */
  readonly found: readonly Finding[];
}

/** What was found on a way before an edit that some of its rules asked about. */
export interface PartlyKnown {
  readonly found: readonly Finding[];
  readonly reads: Bits;
  /** Whether what was found stands where it stood, so that a verdict on it still means it. */
  readonly isInPlace: boolean;
  /** By the number of a rule among those who ask. */
  asksAgain(asker: number): boolean;
}

const waysKept = new Memo<Way, readonly KeptForWay[]>();

export function keepForWay(way: Way, fresh: KeptForWay): void {
  const others = (waysKept.get(way) ?? []).filter(({ parts }) => parts !== fresh.parts);
  waysKept.set(way, [fresh, ...others.slice(0, fresh.parts.mostKept - 1)]);
}

/** With what is found on its ways. */
export interface KeptForBoard extends KeptFindings {
  readonly board: Board;
  /** What was found by the rules of the board alone, and what they asked. */
  readonly own: readonly Finding[];
  readonly ownReads: Bits;
  readonly departures: readonly PlacedDeparture[];
}

const boardsKept = new Memo<SharedParts, KeptForBoard>();

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

  ofWay(way: Way): KeptForWay | undefined {
    const kept = waysKept.get(way);
    if (!kept) return undefined;
    const own = () => new Set(segmentsOf(way));
    for (const one of kept) {
      if (one.parts === this.#parts) return one;
      if (!changeBetween(one.parts, this.#parts).leaves(one.reads)) continue;
      const findings = this.#inPlace(one, one.findings, own);
      const found = one.found === one.findings ? findings : this.#inPlace(one, one.found, own);
      if (!findings || !found) continue;
      const here = { ...one, parts: this.#parts, findings, found };
      keepForWay(way, here);
      return here;
    }
    return undefined;
  }

  /** What can be taken over of what was found on a way, where some of its rules ask what has another answer now. */
  partOfWay(way: Way): PartlyKnown | undefined {
    const [last] = waysKept.get(way) ?? [];
    const change = last && changeBetween(last.parts, this.#parts);
    return change && this.#partly(last, last.found, last.reads, () => new Set(segmentsOf(way)));
  }

  /** The same of a board as a whole, where its ways are the same. */
  partOfBoard({ ways }: Board): PartlyKnown | undefined {
    const [first] = ways;
    for (const { parts } of (first && waysKept.get(first)) ?? []) {
      const kept = boardsKept.get(parts);
      if (kept && sameWays(kept.board.ways, ways))
        return this.#partly(kept, kept.own, kept.ownReads, () => new Set(ways.flatMap(segmentsOf)));
    }
    return undefined;
  }

  #partly(
    kept: KeptFindings,
    before: readonly Finding[],
    reads: Bits,
    own: () => ReadonlySet<Segment>,
  ): PartlyKnown | undefined {
    const change = changeBetween(kept.parts, this.#parts);
    if (change.isOther || before.some(({ check }) => check === checkFailed) || !isWhole(before)) return undefined;
    const found = this.#inPlace(kept, before, own);
    if (!found) return undefined;
    const again = change.whoAsksAgain(reads);
    return {
      found,
      reads,
      isInPlace: found.every((one, index) => one === before[index]),
      asksAgain: (asker) => hasBit(again, asker),
    };
  }

  /** What was found on a board as a whole, where its ways are the same. */
  ofBoard({ ways }: Board): Omit<KeptForBoard, "board" | "departures"> | undefined {
    const [first] = ways;
    const own = () => new Set(ways.flatMap(segmentsOf));
    for (const { parts } of (first && waysKept.get(first)) ?? []) {
      const kept = boardsKept.get(parts);
      if (!kept || !sameWays(kept.board.ways, ways)) continue;
      if (!changeBetween(parts, this.#parts).leaves(kept.reads)) continue;
      const findings = this.#inPlace(kept, kept.findings, own);
      const found = this.#inPlace(kept, kept.own, own);
      if (findings && found) return { ...kept, parts: this.#parts, findings, own: found };
    }
    return undefined;
  }

  /** What was found elsewhere than on a way or a board by itself, whose lines are these, where all of it still holds. */
  still(kept: KeptFindings, own: () => ReadonlySet<Segment>): readonly Finding[] | undefined {
    return changeBetween(kept.parts, this.#parts).leaves(kept.reads)
      ? this.#inPlace(kept, kept.findings, own)
      : undefined;
  }

  /** The same where some of its rules ask what has another answer now. */
  partOf(kept: KeptFindings, own: () => ReadonlySet<Segment>): PartlyKnown | undefined {
    return this.#partly(kept, kept.findings, kept.reads, own);
  }

  /** Findings where their lines stand now; nothing where one of them cannot be followed. */
  #inPlace(
    { parts }: KeptFindings,
    findings: readonly Finding[],
    own: () => ReadonlySet<Segment>,
  ): readonly Finding[] | undefined {
    if (findings.length === 0) return findings;
    const change = changeBetween(parts, this.#parts);
    const segments = own();
    const now = findings.map((finding) => inPlaceNow(finding, segments, change));
    return now.every((finding) => finding !== undefined) ? now : undefined;
  }
}

/** Whether all that a verdict explains is there: what has moved since is another object. */
const isWhole = (found: readonly Finding[]): boolean =>
  found.every(({ explains = [] }) => explains.every((one) => found.includes(one)));

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
