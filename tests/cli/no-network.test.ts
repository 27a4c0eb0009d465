/** Nothing needs a network: all works where there is none, and nothing so much as asks for one. */
import { spawnSync } from "node:child_process";
import { existsSync, readFileSync } from "node:fs";
import { join } from "node:path";
import { expect, it } from "vitest";
import { viewKinds } from "../../server/views/kinds.ts";
import { loft } from "../helpers/cursor.ts";
import { builtProgram, bundled } from "../helpers/program.ts";
import { TestRepository } from "../helpers/repository.ts";
import { pulling, startServer } from "../helpers/server.ts";
import { Folder } from "./run.ts";

const doors = join(import.meta.dirname, "../helpers/no-network.cjs");
const tell = "net.connect";

/** Where a program that is built for a test finds the letters of a PDF, which are shipped beside it. */
const letters = { NODE_PATH: join(import.meta.dirname, "../../node_modules") };

/** Addresses wherever a schedule holds text, and where it names a file. */
const plain = loft.replaceAll('"Loft board"', '"https://nowhere.invalid/a.png"');
const tempting = plain.replace(
  "wayfile 1\n",
  'wayfile 1\nuse "https://nowhere.invalid/b.ways"\nuse "//nowhere.invalid/share/c.ways"\n',
);

/** Every command there is, each as it does the most. */
const commands: readonly (readonly string[])[] = [
  ["check", "--no-cache", "tempting.ways"],
  ["check", "--no-cache", "--since", "HEAD", "--format", "sarif"],
  ["check", "--staged"],
  ["check", "--history", "--no-cache", "a.ways"],
  ["check", "--no-cache", "--shard", "1/1", "--format", "jsonl", "--output-file", "part.jsonl"],
  ["gather", "part.jsonl"],
  ["fmt", "--diff", "a.ways"],
  ["explain", "loop/zs-over-limit"],
  ["schedule", "a.ways", "-o", "a.xlsx"],
  ["schedule", "tempting.ways", "-o", "a.html"],
  ["schedule", "tempting.ways", "-o", "schedule.pdf"],
  ["worksheet", "a.ways", "-o", "worksheet.pdf"],
  ["working", "a.ways", "-o", "working.pdf"],
  ["enter", "a.ways", "a.xlsx", "--dry-run"],
  ["worksheet", "a.ways", "--fill", "-o", "a.html"],
  ["inspection", "a.ways", "--format", "markdown"],
  ["working", "a.ways", "-o", "w.md"],
  ["summary", "a.ways", "--format", "html"],
  ["editions", "a.ways"],
  ["size", "a.ways", "--way", "A/3"],
  ["register", "--no-cache", "--format", "html"],
  ["compare", "HEAD", "a.ways"],
  ["history", "a.ways"],
  ["merge", "--stdout", "a.ways", "a.ways", "tempting.ways"],
  ["git", "textconv", "tempting.ways"],
  ["git", "setup", "--dry-run"],
  ["settings"],
  ["schema", "settings"],
  ["completion", "bash"],
];

/** Whether a namespace without any network can be made here. */
const canUnshare = spawnSync("unshare", ["-rn", "true"]).status === 0;

it("the doors that are shut are shut", () => {
  const knocks = new Folder({}).at("knocks");
  const asked = spawnSync(process.execPath, ["--require", doors, "--eval", 'require("net").connect(9, "127.0.0.1")'], {
    env: { ...process.env, WAYFILE_KNOCKS: knocks },
  });
  expect(asked.status).not.toBe(0);
  expect(readFileSync(knocks, "utf8")).toContain(tell);
});

it("every command works without a network, and asks for none", async () => {
  const repository = new TestRepository();
  repository.commit("As built", { "a.ways": plain, "tempting.ways": tempting });
  const program = await builtProgram();
  const knocks = new Folder({}).at("knocks");
  for (const command of commands) {
    const node = [process.execPath, "--require", doors, program, ...command];
    const [file = "", ...args] = canUnshare ? ["unshare", "-rn", ...node] : node;
    const { status, stderr } = spawnSync(file, args, {
      cwd: repository.folder,
      encoding: "utf8",
      env: { ...process.env, ...letters, WAYFILE_KNOCKS: knocks },
    });
    // What is no inspection has no paper of one; what stands in a schedule that is not there is told.
    expect({ command, isDone: [0, 1, 2].includes(status ?? -1), stderr }).toEqual({
      command,
      isDone: true,
      stderr: expect.not.stringMatching(/network|its own fault/),
    });
  }
  expect(existsSync(knocks) ? readFileSync(knocks, "utf8") : "").toBe("");
  for (const paper of ["schedule", "worksheet", "working"])
    expect(readFileSync(join(repository.folder, `${paper}.pdf`), "latin1")).toMatch(/^%PDF-/);
  repository.end();
  // A command that is added is tried here too.
  const { stdout } = spawnSync(process.execPath, [program, "--help"], { encoding: "utf8" });
  const [, listed = ""] = /^Commands:\n([\s\S]*?)^Exit codes/m.exec(stdout) ?? [];
  const all = [...listed.matchAll(/^ {2}([a-z]+)\b/gm)].map(([, name]) => name ?? "");
  expect(all).toContain("check");
  const untried = all.filter((name) => !commands.some(([tried]) => tried === name));
  expect(untried).toEqual(["serve", "help"].filter((name) => all.includes(name)));
});

it("the server works without a network, and asks for none", async () => {
  const folder = new Folder({ "a.ways": tempting });
  const knocks = folder.at("knocks");
  const server = await startServer({
    capabilities: pulling,
    folder: `file://${folder.path}`,
    command: ["--require", doors, await bundled("server/main.node.ts")],
    env: { ...letters, WAYFILE_KNOCKS: knocks },
  });
  const uri = `file://${folder.at("a.ways")}`;
  await server.open(uri, tempting);
  const { items = [] } = await server.pull(uri);
  expect(items.filter(({ code }) => code === "language/use-missing")).toHaveLength(2);
  const textDocument = { uri };
  for (const method of ["hover", "documentLink", "documentSymbol", "definition"])
    await server.connection.sendRequest(`textDocument/${method}`, {
      textDocument,
      position: { line: 1, character: 7 },
    });
  for (const kind of ["working", "summary"]) await server.connection.sendRequest("wayfile/report", { uri, kind });
  for (const format of ["html", "xlsx", "pdf"])
    await server.connection.sendRequest("wayfile/paper", { uri, paper: "schedule", format });
  for (const view of viewKinds) await server.connection.sendRequest("wayfile/view", { uri, view });
  await server.connection.sendRequest("wayfile/register", {});
  for (const method of ["wayfile/revisions", "wayfile/past", "wayfile/beside"])
    await server.connection.sendRequest(method, { uri, revision: "HEAD" }).catch(({ message }) => {
      expect(message).toContain("git repository");
    });
  expect(await server.stop()).toBe(0);
  expect(existsSync(knocks) ? readFileSync(knocks, "utf8") : "").toBe("");
});
