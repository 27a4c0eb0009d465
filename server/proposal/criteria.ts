/** What a cable has to satisfy behind a device, in the order it is decided. Each asks what the checks ask. */

import { exceeds, fallsShort } from "../calc/compare.ts";
import { harmonicNeed } from "../calc/harmonics.ts";
import { overload } from "../calc/overload.ts";
import { amps, type Calculated, percent, squareMillimetres, step } from "../calc/result.ts";
import { ringRule } from "../calc/ring.ts";
import { leastConductor } from "../circuit/minimum.ts";
import { conventionalRow, groundLimit, leastKnownCapacity, radialShortfall } from "../circuit/overload.ts";
import { terminalHeat } from "../circuit/terminals.ts";
import type { WayStudy } from "../circuit/way.ts";
import { conventionalCircuits } from "../tables/ring.ts";
import { combine } from "../tables/source.ts";
import { cellOf } from "../tables/table.ts";
import { liveConductors, loop, protective, withstand } from "./criteria-fault.ts";
import type { Demand } from "./demand.ts";
import { dropFor } from "./drop.ts";
import { objections } from "./objections.ts";
import { asRememberedNote, type Criterion, type Place, type Verdict } from "./verdict.ts";

const smallest: Criterion = (trial) => {
  const { cable } = trial;
  if (!cable) return undefined;
  const least = trial.isRing
    ? ringRule(cable.construction === "mineral" ? "csa-mineral" : "csa")
    : leastConductor(trial);
  return atLeast("Least size", cable.line, trial.isRing ? larger(least, leastConductor(trial)) : least);
};

const larger = (one: Calculated, other: Calculated): Calculated => (other.value > one.value ? other : one);

function atLeast(title: string, size: number, { value, steps, source }: Calculated): Verdict {
  const holds = size >= value;
  const text = `${squareMillimetres(size)} ${holds ? "≥" : "is below"} the required ${squareMillimetres(value)}`;
  return { title, holds, text, steps, source };
}

/** Radials of socket-outlets are made as the guide has them: what is plugged in later is not known. */
const conventional: Criterion = (trial) => {
  const { cable, device } = trial;
  if (!cable || device?.rating === undefined || trial.way.kind !== "radial" || !trial.servesSockets) return undefined;
  const shortfall = radialShortfall(trial);
  if (shortfall) return atLeast(radialTitle, cable.line, shortfall);
  const row = conventionalRow("A3 radial");
  if (!row) return undefined;
  const { value, source } = cellOf(conventionalCircuits, row, cable.construction === "mineral" ? "csaMineral" : "csa");
  // A larger device never takes a thinner cable than the smallest such radial has.
  const reach = device.rating > Number(row.facts.rating) ? "of more than" : "up to";
  const steps = [step(`radial of socket-outlets, ${reach} ${row.facts.rating} A`, "", squareMillimetres(value))];
  return atLeast(radialTitle, cable.line, { value, unit: "mm²", steps, source });
};

const radialTitle = "Radial of socket-outlets";

const capacity: Criterion = (trial) => {
  const { device } = trial;
  const gap = trial.capacities.find((one) => "missing" in one.capacity);
  if (gap && "missing" in gap.capacity)
    return { title: capacityTitle, holds: false, text: gap.capacity.missing, steps: [] };
  const least = leastKnownCapacity(trial);
  if (!device?.rating || !least) return undefined;
  const Iz = least.value;
  const where =
    trial.capacities.length > 1 ? ` on its worst stretch (${least.fact.args.kind?.value ?? "as routed"})` : "";
  if (trial.isRing) {
    const asked = ringRule("capacity");
    const holds = !fallsShort(Iz.value, asked.value);
    const text = `Iz ${amps(Iz.value, asked.value)}${where} against the ${amps(asked.value, Iz.value)} a ring needs`;
    return { title: capacityTitle, holds, text, steps: Iz.steps, source: combine(asked.source, Iz.source) };
  }
  const relations = overload({ standard: device.standard, Ib: 0, In: device.rating, Iz });
  // For semi-enclosed fuses the factor is in the capacity already, and I2 follows from it.
  const relation = relations.find(({ name }) => name === "In ≤ Iz");
  const ground = groundLimit(trial);
  if (relation?.holds && ground && exceeds(device.rating, ground.value.value)) {
    const { value, steps, source } = ground.value;
    const text = `In the ground ${amps(value, device.rating)}, 0.9 of what it carries, against In ${amps(device.rating, value)}`;
    return { title: capacityTitle, holds: false, text, steps, source };
  }
  const holds = relation?.holds ?? false;
  const source = relation?.margin.source;
  const note = asRememberedNote(holds, device.rating, Iz.value, source);
  const text = `Iz ${amps(Iz.value, device.rating)}${where} against In ${amps(device.rating, Iz.value)}${note}`;
  return { title: capacityTitle, holds, text, steps: Iz.steps, ...(source ? { source } : {}) };
};

const capacityTitle = "Capacity of the cable";

/** The load may not heat the conductors of a 90 °C cable beyond what they end in. */
const terminals: Criterion = (trial, demand) => {
  const heat = terminalHeat(trial);
  if (!heat) return undefined;
  const { limit } = heat;
  return {
    title: "Heat of the terminals",
    holds: !exceeds(demand.forDrop, limit.value),
    text: `Ib ${amps(demand.forDrop, limit.value)} against the ${amps(limit.value, demand.forDrop)} the cable carries at 70 °C`,
    steps: limit.steps,
    source: limit.source,
  };
};

/** Third harmonics add up in the neutral, which then decides what the cable must carry. */
const harmonics: Criterion = (trial, demand) => {
  const written = trial.facts.one("neutral-harmonics");
  const capacity = leastKnownCapacity(trial)?.value;
  if (!written || !trial.threePhase || !capacity) return undefined;
  const { capacity: need } = harmonicNeed(demand.forDrop, written.args.value.value / 100);
  return {
    title: "Third harmonics",
    holds: !exceeds(need.value, capacity.value),
    text: `Iz ${amps(capacity.value, need.value)} against the ${amps(need.value, capacity.value)} required for the neutral`,
    steps: need.steps,
    source: combine(need.source, capacity.source),
  };
};

const drop: Criterion = (trial, demand, { above }) => {
  const title = "Voltage drop";
  const found = dropFor(trial, demand, above);
  if ("missing" in found) return { title, holds: undefined, text: found.missing, steps: [] };
  const { value, steps, source } = found.drop;
  const { limit } = found;
  const { room } = demand;
  // Circuits that take it all by themselves are no matter of the feeder.
  const behind = room !== undefined && room > (above?.drop.value ?? 0) && room < limit.value ? room : undefined;
  const most = behind ?? limit.value;
  return {
    title,
    holds: !exceeds(value, most),
    text: `${percent(value)} against ${behind === undefined ? percent(most) : `the ${percent(most)} that the circuits behind it leave`}`,
    steps,
    source: combine(source, limit.source),
  };
};

/** In the order they decide: the first that does not hold rules a candidate out. */
const criteria: readonly Criterion[] = [
  smallest,
  conventional,
  capacity,
  terminals,
  harmonics,
  drop,
  loop,
  protective,
  liveConductors,
  withstand,
  objections,
];

/** `except` names a criterion that is not asked, for what there would be without it. */
export function verdictsOf(trial: WayStudy, demand: Demand, place: Place = {}, except?: string): Verdict[] {
  const verdicts: Verdict[] = [];
  for (const criterion of criteria) {
    const verdict = criterion(trial, demand, place);
    if (!verdict || verdict.title === except) continue;
    verdicts.push(verdict);
    if (verdict.holds === false) break;
  }
  return verdicts;
}
