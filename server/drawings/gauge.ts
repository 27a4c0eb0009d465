/** How a reading, or a calculated figure, stands to its limit. */
import { type Margin, marginOf, type Sense } from "../calc/margin.ts";
import { beyondLimit, onlyAsRemembered } from "../calc/verdict.ts";
import { type Bound, inUnit, marginTo, type PlannedTest, quantityOf } from "../readings/planned.ts";
import type { Source } from "../tables/source.ts";
import { type Gauge, tightest } from "./gauge-shapes.ts";

const shareOf = (sense: Bound["sense"], value: number, limit: number): number =>
  sense === "most" ? value / limit : limit / Math.max(value, limit / 1e6);

/** How a value that is calculated stands to a limit. */
export function gaugeOf(
  sense: Bound["sense"],
  value: number,
  limit: number,
  words: string,
  source: Source,
): Gauge | undefined {
  const margin = marginOf(sense, value, limit);
  if (!margin) return undefined;
  const standing = margin.passes ? "within" : beyondLimit(value, limit, source) === "unproven" ? "unproven" : "beyond";
  const doubt = margin.passes && onlyAsRemembered(value, limit, source) ? " as remembered" : "";
  return {
    used: shareOf(sense, value, limit),
    standing,
    text: words,
    left: `${leftWords(margin, sense)}${doubt}`,
  };
}

const leftWords = ({ text }: Margin, sense: Sense): string =>
  text.replace(/ it$/, sense === "least" ? " the least" : " the limit");

/** The tightest of a reading's limits; nothing where the reading shows nothing about any of them. */
export function gaugeOfTest(test: PlannedTest): Gauge | undefined {
  const quantity = quantityOf(test.recorded);
  if (!quantity) return undefined;
  const all = test.bounds.flatMap((bound): Gauge[] => {
    const margin = marginTo(bound, test.recorded);
    if (!margin) return [];
    const fails = beyondLimit(quantity.value, bound.value, bound.source) === "unproven" ? "unproven" : "beyond";
    return [
      {
        used: shareOf(bound.sense, quantity.value, bound.value),
        ...(test.expected ? { expected: shareOf(bound.sense, test.expected.value, bound.value) } : {}),
        standing: margin.passes ? "within" : fails,
        text: `${test.recorded?.text ?? ""} of ${bound.text}`,
        left: leftWords(margin, bound.sense),
      },
    ];
  });
  return tightest(all);
}

/** A bound and the reading's own unit in a few signs: `≤ 0.54 Ω`. */
export const boundText = ({ sense, value }: Bound, unit: PlannedTest["unit"]): string =>
  `${sense === "most" ? "≤" : "≥"} ${inUnit(value, unit)}`;
