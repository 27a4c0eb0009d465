/**
 * Writes the conformance suite anew: `node tests/conformance/write.ts`. Read the difference before it is committed: the
 * suite says what the language is, and this program only what it does.
 */
import { writeFileSync } from "node:fs";
import path from "node:path";
import { groups } from "./inputs.ts";
import { type Outcome, outcomeOf } from "./outcome.ts";

const folder = path.join(import.meta.dirname, "../../grammar/conformance");

/** One row a statement or fact, so that a difference shows what changed. */
function rows(items: readonly object[]): string {
  return items.length === 0
    ? "[]"
    : `[\n${items.map((item) => `        ${JSON.stringify(item)}`).join(",\n")}\n      ]`;
}

const caseText = (name: string, text: string, { tree, facts, errors }: Outcome): string =>
  [
    "    {",
    `      "name": ${JSON.stringify(name)},`,
    `      "text": ${JSON.stringify(text)},`,
    `      "tree": ${rows(tree)},`,
    `      "facts": ${rows(facts)},`,
    `      "errors": ${rows(errors)}`,
    "    }",
  ].join("\n");

for (const [group, cases] of Object.entries(groups)) {
  const texts = cases.map(({ name, text }) => caseText(name, text, outcomeOf(text)));
  writeFileSync(path.join(folder, `${group}.json`), `{\n  "version": 1,\n  "cases": [\n${texts.join(",\n")}\n  ]\n}\n`);
  console.log(`${group}: ${cases.length}`);
}
