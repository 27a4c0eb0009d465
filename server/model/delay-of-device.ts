/** A delay that is stated of a device: only an RCD on a line of its own has one. */
import type { LineBeingRead, Slip } from "./line.ts";
import { problemAt } from "./refusals.ts";
import { wordForSiteTerm } from "./suggestions.ts";

/** `device BS EN 61009 C32 300 mA delayed`. */
export function delayOfDevice({ word, shape, token, at }: LineBeingRead): Slip | undefined {
  if (word.image !== "device" || shape.labelled.has("delayed")) return undefined;
  if (token.image !== "delayed" && wordForSiteTerm(token.image, ["delayed"]) === undefined) return undefined;
  const message =
    "A delay is stated of an RCD on its own line: rcd BS EN 61008 63 A 100 mA type A delayed. An RCBO for additional protection has none.";
  return { problem: problemAt("wrong-argument", message, token), upTo: at + 1 };
}
