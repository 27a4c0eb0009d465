/**
 * Every quantity that the vocabulary has a word for is followed wherever a reading is: from day to day, from version to
 * version, and at the place it is written. A new row is held to this without another line here.
 */
import { describe, expect, it } from "vitest";
import type { WordRow } from "../../grammar/params.ts";
import { readArgs, type TestBlock, testBlocks } from "../../grammar/readings.ts";
import { ageingOf } from "../../grammar/traits.ts";
import { vocabulary } from "../../grammar/vocabulary.ts";
import { slotsOf } from "../../server/entry/slots.ts";
import { hover } from "../../server/features/hover.ts";
import type { Installation } from "../../server/model/installation.ts";
import { entriesOfInstallation } from "../../server/readings/entries.ts";
import { comparisonOf } from "../../server/reports/compare/comparison.ts";
import { seriesOf } from "../../server/reports/history/timeline.ts";
import { fileOfText } from "../../server/workspace/loaded-file.ts";
import { checkProject } from "../../server/workspace/project.ts";
import { openSample } from "../helpers/cursor.ts";
import { inSetting } from "../helpers/sample.ts";

interface Case {
  readonly block: TestBlock;
  readonly word: string;
  readonly row: WordRow;
}

const cases: Case[] = testBlocks.flatMap((block) =>
  Object.entries<WordRow>(vocabulary[block])
    .filter(([, row]) => row.reads && readArgs(row).some(({ meter }) => meter !== undefined))
    .map(([word, row]) => ({ block, word, row })),
);

const words: Readonly<Record<TestBlock, "dead" | "live">> = {
  dead: "dead",
  live: "live",
  boardDead: "dead",
  boardLive: "live",
  supplyLive: "live",
};

/** A line as a person writes it, off no scale, and the same with every figure read changed by a factor. */
function written({ word, row }: Case, factor: number): string {
  const units = "(?:mΩ|Ω|MΩ|kA|A|mA|ms|s|V)";
  const condition = word === "insulation" ? /^insulation \d+ V/ : word === "rcd" ? /^rcd .*?\d+x/ : /^$/;
  const head = condition.exec(row.example)?.[0] ?? "";
  const rest = row.example.slice(head.length).replace(/ >\d+/g, " 310");
  const scaled = rest.replace(new RegExp(`(?<=[ \\d])(\\d+(?:\\.\\d+)?)(?= ${units}(?: |$))`, "g"), (figure) =>
    String(Number((Number(figure) * factor).toPrecision(3))),
  );
  return head + scaled;
}

/** Two visits: at the first all is as it was, at the second as it is given. */
function schedule({ block }: Case, was: string, now: string): string {
  const days = `${words[block]} 2021-03-04 {\n${was}\n}\n${words[block]} 2026-03-04 {\n${now}\n}`;
  const inWay = block === "dead" || block === "live" ? days : "";
  const kind = was.startsWith("ends") ? "ring" : "radial";
  const way = `way 1 ${kind} "Bench" {\ndevice BS EN 61009 B16 6 kA 30 mA type A\ncable flat-twin line 2.5 mm² cpc 1.5 mm²\nrun A 9 m S1 9 m S3${kind === "ring" ? " 9 m A" : ""}\n${inWay}\n}`;
  return inSetting(way, {
    stage: "tested",
    work: "existing",
    supply: `earthing TN-S\nZe 0.30 Ω\nIpf 1.2 kA\nbonding water 10 mm²\n${block === "supplyLive" ? days : ""}`,
    board: `fed-from supply\nmain-switch BS EN 60947-3 100 A\nrcd east BS EN 61008 63 A 30 mA type A\n${block.startsWith("board") ? days : ""}`,
  }).text;
}

const checked = (text: string) =>
  checkProject(fileOfText("a.ways", text), { file: () => ({ failure: "" }), resolve: (_, use) => use });

function installationIn(text: string): Installation {
  const [installation] = checked(text).installations;
  if (!installation) throw new Error("There is no installation.");
  return installation;
}

const drifts = (text: string): string[] =>
  checked(text).files.flatMap(({ findings }) =>
    findings.filter(({ check }) => check.startsWith("drift/")).map(({ check, message }) => `${check} ${message}`),
  );

/** What passes or fails, for a second visit that reads nothing. */
const nothingRead = "polarity ok";

describe.each(cases.map((one) => [`${one.word} of ${one.block}`, one] as const))("%s", (_, one) => {
  const same = written(one, 1);
  const other = written(one, ageingOf(one.row) === "insulation" ? 0.02 : 4);

  it("is a line with figures that can be changed", () => {
    expect(other).not.toBe(same);
    for (const line of [same, other]) {
      const found = checked(schedule(one, line, line)).files.flatMap(({ findings }) => findings);
      expect(found.filter(({ check }) => check.startsWith("language/")).map(({ message }) => message)).toEqual([]);
    }
  });

  it("is compared with an earlier day, if it ages", () => {
    const found = drifts(schedule(one, same, other)).filter((text) => !text.startsWith("drift/retest"));
    expect(found.length > 0).toBe(ageingOf(one.row) !== "none");
    expect(drifts(schedule(one, same, same))).toEqual([]);
  });

  it("is missed at a later visit, if it is read again", () => {
    const found = drifts(schedule(one, same, nothingRead)).filter((text) => text.startsWith("drift/retest"));
    expect(found.length > 0).toBe(one.row.reads?.again !== false);
  });

  it("has a history", () => {
    const entries = entriesOfInstallation(installationIn(schedule(one, same, other)));
    const series = seriesOf(entries, ({ address }) => address.line?.word === one.word, [], undefined);
    expect(series.some(({ points }) => points.length >= 2)).toBe(true);
  });

  it("is found altered where two versions are compared", () => {
    const [before, now] = [same, other].map((line) => installationIn(schedule(one, line, line)));
    if (!before || !now) throw new Error("There are two.");
    const { places } = comparisonOf({ called: "before", installation: before }, { called: "now", installation: now });
    const changed = places.flatMap(({ changes }) => changes);
    expect(changed.filter(({ gravity }) => gravity === "record").length).toBeGreaterThanOrEqual(2);
  });

  it("has a card of its own", async () => {
    const text = schedule(one, same, other);
    const { snapshot } = await openSample(text);
    const lines = text.split("\n");
    const line = lines.lastIndexOf(other);
    const figures = [...other.matchAll(/\d+(?:\.\d+)? (?:mΩ|Ω|MΩ|kA|A|mA|ms|s|V)/g)];
    const shown = figures.map(({ index }) => {
      const cursor = snapshot.positions.at({ line, character: index + 1 });
      return (cursor && hover(snapshot, cursor)?.markdown) ?? "";
    });
    expect(shown.some((markdown) => /\n- |\*.+\*/.test(markdown))).toBe(true);
  });

  it("can be entered from a sheet", () => {
    const slots = slotsOf(installationIn(schedule(one, same, other)));
    expect(slots.some(({ line, head = line }) => `${head} `.startsWith(`${one.word} `))).toBe(true);
  });
});
