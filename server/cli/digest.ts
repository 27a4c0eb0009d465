import { createHash } from "node:crypto";
import { textOf } from "../syntax/document.ts";
import type { LoadedFile } from "../workspace/project.ts";

/** What tells one state of a schedule, with all it uses, from others. */
export function digestOf(files: readonly LoadedFile[]): string {
  const hash = createHash("sha256");
  for (const { document } of files) hash.update(textOf(document)).update("\0");
  return hash.digest("hex").slice(0, 12);
}
