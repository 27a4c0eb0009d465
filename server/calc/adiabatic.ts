import type { AdiabaticFactor } from "../tables/adiabatic.ts";
import { adiabaticFactors, adiabaticForms } from "../tables/adiabatic.ts";
import { energyClasses } from "../tables/devices.ts";
import type { Source } from "../tables/source.ts";
import { combine, fromFormula, squared } from "../tables/source.ts";
import { cellOf, rowOf, sourceOf } from "../tables/table.ts";
import { reproducible } from "./reproducible.ts";
import type { Calculated } from "./result.ts";
import { amps, looked, plain, seconds, squareMillimetres, step, worked } from "./result.ts";

/** Which k: use and metal of the conductor, what insulates it, and its size where large ones differ (mm²). */
interface FactorQuestion {
  readonly use:
    | "line"
    | "separate"
    | "incorporated"
    | "armour"
    | "enclosure"
    | "mineral-sheathed"
    | "mineral-bare"
    | "mineral-touchable";
  readonly material: "copper" | "aluminium" | "steel" | "lead";
  readonly insulation: "pvc70" | "pvc90" | "ts60" | "ts90";
  readonly csa?: number;
}

const cases: Readonly<Record<FactorQuestion["use"], string>> = {
  line: "line conductor",
  separate: "separate insulated or bare protective conductor, not bunched",
  incorporated: "incorporated in a cable or bunched",
  armour: "sheath or armour as protective conductor",
  enclosure: "steel conduit, ducting, trunking as protective conductor",
  "mineral-sheathed": "mineral insulated, thermoplastic sheath",
  "mineral-bare": "mineral insulated, bare",
  "mineral-touchable": "mineral insulated, bare and exposed to touch",
};

/** Above this size (mm²) thermoplastic has a lower k. */
const large = 300;

/** k (A√s/mm²) of Tables 43.1 and 54.2 to 54.5; undefined where they print none. */
export function adiabaticFactor({ use, material, insulation, csa = 0 }: FactorQuestion): Calculated | undefined {
  const row = rowOf(adiabaticFactors, { case: cases[use], material });
  if (row === undefined) return undefined;
  const thermoplastic = insulation === "pvc70" || insulation === "pvc90";
  const largeColumn: keyof AdiabaticFactor | undefined =
    thermoplastic && csa > large ? `${insulation}Large` : undefined;
  const column = largeColumn !== undefined && row.facts[largeColumn] !== null ? largeColumn : insulation;
  const { value, source } = cellOf(adiabaticFactors, row, column);
  if (value === null) return undefined;
  return worked(value, "A√s/mm²", source, () => [
    looked("k", `Table ${row.facts.table}, ${row.facts.case}`, plain(value)),
  ]);
}

/** Least size S = √(I²·t)/k (mm²), not yet rounded up to a standard one. For times to 5 s; undefined beyond. */
export function adiabaticSize(
  current: number,
  time: number,
  k: Pick<Calculated, "value" | "source">,
): Calculated | undefined {
  if (!(time > 0 && time <= 5)) return undefined;
  const value = (current * Math.sqrt(time)) / k.value;
  return worked(value, "mm²", fromFormula(combine(form("size"), k.source)), () => [
    reproducible(
      "S = √(I² × t) / k",
      [
        [current, amps],
        [time, seconds],
        [k.value, plain],
      ],
      {
        write: (amperes, long, factor) => `√((${amperes})² × ${long}) / ${factor}`,
        compute: (amperes, long, factor) => (amperes * Math.sqrt(long)) / factor,
      },
      [value, squareMillimetres],
    ),
  ]);
}

/** Energy k²S² (A²s) a conductor withstands. */
export function withstand(csa: number, k: Pick<Calculated, "value" | "source">): Calculated {
  const value = k.value ** 2 * csa ** 2;
  return worked(value, "A²s", fromFormula(combine(form("energy"), squared(k.source))), () => [
    step("k² × S²", `${plain(k.value)}² × ${plain(csa)}²`, `${plain(value, 0)} A²s`),
  ]);
}

/** A breaker whose energy limiting class is marked. Rating in A. */
interface LimitingBreaker {
  readonly curve: "B" | "C";
  readonly rating: number;
  readonly limitingClass: 2 | 3;
}

/** The column of the class table for a breaker; undefined above 32 A, where no figure is kept. */
const classColumn = ({ curve, rating }: LimitingBreaker) =>
  rating > 32 ? undefined : (`${curve === "B" ? "b" : "c"}${rating <= 16 ? 16 : 32}` as const);

/**
 * Let-through energy (A²s) of a breaker at a fault current (A), between the figures of its class at 3, 6 and 10 kA: it
 * rises with the current along a straight line on logarithmic scales. Below them it is taken in proportion to the
 * current, which errs upward: it falls faster. Undefined above 10 kA and above 32 A.
 */
export function letThroughAtFault(breaker: LimitingBreaker, fault: number): Calculated | undefined {
  const { limitingClass } = breaker;
  const column = classColumn(breaker);
  if (column === undefined) return undefined;
  const points = energyClasses.rows
    .filter(({ facts }) => facts.class === limitingClass)
    .map((row) => ({ at: row.facts.icn * 1000, ...cellOf(energyClasses, row, column) }))
    .toSorted((one, other) => one.at - other.at);
  const high = points.find(({ at }) => at >= fault);
  const low = points.findLast(({ at }) => at < fault);
  if (!high) return undefined;
  const at = ({ value, at: current }: typeof high) => `${plain(value)} A²s at ${current / 1000} kA`;
  if (!low) {
    const value = (high.value * fault) / high.at;
    const steps = [step("I²t", `class ${limitingClass}, ${at(high)}, in proportion below`, `${plain(value, 0)} A²s`)];
    return { value, unit: "A²s", steps, source: fromFormula(high.source) };
  }
  const slope = Math.log(high.value / low.value) / Math.log(high.at / low.at);
  const value = low.value * (fault / low.at) ** slope;
  const steps = [step("I²t", `class ${limitingClass}, ${at(low)} and ${at(high)}`, `${plain(value, 0)} A²s`)];
  return { value, unit: "A²s", steps, source: fromFormula(combine(low.source, high.source)) };
}

function form(key: string): Source {
  const row = rowOf(adiabaticForms, { key });
  if (row === undefined) throw new Error(`${adiabaticForms.id} lacks ${key}`);
  return sourceOf(adiabaticForms, row, "form");
}
