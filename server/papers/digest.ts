import { createHash } from "node:crypto";
import { type Document, textOf } from "../syntax/document.ts";

/** What distinguishes one state of a schedule, with all it uses, from others. */
export function digestOf(files: readonly { readonly document: Document }[]): string {
  const hash = createHash("sha256");
  for (const { document } of files) hash.update(textOf(document)).update("\0");
  return hash.digest("hex").slice(0, 12);
}
