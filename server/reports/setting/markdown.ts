/** A report as Markdown: for a preview in an editor, a pull request or a wiki. */
import { working } from "../../calc/result.ts";
import { imageOf } from "../drawings/cross-section.ts";
import { type Block, gapText, judgementText, type Report, sourceText, type Table } from "./document.ts";

export function reportMarkdown({ title, lead, sections, cautions }: Report): string {
  const parts = [
    `# ${plainly(title)}`,
    ...(lead.length > 0 ? [lead.map(plainly).join("  \n")] : []),
    ...sections.map(({ level, title: head, blocks }) =>
      [`${level === 1 ? "##" : "###"} ${plainly(head)}`, ...together(blocks)].join("\n\n"),
    ),
    "---",
    `*${plainly(cautions)}*`,
  ];
  return `${parts.join("\n\n")}\n`;
}

/** Judgements that follow each other are one list. */
function together(blocks: readonly Block[]): string[] {
  const parts: string[] = [];
  for (const [index, block] of blocks.entries()) {
    const text = blockText(block);
    const joins = block.kind === "judgement" && blocks[index - 1]?.kind === "judgement";
    if (joins) parts.push(`${parts.pop()}\n${text}`);
    else parts.push(text);
  }
  return parts;
}

function blockText(block: Block): string {
  switch (block.kind) {
    case "paragraph":
      return plainly(block.text);
    case "table":
      return tableText(block);
    case "figure":
      return `![${plainly(`${block.title}. ${block.description}`)}](${imageOf(block)})\n\n<small>${plainly(block.caption)}</small>`;
    case "gap":
      return `> ${plainly(gapText(block))}`;
    case "judgement":
      return `- ${block.verdict === "holds" ? "✓" : block.verdict === "fails" ? "**✗**" : "!"} ${plainly(judgementText(block))}`;
    case "calculation": {
      const { name, result, steps, source } = block;
      return [
        `**${plainly(name)}${result === "" ? "" : `: ${plainly(result)}`}**`,
        ...(steps.length > 0 ? [fenced(working(steps))] : []),
        ...(source ? [`<small>${plainly(sourceText(source))}</small>`] : []),
      ].join("\n\n");
    }
  }
}

/** The fence is longer than any row of the same sign within, so that nothing written can close it. */
function fenced(text: string): string {
  const longest = Math.max(0, ...[...text.matchAll(/`+/g)].map(([run]) => run.length));
  const fence = "`".repeat(Math.max(3, longest + 1));
  return `${fence}text\n${text}\n${fence}`;
}

function tableText({ head, rows }: Table): string {
  const line = (cells: readonly string[]): string => `| ${cells.map((cell) => plainly(cell) || " ").join(" | ")} |`;
  return [line(head), `|${head.map(() => " --- |").join("")}`, ...rows.map(line)].join("\n");
}

/** Signs that mean something in Markdown or HTML are shown as themselves. Line ends would break a row or a heading. */
const plainly = (text: string): string =>
  text
    .replace(/[\r\n\t]+/g, " ")
    .replace(/&/g, "&amp;")
    .replace(/</g, "&lt;")
    .replace(/>/g, "&gt;")
    .replace(/[\\`*_{}[\]#|~]/g, "\\$&")
    .replace(/^(\s*)([-+]|\d+(?=[.)]\s))/, "$1\\$2")
    .replace(/^(\s*)\\(?=\d)/, "$1");
