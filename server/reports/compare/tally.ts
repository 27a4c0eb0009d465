/** A comparison in numbers, and in the few sentences that stand above it. */
import { capital, counted, listed } from "../../text/words.ts";
import type { Change } from "./change.ts";
import { type Comparison, isSame } from "./comparison.ts";

/** One sentence on the record, one on what a departure hides, one on what changed, one on what is found. */
export function headline(comparison: Comparison): string[] {
  const { places } = comparison;
  if (isSame(comparison)) return [];
  const tally = tallyOf(comparison);
  const record = those([tally.altered, "recorded reading", "altered"], [tally.vanished, "recorded reading", "gone"]);
  if (tally.corrected > 0) record.push(`${tally.corrected} corrected with a reason`);
  const ways = those(
    [tally.changed, "way", "changed"],
    [tally.moved, "way", "moved or renumbered"],
    [tally.came, "new way", ""],
    [tally.went, "way", "gone"],
    [tally.renamed, "board", "renamed"],
    [tally.read, "new reading", ""],
  );
  const hidden = those([tally.suppressed, "finding", "suppressed by a departure, not put right"]);
  return [
    ...(record.length > 0 ? [`${capital(listed(record))}${signedText(tally)}.`] : []),
    ...(hidden.length > 0 ? [`${capital(listed(hidden))}.`] : []),
    ...(ways.length > 0 ? [`${capital(listed(ways))}.`] : [`${capital(counted(places.length, "place"))} changed.`]),
    comparison.isPart
      ? "Nothing is judged: these parts are in no installation here. Compare the schedule that uses them to see limits and findings."
      : foundLine(comparison),
  ];
}

function signedText({ altered, vanished, signed }: Tally): string {
  const all = altered + vanished;
  if (signed === 0) return "";
  if (signed < all) return `; ${signed} of them ${signed === 1 ? "was" : "were"} signed for`;
  return all === 1 ? "; it was signed for" : "; all were signed for";
}

type Count = readonly [number: number, what: string, happened: string];

/** “2 ways changed”, of those that are any. */
const those = (...counts: readonly Count[]): string[] =>
  counts.flatMap(([number, what, happened]) =>
    number === 0 ? [] : [`${counted(number, what)} ${happened}`.trimEnd()],
  );

function foundLine({ found, unread }: Comparison): string {
  const was = foundText(found.before, unread.before.length);
  const is = foundText(found.after, unread.after.length);
  return was === is ? `Found before and after: ${was}.` : `Found before: ${was}; after: ${is}.`;
}

export function foundText({ error, warning, suppressed }: Comparison["found"]["before"], unread = 0): string {
  const some = those([error, "error", ""], [warning, "warning", ""], [unread, "line", "that cannot be read"]);
  const hidden = suppressed > 0 ? [`${suppressed} suppressed`] : [];
  return listed([...(some.length > 0 ? some : ["no errors or warnings"]), ...hidden]);
}

interface Tally {
  readonly altered: number;
  readonly vanished: number;
  readonly corrected: number;
  /** How many of the altered and the vanished somebody had signed for. */
  readonly signed: number;
  readonly read: number;
  readonly changed: number;
  readonly moved: number;
  readonly came: number;
  readonly went: number;
  /** Boards that took another name. */
  readonly renamed: number;
  /** Findings that a departure hides now. */
  readonly suppressed: number;
  /** Lines of the design, of ways and boards. */
  readonly design: number;
}

export function tallyOf({ places }: Comparison): Tally {
  const changes = places.flatMap((place) => place.changes);
  const of = (...kinds: readonly Change["kind"][]) => changes.filter(({ kind }) => kinds.includes(kind)).length;
  const ways = places.filter((place) => place.of === "way");
  return {
    altered: of("altered", "re-dated", "reinstated"),
    vanished: of("vanished") + places.reduce((sum, { lost }) => sum + lost, 0),
    corrected: of("corrected", "struck-out"),
    signed: changes.filter((change) => change.signed !== undefined).length,
    read: of("read"),
    changed: ways.filter((way) => way.state === "stays" && way.changes.length > 0).length,
    moved: ways.filter(({ was }) => was !== undefined).length,
    came: ways.filter(({ state }) => state === "came").length,
    went: ways.filter(({ state }) => state === "went").length,
    renamed: places.filter((place) => place.of === "board" && place.was !== undefined).length,
    suppressed: places.flatMap(({ findings }) => findings.filter(({ kind }) => kind === "suppressed")).length,
    design: changes.filter(({ gravity }) => gravity === "design").length,
  };
}
