/** A reading beside what it is compared with, with what is left. */
import { marginOf, type Sense } from "../../calc/margin.ts";
import { ohms, round } from "../../calc/result.ts";
import { type Fact, isAbsent, type Quantity, type Reading } from "../../model/values.ts";
import { originText, writtenValue } from "./written.ts";

/** Like readings are compared with an expectation, others against a limit. */
export function row(
  name: string,
  fact: Fact,
  value: Reading,
  expected?: { value: number; words: string; kind: "limit" | "expected" },
): string[] {
  const origin = originText(fact);
  const read = `${writtenValue(fact, value)}${origin ? ` (${origin})` : ""}`;
  if (isAbsent(value)) return [name, read, "", "not measured"];
  if (!expected) return [name, read, "", ""];
  return [
    name,
    read,
    expected.words,
    expected.kind === "limit" ? leftTo(value, expected.value) : awayFrom(value, expected.value),
  ];
}

/** The margin to a limit that is the greatest allowed. */
export const leftTo = ({ value, sign }: Quantity, limit: number, sense: Sense = "most"): string =>
  marginOf(sense, value, limit, sign)?.text ?? (limit > 0 ? "does not show it" : "");

export function awayFrom({ value, sign }: Quantity, expected: number): string {
  if (sign !== "=") return "off the scale";
  const away = value - expected;
  const shown = round(Math.abs(away), 2);
  return shown === 0 ? "none" : `${away < 0 ? "−" : "+"}${shown.toFixed(2)} Ω`;
}

export const expectation = (value: number | undefined) =>
  value === undefined ? undefined : { value, words: `${ohms(value)} expected`, kind: "expected" as const };
