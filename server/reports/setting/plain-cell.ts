import type { Cell } from "./document.ts";

/** A cell where there is neither slant nor tint: signs stand for them. */
export function cellText({ text, kind, mark, last }: Cell): string {
  const shown = kind === "blank" ? "____" : kind === "calculated" ? `${text} calc.` : text;
  const numbered = mark === undefined ? shown : `${shown} ${mark})`;
  return last === undefined ? numbered : `${numbered} (${last})`;
}
