/** Which format a file's ending stands for, where no format is stated. */
import { extname } from "node:path";
import { listed } from "../text/words.ts";

/** A file without an ending, such as a device, is text; one that is not known is refused rather than filled with text. */
export function formatFor<Format extends string>(
  file: string | undefined,
  byEnding: Readonly<Record<string, Format>>,
): { readonly format: Format | "text" } | { readonly failure: string } {
  const ending = extname(file ?? "").toLowerCase();
  const format = ending === "" ? "text" : byEnding[ending];
  if (format !== undefined) return { format };
  return {
    failure: `“${file}” ends in none of ${listed(Object.keys(byEnding))}: choose one of these, or state a --format.`,
  };
}
