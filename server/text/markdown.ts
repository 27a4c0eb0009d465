/** Text for Markdown. */
import { type Ready, writerOf } from "./ready.ts";
import { visible } from "./visible.ts";

export type Markdown = Ready<"markdown">;

/** Signs that mean something in Markdown or HTML are shown as themselves. Line ends would break a row or a heading. */
export const md = writerOf("markdown", (text) =>
  visible(text.replace(/[\r\n\t]+/g, " "))
    .replace(/&/g, "&amp;")
    .replace(/</g, "&lt;")
    .replace(/>/g, "&gt;")
    .replace(/[\\`*_{}[\]#|~]/g, "\\$&")
    .replace(/^(\s*)([-+])/, "$1\\$2")
    .replace(/^(\s*\d+)([.)])(?=\s)/, "$1\\$2"),
);

/** Lines as they are written. The fence is longer than any row of the same sign within, so that nothing can close it. */
export function fenced(language: "text" | "wayfile", text: string): Markdown {
  const longest = Math.max(0, ...[...text.matchAll(/`+/g)].map(([run]) => run.length));
  const fence = "`".repeat(Math.max(3, longest + 1));
  return md.asItStands(`${fence}${language}\n${visible(text.replaceAll("\r\n", "\n"))}\n${fence}`);
}
