/** One settings file a repository: read strictly, applied by the command line and the server alike, never in silence. */

import { readFileSync } from "node:fs";
import { join } from "node:path";
import { pathToFileURL } from "node:url";
import { afterAll, describe, expect, test } from "vitest";
import type { Diagnostic } from "vscode-languageserver";
import { fatesIn } from "../../server/settings/apply.ts";
import { readSettings } from "../../server/settings/read.ts";
import { settingsSchema } from "../../server/settings/schema.ts";
import { headingOf } from "../../server/tables/headings.ts";
import { tables } from "../../server/tables/index.ts";
import { faultsAgainst, type Schema } from "../helpers/schema.ts";
import { pulling, type Server, startServer } from "../helpers/server.ts";
import { Folder, faultyWay, schedule } from "./run.ts";

const settings = (value: object): string => JSON.stringify(value, null, 2);
const house = schedule(faultyWay);
const folderWith = (value: object | string, more: Readonly<Record<string, string>> = {}) =>
  new Folder({
    ".wayfile.json": typeof value === "string" ? value : settings(value),
    "sites/house.ways": house,
    ...more,
  });
const known = { check: "loop", reason: "The supply is renewed in May" };

describe("settings", () => {
  test("say of each fault where it is and what would be right, and nothing is checked by them", async () => {
    const text = `{
  // of the house
  "failLevel": "warnig",
  "maxWarnings": -1,
  "leaveout": ["drafts/"],
  "suppress": [
    { "check": "loop/zs-over-limt", "reason": "x" },
    { "check": "language", "reason": "x" },
    { "check": "loop", "reason": " " },
    { "check": "loop", "reason": "x", "until": "2026-13-01" },
    { "reason": "y" },
  ],
  "raise": { "drop": "information" },
}`;
    const { code, out, err } = await folderWith(text).run("check");
    expect({ code, out }).toEqual({ code: 2, out: "" });
    expect(err.split("\n").map((line) => line.replace(/^\.wayfile\.json:/, ""))).toEqual([
      expect.stringMatching(/^3:16 {2}“failLevel” is "error", "warning" or "information"\.$/),
      expect.stringMatching(/^4:18 {2}“maxWarnings” is a whole number from 0\.$/),
      expect.stringMatching(/^5:3 {2}There is no setting “leaveout”\. Did you mean “leaveOut”\?$/),
      expect.stringMatching(/^7:16 .*“loop\/zs-over-limt”\. Did you mean loop\/zs-over-limit\?$/),
      expect.stringMatching(/^8:16 .*“language” cannot be left out/),
      expect.stringMatching(/^9:34 .*“reason” is a text in quotes\.$/),
      expect.stringMatching(/^10:48 .*“until” is a day/),
      expect.stringMatching(/^11:5 .*needs “check”\.$/),
      expect.stringMatching(/^13:22 .*"error" or "warning"\.$/),
      "The settings are to be put right first; nothing was checked.",
      "",
    ]);
  });

  test("that are no settings are refused, each with the reason", () => {
    const texts = ["", "{", "[]", "3", '{"a": }', "\u0000", '{"suppress": {}}', "{]".repeat(5000)];
    expect(texts.map((text) => readSettings(text).problems[0]?.message)).toEqual([
      "This is not JSON: value expected.",
      "This is not JSON: close brace expected.",
      "This file is an object in { }.",
      "This file is an object in { }.",
      "This is not JSON: value expected.",
      "This is not JSON: invalid symbol.",
      "“suppress” is a list in [ ].",
      "This is not JSON: property name expected.",
    ]);
  });

  test.each([
    ["a hundred thousand brackets", "[".repeat(100_000), "Nothing in the settings stands so deep"],
    ["brackets that are closed again", `{"only": ${"[".repeat(5_000)}${"]".repeat(5_000)}}`, "stands so deep"],
    ["a megabyte", `{"leaveOut": ["${"x".repeat(1_000_000)}"]}`, "200000 signs at the most"],
    ["twenty thousand patterns", settings({ leaveOut: Array(20_000).fill("x") }), "“leaveOut” has 1000 entries"],
  ])("of a stranger, such as %s, are refused in a sentence", async (_, text, message) => {
    const { code, out, err } = await folderWith(text).run("check");
    expect({ code, out }).toEqual({ code: 2, out: "" });
    expect(err).toContain(message);
    expect(err).not.toContain("its own fault");
  });

  test("have a hundred faults reported at the most, and none but what a setting is called", () => {
    const many = Object.fromEntries(Array.from({ length: 5_000 }, (_, at) => [`x${at}`, at]));
    expect(readSettings(settings(many)).problems).toHaveLength(100);
    expect(readSettings('{"__proto__": {"only": []}, "raise": {"__proto__": "error"}}').problems).toHaveLength(2);
    expect(readSettings('{"only": ["[{[{[{[{[{[{[{[{[{[{"]}').problems).toHaveLength(1);
  });

  test("suppress with a reason, are counted and listed, and fail nothing", async () => {
    const { code, out } = await folderWith({ suppress: [known] }).run("check");
    expect(code).toBe(0);
    expect(out).toContain(".wayfile.json:3  loop  1 finding  “The supply is renewed in May”");
    expect(out).toMatch(/0 errors.*; 1 suppressed by the settings/);
    const json = JSON.parse((await folderWith({ suppress: [known] }).run("check", "--format", "json")).out);
    expect(json.summary).toMatchObject({ errors: 0, suppressed: 1, leftOut: 0 });
    const sarif = JSON.parse((await folderWith({ suppress: [known] }).run("check", "--format", "sarif")).out);
    expect(JSON.stringify(sarif)).toContain('"kind":"external","justification":"The supply is renewed in May"');
  });

  test("suppress where and for as long as they say", async () => {
    const elsewhere = await folderWith({ suppress: [{ ...known, files: ["drafts/"] }] }).run("check");
    const ended = await folderWith({ suppress: [{ ...known, until: "2026-05-03" }] }).run("check");
    const lastDay = await folderWith({ suppress: [{ ...known, files: ["sites/"], until: "2026-05-04" }] }).run("check");
    expect([elsewhere.code, ended.code, lastDay.code]).toEqual([1, 1, 0]);
  });

  test("weigh more and never less, and an option goes before them", async () => {
    const folder = folderWith({ failLevel: "warning", raise: { record: "error" } });
    const { out } = await folder.run("check", "--format", "concise");
    expect(out).toMatch(/: error record\//);
    expect(
      fatesIn(
        readSettings(settings({ raise: { loop: "warning" } })).settings,
        "a.ways",
        "2026-05-04",
      )({
        check: "loop/zs-over-limit",
        severity: "error",
      }),
    ).toEqual({ is: "shown", severity: "error" });
    const warned = folderWith({ failLevel: "information", suppress: [known] });
    expect((await warned.run("check")).code).toBe(1);
    expect((await warned.run("check", "--fail-level", "error")).code).toBe(0);
  });

  test("leave folders out of a search, and not what is named", async () => {
    const folder = folderWith({ leaveOut: ["drafts/"] }, { "drafts/x.ways": house });
    expect((await folder.run("check", "--format", "json")).out).not.toContain("drafts/x.ways");
    expect((await folder.run("check", "drafts/x.ways")).code).toBe(1);
    expect((await folder.run("fmt", "--check", ".")).out).not.toContain("drafts");
  });

  test("are found from a folder below, and told with where each comes from", async () => {
    const folder = folderWith({ failLevel: "warning", suppress: [known] });
    folder.write(".git/HEAD", "ref: refs/heads/main\n");
    const { code, out } = await folder.run("settings", "--why", "sites");
    expect(code).toBe(0);
    expect(out).toContain("failLevel    warning  (.wayfile.json:2; --fail-level goes before it)");
    expect(out).toContain("suppress     loop  “The supply is renewed in May”  (.wayfile.json:4)");
  });

  test("hold to the schema that is printed, and it finds what the reader finds", async () => {
    const { out } = await new Folder({}).run("schema", "settings");
    expect(JSON.parse(out)).toEqual(settingsSchema());
    const schema = settingsSchema() as Schema;
    expect(await faultsAgainst(schema, { failLevel: "warning", suppress: [known], raise: { drop: "error" } })).toEqual(
      [],
    );
    for (const wrong of [{ failLevel: "x" }, { suppress: [{ check: "loop" }] }, { skip: ["language"] }, { x: 1 }]) {
      expect(await faultsAgainst(schema, wrong)).not.toEqual([]);
      expect(readSettings(settings(wrong)).problems).not.toEqual([]);
    }
  });
});

test("the report for programs is as its schema says", async () => {
  const folder = folderWith({ suppress: [known] }, { "b.ways": house.replace("Zs  1.52", "Zs  1.53") });
  const schemaOf = async (name: string) => JSON.parse((await folder.run("schema", name)).out) as Schema;
  expect(
    await faultsAgainst(await schemaOf("check"), JSON.parse((await folder.run("check", "--format", "json")).out)),
  ).toEqual([]);
  const lines = await schemaOf("check-lines");
  for (const line of (await folder.run("check", "--format", "jsonl")).out.trim().split("\n"))
    expect(await faultsAgainst(lines, JSON.parse(line))).toEqual([]);
});

describe("what can be put right without a person", () => {
  const untidy = schedule(faultyWay).replace(/$/, "\n");
  test("is shown as a patch, then written; readings stay as they are", async () => {
    const folder = new Folder({ "a.ways": untidy });
    const before = readFileSync(join(folder.path, "a.ways"), "utf8");
    const shown = await folder.run("check", "--diff");
    expect(readFileSync(join(folder.path, "a.ways"), "utf8")).toBe(before);
    const written = await folder.run("check", "--fix", "--quiet");
    const after = readFileSync(join(folder.path, "a.ways"), "utf8");
    expect(shown.code).toBe(after === before ? 0 : 1);
    expect(after.match(/\d[\d.]* (?:Ω|MΩ|A)/g)).toEqual(before.match(/\d[\d.]* (?:Ω|MΩ|A)/g));
    expect((await folder.run("check", "--diff")).out).toBe("");
    expect(written.code).toBe(1);
  });

  test.each([
    ["--fix", "--staged"],
    ["--diff", "--stdin-path", "a.ways", "-"],
    ["--watch", "--diff"],
  ])("does not go with %s %s", async (...args) => {
    expect((await new Folder({ "a.ways": house }).run("check", ...args)).code).toBe(2);
  });

  test("fmt shows what would change as a patch that patch takes", async () => {
    const folder = new Folder({ "a.ways": "wayfile 1\ninstrument M1 {\n due 2027-01-01\n}\n" });
    const { code, out } = await folder.run("fmt", "--diff", "a.ways");
    expect(code).toBe(1);
    expect(out).toBe(
      "--- a/a.ways\n+++ b/a.ways\n@@ -1,4 +1,4 @@\n wayfile 1\n instrument M1 {\n- due 2027-01-01\n+  due          2027-01-01\n }\n",
    );
  });
});

test("a table is explained by its number, each figure with how it is known", async () => {
  const folder = new Folder({});
  const { code, out } = await folder.run("explain", "table", "41.3");
  expect(code).toBe(0);
  // BS 7671, Table 41.3: type B, 32 A: 1.37 Ω.
  expect(out).toMatch(/\nB +32 +160 +1\.37 /);
  // Each column as people call it, with its unit, and with the edition it is printed in where that is another.
  expect(out.replace(/\s+/g, " ")).toContain("type rating, A operating current, A");
  expect(out).toContain("“Zs before 2015, Cmin 1” is printed in BS 7671:2008, Table 41.3.");
  expect(out).not.toMatch(/gn3|osg|zsCmin1/);
  expect((await folder.run("explain", "54.7")).out).toContain("54.7");
  expect((await folder.run("explain", "table", "99.9")).code).toBe(2);
});

const servers: Server[] = [];
afterAll(() => {
  for (const server of servers) server.kill();
});

test("the editor's server suppresses the same, visibly, marks the settings, and follows them", async () => {
  const folder = folderWith({ suppress: [known] });
  const server = await startServer({ capabilities: pulling, folder: pathToFileURL(folder.path).href });
  servers.push(server);
  const uri = pathToFileURL(folder.at("sites/house.ways")).href;
  const own = pathToFileURL(folder.at(".wayfile.json")).href;
  await server.open(uri, house);
  const loop = async (): Promise<Diagnostic | undefined> =>
    (await server.pull(uri)).items?.find(({ code }) => code === "loop/zs-over-limit");
  expect(await loop()).toMatchObject({ severity: 4, message: expect.stringContaining("The supply is renewed in May") });
  folder.write(".wayfile.json", settings({ suppres: [] }));
  await server.connection.sendNotification("workspace/didChangeWatchedFiles", { changes: [{ uri: own, type: 2 }] });
  expect(await loop()).toMatchObject({ severity: 1 });
  const marked = await server.push(own, (items) => items.length > 0);
  expect(marked.diagnostics.map(({ message }) => message)).toEqual([
    "There is no setting “suppres”. Did you mean “suppress”?",
  ]);
});

test("every column of every table has a heading for people, and no two of one table have the same", () => {
  for (const { id, units } of tables) {
    const headings = Object.keys(units).map((column) => headingOf(id, column));
    expect(headings, id).not.toContain(undefined);
    expect(new Set(headings).size, id).toBe(headings.length);
  }
});
