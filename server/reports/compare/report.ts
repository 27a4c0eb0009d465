/** A comparison for people: what happened to the record first, then place by place, the gravest first. */
import { capital, counted, listed } from "../../text/words.ts";
import { type Block, paragraph, type Report, type Section, table } from "../setting/document.ts";
import { type Change, gravities, type Side } from "./change.ts";
import { type Comparison, isSame, type PlaceChanges } from "./comparison.ts";
import type { FindingChange } from "./findings.ts";
import type { Judged } from "./limits.ts";

const cautions =
  "What the two versions state is compared, not how it is written; comments are not. Which of two figures is right, and whether a change was agreed, is for the reader to settle.";

/** How much of it is shown: a comment on a code host takes only so much. */
interface Extent {
  /** How many places; the rest is counted. */
  readonly places?: number;
}

export function comparisonReport(comparison: Comparison, { places: most }: Extent = {}): Report {
  const { title, before, after, places } = comparison;
  const changed = places.filter((place) => !isOnlyMoved(place));
  const shown = most === undefined ? changed : changed.slice(0, most);
  const left = changed.length - shown.length;
  const own = shown.filter((place) => !isWholeWay(place));
  const ofPlaces = (some: readonly PlaceChanges[]) => some.flatMap((place) => placeSection(place, comparison.isPart));
  const sections = [
    ...recordSection(places),
    ...ofPlaces(own.filter(isOfDesign)),
    ...wholeWays("New ways", "came", shown),
    ...wholeWays("Ways that are gone", "went", shown),
    ...ofPlaces(own.filter((place) => !isOfDesign(place))),
    ...movedSection(places),
    ...(left > 0
      ? [
          section("More", [
            paragraph(
              `${capital(counted(left, "further place"))} changed and ${left === 1 ? "is" : "are"} not shown here.`,
            ),
          ]),
        ]
      : []),
    ...unreadSection(comparison),
  ];
  const same = isSame(comparison) ? [section("The same", [paragraph(sameText(comparison))])] : [];
  return {
    title: `Compared: ${title || "an installation without a name"}`,
    lead: [`Before: ${before}`, `After: ${after}`, ...headline(comparison)],
    sections: [...same, ...sections],
    cautions,
  };
}

const section = (title: string, blocks: readonly Block[]): Section => ({ level: 1, title, blocks });

/** It says how much was compared, so that nothing compared is not taken for nothing changed. */
function sameText({ compared, unread, isPart }: Comparison): string {
  const of = `${counted(compared.readings, "reading")} and ${counted(compared.lines, "other line")} were compared`;
  const unknown = unread.before.length + unread.after.length > 0;
  if (unknown) return `What could be read is the same: ${of}.`;
  return isPart ? `Both state the same: ${of}.` : `Both state the same, and the same is found in them: ${of}.`;
}

/** One sentence on the record, one on what a departure hides, one on what changed, one on what is found. */
function headline(comparison: Comparison): string[] {
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

function foundText({ error, warning, suppressed }: Comparison["found"]["before"], unread = 0): string {
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

function tallyOf({ places }: Comparison): Tally {
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

/** As grave as a way that came or went, or graver. */
const isOfDesign = ({ gravity }: PlaceChanges): boolean =>
  gravity !== "none" && gravities.indexOf(gravity) <= gravities.indexOf("design");

const isOfRecord = ({ gravity }: Change): boolean => gravity === "record";

/** Readings that were recorded and are not the same: whoever signed for them has to know. */
function recordSection(places: readonly PlaceChanges[]): Section[] {
  const rows = places.flatMap((place) => [
    ...changeRows(place.changes.filter(isOfRecord)).map((row) => [placeName(place), ...row]),
    ...(place.state === "went" && place.lost > 0
      ? [[placeName(place), "all its readings", counted(place.lost, "reading"), "gone", ""]]
      : []),
  ]);
  const blocks = table(["where", "reading", "before", "after", "limit, and what is left"], rows);
  return blocks.length > 0 ? [section("Recorded readings that are not the same", blocks)] : [];
}

const placeName = ({ of, where }: PlaceChanges): string => (of === "board" ? `board ${where}` : where);

/** Whether all there is to say of a place is its new name. */
const isOnlyMoved = ({ of, was, changes, findings, state }: PlaceChanges): boolean =>
  of !== "installation" && was !== undefined && state === "stays" && changes.length + findings.length === 0;

/** Whether all there is to say of a way is that it came or went, and what it is. */
const isWholeWay = ({ of, state, findings }: PlaceChanges): boolean =>
  of === "way" && state !== "stays" && findings.length === 0;

function wholeWays(heading: string, state: PlaceChanges["state"], places: readonly PlaceChanges[]): Section[] {
  const rows = places
    .filter((place) => isWholeWay(place) && place.state === state)
    .toSorted((a, b) => a.where.localeCompare(b.where, "en", { numeric: true }))
    .map(({ where, title, content = "", spare }) => [
      where,
      title === "" ? "" : `“${title}”`,
      `${content}${spare ? `, ${state === "came" ? "was" : "now"} spare` : ""}`,
    ]);
  const blocks = table(["way", "which", "what it is"], rows);
  return blocks.length > 0 ? [section(heading, blocks)] : [];
}

/** One row for each way or board that has another name and is the same otherwise. */
function movedSection(places: readonly PlaceChanges[]): Section[] {
  const rows = places
    .filter(isOnlyMoved)
    .map(({ of, where, title, was }) => [of, title === "" ? "" : `“${title}”`, was ?? "", where]);
  const blocks = table(["", "which", "before", "now"], rows);
  return blocks.length > 0 ? [section("Moved or renumbered, and the same otherwise", blocks)] : [];
}

function placeSection(place: PlaceChanges, isPart: boolean): Section[] {
  const { of, was, state, spare, content, title } = place;
  const whole = of === "way" ? "the way" : "the board";
  const rest = place.changes.filter((change) => !isOfRecord(change));
  const rows = [
    ...(of === "installation" && was !== undefined ? [["title", was, title, ""]] : []),
    ...(state === "went" ? [[whole, content ?? "there", spare ? "spare" : "gone", ""]] : []),
    ...(state === "came" ? [[whole, spare ? "spare" : "not there", content ?? "there", ""]] : []),
    ...changeRows(rest),
    ...place.findings.map(findingRow),
  ];
  const judged = rows.some(([, , , last]) => last !== "");
  const head = ["what", "before", "after", ...(judged ? ["limit, and what is left"] : [])];
  const blocks = table(head, judged ? rows : rows.map((row) => row.slice(0, 3)));
  return blocks.length > 0 ? [section(headingOf(place, isPart), blocks)] : [];
}

function headingOf({ of, where, title, was, state }: PlaceChanges, isPart: boolean): string {
  if (of === "installation") return isPart ? "Instruments and other lines of the file" : "Installation and supply";
  const called = `${of === "way" ? "Way" : "Board"} ${where}${title === "" ? "" : ` “${title}”`}`;
  if (state !== "stays") return `${called}: ${state === "came" ? "new" : "gone"}`;
  return was === undefined ? called : `${called}, was ${was}`;
}

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
function changeRows(changes: readonly Change[]): string[][] {
  const alike = Map.groupBy(changes, (change, index) => {
    const row = changeRow(change);
    return change.kind === "read" || isLimitation(change) ? [change.on, ...row.slice(1)].join("\0") : String(index);
  });
  return [...alike.values()].map((group) => {
    const [first = {} as Change] = group;
    const [, ...rest] = changeRow(first);
    return [`${folded(group.map(({ name }) => name))}${endingOf(first)}`, ...rest];
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
  if (!was && !is) return "";
  if (!was || !is) return `${alone((was ?? is) as Judged)}${end}`;
  if (was.limit === is.limit)
    return `${was.limit}: ${was.left === is.left ? was.left : `${was.left}, then ${is.left}`}${end}`;
  return `${alone(was)}, then ${alone(is)}${end}`;
}

const judgedOf = (side: Side | undefined): Judged | undefined => side?.judged;
const alone = ({ limit, left }: Judged): string => `${limit}: ${left}`;

function findingRow({ kind, check, old, now, departure }: FindingChange): string[] {
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

const mostLines = 10;

/** What could not be read may have changed without being seen. */
function unreadSection({ unread: { before, after } }: Comparison): Section[] {
  const of = (which: string, lines: readonly string[]) =>
    lines
      .slice(0, mostLines)
      .map((line) => [which, line])
      .concat(lines.length > mostLines ? [[which, `and ${counted(lines.length - mostLines, "line")} more`]] : []);
  const blocks = table(["version", "line"], [...of("before", before), ...of("after", after)]);
  return blocks.length > 0 ? [section("Not compared: lines that cannot be read", blocks)] : [];
}

/** One brief beside several submissions: a row each. */
export function rowsReport(brief: string, all: readonly Comparison[]): Report {
  const rows = all.map((one) => {
    const tally = tallyOf(one);
    const unread = one.unread.after.length;
    const number = (count: number, what: string) => (count === 0 ? [] : [`${count} ${what}`]);
    const ways = [...number(tally.came, "new"), ...number(tally.went, "gone"), ...number(tally.moved, "moved")];
    const record = [...number(tally.altered, "altered"), ...number(tally.vanished, "gone")];
    return [
      one.after,
      isSame(one) ? "the same" : counted(one.places.length, "place"),
      String(tally.design),
      ways.length > 0 ? listed(ways) : "the same",
      record.length > 0 ? listed(record) : "kept",
      String(tally.read),
      `${unread > 0 ? `${counted(unread, "line")} unread; else ` : ""}${foundText(one.found.after)}`,
    ];
  });
  const head = ["built", "differs in", "design lines", "ways", "brief's readings", "new readings", "found"];
  return {
    title: `${capital(counted(all.length, "submission"))} beside one brief`,
    lead: [`Brief: ${brief}`],
    sections: [section("One row each", table(head, rows))],
    cautions,
  };
}
