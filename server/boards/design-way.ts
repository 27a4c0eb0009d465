/** The design of a circuit as a report shows it, line by line with the working. */
import { fallsShort } from "../calc/compare.ts";
import { practiceOf } from "../calc/practice.ts";
import { amps, type Calculated, step } from "../calc/result.ts";
import { ringRule } from "../calc/ring.ts";
import { beyondLimit } from "../calc/verdict.ts";
import { breakingOf, conditionalAt } from "../circuit/breaking.ts";
import { cableDrop } from "../circuit/drop.ts";
import { overloadProtected, overloadRelations } from "../circuit/overload-relations.ts";
import { terminalHeat } from "../circuit/terminals.ts";
import type { WayStudy } from "../circuit/way.ts";
import { designLoop, protectiveAtFault } from "../readings/loop.ts";
import { combine } from "../tables/source.ts";
import { trunkingWithstand } from "./busbar-trunking.ts";
import { compared, type DesignLine, figure, onSource, open, stated } from "./design-line.ts";
import { feederCurrent, feederDrop } from "./drop-feeder.ts";
import { added, boardDrop, circuitDrop, dropAbove, dropLimitOf, startDrop } from "./drop-path.ts";
import { letThroughAt, lineFactor, liveHeat } from "./energy.ts";
import { faultLevels, faultLevelsOn, leastFaults, leastShort, type Standby } from "./fault-levels.ts";
import { lengthOfReading, longestByDrop, longestByLoop } from "./greatest-length.ts";
import type { BoardNode } from "./network.ts";
import { type OnStandby, onStandby, protectiveOn, standbyOfWay } from "./standby.ts";

export function designOfWay(node: BoardNode, study: WayStudy): readonly DesignLine[] {
  if (study.isSpare) return [];
  return [
    ...current(node, study),
    ...overloadLines(study),
    ...dropLines(node, study),
    ...loopLines(study),
    ...faultLines(node, study),
    ...heatLines(node, study),
    ...standbyOfWay(study).flatMap((source) => standbyLines(node, study, source)),
  ];
}

/** How long the circuit may be by each limit, and how long its reading says that it is. */
export function lengthsOfWay(node: BoardNode, study: WayStudy): readonly DesignLine[] {
  const above = boardDrop(node);
  const lines = [
    ["Greatest length by loop impedance", longestByLoop(study)],
    [
      "Greatest length by voltage drop",
      study.isFeeder ? undefined : longestByDrop(study, dropAbove(above, study).drop),
    ],
    ["Length that R1+R2 stands for", lengthOfReading(study)],
  ] as const;
  return lines.flatMap(([title, value]) => (value ? [figure(title, value)] : []));
}

/** The design current of a circuit; of a feeder without one, the demand of the board it feeds. */
function currentOf(node: BoardNode, study: WayStudy): Calculated | undefined {
  const { designCurrent, powerFactor } = study;
  const fed = node.children.find(({ feeder }) => feeder?.way === study.way);
  if (!designCurrent) return fed && feederCurrent(fed, study);
  const how = designCurrent.stated
    ? "as stated"
    : designCurrent.diversity
      ? "the loads with the diversity of a cooker in a home"
      : powerFactor < 1
        ? "sum of the loads, by the power factor"
        : "sum of the loads";
  const value = stated(designCurrent.value, "A");
  return { ...value, steps: [step(`Ib, ${how}`, "", amps(designCurrent.value))] };
}

function current(node: BoardNode, study: WayStudy): DesignLine[] {
  const found = currentOf(node, study);
  if (!found) return [open("Design current", "neither a design current nor loads are stated")];
  return [figure("Design current", found, study.designCurrent ? undefined : "the demand of the board it feeds")];
}

function overloadLines(study: WayStudy): DesignLine[] {
  const { device, designCurrent, capacity } = study;
  const title = "Overload";
  if (device?.rating === undefined) return [open(title, "the device or its rating is not stated")];
  if (!capacity) {
    const gap = study.capacities.find((one) => "missing" in one.capacity)?.capacity;
    return [open(title, gap && "missing" in gap ? gap.missing : "the route is not stated")];
  }
  const Iz = capacity.value;
  const relations = overloadRelations(study, Iz)
    .filter(({ name }) => designCurrent !== undefined || name !== "Ib ≤ In")
    .map(({ name, holds, margin, value, limit }): DesignLine => {
      const { steps, source } = margin;
      const verdict = holds ? "holds" : beyondLimit(value, limit, source);
      return {
        title: name,
        verdict,
        value: { value: margin.value, unit: "A" },
        steps,
        source,
        reason: "the value is what is left",
      };
    });
  const ring = study.isRing
    ? [compared({ title: "Capacity of a ring's cable", value: Iz, limit: ringRule("capacity"), least: true })]
    : [];
  return [figure("Capacity of the cable", Iz), ...relations, ...terminalLines(study), ...ring];
}

function terminalLines(study: WayStudy): DesignLine[] {
  const heat = terminalHeat(study);
  if (!heat?.stated) return [];
  const title = "Load of a 90 °C cable, for terminals of 70 °C";
  return [compared({ title, value: stated(heat.current, "A"), limit: heat.limit })];
}

function dropLines(node: BoardNode, study: WayStudy): DesignLine[] {
  const title = "Voltage drop from the origin";
  const above = boardDrop(node);
  const reason = above.whole ? undefined : "a feeder on the way could not be calculated: it is at least this much";
  if (study.isFeeder) {
    const Ib = currentOf(node, study);
    const fed = node.children.find(({ feeder }) => feeder?.way === study.way);
    const line = fed && feederDrop(fed);
    const own = line && !("missing" in line) ? line.worst : Ib && cableDrop(study, Ib.value);
    if (!own) return [open("Voltage drop of the feeder", "neither its current nor the demand of its board is known")];
    return [
      "missing" in own
        ? open("Voltage drop of the feeder", own.missing)
        : figure("Voltage drop of the feeder", own.drop),
    ];
  }
  const found = circuitDrop(study);
  if (!found) {
    const Ib = study.designCurrent;
    const own = Ib && cableDrop(study, Ib.value);
    const why = !Ib ? "no design current is stated" : own && "missing" in own ? own.missing : "no limit applies to it";
    return [open(title, why)];
  }
  const limit = dropLimitOf(study);
  const upTo = dropAbove(above, study);
  const drop = added(upTo.drop, found.drop);
  const corrected = added(upTo.corrected, found.corrected);
  const differs = fallsShort(corrected.value, drop.value);
  const start = startDrop(study, upTo.drop);
  return [
    ...(start
      ? [
          compared({
            title: "Voltage drop while the motor starts",
            value: start,
            limit: practiceOf("start-drop"),
            guidance: true,
          }),
        ]
      : []),
    compared({ title, value: drop, limit, guidance: true, ...(reason ? { reason } : {}) }),
    ...(differs
      ? [compared({ title: `${title}, at its real conditions`, value: corrected, limit, guidance: true })]
      : []),
  ];
}

function loopLines(study: WayStudy): DesignLine[] {
  const title = "Loop impedance, conductors hot";
  const value = designLoop(study);
  const limit = study.disconnection?.limit;
  if (!value) return [open(title, "the loop at the board, the cable or its length is not known")];
  const own = limit ? compared({ title, value, limit }) : figure(title, value, "no limit is known for this device");
  return [own, ...onStandby(study).map(standbyLine)];
}

function standbyLine({ source, value, limit, by, byRcd }: OnStandby): DesignLine {
  const title = by === "loop" ? "Loop impedance" : "Fault current";
  const reason = byRcd ? "an RCD disconnects" : undefined;
  const line = compared({
    title,
    value,
    limit,
    least: by === "current",
    guidance: byRcd,
    ...(reason ? { reason } : {}),
  });
  return onSource(line, source.args.what.value);
}

/** What else holds or not on a source that takes over: what flows there, and what has to break and to withstand it. */
function standbyLines(node: BoardNode, study: WayStudy, source: Standby): DesignLine[] {
  const faults = leastFaults(node, study, source);
  const short = leastShort(faults);
  const levels = faultLevelsOn(node, source);
  const capacity = breakingOf(study);
  const heat = overloadProtected(study) ? undefined : liveHeat(node, study, source);
  const size = study.cable && stated(study.cable.line, "mm²");
  const found = protectiveOn(study, source);
  const byHeat = found?.method === "adiabatic" ? found : undefined;
  const lines: DesignLine[] = [
    ...(short ? [figure("Least short-circuit current", short)] : []),
    ...(faults.earth ? [figure("Least earth fault current", faults.earth)] : []),
    ...(levels && capacity
      ? [compared({ title: "Breaking capacity", value: capacity, limit: levels.greatest, least: true })]
      : []),
    ...(heat && size && !heat.trip.atMost
      ? [compared({ title: "Live conductors in a fault", value: size, limit: heat.need, least: true })]
      : []),
  ];
  if (byHeat) {
    const { has, need, certain } = byHeat;
    lines.push(compared({ title: "Protective conductor", value: has, limit: need, least: true, guidance: !certain }));
  }
  return lines.map((line) => onSource(line, source.args.what.value));
}

function faultLines(node: BoardNode, study: WayStudy): DesignLine[] {
  const faults = leastFaults(node, study);
  const { earth } = faults;
  const short = leastShort(faults);
  const levels = faultLevels(node);
  const capacity = breakingOf(study);
  const title = "Breaking capacity";
  const conditional = conditionalAt(study.context);
  const lines: DesignLine[] = [
    ...(short ? [figure("Least short-circuit current at the end", short)] : []),
    ...(earth ? [figure("Least earth fault current at the end", earth)] : []),
  ];
  if (!levels) return [...lines, open(title, "no fault current is recorded here or upstream")];
  if (!capacity) return [...lines, open(title, "the breaking capacity of the device is not stated")];
  const backed = study.device?.fact.args.class?.value === "back-up";
  if (backed || (conditional !== undefined && levels.greatest.value <= conditional)) {
    const reason = backed
      ? "it breaks the fault together with the device upstream"
      : "the assembly's conditional rating covers it";
    return [...lines, figure(title, capacity, reason)];
  }
  return [...lines, compared({ title, value: capacity, limit: levels.greatest, least: true })];
}

function heatLines(node: BoardNode, study: WayStudy): DesignLine[] {
  const { cable } = study;
  if (!cable) return [];
  if (cable.construction === "busbar-trunking") return withstandLines(node, study);
  const heat = liveHeat(node, study);
  const title = "Live conductors in a fault";
  const byOverload = overloadProtected(study)
    ? "the device also protects the cable against overload, by which 435.1 takes it to be protected against faults"
    : undefined;
  const value = stated(cable.line, "mm²");
  // A time that may be less is on the safe side: where the size is enough for it, it is enough.
  const enough = heat && cable.line >= heat.need.value;
  const live = !heat
    ? open(title, byOverload ?? "the least fault current or the time of the device is not known")
    : heat.trip.atMost && !enough
      ? open(title, byOverload ?? "the device is quicker than its curve is kept for: the maker's I²t decides")
      : compared({ title, value, limit: heat.need, least: true, ...(byOverload ? { reason: byOverload } : {}) });
  return [live, ...protectiveLines(study), ...letThroughLines(node, study)];
}

/** Of busbar trunking its maker's test counts for its bars and its casing. */
function withstandLines(node: BoardNode, study: WayStudy): DesignLine[] {
  const title = "Short-circuit current the busbar trunking withstands";
  const found = trunkingWithstand(node, study);
  if (!found) return [open(title, "its Icw, or the fault current where it begins, is not known")];
  const { fault, most } = found;
  const reason = most.name === "Icc" ? "behind the device it was tested with" : "for the time its maker states";
  return [compared({ title, value: most, limit: fault, least: true, reason })];
}

function protectiveLines(study: WayStudy): DesignLine[] {
  const found = protectiveAtFault(study);
  if (!found) return [];
  const what = found.of === "armour" ? "Armour as protective conductor" : "Protective conductor";
  const title = found.method === "table" ? `${what}, by Table 54.7` : `${what}, by the heat of the fault`;
  const value = found.of === "armour" ? found.has : stated(found.has.value, "mm²");
  return [compared({ title, value, limit: found.need, least: true, guidance: !found.certain })];
}

function letThroughLines(node: BoardNode, study: WayStudy): DesignLine[] {
  const title = "Let-through energy at the board";
  if (study.device?.family !== "breaker" || !lineFactor(study)) return [];
  const fault = faultLevels(node)?.greatest;
  if (!fault) return [open(title, "no fault current is recorded here or upstream")];
  const found = letThroughAt(study, fault.value);
  if (!found) return [open(title, "no figure is kept for this breaker at this fault current: the maker's I²t decides")];
  const { energy, stands, conductor } = found;
  const reason = `for the ${conductor === "cpc" ? "protective" : "line"} conductor, the breaker taken as class 3`;
  const line = compared({ title, value: energy, limit: stands, reason });
  return [{ ...line, source: combine(energy.source, stands.source) }];
}
