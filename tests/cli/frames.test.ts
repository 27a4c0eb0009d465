/** What a finding looks like on a terminal. */
import { readFileSync } from "node:fs";
import { stripVTControlCharacters } from "node:util";
import { expect, test } from "vitest";
import { coloursFor } from "../../server/cli/colours.ts";
import { framed } from "../../server/cli/formats/frame.ts";
import { Locator } from "../../server/results/places.ts";
import { fileOfText } from "../../server/workspace/loaded-file.ts";
import { Folder, faultyWay, framesOf, schedule } from "./run.ts";

/** The frames of one check; the sample stands in `a.ways`. */
async function frames(check: string, files: Record<string, string>): Promise<string> {
  const { out } = await new Folder(files).run("check", "a.ways");
  return `\n${framesOf(check, out)}`;
}

test("a reading over its limit, with the line it follows from, its figures, working and source", async () => {
  expect(await frames("loop/zs-over-limit", { "a.ways": schedule(faultyWay) })).toMatchInlineSnapshot(`
    "
    error  loop/zs-over-limit
    Zs 1.52 Ω is above 1.37 Ω, the limit for the B32 BS EN 60898 device: it would not disconnect in time.
      --> a.ways:21:13
      21 ┊         Zs  1.52 Ω
         ╵             ^^^^^^
      19 ┊       device  BS EN 60898 B32 6 kA
         ╵       ~~~~~~~~~~~~~~~~~~~~~~~~~~~~  Protective device: B32 BS EN 60898.
           limit    1.37 Ω hot
           value    1.52 Ω
           margin   11 % over
           working  Ia = 5 × In = 5 × 32 A = 160 A
                    Zs = U0 × Cmin / Ia = 230 V × 0.95 / 160 A = 1.37 Ω
                    Before opening anything: isolate and lock off, prove the tester, prove dead, prove the tester again.
           source   BS 7671:2018+A2:2022, Table 41.3 (as quoted elsewhere)
    "
  `);
});

test("a fault that Wayfile can put right says how", async () => {
  const text =
    'wayfile 1\ninstrument M1 "Tester" {\n  due  2026-02-30\n}\ncable-type t flat-twin line 2.5 cpc 1.5 mm²\n';
  const { out } = await new Folder({ "a.ways": text }).run("check", "a.ways");
  expect(`\n${out}`).toMatchInlineSnapshot(`
    "
    error  language/not-a-date
    2026-02-30 is not a day in any calendar.
      --> a.ways:3:8
       3 ┊   due  2026-02-30
         ╵        ^^^^^^^^^^

    error  language/missing-unit
    2.5 lacks its unit: a conductor size is written in mm².
      --> a.ways:5:29
       5 ┊ cable-type t flat-twin line 2.5 cpc 1.5 mm²
         ╵                             ^^^
           help     Write 2.5 mm²

    1 file, 0 boards, 0 ways: 2 errors, 0 warnings, 0 for information
    "
  `);
});

test("marks stand under what they mean, behind tabs, wide signs and signs of two UTF-16 units", async () => {
  const text = [
    "wayfile 1",
    'installation "Quay" {',
    '\tlocation\t"漢字 🔌 é"\t18',
    '\tlocation "e\u0301" 7',
    '  extent "𝒵" 5',
    "}",
    "",
  ].join("\n");
  expect(await frames("language/wrong-argument", { "a.ways": text })).toMatchInlineSnapshot(`
    "
    error  language/wrong-argument
    “location” takes nothing more; “18” does not belong.
      --> a.ways:3:21
       3 ┊     location    "漢字 🔌 é" 18
         ╵                             ^^

    error  language/wrong-argument
    “location” takes nothing more; “7” does not belong.
      --> a.ways:4:16
       4 ┊     location "é" 7
         ╵                  ^

    error  language/wrong-argument
    “extent” takes nothing more; “5” does not belong.
      --> a.ways:5:15
       5 ┊   extent "𝒵" 5
         ╵              ^
    "
  `);
});

test("a finding in a file that is used names that file", async () => {
  const files = { "a.ways": schedule("", { before: 'use "lib/b.ways"\n' }), "lib/b.ways": "wayfile 1\nnonsense\n" };
  expect(await frames("language/unknown-word", files)).toMatchInlineSnapshot(`
    "
    error  language/unknown-word
    “nonsense” is not a word of the file itself.
      --> lib/b.ways:2:1
       2 ┊ nonsense
         ╵ ^^^^^^^^
    "
  `);
});

test("a line in another file is shown with its place", async () => {
  const files = {
    "a.ways": schedule("", { before: 'use "lib/b.ways"\ninstrument M1 "Blue"\n' }),
    "lib/b.ways": 'wayfile 1\n\ninstrument M1 "Red"\n',
  };
  expect(await frames("language/duplicate-name", files)).toMatchInlineSnapshot(`
    "
    error  language/duplicate-name
    Instrument M1 is defined twice, so a reference could mean either: give one of them another name.
      --> lib/b.ways:3:12
       3 ┊ instrument M1 "Red"
         ╵            ^^
      --> a.ways:3:12
       3 ┊ instrument M1 "Blue"
         ╵            ~~  Instrument M1 is first defined here.
    "
  `);
});

test("what runs over several lines is marked on its first", () => {
  const file = fileOfText("/x/a.ways", 'wayfile 1\ninstrument M1 "Tester" {\n  due  2026-11-03\n}\n');
  const [, segment] = file.document.segments;
  if (!segment) throw new Error("The sample has no block.");
  const at = new Locator([file], (path) => path).of({ segment, start: 0, end: segment.text.length - 1 });
  const finding = { check: "x/y", severity: "warning", message: "Look.", at, related: [], fixes: [] } as const;
  expect(`\n${framed(finding, { colours: coloursFor(false), shown: () => "a.ways" })}`).toMatchInlineSnapshot(`
    "
    warning  x/y
    Look.
      --> a.ways:2:1
       2 ┊ instrument M1 "Tester" {
         ╵ ^^^^^^^^^^^^^^^^^^^^^^^^… to line 4
    "
  `);
});

test("a long line is cut round what is meant", async () => {
  const text = `wayfile 1\nnote "${"long ".repeat(100)}" 18\n`;
  expect(await frames("language/wrong-argument", { "a.ways": text })).toMatchInlineSnapshot(`
    "
    error  language/wrong-argument
    “note” takes nothing more; “18” does not belong.
      --> a.ways:2:509
       2 ┊ …ng long long long long long long long " 18
         ╵                                          ^^
    "
  `);
});

test("signs that would steer the terminal are shown, not sent", async () => {
  const { out } = await new Folder({ "a.ways": 'wayfile 1\nnote "\u001b[31m\u202etxt" 18\n' }).run("check", "a.ways");
  expect(out).not.toContain("\u001b");
  expect(out).not.toContain("\u202e");
  expect(out).toContain('note "␛[31m�txt" 18');
});

test("departures and open queries are listed with their words", async () => {
  const way = faultyWay.replace(
    "      live",
    '      departure 411.4.4 "Shutdown agreed for May"\n      query "Why B?"\n      query "And when?"\n      answer "In May"\n      live',
  );
  const { out } = await new Folder({ "a.ways": schedule(way) }).run("check", "a.ways");
  expect(framesOf("loop/zs-over-limit", out)).toBe("");
  expect(out.slice(out.indexOf("Departures"), out.lastIndexOf("\n\n"))).toMatchInlineSnapshot(`
    "Departures
      a.ways:20:7  loop/zs-over-limit (411.4.4)  “Shutdown agreed for May”

    Open queries
      a.ways:21:7  “Why B?”"
  `);
  expect(out.trimEnd().split("\n").at(-1)).toMatch(/; 1 open query, 1 departure$/);
});

test("an answer of two lines answers the question above it and no other", async () => {
  const asked =
    '      query "Why B?"\n      query "And when?"\n      answer "In May,"\n      answer "or in June"\n      live';
  const { out } = await new Folder({ "a.ways": schedule(faultyWay.replace("      live", asked)) }).run(
    "check",
    "a.ways",
  );
  expect(out.slice(out.indexOf("Open queries"), out.lastIndexOf("\n\n"))).toMatch(/^Open queries\n.*“Why B\?”$/);
  expect(out.trimEnd().split("\n").at(-1)).toMatch(/; 1 open query$/);
});

test("colour only where it is wanted", async () => {
  const folder = new Folder({ "a.ways": schedule(faultyWay) });
  const plain = await folder.run("check");
  const coloured = await folder.runWith({ colour: true }, "check");
  expect(plain.out).not.toContain("\u001b");
  expect(coloured.out).toContain("\u001b[31merror");
  expect(stripVTControlCharacters(coloured.out)).toBe(plain.out);
});

const tested = `    way 2 radial "Heater" {
      route   clipped  method C
      length  18 m
      serves  water-heater
      load    5 kW
    }`;

test.each([
  ["check", "a.ways"],
  ["check", "--format", "concise", "a.ways"],
  ["explain", "loop/zs-over-limit"],
  ["register", "a.ways"],
  ["size", "a.ways", "--way", "A/2"],
])("--color decides for %s, before the command and behind it", async (...command) => {
  const folder = new Folder({ "a.ways": schedule(`${faultyWay}\n${tested}`) });
  const plain = await folder.run(...command);
  const coloured = await folder.runWith({ colour: true }, ...command);
  expect(stripVTControlCharacters(coloured.out)).toBe(plain.out);
  expect(coloured.out).toContain("\u001b[");
  expect(await folder.run(...command, "--color", "always")).toEqual(coloured);
  expect(await folder.run("--color=always", ...command)).toEqual(coloured);
  expect(await folder.runWith({ colour: true }, ...command, "--color", "never")).toEqual(plain);
  expect(await folder.runWith({ colour: true }, ...command, "--color", "auto")).toEqual(coloured);
});

test("--color leaves a file and what a program reads without colours", async () => {
  const folder = new Folder({ "a.ways": schedule(faultyWay) });
  await folder.run("check", "--color", "always", "--output-file", "report.txt");
  expect(readFileSync(folder.at("report.txt"), "utf8")).toBe((await folder.run("check")).out);
  const json = ["check", "--format", "json"];
  expect(await folder.run(...json, "--color", "always")).toEqual(await folder.run(...json));
});
