/**
 * What is left between a value and its limit: in one rounding and one wording for everything that is shown, so that a
 * hover, a hint, a report and the terminal cannot differ by a digit.
 */
import { exceeds, fallsShort } from "./compare.ts";
import { percent, plain } from "./result.ts";

export type Sense = "most" | "least";

export interface Margin {
  readonly passes: boolean;
  /** What is left as a share of the limit; negative beyond it, however little. */
  readonly share: number;
  /** `31 % left`, `2 % over`, `more than 58 times it`, `12 times it`, `only 80 % of it`. */
  readonly text: string;
  /** The same before the limit itself: `31 % left of `, `2 % over `, `12 times `. */
  readonly upTo: string;
}

/**
 * The margin of a value, both in the same unit. `sign` is that of a reading off the scale: `>` is more than the value.
 * Nothing where the reading shows nothing about the limit, or there is no finite one above zero.
 */
export function marginOf(sense: Sense, value: number, limit: number, sign: "=" | "<" | ">" = "="): Margin | undefined {
  if (!(limit > 0) || !Number.isFinite(limit) || !Number.isFinite(value)) return undefined;
  return sense === "most" ? under(value, limit, sign) : above(value, limit, sign);
}

/** A pass shows no more than is left, a failure no less than is lacking. */
function under(value: number, limit: number, sign: string): Margin | undefined {
  const over = exceeds(value, limit);
  if (sign === "<" ? over : sign === ">" && value < limit) return undefined;
  const share = 1 - value / limit;
  if (over || sign === ">") return fails(share, over ? beyond(value / limit) : "over");
  const left = `${sign === "<" ? "more than " : ""}${percent(down(share))} left`;
  return { passes: true, share: Math.max(share, 0), text: left, upTo: `${left} of` };
}

function above(value: number, limit: number, sign: string): Margin | undefined {
  const short = fallsShort(value, limit);
  if (sign === ">" ? short : sign === "<" && value > limit) return undefined;
  const share = value / limit - 1;
  if (sign === "<") return fails(share, short ? `less than ${percent(down(value / limit))} of` : "below");
  if (short) return fails(share, `only ${percent(down(value / limit))} of`);
  const times = timesOf(value / limit);
  return { passes: true, share: Math.max(share, 0), text: `${times} it`, upTo: times };
}

/** A hundred per cent more and again says less than how many times it is. */
const mostInPercent = 10;

/** Rounded so that what is shown is surely exceeded. */
const beyond = (times: number): string =>
  times <= mostInPercent ? `${percent(up(times - 1))} over` : `more than ${plain(Math.ceil(times - 1e-6) - 1)} times`;

/** What fails is distinguished from what passes even where no figure can be shown. */
const fails = (share: number, upTo: string): Margin => ({
  passes: false,
  share: Math.min(share, -1e-9),
  text: upTo.endsWith("% over") ? upTo : `${upTo} it`,
  upTo,
});

function timesOf(times: number): string {
  if (times >= 100) return "far above";
  const shown = times < 10 ? Math.floor(times * 10 + 1e-6) / 10 : Math.floor(times + 1e-6);
  return shown <= 1 ? "just on" : `${plain(shown, 1)} times`;
}

/** A share in hundredths: whole ones, and below the first a single figure, so that little is not shown as nothing. */
const down = (share: number): number => inHundredths(share, (of) => Math.floor(of + 1e-6));
const up = (share: number): number => inHundredths(share, (of) => Math.ceil(of - 1e-6));

function inHundredths(share: number, cut: (of: number) => number): number {
  const of = Math.max(share, 0) * 100;
  const scale = of >= 1 ? 1 : of >= 0.1 ? 10 : 100;
  return cut(of * scale) / scale;
}
