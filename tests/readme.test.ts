import { existsSync, globSync, readFileSync } from "node:fs";
import { dirname, join } from "node:path";
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

const root = join(import.meta.dirname, "..");
const guides = globSync("client/guide/*.md", { cwd: root });

/** The names that links may give to the headings of a document. */
const anchorsOf = (text: string) =>
  [...text.matchAll(/^#+ (.*)$/gm)].map(([, heading = ""]) =>
    heading
      .toLowerCase()
      .replace(/[^a-z0-9 -]/g, "")
      .replaceAll(" ", "-"),
  );

it.each(["README.md", ...guides])("what %s leads to is there", (path) => {
  const text = readFileSync(join(root, path), "utf8");
  const links = [...text.matchAll(/\]\(([^)\s]*)\)/g)].map(([, target = ""]) => target);
  const lost = links.filter((link) => {
    const [file = "", anchor] = link.split("#");
    const target = file === "" ? path : join(dirname(path), file);
    if (!existsSync(join(root, target))) return true;
    return anchor !== undefined && !anchorsOf(readFileSync(join(root, target), "utf8")).includes(anchor);
  });
  expect(lost).toEqual([]);
});

it("the README leads to every guide", () => {
  expect(guides.length).toBeGreaterThan(5);
  expect(guides.filter((path) => !readme.includes(`](${path})`))).toEqual([]);
});

it("the README opens with the job in one paragraph", () => {
  const [title, , paragraph = ""] = readme.split("\n");
  expect(title).toBe("# Wayfile");
  expect(paragraph).toMatch(/^Whoever answers for electrical circuits/);
});
