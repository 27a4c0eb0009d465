import type { IToken } from "chevrotain";
import { isToken } from "../../grammar/lexer.ts";
import type { Accepts, WordRow } from "../../grammar/params.ts";
import { unitOf } from "../../grammar/units.ts";
import type { BlockKind } from "../../grammar/vocabulary.ts";
import { Memo } from "../memo/memo.ts";
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

/** What a row says of how its lines are spaced. */
interface Spacing {
  readonly labels: ReadonlySet<string>;
  /** Whether each labelled value is set apart by two blanks. */
  readonly apart: boolean;
  /** Whether a word that may stand often is read together with the name it begins with. */
  readonly named: boolean;
}

const spacings = new Memo<WordRow, Spacing>();

function spacingOf(row: WordRow): Spacing {
  const params = Object.values(row.params);
  // The point a line is of is no second value of it, and neither is the same on each of three lines.
  const values = params.filter(
    ({ label, accepts }) => label !== undefined && !/^L\d$/.test(label) && !isPoint(accepts),
  );
  const [first] = params;
  const begins = first?.label === undefined && (first?.accepts.kind === "ref" || first?.accepts.kind === "define");
  return {
    labels: new Set(params.flatMap(({ label }) => (label === undefined ? [] : [label]))),
    apart: values.length > 1 && !row.opens,
    named: begins && row.times === "often" && !row.opens,
  };
}

/** A statement's line. A word with several labelled values sets each apart by two blanks. */
export function spellLine(word: IToken, tokens: readonly IToken[], row: WordRow, kind: BlockKind): Spelt {
  const { labels, apart, named } = spacings.of(row, spacingOf);
  // A word that stands once for each point or RCD is read together with its name: `at S1`, `rcd east`.
  const isNamed = named && kind !== "file" && kind !== "installation" && tokens.length > 1 && isName(tokens[0], labels);
  const first = isNamed ? 1 : 0;
  let args = "";
  for (let index = first; index < tokens.length; index++) {
    const token = tokens[index] as IToken;
    const gap = index === first ? "" : apart && labels.has(token.image) ? "  " : " ";
    args += gap + spell(token);
  }
  return { head: isNamed && tokens[0] ? `${spell(word)} ${spell(tokens[0])}` : spell(word), args };
}

const isName = (token: IToken | undefined, labels: ReadonlySet<string>): boolean =>
  token !== undefined &&
  !labels.has(token.image) &&
  (isToken(token, "Word") || isToken(token, "NumberWord") || isToken(token, "Number"));
