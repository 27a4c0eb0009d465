/** The look of the sheet to fill in: one column on a phone, two on a tablet; fingers need room. */
export const fillStyle = `:root { color-scheme: light dark; --ink: #1c1c1a; --soft: #5d5d57; --line: #b9b8b0; --paper: #fdfdfb; --field: #fff; }
@media (prefers-color-scheme: dark) { :root { --ink: #e9e8e2; --soft: #a7a69e; --line: #55544e; --paper: #1b1b19; --field: #262624; } }
* { box-sizing: border-box; }
body { margin: 0; background: var(--paper); color: var(--ink); font: 16px/1.4 system-ui, sans-serif; }
main { max-width: 60rem; margin: 0 auto; padding: 1rem; }
h1 { font-size: 1.3rem; margin: 0 0 .6rem; }
h2 { font-size: 1.1rem; margin: 1.4rem 0 .4rem; }
.head { display: flex; flex-wrap: wrap; gap: .6rem 1rem; }
.head label { display: grid; gap: .15rem; font-size: .85rem; color: var(--soft); }
input, select, button, textarea { font: inherit; color: inherit; background: var(--field); border: 1px solid var(--line); border-radius: 3px; padding: .45rem .55rem; min-height: 2.6rem; }
input, select { max-width: 100%; }
.head label { min-width: 0; max-width: 100%; grid-template-columns: minmax(0, 1fr); }
summary small { white-space: nowrap; }
button { cursor: pointer; }
button[aria-pressed=true] { border: 2px solid var(--ink); font-weight: 700; }
:focus-visible { outline: 3px solid var(--ink); outline-offset: 1px; }
details.group { border-top: 1px solid var(--line); }
details.group > summary { padding: .7rem 0; cursor: pointer; display: flex; justify-content: space-between; gap: 1rem; font-weight: 600; }
summary small, .hint { color: var(--soft); font-weight: 400; font-size: .85rem; }
.fields { display: grid; grid-template-columns: repeat(auto-fill, minmax(19rem, 1fr)); gap: .8rem 1.5rem; padding-bottom: 1rem; }
.field > label { display: block; font-weight: 600; margin-bottom: .2rem; }
.row { display: flex; gap: .35rem; align-items: center; flex-wrap: wrap; }
.row input { width: 6.2rem; font-variant-numeric: tabular-nums; font-size: 1.15rem; }
.row .unit { min-width: 2rem; }
.row button.way-out { padding: .2rem .5rem; color: var(--soft); }
.caution { border: 2px solid var(--ink); padding: .6rem .8rem; font-weight: 600; margin: 1rem 0 .4rem; }
.bar { position: relative; height: .5rem; border: 1px solid var(--line); margin: .35rem 0 .1rem; max-width: 17rem; }
.bar i { position: absolute; inset: 0 auto 0 0; background: var(--ink); opacity: .45; }
.bar.over { border: 2px solid var(--ink); height: .75rem; }
.bar.over i { opacity: 1; }
.warn { font-weight: 700; margin: .2rem 0 0; }
.warn::before { content: "▲ "; }
.foot { position: sticky; bottom: 0; background: var(--paper); border-top: 2px solid var(--ink); padding: .6rem 0; display: flex; gap: .6rem; align-items: center; flex-wrap: wrap; }
textarea { width: 100%; min-height: 8rem; font-family: ui-monospace, monospace; font-size: .8rem; }
noscript p { padding: 1rem; font-weight: 700; }
@media print { .foot, button { display: none; } }
`;
