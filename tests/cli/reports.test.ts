/** The commands that write a report of one schedule: settings, targets, and what they refuse. */
import { readFileSync } from "node:fs";
import { describe, expect, test } from "vitest";
import { wellFormed } from "../reports/well-formed.ts";
import { Folder, faultyWay, schedule } from "./run.ts";

const folder = () =>
  new Folder({
    "a.ways": schedule(faultyWay),
    "used.ways": `wayfile 1\nuse "nowhere.ways"\n${schedule(faultyWay).replace("wayfile 1\n", "")}`,
    "newer.ways": "wayfile 2\n",
    "empty.ways": "wayfile 1\n",
  });

describe("working", () => {
  test("of a way, as text", async () => {
    const { code, out, err } = await folder().run("working", "a.ways", "--way", "A/1");
    expect({ code, err }).toEqual({ code: 0, err: "" });
    expect(out).toContain("Working: Way A/1 “Water heater”, radial\n=====");
    expect(out).toMatch(/Greatest Zs by the overcurrent device, hot \.+ 1\.37 Ω/);
    expect(out).toContain("loop/zs-over-limit");
  });

  test("of a board and of the installation holds its ways", async () => {
    const board = await folder().run("working", "a.ways", "--board", "A");
    const whole = await folder().run("working", "a.ways");
    for (const { code, out } of [board, whole]) {
      expect(code).toBe(0);
      expect(out).toContain("Way A/1 “Water heater”, radial");
    }
    expect(board.out).not.toContain("Earthing and bonding");
    expect(whole.out).toContain("Earthing and bonding");
  });

  test("as Markdown and as HTML", async () => {
    const markdown = await folder().run("working", "a.ways", "--way", "A/1", "--format", "markdown");
    expect(markdown.out).toMatch(/^# Working: Way A\/1/);
    const html = await folder().run("working", "a.ways", "--way", "A/1", "--format", "html");
    expect(html.out).toMatch(/^<!DOCTYPE html>/);
    wellFormed(html.out);
  });

  test("a file it uses and cannot read is named, and the exit code says so", async () => {
    const { code, out, err } = await folder().run("working", "used.ways", "--way", "A/1");
    expect(code).toBe(2);
    expect(out).toContain("Working: Way A/1");
    expect(err).toContain("nowhere.ways");
  });
});

describe("into a file", () => {
  test.each([
    ["working", "w.txt", /^Working: /],
    ["working", "w.md", /^# Working: /],
    ["summary", "s.html", /^<!DOCTYPE html>/],
    ["summary", "s.pdf", /^%PDF-/],
  ])("%s as %s, by its ending", async (command, name, begins) => {
    const own = folder();
    const { code, out } = await own.run(command, "a.ways", "-o", name);
    expect({ code, out }).toEqual({ code: 0, out: "" });
    expect(readFileSync(own.at(name), "latin1")).toMatch(begins);
  });

  test("that cannot be written is refused in a sentence", async () => {
    const { code, err } = await folder().run("working", "a.ways", "-o", "nowhere/w.pdf");
    expect(code).toBe(2);
    expect(err).toMatch(/“nowhere\/w\.pdf” cannot be written/);
  });
});

test("a name cannot steer the terminal", async () => {
  const steering = new Folder({ "a.ways": schedule(faultyWay.replace("Water heater", "Water\u001b[31m heater")) });
  const { out } = await steering.run("working", "a.ways", "--way", "A/1");
  expect(out).not.toContain("\u001b");
  expect(out).toContain("Water␛[31m heater");
});

describe("editions", () => {
  test("one of them", async () => {
    const { code, out } = await folder().run("editions", "a.ways", "--to", "BS 7671:2008");
    expect(code).toBe(0);
    expect(out).toMatch(/greatest Zs, hot +1\.37 Ω +1\.44 Ω +A\/1/);
    expect(out).not.toContain("BS 7671:2018, 18th Edition");
  });

  test("all of them", async () => {
    const { out } = await folder().run("editions", "a.ways");
    expect(out).toContain("BS 7671:2001, 16th Edition");
    expect(out).toContain("No public page prints the numbers of Amendment 4");
  });
});

describe("summary", () => {
  test("counts what stands in the file, errors of the language among it", async () => {
    const { code, out } = await new Folder({ "a.ways": schedule(`${faultyWay}\n  oddity 3`) }).run("summary", "a.ways");
    expect(code).toBe(0);
    expect(out).toContain("Before you sign");
    expect(out).toContain("loop/zs-over-limit");
    expect(out).toContain("language/unknown-word");
  });

  test("as Markdown and as HTML", async () => {
    expect((await folder().run("summary", "a.ways", "--format", "markdown")).out).toMatch(/^# Summary: /);
    wellFormed((await folder().run("summary", "a.ways", "--format", "html")).out);
  });

  test("of two installations in one file, each has its own findings", async () => {
    const both = `${schedule(faultyWay)}${schedule(faultyWay).replace("wayfile 1\n", "").replace("board A", "board Z").replace("BS EN 60898 B32", "BS EN 60898 B6")}`;
    const { out } = await new Folder({ "a.ways": both }).run("summary", "a.ways");
    expect(out.match(/Zs 1\.52 Ω is above/g)?.length).toBe(1);
  });
});

test.each([
  [["working", "none.ways"], "“none.ways” cannot be read: there is no such file."],
  [["working", "empty.ways"], "There is no installation in this file, so there is nothing to judge its circuits by."],
  [["editions", "empty.ways"], "There is no installation in this file, so there is nothing to judge its circuits by."],
  [["working", "newer.ways"], "“newer.ways” is in a newer version of the language than 1: get a newer program."],
  [["working", "a.ways", "--way", "A/7"], "Board A has no way 7: it has 1."],
])("%j is refused in one sentence", async (args, sentence) => {
  expect(await folder().run(...args)).toEqual({ code: 2, out: "", err: `${sentence}\n` });
});

test("an edition nobody knows is refused with those that are known", async () => {
  const { code, err } = await folder().run("editions", "a.ways", "--to", "BS 7671:1999");
  expect(code).toBe(2);
  expect(err).toMatch(/^“BS 7671:1999” is not an edition known here\. Known are BS 7671:2001, /);
});

describe("compare", () => {
  const way = (id: number, title: string, lines: string) => `way ${id} radial "${title}" {\n${lines}\n}`;
  const before = schedule(
    [
      way(1, "Oven", "device BS EN 60898 B32 6 kA\nlive 2021-03-05 {\nZs 0.62 Ω\n}"),
      way(2, "Kiln", "length 12 m"),
      way(3, "Pump", "length 9 m"),
    ].join("\n"),
  );
  const after = schedule(
    [
      way(
        1,
        "Oven",
        'device BS EN 60898 B16 6 kA\nnote "Changed in May"\nlive 2021-03-05 {\nZs 0.62 Ω\n}\nlive 2026-03-05 {\nZs 3.10 Ω\n}',
      ),
      way(4, "Kiln", "length 12 m"),
      way(5, "Lift", "length 20 m"),
    ].join("\n"),
  );
  const both = () => new Folder({ "a.ways": before, "b.ways": after });

  test("lists what differs by way, and what is found in one only", async () => {
    const { code, out, err } = await both().run("compare", "a.ways", "b.ways");
    expect({ code, err }).toEqual({ code: 0, err: "" });
    expect(out).toMatch(/device +BS EN 60898 B32 6 kA +BS EN 60898 B16 6 kA/);
    expect(out).toMatch(/Zs, 2026-03-05 +0\.62 Ω, 2021-03-05 +3\.10 Ω/);
    expect(out).toMatch(/loop\/zs-over-limit +not found +error: /);
    expect(out).toMatch(/note +not there +"Changed in May"/);
  });

  test("knows a way that took another number, and those that came and went", async () => {
    const { out } = await both().run("compare", "a.ways", "b.ways");
    expect(out).toMatch(/way +“Kiln” +A\/2 +A\/4/);
    expect(out).toContain("Way A/5 “Lift”: new");
    expect(out).toMatch(/Ways that are gone\n.*\n.*\n.*\nA\/3 +“Pump” +radial/);
  });

  test("states that nothing differs, and how much was compared", async () => {
    const { out } = await both().run("compare", "a.ways", "a.ways");
    expect(out).toMatch(/Both state the same, .*: 3 readings and \d+ other lines were compared\./s);
  });

  test("as Markdown and as HTML", async () => {
    expect((await both().run("compare", "a.ways", "b.ways", "--format", "markdown")).out).toMatch(/^# Compared: /);
    wellFormed((await both().run("compare", "a.ways", "b.ways", "--format", "html")).out);
  });

  test("refuses what cannot be read, in one sentence", async () => {
    expect(await both().run("compare", "none.ways", "b.ways")).toEqual({
      code: 2,
      out: "",
      err: "“none.ways” is no file, folder or revision of git here.\n",
    });
  });
});
