import { known } from "../tables/table.ts";
import { testPrecautions } from "../tables/testing.ts";
import type { Calculated } from "./result.ts";
import { kiloamps, megohms, milliamps, milliseconds, ohms, percent, plain, step, volts } from "./result.ts";

/** How far an instrument may be out: a share of the reading, %, and steps of the last figure it shows. */
export interface StatedAccuracy {
  readonly percent: number;
  readonly digits: number;
}

/** What a meter shows: in base units, with one step of its last figure. */
export interface Shown {
  readonly value: number;
  readonly step: number;
  readonly unit: "Ω" | "s" | "A" | "V";
}

/** A resistance, a time or a current as a meter shows it. */
export const metered = (value: number, unit: Shown["unit"]): string => {
  if (unit === "s") return milliseconds(value);
  if (unit === "V") return volts(value);
  if (unit === "A") return Math.abs(value) < residual ? milliamps(value) : kiloamps(value);
  return Math.abs(value) >= 100_000 ? megohms(value) : ohms(value);
};

/** Below it a current is a residual current and is spoken of in mA, A. */
const residual = 5;

/** An uncertainty, and how it is written: ±0.05 Ω. */
export interface ReadingUncertainty extends Calculated {
  readonly shown: string;
}

/** The uncertainty of a reading: value × share + digits × one step of the last figure. */
export function readingUncertainty(
  { value, step: last, unit }: Shown,
  accuracy: StatedAccuracy,
  of: string,
): ReadingUncertainty {
  const uncertainty = (Math.abs(value) * accuracy.percent) / 100 + accuracy.digits * last;
  // A uncertainty is shown as finely as the reading it belongs to.
  const large = unit === "Ω" && Math.abs(value) >= 100_000;
  const small = unit === "A" && Math.abs(value) < residual;
  const size = (amount: number): string => {
    if (unit === "A") return small ? milliamps(amount) : kiloamps(amount);
    return large ? megohms(amount) : metered(amount, unit);
  };
  const share = `${size(value)} × ${percent(accuracy.percent)}`;
  const counted = accuracy.digits > 0 ? ` + ${plain(accuracy.digits, 0)} × ${size(last)}` : "";
  const formula = `uncertainty of ${of} = reading × share${counted ? " + digits × last figure" : ""}`;
  const shown = `±${size(uncertainty)}`;
  return {
    value: uncertainty,
    unit,
    shown,
    steps: [step(formula, `${share}${counted}`, shown)],
    source: { ref: `The accuracy stated for ${of}`, standing: "computed" },
  };
}

/** The least current, A, a continuity tester must drive. */
export function continuityTestCurrent(): Calculated {
  const { value, source } = known(testPrecautions, { key: "continuity-current" }, "value");
  const amps = value / 1000;
  return { value: amps, unit: "A", steps: [step("least current of a continuity test", "", milliamps(amps))], source };
}
