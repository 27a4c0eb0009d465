/** A cable as it is said on site: `2.5mm`, `2.5/1.5`, `3 core`, `XLPE`. Each is answered with the form of the language. */
import type { IToken } from "chevrotain";
import { endOf, isToken } from "../../grammar/lexer.ts";
import type { LineBeingRead, Slip } from "./line.ts";
import { indentOf, problemAt, spanOf, writeFix, writtenSo } from "./refusals.ts";

/** A conductor of a sheathed cable is as large as a figure below this; a temperature is above it. */
const leastTemperature = 50;

export function spokenCable(line: LineBeingRead): Slip | undefined {
  const { token } = line;
  if (!["line", "cpc", "cores"].every((label) => line.shape.labelled.has(label))) return undefined;
  return (
    noProtective(line, token) ??
    colours(line, token) ??
    degrees(line, token) ??
    cores(line, token) ??
    sizes(line, token) ??
    insulation(line, token) ??
    sheath(line, token)
  );
}

/** `no cpc`, `without earth`: what serves as the protective conductor is stated, and that nothing does. */
function noProtective(line: LineBeingRead, token: IToken): Slip | undefined {
  const next = line.tokens[line.at + 1];
  if (!next || !/^(?:no|without)$/i.test(token.image) || !/^(?:cpc|earth)$/i.test(next.image)) return undefined;
  const said = `${token.image} ${next.image}`;
  return writtenSo(line, "cpc-by none", `“${said}” is written cpc-by none.`, token, next);
}

/** `old colours`: how the cores are marked is no part of a cable's line. */
function colours(line: LineBeingRead, token: IToken): Slip | undefined {
  const next = line.tokens[line.at + 1];
  const isApart = next !== undefined && /^colou?rs?$/i.test(next.image) && isToken(token, "Word");
  if (!isApart && !/^colou?rs?$/i.test(token.image)) return undefined;
  const last = isApart ? next : token;
  const said = isApart ? `${token.image} ${last.image}` : token.image;
  const before = line.tokens[line.at - 1] ?? line.word;
  const note = `note "${said}"`;
  const edits = [{ start: endOf(before), end: endOf(last), text: `\n${indentOf(line.word)}${note}` }];
  const message = `The colours of the cores are a note or an observation: ${note}.`;
  const fixes =
    last === line.tokens.at(-1) ? [{ title: `Write ${note} on a line of its own`, edits, safe: false }] : [];
  const problem = { ...problemAt("wrong-argument", message, token, fixes), ...spanOf(token, last) };
  return { problem, upTo: line.at + (isApart ? 2 : 1) };
}

/** `3 core`, `3c`, `3-core`: how many conductors it has. */
function cores(line: LineBeingRead, token: IToken): Slip | undefined {
  if (line.args.cores) return undefined;
  const next = line.tokens[line.at + 1];
  const joined = /^(\d{1,2})-?c(?:ores?)?$/i.exec(token.image)?.[1];
  const apart = next && /^cores?$/i.test(next.image) ? /^\d{1,2}$/.exec(token.image)?.[0] : undefined;
  const count = joined ?? apart;
  if (count === undefined) return undefined;
  const last = joined === undefined && next ? next : token;
  const said = joined === undefined ? `${token.image} ${last.image}` : token.image;
  return writtenSo(line, `cores ${count}`, `“${said}” is written cores ${count}.`, token, last);
}

/** `90C`, `70deg`: the temperature of the insulation. */
function degrees(line: LineBeingRead, token: IToken): Slip | undefined {
  const figure = /^(\d{2,3})-?(?:c|deg|degc|degrees)$/i.exec(token.image)?.[1];
  if (figure === undefined || Number(figure) < leastTemperature || !takesTemperature(line)) return undefined;
  return writtenSo(line, `${figure} °C`, `“${token.image}” is written ${figure} °C.`, token);
}

const takesTemperature = (line: LineBeingRead): boolean =>
  line.free().some(([, { accepts }]) => accepts.kind === "quantity" && accepts.of === "temperature");

const size = String.raw`(\d+(?:\.\d+)?)(?:\s*mm[²2]?)?`;
const sizeAlone = new RegExp(`^${size}$`);
const sizePair = new RegExp(`^${size}[/+]${size}$`);

/** `2.5mm` and `2.5/1.5`: whose size it is stands before it. */
function sizes(line: LineBeingRead, token: IToken): Slip | undefined {
  const [, both = "", cpc = ""] = sizePair.exec(token.image) ?? [];
  if (both !== "") {
    const text = `line ${both} mm²  cpc ${cpc} mm²`;
    return writtenSo(line, text, `“${token.image}” is written ${text}.`, token);
  }
  const [, alone = ""] = sizeAlone.exec(token.image) ?? [];
  const isSize = alone !== "" && !line.args.line && (Number(alone) < leastTemperature || /mm/.test(token.image));
  // Two figures in a row are answered together.
  if (!isSize || isFigure(line.tokens[line.at + 1])) return undefined;
  const text = `line ${alone} mm²`;
  return writtenSo(line, text, `Each conductor has a size of its own: write ${text}, and that of the cpc.`, token);
}

const isFigure = (token: IToken | undefined): boolean => token !== undefined && isToken(token, "Quantity");

/** °C that the usual insulations are made for. */
const insulations: ReadonlyMap<string, number> = new Map([
  ["pvc", 70],
  ["xlpe", 90],
  ["epr", 90],
]);

/** `XLPE`: the insulation is stated by the temperature it is made for. */
function insulation(line: LineBeingRead, token: IToken): Slip | undefined {
  const temperature = insulations.get(token.image.toLowerCase());
  if (temperature === undefined || !takesTemperature(line)) return undefined;
  const text = `${temperature} °C`;
  return writtenSo(line, text, `“${token.image}” is stated by the temperature of the conductor: ${text}.`, token);
}

/** `mineral bare`, `mineral covered`: what covers the sheath shows in the temperature it may have. */
function sheath(line: LineBeingRead, token: IToken): Slip | undefined {
  const isMineral = line.tokens.some(({ image }) => image === "mineral");
  const said = /^(?:un)?(?:bare|covered|sheathed|served)$/i.exec(token.image)?.[0].toLowerCase();
  if (!isMineral || said === undefined || !takesTemperature(line)) return undefined;
  const isBare = said === "bare" || said.startsWith("un");
  const message = isBare
    ? `“${token.image}” is stated by the temperature of the sheath: 105 °C where nobody can touch it and nothing near it burns, otherwise 70 °C.`
    : `“${token.image}” is stated by the temperature of the sheath: 70 °C.`;
  const slip = writtenSo(line, "70 °C", message, token);
  const other = isBare ? [writeFix("105 °C", spanOf(token))] : [];
  return { ...slip, problem: { ...slip.problem, fixes: [...(slip.problem.fixes ?? []), ...other] } };
}
