/** Where a check changes its mind as one figure of a sample is made smaller or larger, to its last digit. */
import type { Rule } from "../../../server/rules/frame/rule.ts";
import { figuresOf, gravityWith, type samplesOf, turnText } from "./record.ts";

type Sample = ReturnType<typeof samplesOf>[number];
type Figure = ReturnType<typeof figuresOf>[number];
type Found = readonly [value: string, found: string];

export function turnsOf(rule: Rule, sample: Sample): string[] {
  return figuresOf(sample).flatMap((figure, at) => {
    const [less, more] = [
      [0.9, 0.5, 0.1],
      [1.1, 2, 10],
    ].map((shares) => turn(rule, sample, figure, shares));
    // A figure that may only be itself, such as a size or a reading that repeats another, turns at no limit.
    const only = less && more && [less, more].every(([[value]]) => Number(value) === Number(figure.written));
    return only ? [] : [less, more].flatMap((found) => (found ? [turnText(at, figure, found)] : []));
  });
}

function turn(
  rule: Rule,
  sample: Sample,
  figure: Figure,
  shares: readonly number[],
): readonly [Found, Found] | undefined {
  const written = Number(figure.written);
  const found = (value: string) => gravityWith(rule, sample, figure, value);
  const own = found(figure.written);
  if (own === undefined) return undefined;
  for (const share of shares) {
    const decimals = decimalsOf(figure.written) + (written * share < 20 * 10 ** -decimalsOf(figure.written) ? 1 : 0);
    const shown = (units: number): string => (units / 10 ** decimals).toFixed(decimals);
    let [near, far] = [written, written * share].map((value) => Math.round(value * 10 ** decimals)) as [number, number];
    let beyond = found(shown(far));
    if (near === far || beyond === undefined || beyond === own) continue;
    while (Math.abs(far - near) > 1) {
      const middle = Math.round((near + far) / 2);
      const there = found(shown(middle));
      if (there === own) near = middle;
      else [far, beyond] = [middle, there ?? "not sound"];
    }
    return [
      [shown(near), own],
      [shown(far), beyond],
    ];
  }
  return undefined;
}

const decimalsOf = (written: string): number => written.split(".")[1]?.length ?? 0;
