// The language server with Emacs and eglot for a client, over stdio: a client that takes plain text alone and asks
// for less than others. Prints `N passed, N failed`, and writes the same as JSON to $WAYFILE_TESTS_RESULT, if set.
//   node tests/editor/emacs.mjs
import assert from "node:assert/strict";
import { spawnSync } from "node:child_process";
import { cpSync, globSync, mkdtempSync, readFileSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { verdict } from "./launcher/lib/verdict.mjs";

const root = join(import.meta.dirname, "../..");
// A copy, since a file that is open is locked beside itself; and a home of its own.
const temporary = mkdtempSync(join(tmpdir(), "wayfile-emacs-"));
cpSync(join(root, "examples"), join(temporary, "examples"), { recursive: true });
const [file] = globSync("examples/**/*faulty*.ways", { cwd: temporary }).sort().reverse();
if (!file) throw new Error("No faulty example to open.");
const text = readFileSync(join(temporary, file), "utf8");
const lines = text.split("\n");
const reading = lines.findIndex((line) => /^\s*Zs\s+\d/.test(line));

const { status, stdout, stderr, error } = spawnSync(
  "emacs",
  ["--batch", "--eval", "(package-initialize)", "-l", join(import.meta.dirname, "launcher/emacs-client.el")],
  {
    encoding: "utf8",
    timeout: 180_000,
    maxBuffer: 64_000_000,
    env: {
      ...process.env,
      HOME: temporary,
      WAYFILE_ASK: JSON.stringify({
        file: join(temporary, file),
        command: [process.execPath, join(root, "dist/server.cjs"), "--stdio"],
        hover: [reading + 1, lines[reading].search(/\d/) + 1],
        completion: [reading + 1, lines[reading].search(/\S/) + 2],
      }),
    },
  },
);
rmSync(temporary, { recursive: true, force: true, maxRetries: 5 });
if (error) throw error;
if (status !== 0) throw new Error(`Emacs ended with ${status}: ${stdout}${stderr}`);
const answer = JSON.parse(stdout.trim().split("\n").at(-1));

const checks = {
  "findings where the text has them": () => {
    assert.ok(answer.diagnostics.length > 10, `${answer.diagnostics.length} findings`);
    assert.ok(
      answer.diagnostics.some(({ line, text: words }) => line === reading + 1 && /Zs .* is above /.test(words)),
    );
  },
  "a hover in plain text, with no marks of a layout": () => {
    const { kind, value } = answer.hover.contents;
    assert.equal(kind, "plaintext");
    assert.match(value, /limit, hot: [\d.]+ Ω/);
    assert.doesNotMatch(value, /\*\*|```|^- \*|\]\(/m);
  },
  "completion of a word": () => {
    const items = answer.completion.items ?? answer.completion;
    assert.ok(items.some(({ label }) => label === "Zs"));
  },
  "an outline with every way": () => {
    const names = JSON.stringify(answer.symbols);
    for (const [, title] of text.matchAll(/^\s*way [^\n"]*"([^"\n]+)"/gm)) assert.ok(names.includes(title), title);
  },
  "a file that is laid out stays as it is": () => assert.equal(answer.formatted, text),
};

verdict(checks);
