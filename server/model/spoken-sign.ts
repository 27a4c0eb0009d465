/** Signs that another form of the same line has. */
import type { SyntaxFault } from "../../grammar/parser.ts";
import type { Problem } from "./problems.ts";
import { removeFix, signsBeside, writeFix } from "./refusals.ts";
import type { Span } from "./values.ts";

/** Signs of another form than this: `Zs = 0.45 Ω`, `polarity ✓`, `T&E`. */
export function spokenSign({ fault, start, end, image }: SyntaxFault, text: string): Problem | undefined {
  if (fault !== "stray") return undefined;
  const answer = (message: string, span: Span, written: string): Problem => ({
    check: "stray",
    message,
    ...span,
    fixes: [written === "" ? removeFix(image, span) : writeFix(written, span)],
  });
  if (signsBeside.test(image) || image === ";")
    return answer(`Blanks alone divide the parts of a line: leave out “${image}”.`, { start, end }, "");
  if (/^[✓✔]$/.test(image)) return answer(`“${image}” is written ok.`, { start, end }, "ok");
  const before = image === "&" ? /\bT ?$/i.exec(text.slice(0, start))?.[0].length : undefined;
  const after = before === undefined ? undefined : /^ ?E\b/i.exec(text.slice(end))?.[0].length;
  if (before === undefined || after === undefined) return undefined;
  return answer("“T&E” is written flat-twin.", { start: start - before, end: end + after }, "flat-twin");
}
