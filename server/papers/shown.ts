import { unbroken } from "../reports/setting/wrap.ts";

/** Control signs have no shape on paper, and no text moves what stands round it; a figure keeps to its unit. */
export const shown = (text: string): string =>
  unbroken(text.replace(/[\p{Cc}\p{Cf}\p{Surrogate}]/gu, (sign) => (sign === "\n" || sign === "\t" ? " " : "�")));
