import { alike } from "../memo/alike.ts";
import { legacyTripBands } from "../tables/devices.ts";
import type { Edition } from "../tables/editions.ts";
import { breakerLoop, breakerLoopD5s, loopTerms } from "../tables/loop-breakers.ts";
import { bs1361Loop, fuseLoop5, fuseLoop04, fuseLoop2008 } from "../tables/loop-fuses.ts";
import type { Source, Sourced } from "../tables/source.ts";
import { combine, fromFormula } from "../tables/source.ts";
import { type Family, type Fuse, familyOf, isFuse } from "../tables/standard-values.ts";
import { numberCell } from "../tables/table.ts";
import type { Calculated, Step } from "./result.ts";
import { amps, looked, ohms, plain, round, seconds, step, volts } from "./result.ts";

/** What decides the greatest earth fault loop impedance. Rating in A, time in s, U0 in V. */
export interface LoopQuestion {
  /** As a schedule writes it: "BS EN 60898", "BS EN 61009-1", "BS 3871", "BS 88-2", "BS 3036", … */
  readonly standard: string;
  /** B, C or D; 1, 2, 3 or 4 for BS 3871. */
  readonly curve?: string;
  readonly rating: number;
  /** 0.4 or 5 in TN; 0.2 or 1 in TT. */
  readonly time: number;
  readonly U0: number;
  readonly edition: Edition;
}

/** A limit as the table prints it, with the quotient before rounding (Ω). */
export interface LoopLimit extends Calculated {
  readonly exact: number;
}

/** The voltage and factor at which the tables are printed. */
const tableVoltage = 230;
const tableCmin = 0.95;

/** A magnetic trip acts within this time or not at all; shorter limits need other means. */
const magneticTime = 0.1;

/**
 * Greatest Zs (Ω, hot) for disconnection in time: Table 41.3 by formula for breakers, Tables 41.2 and 41.4 for fuses,
 * scaled to the edition's Cmin. Undefined where no table covers the device, rating or time.
 */
export const loopLimit = alike(
  ({ standard, curve, rating, time, U0, edition }: LoopQuestion) =>
    `${standard}|${curve}|${rating}|${time}|${U0}|${edition.id}`,
  computeLoopLimit,
);

function computeLoopLimit(question: LoopQuestion): LoopLimit | undefined {
  if (!(question.rating > 0 && question.U0 > 0)) return undefined;
  const family = familyOf(question.standard);
  if (family === undefined) return undefined;
  return isFuse(family) ? fuseLimit(question, family) : breakerLimit(question, family);
}

function breakerLimit(question: LoopQuestion, family: "breaker" | "legacy-breaker"): LoopLimit | undefined {
  const { rating, time, U0, edition } = question;
  const curve = question.curve?.toUpperCase();
  if (curve === undefined || time < magneticTime) return undefined;
  const slow = family === "breaker" && curve === "D" && time >= 5;
  const multiple = slow ? slowD : tripMultiple(family, curve);
  if (multiple === undefined) return undefined;

  const { value: cmin, source: cminSource } = edition.cmin;
  const Ia = multiple.value * rating;
  const exact = (U0 * cmin) / Ia;
  const cell = slow ? undefined : printed(question, family, curve);
  const value = cell?.value ?? round(exact, 2);
  const source = cell?.source ?? fromFormula(combine(multiple.source, cminSource));
  const steps = [
    step(`Ia = ${plain(multiple.value)} × In`, `${plain(multiple.value)} × ${amps(rating)}`, amps(Ia)),
    step("Zs = U0 × Cmin / Ia", `${volts(U0)} × ${plain(cmin)} / ${amps(Ia)}`, ohms(value)),
  ];
  return { value, exact, unit: "Ω", steps, source };
}

/** At 5 s the printed type D row is that of ten times In; the table carries its standing. */
const slowD: Sourced<number> = {
  value: 10,
  source: {
    ref: breakerLoopD5s.ref,
    standing: breakerLoopD5s.rows[0]?.standing ?? "memory",
    note: "At 5 s a type D breaker is taken to trip at 10 × In.",
  },
};

function tripMultiple(family: "breaker" | "legacy-breaker", curve: string): Sourced<number> | undefined {
  if (family === "legacy-breaker") return numberCell(legacyTripBands, { curve }, "to");
  return ["B", "C", "D"].includes(curve) ? numberCell(loopTerms, { key: curve }, "value") : undefined;
}

/** The cell of the table that prints this very case. Some of the older figures were cut and not rounded. */
function printed({ rating, U0, edition }: LoopQuestion, family: Family, curve: string): Sourced<number> | undefined {
  if (family !== "breaker" || U0 !== tableVoltage) return undefined;
  const column = edition.cmin.value === tableCmin ? "zs" : edition.cmin.value === 1 ? "zsCmin1" : undefined;
  const wanted = { curve: curve as "B" | "C" | "D", rating };
  const cell = column === undefined ? undefined : numberCell(breakerLoop, wanted, column);
  return cell && { ...cell, source: citedBy(cell.source, edition) };
}

/** The same table number in the edition a schedule is judged to, where that edition prints the same figures. */
function citedBy(source: Source, { id, takesNumbersFrom }: Edition): Source {
  if (takesNumbersFrom !== undefined) return source;
  return { ...source, ref: source.ref.replace(/^BS 7671:[^,]+/, id) };
}

function fuseLimit(question: LoopQuestion, family: Fuse): LoopLimit | undefined {
  const { rating, time, U0, edition } = question;
  const cmin = edition.cmin.value;
  const found = fuseCell(family, question);
  if (found === undefined) return undefined;
  const ratio = ((U0 / tableVoltage) * cmin) / found.cmin;
  const exact = found.exact * ratio;
  const label = `${family} ${amps(rating)}, ${seconds(time)}`;
  const cited = found.cmin === cmin && family !== "BS 1361" ? citedBy(found.cell.source, edition) : found.cell.source;
  const steps: Step[] = [looked("Zs", `${cited.ref}: ${label}`, ohms(found.cell.value))];
  if (ratio === 1) return { value: found.cell.value, exact, unit: "Ω", steps, source: cited };
  const value = round(exact, 2);
  const numbers = `${ohms(found.cell.value)} × ${plain(U0)} / ${tableVoltage} × ${plain(cmin)} / ${plain(found.cmin)}`;
  steps.push(step("Zs brought to the voltage and Cmin of the edition", numbers, ohms(value)));
  return { value, exact, unit: "Ω", steps, source: fromFormula(combine(cited, edition.cmin.source)) };
}

interface FuseCell {
  readonly cell: Sourced<number>;
  readonly exact: number;
  /** The factor the cell was printed with. */
  readonly cmin: number;
}

function fuseCell(family: Fuse, { rating, time, edition }: LoopQuestion): FuseCell | undefined {
  if (time !== 0.4 && time !== 5) return undefined;
  const cmin = edition.cmin.value;
  if (family === "BS 1361") return legacyFuseCell(rating, time, cmin);
  if (family === "BS 88-2" && edition.id === fuses2008) return cellOf2008(rating, time);
  const wanted = { standard: family, rating };
  const column = (name: "zs" | "zsCmin1") =>
    time === 5 ? numberCell(fuseLoop5, wanted, name) : numberCell(fuseLoop04, wanted, name);
  const older = cmin === 1 ? asPrinted(column("zsCmin1"), 1) : undefined;
  if (older !== undefined) return older;
  const cell = column("zs");
  const Ia = time === 5 ? undefined : numberCell(fuseLoop04, wanted, "Ia");
  // Only where the value was computed from Ia is the quotient known better than the two decimals printed.
  if (cell?.source.standing === "computed" && Ia !== undefined && Ia.source.standing !== "memory") {
    return { cell, exact: (tableVoltage * tableCmin) / Ia.value, cmin: tableCmin };
  }
  return asPrinted(cell, tableCmin);
}

/** The edition whose general purpose fuses were those of BS 88-2.2 and BS 88-6, with limits of their own. */
const fuses2008 = "BS 7671:2008";

const cellOf2008 = (rating: number, time: 0.4 | 5): FuseCell | undefined =>
  asPrinted(numberCell(fuseLoop2008, { rating }, time === 5 ? "zs5" : "zs04"), 1);

function legacyFuseCell(rating: number, time: 0.4 | 5, cmin: number): FuseCell | undefined {
  if (cmin === 1) return asPrinted(numberCell(bs1361Loop, { rating }, time === 5 ? "zs5" : "zs04"), 1);
  return asPrinted(numberCell(bs1361Loop, { rating }, time === 5 ? "zs5Cmin" : "zs04Cmin"), tableCmin);
}

function asPrinted(cell: Sourced<number> | undefined, cmin: number): FuseCell | undefined {
  return cell === undefined ? undefined : { cell, exact: cell.value, cmin };
}
