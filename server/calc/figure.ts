/** A figure in the unit a meter or a schedule shows it in: one choice of prefix and digits for all that is shown. */
import {
  amps,
  degrees,
  kiloamps,
  megohms,
  metres,
  milliamps,
  milliseconds,
  ohms,
  percent,
  plain,
  seconds,
  squareMillimetres,
  volts,
} from "./result.ts";

/** `value` in its base unit; `beside` is what it is compared with, so that both get the same prefix. */
export function figure(value: number, unit: string, beside = value): string {
  const size = Math.abs(beside);
  switch (unit) {
    case "Ω":
      return size >= 100_000 ? megohms(value) : ohms(value);
    case "A":
      if (size < 1) return milliamps(value);
      return size >= 1000 ? kiloamps(value) : amps(value, beside);
    case "V":
      return volts(value);
    case "W":
      return size >= 1000 ? `${plain(value / 1000)} kW` : `${plain(value)} W`;
    case "m":
      return metres(value);
    case "s":
      return size < 1 ? milliseconds(value) : seconds(value);
    case "mm²":
      return squareMillimetres(value);
    case "°C":
      return degrees(value);
    case "A²s":
      return `${plain(value, 0)} ${unit}`;
    case "%":
      return percent(value);
    case "Ω/m":
      return `${plain(value * 1000, 3)} mΩ/m`;
    default:
      return `${plain(value, 3)} ${unit}`.trimEnd();
  }
}
