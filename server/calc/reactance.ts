import { drop4D1B } from "../tables/drop.ts";
import { drop4E4B, otherReactances } from "../tables/reactance.ts";
import { fromFormula, type Source, type Sourced } from "../tables/source.ts";
import { cellOf, known, numberCell, rowOf } from "../tables/table.ts";
import { type Calculated, looked, milliohms, worked } from "./result.ts";

/** How the cores of a cable lie to each other, which decides their reactance. */
export type Lying = "in-cable" | "armoured" | "enclosed" | "touching";

/** Above this size, mm², the reactance of a conductor counts beside its resistance. */
export const reactanceAbove = (): number => known(otherReactances, { key: "counts-above" }, "value").value;

/** Ω per metre of one conductor: half of what two of them drop. Nothing for sizes whose resistance alone decides. */
export function reactancePerMetre(csa: number, lying: Lying): Calculated | undefined {
  if (csa <= reactanceAbove()) return undefined;
  const found = lying === "enclosed" || lying === "touching" ? ofSingles(csa, lying) : ofCores(csa, lying);
  if (!found) return undefined;
  const { value, source } = found;
  return worked(value, "Ω/m", source, () => [looked(`x of ${csa} mm²`, source.ref, `${milliohms(value)}/m`)]);
}

function ofCores(csa: number, lying: "in-cable" | "armoured"): Sourced<number> | undefined {
  const cell = numberCell(drop4E4B, { csa }, "x1");
  if (!cell) return undefined;
  const source = fromFormula(cell.source);
  // Cores without armour lie as far apart; insulation of 70 °C is a little thicker.
  return { value: cell.value / 2000, source: lying === "armoured" ? source : likely(source, 0.1) };
}

/** Of singles z is tabulated and their resistance; what is left of one without the other is their reactance. */
function ofSingles(csa: number, lying: "enclosed" | "touching"): Sourced<number> | undefined {
  const row = rowOf(drop4D1B, { csa });
  if (!row) return undefined;
  const z = cellOf(drop4D1B, row, lying === "enclosed" ? "phase1AB" : "phase1CF");
  const r = row.facts.dc;
  const value = Math.sqrt(Math.max(0, z.value ** 2 - r ** 2)) / 2000;
  // Both figures have two digits, and alternating current meets a little more resistance than direct.
  return { value, source: likely(fromFormula(z.source), 0.15) };
}

/** Steel wire armour that carries the fault current. */
export function armourReactance(csa: number): Calculated | undefined {
  if (csa <= reactanceAbove()) return undefined;
  const { value, source } = known(otherReactances, { key: "armour" }, "value");
  return worked(value, "Ω/m", source, () => [looked("x of the armour", source.ref, `${milliohms(value)}/m`)]);
}

const likely = (source: Source, share: number): Source => ({
  ...source,
  standing: "memory",
  remembered: [...(source.remembered ?? []), { figure: `${source.ref}, reactance`, share }],
});

/** The imaginary part of two impedances side by side, each r + jx in one unit. */
export function sideBySide(one: readonly [number, number], other: readonly [number, number]): number {
  const [r1, x1] = one;
  const [r2, x2] = other;
  const [r, x] = [r1 + r2, x1 + x2];
  const top = [r1 * r2 - x1 * x2, r1 * x2 + r2 * x1] as const;
  return (top[1] * r - top[0] * x) / (r ** 2 + x ** 2);
}
