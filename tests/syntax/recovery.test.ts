import { describe, expect, test } from "vitest";
import { fileOfText } from "../../server/workspace/loaded-file.ts";
import { findingsOf } from "../helpers/sample.ts";

const way = (id: number, ...extra: string[]): string[] => [`    way ${id} radial "Way ${id}" {`, ...extra, "    }"];
const plain = ["      device  BS EN 60898 B6 6 kA", "      length  18 m"];

/** A schedule of three ways, of which the second has these lines: they begin on line 10. */
function schedule(...lines: string[]): string {
  return [
    "wayfile 1",
    'installation "Mill" {',
    '  board A "Main" {',
    "    fed-from  supply",
    ...way(1, ...plain),
    "    way 2 radial {",
    ...lines,
    "    }",
    ...way(3, ...plain),
    "  }",
    "}",
    "",
  ].join("\n");
}

/** The language's own findings, as `check line`. */
const faults = (text: string): string[] =>
  findingsOf(text)
    .filter(({ check }) => check.startsWith("language/"))
    .map(({ check, line }) => `${check.slice("language/".length)} ${line}`);

/** The ways that were read, each with how many of its statements were. */
const ways = (text: string): string[] => {
  const { model } = fileOfText("sample.ways", text);
  return [...model.installations.flatMap(({ boards }) => boards), ...model.boards].flatMap((board) =>
    board.ways.map(({ id, facts }) => `${board.head.name}.${id}:${facts.list.length}`),
  );
};

test("the schedule is sound to begin with", () => {
  expect(faults(schedule("      Ib 2.1 A"))).toEqual([]);
  expect(ways(schedule("      Ib 2.1 A"))).toEqual(["A.1:2", "A.2:1", "A.3:2"]);
});

describe("a half-typed line costs that line", () => {
  test.each<[line: string, faults: string[]]>([
    ["Z", ["unknown-word 10"]],
    ["Ib", ["missing-argument 10"]],
    ["Ib 2.1", ["missing-unit 10"]],
    ["Ib 2,1 A", ["number-slip 10"]],
    ["Ib 2.1 m", ["wrong-unit 10"]],
    ["Ib 2.1 A A", ["wrong-argument 10"]],
    ["device BS EN", ["wrong-argument 10"]],
    ["device", ["missing-argument 10"]],
    ['note "Half a remark', ["open-text 10"]],
    ["cable flat-twin line", ["missing-argument 10"]],
    ["run A 7 m", ["missing-argument 10"]],
    ["run A 7", ["missing-unit 10"]],
    ["; Ib 2.1 A", ["stray 10"]],
    ["Ib 2.1 A ;", ["stray 10"]],
    ['"Ib" 2.1 A', ["no-word 10"]],
    ["2.1 A", ["no-word 10"]],
    ["BS EN 60898", ["no-word 10"]],
    ["way", ["unknown-word 10"]],
    ["\u0000", ["stray 10"]],
    ["Zs 0.4 Ω", ["unknown-word 10"]],
    ["dead", ["missing-argument 10", "missing-block 10"]],
  ])("%s", (line, wanted) => {
    const text = schedule(`      ${line}`, "      length  3 m");
    expect(faults(text)).toEqual(wanted);
    expect(ways(text)).toEqual(["A.1:2", line === "dead" ? expect.stringMatching(/^A\.2:/) : "A.2:1", "A.3:2"]);
  });
});

test("an open text ends at a brace, and its block pays for it alone", () => {
  const text = schedule('      note "Half a remark } {', "      length  3 m");
  expect(faults(text)).toEqual(["open-text 10", "no-word 10"]);
  expect(ways(text)).toEqual(["A.1:2", "A.2:0", "A.3:2"]);
});

describe("a lost or extra brace costs its block", () => {
  const lines = schedule("      length  3 m").split("\n");
  const without = (line: number) => lines.toSpliced(line - 1, 1).join("\n");
  const withLine = (line: number, text: string) => lines.toSpliced(line - 1, 0, text).join("\n");

  test.each<[what: string, text: string, faults: string[], ways: string[]]>([
    ["the } of a way", without(8), ["unclosed 5"], ["A.1:2", "A.2:1", "A.3:2"]],
    ["the } of a board", without(16), ["unclosed 3"], ["A.1:2", "A.2:1", "A.3:2"]],
    ["the } of the installation", without(17), ["unclosed 2"], ["A.1:2", "A.2:1", "A.3:2"]],
    ["one } too many in a way", withLine(11, "    }"), ["extra-close 12"], ["A.1:2", "A.2:1", "A.3:2"]],
    ["one } too many at the end", `${lines.join("\n")}}\n`, ["extra-close 18"], ["A.1:2", "A.2:1", "A.3:2"]],
  ])("%s", (_, text, wanted, read) => {
    expect(faults(text)).toEqual(wanted);
    expect(ways(text)).toEqual(read);
  });

  test("the { of a way", () => {
    const text = lines.join("\n").replace("way 2 radial {", "way 2 radial");
    expect(faults(text)).toEqual(["unopened 9"]);
    expect(ways(text)).toEqual(["A.1:2", "A.2:1", "A.3:2"]);
  });

  test("the brace of a test inside a way", () => {
    const text = schedule("      dead 2026-01-02 {", "        R2  0.2 Ω");
    expect(faults(text)).toEqual(["unclosed 10"]);
    expect(ways(text)).toEqual(["A.1:2", "A.2:1", "A.3:2"]);
  });

  test("the brace of the first of two tests", () => {
    const text = schedule(
      "      dead 2026-01-02 {",
      "        R2  0.2 Ω",
      "      live 2026-01-02 {",
      "        Zs  0.4 Ω",
      "      }",
    );
    expect(faults(text)).toEqual(["unclosed 10"]);
    expect(ways(text)).toEqual(["A.1:2", "A.2:2", "A.3:2"]);
  });

  test.each([5, 6, 10, 11, 14])("a stray } in column 0 behind line %i", (line) => {
    expect(faults(withLine(line + 1, "}"))).toEqual([`extra-close ${line + 1}`]);
    expect(ways(withLine(line + 1, "}"))).toEqual(["A.1:2", "A.2:1", "A.3:2"]);
  });

  test.each([2, 3, 5, 9, 12])("the { of line %i", (line) => {
    const text = lines.with(line - 1, (lines[line - 1] ?? "").replace(/ \{$/, "")).join("\n");
    expect(faults(text)).toEqual([`unopened ${line}`]);
    expect(ways(text)).toEqual(["A.1:2", "A.2:1", "A.3:2"]);
  });

  test("a { behind a fact", () => {
    expect(faults(schedule("      length  3 m {"))).toEqual(["extra-open 10"]);
  });

  test("a board whose word is misspelt keeps its ways", () => {
    const text = lines.join("\n").replace("board A", "baord A");
    expect(faults(text)).toEqual(["unknown-word 3"]);
  });

  test("what stands behind a board that was not closed is the installation's", () => {
    const text = lines.toSpliced(15, 1, '  location "East quay"').join("\n");
    const { model } = fileOfText("sample.ways", text);
    expect(faults(text)).toEqual(["unclosed 3"]);
    expect(model.installations[0]?.head.facts.one("location")?.args.text.value).toBe("East quay");
  });

  test("without indentation the words that begin a part hold a lost brace to its block", () => {
    const flat = without(8)
      .split("\n")
      .map((line) => line.trim());
    expect(faults(flat.join("\n"))).toEqual(["unclosed 5"]);
  });
});

test("a quote that is lost on a `use` line leaves what the file defines unknown, and is said once", () => {
  const sound = schedule("      dead 2026-01-02 with M1 {", "        R2  0.2 Ω", "      }");
  expect(faults(sound.replace("wayfile 1", 'wayfile 1\nuse "instruments.ways'))).toEqual(["open-text 2"]);
});

describe("what does not belong costs no more than its lines", () => {
  test("conflict markers", () => {
    const text = schedule("<<<<<<< ours", "      length  3 m", "=======", "      length  4 m", ">>>>>>> theirs");
    expect(faults(text)).toEqual(["conflict 10"]);
    expect(ways(text)).toEqual(["A.1:2", "A.2:2", "A.3:2"]);
  });

  test("conflict markers of two conflicts, and one whose beginning is gone", () => {
    const conflict = [
      "<<<<<<< ours",
      "      length  3 m",
      "||||||| base",
      "=======",
      "      length  4 m",
      ">>>>>>> theirs",
    ];
    expect(faults(schedule(...conflict, ...conflict))).toEqual(["conflict 10", "conflict 16"]);
    expect(faults(schedule(...conflict, ...conflict.slice(1)))).toEqual([
      "conflict 10",
      "conflict 17",
      "conflict 18",
      "conflict 20",
    ]);
  });

  test("conflict markers round whole ways", () => {
    const text = ["board A {", "<<<<<<< ours", "way 1 spare", "=======", "way 2 spare", ">>>>>>> theirs", "}"].join(
      "\n",
    );
    expect(faults(text)).toEqual(["no-version 1", "conflict 2", "conflict 4", "conflict 6"]);
    expect(ways(text)).toEqual(["A.1:0", "A.2:0"]);
  });

  test("a conflict marker with a brace in the name of its branch", () => {
    const text = schedule("      length  3 m", ">>>>>>> {theirs");
    expect(faults(text)).toEqual(["conflict 11"]);
    expect(ways(text)).toEqual(["A.1:2", "A.2:1", "A.3:2"]);
  });

  test("a backslash in a text is only a backslash", () => {
    const text = schedule(
      '      note "Drawing M\\7"',
      '      note "Sign \\"Pumps\\""',
      '      note "Lost \\"',
      "      length  3 m",
    );
    expect(faults(text)).toEqual(["open-text 12"]);
    expect(ways(text)).toEqual(["A.1:2", "A.2:3", "A.3:2"]);
  });

  test("two statements on a line", () => {
    const text = schedule("      dead 2026-01-02 { R2 0.2 Ω } length 3 m");
    expect(faults(text)).toEqual(["crowded 10"]);
    expect(ways(text)).toEqual(["A.1:2", "A.2:2", "A.3:2"]);
  });

  test("a way on the line of its board", () => {
    expect(faults("wayfile 1\nboard A { way 1 spare }\n")).toEqual(["crowded 2"]);
  });

  test("two closing braces on a line", () => {
    expect(faults("wayfile 1\nboard A {\n  way 1 spare\n} }\n")).toEqual(["extra-close 4"]);
  });

  test("bytes of a picture", () => {
    const text = schedule("      \u0089PNG\u0000\u001a \ufffd\ufffd", "      length  3 m");
    expect(faults(text)).toEqual(["stray 10"]);
    expect(ways(text)).toEqual(["A.1:2", "A.2:1", "A.3:2"]);
  });
});

test("a board closed on its own line is a board all the same", () => {
  const text = 'wayfile 1\ninstallation "Mill" {\n  board A "Main" { fed-from supply }\n}\n';
  const { model } = fileOfText("sample.ways", text);
  const heads = model.installations[0]?.boards.map(({ head }) => [head.name, head.facts.list.length]);
  expect(heads).toEqual([["A", 1]]);
  expect(faults(text)).toEqual([]);
});

test.each<[misspelt: string, text: string]>([
  ["isntrument M1", schedule("      dead 2026-01-02 with M1 {", "        R2  0.2 Ω", "      }")],
  ["cabel-type twin flat-twin line 1 mm²", schedule("      cable  twin")],
  ["circuti-type lights {\n}", schedule("      length  3 m").replace("way 2 radial", "way 2 as lights")],
])("%s outside the installation leaves its name unknown, and is said once", (misspelt, text) => {
  expect(faults(text.replace("wayfile 1", `wayfile 1\n${misspelt}`))).toEqual(["unknown-word 2"]);
});
