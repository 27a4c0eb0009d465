/** What a hover says of a figure: a few rows, the working behind them, and the sources. */

import type { Calculated, Step } from "../../calc/result.ts";
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
  working,
} from "../../calc/result.ts";
import { asRememberedWords, onlyAsRemembered } from "../../calc/verdict.ts";
import type { Source } from "../../tables/source.ts";
import { combine, standingWords } from "../../tables/source.ts";
import { fenced, type Markdown, md } from "../../text/markdown.ts";

export interface Row {
  readonly name: string;
  /** Figures and words, or what is ready to be shown. */
  readonly text: string | Markdown;
}

export interface Card {
  readonly rows: readonly Row[];
  readonly steps: readonly Step[];
  readonly sources: readonly Source[];
}

export const card = (
  rows: readonly (Row | undefined)[],
  ...from: readonly (Pick<Calculated, "steps" | "source"> | undefined)[]
): Card => ({
  rows: rows.filter((row) => row !== undefined),
  steps: unique(from.flatMap((one) => one?.steps ?? [])),
  sources: from.flatMap((one) => (one && one.source.ref !== "" ? [one.source] : [])),
});

export const row = (name: string, text: string | Markdown | undefined): Row | undefined =>
  text === undefined ? undefined : { name, text };

/** A calculated figure as a row, with the margin of the reading that is compared with it. */
export function limitRow(
  name: string,
  limit: Calculated | undefined,
  reading?: { readonly value: number | undefined; readonly least?: boolean },
): Row | undefined {
  if (!limit) return undefined;
  const left = reading?.value === undefined ? "" : marginText(reading.value, limit, reading.least ?? false);
  return { name, text: `${show(limit)}${left}` };
}

function marginText(value: number, { value: limit, source }: Calculated, least: boolean): string {
  if (limit === 0 || !Number.isFinite(limit) || !Number.isFinite(value)) return "";
  const left = ((least ? value - limit : limit - value) / Math.abs(limit)) * 100;
  if (left < 0) return `, ${least ? "missed" : "exceeded"} by ${percent(Math.round(-left))}`;
  const doubt = onlyAsRemembered(value, limit, source) ? `; it ${asRememberedWords(source)}` : "";
  return least && left > 1000
    ? ", far above it"
    : `, ${percent(Math.round(left))} ${least ? "above it" : "left"}${doubt}`;
}

/** A figure in the unit a meter or a schedule shows it in. */
export function show({ value, unit }: Pick<Calculated, "value" | "unit">): string {
  switch (unit) {
    case "Ω":
      return Math.abs(value) >= 100_000 ? megohms(value) : ohms(value);
    case "A":
      if (Math.abs(value) < 1) return milliamps(value);
      return Math.abs(value) >= 1000 ? kiloamps(value) : amps(value);
    case "V":
      return volts(value);
    case "m":
      return metres(value);
    case "s":
      return value < 0.4 ? milliseconds(value) : seconds(value);
    case "mm²":
      return squareMillimetres(value);
    case "°C":
      return degrees(value);
    case "%":
      return percent(value);
    case "Ω/m":
      return `${plain(value * 1000, 3)} mΩ/m`;
    default:
      return `${plain(value, 3)}${unit === "" ? "" : ` ${unit}`}`;
  }
}

export const emptyCard: Card = { rows: [], steps: [], sources: [] };

/**
 * A card as Markdown: a line a row, where that comes from, and the working, which may be cut off without harm. Lines of
 * working that stand elsewhere too come after the card's own.
 */
export function cardMarkdown({ rows, steps, sources }: Card, further: readonly string[] = []): Markdown[] {
  const parts: Markdown[] = [];
  if (rows.length > 0)
    parts.push(
      md.join(
        rows.map(({ name, text }) => md`- ${name}: ${text}`),
        "\n",
      ),
    );
  if (sources.length > 0) {
    const { ref, standing, note } = combine(...sources);
    parts.push(md`*${folded(ref)} (${standingWords[standing]})${note ? `. ${note}` : ""}*`);
  }
  const own = steps.length > 0 ? working(steps).split("\n") : [];
  const lines = [...new Set([...own, ...further])];
  if (lines.length > 0) parts.push(fenced("text", lines.join("\n")));
  return parts;
}

/** Several places of one standard, with its name once. */
export function folded(ref: string): string {
  const groups = new Map<string, string[]>();
  for (const one of ref.split("; ")) {
    const [, standard = one, place] = /^(BS \d[^,;]*), (.*)$/.exec(one) ?? [];
    groups.set(standard, [...(groups.get(standard) ?? []), ...(place ? [place] : [])]);
  }
  return [...groups].map(([standard, places]) => [standard, ...places].join(", ")).join("; ");
}

function unique(steps: readonly Step[]): Step[] {
  const seen = new Set<string>();
  return steps.filter(({ formula, numbers, result }) => {
    const key = `${formula}|${numbers}|${result}`;
    if (seen.has(key)) return false;
    seen.add(key);
    return true;
  });
}
