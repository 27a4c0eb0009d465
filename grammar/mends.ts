/** Braces that a reader takes to be lost or too many. */
import type { IToken } from "chevrotain";
import { tokenTypes } from "./tokens.ts";

/** At an offset of the text: a brace that is lost there, or one that stands there and is read as if it did not. */
export interface Mend {
  readonly kind: "lost-open" | "lost-close" | "extra-open" | "extra-close";
  readonly at: number;
}

export interface Mended {
  readonly tokens: IToken[];
  /** Braces that were taken out. */
  readonly taken: readonly { readonly fault: "extra-open" | "extra-close"; readonly token: IToken }[];
}

/** A brace that stands nowhere has no letters. */
export const isLost = (token: IToken): boolean => token.image === "";

/** The tokens as they would be had nobody lost or doubled a brace. */
export function mended(tokens: readonly IToken[], mends: readonly Mend[]): Mended {
  const out: IToken[] = [];
  const taken: Mended["taken"][number][] = [];
  const waiting = [...mends].sort((a, b) => a.at - b.at);
  for (const token of tokens) {
    while (waiting[0] && waiting[0].at <= token.startOffset && waiting[0].kind.startsWith("lost"))
      out.push(braceAt(waiting.shift() as Mend));
    const mend = waiting[0];
    if (mend?.at === token.startOffset && (mend.kind === "extra-open" || mend.kind === "extra-close")) {
      waiting.shift();
      taken.push({ fault: mend.kind, token });
    } else out.push(token);
  }
  for (const mend of waiting) if (mend.kind.startsWith("lost")) out.push(braceAt(mend));
  return { tokens: out, taken };
}

function braceAt({ kind, at }: Mend): IToken {
  const tokenType = kind === "lost-open" ? tokenTypes.Open : tokenTypes.Close;
  return { image: "", startOffset: at, tokenType, tokenTypeIdx: tokenType.tokenTypeIdx ?? 0 };
}
