/** Lines of a file that is not held whole. */
import { mkdtempSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { afterAll, expect, it } from "vitest";
import { linesIn } from "../../server/disk/lines.ts";

const folder = mkdtempSync(join(tmpdir(), "wayfile-lines-"));
afterAll(() => rmSync(folder, { recursive: true, force: true }));

const long = "Ω".repeat(400_000);
it.each([
  ["empty", ""],
  ["one line", "a\n"],
  ["one that does not end", "a\nb"],
  ["blank ones", "\n\na\n\n"],
  ["lines longer than a piece, whose signs lie across its ends", `x${long}\n${long}\nxyz${long}`],
  ["many", Array.from({ length: 90_000 }, (_, index) => `${index} Ω`).join("\n")],
  ["other ends", "a\u2028b\r\nc\n"],
])("of %s are what stands between the line ends, again and again", (name, text) => {
  const path = join(folder, name);
  writeFileSync(path, text);
  const lines = linesIn(path);
  // What follows the last line end is no line.
  const wanted = text.replace(/\n$/, "").split("\n");
  for (let round = 0; round < 2; round++) expect([...lines()]).toEqual(text === "" ? [] : wanted);
});

it("of a file that is left before its end are read again from the first", () => {
  const path = join(folder, "left");
  writeFileSync(path, "a\nb\n");
  const lines = linesIn(path);
  for (const line of lines()) {
    expect(line).toBe("a");
    break;
  }
  expect([...lines()]).toEqual(["a", "b"]);
});
