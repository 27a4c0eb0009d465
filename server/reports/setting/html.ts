/** A report as one HTML file that needs nothing else: to open, to print, to send along. */
import { working } from "../../calc/result.ts";
import { type Html, html } from "../../text/html.ts";
import {
  type Block,
  type Calculation,
  gapText,
  judgementText,
  type Report,
  sourceText,
  type Table,
} from "./document.ts";
import { style } from "./style.ts";

/** A page that was sent along may hold what a stranger wrote: it runs nothing and fetches nothing, whoever opens it. */
const policy = "default-src 'none'; style-src 'unsafe-inline'; img-src data:; base-uri 'none'; form-action 'none'";

export function reportHtml({ title, lead, sections, cautions }: Report): string {
  return html`<!DOCTYPE html>
<html lang="en-GB">
<head>
<meta charset="utf-8">
<meta http-equiv="Content-Security-Policy" content="${html.asItStands(policy)}">
<meta name="viewport" content="width=device-width, initial-scale=1">
<title>${title}</title>
<style>
${html.asItStands(style)}</style>
</head>
<body>
<main>
<header>
<h1>${title}</h1>
${html.join(lead.map((line) => html`<p>${line}</p>\n`))}</header>
${html.join(sections.map(sectionHtml))}<footer><p>${cautions}</p></footer>
</main>
</body>
</html>
`.text;
}

function sectionHtml({ level, title, blocks }: Report["sections"][number]): Html {
  const head = level === 1 ? html`<h2>${title}</h2>` : html`<h3>${title}</h3>`;
  return html`<section class="level${level}">\n${head}\n${html.join(blocks.map(blockHtml))}</section>\n`;
}

function blockHtml(block: Block): Html {
  switch (block.kind) {
    case "paragraph":
      return html`<p>${block.text}</p>\n`;
    case "table":
      return tableHtml(block);
    case "figure":
      return html`<figure>${block.svg}<figcaption>${block.caption}</figcaption></figure>\n`;
    case "gap":
      return html`<p class="gap">${gapText(block)}</p>\n`;
    case "judgement":
      return html`<p class="judgement ${block.verdict}">${judgementText(block)}</p>\n`;
    case "calculation":
      return calculationHtml(block);
  }
}

function calculationHtml({ name, result, steps, source }: Calculation): Html {
  const items = steps.map((one) => html`<li>${working([one])}</li>\n`);
  return html.join([
    html`<div class="calculation">\n`,
    html`<p class="figure"><span>${name}</span>${result === "" ? "" : html`<b>${result}</b>`}</p>\n`,
    items.length === 0 ? "" : html`<ol>\n${html.join(items)}</ol>\n`,
    source ? html`<p class="source">${sourceText(source)}</p>\n` : "",
    html`</div>\n`,
  ]);
}

function tableHtml({ head, rows }: Table): Html {
  const headRow = html`<tr>${html.join(head.map((cell) => html`<th>${cell}</th>`))}</tr>\n`;
  const bodyRows = rows.map((cells) => html`<tr>${html.join(cells.map((cell) => html`<td>${cell}</td>`))}</tr>\n`);
  return html`<table>\n<thead>\n${headRow}</thead>\n<tbody>\n${html.join(bodyRows)}</tbody>\n</table>\n`;
}
