import { readFileSync } from "node:fs";
import { expect, test } from "vitest";
import { outputs } from "../../grammar/outputs.ts";

test.each(outputs())("%s is up to date", (file, text) => {
  expect(readFileSync(`${import.meta.dirname}/../../${file}`, "utf8"), "run `npm run generate`").toBe(text);
});

test.each(outputs().filter(([file]) => file.endsWith(".json")))("%s is JSON", (_, text) => {
  expect(Object.keys(JSON.parse(text)).length).toBeGreaterThan(2);
});
