// The language server with Neovim for a client, over stdio: what a second editor
// sees, with no line of the extension between. Prints `N passed, N failed`, and
// writes the same as JSON to $WAYFILE_TESTS_RESULT, if set.
//   node tests/editor/nvim.mjs
import assert from "node:assert/strict";
import { spawnSync } from "node:child_process";
import { globSync, mkdirSync, readFileSync } from "node:fs";
import { join } from "node:path";
import { verdict } from "./launcher/lib/verdict.mjs";

const root = join(import.meta.dirname, "../..");
const server = join(root, "dist/server.cjs");
const script = join(import.meta.dirname, "launcher/nvim-client.lua");
const [file] = globSync("examples/**/*faulty*.ways", { cwd: root }).sort().reverse();
if (!file) throw new Error("No faulty example to open.");
const text = readFileSync(join(root, file), "utf8");
const lines = text.split("\n");

/** Where to ask: at the first measured loop impedance, and in a way that is put before the first. */
const reading = lines.findIndex((line) => /^\s*Zs\s+\d/.test(line));
const way = lines.findIndex((line) => /^\s*way .*\{/.test(line));
const insert = ['  way 99 radial "Unfinished" {', "    d", "  }"];

// No user's configuration, and a folder for Neovim's own files that is ours.
const state = join(root, ".build/nvim");
mkdirSync(state, { recursive: true });
const { status, stdout, stderr, error } = spawnSync("nvim", ["--headless", "--clean", "-n", "-S", script], {
  encoding: "utf8",
  timeout: 60_000,
  maxBuffer: 64_000_000,
  env: {
    ...process.env,
    XDG_STATE_HOME: state,
    XDG_CACHE_HOME: state,
    WAYFILE_ASK: JSON.stringify({
      file: join(root, file),
      command: [process.execPath, server, "--stdio"],
      hover: [reading + 1, lines[reading].search(/\d/) + 1],
      insertAfter: way,
      insert,
      completion: [way + 2, insert[1].length + 1],
    }),
  },
});
if (error) throw error;
if (status !== 0) throw new Error(`Neovim ended with ${status}: ${stdout}${stderr}`);
const answer = JSON.parse(stdout.trim().split("\n").at(-1));

const checks = {
  "an answer to every request": () => assert.deepEqual(answer.errors, {}),
  "diagnostics, each with our name and a rule's": () => {
    assert.ok(answer.diagnostics.length > 0);
    for (const { source, code, message, range } of answer.diagnostics) {
      assert.equal(source, "wayfile", message);
      assert.match(code, /^[a-z][a-z-]*\/[a-z0-9][a-z0-9-]*$/, message);
      assert.ok(range.start.line < lines.length);
    }
  },
  "a hover that says what a reading is compared with": () => {
    const { contents } = answer.hover;
    assert.match(contents.value ?? contents, /limit|maximum|at most|≤/i);
  },
  "completion of the word that was begun": () => {
    const items = answer.completion.items ?? answer.completion;
    assert.ok(
      items.some(({ label }) => label === "device"),
      JSON.stringify(items.map(({ label }) => label)),
    );
  },
  "an outline with every way": () => {
    const names = JSON.stringify(answer.symbols);
    for (const [, id, title] of text.matchAll(/^\s*way (\S+)[^\n"]*(?:"([^"\n]+)")?/gm)) {
      assert.ok(names.includes(title ?? id), title ?? id);
    }
  },
  "folding ranges": () => assert.ok(answer.folding.length > 0),
  "an answer to the request for fixes": () => assert.ok(Array.isArray(answer.codeActions)),
  "diagnostics of the text after an edit": () => {
    assert.ok(answer.diagnosticsAfterEdit.some(({ range }) => range.start.line === way + 1));
  },
  "a formatted text with all comments, and nothing left to format": () => {
    const comments = (some) => some.match(/#.*$/gm) ?? [];
    assert.deepEqual(comments(answer.formatted), comments(text));
    assert.ok(/^ {2}\S/m.test(answer.formatted), "blocks are indented");
    assert.equal((answer.formattingAgain ?? []).length, 0);
  },
  "an end in good order": () => assert.deepEqual(answer.exit, { code: 0, signal: 0 }),
};

const failed = verdict(checks);
if (failed > 0 && answer.messages.length > 0) console.log("The server said:", answer.messages.join("\n"));
