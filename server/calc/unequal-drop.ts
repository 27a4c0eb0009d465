import type { Sourced } from "../tables/source.ts";
import { combine, fromFormula } from "../tables/source.ts";
import { reproducible } from "./reproducible.ts";
import type { Calculated } from "./result.ts";
import { amps, metres, plain, volts } from "./result.ts";

/** One line of a three-phase cable whose lines carry different currents, A. */
interface UnequalQuestion {
  /** Tabulated drop between lines, V per ampere and metre, of the line's size and of the neutral's. */
  readonly perAmpereMetre: Sourced<number>;
  readonly neutralPerAmpereMetre: Sourced<number>;
  readonly own: number;
  readonly others: readonly [number, number];
  /** m. */
  readonly length: number;
}

const millivolts = (value: number): string => `${plain(value * 1000)} mV/A/m`;

/**
 * Drop in V between a line and the neutral. The table's figure between lines is √3 times that of one conductor. In the
 * neutral flows the sum of the three currents, each a third of a turn behind the one before; of it, what lies along the
 * line's own voltage counts: its current less half of the other two. What lies across hardly changes the voltage, and
 * leaving it out is never too little. Where the others lift a line, nobody counts on it.
 */
export function unequalDrop(question: UnequalQuestion): Calculated {
  const { perAmpereMetre, neutralPerAmpereMetre, own, others, length } = question;
  const [one, other] = others;
  const along = own - (one + other) / 2;
  const neutral = Math.max(0, along);
  const per = (tabulated: Sourced<number>): number => tabulated.value / Math.sqrt(3);
  const value = (per(perAmpereMetre) * own + per(neutralPerAmpereMetre) * neutral) * length;
  const steps = [
    reproducible(
      "in the neutral, along this line: I − (I' + I'') / 2",
      [
        [own, amps],
        [one, amps],
        [other, amps],
      ],
      {
        write: (ownAmps, oneAmps, otherAmps) => `${ownAmps} − (${oneAmps} + ${otherAmps}) / 2`,
        compute: (ownAmps, oneAmps, otherAmps) => ownAmps - (oneAmps + otherAmps) / 2,
      },
      [along, (current) => (current < 0 ? `−${amps(-current)}, taken as none` : amps(current))],
    ),
    reproducible(
      "drop of line and neutral",
      [
        [perAmpereMetre.value, millivolts],
        [own, amps],
        [neutralPerAmpereMetre.value, millivolts],
        [neutral, amps],
        [length, metres],
      ],
      {
        write: (line, ownAmps, back, neutralAmps, whole) =>
          `(${line} / √3 × ${ownAmps} + ${back} / √3 × ${neutralAmps}) × ${whole}`,
        compute: (line, ownAmps, back, neutralAmps, whole) =>
          ((line * ownAmps + back * neutralAmps) / Math.sqrt(3)) * whole,
      },
      [value, volts],
    ),
  ];
  const source = fromFormula(combine(perAmpereMetre.source, neutralPerAmpereMetre.source));
  return { value, unit: "V", steps, source };
}
