/** Words and places that the checks of the dead tests share. */

import { megohms, squareMillimetres } from "../../calc/result.ts";
import { type Cable, countWords } from "../../circuit/cable.ts";
import type { WayStudy } from "../../circuit/way.ts";
import type { Fact, Quantity } from "../../model/values.ts";
import { decimalSlip } from "../../readings/dead.ts";
import type { RingPoint, RingStudy, Round } from "../../readings/ring.ts";
import { listed } from "../../text/words.ts";
import { factSpot, type Related, type Spot, valueSpot } from "../frame/rule.ts";

export { listed } from "../../text/words.ts";

/** A resistance as it was written, with its sign and its decimals. */
export function shown({ value, sign, unit, decimals }: Quantity): string {
  const number = unit === "mΩ" ? value * 1000 : unit === "kΩ" ? value / 1000 : value;
  return `${sign === "=" ? "" : sign}${number.toFixed(decimals)} ${unit}`;
}

/** A figure as it is shown elsewhere, with the sign it was read with. */
export const withSign = ({ value, sign }: Pick<Quantity, "value" | "sign">, show: (value: number) => string): string =>
  `${sign === "=" ? "" : sign}${show(value)}`;

export const shownMegohms = (quantity: Pick<Quantity, "value" | "sign">): string => withSign(quantity, megohms);

export const relatedFact = (fact: Fact, message: string): Related => ({ spot: factSpot(fact), message });

/** The lines an expectation from length and size was made of. */
export function lengthRelated({ length, cable }: WayStudy): Related[] {
  return [
    ...(length?.facts ?? []).slice(0, 3).map((fact) => relatedFact(fact, "Length used for the expected reading.")),
    ...(cable ? [relatedFact(cable.fact, `The cable: ${cableWords(cable)}.`)] : []),
  ];
}

/** `2 × 16 mm², each with a 16 mm² cpc`. */
export function cableWords({ line, cpc, parallel }: Pick<Cable, "line" | "cpc" | "parallel">): string {
  const each = parallel.line > 1 ? ", each" : "";
  const lines = `${countWords(parallel.line)}${squareMillimetres(line)}`;
  if (cpc === undefined) return lines;
  if (parallel.cpc < parallel.line) return `${lines} and ${countWords(parallel.cpc)}${squareMillimetres(cpc)} cpc`;
  return `${lines}${each} with a ${squareMillimetres(cpc)} cpc`;
}

export const endsRelated = ({ ends }: RingStudy): Related[] =>
  ends ? [relatedFact(ends, "End-to-end readings used for the expected value.")] : [];

/** Where a point's reading stands, or its line where there is none. */
export function readingSpot({ fact, readings }: RingPoint, round: Round): Spot {
  const value = readings[round];
  return value ? valueSpot(fact, value.quantity) : factSpot(fact);
}

export const otherPoints = (points: readonly RingPoint[], own?: RingPoint): Related[] =>
  points
    .filter((point) => point !== own)
    .slice(0, 8)
    .map((point) => relatedFact(point.fact, readingsAt(point)));

/** What a point of a ring reads: "S3 reads 0.22 Ω L-N and 0.22 Ω L-E." */
function readingsAt({ name, readings }: RingPoint): string {
  const read = (["L-N", "L-E"] as const).flatMap((round) => {
    const value = readings[round];
    return value ? [`${shown(value.quantity)} ${round}`] : [];
  });
  return read.length === 0 ? `${name} has no reading.` : `${name} reads ${listed(read)}.`;
}

/** How a figure came to stand there that nobody read on the day. */
export const notReadWords = ({ provenance }: Fact): string =>
  provenance === "from-record" ? "taken from a record" : `written as ${provenance}`;

/** How far a slip of the decimal point puts a figure out. */
export const timesWords = (slip: number): string =>
  slip > 1 ? `${slip} times too much` : `a ${slip === 0.1 ? "tenth" : "hundredth"} of it`;

/** A sentence for a figure that is a power of ten of what it should be; empty for any other. */
export function slipWords(read: number, expected: number): string {
  const slip = decimalSlip(read / expected);
  return slip === undefined ? "" : ` It is about ${timesWords(slip)}: check the decimal point.`;
}
