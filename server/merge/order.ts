/** In which order what both sides have stands in the result. */

/** A place in a result: what stands there, and how it ranks among what the other side put at the same place. */
export interface Slot {
  readonly id: string;
  readonly rank: readonly (string | number)[];
}

/**
 * The slots of three versions, each in the order of that version, as one sequence. The order of the side that changed it
 * is kept; where both did, that of ours. What only the other side has stands behind what it stands behind there.
 */
export function orderOf(base: readonly Slot[], ours: readonly Slot[], theirs: readonly Slot[]): Slot[] {
  const [frame, other] = isInOrder(ours, base) && !isInOrder(theirs, base) ? [theirs, ours] : [ours, theirs];
  const known = new Set(frame.map(({ id }) => id));
  const shared = new Set(other.map(({ id }) => id).filter((id) => known.has(id)));
  const behind = new Map<string, Slot[]>();
  let before = start;
  for (const slot of other) {
    if (shared.has(slot.id)) before = slot.id;
    else behind.set(before, [...(behind.get(before) ?? []), slot]);
  }
  const out: Slot[] = [];
  let gap: Slot[] = [];
  let at = start;
  const flush = () => out.push(...woven(gap, behind.get(at) ?? []));
  for (const slot of frame) {
    if (!shared.has(slot.id)) gap.push(slot);
    else {
      flush();
      out.push(slot);
      at = slot.id;
      gap = [];
    }
  }
  flush();
  return out;
}

const start = "";

/** Whether what two versions share is in the same order in both. */
function isInOrder(some: readonly Slot[], base: readonly Slot[]): boolean {
  const places = new Map(base.map(({ id }, index) => [id, index]));
  let last = -1;
  for (const { id } of some) {
    const place = places.get(id);
    if (place === undefined) continue;
    if (place < last) return false;
    last = place;
  }
  return true;
}

/** What both sides put at one place, by rank: so it does not matter whose is whose. Each keeps its own order. */
function woven(a: readonly Slot[], b: readonly Slot[]): Slot[] {
  const out: Slot[] = [];
  let next = 0;
  for (const slot of a) {
    while (next < b.length && compareRanks((b[next] as Slot).rank, slot.rank) < 0) out.push(b[next++] as Slot);
    out.push(slot);
  }
  return [...out, ...b.slice(next)];
}

function compareRanks(a: Slot["rank"], b: Slot["rank"]): number {
  for (let at = 0; at < Math.max(a.length, b.length); at++) {
    const [one = "", other = ""] = [a[at], b[at]];
    if (one === other) continue;
    if (typeof one === "number" && typeof other === "number") return one - other;
    return String(one) < String(other) ? -1 : 1;
  }
  return 0;
}
