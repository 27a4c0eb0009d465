/** The typeface of papers: free, narrow, and with every sign of the trade. In the bundle the files are part of it. */
import { readFileSync } from "node:fs";
import { createRequire } from "node:module";
import { plainFont } from "./font-tables.ts";

const file = (name: string): Uint8Array =>
  plainFont(readFileSync(createRequire(import.meta.url).resolve(`dejavu-fonts-ttf/ttf/${name}.ttf`)));

export type FontName = "plain" | "bold" | "slanted";

export const fontFiles: Readonly<Record<FontName, () => Uint8Array>> = {
  plain: () => file("DejaVuSansCondensed"),
  bold: () => file("DejaVuSansCondensed-Bold"),
  slanted: () => file("DejaVuSansCondensed-Oblique"),
};
