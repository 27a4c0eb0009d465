import { capacity4D5 } from "../tables/capacity-70.ts";
import { drop4D1B, drop4D2B, drop4E1B, dropLimits } from "../tables/drop.ts";
import { drop4E4B } from "../tables/reactance.ts";
import type { Source, Sourced } from "../tables/source.ts";
import { combine, fromFormula } from "../tables/source.ts";
import { known, numberCell, rowOf, sourceOf } from "../tables/table.ts";
import type { CapacityQuestion } from "./capacity.ts";
import { quotientOf, reproducible } from "./reproducible.ts";
import type { Calculated } from "./result.ts";
import { amps, metres, percent, plain, step, volts, worked } from "./result.ts";

/**
 * Tabulated drop in V per ampere and metre, at operating temperature: Table 4D5 for flat cable, 4D1B for singles, 4D2B
 * for the rest at 70 °C, 4E1B at 90 °C. Undefined for a size the tables lack.
 */
export function dropPerAmpereMetre(question: CapacityQuestion): Sourced<number> | undefined {
  const cell = millivolts(question);
  return cell === undefined ? undefined : { value: cell.value / 1000, source: cell.source };
}

function millivolts({ construction, insulation, method, loaded, csa }: CapacityQuestion): Sourced<number> | undefined {
  const phases = loaded === 2 ? "phase1" : "phase3";
  if (insulation === 90) {
    const small = numberCell(drop4E1B, { csa }, phases);
    if (small) return { ...small, source: ofTable(small.source, names90[construction]) };
    return construction === "armoured" ? numberCell(drop4E4B, { csa }, phases) : undefined;
  }
  if (construction === "flat-twin") return loaded === 2 ? numberCell(capacity4D5, { csa }, "drop") : undefined;
  if (construction !== "singles") {
    const cell = numberCell(drop4D2B, { csa }, phases);
    return cell && { ...cell, source: ofTable(cell.source, construction === "armoured" ? "4D4B" : "4D2B") };
  }
  // In conduit and trunking the conductors lie apart enough to drop a little more than touching.
  return numberCell(drop4D1B, { csa }, `${phases}${method === "A" || method === "B" ? "AB" : "CF"}`);
}

/** Tables that print the same figures stand here as one; a cable is judged by its own. */
const ofTable = (source: Source, table: string): Source => ({
  ...source,
  ref: source.ref.replace(/Tables .*$/, `Table ${table}`),
});

const names90 = { singles: "4E1B", "flat-twin": "4E2B", multicore: "4E2B", armoured: "4E4B" } as const;

/** A drop by its parts: mV/A/m of resistance and reactance, the power factor (a share), and Ct for cooler conductors. */
export const millivoltsByParts = (r: number, x: number, share: number, Ct = 1): number =>
  Ct * r * share + x * Math.sqrt(Math.max(0, 1 - share ** 2));

/**
 * What of a tabulated drop is left at a power factor and with cooler conductors, where resistance and reactance are
 * tabulated apart: (Ct r cos φ + x sin φ) / z, never above 1.
 */
export function dropByParts(
  question: CapacityQuestion,
  share: number,
  Ct: Calculated | undefined,
): Calculated | undefined {
  const { construction, insulation, loaded, csa } = question;
  const row = construction === "armoured" && insulation === 90 ? rowOf(drop4E4B, { csa }) : undefined;
  // Without a power factor the load may have the angle of the cable, where all of z counts.
  if (!row || share <= 0 || share >= 1) return undefined;
  const { r1, x1, phase1, r3, x3, phase3 } = row.facts;
  const [r, x, z] = loaded === 2 ? [r1, x1, phase1] : [r3, x3, phase3];
  const value = Math.min(1, millivoltsByParts(r, x, share, Ct?.value) / z);
  const own = fromFormula(sourceOf(drop4E4B, row, loaded === 2 ? "phase1" : "phase3"));
  return worked(value, "", Ct ? combine(own, Ct.source) : own, () => {
    const threeDecimals = (figure: number): string => plain(figure, 3);
    const line = reproducible(
      "(Ct r cos φ + x sin φ) / z",
      [
        [r, plain],
        [share, plain],
        [x, plain],
        [Math.sqrt(1 - share ** 2), threeDecimals],
        [z, plain],
        [Ct?.value ?? 1, threeDecimals],
      ],
      {
        write: (R, cosine, X, sine, Z, cooler) =>
          `(${Ct ? `${cooler} × ` : ""}${R} × ${cosine} + ${X} × ${sine}) / ${Z}`,
        compute: (R, cosine, X, sine, Z, cooler) => Math.min(1, (cooler * R * cosine + X * sine) / Z),
      },
      [value, threeDecimals],
    );
    return [...(Ct?.steps ?? []), line];
  });
}

/** Current in A, length in m of cable from the origin of the circuit to the load, or round the whole ring. */
interface DropQuestion {
  readonly perAmpereMetre: Sourced<number>;
  readonly current: number;
  readonly length: number;
  /** A ring has a quarter of the resistance of its cable laid out. */
  readonly ring?: boolean;
}

/** Voltage drop in V: mV/A/m × Ib × L / 1000. */
export function voltageDrop({ perAmpereMetre, current, length, ring = false }: DropQuestion): Calculated {
  const value = (perAmpereMetre.value * current * length) / (ring ? 4 : 1);
  return worked(value, "V", fromFormula(perAmpereMetre.source), () => {
    const quarter = ring ? " / 4" : "";
    return [
      reproducible(
        `drop = mV/A/m × Ib × L${quarter}`,
        [
          [perAmpereMetre.value, millivoltsPer],
          [current, amps],
          [length, metres],
        ],
        {
          write: (per, amperes, long) => `${per} × ${amperes} × ${long}${quarter}`,
          compute: (per, amperes, long) => (per * amperes * long) / (ring ? 4 : 1),
        },
        [value, volts],
      ),
    ];
  });
}

const millivoltsPer = (value: number): string => `${plain(value * 1000)} mV/A/m`;

/** A drop in V as a share of the nominal voltage, in %. */
export function dropPercent(drop: Calculated, nominal: number): Calculated {
  const value = (drop.value / nominal) * 100;
  return worked(value, "%", fromFormula(drop.source), () => [
    ...drop.steps,
    reproducible(
      "drop / U",
      [
        [drop.value, volts],
        [nominal, volts],
      ],
      { ...quotientOf, compute: (volt, of) => (volt / of) * 100 },
      [value, percent],
    ),
  ]);
}

/** Guidance for the drop from the origin to the load, in %: 3 for lighting, 5 for other uses, 6 and 8 on private supplies. */
export function dropLimit(use: "lighting" | "other", supply: "public" | "private" = "public"): Calculated {
  const key = supply === "private" ? `${use}-private` : use;
  const { value, source } = known(dropLimits, { key }, "percent");
  return {
    value,
    unit: "%",
    steps: [
      step(
        `drop advised at most, ${use === "lighting" ? "lighting" : "other than lighting"}, ${supply} supply`,
        "",
        percent(value),
      ),
    ],
    source,
  };
}
