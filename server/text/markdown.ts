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

/** A sentence that marks words of the language with backticks, as those of the vocabulary do. */
export function prose(text: string): Markdown {
  const parts = text.split(/(`[^`\n]+`)/);
  return md.join(parts.map((part) => (/^`.*`$/.test(part) ? md.asItStands(visible(part)) : part)));
}

/** A picture that is part of the text itself. Any other address is refused: an editor would fetch it. */
export const picture = (title: string, image: string): Markdown =>
  /^data:image\/svg\+xml,[^\s()]*$/.test(image) ? md.asItStands(`![${md`${title}`.text}](${image})`) : md`${title}`;

/** Words that lead somewhere. The address cannot end the link, whatever its file is called. */
export const linkTo = (words: string, address: string): Markdown =>
  md.asItStands(
    `[${md`${words}`.text}](<${visible(address).replace(/[<>\\\s]/g, (sign) => encodeURIComponent(sign))}>)`,
  );

/** Lines as they are written. The fence is longer than any row of the same sign within, so that nothing can close it. */
export function fenced(language: "text" | "wayfile", text: string): Markdown {
  const longest = Math.max(0, ...[...text.matchAll(/`+/g)].map(([run]) => run.length));
  const fence = "`".repeat(Math.max(3, longest + 1));
  return md.asItStands(`${fence}${language}\n${visible(text.replaceAll("\r\n", "\n"))}\n${fence}`);
}

const signs: Readonly<Record<string, string>> = { "&amp;": "&", "&lt;": "<", "&gt;": ">" };

/** The same for an editor that shows no Markdown: the text as it was before it was escaped, without its marks. */
export const withoutMarks = (markdown: string): string =>
  markdown
    .replace(/^`{3,}\w*\n?/gm, "")
    .replace(/(?<!\\)\*/g, "")
    .replace(/\\([\\`*_{}[\]#|~+.)-])/g, "$1")
    .replace(/&(?:amp|lt|gt);/g, (entity) => signs[entity] ?? entity);
