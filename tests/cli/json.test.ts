/** The report for programs: its shape is a promise, so every key of it is checked, and that there is no other. */
import { expect, test } from "vitest";
import { Folder, faultyWay, schedule } from "./run.ts";

type Shape = (value: unknown, path: string) => void;

const fail = (path: string, wanted: string, value: unknown): never => {
  throw new Error(`${path} should be ${wanted} and is ${JSON.stringify(value)}`);
};
const text: Shape = (value, path) => void (typeof value === "string" || fail(path, "text", value));
const number: Shape = (value, path) => void (Number.isFinite(value) || fail(path, "a number", value));
const count: Shape = (value, path) =>
  void ((Number.isInteger(value) && (value as number) >= 0) || fail(path, "a count", value));
const oneOf =
  (...words: unknown[]): Shape =>
  (value, path) =>
    void (words.includes(value) || fail(path, words.join(" or "), value));
const orNull =
  (shape: Shape): Shape =>
  (value, path) => {
    if (value !== null) shape(value, path);
  };
const list =
  (shape: Shape): Shape =>
  (value, path) => {
    if (!Array.isArray(value)) fail(path, "a list", value);
    for (const [index, item] of (value as unknown[]).entries()) shape(item, `${path}[${index}]`);
  };
const record =
  (shapes: Readonly<Record<string, Shape>>): Shape =>
  (value, path) => {
    if (typeof value !== "object" || value === null) fail(path, "an object", value);
    expect(Object.keys(value as object), path).toEqual(Object.keys(shapes));
    for (const [key, shape] of Object.entries(shapes))
      shape((value as Readonly<Record<string, unknown>>)[key], `${path}.${key}`);
  };

const place = record({ line: count, character: count });
const range = record({ start: place, end: place });
const amount = orNull(record({ amount: number, unit: text }));
const finding = record({
  check: text,
  severity: oneOf("error", "warning", "information"),
  message: text,
  range,
  value: amount,
  limit: orNull(record({ amount: number, unit: text, which: orNull(text) })),
  margin: orNull(number),
  marginText: orNull(text),
  verdict: orNull(text),
  source: orNull(record({ ref: text, standing: oneOf("printed", "quoted", "computed", "practice", "memory") })),
  working: orNull(text),
  related: list(record({ path: text, range, message: text })),
});
const report = record({
  version: oneOf(1),
  files: list(record({ path: text, findings: list(finding) })),
  summary: record({
    errors: count,
    warnings: count,
    unproven: count,
    informations: count,
    files: count,
    boards: count,
    ways: count,
    suppressed: count,
    leftOut: count,
  }),
});

const json = async (folder: Folder, ...args: string[]) => {
  const { out, code } = await folder.run("check", "--format", "json", ...args);
  const value = JSON.parse(out);
  report(value, "report");
  return { value, code };
};

test("every finding has every key", async () => {
  const folder = new Folder({
    "site/a.ways": schedule(faultyWay),
    "b.ways": "wayfile 1\nnonsense\n",
    "c.ways": "wayfile 1\n",
  });
  const { value, code } = await json(folder);
  expect(code).toBe(1);
  expect(value.files.map((file: { path: string }) => file.path)).toEqual(["b.ways", "c.ways", "site/a.ways"]);
  expect(value.files[1].findings).toEqual([]);
  expect(value.summary).toMatchObject({ files: 3, boards: 1, ways: 1, suppressed: 0, leftOut: 0 });
  const counted = (severity: string) =>
    value.files
      .flatMap((file: { findings: { severity: string }[] }) => file.findings)
      .filter((one: { severity: string }) => one.severity === severity).length;
  expect(value.summary).toMatchObject({
    errors: counted("error"),
    warnings: counted("warning"),
    unproven: 0,
    informations: counted("information"),
  });
});

test("a finding with a limit, whole", async () => {
  const { value } = await json(new Folder({ "a.ways": schedule(faultyWay) }));
  expect(value.files[0].findings.find((one: { check: string }) => one.check === "loop/zs-over-limit")).toEqual({
    check: "loop/zs-over-limit",
    severity: "error",
    message: "Zs 1.52 Ω is above 1.37 Ω, the limit for the B32 BS EN 60898 device: it would not disconnect in time.",
    range: { start: { line: 20, character: 12 }, end: { line: 20, character: 18 } },
    value: { amount: 1.52, unit: "Ω" },
    limit: { amount: 1.37, unit: "Ω", which: "hot" },
    margin: -0.109,
    marginText: "11 % over",
    verdict: "fails",
    source: { ref: "BS 7671:2018+A2:2022, Table 41.3", standing: "quoted" },
    working:
      "Ia = 5 × In = 5 × 32 A = 160 A\nZs = U0 × Cmin / Ia = 230 V × 0.95 / 160 A = 1.37 Ω\nBefore opening anything: isolate and lock off, prove the tester, prove dead, prove the tester again.",
    related: [
      {
        path: "a.ways",
        range: { start: { line: 18, character: 6 }, end: { line: 18, character: 34 } },
        message: "Protective device: B32 BS EN 60898.",
      },
    ],
  });
});

test("places are those an editor shows, with a byte order mark, Windows line ends and wide signs", async () => {
  const text = '\ufeffwayfile 1\r\nnote "𝒵漢" 18\r\n';
  const { value } = await json(new Folder({ "a.ways": text }));
  expect(value.files[0].findings[0].range).toEqual({
    start: { line: 1, character: 11 },
    end: { line: 1, character: 13 },
  });
});

test("nothing found is a report too", async () => {
  const { value, code } = await json(new Folder({ "a.ways": "" }));
  expect(value).toEqual({
    version: 1,
    files: [{ path: "a.ways", findings: [] }],
    summary: {
      errors: 0,
      warnings: 0,
      unproven: 0,
      informations: 0,
      files: 1,
      boards: 0,
      ways: 0,
      suppressed: 0,
      leftOut: 0,
    },
  });
  expect(code).toBe(0);
});

test("nothing that could be read is a report without files", async () => {
  const { value, code } = await json(new Folder({}), "gone.ways");
  expect(value.files).toEqual([]);
  expect(code).toBe(2);
});
