/** What a cable carries at the most, where its route, its metal or its lines leave open which figure of a table is its own. */
import { correctedCapacity, type Method, tabulatedCapacity } from "../calc/capacity.ts";
import { capacityBound } from "../calc/capacity-bound.ts";
import { amps, type Calculated, step, worked } from "../calc/result.ts";
import { fromFormula, type Sourced } from "../tables/source.ts";
import { type Cable, isTabled } from "./cable.ts";
import { methodOf } from "./route-capacity.ts";
import type { WayStudy } from "./way.ts";

const methods: readonly Method[] = ["A", "B", "C", "D", "E", "100", "101", "102", "103"];

/** mm². From 25 mm² up single cables in free air carry more than by any method that is kept here. */
const largest = 16;

/**
 * Iz (A) that the cable of a way cannot exceed by any method it could be laid by, with two loaded conductors and by itself:
 * three carry less, and so does aluminium. Undefined where its capacity is known, stated, or bounded by no table.
 */
export function capacityCeiling(study: WayStudy): Calculated | undefined {
  const { cable, device, facts } = study;
  if (!cable || !isTabled(cable) || cable.own?.carries || cable.line > largest) return undefined;
  const known = facts.all("route").map(methodOf);
  const open = known.length === 0 || known.includes(undefined) ? methods : known.filter((one) => one !== undefined);
  const [most] = open
    .flatMap((method) => mostBy(cable, method) ?? [])
    .toSorted((one, other) => other.value - one.value);
  if (!most) return undefined;
  const one = correctedCapacity({
    It: most,
    insulation: cable.insulation,
    ...(device?.family === "BS 3036" ? { semiEnclosed: true } : {}),
  });
  return "missing" in one ? undefined : times(one, cable.parallel.line);
}

function mostBy(cable: Cable, method: Method): Sourced<number> | undefined {
  if (!isTabled(cable)) return undefined;
  const { construction, insulation, line } = cable;
  const question = { construction, insulation, method, loaded: 2, csa: line } as const;
  return capacityBound(question) ?? tabulatedCapacity(question);
}

function times(one: Calculated, count: number): Calculated {
  if (count === 1) return one;
  const value = one.value * count;
  const steps = () => [...one.steps, step(`Iz of ${count} in parallel`, `${count} × ${amps(one.value)}`, amps(value))];
  return worked(value, "A", fromFormula(one.source), steps);
}
