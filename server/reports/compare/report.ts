/** A comparison for people: what happened to the record first, then place by place, the gravest first. */
import { capital, counted, listed } from "../../text/words.ts";
import { type Block, paragraph, type Report, type Section, table } from "../setting/document.ts";
import { type Change, gravities } from "./change.ts";
import { type Comparison, isSame } from "./comparison.ts";
import type { PlaceChanges } from "./place.ts";
import { changeRows, findingRow } from "./rows.ts";
import { foundText, headline, tallyOf } from "./tally.ts";

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
