/** What somebody of the trade has in mind at a place: what the circuit is for, how it runs, what this board is made of. */

import { uses as everyUse, type Use } from "../../grammar/choices.ts";
import { siteTerms } from "../../grammar/site-terms.ts";
import { premisesOf } from "../circuit/supply.ts";
import { valueAt } from "../model/fact-values.ts";
import type { Board } from "../model/file.ts";
import { normalStandard } from "../model/token-values.ts";
import { type Fact, type FactOf, type Facts, isOfKind } from "../model/values.ts";
import type { Snapshot } from "../workspace/workspace.ts";
import { boardAt, type CursorContext, installationAt } from "./cursor.ts";

export interface Bearings {
  /** ring, radial, feeder or spare, where the way says so. */
  readonly kind: string | undefined;
  /** What the circuit serves; where it does not say, what its title makes likely. */
  readonly uses: ReadonlySet<Use>;
  readonly premises: string | undefined;
  readonly stage: string | undefined;
  readonly board: Board | undefined;
  /** The way's own lines so far. */
  readonly facts: Facts<"way"> | undefined;
  /** The device most ways of this board have, but for its type and rating. */
  readonly usualDevice: UsualDevice | undefined;
  /** The RCDs of the board by name. */
  readonly rcds: readonly FactOf<"board", "rcd">[];
}

interface UsualDevice {
  readonly standard: string;
  /** What stands behind its type and rating, as it is written: `6 kA 30 mA type A`. */
  readonly tail: string;
}

export function bearingsAt(snapshot: Snapshot, spotted: CursorContext): Bearings {
  const place = boardAt(snapshot, spotted.segment);
  const installation = place?.context.installation ?? installationAt(snapshot, spotted.segment)?.head;
  const board = place?.board;
  const way = [...spotted.outer, spotted.around].find(({ kind }) => kind === "way");
  const facts = way && isOfKind(way.facts, "way") ? way.facts : undefined;
  const title = way?.header?.args.find(({ image }) => image.startsWith('"'))?.image ?? "";
  const served = facts?.one("serves")?.args.uses.map(({ value }) => value) ?? [];
  return {
    kind: way?.header?.args.map(({ image }) => image).find((image) => kinds.has(image)),
    uses: new Set(served.length > 0 ? served : usesIn(title)),
    premises: place ? premisesOf(place.context) : installation?.facts.one("premises")?.args.premises.value,
    stage: installation?.facts.one("stage")?.args.stage.value,
    board,
    facts,
    usualDevice: board && usualDevice(board, spotted.segment),
    rcds: board?.head.facts.all("rcd") ?? [],
  };
}

const kinds: ReadonlySet<string> = new Set(["ring", "radial", "feeder", "spare"]);

const isUse = (word: string): word is Use => Object.hasOwn(everyUse, word);

/** The uses that the words of a title name: “Kitchen sockets”, “Immersion”. */
function usesIn(title: string): Use[] {
  const words = title.toLowerCase().match(/[\p{L}-]+/gu) ?? [];
  return words.flatMap((word) => {
    if (isUse(word)) return [word];
    return siteTerms[word]?.filter(isUse) ?? [];
  });
}

function usualDevice(board: Board, not: unknown): UsualDevice | undefined {
  const counts = new Map<string, { device: UsualDevice; count: number }>();
  for (const { segment, facts, kind } of board.ways) {
    const fact = facts.one("device");
    if (segment === not || kind === "feeder" || !fact?.args.curve) continue;
    const device = {
      standard: normalStandard(fact.args.standard.value) ?? fact.args.standard.value,
      tail: tailOf(fact),
    };
    const name = `${device.standard} ${device.tail}`;
    counts.set(name, { device, count: (counts.get(name)?.count ?? 0) + 1 });
  }
  return [...counts.values()].sort((one, other) => other.count - one.count)[0]?.device;
}

/** What a device's line says behind its type and rating. */
function tailOf(fact: Fact): string {
  const { segment, end } = fact;
  const from = valueAt(fact, "curve")?.end ?? end;
  return segment.text.slice(from, end).replace(/\s+/g, " ").trim();
}
