/** The register as one page that filters and sorts by itself: it fetches nothing, and runs its own script alone. */
import { html } from "../../text/html.ts";
import { sentence } from "../../text/words.ts";
import { type Listed, lapsesOf, registerCells, registerColumns } from "./register.ts";

/** Runs in the browser that shows the page. It reads cells as text and writes none. */
export const script = `
const rows = [...document.querySelectorAll("tbody tr")];
const filter = document.querySelector("input[type=search]");
const only = document.querySelector("input[type=checkbox]");
const shown = document.querySelector("output");
const apply = () => {
  const words = filter.value.toLowerCase().split(/\\s+/).filter(Boolean);
  let count = 0;
  for (const row of rows) {
    const text = row.textContent.toLowerCase();
    const hidden = !words.every((word) => text.includes(word)) || (only.checked && row.cells[3].textContent === "");
    row.hidden = hidden;
    if (!hidden) count++;
  }
  shown.textContent = count + " of " + rows.length;
};
filter.addEventListener("input", apply);
only.addEventListener("change", apply);
document.querySelectorAll("th button").forEach((button, column) => {
  let down = false;
  button.addEventListener("click", () => {
    down = !down;
    const value = (row) => row.cells[column].textContent;
    const compare = (a, b) => value(a).localeCompare(value(b), "en-GB", { numeric: true });
    rows.sort((a, b) => (down ? compare(a, b) : compare(b, a)));
    document.querySelector("tbody").append(...rows);
  });
});
document.querySelector("form").hidden = false;
apply();
`;

const style = `
body { font: 15px/1.4 system-ui, sans-serif; margin: 1.5rem; color: #111; background: #fff; }
form { display: flex; gap: 1.5rem; align-items: center; flex-wrap: wrap; margin: 1rem 0; }
form[hidden] { display: none; }
input[type=search] { font: inherit; padding: .3rem .5rem; min-width: 16rem; }
.scroll { overflow-x: auto; }
table { border-collapse: collapse; font-variant-numeric: tabular-nums; }
th, td { text-align: left; vertical-align: top; padding: .3rem .6rem; border-bottom: 1px solid #ccc; }
th button { font: inherit; font-weight: 600; background: none; border: 0; padding: 0; cursor: pointer; text-align: left; }
td:nth-child(4) { min-width: 14rem; }
tr.urgent td:nth-child(4) { font-weight: 600; }
@media print { form { display: none; } @page { size: A4 landscape; } body { margin: 0; font-size: 8pt; } }
`;

/** `scriptHash`: the SHA-256 of the script, base 64, by which the page lets it run and nothing else. */
export function registerPage(rows: readonly Listed[], today: string, scriptHash: string): string {
  const policy = `default-src 'none'; style-src 'unsafe-inline'; script-src 'sha256-${scriptHash}'; base-uri 'none'; form-action 'none'`;
  const head = registerColumns.map(
    ({ title, unit }) => html`<th scope="col"><button type="button">${title}${unit && ` (${unit})`}</button></th>`,
  );
  const body = rows.map((row) => {
    const cells = registerCells(row).map((text) => html`<td>${text}</td>`);
    return html`<tr${html.asItStands(row.attention.length > 0 ? ' class="urgent"' : "")}>${html.join(cells)}</tr>\n`;
  });
  return html`<!DOCTYPE html>
<html lang="en-GB">
<head>
<meta charset="utf-8">
<meta http-equiv="Content-Security-Policy" content="${html.asItStands(policy)}">
<meta name="viewport" content="width=device-width, initial-scale=1">
<title>Register of installations</title>
<style>${html.asItStands(style)}</style>
</head>
<body>
<h1>Register of installations</h1>
<p>${today}: ${rows.length} ${rows.length === 1 ? "installation" : "installations"}, the most urgent first. Days are compared with this one.</p>
<form hidden><label>Filter <input type="search"></label> <label><input type="checkbox"> only those that need attention</label> <output></output></form>
<div class="scroll">
<table>
<thead><tr>${html.join(head)}</tr></thead>
<tbody>
${html.join(body)}</tbody>
</table>
</div>
${html.join(lapsesOf(rows, today).map((lapse) => html`<p>${sentence(lapse)}</p>\n`))}<p>Help to a competent person, and never a certificate.</p>
<script>${html.asItStands(script)}</script>
</body>
</html>
`.text;
}
