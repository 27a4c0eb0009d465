/**
 * What is left between a reading and its limit is said in one wording and one rounding, wherever it is shown: of every
 * reading of every example, and of made-up installations, hover, hint, working, summary, terminal and JSON agree.
 */
import { readdirSync, readFileSync } from "node:fs";
import { join, resolve } from "node:path";
import fc from "fast-check";
import { expect, test } from "vitest";
import { exceeds, fallsShort } from "../../server/calc/compare.ts";
import { type Margin, marginOf } from "../../server/calc/margin.ts";
import { studyWay, type WayStudy } from "../../server/circuit/way.ts";
import { hover } from "../../server/features/hover.ts";
import { type Hint, inlayHints } from "../../server/features/inlay.ts";
import type { BoardInPlace, Installation } from "../../server/model/installation.ts";
import { planBoard, planSupply } from "../../server/readings/plan-board.ts";
import { planDead } from "../../server/readings/plan-dead.ts";
import { planLive } from "../../server/readings/plan-live.ts";
import { marginTo, type PlannedTest } from "../../server/readings/planned.ts";
import type { Report } from "../../server/reports/setting/document.ts";
import { summaryOf } from "../../server/reports/summary/summary.ts";
import { workingOf } from "../../server/reports/working/working.ts";
import type { Snapshot } from "../../server/workspace/workspace.ts";
import { openSample } from "../helpers/cursor.ts";
import { generate } from "../helpers/generate.ts";

const examples = resolve(import.meta.dirname, "../../examples");
const texts = readdirSync(examples, { recursive: true, encoding: "utf8" })
  .filter((name) => name.endsWith(".ways"))
  .map((name) => ({ name, text: readFileSync(join(examples, name), "utf8") }));
const shared = readFileSync(join(examples, "shared/instruments.ways"), "utf8");

const open = async (text: string): Promise<Snapshot> => {
  const near = text.replace(/use "[^"]*instruments\.ways"/, 'use "instruments.ways"');
  return (await openSample(near, { "instruments.ways": shared })).snapshot;
};

interface Read {
  readonly test: PlannedTest;
  readonly study?: WayStudy;
  readonly place?: BoardInPlace;
}

const readOf = (installation: Installation): Read[] =>
  [
    ...planSupply(installation).map((one) => ({ test: one })),
    ...installation.boards.flatMap((place): Read[] => [
      ...planBoard(place.context, place.board.ways).map((one) => ({ test: one, place })),
      ...place.board.ways.flatMap((way) => {
        const study = studyWay(way, place.context);
        return [...planDead(study), ...planLive(study)].map((one) => ({ test: one, study, place }));
      }),
    ]),
  ].filter(({ test: { recorded, bounds } }) => recorded && bounds.length > 0);

/** What each place says of the readings of a schedule, where it is not what the others say. */
function disagreements(snapshot: Snapshot): string[] {
  const hints = inlayHints(snapshot, "margins", () => true);
  return snapshot.installations.flatMap((installation) => {
    const result = { findings: snapshot.findings, suppressed: [] };
    const summary = rowsIn(summaryOf(installation, result));
    const workings = new Map<object, string>();
    const workingAt = (read: Read): string | undefined => {
      if (!read.study || !read.place) return undefined;
      const { way } = read.study;
      const made = workings.get(way) ?? rowsIn(workingOf(installation, { place: read.place, way }));
      workings.set(way, made);
      return made;
    };
    return readOf(installation)
      .flatMap((read) => {
        const { recorded, bounds, name } = read.test;
        if (!recorded || !snapshot.positions.has(recorded.fact.segment)) return [];
        const { segment } = recorded.fact;
        const card = hover(snapshot, { segment, offset: recorded.value.start })?.markdown ?? "";
        const working = workingAt(read);
        return bounds.flatMap((bound) => {
          const margin = marginTo(bound, recorded);
          if (!margin) return [];
          const say = (where: string, text: string) =>
            `${name} ${recorded.text} (${bound.text}, ${margin.text}): ${where}: ${text}`;
          const limit = bound.text.replace(/^(?:at most|at least|no trip within) /, "");
          const [figure = ""] = /^[\d.]+ \S+/.exec(limit) ?? [];
          const inHover = card.split("\n").find((line) => line.includes(figure) && line.includes(margin.text));
          const which = bound.which ? bound.which : "";
          const spotted = snapshot.findings.filter(
            ({ spot, value, limit: of }) =>
              spot.segment === segment && spot.start === recorded.value.start && value && of?.amount === bound.value,
          );
          return [
            ...(inHover?.includes(which) ? [] : [say("hover", card.split("\n").slice(1, 9).join(" / "))]),
            ...(working === undefined || sentence(working, bound.text, margin.text)
              ? []
              : [say("working", rowsAbout(working, name))]),
            ...spotted
              .filter((one) => one.marginText !== margin.text)
              .map((one) => say(one.check, one.marginText ?? "")),
          ];
        });
      })
      .concat(hintsThatDiffer(readOf(installation), hints), notInSummary(readOf(installation), summary));
  });
}

/** The tables of a report, a row a line. */
const rowsIn = ({ sections }: Report): string =>
  sections
    .flatMap(({ blocks }) => blocks.flatMap((block) => (block.kind === "table" ? block.rows : [])))
    .map((row) => row.join(" | "))
    .join("\n");

interface Left extends Margin {
  readonly read: Read;
  readonly limit: string;
  readonly plenty: boolean;
}

/** Margins of some readings, the least first. */
const leftOf = (reads: readonly Read[]): Left[] =>
  reads
    .flatMap((read) =>
      read.test.bounds.flatMap((bound): Left[] => {
        const margin = marginTo(bound, read.test.recorded);
        return margin
          ? [{ ...margin, read, limit: bound.text, plenty: bound.sense === "least" && margin.share >= 19 }]
          : [];
      }),
    )
    .sort((one, other) => one.share - other.share);

/** A line has one hint: its tightest reading, the margin before the limit. */
function hintsThatDiffer(reads: readonly Read[], hints: readonly Hint[]): string[] {
  const ofWays = reads.filter(({ study, test: { recorded } }) => study && recorded?.fact.segment === study.way.segment);
  const lines = Map.groupBy(
    leftOf(ofWays).filter(({ plenty }) => !plenty),
    ({ read }) => read.test.recorded?.fact,
  );
  return [...lines].flatMap(([fact, [least]]) => {
    const hint = hints.find(({ segment, offset }) => segment === fact?.segment && offset === fact.end);
    const words = least && `${least.upTo} ${least.limit.replace(/^at (?:most|least) /, "")}`;
    return words === undefined || hint?.text.endsWith(words) ? [] : [`${words}: hint: ${hint?.text}`];
  });
}

/** Of each kind of test the summary has the one with least left. */
function notInSummary(reads: readonly Read[], summary: string): string[] {
  const kinds = Map.groupBy(leftOf(reads), ({ read }) => read.test.step);
  return [...kinds.values()].flatMap(([least]) =>
    !least || sentence(summary, least.limit, least.text) ? [] : [`${least.limit}, ${least.text}: not in the summary`],
  );
}

const sentence = (text: string, limit: string, margin: string): boolean =>
  text.split("\n").some((line) => line.includes(limit) && line.includes(margin));
const rowsAbout = (text: string, name: string): string => {
  const word = name.split(/[ ,]/)[0] ?? "";
  return text
    .split("\n")
    .filter((line) => line.trim().startsWith(word))
    .slice(-3)
    .join(" / ");
};

test.each(texts)("$name", async ({ text }) => {
  expect(disagreements(await open(text))).toEqual([]);
});

test("made-up installations", async () => {
  for (const seed of [1, 2]) expect(disagreements(await open(generate({ ways: 14, seed, mix: true })))).toEqual([]);
});

test("what is left is never made more, nor what fails a pass", () => {
  const figure = fc.double({ min: 1e-3, max: 1e6, noNaN: true });
  fc.assert(
    fc.property(fc.constantFrom("most" as const, "least" as const), figure, figure, (sense, value, limit) => {
      const margin = marginOf(sense, value, limit);
      expect(margin?.passes).toBe(sense === "most" ? !exceeds(value, limit) : !fallsShort(value, limit));
      const shown = Number(/[\d.]+/.exec(margin?.text ?? "")?.[0]);
      if (sense === "most" && margin?.passes) expect(shown / 100).toBeLessThanOrEqual(1 - value / limit + 1e-7);
      if (sense === "most" && !margin?.passes) expect(shown).toBeGreaterThan(0);
    }),
  );
});
