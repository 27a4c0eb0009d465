import type { IToken } from "chevrotain";
import { isToken } from "../../grammar/lexer.ts";
import type { Accepts, WordRow } from "../../grammar/params.ts";
import { unitOf } from "../../grammar/units.ts";
import type { BlockKind } from "../../grammar/vocabulary.ts";
import { normalStandard } from "../model/token-values.ts";

const quantity = /^([<>]?)[ \t]?([-−]?)(\d+(?:\.\d+)?)\s*(.*)$/;

/** A token in its one spelling: typographic units, one blank before them, none after a sign. Digits stay as written. */
export function spell(token: IToken): string {
  if (isToken(token, "Standard")) return normalStandard(token.image);
  if (isToken(token, "Multiple")) return token.image.replace("×", "x");
  if (isToken(token, "Word") || isToken(token, "NumberWord")) return token.image.normalize("NFC");
  if (!isToken(token, "Quantity") && !isToken(token, "Number")) return token.image;
  const match = quantity.exec(token.image);
  if (!match) return token.image;
  const [, sign = "", minus, digits = "", unit = ""] = match;
  const number = `${sign}${minus ? "-" : ""}${digits}`;
  return unit === "" ? number : `${number} ${unitOf(unit)?.symbol ?? unit}`;
}

interface Spelt {
  /** The word, with the name it speaks of where that belongs to its column. */
  readonly head: string;
  readonly args: string;
}

const isPoint = (accepts: Accepts): boolean => accepts.kind === "ref" && accepts.names === "point";

/** A statement's line. A word with several labelled values sets each apart by two blanks. */
export function spellLine(word: IToken, tokens: readonly IToken[], row: WordRow, kind: BlockKind): Spelt {
  const labels = Object.values(row.params).flatMap(({ label }) => (label === undefined ? [] : [label]));
  // The point a line is of is no second value of it, and neither is the same on each of three lines.
  const values = Object.values(row.params).filter(
    ({ label, accepts }) => label !== undefined && !/^L\d$/.test(label) && !isPoint(accepts),
  );
  const apart = values.length > 1 && !row.opens;
  const named = tokens.length > 1 && namesFirst(row, kind) && isName(tokens[0], labels) ? tokens.slice(0, 1) : [];
  const args = tokens.slice(named.length).map((token, index) => {
    const gap = index === 0 ? "" : apart && labels.includes(token.image) ? "  " : " ";
    return gap + spell(token);
  });
  return { head: [word, ...named].map(spell).join(" "), args: args.join("") };
}

/** A word that stands once for each point or RCD is read together with its name: `at S1`, `rcd east`. */
function namesFirst(row: WordRow, kind: BlockKind): boolean {
  const [first] = Object.values(row.params);
  const named = first?.label === undefined && (first?.accepts.kind === "ref" || first?.accepts.kind === "define");
  return named && row.times === "often" && !row.opens && kind !== "file" && kind !== "installation";
}

const isName = (token: IToken | undefined, labels: readonly string[]): boolean =>
  token !== undefined &&
  !labels.includes(token.image) &&
  (isToken(token, "Word") || isToken(token, "NumberWord") || isToken(token, "Number"));
