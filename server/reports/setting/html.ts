/** A report as one HTML file that needs nothing else: to open, to print, to send along. */
import { working } from "../../calc/result.ts";
import { type Block, gapText, judgementText, type Report, sourceText, type Table } from "./document.ts";
import { escaped } from "./escaped.ts";
import { style } from "./style.ts";

export function reportHtml({ title, lead, sections, cautions }: Report): string {
  return `<!DOCTYPE html>
<html lang="en-GB">
<head>
<meta charset="utf-8">
<meta name="viewport" content="width=device-width, initial-scale=1">
<title>${escaped(title)}</title>
<style>
${style}</style>
</head>
<body>
<main>
<header>
<h1>${escaped(title)}</h1>
${lead.map((line) => `<p>${escaped(line)}</p>\n`).join("")}</header>
${sections.map(({ level, title: head, blocks }) => `<section class="level${level}">\n<h${level + 1}>${escaped(head)}</h${level + 1}>\n${blocks.map(blockHtml).join("")}</section>\n`).join("")}<footer><p>${escaped(cautions)}</p></footer>
</main>
</body>
</html>
`;
}

function blockHtml(block: Block): string {
  switch (block.kind) {
    case "paragraph":
      return `<p>${escaped(block.text)}</p>\n`;
    case "table":
      return tableHtml(block);
    case "figure":
      return `<figure>${block.svg}<figcaption>${escaped(block.caption)}</figcaption></figure>\n`;
    case "gap":
      return `<p class="gap">${escaped(gapText(block))}</p>\n`;
    case "judgement":
      return `<p class="judgement ${block.verdict}">${escaped(judgementText(block))}</p>\n`;
    case "calculation": {
      const { name, result, steps, source } = block;
      return [
        '<div class="calculation">\n',
        `<p class="figure"><span>${escaped(name)}</span>${result === "" ? "" : `<b>${escaped(result)}</b>`}</p>\n`,
        steps.length === 0
          ? ""
          : `<ol>\n${steps.map((one) => `<li>${escaped(working([one]))}</li>\n`).join("")}</ol>\n`,
        source ? `<p class="source">${escaped(sourceText(source))}</p>\n` : "",
        "</div>\n",
      ].join("");
    }
  }
}

function tableHtml({ head, rows }: Table): string {
  const row = (cells: readonly string[], tag: "th" | "td"): string =>
    `<tr>${cells.map((cell) => `<${tag}>${escaped(cell)}</${tag}>`).join("")}</tr>\n`;
  return `<table>\n<thead>\n${row(head, "th")}</thead>\n<tbody>\n${rows.map((cells) => row(cells, "td")).join("")}</tbody>\n</table>\n`;
}
