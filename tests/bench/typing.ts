/**
 * How calm a way is while it is typed: each way of the examples is taken out and typed again key by key, as an editor
 * would have it (brackets and quotes close themselves), and the findings are pulled after each key.
 * `node tests/bench/typing.ts [ways]`, with the number of ways of each example to type; 3 if left out.
 */
import { globSync, readFileSync } from "node:fs";
import { join } from "node:path";
import { pathToFileURL } from "node:url";
import type { Diagnostic } from "vscode-languageserver/node";
import { pulling, startServer } from "../helpers/server.ts";

const root = join(import.meta.dirname, "../..");
const most = Number(process.argv[2] ?? 3);
const only = new RegExp(process.argv[3] ?? ".");
const examples = globSync("examples/**/*.ways", { cwd: root }).filter(
  (path) => !/faulty|shared/.test(path) && only.test(path),
);

interface Tally {
  states: number;
  redHere: number;
  redElsewhere: number;
  missing: number;
}

const sorts = process.argv[4] === undefined ? [false, true] : [process.argv[4] === "calm"];
for (const calm of sorts) {
  const tally: Tally = { states: 0, redHere: 0, redElsewhere: 0, missing: 0 };
  for (const path of examples) await typeWays(path, calm, tally);
  const share = (count: number) => `${((100 * count) / tally.states).toFixed(1)} %`;
  console.log(
    `${calm ? "with the cursor known" : "as in any editor"}: ${tally.states} states, ` +
      `an error on the line being typed in ${share(tally.redHere)}, on another line in ${share(tally.redElsewhere)}, ` +
      `something “missing” in the block being typed in ${share(tally.missing)}`,
  );
}

async function typeWays(path: string, calm: boolean, tally: Tally): Promise<void> {
  const text = readFileSync(join(root, path), "utf8");
  const lines = text.split("\n");
  const starts = lines.flatMap((line, at) => (/^\s*way .*\{\s*$/.test(line) ? [at] : [])).slice(0, most);
  const server = await startServer({
    capabilities: pulling,
    folder: pathToFileURL(root).href,
    initializationOptions: calm ? { cursor: true } : {},
  });
  const uri = pathToFileURL(join(root, path)).href;
  for (const first of starts) {
    const indent = /^\s*/.exec(lines[first] ?? "")?.[0] ?? "";
    const last = lines.findIndex((line, at) => at > first && line === `${indent}}`);
    const before = `${lines.slice(0, first).join("\n")}\n`;
    const after = `\n${lines.slice(last + 1).join("\n")}`;
    await server.open(uri, before + after);
    const known = new Set((await pull()).map(nameOf));
    let version = 1;
    let at = { line: first, character: 0 };
    for (const { insert, move } of keysOf(lines.slice(first, last + 1))) {
      if (insert !== "") {
        await server.change(uri, ++version, [{ range: { start: at, end: at }, text: insert }]);
      }
      at = moved(at, move);
      await server.connection.sendNotification("wayfile/cursor", { uri, line: at.line, rests: false });
      const found = (await pull()).filter((one) => !known.has(nameOf(one)));
      tally.states++;
      const red = found.filter(({ severity }) => severity === 1);
      if (red.some(({ range }) => range.start.line <= at.line && at.line <= range.end.line)) tally.redHere++;
      if (red.some(({ range }) => range.start.line > at.line || at.line > range.end.line)) tally.redElsewhere++;
      if (found.some(({ code }) => /missing|\/no-|not-stated/.test(String(code)))) tally.missing++;
    }
    await server.connection.sendNotification("textDocument/didClose", { textDocument: { uri } });
  }
  await server.stop();

  async function pull(): Promise<readonly Diagnostic[]> {
    return (await server.pull(uri)).items ?? [];
  }
}

function nameOf({ code, message }: Diagnostic): string {
  return `${code} ${message}`;
}

interface Key {
  readonly insert: string;
  /** How far the cursor goes: signs of this line, or lines with their column. */
  readonly move: { readonly lines: number; readonly character: number };
}

/** The keys of some lines: the closing sign of a pair comes with the opening one, and is stepped over. */
function* keysOf(lines: readonly string[]): Generator<Key> {
  const closers: string[] = [];
  for (const [index, line] of lines.entries()) {
    const body = line.trimStart();
    const indent = line.length - body.length;
    if (index > 0 && body === "}") {
      // The brace stands there already: one line down.
      yield { insert: "", move: { lines: 1, character: line.length } };
      continue;
    }
    if (index > 0) {
      const opened = lines[index - 1]?.endsWith("{");
      const under = " ".repeat(Math.max(0, indent - 2));
      yield {
        insert: `\n${" ".repeat(indent)}${opened ? `\n${under}` : ""}`,
        move: { lines: 1, character: indent },
      };
    } else yield { insert: " ".repeat(indent), move: { lines: 0, character: indent } };
    for (const sign of body) {
      if (closers.at(-1) === sign) {
        closers.pop();
        yield { insert: "", move: { lines: 0, character: 1 } };
      } else if (sign === '"') {
        closers.push('"');
        yield { insert: '""', move: { lines: 0, character: 1 } };
      } else yield { insert: sign === "{" ? "{}" : sign, move: { lines: 0, character: 1 } };
    }
  }
}

function moved({ line, character }: { line: number; character: number }, { lines, character: by }: Key["move"]) {
  return lines === 0 ? { line, character: character + by } : { line: line + lines, character: by };
}
