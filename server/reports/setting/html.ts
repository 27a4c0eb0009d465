/** A report as one HTML file that needs nothing else: to open, to print, to send along. */
import { working } from "../../calc/result.ts";
import { type Html, html } from "../../text/html.ts";
import {
  type Block,
  type Calculation,
  gapText,
  imprintText,
  judgementText,
  type Particulars,
  type Report,
  type Signatures,
  sourceText,
  type Table,
} from "./document.ts";
import { gridHtml } from "./grid-html.ts";
import { pageStyle, style } from "./style.ts";
import { unbroken } from "./wrap.ts";

/** A page that was sent along may hold what a stranger wrote: it runs nothing and fetches nothing, whoever opens it. */
const policy = "default-src 'none'; style-src 'unsafe-inline'; img-src data:; base-uri 'none'; form-action 'none'";

export function reportHtml(report: Report): string {
  const { title, lead, sections, cautions, imprint, turned, close } = report;
  const note = cautions === "" ? "" : html`<p>${cautions}</p>`;
  const footer = html`<footer${html.asItStands(cautions === "" ? ' class="imprint"' : "")}>${note}${imprint ? html`\n<p class="imprint">${imprintText(imprint)}</p>` : ""}</footer>\n`;
  return html`<!DOCTYPE html>
<html lang="en-GB">
<head>
<meta charset="utf-8">
<meta http-equiv="Content-Security-Policy" content="${html.asItStands(policy)}">
<meta name="viewport" content="width=device-width, initial-scale=1">
<title>${title}</title>
<style>
${html.asItStands(style)}${html.asItStands(pageStyle(report))}</style>
</head>
<body>
<main${html.asItStands(turned || close ? ` class="${turned ?? "close"}"` : "")}>
<header>
<h1>${title}</h1>
${html.join(lead.map((line) => html`<p>${line}</p>\n`))}</header>
${html.join(sections.map(sectionHtml))}${cautions === "" && !imprint ? "" : footer}</main>
</body>
</html>
`.text;
}

function sectionHtml({ level, title, blocks, turned }: Report["sections"][number]): Html {
  const head = level === 1 ? html`<h2>${title}</h2>` : html`<h3>${title}</h3>`;
  return html`<section class="level${level}${turned ? " landscape" : ""}">\n${head}\n${html.join(blocks.map(blockHtml))}</section>\n`;
}

function blockHtml(block: Block): Html {
  switch (block.kind) {
    case "paragraph":
      return html`<p>${wordsHtml(block.text)}</p>\n`;
    case "table":
      return tableHtml(block);
    case "figure":
      return html`<figure>${block.svg}<figcaption>${block.caption}</figcaption></figure>\n`;
    case "grid":
      return gridHtml(block);
    case "particulars":
      return particularsHtml(block);
    case "signatures":
      return signaturesHtml(block);
    case "caution":
      return html`<p class="caution">${block.text}</p>\n`;
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
  const bodyRows = rows.map(
    (cells) => html`<tr>${html.join(cells.map((cell) => html`<td>${wordsHtml(cell)}</td>`))}</tr>\n`,
  );
  return html`<table>\n<thead>\n${headRow}</thead>\n<tbody>\n${html.join(bodyRows)}</tbody>\n</table>\n`;
}

const day = /\d{4}-\d{2}-\d{2}/g;

/** Words with what does not break in them: a figure from its unit, a day at its strokes. */
function wordsHtml(text: string): Html {
  const days = text.match(day) ?? [];
  return html.join(
    text
      .split(day)
      .map((piece, at) => html`${unbroken(piece)}${days[at] === undefined ? "" : html`<time>${days[at]}</time>`}`),
  );
}

const particularsHtml = ({ rows }: Particulars): Html =>
  html`<dl>\n${html.join(rows.map(([name, fact]) => html`<div><dt>${name}</dt><dd>${wordsHtml(fact)}</dd></div>\n`))}</dl>\n`;

const signaturesHtml = ({ rows }: Signatures): Html =>
  html`<div class="signatures">\n${html.join(
    rows.map(
      ({ role, name, on }) =>
        html`<p><b>${role}</b> <span>${name}</span> <span class="line"><i>signature</i><u></u></span> <span class="when"><i>date</i> ${on === "" ? html`<u class="day"></u>` : html`<time>${on}</time>`}</span></p>\n`,
    ),
  )}</div>\n`;
