import { readFileSync } from "node:fs";
import { expect, it } from "vitest";
import { format } from "../server/format/format.ts";
import { findingsOf } from "./helpers/sample.ts";

const readme = readFileSync(`${import.meta.dirname}/../README.md`, "utf8");
const sample = /```\n(wayfile 1\ninstrument.*?)```/s.exec(readme)?.[1] ?? "";

it("the schedule in the README is sound and in the one style", () => {
  expect(sample).toContain("way 3 ring");
  expect(findingsOf(sample)).toEqual([]);
  expect(format(sample)?.text ?? sample).toBe(sample);
});

it("the first five minutes find what the README says, and the correction it names clears it", () => {
  const first = /```\n(wayfile 1\n\ninstallation "Garden workshop".*?)```/s.exec(readme)?.[1] ?? "";
  const shown = /^error {2}design\/socket-radial-cable\n(.*)$/m.exec(readme)?.[1];
  expect(format(first)?.text ?? first).toBe(first);
  expect(findingsOf(first).map(({ message }) => message)).toEqual([shown]);
  expect(findingsOf(first.replace("B32", "B20"))).toEqual([]);
  expect(findingsOf(first.replace(/stage +design/, "stage tested")).length).toBeGreaterThan(3);
});

it("what the contents of the README lead to is there", () => {
  const headings = [...readme.matchAll(/^#+ (.*)$/gm)].map(([, heading = ""]) =>
    heading
      .toLowerCase()
      .replace(/[^a-z0-9 -]/g, "")
      .replaceAll(" ", "-"),
  );
  const links = [...readme.matchAll(/\]\(#([^)]*)\)/g)].map(([, target = ""]) => target);
  expect(links.length).toBeGreaterThan(8);
  expect(links.filter((link) => !headings.includes(link))).toEqual([]);
});

it("the README opens with the job in one paragraph", () => {
  const [title, , paragraph = ""] = readme.split("\n");
  expect(title).toBe("# Wayfile");
  expect(paragraph).toMatch(/^Whoever answers for electrical circuits/);
});
