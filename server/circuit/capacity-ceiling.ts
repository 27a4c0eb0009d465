/** What a cable carries at the most, where its route, its metal, its size or its lines leave open which figure is its own. */
import { correctedCapacity, type Method, tabulatedCapacity } from "../calc/capacity.ts";
import { capacityBound } from "../calc/capacity-bound.ts";
import { greatestBy } from "../calc/compare.ts";
import { resistancePerMetre } from "../calc/conductor-resistance.ts";
import { fromAbove } from "../calc/minimum-size.ts";
import type { Calculated } from "../calc/result.ts";
import { combine, type Sourced, sourced } from "../tables/source.ts";
import { type Cable, isTabled } from "./cable.ts";
import { capacityOfAll, methodOf } from "./route-capacity.ts";
import type { WayStudy } from "./way.ts";

const methods: readonly Method[] = ["A", "B", "C", "D", "E", "100", "101", "102", "103"];

/** Cores in one sheath or armour are covered by the methods that are kept here in every size. */
const mayBeSingle = ({ construction, cores }: Cable): boolean =>
  (construction !== "armoured" && construction !== "multicore") || cores === 1;

/** mm². From 25 mm² up single cables in free air carry more than by any method that is kept here. */
const largest = 16;

/**
 * What aluminium carries of the current of copper of the same size, where both lose the same heat: the root of their
 * resistances by BS EN 60228. That the tables of aluminium keep this ratio is from memory, within its band. Undefined for
 * a size that the standard does not have in aluminium.
 */
function aluminiumShare(csa: number): Sourced<number> | undefined {
  const [copper, aluminium] = [resistancePerMetre(csa), resistancePerMetre(csa, "aluminium")];
  if (!copper || !aluminium) return undefined;
  const ref = `BS 7671:2018+A2:2022, Tables 4H and 4J, of aluminium; here by its resistance, ${aluminium.source.ref}`;
  return sourced(Math.sqrt(copper.value / aluminium.value), ref, "memory");
}

/** Of a figure for copper, what the metal of a cable carries at the most; that of copper where no more is known. */
function inItsMetal(copper: Sourced<number>, { material, line }: Cable): Sourced<number> {
  const share = material === "aluminium" ? aluminiumShare(line) : undefined;
  return share ? { value: copper.value * share.value, source: combine(copper.source, share.source) } : copper;
}

/**
 * Iz (A) that the cable of a way cannot exceed by any method it could be laid by, by itself: with as many loaded conductors
 * as it has lines, or with two where no table has three, which carry less. Undefined where its capacity is known, stated,
 * or bounded by no table.
 */
export function capacityCeiling({ cable, device, facts, threePhase }: WayStudy): Calculated | undefined {
  if (!cable || !isTabled(cable) || cable.own?.carries) return undefined;
  if (cable.line > largest && mayBeSingle(cable)) return undefined;
  const { construction, insulation, line, parallel } = cable;
  const mostOf = (method: Method, loaded: 2 | 3): Sourced<number> | undefined =>
    fromAbove(line, (csa) => {
      const question = { construction, insulation, method, loaded, csa } as const;
      return capacityBound(question) ?? tabulatedCapacity(question);
    });
  const mostBy = (method: Method) => (threePhase ? mostOf(method, 3) : undefined) ?? mostOf(method, 2);
  const known = facts.all("route").map(methodOf);
  const open = known.length === 0 || known.includes(undefined) ? methods : known.filter((one) => one !== undefined);
  const tabled = open.flatMap((method) => mostBy(method) ?? []);
  const most = greatestBy(tabled, ({ value }) => value)?.one;
  if (!most) return undefined;
  const one = correctedCapacity({
    It: inItsMetal(most, cable),
    insulation,
    ...(device?.family === "BS 3036" ? { semiEnclosed: true } : {}),
  });
  return "missing" in one ? undefined : capacityOfAll(one, parallel.line);
}
