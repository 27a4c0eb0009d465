/**
 * Two versions of an installation beside each other: a schedule and its revision, or what was asked for and what was
 * built. Ways are known by their board and number; one that took another number says so, or keeps its title.
 */
import type { Board, Way } from "../../model/file.ts";
import type { Installation } from "../../model/installation.ts";
import type { Facts } from "../../model/values.ts";
import { checkInstallation } from "../../rules/frame/check.ts";
import type { Finding } from "../../rules/frame/rule.ts";
import { type Block, paragraph, type Report, type Section, table } from "../setting/document.ts";
import { placesIn } from "../summary/scope.ts";
import { formerBoard, formerWay } from "./formerly.ts";
import { changes, statementsIn } from "./lines.ts";

export interface Version {
  /** What the reader calls it: the path it was read from. */
  readonly called: string;
  readonly installation: Installation;
}

const head = ["where", "what", "before", "after"];

export function comparisonOf(before: Version, after: Version): Report {
  const [was, is] = [before.installation, after.installation];
  const sections = [origin(was, is), ...boards(was, is), found(was, is)].filter(({ blocks }) => blocks.length > 0);
  return {
    title: `Compared: ${is.head.title || was.head.title || "an installation without a name"}`,
    lead: [`Before: ${before.called}`, `After: ${after.called}`],
    sections:
      sections.length > 0
        ? sections
        : [{ level: 1, title: "The same", blocks: [paragraph("Both say the same, and the same is found in them.")] }],
    cautions:
      "Lines are compared as they are written; remarks, questions and departures are left out. Which of two figures is right, and whether a change was agreed, this page does not know.",
  };
}

function origin(was: Installation, is: Installation): Section {
  const own = changes(statementsIn(was.head.facts as Facts), statementsIn(is.head.facts as Facts));
  const supply = changes(supplyOf(was), supplyOf(is));
  const rows = [...own.map((row) => ["installation", ...row]), ...supply.map((row) => ["supply", ...row])];
  return { level: 1, title: "Installation and supply", blocks: table(head, rows) };
}

const supplyOf = ({ head: { facts } }: Installation) => {
  const supply = facts.one("supply")?.inner;
  return supply ? statementsIn(supply) : new Map<string, string>();
};

function boards(was: Installation, is: Installation): Section[] {
  const [before, after] = [was, is].map((one) => one.boards.map(({ board }) => board)) as [Board[], Board[]];
  const left = new Set(before);
  const former = new Map(after.map((now) => [now, formerBoard(now.head, before)]));
  for (const old of former.values()) if (old) left.delete(old);
  const pairs = after.map((now) => {
    const old = former.get(now) ?? [...left].find(({ head }) => head.name === now.head.name);
    if (old) left.delete(old);
    return { old, now };
  });
  return [
    ...pairs.map(({ old, now }) => boardSection(old, now)),
    ...[...left].map(({ head }): Section => {
      const gone = "This board went: it is not in the version after.";
      return { level: 1, title: `Board ${head.name}`, blocks: [paragraph(gone)] };
    }),
  ];
}

function boardSection(old: Board | undefined, now: Board): Section {
  const { name } = now.head;
  if (!old) {
    const came = "This board came: it is not in the version before.";
    return { level: 1, title: `Board ${name}`, blocks: [paragraph(came)] };
  }
  const title = old.head.name === name ? `Board ${name}` : `Board ${name}, formerly ${old.head.name}`;
  return { level: 1, title, blocks: boardBlocks(old, now) };
}

interface Pair {
  readonly old: Way | undefined;
  readonly now: Way | undefined;
}

/** Ways belong together as they say they were numbered formerly, then by number, then by title. */
function pairsOf(old: Board, now: Board): Pair[] {
  const left = new Set(old.ways);
  const take = (way: Way | undefined): Way | undefined => {
    if (!way || !left.delete(way)) return undefined;
    return way;
  };
  const former = new Map(now.ways.map((way) => [way, take(formerWay(way, old.ways))]));
  const byId = new Map(
    now.ways.map((way) => [way, former.get(way) ?? take(old.ways.find((one) => one.id === way.id && left.has(one)))]),
  );
  const pairs = now.ways.map((way): Pair => {
    const same = byId.get(way);
    const renamed = same ? undefined : take([...left].find(({ title }) => title !== "" && title === way.title));
    return { old: same ?? renamed, now: way };
  });
  return [...pairs, ...[...left].map((way): Pair => ({ old: way, now: undefined }))];
}

function boardBlocks(old: Board, now: Board): Block[] {
  const own = changes(statementsIn(old.head.facts as Facts), statementsIn(now.head.facts as Facts)).map((row) => [
    "board",
    ...row,
  ]);
  const rows = pairsOf(old, now).flatMap(wayRows);
  return table(head, [...own, ...rows]);
}

function wayRows({ old, now }: Pair): string[][] {
  if (!old || !now) {
    const way = (old ?? now) as Way;
    const called = [way.kind, way.title && `“${way.title}”`].filter(Boolean).join(" ");
    return [[`way ${way.id}`, "the way", old ? called || "there" : "not there", now ? called || "there" : "not there"]];
  }
  const about = (way: Way) =>
    new Map([
      ["number", way.id],
      ["kind", way.kind ?? "not said"],
      ["title", way.title],
      ...statementsIn(way.facts as Facts),
    ]);
  return changes(about(old), about(now)).map((row) => [`way ${now.id}`, ...row]);
}

/** What is found in one version and not in the other, by place and check. */
function found(was: Installation, is: Installation): Section {
  const [before, after] = [was, is].map((one) => {
    const where = placesIn(one);
    const all = checkInstallation(one).findings.filter(({ severity }) => severity !== "information");
    return new Map(
      all.map((finding) => [`${finding.check} ${where.get(finding.spot.segment) ?? ""}`, { finding, where }]),
    );
  });
  const rows = (change: string, these: typeof before, those: typeof before) =>
    [...(these ?? [])]
      .filter(([key]) => !those?.has(key))
      .map(([, { finding, where }]) => rowOf(change, finding, where.get(finding.spot.segment)));
  const all = [...rows("comes", after, before), ...rows("goes", before, after)];
  return { level: 1, title: "What the checks find", blocks: table(["where", "change", "check", "what is found"], all) };
}

const rowOf = (change: string, { check, severity, message }: Finding, where = "installation"): string[] => [
  where,
  change,
  check,
  `${severity}: ${message}`,
];
