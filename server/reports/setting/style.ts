import type { Report } from "./document.ts";

/** The look of a printed report: black on white, one typeface of the system, room for a pen in the margin. */
export const style = `:root { color-scheme: light dark; --ink: #1c1c1a; --soft: #5d5d57; --line: #c9c8c0; --paper: #fdfdfb; --bad: #9c1f1f; --open: #7a5500; --tint: #f3dcdc; }
@media (prefers-color-scheme: dark) {
  :root { --ink: #e9e8e2; --soft: #a7a69e; --line: #494842; --paper: #1b1b19; --bad: #ff9a8f; --open: #e8bf6a; --tint: #5a2f2f; }
}
body { margin: 0; background: var(--paper); color: var(--ink); font: 15px/1.5 system-ui, sans-serif; }
main { max-width: 46rem; margin: 0 auto; padding: 2.5rem 1.5rem 4rem; }
header { border-bottom: 2px solid var(--ink); margin-bottom: 1.5rem; }
h1 { font-size: 1.5rem; line-height: 1.25; margin: 0 0 .5rem; overflow-wrap: anywhere; }
h2 { font-size: 1.2rem; margin: 2.5rem 0 .5rem; overflow-wrap: anywhere; }
h3 { font-size: 1rem; margin: 1.75rem 0 .5rem; padding-bottom: .15rem; border-bottom: 1px solid var(--line); }
p { margin: .35rem 0; overflow-wrap: anywhere; }
header p, .source, footer { color: var(--soft); font-size: .85rem; }
.calculation { margin: .8rem 0; }
.figure { display: flex; justify-content: space-between; gap: 1rem; }
.figure b { white-space: nowrap; }
ol { list-style: none; margin: .2rem 0 .2rem 1.2rem; padding: 0; }
li { font: .85rem/1.55 ui-monospace, monospace; overflow-wrap: anywhere; }
.source { margin-left: 1.2rem; }
.judgement { padding-left: 1.4rem; text-indent: -1.4rem; }
.judgement::before { content: "✓"; display: inline-block; width: 1.4rem; text-indent: 0; }
.fails { color: var(--bad); font-weight: 600; }
.fails::before { content: "✗"; }
.unproven { color: var(--open); font-weight: 600; }
.unproven::before { content: "~"; }
.advises { color: var(--open); }
.advises::before { content: "!"; }
.gap { color: var(--open); border-left: 3px solid var(--open); padding-left: .8rem; }
table { border-collapse: collapse; width: 100%; margin: .7rem 0; font-size: .9rem; }
th, td { text-align: left; vertical-align: top; padding: .25rem .8rem .25rem 0; border-bottom: 1px solid var(--line); overflow-wrap: break-word; }
th { font-weight: 600; color: var(--soft); }
.caution { border: 2px solid var(--ink); padding: .5rem .8rem; font-weight: 600; }
dl { display: flex; flex-wrap: wrap; gap: .15rem 1.6rem; margin: .6rem 0; }
dl div { display: flex; gap: .5rem; break-inside: avoid; }
dt { color: var(--soft); font-size: .85em; white-space: nowrap; padding-top: .1em; }
dd { margin: 0; overflow-wrap: break-word; min-width: 0; font-weight: 600; }
.signatures p { display: flex; flex-wrap: wrap; align-items: baseline; gap: .5rem; margin: 1.4rem 0 0; break-inside: avoid; }
.signatures .line { flex: 1 1 12rem; display: flex; align-items: baseline; gap: .5rem; }
.signatures .when { display: flex; align-items: baseline; gap: .5rem; white-space: nowrap; }
time { white-space: nowrap; }
.signatures i { color: var(--soft); font-style: normal; font-size: .85rem; }
.signatures u { flex: 1 1 6rem; border-bottom: 1px solid var(--ink); text-decoration: none; }
.signatures u.day { flex: none; width: 7rem; }
.landscape { max-width: 72rem; }
.grid { overflow-x: auto; }
.grid table { font-size: .8rem; font-variant-numeric: tabular-nums; line-height: 1.25; }
.grid th, .grid td { padding: .22rem .3rem; white-space: nowrap; }
.grid .wraps { white-space: normal; min-width: 5.5rem; }
.grid th { vertical-align: bottom; font-size: .72rem; white-space: normal; overflow-wrap: normal; }
.grid .band th { color: var(--ink); border-bottom: 1px solid var(--ink); padding-top: 0; font-size: .8rem; }
.grid .first { padding-left: .75rem; }
.grid small, .grid sup { color: var(--soft); font-size: .65rem; line-height: 0; }
.grid .unit { display: block; font-weight: 400; }
.grid .calculated { font-style: italic; }
.grid .absent { color: var(--soft); }
.grid .missing { background: var(--tint); font-weight: 700; }
.grid .blank { border-bottom: 1px solid var(--ink); min-width: 1.9rem; height: 1.5rem; }
.notes { font-size: .8rem; margin: .3rem 0 .3rem 1.2rem; padding: 0; list-style: decimal; }
.notes li { font: inherit; }
figure { margin: .8rem 0; }
figure svg { max-width: 100%; height: auto; }
figcaption { color: var(--soft); font-size: .85rem; }
footer { margin-top: 2.5rem; border-top: 1px solid var(--line); padding-top: .6rem; }
@media (max-width: 40rem) {
  main { padding: 1.5rem 1rem 3rem; }
  main:not(.sheet) table { display: block; overflow-x: auto; }
  .grid td:first-child { position: sticky; left: 0; background: var(--paper); }
  th, td { padding-right: .5rem; }
}
@media print {
  :root { color-scheme: light; --ink: #000; --soft: #333; --line: #999; --paper: #fff; --bad: #000; --open: #000; --tint: #ddd; }
  body { font-size: 10pt; print-color-adjust: exact; -webkit-print-color-adjust: exact; }
  .grid { overflow: visible; }
  .grid table { font-size: 9pt; line-height: 1.15; }
  .grid th, .grid td { padding: .14rem .2rem; }
  .grid th { font-size: 7pt; line-height: 1.1; }
  .grid .band th { font-size: 7.5pt; }
  .grid .first { padding-left: .5rem; }
  .grid .wraps { min-width: 4.2rem; }
  .notes { font-size: 7.5pt; columns: 2; line-height: 1.3; }
  dl { font-size: .9em; }
  main { max-width: none; padding: 0; }
  main.landscape { max-width: none; font-size: 8.5pt; line-height: 1.35; }
  .landscape header { margin-bottom: .6rem; }
  .landscape header p, .landscape footer, .landscape .source { font-size: 7.5pt; }
  .landscape h1 { font-size: 13pt; margin-bottom: .2rem; }
  .landscape h2 { font-size: 11pt; margin: 0 0 .3rem; }
  .landscape table { font-size: 8.5pt; width: auto; }
  .landscape td, .landscape th { padding-top: .1rem; padding-bottom: .1rem; }
  .landscape .grid table { width: 100%; }
  .landscape footer { margin: 0; padding: 0; border: 0; }
  .imprint { display: none; }
  .landscape .signatures i { font-size: 7.5pt; }
  .landscape .signatures p { margin-top: .9rem; }
  main.close { font-size: 8pt; line-height: 1.27; }
  .close h1 { font-size: 13pt; margin-bottom: .2rem; }
  .close h2 { font-size: 10.5pt; margin: .7rem 0 .15rem; }
  .close h3 { font-size: 8.5pt; margin: .45rem 0 .1rem; }
  .close header { margin-bottom: .6rem; }
  .close header p, .close p { margin: .15rem 0; }
  .close header p, .close .signatures i { font-size: 7.5pt; }
  .close .level1 > p:last-child { break-after: avoid; }
  .close table { break-inside: avoid; font-size: 8pt; margin: .1rem 0 .3rem; }
  .close td, .close th { padding-top: .06rem; padding-bottom: .06rem; }
  .close footer { margin-top: .5rem; font-size: 7.5pt; }
  .close .signatures p { margin-top: .75rem; }
  h2, h3 { break-after: avoid; }
  .level1 { break-before: page; }
  header + .level1, .close .level1:not(.landscape) { break-before: auto; }
  figure, .calculation, tr, .judgement, .gap, .signatures, .caution { break-inside: avoid; }
  thead { display: table-header-group; }
  .grid tbody tr:nth-child(-n+2) { break-after: avoid; }
}
`;

/** A4, and at the foot of every page what a loose one needs to find its way home. */
export const pageStyle = ({ title, imprint, turned, close }: Report): string => {
  const foot = [title, ...(imprint ? [imprint.file, imprint.revision ?? "", imprint.printed ?? ""] : [])];
  return `@media print {
  section.landscape { page: wide; break-before: page; }
  @page wide { size: A4 landscape; margin: 11mm 12mm 14mm; }
  @page {
    size: A4${turned ? ` ${turned}` : ""};
    margin: ${turned ? "11mm 12mm 14mm" : close ? "11mm 15mm 13mm" : "16mm 20mm 18mm"};
    @bottom-left { content: ${cssString(foot.filter(Boolean).join(" · "))}; font: 7.5pt system-ui, sans-serif; color: #333; }
    @bottom-right { content: "page " counter(page) " of " counter(pages); white-space: nowrap; width: 6em; text-align: right; font: 7.5pt system-ui, sans-serif; color: #333; }
  }
}
`;
};

/** Any text as a string of a style sheet: each sign that is not a letter, digit or blank by its number. */
const cssString = (text: string): string =>
  `"${text.replace(/[^\p{L}\p{N} ]/gu, (sign) => `\\${(sign.codePointAt(0) ?? 0xfffd).toString(16)} `)}"`;
