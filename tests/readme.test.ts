import { readFileSync } from "node:fs";
import { expect, it } from "vitest";
import { format } from "../server/format/format.ts";
import { findingsOf } from "./helpers/sample.ts";

const readme = readFileSync(`${import.meta.dirname}/../README.md`, "utf8");
const sample = /```\n(wayfile 1\n.*?)```/s.exec(readme)?.[1] ?? "";

it("the schedule in the README is sound and in the one style", () => {
  expect(sample).toContain("way 3 ring");
  expect(findingsOf(sample)).toEqual([]);
  expect(format(sample)?.text ?? sample).toBe(sample);
});

it("the README opens with the job in one paragraph", () => {
  const [title, , paragraph = ""] = readme.split("\n");
  expect(title).toBe("# Wayfile");
  expect(paragraph).toMatch(/^Whoever answers for electrical circuits/);
});
