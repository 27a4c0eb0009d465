/** What the extension says is ready to be translated: each text stands in the bundle, and a translation has its places. */
import { globSync, readFileSync } from "node:fs";
import { join } from "node:path";
import { describe, expect, it } from "vitest";
import { format } from "../../server/format/format.ts";
import { openSample } from "../helpers/cursor.ts";

const client = join(import.meta.dirname, "../../client");
const bundle = (name: string): Readonly<Record<string, string>> =>
  JSON.parse(readFileSync(join(client, "l10n", name), "utf8"));

describe("translations", () => {
  const texts = globSync("*.ts", { cwd: client }).flatMap((file) =>
    [...readFileSync(join(client, file), "utf8").matchAll(/l10n\.t\(\s*"((?:[^"\\]|\\.)*)"/g)].map(([, text]) => text),
  );

  it("begin from every text of the extension", () => {
    expect(Object.keys(bundle("bundle.l10n.json")).sort()).toEqual([...new Set(texts)].sort());
  });

  it.each(globSync("bundle.l10n.*.json", { cwd: join(client, "l10n") }))("%s has their places", (name) => {
    for (const [text, translated] of Object.entries(bundle(name))) {
      expect(texts).toContain(text);
      expect(translated.match(/\{\d\}/g)).toEqual(text.match(/\{\d\}/g));
    }
  });
});

describe("the sample of the walkthrough", () => {
  const text = readFileSync(join(client, "media/sample.ways"), "utf8");

  it("is in the one style and has two readings that are not as they should be", async () => {
    expect(format(text)).toBeUndefined();
    const { snapshot } = await openSample(text);
    const found = snapshot.findings.filter(({ severity }) => severity !== "information").map(({ check }) => check);
    expect(found.sort()).toEqual(["insulation/below-minimum", "loop/relies-on-rcd", "loop/zs-disagrees"]);
  });
});
