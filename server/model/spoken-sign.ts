/** Signs that another form of the same line has. */
import type { SyntaxFault } from "../../grammar/parser.ts";
import type { Problem } from "./problems.ts";
import { removeFix, signsBeside, writeFix } from "./refusals.ts";
import type { Span } from "./values.ts";

/** Signs of another form than this: `Zs = 0.45 Ω`, `polarity ✓`, `Zs -`, `T&E`. */
export function spokenSign({ fault, start, end, image }: SyntaxFault, text: string): Problem | undefined {
  if (fault !== "stray") return undefined;
  const answer = (message: string, span: Span, written: string): Problem => ({
    check: "stray",
    message,
    ...span,
    fixes: [written === "" ? removeFix(image, span) : writeFix(written, span)],
  });
  const said = (message: string): Problem => ({ check: "stray", message, start, end, fixes: [] });
  if (signsBeside.test(image) || image === ";" || image === "@")
    return answer(`Blanks alone divide the parts of a line: leave out “${image}”.`, { start, end }, "");
  if (/^[✓✔√☑]$/.test(image)) return answer(`“${image}” is written ok.`, { start, end }, "ok");
  if (/^[✗✘☒]$/.test(image)) return said(`“${image}” is written as a word: wrong, or failed.`);
  if (image === "½") return answer("“½” is written 0.5x.", { start, end }, "0.5x");
  if (isDashAlone(text, start))
    return said(
      `“${image}” is no result: write what was read, LIM with the reason, or N/A where it does not apply; or delete the line.`,
    );
  const before = image === "&" ? /\bT ?$/i.exec(text.slice(0, start))?.[0].length : undefined;
  const after = before === undefined ? undefined : /^ ?E\b/i.exec(text.slice(end))?.[0].length;
  if (before === undefined || after === undefined) return undefined;
  return answer("“T&E” is written flat-twin.", { start: start - before, end: end + after }, "flat-twin");
}

/** Dashes with nothing beside them stand in a box of a form that was left empty. */
function isDashAlone(text: string, start: number): boolean {
  const dashes = /^[-–—]+(?=[^\S\n]*(?:#|\r?\n|$))/.exec(text.slice(start, start + mostDashes));
  return dashes !== null && /[^\S\n]$/.test(text.slice(0, start));
}

/** A row of dashes is read no further than this. */
const mostDashes = 200;
