/** What an entry says of its line: its meaning apart from its layout, what is shown of it, and what tells two of a word apart. */
import { describe, expect, it } from "vitest";
import { type Entry, entriesOfBoard, entriesOfFile, entriesOfWay } from "../../server/readings/entries.ts";
import { fileOfText } from "../../server/workspace/loaded-file.ts";

const inFile = (text: string) => fileOfText("a.ways", text).model;
const inWay = (lines: string): readonly Entry[] =>
  entriesOfFile(inFile(`board A {\nway 1 radial "Heater" {\n${lines}\n}\n}\n`)).filter(({ at }) =>
    at.startsWith("A/1 · "),
  );
const rows = (entries: readonly Entry[]): string[] =>
  entries.flatMap(({ at, shown }) => (/ · (?:kind|title)$/.test(at) ? [] : [`${at} = ${shown}`]));
const meanings = (lines: string): string[] => inWay(lines).map(({ at, meaning }) => `${at} = ${meaning}`);

describe("the meaning of a line", () => {
  it.each([
    ["the order of what is listed", "serves lighting sockets", "serves sockets lighting"],
    ["the order of arguments", "device BS EN 60898 B16 6 kA", "device B16 BS EN 60898 6 kA"],
    [
      "units",
      "cable singles line 2.5 mm² cpc 2.5 mm²\nlength 20 m",
      "cable singles line 2.5 mm2 cpc 2.5 mm2\nlength 20.0 m",
    ],
    [
      "units of a reading",
      "dead 2026-03-05 {\ninsulation 500 V L-E 212 MΩ\n}",
      "dead 2026-03-05 {\ninsulation 500 V L-E 0.212 GΩ\n}",
    ],
    [
      "blanks in it",
      'dead 2026-03-05 {\nR1+R2 0.41 Ω from-record "Sheet 4"\n}',
      'dead 2026-03-05 {\nR1+R2   0.41   Ω   from-record   "Sheet 4"\n}',
    ],
  ])("is the same whatever %s", (_, one, other) => expect(meanings(one)).toEqual(meanings(other)));

  it.each([
    ["a size", "cable singles line 2.5 mm² cpc 2.5 mm²", "cable singles line 4 mm² cpc 2.5 mm²"],
    [
      "the argument a size stands at",
      "cable singles line 4 mm² neutral 2.5 mm² cpc 1.5 mm²",
      "cable singles line 4 mm² neutral 1.5 mm² cpc 2.5 mm²",
    ],
    ["a curve", "device BS EN 60898 B16 6 kA", "device BS EN 60898 C16 6 kA"],
    ["a rating", "device BS EN 60898 B16 6 kA", "device BS EN 60898 B20 6 kA"],
    ["a length in a run", "run A 7 m S1 8 m S2", "run A 7 m S1 9 m S2"],
    ["a reason", 'dead 2026-03-05 {\nR1+R2 LIM "Locked"\n}', 'dead 2026-03-05 {\nR1+R2 LIM "Occupied"\n}'],
    [
      "a record",
      'dead 2026-03-05 {\nR1+R2 0.41 Ω from-record "Sheet 4"\n}',
      'dead 2026-03-05 {\nR1+R2 0.41 Ω from-record "Sheet 5"\n}',
    ],
    ["a sign", "dead 2026-03-05 {\nR1+R2 0.41 Ω\n}", "dead 2026-03-05 {\nR1+R2 >0.41 Ω\n}"],
  ])("is another with %s", (_, one, other) => expect(meanings(one)).not.toEqual(meanings(other)));
});

describe("what is shown", () => {
  it("has the labels of the line, but not that of a reading under its own address", () => {
    expect(
      rows(inWay("cable flat-twin line 2.5 mm² cpc 1.5 mm²\ndead 2026-03-05 {\nends r1 0.31 Ω rn 0.32 Ω r2 0.51 Ω\n}")),
    ).toEqual([
      "A/1 · cable = flat-twin line 2.5 mm² cpc 1.5 mm²",
      "A/1 · dead 2026-03-05 = ",
      "A/1 · dead 2026-03-05 · ends · r1 = 0.31 Ω",
      "A/1 · dead 2026-03-05 · ends · rn = 0.32 Ω",
      "A/1 · dead 2026-03-05 · ends · r2 = 0.51 Ω",
    ]);
  });

  it("has a correction with the reading that it stands behind, and with no other", () => {
    const lines =
      'dead 2026-03-05 {\nends r1 0.31 Ω was 0.13 Ω "Turned round" rn 0.32 Ω r2 0.51 Ω was 0.15 Ω "Misread"\n}';
    expect(rows(inWay(lines)).slice(1)).toEqual([
      'A/1 · dead 2026-03-05 · ends · r1 = 0.31 Ω was 0.13 Ω "Turned round"',
      "A/1 · dead 2026-03-05 · ends · rn = 0.32 Ω",
      'A/1 · dead 2026-03-05 · ends · r2 = 0.51 Ω was 0.15 Ω "Misread"',
    ]);
  });

  it("says where a reading came from", () => {
    expect(
      rows(inWay('dead 2026-03-05 {\nR1+R2 0.41 Ω from-record "Sheet 4"\nR2 0.25 Ω calculated\n}')).slice(1),
    ).toEqual([
      'A/1 · dead 2026-03-05 · R1+R2 = 0.41 Ω from-record "Sheet 4"',
      "A/1 · dead 2026-03-05 · R2 = 0.25 Ω calculated",
    ]);
  });
});

it("a line is given without the block behind it, though a brace stands in its words", () => {
  const [block] = inWay("dead 2026-03-05 with M1 {\nR1+R2 0.41 Ω\n}").filter(({ fact }) => fact.word === "dead");
  expect(block?.line).toBe("dead 2026-03-05 with M1");
  const entries = entriesOfFile(inFile('board A "A {small} \\"board\\"" {\nway 1 spare\n}\n'));
  expect(entries[0]?.line).toBe('board A "A {small} \\"board\\""');
});

it("readings know their day and instruments, which the way itself has none of", () => {
  const entries = inWay("length 20 m\ndead 2026-03-05 with M1 M2 {\nR1+R2 0.41 Ω\n}");
  const of = (word: string) => entries.filter(({ fact }) => fact.word === word).map((one) => [one.on, one.with]);
  expect(of("length")).toEqual([[undefined, undefined]]);
  expect(of("R1+R2")).toEqual([["2026-03-05", ["M1", "M2"]]]);
});

describe("two lines of one address", () => {
  const loads = (first: string, second: string) => rows(inWay(`load ${first}\nload ${second}`));

  it("are told apart by what they say, whichever stands first", () => {
    expect(loads("2 kW", "3 kW")).toEqual(["A/1 · load = 2 kW", "A/1 · load #2 = 3 kW"]);
    expect(loads("3 kW", "2 kW")).toEqual(["A/1 · load #2 = 3 kW", "A/1 · load = 2 kW"]);
  });

  it("that say the same are two all the same", () => {
    expect(loads("2 kW", "2 kW")).toEqual(["A/1 · load = 2 kW", "A/1 · load #2 = 2 kW"]);
  });
});

it("what a board's new name is also the name of stays what it is", () => {
  const [board] = inFile(
    'board A "Main" {\nrcd B BS EN 61008 63 A 30 mA type A\nway 1 feeder "Annexe" {\nfeeds B\nbehind B\n}\n}\n',
  ).boards;
  const [way] = board?.ways ?? [];
  const said = way ? entriesOfWay("A", way, new Map([["B", "C"]])) : [];
  const meaningOf = (word: string) => said.find(({ at }) => at === `A/1 · ${word}`)?.meaning;
  expect([meaningOf("feeds"), meaningOf("behind")]).toEqual(['"C"', '"B"']);
});

describe("a board that is called by another name", () => {
  const [board] = inFile(
    'board A "Main" {\nfed-from B\nway 1 feeder "Annexe" {\nfeeds B\nrun B 7 m S1 8 m S2\nserves sockets\n}\n}\n',
  ).boards;
  const [way] = board?.ways ?? [];
  const renamed = new Map([["B", "C"]]);

  it("is meant by lines that refer to it, and where a cable starts", () => {
    if (!board || !way) throw new Error("The schedule is not read.");
    const changed = (before: readonly Entry[], after: readonly Entry[]) =>
      before.flatMap((one, index) => {
        const other = after[index];
        return one.at === other?.at && one.meaning === other.meaning
          ? []
          : [`${one.at}: ${one.meaning} → ${other?.at}: ${other?.meaning}`];
      });
    expect(changed(entriesOfBoard(board.head), entriesOfBoard(board.head, renamed))).toEqual([
      'A · fed-from: "B" → A · fed-from: "C"',
    ]);
    expect(changed(entriesOfWay("A", way), entriesOfWay("A", way, renamed))).toEqual([
      'A/1 · feeds: "B" → A/1 · feeds: "C"',
      'A/1 · run "B S1 S2": B =7 S1 =8 S2 → A/1 · run "C S1 S2": C =7 S1 =8 S2',
    ]);
  });
});
