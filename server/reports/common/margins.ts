/** A reading beside what it is compared with, with what is left. */
import { ohms, percent, round } from "../../calc/result.ts";
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

export function leftTo({ value, sign }: Quantity, limit: number): string {
  if (limit <= 0) return "";
  if (sign === ">") return value >= limit ? "over the limit" : "off the scale: not shown";
  const left = ((limit - value) / limit) * 100;
  if (left < 0) return `over by ${percent(Math.ceil(-left - 1e-9))}`;
  return sign === "<" ? `more than ${percent(Math.floor(left))} left` : `${percent(Math.floor(left + 1e-9))} left`;
}

export function awayFrom({ value, sign }: Quantity, expected: number): string {
  if (sign !== "=") return "off the scale";
  const away = value - expected;
  const shown = round(Math.abs(away), 2);
  return shown === 0 ? "none" : `${away < 0 ? "−" : "+"}${shown.toFixed(2)} Ω`;
}

export const expectation = (value: number | undefined) =>
  value === undefined ? undefined : { value, words: `${ohms(value)} expected`, kind: "expected" as const };
