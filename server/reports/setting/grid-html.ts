/** A grid as an HTML table: bands over columns, headings on every page, a figure never parted from its number. */
import { type Html, html } from "../../text/html.ts";
import type { Cell, Column, Grid } from "./document.ts";
import { unbroken } from "./wrap.ts";

export function gridHtml({ bands, rows, notes }: Grid): Html {
  const columns = bands.flatMap(({ columns: own }) => own.map((column, at) => ({ column, first: at === 0 })));
  const bandRow = bands.map(
    ({ title, columns: own }) => html`<th class="first" colspan="${own.length}" scope="colgroup">${title}</th>`,
  );
  const headRow = columns.map(({ column, first }) => headHtml(column, first));
  const bodyRows = rows.map(
    (row) =>
      html`<tr>${html.join(
        columns.map(({ column, first }, at) => cellHtml(row[at] ?? { text: "", kind: "nothing" }, column, first)),
      )}</tr>\n`,
  );
  const list = notes.map((note) => html`<li>${unbroken(note)}</li>\n`);
  return html.join([
    html`<div class="grid">\n<table>\n<thead>\n<tr class="band">${html.join(bandRow)}</tr>\n<tr>${html.join(headRow)}</tr>\n</thead>\n`,
    html`<tbody>\n${html.join(bodyRows)}</tbody>\n</table>\n</div>\n`,
    notes.length === 0 ? "" : html`<ol class="notes">\n${html.join(list)}</ol>\n`,
  ]);
}

const classes = (...names: readonly (string | false | undefined)[]): string => names.filter(Boolean).join(" ");

function headHtml({ title, unit, wraps }: Column, first: boolean): Html {
  const shown = unit === "" ? "" : html`<span class="unit">${unit}</span>`;
  return html`<th class="${classes(first && "first", wraps && "wraps")}" scope="col">${title}${shown}</th>`;
}

function cellHtml({ text, kind, mark, last }: Cell, { wraps }: Column, first: boolean): Html {
  const number = mark === undefined ? "" : html`<sup>${mark}</sup>`;
  const before = last === undefined ? "" : html` <small>${last}</small>`;
  return html`<td class="${classes(kind, first && "first", wraps && "wraps")}">${unbroken(text)}${number}${before}</td>`;
}
