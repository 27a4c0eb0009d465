/** A report as Markdown: for a preview in an editor, a pull request or a wiki. */
import { working } from "../../calc/result.ts";
import { fenced, type Markdown, md, picture } from "../../text/markdown.ts";
import {
  type Block,
  type Grid,
  gapText,
  imprintText,
  judgementText,
  type Report,
  type Signatures,
  sourceText,
  type Table,
} from "./document.ts";
import { imageOf } from "./picture.ts";
import { cellText } from "./plain-cell.ts";

export function reportMarkdown({ title, lead, sections, cautions, imprint }: Report): string {
  const parts = [
    md`# ${title}`,
    ...(lead.length > 0 ? [md.join(lead, "  \n")] : []),
    ...sections.map(({ level, title: head, blocks }) =>
      md.join([level === 1 ? md`## ${head}` : md`### ${head}`, ...together(blocks)], "\n\n"),
    ),
    md`---`,
    ...(cautions === "" ? [] : [md`*${cautions}*`]),
    ...(imprint ? [md`<small>${imprintText(imprint)}</small>`] : []),
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
    case "grid":
      return gridText(block);
    case "particulars":
      return md.join(
        block.rows.map(([name, fact]) => md`- ${name}: ${fact}`),
        "\n",
      );
    case "signatures":
      return signaturesText(block);
    case "caution":
      return md`> **Caution.** ${block.text}`;
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

/** Bands have no place in a table of Markdown: each heading stands for itself, with its unit. */
function gridText({ bands, rows, notes }: Grid): Markdown {
  const head = bands.flatMap(({ columns }) =>
    columns.map(({ title, unit }) => (unit === "" ? title : `${title}, ${unit}`)),
  );
  const grid = tableText({ kind: "table", head, rows: rows.map((row) => row.map(cellText)) });
  return notes.length === 0
    ? grid
    : md.join(
        [
          grid,
          md.join(
            notes.map((note, at) => md`${String(at + 1)}) ${note}`),
            "  \n",
          ),
        ],
        "\n\n",
      );
}

const signaturesText = ({ rows }: Signatures): Markdown =>
  md.join(
    rows.map(
      ({ role, name, on }) =>
        md`**${role}** ${name === "" ? "____________________" : name}, signature ____________________ date ${on === "" ? "____________" : on}`,
    ),
    "  \n",
  );
