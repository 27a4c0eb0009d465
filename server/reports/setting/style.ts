/** The look of a printed report: black on white, one typeface of the system, room for a pen in the margin. */
export const style = `:root { color-scheme: light dark; --ink: #1c1c1a; --soft: #5d5d57; --line: #c9c8c0; --paper: #fdfdfb; --bad: #9c1f1f; --open: #7a5500; }
@media (prefers-color-scheme: dark) {
  :root { --ink: #e9e8e2; --soft: #a7a69e; --line: #494842; --paper: #1b1b19; --bad: #ff9a8f; --open: #e8bf6a; }
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
th, td { text-align: left; vertical-align: top; padding: .25rem .8rem .25rem 0; border-bottom: 1px solid var(--line); overflow-wrap: anywhere; }
th { font-weight: 600; color: var(--soft); }
figure { margin: .8rem 0; }
figure svg { max-width: 100%; height: auto; }
figcaption { color: var(--soft); font-size: .85rem; }
footer { margin-top: 2.5rem; border-top: 1px solid var(--line); padding-top: .6rem; }
@media print {
  :root { color-scheme: light; --ink: #000; --soft: #333; --line: #999; --paper: #fff; --bad: #000; --open: #000; }
  @page { margin: 18mm 20mm; }
  body { font-size: 10pt; }
  main { max-width: none; padding: 0; }
  h2, h3 { break-after: avoid; }
  .level1 { break-before: page; }
  header + .level1 { break-before: auto; }
  figure, .calculation, tr, .judgement, .gap { break-inside: avoid; }
  thead { display: table-header-group; }
}
`;
