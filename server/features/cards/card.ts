/** What a hover says of a figure: a few rows, the working behind them, and the sources. */

import { figure } from "../../calc/figure.ts";
import { marginOf } from "../../calc/margin.ts";
import { type Calculated, type Step, working } from "../../calc/result.ts";
import { asRememberedWords, onlyAsRemembered } from "../../calc/verdict.ts";
import type { Quantity } from "../../model/values.ts";
import type { Bound } from "../../readings/planned.ts";
import type { Source } from "../../tables/source.ts";
import { combine, sourceText } from "../../tables/source.ts";
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

/** What was read, where it was. */
export interface Read {
  readonly value?: number | undefined;
  readonly sign?: Quantity["sign"];
}

/** A calculated figure as a row, with the margin of the reading that is compared with it. */
export function limitRow(
  name: string,
  limit: Calculated | undefined,
  reading?: Read & { readonly least?: boolean },
): Row | undefined {
  if (!limit) return undefined;
  const { value, sign = "=", least = false } = reading ?? {};
  const margin = value === undefined ? undefined : marginOf(least ? "least" : "most", value, limit.value, sign);
  const isDoubtful = margin?.passes && value !== undefined && onlyAsRemembered(value, limit.value, limit.source);
  const doubt = isDoubtful ? `; it ${asRememberedWords(limit.source)}` : "";
  return { name, text: `${show(limit)}${margin ? `, ${margin.text}` : ""}${doubt}` };
}

/** Limits as rows, each with the margin of the reading. */
export const boundRows = (bounds: readonly Bound[], { value, sign = "=" }: Read): (Row | undefined)[] =>
  bounds.map((bound) => {
    const margin = value === undefined ? undefined : marginOf(bound.sense, value, bound.value, sign);
    return row("limit", `${bound.text}${margin ? `, ${margin.text}` : ""}`);
  });

/** A figure in the unit a meter or a schedule shows it in. */
export const show = ({ value, unit }: Pick<Calculated, "value" | "unit">): string => figure(value, unit);

/** What two cards say of one line. */
export const joinedCards = (one: Card | undefined, other: Card | undefined): Card | undefined =>
  one && other
    ? {
        rows: [...one.rows, ...other.rows],
        steps: unique([...one.steps, ...other.steps]),
        sources: [...one.sources, ...other.sources],
      }
    : (one ?? other);

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
    const source = combine(...sources);
    parts.push(md`*${sourceText({ ...source, ref: folded(source.ref) })}*`);
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
