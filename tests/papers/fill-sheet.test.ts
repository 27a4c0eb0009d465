/** The sheet to fill in, as a browser reads it. */
import { createHash } from "node:crypto";
import { expect, test } from "vitest";
import { installationsOf } from "../../server/model/installation.ts";
import { fillSheetHtml } from "../../server/papers/fill-sheet.ts";
import { paperOf } from "../../server/papers/paper.ts";
import { fileOfText } from "../../server/workspace/loaded-file.ts";

const title = "Mill </script><!-- <b>&amp;\u2028\u2029 ‘Ω’";
const text = `wayfile 1
installation "${title}" {
  standard BS 7671:2018+A2:2022
  stage installed
  board A "Main" {
    way 1 radial "Lights" {
      device BS EN 60898 B6 6 kA
    }
  }
}`;
const installations = installationsOf([fileOfText("a.ways", text)]);
const [installation] = installations;
const page = installation ? fillSheetHtml(installation, "a.ways", "digest") : "";
const insideOf = (tag: RegExp): string[] => [...page.matchAll(tag)].map(([, inside = ""]) => inside);

test("holds what a hostile title says to the letter, and no title ends its script", () => {
  const [data = "", ...others] = insideOf(/<script type="application\/json"[^>]*>(.*?)<\/script>/gs);
  expect(others).toEqual([]);
  expect(JSON.parse(data)).toMatchObject({ title: expect.stringContaining(title), file: "a.ways", base: "digest" });
  expect(data).not.toMatch(/[<\u2028\u2029]/);
});

test("allows the one script and the one style that are in it, by their hashes", () => {
  const hashed = (source: string): string => `'sha256-${createHash("sha256").update(source).digest("base64")}'`;
  const [policy = ""] = insideOf(/Content-Security-Policy" content="([^"]*)"/g);
  const scripts = insideOf(/<script>(.*?)<\/script>/gs);
  const styles = insideOf(/<style>(.*?)<\/style>/gs);
  expect([scripts.length, styles.length]).toEqual([1, 1]);
  expect(policy.replaceAll("&#39;", "'")).toBe(
    `default-src 'none'; script-src ${scripts.map(hashed)}; style-src ${styles.map(hashed)}; base-uri 'none'; form-action 'none'`,
  );
});

test.each(["schedule", "inspection", "sheet"] as const)("a file without an installation has no %s", async (paper) => {
  const imprint = { file: "a.ways", printed: "2026-05-04", digest: "" };
  const made = await paperOf({ paper, format: "html" }, [], () => [], imprint);
  expect(made).toEqual({
    failure: "There is no installation in this file, so there is nothing to judge its circuits by.",
  });
});
