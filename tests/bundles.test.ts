/** The finished files, as they are shipped: each is loaded once, is small enough, and nothing else is packed. */
import { execFileSync, spawn } from "node:child_process";
import { mkdtempSync, readFileSync, rmSync, statSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { listFiles, PackageManager } from "@vscode/vsce";
import { describe, expect, test } from "vitest";
import { createProtocolConnection, StreamMessageReader, StreamMessageWriter } from "vscode-languageserver/node";
import { translatable } from "./build/manifest.ts";

const root = join(import.meta.dirname, "..");
const manifest = JSON.parse(readFileSync(join(root, "package.json"), "utf8"));
const { version } = manifest;
const bundle = (name: string) => join(root, "dist", name);

describe("bundles", () => {
  test.each([
    ["client.cjs", 500],
    ["page.js", 80],
    ["server.cjs", 5],
    ["wayfile.cjs", 5],
    ["pdf.cjs", 2100],
    ["tables.cjs", 200],
    ["web.cjs", 500],
    ["web-server.js", 1720],
  ])("%s stays under %i kB", (name, ceiling) => {
    expect(statSync(bundle(name)).size / 1000).toBeLessThan(ceiling);
  });

  test.each([
    ["server", 1480],
    ["wayfile", 1340],
  ])("%s loads less than %i kB before it is asked for anything", (name, ceiling) => {
    expect(loadedAtOnce(name) / 1000).toBeLessThan(ceiling);
  });

  test("the client loads with nothing but the editor's API beside it", () => {
    const { exported, foreign } = JSON.parse(
      node("--eval", `(${loadClient})(${JSON.stringify(bundle("client.cjs"))})`),
    );
    expect(exported).toEqual(["activate", "deactivate"]);
    expect(foreign).toEqual([]);
  });

  test("the server starts, answers and ends over stdio", async () => {
    // From a folder without node_modules, so that it cannot lean on ours.
    const server = spawn(process.execPath, [bundle("server.cjs"), "--stdio"], { cwd: tmpdir() });
    const ended = new Promise<number | null>((resolve) => server.once("exit", resolve));
    const connection = createProtocolConnection(
      new StreamMessageReader(server.stdout),
      new StreamMessageWriter(server.stdin),
    );
    connection.listen();
    const { capabilities } = await connection.sendRequest<{ capabilities: Record<string, unknown> }>("initialize", {
      processId: process.pid,
      rootUri: null,
      capabilities: {},
    });
    expect(capabilities).toMatchObject({ hoverProvider: expect.anything() });
    await connection.sendNotification("initialized", {});
    await connection.sendRequest("shutdown");
    await connection.sendNotification("exit");
    expect(await ended).toBe(0);
    connection.dispose();
  });

  test("the command line starts as a program of its own", () => {
    const output = execFileSync(bundle("wayfile.cjs"), ["--version"], { cwd: tmpdir(), encoding: "utf8" });
    expect(output).toContain(version);
  });

  test("papers are set by parts of their own, far from this package", () => {
    const folder = mkdtempSync(join(tmpdir(), "wayfile-papers-"));
    writeFileSync(
      join(folder, "a.ways"),
      'wayfile 1\ninstallation "A" {\n  board A "B" {\n    way 1 radial "Ω"\n  }\n}\n',
    );
    for (const [name, magic] of [
      ["a.pdf", "%PDF-"],
      ["a.xlsx", "PK"],
    ] as const) {
      execFileSync(bundle("wayfile.cjs"), ["schedule", "a.ways", "-o", name], { cwd: folder });
      expect(readFileSync(join(folder, name), "latin1")).toMatch(new RegExp(`^${magic}`));
    }
    const back = execFileSync(bundle("wayfile.cjs"), ["enter", "a.ways", "a.xlsx"], { cwd: folder, encoding: "utf8" });
    expect(back).toBe("No new reading is entered.\n");
    rmSync(folder, { recursive: true });
  });

  test("the licences of all that is bundled are there", () => {
    const text = readFileSync(bundle("third-party.txt"), "utf8");
    for (const name of ["vscode-languageclient", "vscode-languageserver", "chevrotain", "pdfkit", "dejavu-fonts-ttf"]) {
      expect(text).toMatch(new RegExp(`^${name} [\\d.]+ \\(`, "m"));
    }
  });

  test("what is packed is what an editor needs", async () => {
    const files = await listFiles({ cwd: root, packageManager: PackageManager.None });
    const named = new Set(
      files.map((file) => file.replace(/^(dist\/server\/)[\w.-]+-[A-Z0-9]{8}\.mjs$/, "$1part.mjs")),
    );
    expect([...named].sort()).toEqual([
      "LICENSE",
      "README.md",
      "client/l10n/bundle.l10n.de.json",
      "client/l10n/bundle.l10n.json",
      "client/l10n/manifest.de.json",
      "client/media/editor.png",
      "client/media/file-dark.svg",
      "client/media/file-light.svg",
      "client/media/icon.png",
      "client/media/icon.svg",
      "client/media/sample.ways",
      "client/media/walk-check.svg",
      "client/media/walk-paper.svg",
      "client/media/walk-text.svg",
      "dist/checks.json",
      "dist/client.cjs",
      "dist/page.css",
      "dist/page.js",
      "dist/pdf.cjs",
      "dist/server.cjs",
      "dist/server/main.mjs",
      "dist/server/part.mjs",
      "dist/settings.schema.json",
      "dist/tables.cjs",
      "dist/third-party.txt",
      "dist/web-server.js",
      "dist/web.cjs",
      "grammar/generated/language-configuration.json",
      "grammar/generated/wayfile.tmLanguage.json",
      "package.json",
    ]);
  });

  test("what the manifest shows can be translated, and what is translated is still there", () => {
    const { keyed, english } = translatable(manifest);
    expect(keyed.contributes).toMatchObject({
      commands: expect.arrayContaining([
        expect.objectContaining({ command: "wayfile.size", title: "%commands.wayfile.size.title%" }),
      ]),
    });
    const back = JSON.stringify(keyed.contributes).replace(/%([\w.]+)%/g, (_, key) =>
      JSON.stringify(english[key]).slice(1, -1),
    );
    expect(JSON.parse(back)).toEqual(manifest.contributes);
    const german = JSON.parse(readFileSync(join(root, "client/l10n/manifest.de.json"), "utf8"));
    expect(Object.keys(german).filter((text) => !Object.values(english).includes(text))).toEqual([]);
  });
});

/** Bytes of a program's entry and of all parts that it imports at once. */
const parts = /(?:from|import)\s?"\.\/([\w.-]+\.mjs)"/g;

function loadedAtOnce(program: string): number {
  const seen = new Set<string>();
  const visit = (file: string): number => {
    if (seen.has(file)) return 0;
    seen.add(file);
    const text = readFileSync(join(bundle(program), file), "utf8");
    // The command line's first file does nothing but load its own part, or that of a thread.
    const first =
      file === "main.mjs" && program === "wayfile" ? /(?:from|import)\s?\(?"\.\/((?!worker)[\w.-]+\.mjs)"/g : parts;
    const needed = [...text.matchAll(first)].map(([, part = ""]) => part);
    return needed.reduce((sum, part) => sum + visit(part), Buffer.byteLength(text));
  };
  const bytes = visit("main.mjs");
  expect(seen.size).toBeGreaterThan(1);
  return bytes;
}

const node = (...args: string[]) => execFileSync(process.execPath, args, { cwd: tmpdir(), encoding: "utf8" });

/**
 * Runs in a Node of its own, from its source text. Lends the client a `vscode` in which everything is a class, since
 * the client library derives classes from the editor's as it loads.
 */
const loadClient = `(file) => {
  const Module = require("node:module");
  const anything = new Proxy(class {}, { get: (target, key) => (key in target ? target[key] : anything) });
  const load = Module._load;
  const foreign = [];
  Module._load = (request, ...rest) => {
    if (request === "vscode") return anything;
    if (request !== file && !Module.isBuiltin(request)) foreign.push(request);
    return load(request, ...rest);
  };
  const exported = Object.keys(require(file)).sort();
  console.log(JSON.stringify({ exported, foreign }));
}`;
