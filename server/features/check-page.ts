/** The page of a check as Markdown: what it finds, why it matters, and samples of both. */
import type { CheckPage } from "../rules/frame/catalogue.ts";
import { fenced, type Markdown, md, prose } from "../text/markdown.ts";

const gravities = { error: "error", warning: "warning", information: "information" } as const;

export function checkPageMarkdown({ id, severity, title, why, clauses, examples }: CheckPage): Markdown {
  const samples = examples.flatMap(({ bad, good }) => [
    md`**Found**`,
    fenced("wayfile", withoutCarets(bad)),
    md`**Not found**`,
    fenced("wayfile", good),
  ]);
  return md.join(
    [
      md`# ${prose(title)}`,
      md`\`${id}\` · ${gravities[severity]}`,
      prose(why),
      ...(clauses.length > 0 ? [md`Rests on ${prose(clauses.join(", "))}.`] : []),
      ...samples,
      md`To depart from it: \`departure ${id} "the reason"\` in the block it was found in.`,
    ],
    "\n\n",
  );
}

/** The lines that mark what is found are for tests. */
const withoutCarets = (text: string): string =>
  text
    .split("\n")
    .filter((line) => !/^\s*\^[\s^]*$/.test(line))
    .join("\n");
