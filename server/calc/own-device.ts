/** Figures of a device from a person's own book: limits of Zs as printed, and points of its time-current curve. */

import type { Edition } from "../tables/editions.ts";
import { fromFormula, type Sourced } from "../tables/source.ts";
import type { LoopLimit } from "./loop-limit.ts";
import { amps, looked, ohms, plain, round, seconds, step, volts } from "./result.ts";

export interface OwnFigure {
  /** s. */
  readonly time: number;
  /** Ω, at 230 V, as its book prints it. */
  readonly loop?: Sourced<number>;
  /** A that open it within that time. */
  readonly opens?: Sourced<number>;
}

const printedVoltage = 230;

/** The limit of Zs for a time, of a figure that is for that very time. */
export function ownLimit(
  figures: readonly OwnFigure[],
  time: number,
  { U0, edition }: { readonly U0: number; readonly edition: Edition },
): LoopLimit | undefined {
  const printed = figures.find((one) => one.loop && one.time === time)?.loop;
  if (printed) {
    const first = looked("Zs", printed.source.ref, ohms(printed.value));
    if (U0 === printedVoltage)
      return { value: printed.value, exact: printed.value, unit: "Ω", steps: [first], source: printed.source };
    const exact = (printed.value * U0) / printedVoltage;
    const value = round(exact, 2);
    const numbers = `${ohms(printed.value)} × ${plain(U0)} / ${printedVoltage}`;
    const steps = [first, step("Zs brought to the voltage", numbers, ohms(value))];
    return { value, exact, unit: "Ω", steps, source: fromFormula(printed.source) };
  }
  const point = figures.find((one) => one.opens && one.time === time)?.opens;
  if (!point) return undefined;
  const exact = (U0 * edition.cmin.value) / point.value;
  const value = round(exact, 2);
  const steps = [
    looked(`Ia in ${seconds(time)}`, point.source.ref, amps(point.value)),
    step("Zs = U0 × Cmin / Ia", `${volts(U0)} × ${plain(edition.cmin.value)} / ${amps(point.value)}`, ohms(value)),
  ];
  return { value, exact, unit: "Ω", steps, source: fromFormula(point.source) };
}

/** A point of a curve: A that open the device within s. */
interface CurvePoint {
  readonly current: number;
  readonly time: number;
  readonly source: Sourced<number>["source"];
}

/** Own points, the slowest first; a limit of Zs is one too. */
export const ownPoints = (figures: readonly OwnFigure[], cmin: number): readonly CurvePoint[] =>
  figures
    .flatMap(({ time, loop, opens }): CurvePoint[] => {
      if (opens) return [{ current: opens.value, time, source: opens.source }];
      return loop ? [{ current: (printedVoltage * cmin) / loop.value, time, source: loop.source }] : [];
    })
    .toSorted((one, other) => other.time - one.time);
