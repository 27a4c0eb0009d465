/** Where a circuit is right only if a figure from memory is: what a design that is signed should not rest on. */
import type { Relation } from "../calc/overload.ts";
import { onlyAsRemembered } from "../calc/verdict.ts";
import { overloadRelations } from "../circuit/overload-relations.ts";
import { suffices } from "../circuit/protective.ts";
import { exactReading } from "../circuit/supply.ts";
import type { WayStudy } from "../circuit/way.ts";
import type { Fact } from "../model/values.ts";
import { designLoop, protectiveAtFault } from "../readings/loop.ts";
import { combine, type Source } from "../tables/source.ts";

/** A comparison that holds as remembered, and would not at the unfavourable end of the band. */
interface AsRemembered {
  readonly what: string;
  readonly value: number;
  readonly limit: number;
  readonly unit: string;
  readonly least: boolean;
  readonly source: Source;
  readonly fact: Fact;
}

export function asRemembered(study: WayStudy): readonly AsRemembered[] {
  if (study.isSpare) return [];
  return [...ofCapacity(study), ...ofLoop(study), ...ofProtective(study)].filter(
    ({ value, limit, least, source }) =>
      (least ? value >= limit : value <= limit) && onlyAsRemembered(value, limit, source),
  );
}

/** In, and the load, within what the cable carries; the gravest of the relations tells for all. */
function ofCapacity(study: WayStudy): AsRemembered[] {
  const { capacity, cable, isRing } = study;
  const fact = cable?.fact;
  // That 2.5 mm² does for a ring by the usual methods is published, whatever the last digit of its capacity.
  if (!capacity || !fact || isRing) return [];
  const Iz = capacity.value;
  const relations = overloadRelations(study, Iz).filter(({ name, holds }) => name !== "Ib ≤ In" && holds);
  const [tightest] = relations.toSorted((one, other) => used(other) - used(one));
  if (!tightest) return [];
  const { name, value, limit, margin } = tightest;
  const what = `${name} holds`;
  return [{ what, value, limit, unit: "A", least: false, source: margin.source, fact }];
}

/** Of the limit, in thousandths: where I2 asks what In asks, the plainer of the two is told. */
const used = ({ value, limit }: Relation): number => Math.round((1000 * value) / limit);

/** Zs as it was measured, else as the design has it, within the limit for a hot conductor. */
function ofLoop(study: WayStudy): AsRemembered[] {
  const { disconnection, cable } = study;
  if (disconnection?.by !== "overcurrent") return [];
  const { limit } = disconnection;
  const common = { what: "Zs is within its limit", limit: limit.value, unit: "Ω", least: false };
  const Zs = exactReading(study.Zs);
  if (Zs) return [{ ...common, value: Zs.value, source: limit.source, fact: Zs.fact }];
  const loop = cable && designLoop(study);
  return loop ? [{ ...common, value: loop.value, source: combine(loop.source, limit.source), fact: cable.fact }] : [];
}

function ofProtective(study: WayStudy): AsRemembered[] {
  const { cable } = study;
  const found = cable && protectiveAtFault(study);
  if (!found || !suffices(found)) return [];
  const { has, need } = found;
  const source = combine(has.source, need.source);
  const what = found.of === "armour" ? "The armour is large enough as protective conductor" : "The cpc is large enough";
  return [{ what, value: has.value, limit: need.value, unit: "mm²", least: true, source, fact: cable.fact }];
}
