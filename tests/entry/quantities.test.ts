/** Readings beside those of the schedule's own columns: each word of the language can come in from a table. */
import { describe, expect, test } from "vitest";
import { readArgs } from "../../grammar/readings.ts";
import { vocabulary } from "../../grammar/vocabulary.ts";
import { enter } from "../../server/entry/enter.ts";
import { placeName, slotName, slotsOf } from "../../server/entry/slots.ts";
import { installationsOf } from "../../server/model/installation.ts";
import { fillSheetOf } from "../../server/papers/fill-sheet.ts";
import { incomingOf } from "../../server/papers/incoming.ts";
import { fileOfText } from "../../server/workspace/loaded-file.ts";

const mill = `wayfile 1
instrument M1 "Tester" { range insulation 999 MΩ }
installation "Sedge mill" {
  standard  BS 7671:2018+A2:2022
  supply {
    earthing   TT
    phases     three
    Ze         0.30 Ω
    electrode  rod 84 Ω
  }
  board A "Mill board" {
    fed-from     supply
    main-switch  BS EN 61008 100 A 100 mA type A delayed four-pole
    rcd east     BS EN 61008 63 A 30 mA type A
    way 1 radial "Sockets" {
      device      BS EN 61009 B16 6 kA 30 mA type A
      cable       flat-twin line 2.5 mm² cpc 1.5 mm²
      run         A 9 m S1 8 m S2
      outlet-rcd  S2 BS 7288 13 A 10 mA type A
      afdd        BS EN 62606
    }
    way 2 radial "Saw" {
      device  BS EN 60898 C16 three-pole 10 kA
      phase   three
    }
  }
}
`;
const [installation] = installationsOf([fileOfText("mill.ways", mill)]);
if (!installation) throw new Error("no installation");

const entered = async (head: string, row: string) => {
  const read = await incomingOf({ text: `board,way,on,${head}\n${row}\n` }, installation, { with: "M1" });
  if ("failure" in read) throw new Error(read.failure);
  const { blocks, misfits, assumed } = enter(installation, read.incoming);
  return {
    lines: blocks.flatMap(({ lines }) => lines.slice(1, -1).map((line) => line.trim())),
    misfits,
    assumed,
    passed: read.passed,
  };
};

describe("a column headed by the line of a reading", () => {
  test.each([
    ["leakage (mA)", "A,1,2026-05-01,1.4", "leakage 1.4 mA"],
    ["PSCC", "A,1,2026-05-01,0.9", "PSCC 0.9 kA"],
    ["PEFC (kA)", "A,board,2026-05-01,1.9", "PEFC 1.9 kA"],
    ["voltage", "A,1,2026-05-01,235", "voltage 235 V"],
    ["voltage", "supply,supply,2026-05-01,233", "voltage 233 V"],
    ["phase-sequence", "supply,supply,2026-05-01,ok", "phase-sequence ok"],
    ["electrode", "supply,supply,2026-05-01,79 by-probes", "electrode 79 Ω by-probes"],
    ["Zs", "A,1,2026-05-01,0.51 no-trip", "Zs 0.51 Ω no-trip"],
    ["Zs", "A,1,2026-05-01,0.47 high-current", "Zs 0.47 Ω high-current"],
    ["at S1 R2", "A,1,2026-05-01,0.09", "at S1 R2 0.09 Ω"],
    ["at S2 Zs", "A,1,2026-05-01,0.66", "at S2 Zs 0.66 Ω"],
    ["N-N", "A,1,2026-05-01,>999", "insulation 500 V N-N >999 MΩ"],
    ["L-E", "A,1,2026-05-01,210 spd-in", "insulation 500 V L-E 210 MΩ spd-in"],
    ["L1-L2", "A,2,2026-05-01,410", "insulation 500 V L1-L2 410 MΩ"],
    ["trip-current", "A,1,2026-05-01,22", "trip-current 22 mA"],
    ["trip-current pulsating", "A,1,2026-05-01,31", "trip-current 31 mA pulsating"],
    ["trip-current at S2", "A,1,2026-05-01,7", "trip-current at S2 7 mA"],
    ["trip-current east", "A,board,2026-05-01,21", "trip-current east 21 mA"],
    ["rcd-time pulsating from-180", "A,1,2026-05-01,29", "rcd 30 mA 1x 29 ms pulsating from-180"],
    ["rcd-time from-0", "A,1,2026-05-01,24", "rcd 30 mA 1x 24 ms from-0"],
    ["rcd 5x", "A,1,2026-05-01,11", "rcd 30 mA 5x 11 ms"],
    ["rcd 0.5x", "A,1,2026-05-01,no trip", "rcd 30 mA 0.5x no-trip"],
    ["rcd-time", "A,1,2026-05-01,no-trip", "rcd 30 mA 1x no-trip"],
    ["rcd at S2 5x", "A,1,2026-05-01,11", "rcd at S2 10 mA 5x 11 ms"],
    ["afdd-button", "A,1,2026-05-01,ok", "afdd-button ok"],
    ["afdd-test", "A,1,2026-05-01,pass", "afdd-test ok"],
    ["rcm-alarm,rcm-alarm after", "A,1,2026-05-01,24,400", "rcm-alarm 24 mA after 400 ms"],
    ["Zs L1,Zs L2,Zs L3", "A,2,2026-05-01,0.51,0.53,0.52", "Zs 0.53 Ω L1 0.51 Ω L2 0.53 Ω L3 0.52 Ω"],
    ["R1+R2,R1+R2 L1", "A,2,2026-05-01,0.28,0.27", "R1+R2 0.28 Ω L1 0.27 Ω"],
  ])("%s: %s", async (head, row, line) => {
    const { lines, misfits, passed } = await entered(head, row);
    expect({ lines, misfits, passed }).toEqual({ lines: [line], misfits: [], passed: [] });
    const kind = /^(?:R1|at S1|insulation)/.test(line) ? "dead" : "live";
    const of = /^A,(\d)/.exec(row)?.[1];
    const block = `${kind} 2026-05-01 {\n ${line}\n}`;
    const text =
      of === undefined
        ? mill.replace(
            row.startsWith("supply") ? "electrode  rod 84 Ω" : /(?=way 1 )/,
            (found) => `${found}\n${block}\n`,
          )
        : mill.replace(new RegExp(`(way ${of} radial "[^"]*" \\{)`), `$1\n${block}\n`);
    expect(fileOfText("mill.ways", text).model.problems.size).toBe(0);
  });

  test("that names nothing of the circuit is listed, and so is a value that is none", async () => {
    expect((await entered("at S9 R2", "A,1,2026-05-01,0.09")).passed).toEqual(["at S9 R2"]);
    expect((await entered("leakage", "A,1,2026-05-01,no-trip")).misfits).toHaveLength(1);
    expect((await entered("Zs", "A,1,2026-05-01,0.51 by-probes")).misfits).toHaveLength(1);
  });
});

test("every word that is read in a block of tests has a slot, but for what is a remark", () => {
  const slots = slotsOf(installation);
  const has = (place: string, block: string, word: string) =>
    slots.some((slot) => placeName(slot.place) === place && slot.block === block && slot.line.split(" ")[0] === word);
  const of = {
    dead: ["A/1", "dead"],
    live: ["A/1", "live"],
    boardLive: ["A", "live"],
    supplyLive: ["supply", "live"],
  } as const;
  const missing = Object.entries(of).flatMap(([kind, [place, block]]) =>
    Object.entries(vocabulary[kind as keyof typeof of]).flatMap(([word, row]) =>
      "reads" in row && row.reads && readArgs(row).length > 0 && !has(place, block, word) ? [`${kind} ${word}`] : [],
    ),
  );
  // Ends belong to a ring.
  expect(missing).toEqual(["dead ends"]);
});

test("no two slots are one, and the sheet to fill in folds away what is not on the plan", () => {
  const names = slotsOf(installation).map((slot) => `${placeName(slot.place)} ${slotName(slot)}`);
  expect(new Set(names).size).toBe(names.length);
  const group = fillSheetOf(installation, "mill.ways", "").groups.find(
    ({ title, stage }) => title.startsWith("A/1") && stage === "live",
  );
  const folded = group?.fields.filter(({ optional }) => optional).map(({ test: name }) => name) ?? [];
  expect(folded).toEqual(expect.arrayContaining(["live PSCC", "live leakage", "live voltage", "live trip-current"]));
  expect(folded.length).toBeLessThan(12);
});

test("a field of the sheet to fill in takes a figure or is a choice of words, never both", () => {
  const fields = fillSheetOf(installation, "mill.ways", "").groups.flatMap((group) => group.fields);
  const mixed = fields.filter(({ unit, words }) => (unit === "") !== words.length > 0);
  expect(mixed).toEqual([]);
  expect(fields.filter(({ test: name }) => name.startsWith("live rcd ")).every(({ unit }) => unit === "ms")).toBe(true);
});
