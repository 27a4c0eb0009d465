/** Changes as rows of a table: what, before, after, and the limit with what is left to it. */
import { listed } from "../../text/words.ts";
import type { Change, Side } from "./change.ts";
import type { FindingChange } from "./findings.ts";
import type { Judged } from "./limits.ts";

const kindWords: Readonly<Partial<Record<Change["kind"], string>>> = {
  altered: "altered",
  vanished: "gone",
  "re-dated": "under another day",
  "struck-out": "struck out",
  reinstated: "counts again",
  corrected: "corrected",
  limit: "limit moved",
};

/** A row for each change; what was read alike on one day, as insulation of every pair, is one. */
export function changeRows(changes: readonly Change[]): string[][] {
  const alike = Map.groupBy(changes, (change, index) => {
    const row = changeRow(change);
    return change.kind === "read" || isLimitation(change) ? [change.on, ...row.slice(1)].join("\0") : String(index);
  });
  return [...alike.values()].flatMap((group) => {
    const [first] = group;
    if (!first) return [];
    const [, ...rest] = changeRow(first);
    return [[`${folded(group.map(({ name }) => name))}${endingOf(first)}`, ...rest]];
  });
}

const isLimitation = ({ now }: Change): boolean => now?.text.startsWith("LIM") ?? false;

/** “insulation 500 V, L-N, L-E and N-E; polarity; L-N at S1, S2 and S4”. */
function folded(all: readonly string[]): string {
  const points = all.flatMap((name) => {
    const [, point, what] = /^at (\S+), (.+)$/.exec(name) ?? [];
    return point === undefined || what === undefined ? [] : [{ name, point, what }];
  });
  const atPoints = [...Map.groupBy(points, ({ what }) => what)].map(
    ([what, some]) => `${what} at ${listed(some.map(({ point }) => point))}`,
  );
  const names = all.filter((name) => points.length < 2 || !points.some((one) => one.name === name));
  return [...foldedByHead(names), ...(points.length < 2 ? [] : atPoints)].join("; ");
}

function foldedByHead(names: readonly string[]): string[] {
  const parts = names.map((name) => {
    const end = name.lastIndexOf(", ");
    return end < 0 ? { head: name, tail: undefined } : { head: name.slice(0, end), tail: name.slice(end + 2) };
  });
  const groups = Map.groupBy(parts, ({ head }) => head);
  return [...groups].map(([head, group]) => {
    const tails = group.flatMap(({ tail }) => tail ?? []);
    return tails.length > 0 ? `${head}, ${listed(tails)}` : head;
  });
}

/** The day of a change that its name does not say, and what happened to it. */
function endingOf({ kind, name, on }: Change): string {
  const day = on === undefined || name.includes(on) ? "" : `, ${on}`;
  const word = kindWords[kind];
  return `${day}${word !== undefined && kind !== "vanished" ? ` (${word})` : ""}`;
}

function changeRow(change: Change): string[] {
  const { kind, name, old, now, last, signed } = change;
  const before = last ? `${last.text}, ${last.on}` : kind === "read" ? "not recorded" : "not there";
  // What it names has another name now: the same letters say something else.
  const still = kind === "changed" && old?.text === now?.text ? "still " : "";
  return [
    `${name}${endingOf(change)}`,
    old ? `${old.text}${signed ? `, signed for by ${signed.by} on ${signed.on}` : ""}` : before,
    now ? `${still}${now.text}` : kind === "vanished" ? "gone" : "not there",
    judgedText(change),
  ];
}

/** “at most 1.37 Ω: 69 % left, then over by 5 %: now fails”. */
function judgedText({ old, now, effect }: Change): string {
  const [was, is] = [judgedOf(old), judgedOf(now)];
  const end = effect ? `: ${effect}` : "";
  if (!was) return is ? `${alone(is)}${end}` : "";
  if (!is) return `${alone(was)}${end}`;
  if (was.limit === is.limit)
    return `${was.limit}: ${was.left === is.left ? was.left : `${was.left}, then ${is.left}`}${end}`;
  return `${alone(was)}, then ${alone(is)}${end}`;
}

const judgedOf = (side: Side | undefined): Judged | undefined => side?.judged;
const alone = ({ limit, left }: Judged): string => `${limit}: ${left}`;

export function findingRow({ kind, check, old, now, departure }: FindingChange): string[] {
  const said = (finding: FindingChange["old"]) => (finding ? `${finding.severity}: ${finding.message}` : "not found");
  const by = departure ? `departure ${departure.rule} “${departure.reason}”` : "";
  switch (kind) {
    case "suppressed":
      return [check, said(old), old ? `still so: ${now?.message}` : said(now), `suppressed by ${by}, not put right`];
    case "unsuppressed":
      return [check, `suppressed by ${by}`, said(now), "no longer suppressed"];
    case "comes":
      return [check, "not found", said(now), "new"];
    case "goes":
      return [check, withoutRemedy(said(old)), "no longer found", ""];
    default:
      return [check, said(old), said(now), kind];
  }
}

/** What would have put it right is no news once it is. */
const withoutRemedy = (said: string): string => said.replace(/^(\w+: .*?)(?:: |\. ).*$/s, "$1");
