import type { Param, WordRow } from "../../grammar/params.ts";

/** A block to fill in: what must be said of it on its first line, then a place inside. */
export function blockSnippet(word: string, row: WordRow): string {
  let stop = 0;
  const shown = Object.values(row.params).filter((param) => !param.optional || shownAnyway(param));
  const parts = shown.map((param) => {
    stop++;
    return `${param.label ? `${param.label} ` : ""}${hole(param, stop)}`;
  });
  return `${[word, ...parts].join(" ")} {\n\t$0\n}`;
}

/** A title or a kind may be left out, but is what most people write. */
const shownAnyway = ({ label, accepts }: Param): boolean =>
  label === undefined &&
  (accepts.kind === "text" || (accepts.kind === "choice" && accepts.help.startsWith("what kind")));

function hole({ accepts }: Param, stop: number): string {
  const help = accepts.help.replace(/[$}\\|,]/g, "");
  if (accepts.kind === "choice") return `\${${stop}|${Object.keys(accepts.choices).join(",")}|}`;
  if (accepts.kind === "text") return `"\${${stop}:${help}}"`;
  if (accepts.kind === "date") return `\${${stop}:year-month-day}`;
  return `\${${stop}:${help}}`;
}
