import { readFileSync } from "node:fs";
import { createRequire } from "node:module";
import { expect, test } from "vitest";
import { plainFont } from "../../server/papers/font-tables.ts";

const path = createRequire(import.meta.url).resolve("dejavu-fonts-ttf/ttf/DejaVuSans.ttf");

/** The tables of an OpenType file by their tags, as its directory lists them. */
function tablesOf(bytes: Uint8Array): ReadonlyMap<string, Buffer> {
  const file = Buffer.from(bytes);
  return new Map(
    Array.from({ length: file.readUInt16BE(4) }, (_, at) => {
      const start = 12 + 16 * at;
      const [offset, length] = [file.readUInt32BE(start + 8), file.readUInt32BE(start + 12)];
      return [file.toString("latin1", start, start + 4), file.subarray(offset, offset + length)];
    }),
  );
}

test("a plain typeface lists no ligatures and no kerning, and all else as it was", () => {
  const whole = readFileSync(path);
  const [before, after] = [tablesOf(whole), tablesOf(plainFont(whole))];
  for (const tag of ["GSUB", "GPOS", "kern"])
    expect([tag, before.has(tag), after.has(tag)]).toEqual([tag, true, false]);
  for (const tag of ["cmap", "glyf", "head", "hhea", "hmtx", "loca", "maxp"])
    expect([tag, before.get(tag)?.equals(after.get(tag) ?? Buffer.alloc(0))]).toEqual([tag, true]);
});
