/** Installations, boards and ways of every file, found by their names. */
import type { OutlineSymbol } from "./symbols.ts";

interface FoundSymbol {
  readonly symbol: OutlineSymbol;
  /** What it stands in: `Larkfield Cottage, A`. */
  readonly within: string;
}

/** Those whose name holds all the letters of a query, in their order. */
export function matching(
  symbols: readonly OutlineSymbol[],
  query: string,
  within: readonly string[] = [],
): FoundSymbol[] {
  return symbols.flatMap((symbol) => [
    ...(isLike(symbol, query) ? [{ symbol, within: within.join(", ") }] : []),
    ...matching(symbol.children, query, [...within, symbol.name]),
  ]);
}

function isLike({ name, detail }: OutlineSymbol, query: string): boolean {
  let at = 0;
  const wanted = query.toLowerCase();
  for (const sign of `${name} ${detail}`.toLowerCase()) if (sign === wanted[at]) at++;
  return at >= wanted.length;
}
