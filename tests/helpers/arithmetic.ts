/**
 * A line of working as it is printed, calculated again as whoever reads it would: `230 V × 0.95 / 160 A = 1.37 Ω`. The
 * figures of the line are those that are shown, to the last digit; only what it comes to may be rounded there, and a limit
 * that says so is cut off.
 */
interface Interval {
  readonly low: number;
  readonly high: number;
}

/** By which a unit is brought to its base unit. What is not here is no unit. */
const scales: Readonly<Record<string, number>> = {
  "mV/A/m": 1e-3,
  "mΩ/m": 1e-3,
  "V/A/m": 1,
  "A²s": 1,
  "mm²": 1,
  "m²": 1,
  "A√s/mm²": 1,
  mm: 1,
  m: 1,
  MΩ: 1e6,
  mΩ: 1e-3,
  Ω: 1,
  kA: 1e3,
  mA: 1e-3,
  A: 1,
  kVA: 1e3,
  kV: 1e3,
  V: 1,
  kW: 1e3,
  W: 1,
  ms: 1e-3,
  s: 1,
  "%": 1e-2,
  "°C": 1,
};
const units = Object.keys(scales).toSorted((a, b) => b.length - a.length);

/** What an expression of figures comes to; nothing where it holds a word or a sign that is none of arithmetic. */
function intervalOf(text: string): Interval | undefined {
  const reader = new Reader(text.trim(), isSum(text) ? 0 : 0.5);
  const found = reader.sum();
  return found && reader.isAtEnd() ? found : undefined;
}

/** The parts of a line that differ though one should be the other, `a = b`; nothing where they agree or say no figures. */
export function disagreement(line: string): string | undefined {
  for (const [part, next] of calculated(line)) {
    const [one, other] = [intervalOf(part), intervalOf(next)];
    if (one && other && (one.low > other.high + cutOff(line, other) || other.low > one.high))
      return `${part} = ${next}`;
  }
  return undefined;
}

/** A limit that is cut off and not rounded stands for all up to the next figure. */
const cutOff = (line: string, { low, high }: Interval): number => (line.startsWith("cold Zs × 0.8") ? high - low : 0);

/** The stroke within a unit divides nothing: what is divided is divided by a figure. */
const isSum = (part: string): boolean =>
  /[×+−√]|\/ ?[\d(√]/.test(part.trim().slice(1)) && !/^\S+ V [+−] \d+ %$/.test(part);

/** Whether something is calculated in a line, and can be calculated again. */
export const isCalculated = (line: string): boolean =>
  calculated(line).some(([part, next]) => intervalOf(part) && intervalOf(next));

/** What is calculated, each with what it comes to. `230 V + 10 %` is no sum, and what is below nothing is taken as none. */
function calculated(line: string): (readonly [part: string, next: string])[] {
  const parts = partsOf(line);
  return parts.flatMap((part, at) => {
    const next = parts[at + 1];
    return isSum(part) && next !== undefined ? [[part, next] as const] : [];
  });
}

/** Without where a figure is read, which stands in brackets at the end. */
const partsOf = (line: string): string[] => line.replace(/ \((?=[A-Z])[^()]*(?:\([^()]*\))?[^()]*\)$/, "").split(" = ");

class Reader {
  readonly #text: string;
  /** Of the last digit that is shown, how much a figure may be out. */
  readonly #share: number;
  #at = 0;

  constructor(text: string, share: number) {
    this.#text = text;
    this.#share = share;
  }

  isAtEnd(): boolean {
    return this.#at === this.#text.length;
  }

  sum(): Interval | undefined {
    let left = this.#product();
    for (let sign = this.#sign(/^ ?([+−]) /); left && sign; sign = this.#sign(/^ ?([+−]) /)) {
      const right = this.#product();
      left = right && (sign === "+" ? { low: left.low + right.low, high: left.high + right.high } : minus(left, right));
    }
    return left;
  }

  #product(): Interval | undefined {
    let left = this.#factor();
    for (let sign = this.#sign(/^ ?([×/]) ?/); left && sign; sign = this.#sign(/^ ?([×/]) ?/)) {
      const right = this.#factor();
      left = right && (sign === "×" ? times(left, right) : over(left, right));
    }
    return left;
  }

  #factor(): Interval | undefined {
    const root = this.#sign(/^(√)/);
    const negative = !root && this.#sign(/^([−±])/) === "−";
    let found: Interval | undefined;
    if (this.#sign(/^(\()/)) {
      found = this.sum();
      if (!this.#sign(/^(\))/)) return undefined;
    } else found = this.#figure();
    if (!found) return undefined;
    if (this.#sign(/^(²)/)) found = times(found, found);
    if (root) found = found.low < 0 ? undefined : { low: Math.sqrt(found.low), high: Math.sqrt(found.high) };
    return found && negative ? { low: -found.high, high: -found.low } : found;
  }

  #figure(): Interval | undefined {
    const digits = this.#sign(/^(\d+(?:\.\d+)?)/);
    if (digits === undefined) return undefined;
    const rest = this.#text.slice(this.#at).replace(/^ /, "");
    const unit = units.find((one) => rest.startsWith(one) && !/^[\p{L}²]/u.test(rest.slice(one.length))) ?? "";
    if (unit !== "") this.#at = this.#text.indexOf(unit, this.#at) + unit.length;
    const value = Number(digits);
    const shown = digits.split(".")[1]?.length ?? 0;
    const half = this.#share * 10 ** -shown + 1e-9;
    const scale = unit === "" ? 1 : (scales[unit] ?? 1);
    return { low: (value - half) * scale, high: (value + half) * scale };
  }

  #sign(pattern: RegExp): string | undefined {
    const found = pattern.exec(this.#text.slice(this.#at));
    if (!found) return undefined;
    this.#at += found[0].length;
    return found[1];
  }
}

const minus = (one: Interval, other: Interval): Interval => ({
  low: one.low - other.high,
  high: one.high - other.low,
});

function times(one: Interval, other: Interval): Interval {
  const all = [one.low * other.low, one.low * other.high, one.high * other.low, one.high * other.high];
  return { low: Math.min(...all), high: Math.max(...all) };
}

const over = (one: Interval, other: Interval): Interval | undefined =>
  other.low <= 0 ? undefined : times(one, { low: 1 / other.high, high: 1 / other.low });
