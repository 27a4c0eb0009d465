/** The finished files, as they are shipped: each is loaded once, is small enough, and nothing else is packed. */
import { execFileSync, spawn, spawnSync } from "node:child_process";
import { mkdtempSync, readdirSync, readFileSync, rmSync, statSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { listFiles, PackageManager } from "@vscode/vsce";
import { describe, expect, test } from "vitest";
import { createProtocolConnection, StreamMessageReader, StreamMessageWriter } from "vscode-languageserver/node";
import { serverFlags } from "../client/serverFlags.ts";
import { vocabulary } from "../grammar/vocabulary.ts";
import { pages } from "../server/rules/frame/catalogue.ts";
import { translatable } from "./build/manifest.ts";
import { runAt } from "./helpers/run-command.ts";

const root = join(import.meta.dirname, "..");
const manifest = JSON.parse(readFileSync(join(root, "package.json"), "utf8"));
const { version } = manifest;
const bundle = (name: string) => join(root, "dist", name);

/** Signs beyond the first 256, and others that a program read in another code would take for several. */
const signs = `wayfile 1
installation "Signs" {
  standard     BS 7671:2018+A2:2022
  stage        tested
  supply {
    earthing     TN-S
    Ze           0.30 Ω
  }
  board A "Café – hall" {
    fed-from     supply
    way 1 radial "Ofen, 30 ℃" {
      device       BS EN 60898 B16 6 kA
      cable        flat-twin line 2.5 mm² cpc 1.5 mm²
      length       12 m
      dead 2026-03-04 {
        temperature  20 ℃
        R1+R2        −0.30 Ω
        R2           ∞
        insulation   500 V  L-N ∞  L-E >999 MΩ
        polarity     ✓
      }
      live 2026-03-05 {
        Zs           0.6 Ω
        rcd          30 mA ½x no-trip
        rcd          30 mA 1× 24 ms
      }
    }
  }
}
`;

describe("bundles", () => {
  test.each([
    ["client.cjs", 500],
    ["page.js", 80],
    ["server.cjs", 5],
    ["wayfile.cjs", 5],
    ["pdf.cjs", 2100],
    ["tables.cjs", 200],
    ["web.cjs", 500],
  ])("%s stays under %i kB", (name, ceiling) => {
    expect(statSync(bundle(name)).size / 1000).toBeLessThan(ceiling);
  });

  test.each([
    ["server/main.cjs", 1350],
    ["wayfile/main.cjs", 1198],
    ["web-server/main.js", 1335],
  ])("%s, which is loaded before anything is asked for, stays under %i kB", (name, ceiling) => {
    expect(statSync(bundle(name)).size / 1000).toBeLessThan(ceiling);
  });

  test("what is compiled once a schedule was checked is kept, and what is damaged of it is not used", () => {
    const folder = mkdtempSync(join(tmpdir(), "wayfile-compiled-"));
    const schedule = join(folder, "a.ways");
    writeFileSync(schedule, 'wayfile 1\ninstallation "A" {\n}\n');
    const run = (...args: string[]) =>
      spawnSync(bundle("wayfile.cjs"), args, { encoding: "utf8", env: { ...process.env, WAYFILE_CACHE: folder } })
        .stdout;
    const kept = () => readdirSync(join(folder, "compiled")).filter((name) => /^[0-9a-f]{16}-/.test(name));
    run("--version");
    expect(kept()).toEqual([]);
    const first = run("check", "--no-cache", schedule);
    expect(first).toContain("1 file");
    const [name = "", ...others] = kept();
    expect(others).toEqual([]);
    const whole = readFileSync(join(folder, "compiled", name));
    expect(whole.length).toBeGreaterThan(100_000);
    // Another schedule has other functions run: what they are compiled to is added, by the first few starts.
    const fuller = join(folder, "b.ways");
    writeFileSync(fuller, signs);
    const sizes = Array.from({ length: 6 }, () => {
      run("check", "--no-cache", fuller);
      return readFileSync(join(folder, "compiled", name));
    });
    expect(sizes[0]?.length).toBeGreaterThan(whole.length * 1.1);
    expect(sizes.map((bytes) => bytes.readUInt8(4))).toEqual([2, 3, 4, 4, 4, 4]);
    expect(sizes[5]).toEqual(sizes[2]);
    const flipped = Buffer.from(whole);
    flipped.writeUInt8(flipped.readUInt8(5_000) ^ 255, 5_000);
    for (const damaged of [whole.subarray(0, 3), whole.subarray(0, 50_000), flipped]) {
      writeFileSync(join(folder, "compiled", name), damaged);
      expect(run("check", "--no-cache", schedule)).toBe(first);
      expect(readFileSync(join(folder, "compiled", name)).length).toBeGreaterThan(100_000);
    }
    rmSync(folder, { recursive: true });
  });

  test("what is compiled under other flags of V8 is kept beside it, and neither undoes the other", () => {
    const folder = mkdtempSync(join(tmpdir(), "wayfile-flags-"));
    const schedule = join(folder, "a.ways");
    writeFileSync(schedule, signs);
    const times = (...flags: string[]): number[] => {
      const args = [...flags, bundle("wayfile.cjs"), "check", "--no-cache", schedule];
      spawnSync(process.execPath, args, { env: { ...process.env, WAYFILE_CACHE: folder } });
      const names = readdirSync(join(folder, "compiled")).filter((name) => /^[0-9a-f]{16}-/.test(name));
      return names.map((name) => readFileSync(join(folder, "compiled", name)).readUInt8(4)).sort();
    };
    expect(times()).toEqual([1]);
    expect(times(...serverFlags)).toEqual([1, 1]);
    expect(times()).toEqual([1, 2]);
    expect(times(...serverFlags)).toEqual([2, 2]);
    rmSync(folder, { recursive: true });
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
    // What is still to be answered fails when the server is gone, and waits for nothing.
    void ended.then(() => connection.dispose());
    const { capabilities } = await connection.sendRequest<{ capabilities: Record<string, unknown> }>("initialize", {
      processId: process.pid,
      rootUri: null,
      capabilities: {},
    });
    expect(capabilities).toMatchObject({ hoverProvider: expect.anything() });
    await connection.sendNotification("initialized", {});
    const textDocument = { uri: "untitled:signs.ways", languageId: "wayfile", version: 1, text: signs };
    await connection.sendNotification("textDocument/didOpen", { textDocument });
    const line = signs.split("\n").findIndex((one) => one.includes("R1+R2"));
    const hover = await connection.sendRequest("textDocument/hover", {
      textDocument,
      position: { line, character: 9 },
    });
    expect(JSON.stringify(hover)).toContain("** — ");
    await connection.sendRequest("shutdown");
    await connection.sendNotification("exit");
    expect(await ended).toBe(0);
    connection.dispose();
  });

  test.each(["server", "wayfile"])("%s is read as one byte a sign", (name) => {
    expect(readFileSync(bundle(`${name}/main.cjs`), "latin1")).not.toMatch(/[^\p{ASCII}]/u);
  });

  test("the command line starts as a program of its own", () => {
    const output = execFileSync(bundle("wayfile.cjs"), ["--version"], { cwd: tmpdir(), encoding: "utf8" });
    expect(output).toContain(version);
  });

  test("the programs read every sign as their sources do", async () => {
    const folder = mkdtempSync(join(tmpdir(), "wayfile-signs-"));
    writeFileSync(join(folder, "signs.ways"), signs);
    const check = ["check", "--no-cache", "--format", "concise", "signs.ways"];
    const packed = spawnSync(process.execPath, [bundle("wayfile.cjs"), ...check], { cwd: folder, encoding: "utf8" });
    const own = await runAt(folder, {}, check);
    expect(own.out).toContain("“∞” loses the range");
    expect(packed.stdout).toBe(own.out);
    rmSync(folder, { recursive: true });
  });

  test("a program tells why a check matters, which it does not load before it is asked", () => {
    const { why } = pages.find(({ id }) => id === "loop/zs-over-limit") ?? { why: "" };
    const start = why.slice(0, 60);
    expect(start).toHaveLength(60);
    for (const program of ["server", "wayfile"])
      expect(readFileSync(bundle(`${program}/main.cjs`), "utf8")).not.toContain(start);
    const page = execFileSync(bundle("wayfile.cjs"), ["explain", "loop/zs-over-limit"], { encoding: "utf8" });
    expect(page).toContain(start);
  });

  test("a program tells what a word means, which it does not load before it is asked", () => {
    const start = vocabulary.way.diversity.means.slice(0, 30);
    expect(start).toHaveLength(30);
    for (const program of ["server", "wayfile"])
      expect(readFileSync(bundle(`${program}/main.cjs`), "utf8")).not.toContain(start);
    const page = execFileSync(bundle("wayfile.cjs"), ["explain", "diversity"], { encoding: "utf8" });
    expect(page.replace(/\s+/g, " ")).toContain(start);
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
      files.map((file) => file.replace(/^(dist\/(?:web-)?server\/)[\w.-]+-[A-Z0-9]{8}(\.c?js)$/, "$1part$2")),
    );
    expect([...named].sort()).toEqual([
      "LICENSE",
      "README.md",
      "client/guide/command-line.md",
      "client/guide/editor.md",
      "client/guide/git.md",
      "client/guide/language.md",
      "client/guide/papers.md",
      "client/guide/sizing.md",
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
      "dist/server/main.cjs",
      "dist/server/part.cjs",
      "dist/settings.schema.json",
      "dist/tables.cjs",
      "dist/third-party.txt",
      "dist/web-server/main.js",
      "dist/web-server/part.js",
      "dist/web.cjs",
      "grammar/generated/language-configuration.json",
      "grammar/generated/wayfile.tmLanguage.json",
      "package.json",
    ]);
  });

  test("a view that is empty says so, and what can be done about it", () => {
    const { views, viewsWelcome, commands } = manifest.contributes;
    const ids = Object.values<{ id: string }[]>(views).flatMap((list) => list.map(({ id }) => id));
    expect(viewsWelcome.map(({ view }: { view: string }) => view)).toEqual(ids);
    const offered = JSON.stringify(viewsWelcome).match(/(?<=command:)[\w.]+/g) ?? [];
    const known = commands.map(({ command }: { command: string }) => command);
    expect(offered.length).toBeGreaterThan(0);
    expect(offered.filter((command) => !known.includes(command))).toEqual([]);
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
