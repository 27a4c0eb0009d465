/** What no cable of a kind carries more than, where its own table stands on memory and so could only advise. */
import { capacity4D1A } from "../tables/capacity-70.ts";
import { capacity4E2A, capacity4E4A } from "../tables/capacity-90.ts";
import type { Sourced } from "../tables/source.ts";
import type { Table } from "../tables/table.ts";
import { numberCell } from "../tables/table.ts";
import type { CapacityQuestion, Method } from "./capacity.ts";

/**
 * A capacity at 30 °C (A) that a 70 °C cable never exceeds, from rows that were seen in print: cores in one sheath are
 * never cooler than the same cores single, and at 70 °C a cable carries less than one that may get to 90 °C, by the root
 * of the heat it may lose over its resistance. Undefined where nothing printed bounds it.
 */
export function capacityBound(question: CapacityQuestion): Sourced<number> | undefined {
  const { construction, insulation } = question;
  if (insulation !== 70 || construction === "singles") return undefined;
  const alike = construction === "armoured" || question.method === "E";
  const bound = alike ? fromHotter(question) : fromSingles(question);
  return bound?.source.standing === "memory" ? undefined : bound;
}

/** A flat cable above a ceiling or in a stud wall is no better off than one clipped in the open. */
const openest: Partial<Record<Method, Method>> = { "100": "C", "101": "C", "102": "C", "103": "C" };

function fromSingles({ method, loaded, csa }: CapacityQuestion): Sourced<number> | undefined {
  const found = cell(capacity4D1A, csa, `${openest[method] ?? method}${loaded}`);
  return found && { ...found, source: { ...found.source, ref: `${found.source.ref}, for single cores` } };
}

const resistance = (celsius: number): number => 230 + celsius;

/** Heat a conductor may lose at 70 °C against 90 °C in air of 30 °C, and the resistance that makes it. */
const cooler = Math.sqrt(((70 - 30) / (90 - 30)) * (resistance(90) / resistance(70)));

/** From cable made alike for 90 °C. A flat one may do a little better than a round one, so the freer table bounds it. */
function fromHotter({ construction, method, loaded, csa }: CapacityQuestion): Sourced<number> | undefined {
  const column = `${method}${loaded}`;
  const found = construction === "multicore" ? cell(capacity4E2A, csa, column) : cell(capacity4E4A, csa, column);
  if (!found || found.source.standing === "memory") return undefined;
  // In the ground the two tables do not keep that ratio in every edition: there the 90 °C figure itself is the bound.
  if (method === "D") return found;
  const ref = `${found.source.ref}, brought from 90 °C to 70 °C`;
  // Printed figures are rounded: half an ampere more could stand behind them.
  return { value: (found.value + 0.5) * cooler, source: { ...found.source, ref, standing: "computed" } };
}

const cell = <F extends { readonly csa: number }>(of: Table<F>, csa: number, column: string) =>
  numberCell<{ readonly csa: number }>(of, { csa }, column as "csa");
