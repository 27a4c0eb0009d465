import { expect, test } from "vitest";
import { format } from "../../server/format/format.ts";
import { applyEdits } from "../../server/text/lines.ts";
import { meaningOf } from "./helpers.ts";

/** Formats, and holds what must hold for every text. */
function formatted(text: string): string {
  const result = format(text);
  if (!result) return text;
  expect(applyEdits(text, result.edits)).toBe(result.text);
  expect(format(result.text), "a second pass changes nothing").toBeUndefined();
  expect(meaningOf(result.text)).toBe(meaningOf(text));
  return result.text;
}

const way = (...lines: string[]): string => ["board A {", "  way 1 {", ...lines, "  }", "}", ""].join("\n");

test("a whole schedule", () => {
  const text = `# Heron Weir pump house
wayfile 1
use   "shared/instruments.ways"


installation "Heron Weir" {

stage     tested
    standard  BS 7671:2018 + A2:2022
  supply {
    Ze     0.42 ohm
    earthing            TN-S
    cutout              BS 88-3 80 A # by the meter
    tails               25 mm2 # renewed
    earthing-conductor  16 mm²

  }

  board A "Pump board" {
    rcd east     BS EN61008 63 A 30 mA type A
    fed-from     supply
way 3 ring "Sockets" {
      serves  sockets
      # as found
      cable   singles 70°C  line 2.5 mm2 cpc 2.5mm²
      device  BS EN 60898 B32 6 kA
      run     A 7 m S1 6metres S2 9 m A
      run     S2 4 m S5                       # a spur

      dead 2026-03-04 with M1 {
        insulation  500 V  L-N 310 Mohm  L-E > 999 MΩ
        at       S1  L-N 0.16 Ω  polarity ok
        ends  r1 0.31 Ω rn 0.31 Ω
      }
      live 2026-03-05 with M1 {
        test-button ok
        Zs   0.64 Ω
      }
    }


    way 8 feeder "Drying room" { feeds   B }   # not yet connected
    way 9 spare
  }
}`;
  expect(formatted(text)).toMatchInlineSnapshot(`
    "# Heron Weir pump house
    wayfile 1
    use "shared/instruments.ways"

    installation "Heron Weir" {
      standard     BS 7671:2018+A2:2022
      stage        tested
      supply {
        earthing     TN-S
        Ze           0.42 Ω
        cutout       BS 88-3 80 A  # by the meter
        tails        25 mm²  # renewed
        earthing-conductor 16 mm²
      }

      board A "Pump board" {
        fed-from     supply
        rcd east     BS EN 61008 63 A 30 mA type A
        way 3 ring "Sockets" {
          device       BS EN 60898 B32 6 kA
          # as found
          cable        singles 70 °C  line 2.5 mm²  cpc 2.5 mm²
          run          A 7 m S1 6 m S2 9 m A
          run          S2 4 m S5  # a spur
          serves       sockets

          dead 2026-03-04 with M1 {
            ends         r1 0.31 Ω  rn 0.31 Ω
            at S1        L-N 0.16 Ω  polarity ok
            insulation   500 V  L-N 310 MΩ  L-E >999 MΩ
          }
          live 2026-03-05 with M1 {
            Zs           0.64 Ω
            test-button  ok
          }
        }

        way 8 feeder "Drying room" { feeds B }  # not yet connected
        way 9 spare
      }
    }
    "
  `);
});

test("a line that was not understood stays as it stands, and nothing changes places round it", () => {
  expect(
    formatted(way("serves sockets", "   Zs 0.4", "device BS EN 60898 B32", '  note "x  ', "Ib  2.1   A")),
  ).toMatchInlineSnapshot(`
    "board A {
      way 1 {
        serves       sockets
       Zs 0.4
        device       BS EN 60898 B32
      note "x  
        Ib           2.1 A
      }
    }
    "
  `);
});

test("neighbours of a half-typed line stay where they are", () => {
  const text = way("    Ib           2.1 A", "    floor-area   62");
  expect(formatted(text)).toBe(text);
});

test("a block with a lost brace stays as it stands; the others do not", () => {
  const text = "board A {\n   way 1 {\n  Ib   2 A\n   way 2 {\n Ib   2 A\n }\n}\n";
  expect(formatted(text)).toMatchInlineSnapshot(`
    "board A {
       way 1 {
      Ib   2 A
      way 2 {
        Ib           2 A
      }
    }
    "
  `);
});

test("nothing at all changes where the braces of boards do not add up", () => {
  expect(format("board A {\n   way 1 {\n  Ib   2 A\n}\n")).toBeUndefined();
  expect(format("board A {\n   way 1 spare\n}\n}\n")).toBeUndefined();
});

test("a block with a merge conflict stays as it stands", () => {
  const text = way("<<<<<<< ours", " Ib  2 A", "=======", "  Ib 3 A", ">>>>>>> theirs");
  expect(formatted(text)).toBe(text);
});

test("blank lines divide paragraphs, which are put in order each by itself", () => {
  expect(
    formatted(way("", "Ib 2 A", "device BS 3036 5 A", "", "", "length 3 m", "cable flat-twin line 1.0 mm²", "")),
  ).toMatchInlineSnapshot(`
    "board A {
      way 1 {
        device       BS 3036 5 A
        Ib           2 A

        cable        flat-twin  line 1.0 mm²
        length       3 m
      }
    }
    "
  `);
});

test("a comment travels with the statement below it, remarks with the statement above", () => {
  const lines = ["# current", "Ib 2 A", 'query "Right?"', 'answer "Yes"', "# device", "device BS 3036 5 A", "# last"];
  expect(formatted(way(...lines))).toMatchInlineSnapshot(`
    "board A {
      way 1 {
        # device
        device       BS 3036 5 A
        # current
        Ib           2 A
        query        "Right?"
        answer       "Yes"
        # last
      }
    }
    "
  `);
});

test("questions and answers never pass each other", () => {
  const lines = ["Ib 2 A", 'query "One?"', "device BS 3036 5 A", 'answer "Two."'];
  const result = formatted(way(...lines));
  expect(result.indexOf("query")).toBeLessThan(result.indexOf("answer"));
});

test("repeated words, tests of several days and ways keep their sequence", () => {
  const text = way(
    "load 2 kW",
    "load 1 kW",
    "live 2026-01-02 {",
    "}",
    "dead 2026-01-01 {",
    "}",
    "live 2025-01-02 {",
    "}",
  );
  expect(formatted(text)).toMatchInlineSnapshot(`
    "board A {
      way 1 {
        load         2 kW
        load         1 kW
        live 2026-01-02 {
        }
        dead 2026-01-01 {
        }
        live 2025-01-02 {
        }
      }
    }
    "
  `);
});

test("short blocks stay on one line; long ones and those with more inside do not", () => {
  const long = `way 2 feeder "${"A long title ".repeat(8)}" { feeds B }`;
  const text = `board A {\nway 1 feeder { feeds  B }\n${long}\nway 3 radial { feeds B\n}\nway 4 spare {}\n}\n`;
  expect(formatted(text)).toMatchInlineSnapshot(`
    "board A {
      way 1 feeder { feeds B }
      way 2 feeder "A long title A long title A long title A long title A long title A long title A long title A long title " {
        feeds        B
      }
      way 3 radial {
        feeds        B
      }
      way 4 spare {}
    }
    "
  `);
});

test.each([
  ["CRLF", "board A {\r\nway 1 spare\r\n}\r\n", "board A {\r\n  way 1 spare\r\n}\r\n"],
  ["a lone return", "board A {\rway 1 spare\r}\r", "board A {\r  way 1 spare\r}\r"],
  ["a byte order mark", "\ufeffwayfile  1\n", "\ufeffwayfile 1\n"],
  ["no last line end", "wayfile 1", "wayfile 1\n"],
  ["blank lines at the end", "wayfile 1\n\n  \n", "wayfile 1\n"],
  ["blank lines at the start", "\n\nwayfile 1\n", "wayfile 1\n"],
  ["blanks at a line's end", "wayfile 1  \n# x \t\n", "wayfile 1\n# x\n"],
  ["only blanks", "  \n\n", ""],
])("%s", (_, text, wanted) => {
  expect(formatted(text)).toBe(wanted);
});

test.each([
  ["0.5ohm", "0.5 Ω"],
  ["> 1.99 ohms", ">1.99 Ω"],
  ["<0.01Ω", "<0.01 Ω"],
])("%s is written %s", (before, after) => {
  const text = (figure: string) => `board A {\n  dead 2026-01-02 {\n    bonding water continuity ${figure}\n  }\n}\n`;
  expect(formatted(text(before))).toBe(
    text(after).replace(" continuity", "  continuity").replace("bonding ", "bonding      "),
  );
});

test("a tidy text needs no edit, and an untidy line costs an edit of that line", () => {
  const tidy = "wayfile 1\n\nboard A {\n  way 1 spare\n  way 2 spare\n}\n";
  expect(format(tidy)).toBeUndefined();
  const edits = format(tidy.replace("  way 2", "way 2"))?.edits;
  expect(edits).toEqual([{ start: 35, end: 47, text: "  way 2 spare\n" }]);
});

test("the tests at the origin stand below what the supply is", () => {
  const supply =
    'installation "Mill" {\n  supply {\n    live 2026-01-02 {\n      Ze  0.3 Ω\n    }\n    tails     25 mm²\n    earthing  TN-S\n  }\n}\n';
  expect(formatted(supply)).toMatchInlineSnapshot(`
    "installation "Mill" {
      supply {
        earthing     TN-S
        tails        25 mm²
        live 2026-01-02 {
          Ze           0.3 Ω
        }
      }
    }
    "
  `);
});

test("the RCD of a point has no more blanks than another", () => {
  const block = formatted(
    way(
      "live 2026-03-05 {",
      "rcd  at  S2 10 mA 1x 31 ms   test-button ok",
      "test-button ok",
      "rcd 30 mA 1x 24 ms",
      "test-button at S1 ok",
      "}",
    ),
  );
  expect(
    block
      .split("\n")
      .slice(3, 7)
      .map((line) => line.trim()),
  ).toEqual([
    "rcd          at S2 10 mA 1x 31 ms test-button ok",
    "rcd          30 mA 1x 24 ms",
    "test-button  ok",
    "test-button  at S1 ok",
  ]);
});
