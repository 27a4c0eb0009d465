import { squareMillimetres } from "../../calc/result.ts";
import type { Cable } from "../../circuit/way.ts";
import type { Fix } from "../../model/problems.ts";
import { flatPairs } from "../../tables/sizing-practice.ts";
import { rowOf } from "../../tables/table.ts";

/** The protective conductor flat cable of a size is sold with. */
export const sheathedPair = (line: number): number | undefined => rowOf(flatPairs, { line })?.facts.cpc;

/**
 * Makes the line conductor of a cable another size; flat twin cable takes the protective conductor with it that it is
 * sold with, and a cable whose protective conductor is a core like the others has that core of the new size too. Nothing where the size stands in a cable type that others use too.
 */
export function resizeCable(cable: Cable | undefined, size: number | undefined): Fix[] {
  const { line, cpc } = cable?.fact.args ?? {};
  if (!cable || !line || size === undefined) return [];
  const alike = ["multicore", "armoured"].includes(cable.construction) && cpc?.value === line.value;
  const pair = cable.construction === "flat-twin" ? sheathedPair(size) : alike ? size : undefined;
  const larger = pair !== undefined && cpc && pair > cpc.value ? pair : undefined;
  const edits = [
    { start: line.start, end: line.end, text: `${size} mm²` },
    ...(larger !== undefined && cpc ? [{ start: cpc.start, end: cpc.end, text: `${larger} mm²` }] : []),
  ];
  const title = `Make it ${squareMillimetres(size)}${larger === undefined ? "" : ` with ${squareMillimetres(larger)}`}`;
  return [{ title, edits, safe: false }];
}
