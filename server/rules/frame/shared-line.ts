/**
 * A way may share lines of its design with others of its circuit type. What a check finds there concerns the one
 * circuit, so it is told where that names its type; the line itself is shown beside it.
 */
import { isOwnEdit } from "../../circuit/shared-lines.ts";
import type { Way } from "../../model/file.ts";
import { type Finding, valueSpot } from "./rule.ts";

export function atTheWay(finding: Finding, way: Way): Finding {
  const { header, type, segment } = way;
  const name = header.args.as;
  if (finding.spot.segment === segment) return withOwnFixes(finding, way);
  if (!type || !name || finding.spot.segment !== type.segment) return finding;
  const related = [{ spot: finding.spot, message: `The line of circuit type ${name.value}.` }, ...finding.related];
  // A fix is an edit of the place a finding stands at: that of the type would change every circuit of it.
  return { ...finding, spot: valueSpot(header, name), related, fixes: [] };
}

/** A fix in the way that takes hold of a line of its type would write into the wrong place. */
function withOwnFixes(finding: Finding, way: Way): Finding {
  const fixes = finding.fixes.filter(({ edits }) => edits.every((edit) => isOwnEdit(way, edit)));
  return fixes.length === finding.fixes.length ? finding : { ...finding, fixes };
}

/** The same for a check of a whole board: the way is the one that the finding, or another line of it, stands in. */
export function atItsWay(finding: Finding, ways: TypedWays): Finding {
  const { segment } = finding.spot;
  const own = ways.get(segment);
  if (own) return atTheWay(finding, own.way);
  // The first of those of its circuit type that are spoken of.
  const spoken = finding.related.flatMap(({ spot }) => ways.get(spot.segment) ?? []);
  const ofType = spoken.filter(({ way }) => way.type?.segment === segment).sort((one, other) => one.at - other.at);
  return ofType[0] ? atTheWay(finding, ofType[0].way) : finding;
}

/** Ways of a circuit type by the segment they are written in, each with its place among them. */
type TypedWays = ReadonlyMap<Way["segment"], { readonly way: Way; readonly at: number }>;

export function typedAmong(ways: readonly Way[]): TypedWays {
  const typed: Map<Way["segment"], { readonly way: Way; readonly at: number }> = new Map();
  for (const [at, way] of ways.entries()) if (way.type && !typed.has(way.segment)) typed.set(way.segment, { way, at });
  return typed;
}

const behindEach = /\beach\s+$/;

/** A reading of every pair of conductors is wrong once, not once for each pair. */
export function onceForEach(findings: readonly Finding[], { segment }: Way): readonly Finding[] {
  if (!segment.text.includes("each")) return findings;
  const seen = new Set<string>();
  return findings.filter(({ check, spot }) => {
    if (spot.segment !== segment || !behindEach.test(segment.text.slice(0, spot.start))) return true;
    const key = `${check} ${spot.start}`;
    return !seen.has(key) && seen.add(key);
  });
}
