/** A device's standard as it is said: `MCB`, `BSEN60898`, `3036`. */
import type { IToken } from "chevrotain";
import { endOf, isToken } from "../../grammar/lexer.ts";
import type { LineBeingRead, Slip } from "./line.ts";
import { problemAt, removeFix, spanOf, writeFix, writtenSo } from "./refusals.ts";

/** What a device is called, and the standard one of today is made to. */
const byName: ReadonlyMap<string, string> = new Map([
  ["mcb", "BS EN 60898"],
  ["rcbo", "BS EN 61009"],
  ["rccb", "BS EN 61008"],
  ["rcd", "BS EN 61008"],
  ["afdd", "BS EN 62606"],
  ["mccb", "BS EN 60947-2"],
  ["rewirable", "BS 3036"],
  ["re-wireable", "BS 3036"],
  ["rewireable", "BS 3036"],
  ["semi-enclosed", "BS 3036"],
  ["wireable", "BS 3036"],
  ["hrc", "BS 88-2"],
  ["cartridge", "BS 1361"],
  ["fcu", "BS 1362"],
]);

/** Numbers that no other standard of a device has. */
const byNumber: ReadonlyMap<string, string> = new Map([
  ["60898", "BS EN 60898"],
  ["61008", "BS EN 61008"],
  ["61009", "BS EN 61009"],
  ["62606", "BS EN 62606"],
  ["60947-2", "BS EN 60947-2"],
  ["60947-3", "BS EN 60947-3"],
  ["60269-2", "BS 88-2"],
  ["60269-3", "BS 88-3"],
  ["3036", "BS 3036"],
  ["1361", "BS 1361"],
  ["1362", "BS 1362"],
  ["3871", "BS 3871"],
]);

export function spokenStandard(line: LineBeingRead): Slip | undefined {
  const { token } = line;
  const again = nameAgain(line, token);
  if (again) return again;
  const wanted = line.free().some(([, { accepts }]) => accepts.kind === "standard" && accepts.of === "product");
  if (!wanted || line.tokens.some((other) => isToken(other, "Standard"))) return undefined;
  const name = byName.get(token.image.toLowerCase());
  const number = /^(?:BS)?-?(?:EN)?-?(\d{4,5}(?:-\d)?)$/i.exec(token.image)?.[1] ?? "";
  const standard = name ?? byNumber.get(number);
  if (standard === undefined) return undefined;
  const message = name
    ? `“${token.image}” is stated by the standard on it, such as ${standard}.`
    : `“${token.image}” is written ${standard}.`;
  return writtenSo(line, standard, message, token);
}

/** `BS EN 60947-2 MCCB 160 A`: its standard says what it is. */
function nameAgain(line: LineBeingRead, token: IToken): Slip | undefined {
  const standard = line.args.standard;
  const said = byName.get(token.image.toLowerCase());
  if (said === undefined || !standard || !("value" in standard)) return undefined;
  const isSame = said === standard.value;
  const message = isSame
    ? `${said} says that already: leave out “${token.image}”.`
    : `“${token.image}” is usually a device to ${said}, and ${standard.value} is written: keep the standard that is on the device, and leave out “${token.image}”.`;
  const end = line.tokens[line.at + 1]?.startOffset ?? endOf(token);
  const fix = removeFix(token.image, { start: token.startOffset, end });
  return { problem: problemAt("wrong-argument", message, token, [fix]), upTo: line.at + 1 };
}

/** `standard 18th edition`, `standard BS 7671:2018 A2`: which amendments it has decides what is judged by it. */
export function spokenEdition(line: LineBeingRead): Slip | undefined {
  const [slot] = line.shape.plain;
  const accepts = slot?.[1].accepts;
  const { token: first } = line;
  const last = line.tokens.at(-1);
  if (!last || accepts?.kind !== "standard" || accepts.of !== "wiring") return undefined;
  const before = line.tokens[line.at - 1];
  const amendment =
    before && isToken(before, "Standard") ? /^(?:\+|amd?t?|amendment)?(a?\d(?::\d{4})?(?:\+.*)?)$/i : undefined;
  const said = line.tokens
    .slice(line.at)
    .map(({ image }) => image)
    .join("");
  const behind = amendment?.exec(said)?.[1]?.toUpperCase();
  if (before && behind !== undefined) {
    const text = `${before.image}+${behind.startsWith("A") ? behind : `A${behind}`}`;
    const message = `An amendment is joined to its standard: ${text}.`;
    const span = spanOf(before, last);
    return {
      problem: { ...problemAt("wrong-argument", message, first, [writeFix(text, span)]), ...span },
      upTo: line.tokens.length,
    };
  }
  // `BS 7671 18th edition AMD 2`: the number of the standard alone says nothing of it.
  if ((before && !/edition/i.test(said)) || isToken(first, "Text")) return undefined;
  const message = `The edition is written by its number and year, with its amendments, as in: ${line.row.example.split("\n")[0]}`;
  return {
    problem: { ...problemAt("wrong-argument", message, first), ...spanOf(before ?? first, last) },
    upTo: line.tokens.length,
  };
}
