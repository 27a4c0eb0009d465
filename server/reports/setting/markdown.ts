/** A report as Markdown: for a preview in an editor, a pull request or a wiki. */
import { working } from "../../calc/result.ts";
import { fenced, type Markdown, md, picture } from "../../text/markdown.ts";
import { imageOf } from "../drawings/cross-section.ts";
import { type Block, gapText, judgementText, type Report, sourceText, type Table } from "./document.ts";

export function reportMarkdown({ title, lead, sections, cautions }: Report): string {
  const parts = [
    md`# ${title}`,
    ...(lead.length > 0 ? [md.join(lead, "  \n")] : []),
    ...sections.map(({ level, title: head, blocks }) =>
      md.join([level === 1 ? md`## ${head}` : md`### ${head}`, ...together(blocks)], "\n\n"),
    ),
    md`---`,
    md`*${cautions}*`,
  ];
  return md`${md.join(parts, "\n\n")}\n`.text;
}

/** Judgements that follow each other are one list. */
function together(blocks: readonly Block[]): Markdown[] {
  const parts: Markdown[] = [];
  for (const [index, block] of blocks.entries()) {
    const text = blockText(block);
    const joins = block.kind === "judgement" && blocks[index - 1]?.kind === "judgement";
    const last = joins ? parts.pop() : undefined;
    parts.push(last ? md`${last}\n${text}` : text);
  }
  return parts;
}

const verdictSigns = { holds: md`✓`, fails: md`**✗**`, unproven: md`~`, advises: md`!` } as const;

function blockText(block: Block): Markdown {
  switch (block.kind) {
    case "paragraph":
      return md`${block.text}`;
    case "table":
      return tableText(block);
    case "figure":
      return md`${picture(`${block.title}. ${block.description}`, imageOf(block))}\n\n<small>${block.caption}</small>`;
    case "gap":
      return md`> ${gapText(block)}`;
    case "judgement":
      return md`- ${verdictSigns[block.verdict]} ${judgementText(block)}`;
    case "calculation": {
      const { name, result, steps, source } = block;
      const parts = [
        md`**${name}${result === "" ? "" : md`: ${result}`}**`,
        ...(steps.length > 0 ? [fenced("text", working(steps))] : []),
        ...(source ? [md`<small>${sourceText(source)}</small>`] : []),
      ];
      return md.join(parts, "\n\n");
    }
  }
}

function tableText({ head, rows }: Table): Markdown {
  const line = (cells: readonly string[]): Markdown =>
    md`| ${md.join(
      cells.map((cell) => cell.trim() || " "),
      " | ",
    )} |`;
  const rule = head.map(() => md` --- |`);
  return md.join([line(head), md`|${md.join(rule)}`, ...rows.map(line)], "\n");
}
