import { amps, kiloamps, megohms, milliamps, milliseconds, ohms, plain } from "../calc/result.ts";
import type { Amount } from "../rules/frame/rule.ts";

/** An amount as the trade writes it; `beside` is what it is compared with, so that both get the same prefix. */
export function amountText({ amount, unit }: Amount, beside: Amount = { amount, unit }): string {
  const size = Math.abs(beside.unit === unit ? beside.amount : amount);
  switch (unit) {
    case "Ω":
      return size >= 100_000 ? megohms(amount) : ohms(amount);
    case "A":
      if (size >= 1000) return kiloamps(amount);
      return size < 0.5 ? milliamps(amount) : amps(amount);
    case "s":
      return size < 0.4 ? milliseconds(amount) : `${plain(amount, 3)} s`;
    case "W":
      return size >= 1000 ? `${plain(amount / 1000)} kW` : `${plain(amount)} W`;
    default:
      return `${plain(amount, 3)} ${unit}`.trimEnd();
  }
}

/** What is left to the limit; a minus where it is passed. */
export function marginText(margin: number): string {
  // Rounding hides on which side of the limit it lies.
  if (margin === 0) return "0 %";
  const share = plain(Math.abs(margin) * 100, Math.abs(margin) < 0.1 ? 1 : 0);
  return margin < 0 ? `−${share} %, beyond the limit` : `${share} % in hand`;
}
