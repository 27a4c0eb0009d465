import { bondingPme, bondingRules, buriedEarthing, protectiveSizes, supplementaryRules } from "../tables/protective.ts";
import { combine, fromFormula } from "../tables/source.ts";
import type { Row } from "../tables/table.ts";
import { cellOf, known, numberCell, sourceOf } from "../tables/table.ts";
import { nextSizeUp } from "./minimum-size.ts";
import type { Calculated, Step } from "./result.ts";
import { looked, ohms, plain, squareMillimetres, step, worked } from "./result.ts";

/** Protective conductor (mm²) that Table 54.7 allows without calculation, for a line of the same metal. */
export function selectedProtective(line: number): Calculated | undefined {
  const row = rowForSize(protectiveSizes.rows, line);
  if (row === undefined) return undefined;
  const { share, fixed } = row.facts;
  const value = fixed ?? nextSizeUp((share ?? 1) * line);
  if (value === undefined) return undefined;
  const rule = fixed === null ? (share === 1 ? "S" : "S/2, next size up") : "16 mm²";
  return worked(value, "mm²", sourceOf(protectiveSizes, row, fixed === null ? "share" : "fixed"), () => [
    step(`cpc for a line of S = ${squareMillimetres(line)}`, rule, squareMillimetres(value)),
  ]);
}

/**
 * Protective conductor (mm²) of another metal or build than the line, which Table 54.7 allows without calculation: what it
 * asks of the line's metal, times k1 of the line over k2 of the protective conductor. Not rounded up: steel has no
 * standard sizes.
 */
export function selectedOfOther(line: number, k1: Calculated, k2: Calculated): Calculated | undefined {
  const same = asTabled(line);
  if (same === undefined) return undefined;
  const value = (same.value * k1.value) / k2.value;
  const numbers = `${plain(k1.value)} / ${plain(k2.value)} × ${squareMillimetres(same.value)}`;
  const steps = [...same.steps, named("k1, of the line", k1), named("k2", k2)];
  return {
    value,
    unit: "mm²",
    steps: [...steps, step("S = k1 / k2 × S of Table 54.7", numbers, squareMillimetres(value))],
    source: fromFormula(combine(same.source, k1.source, k2.source)),
  };
}

/** What the table gives as it stands: half a size is a size of steel too. */
function asTabled(line: number): Calculated | undefined {
  const row = rowForSize(protectiveSizes.rows, line);
  if (row === undefined) return undefined;
  const { share, fixed } = row.facts;
  const value = fixed ?? (share ?? 1) * line;
  const rule = fixed === null ? (share === 1 ? "S" : "S/2") : "16 mm²";
  return worked(value, "mm²", sourceOf(protectiveSizes, row, fixed === null ? "share" : "fixed"), () => [
    step(`cpc for a line of S = ${squareMillimetres(line)}`, rule, squareMillimetres(value)),
  ]);
}

const named = (name: string, { value, steps }: Calculated): Step => ({
  ...step(name, "", plain(value)),
  ...(steps[0]?.from === undefined ? {} : { from: steps[0].from }),
});

/** Main bonding conductor (mm², copper) with a PME supply, by the size of the supply neutral: Table 54.8. */
export function mainBondingPme(neutral: number): Calculated | undefined {
  const row = rowForSize(bondingPme.rows, neutral);
  if (row === undefined) return undefined;
  const { value, source } = cellOf(bondingPme, row, "size");
  const steps = [
    looked(`main bonding for a neutral of ${squareMillimetres(neutral)}`, source.ref, squareMillimetres(value)),
  ];
  return { value, unit: "mm²", steps, source };
}

/** Main bonding conductor (mm², copper) in TN-S and TT: half the earthing conductor, at least 6 and no need of over 25. */
export function mainBonding(earthing: number): Calculated | undefined {
  const share = known(bondingRules, { key: "main-share" }, "value");
  const least = known(bondingRules, { key: "main-least" }, "value");
  const greatest = known(bondingRules, { key: "main-greatest" }, "value");
  const wanted = Math.min(Math.max(share.value * earthing, least.value), greatest.value);
  const value = nextSizeUp(wanted);
  if (value === undefined) return undefined;
  const numbers = `half of ${squareMillimetres(earthing)}, between ${least.value} and ${greatest.value} mm²`;
  const steps = [step("main bonding", numbers, squareMillimetres(value))];
  return { value, unit: "mm²", steps, source: fromFormula(combine(share.source, least.source, greatest.source)) };
}

/** Main bonding conductor (mm², copper) that every supply requires at the least. */
export const leastMainBonding = (): Calculated => rule("main-least", "main bonding, at the least");

/** Least supplementary bonding conductor (mm², copper) by whether it is mechanically protected. */
export function supplementaryBonding(isProtected: boolean): Calculated {
  return rule(isProtected ? "supplementary-protected" : "supplementary-unprotected", "supplementary bonding");
}

/** What it is where it joins a circuit's protective conductor (mm²) to pipes: half of that, undefined where less decides. */
export function supplementaryByCpc(cpc: number, isProtected: boolean): Calculated | undefined {
  const share = known(bondingRules, { key: "supplementary-share" }, "value");
  const value = nextSizeUp(share.value * cpc);
  const least = supplementaryBonding(isProtected);
  if (value === undefined || value <= least.value) return undefined;
  const numbers = `half of ${squareMillimetres(cpc)}, next size up`;
  const steps = [...least.steps, step("of the cpc it joins", numbers, squareMillimetres(value))];
  return { value, unit: "mm²", steps, source: fromFormula(combine(share.source, least.source)) };
}

/** Greatest resistance (Ω) between parts that supplementary bonding joins, by the current that clears the fault: 415.2.2. */
export function supplementaryResistance(current: Calculated): Calculated {
  const touch = known(supplementaryRules, { key: "touch" }, "value");
  const value = touch.value / current.value;
  const numbers = `${plain(touch.value)} V / ${plain(current.value)} A`;
  const steps = [...current.steps, step("R = 50 V / Ia", numbers, ohms(value))];
  return { value, unit: "Ω", steps, source: fromFormula(combine(touch.source, current.source)) };
}

/** The time (s) for which the operating current of an overcurrent device is taken there. */
export function supplementaryTime(): Calculated {
  const { value, source } = known(supplementaryRules, { key: "time" }, "value");
  return { value, unit: "s", steps: [], source };
}

/** Earthing conductor (mm²) a distributor usually asks for at a PME origin. */
export function pmeEarthing(): Calculated {
  return rule("pme-earthing", "earthing conductor, PME");
}

/** Least size (mm²) of an earthing conductor in the ground; undefined where protected on both counts: Table 54.7 decides. */
const protections = {
  both: "protected against corrosion and damage",
  corrosion: "protected against corrosion",
  mechanical: "protected against damage",
  neither: "without protection",
} as const;

export function buriedEarthingConductor(
  protection: "both" | "corrosion" | "mechanical" | "neither",
  metal: "copper" | "steel" = "copper",
): Calculated | undefined {
  const cell = numberCell(buriedEarthing, { key: protection }, metal);
  if (cell === undefined) return undefined;
  const steps = [looked(`buried, ${protections[protection]}`, cell.source.ref, squareMillimetres(cell.value))];
  return { value: cell.value, unit: "mm²", steps, source: cell.source };
}

function rule(key: string, label: string): Calculated {
  const { value, source } = known(bondingRules, { key }, "value");
  return { value, unit: "mm²", steps: [looked(label, source.ref, squareMillimetres(value))], source };
}

interface Band {
  readonly over: number;
  readonly upTo: number | null;
}

function rowForSize<F extends Band>(rows: readonly Row<F>[], size: number): Row<F> | undefined {
  return rows.find(({ facts }) => size > facts.over && (facts.upTo === null || size <= facts.upTo));
}
