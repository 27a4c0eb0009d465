/** A line of arithmetic that whoever reads it can do again with a calculator, from the figures that it shows. */
import { percent, plain, type Step, step } from "./result.ts";

/** A figure as it is written. */
type Show = (value: number) => string;

/** A figure of a line, in its base unit, and how it is written. */
type Operand = readonly [value: number, show: Show];

/** As many of one kind as there are figures. */
type Each<T extends readonly unknown[], Of> = { readonly [At in keyof T]: Of };

interface Arithmetic<T extends readonly unknown[] = readonly unknown[]> {
  /** The line, from its figures as they are written. */
  readonly write: (...texts: Each<T, string>) => string;
  /** The same with numbers. */
  readonly compute: (...values: Each<T, number>) => number;
}

/** Beyond so many decimals more a reader gains nothing: what still does not come out is stated as it is. */
const mostDecimalsMore = 5;

/**
 * The figures of a line are exact and shown rounded, and what is shown need not come to what the exact ones come to. So
 * they get as many decimals as it takes until it does.
 */
export function reproducible<const T extends readonly Operand[]>(
  formula: string,
  operands: T,
  { write, compute }: Arithmetic<T>,
  [value, show]: Operand,
): Step {
  const result = show(value);
  const written = (more: number) =>
    operands.map(([operand, showOperand]) => withMore(showOperand(operand), operand, more)) as Each<T, string>;
  for (let more = 0; more <= mostDecimalsMore; more++) {
    const texts = written(more);
    if (show(compute(...(texts.map(read) as Each<T, number>))) === result)
      return step(formula, write(...texts), result);
  }
  return step(formula, write(...written(0)), result);
}

const prefixes: Readonly<Record<string, number>> = { k: 1e3, m: 1e-3, M: 1e6 };

/** By what the figure of a text has to be multiplied for its base unit. */
function scaleOf(text: string): number {
  const prefix = /^\S+ ([kmM])(?=[ΩVAW])/.exec(text)?.[1];
  return prefix === undefined ? 1 : (prefixes[prefix] ?? 1);
}

/** What a figure as it is written stands for, in its base unit. */
const read = (text: string): number => Number.parseFloat(text) * scaleOf(text);

/** The text of a value with so many decimals more. */
function withMore(text: string, value: number, more: number): string {
  const figure = /^-?\d+(?:\.(\d+))?/.exec(text);
  if (more === 0 || !figure) return text;
  const fuller = plain(value / scaleOf(text), (figure[1]?.length ?? 0) + more);
  // One with fewer signs than before would only have lost its zeros.
  return fuller.length > figure[0].length ? `${fuller}${text.slice(figure[0].length)}` : text;
}

/** Figures that are added. */
export const addition: Arithmetic = {
  write: (...texts) => texts.join(" + "),
  compute: (...values) => values.reduce((sum, value) => sum + value, 0),
};

/** One figure by another. */
export const productOf: Arithmetic<readonly [number, number]> = {
  write: (one, other) => `${one} × ${other}`,
  compute: (one, other) => one * other,
};

/** One figure divided by another. */
export const quotientOf: Arithmetic<readonly [number, number]> = {
  write: (one, other) => `${one} / ${other}`,
  compute: (one, other) => one / other,
};

/** Figures of one kind that are added. */
export const sumStep = (formula: string, values: readonly number[], show: Show, value: number): Step =>
  reproducible(
    formula,
    values.map((one) => [one, show]),
    addition,
    [value, show],
  );

/** Figures that are multiplied. */
export const productStep = (formula: string, factors: readonly Operand[], result: Operand): Step =>
  reproducible(
    formula,
    factors,
    {
      write: (...texts) => texts.join(" × "),
      compute: (...values) => values.reduce((product, value) => product * value, 1),
    },
    result,
  );

/** So many per cent of a figure. */
export const shareStep = (formula: string, share: number, of: Operand, result: Operand): Step =>
  reproducible(
    formula,
    [[share * 100, percent], of],
    { write: productOf.write, compute: (percents, whole) => (percents / 100) * whole },
    result,
  );

/** One figure divided by another. */
export const quotientStep = (formula: string, above: Operand, below: Operand, result: Operand): Step =>
  reproducible(formula, [above, below], quotientOf, result);
