import { capacity4G1A, flexible60, flexible90, mineralAmbient } from "../tables/capacity-other.ts";
import { flexibleCords } from "../tables/drop.ts";
import type { Sourced } from "../tables/source.ts";
import { cellOf, numberCell } from "../tables/table.ts";
import type { FactorFound } from "./capacity-factors.ts";
import { degrees, plain, step } from "./result.ts";

/** Mineral and flexible cable, which have tables with columns of their own. */
interface OtherQuestion {
  readonly construction: "mineral" | "flex";
  readonly insulation: 70 | 90;
  /** The reference method; these tables know C and E. */
  readonly method: string;
  /** Loaded conductors. */
  readonly loaded: 2 | 3;
  readonly csa: number;
}

/** Tabulated capacity (A) at 30 °C. Flexible cable is tabulated for free air alone, where it lies clipped no hotter. */
export function otherCapacity({
  construction,
  insulation,
  method,
  loaded,
  csa,
}: OtherQuestion): Sourced<number> | undefined {
  if (method !== "C" && method !== "E") return undefined;
  if (construction === "mineral") return numberCell(capacity4G1A, { csa }, `${method}${loaded}`);
  const cord = insulation === 70 ? numberCell(flexibleCords, { csa }, "rating") : undefined;
  return cord ?? numberCell(insulation === 90 ? flexible90 : flexible60, { csa }, loaded === 2 ? "rating2" : "rating3");
}

/** Tabulated drop of flexible cable, V per ampere and metre. */
export function flexibleDrop(csa: number, insulation: 70 | 90, loaded: 2 | 3): Sourced<number> | undefined {
  const phases = loaded === 2 ? "phase1" : "phase3";
  const cord = insulation === 70 ? numberCell(flexibleCords, { csa }, phases) : undefined;
  const cell = cord ?? numberCell(insulation === 90 ? flexible90 : flexible60, { csa }, phases);
  return cell && { value: cell.value / 1000, source: cell.source };
}

/** Ca of mineral cable; of flexible cable no table here gives one. */
export function otherAmbient(construction: "mineral" | "flex", ambient: number): FactorFound {
  const row = construction === "mineral" && mineralAmbient.rows.find(({ facts }) => facts.temperature >= ambient);
  if (!row)
    return { missing: `no table here gives the ambient factor of ${construction} cable at ${degrees(ambient)}` };
  const { value, source } = cellOf(mineralAmbient, row, "factor");
  const taken = row.facts.temperature;
  const text = taken === ambient ? degrees(ambient) : `${degrees(ambient)}, taken as ${degrees(taken)}`;
  return { value, unit: "", steps: [step(`Ca at ${text}, mineral insulated`, "", plain(value))], source };
}
