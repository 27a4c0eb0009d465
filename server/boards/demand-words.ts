import { amps } from "../calc/result.ts";
import type { BoardDemand } from "./demand.ts";

/**
 * A demand with what it rests on: "71 A on L2 with diversity (one circuit taken at its rating)". `beside` (A) is what it is
 * compared with.
 */
export function demandNotes(
  { greatest, diverse, assumed, unknown, unplaced, unlined }: BoardDemand,
  beside?: number,
): string {
  const { line, value } = greatest;
  const count = (number: number, what: string) => `${number === 1 ? "one circuit" : `${number} circuits`} ${what}`;
  const notes = [
    ...(assumed.length > 0 ? [count(assumed.length, "taken at the rating of the device")] : []),
    ...(unplaced.length > 0 ? [count(unplaced.length, "spread evenly over the lines")] : []),
    ...(unlined.length > 0
      ? [
          `${unlined.length === 1 ? `board ${unlined[0]?.board.head.name}` : `${unlined.length} boards`} counted on every line`,
        ]
      : []),
    ...(unknown.length > 0 ? [count(unknown.length, "not counted, load not given")] : []),
  ];
  const how = diverse ? "with diversity" : "with every circuit in full";
  const most = unknown.length > 0 ? "at least " : "";
  return `${most}${amps(value, beside)}${line === "L" ? "" : ` on ${line}`} ${how}${notes.length > 0 ? ` (${notes.join("; ")})` : ""}`;
}
