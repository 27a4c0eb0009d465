import { globSync, readFileSync } from "node:fs";
import { expect, test } from "vitest";
import { lex } from "../../grammar/lexer.ts";
import { format } from "../../server/format/format.ts";
import { rules } from "../../server/rules/list.ts";
import { inSetting } from "../helpers/sample.ts";
import { meaningOf } from "./helpers.ts";

const root = `${import.meta.dirname}/../..`;
const examples = globSync("examples/**/*.ways", { cwd: root }).map((file): [string, string] => [
  file,
  readFileSync(`${root}/${file}`, "utf8"),
]);
const samples = rules.flatMap(({ id, examples: shown }) =>
  shown.flatMap(({ bad, good, setting }, index): [string, string][] => [
    [`${id} ${index} bad`, inSetting(bad.replace(/^[ \t]*\^[\^ ]*$/gm, ""), setting).text],
    [`${id} ${index} good`, inSetting(good, setting).text],
  ]),
);

/** Every token, in no order: what a formatter may move but not lose. */
const tokensOf = (text: string): string[] =>
  [...lex(text).tokens, ...lex(text).comments]
    .map(({ image }) => image.replace(/\s+/g, ""))
    .filter((image) => image !== "")
    .sort();

test.each(samples)("%s says the same when it is formatted", (_, text) => {
  // Without its indentation none is in the one style, so that nothing comes back only where a text is refused.
  const flat = text.replace(/^[ \t]+/gm, "");
  const result = format(flat);
  if (!result) throw new Error("No sample of ours is refused.");
  expect(format(result.text)).toBeUndefined();
  expect(meaningOf(result.text)).toBe(meaningOf(text));
  expect(tokensOf(result.text)).toEqual(tokensOf(text));
});

test.each(examples)("%s is in the one style", (_, text) => {
  expect(format(text)?.text ?? text).toBe(text);
});
