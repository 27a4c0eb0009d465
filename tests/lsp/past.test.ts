/** What a schedule was, asked of a server beside a real repository. */
import { mkdtempSync, readFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { pathToFileURL } from "node:url";
import { afterAll, beforeAll, expect, test } from "vitest";
import type { BesideAnswer, PastAnswer, RevisionsAnswer, TimelineAnswer } from "../../server/lsp/past-protocol.ts";
import { TestRepository } from "../helpers/repository.ts";
import { type Pulled, pulling, type Server, startServer } from "../helpers/server.ts";

const examples = join(import.meta.dirname, "../../examples");
const read = (name: string): string => readFileSync(join(examples, name), "utf8");
const workshop = read("heron-wharf/workshop.ways");
const loop = /^ +Zs +(\S+) Ω$/m.exec(workshop) as RegExpExecArray;
const line = workshop.slice(0, loop.index).split("\n").length - 1;
const changed = workshop.replace(loop[0], loop[0].replace(loop[1] as string, "1.90"));

let server: Server;
const repository = new TestRepository();
const uri = pathToFileURL(join(repository.folder, "heron-wharf/workshop.ways")).href;
const ask = <T>(method: string, more: object = {}): Promise<T> =>
  server.connection.sendRequest(method, { uri, ...more });

beforeAll(async () => {
  repository.commit("As tested", {
    "heron-wharf/workshop.ways": workshop,
    "heron-wharf/boatyard.ways": read("heron-wharf/boatyard.ways"),
    "shared/instruments.ways": read("shared/instruments.ways"),
  });
  repository.commit("A note", { "heron-wharf/workshop.ways": `# Kept in the office\n${workshop}` }, "Second Hand");
  repository.write({ "heron-wharf/workshop.ways": changed });
  server = await startServer({ capabilities: pulling, folder: pathToFileURL(repository.folder).href });
  await server.open(uri, changed);
});
afterAll(() => {
  server.kill();
  repository.end();
});

test("its commits, and its text in one of them", async () => {
  const { revisions } = await ask<RevisionsAnswer>("wayfile/revisions");
  expect(revisions.map(({ subject, author }) => `${subject}, ${author}`)).toEqual([
    "A note, Second Hand",
    "As tested, A Tester",
  ]);
  expect((await ask<PastAnswer>("wayfile/past", { revision: "HEAD~1" })).text).toBe(workshop);
});

test("each line that changed has what it was, with its margin, and says whether it fails now", async () => {
  const { lines, markdown } = await ask<BesideAnswer>("wayfile/beside", { revision: "HEAD~1" });
  const own = lines.find((one) => one.line === line);
  expect(own?.text).toMatch(new RegExp(`^was ${loop[1]} Ω \\(.* left\\), now fails$`));
  expect(own?.isGrave).toBe(true);
  expect(own?.detail.join("\n")).toMatch(/before: .* Ω, limit .*\nnow: 1\.90 Ω, limit/);
  expect(markdown).toContain("1.90 Ω");
  expect((await ask<BesideAnswer>("wayfile/beside", { revision: "HEAD" })).lines.map((one) => one.line)).toContain(
    line,
  );
});

const boatyard = read("heron-wharf/boatyard.ways");
const wasAt = (scheme: string, query: object): string =>
  uri
    .replace("workshop", "boatyard")
    .replace(/^file:/, `${scheme}:`)
    .concat(`?${encodeURIComponent(JSON.stringify(query))}`);

const textsOf = ({ items = [] }: Pulled): string => items.map(({ message }) => message).join("\n");

test.each([
  ["beside a revision", "wayfile-past", { revision: "HEAD~1" }],
  ["in the editor's own comparison with the last commit", "git", { path: "/x", ref: "HEAD" }],
  ["in its comparison with what is staged", "git", { path: "/x", ref: "~" }],
])("a schedule as it was, %s, is read with what it used then", async (_, scheme, query) => {
  const past = wasAt(scheme, query);
  await server.open(past, boatyard);
  const { kind, items } = await server.pull(past);
  expect(kind).toBe("full");
  expect(textsOf({ items } as Pulled)).not.toMatch(/instruments\.ways|M1/);
});

test.each([
  ["nothing of a revision", "git", {}],
  ["a revision there is not", "git", { ref: "no-such" }],
  ["an option for git", "wayfile-past", { revision: "--output=x" }],
  ["a query that is no object", "git", null],
])("an address with %s leads nowhere, and its `use` says so", async (_, scheme, query) => {
  const past = wasAt(scheme, query as object);
  await server.open(past, boatyard);
  expect(textsOf(await server.pull(past))).toContain("instruments.ways");
});

test("the reading at the cursor over days and commits", async () => {
  const { title, markdown } = await ask<TimelineAnswer>("wayfile/timeline", { position: { line, character: 20 } });
  expect(title).toContain("Zs");
  expect(markdown).toMatch(/1\.90 Ω/);
  expect(markdown).toContain("not committed yet");
});

test.each([
  ["wayfile/past", { revision: "no-such" }],
  ["wayfile/past", { revision: "--output=x" }],
  ["wayfile/past", {}],
  ["wayfile/beside", { revision: 3 }],
  ["wayfile/timeline", {}],
  ["wayfile/past", { uri: "file:///etc/passwd", revision: "HEAD" }],
  ["wayfile/revisions", { uri: pathToFileURL(join(mkdtempSync(join(tmpdir(), "wayfile-past-")), "a.ways")).href }],
])("%s %j is answered in a sentence", async (method, question) => {
  await expect(ask(method, question)).rejects.toThrow(/\.$/);
});
