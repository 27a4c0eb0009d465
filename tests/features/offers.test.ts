/** What completion offers as the next word of a line is taken by the language: over the lines of every example. */
import { readdirSync, readFileSync } from "node:fs";
import { join } from "node:path";
import { expect, it } from "vitest";
import { endOf, lex } from "../../grammar/lexer.ts";
import { rowOf } from "../../grammar/vocabulary.ts";
import { complete } from "../../server/features/completion.ts";
import { type Cursor, contextAt } from "../../server/features/cursor.ts";
import { bindArguments } from "../../server/model/arguments.ts";
import type { Snapshot } from "../../server/workspace/workspace.ts";
import { openSample } from "../helpers/cursor.ts";

const root = join(import.meta.dirname, "../../examples");
const examples = readdirSync(root, { recursive: true, encoding: "utf8" }).filter((path) =>
  /(?<!faulty)\.ways$/.test(path),
);

/** What a rough time needs behind it is a year, and without it is refused. */
const unfinished = ["about", "before", "after"];

/** Offers for the end of a line that the language does not take there. */
function refused(snapshot: Snapshot, cursor: Cursor, line: string): string[] {
  const [first] = lex(line).tokens;
  const row = first && rowOf(contextAt(snapshot, cursor).around.kind, first.image);
  if (!row) return [];
  const offers = complete(snapshot, cursor).filter(
    ({ kind, label }) => (kind === "choice" || kind === "label") && !unfinished.includes(label),
  );
  return offers.flatMap(({ text }) => {
    const [word, ...tokens] = lex(`${line} ${text}`).tokens;
    const problems = word ? bindArguments(word, row, tokens).problems : [];
    return problems.some(({ check, end }) => check === "wrong-argument" && end > line.length)
      ? [`${line} ${text}`]
      : [];
  });
}

it("behind every argument of every line", async () => {
  const seen = new Set<string>();
  const wrong: string[] = [];
  for (const path of examples) {
    const text = readFileSync(join(root, path), "utf8");
    const lines = text.split("\n");
    for (const [index, whole] of lines.entries()) {
      const line = whole.replace(/\s*#.*/, "");
      if (/[{}]/.test(line)) continue;
      const { tokens } = lex(line);
      for (const [count, token] of tokens.entries()) {
        const shape = tokens
          .slice(0, count + 1)
          .map((one) => (one.tokenType.name === "Word" ? one.image : one.tokenType.name));
        if (seen.has(shape.join(" "))) continue;
        seen.add(shape.join(" "));
        const head = line.slice(0, endOf(token));
        const { snapshot } = await openSample(lines.with(index, `${head} `).join("\n"));
        const cursor = snapshot.positions.at({ line: index, character: head.length + 1 });
        if (cursor) wrong.push(...refused(snapshot, cursor, head));
      }
    }
  }
  expect(seen.size).toBeGreaterThan(500);
  expect(wrong).toEqual([]);
});
