/** What is said of a circuit or a trunking in one breath: `three phase` behind a load, `50x50`. */
import { endOf, isToken } from "../../grammar/lexer.ts";
import type { LineBeingRead, Slip } from "./line.ts";
import { problemAt, spanOf, writeFix } from "./refusals.ts";

/** `load 5.5 kW three phase`: a text would be kept there, and the load counted on one line. */
export function threePhaseSaid({ word, tokens, at }: LineBeingRead): Slip | undefined {
  const token = tokens[at];
  const next = tokens[at + 1];
  if (!token || !["load", "Ib", "serves", "cable"].includes(word.image)) return undefined;
  const apart = /^(?:three|3)$/i.test(token.image) && next !== undefined && /^phase$/i.test(next.image);
  if (!apart && !/^(?:three|3)-?(?:phase|ph)$/i.test(token.image)) return undefined;
  const last = apart && next ? next : token;
  const before = tokens[at - 1] ?? word;
  const indent = " ".repeat(Math.max(0, (word.startColumn ?? 1) - 1));
  const edits = [{ start: endOf(before), end: endOf(last), text: `\n${indent}phase three` }];
  const said = apart ? `${token.image} phase` : token.image;
  const message = `“${said}” is stated on a line of its own: phase three.`;
  const fixes = [{ title: "Write phase three", edits, safe: false }];
  return {
    problem: { ...problemAt("wrong-argument", message, token, fixes), ...spanOf(token, last) },
    upTo: at + (apart ? 2 : 1),
  };
}

/** `trunking 50x50`: width and depth are two sizes, each with its unit. */
export function widthByDepth({ row, tokens, at }: LineBeingRead): Slip | undefined {
  const token = tokens[at];
  const [, width, depth] =
    (token && isToken(token, "NumberWord") && /^(\d+)(?:mm)?x(\d+)(?:mm)?$/i.exec(token.image)) || [];
  const takesDepth = Object.values(row.params).some(
    ({ label, accepts }) => label === "by" && accepts.kind === "quantity",
  );
  if (!token || width === undefined || depth === undefined || !takesDepth) return undefined;
  const text = `${width} mm by ${depth} mm`;
  const after = tokens[at + 1];
  const last = after && after.image === "mm" ? after : token;
  const span = spanOf(token, last);
  const problem = {
    ...problemAt("wrong-argument", `“${token.image}” is written ${text}.`, token, [writeFix(text, span)]),
    ...span,
  };
  return { problem, upTo: at + (last === token ? 1 : 2) };
}
