/** Load, device and cable: Ib ≤ In ≤ Iz with every factor; and what a ring has to satisfy instead. */

import { type FeederCurrent, feederCurrent } from "../../boards/drop-feeder.ts";
import type { BoardNode } from "../../boards/network.ts";
import { exceeds } from "../../calc/compare.ts";
import { amps, type Calculated, plain, type Step, step } from "../../calc/result.ts";
import { loadTerms } from "../../circuit/loads.ts";
import { groundLimit, leastKnownCapacity } from "../../circuit/overload.ts";
import { overloadRelations } from "../../circuit/overload-relations.ts";
import { factorsOfOneOn, methodOf } from "../../circuit/route-capacity.ts";
import type { WayStudy } from "../../circuit/way.ts";
import type { FactOf } from "../../model/values.ts";
import { written } from "../common/written.ts";
import { type Block, calculate, compareWithLimit, gap, paragraph, part, type Section } from "../setting/document.ts";

export const loadPart = (study: WayStudy, node: BoardNode | undefined): Section[] =>
  part("Load and design current", loadBlocks(study, node));

/** What the board behind a feeder draws stands for the feeder where nothing is written of it. */
function demandBehind(study: WayStudy, node: BoardNode | undefined): FeederCurrent | undefined {
  const fed = study.designCurrent ? undefined : node?.children.find(({ feeder }) => feeder?.way === study.way);
  return fed && feederCurrent(fed, study);
}

function loadBlocks(study: WayStudy, node: BoardNode | undefined): Block[] {
  const { designCurrent, facts } = study;
  const behind = demandBehind(study, node);
  if (behind)
    return [
      calculate("Design current Ib", behind, amps(behind.value), ""),
      paragraph(
        `Ib is the demand of the board it feeds, ${behind.certain ? "with diversity" : "every circuit in full: an upper bound"}.`,
      ),
    ];
  if (!designCurrent) return [gap("Design current Ib", "neither Ib nor a load is stated")];
  const { value, stated, diversity } = designCurrent;
  const none = { ref: "", standing: "printed" } as const;
  const figure = {
    steps: stated ? [] : [loadStep(study), ...(diversity?.steps ?? [])],
    source: diversity?.source ?? none,
  };
  return [
    calculate("Design current Ib", figure, amps(value), ""),
    paragraph(
      stated
        ? "Ib is taken as the schedule states it."
        : `The loads are added as stated, at a power factor of ${study.powerFactor === 1 ? "one" : plain(study.powerFactor)}${diversity ? ", with the diversity of a cooker in a home" : facts.all("load").length > 1 ? " and without diversity: an upper bound" : ""}.`,
    ),
  ];
}

function loadStep(study: WayStudy) {
  const { designCurrent, loadCurrent, facts } = study;
  const { name, terms } = loadTerms(facts.all("load"), study);
  return step(`${designCurrent?.diversity ? "all at once" : "Ib"} = ${name}`, terms, amps(loadCurrent?.value ?? 0));
}

export const cablePart = (study: WayStudy, node: BoardNode | undefined): Section[] =>
  part("Device and cable", cableBlocks(study, node));

function cableBlocks(study: WayStudy, node: BoardNode | undefined): Block[] {
  const { capacities, capacity } = study;
  const several = capacities.length > 1;
  const blocks: Block[] = capacities.map(({ fact, capacity: found }, index) => {
    const name = `Capacity Iz${several ? ` of stretch ${index + 1}` : ""} (${written(fact)})`;
    if ("missing" in found) return gap(name, found.missing);
    return calculate(name, { ...found, steps: withFactorsOfOne(study, fact, found) }, amps(found.value), "");
  });
  if (capacities.length === 0) blocks.push(gap("Capacity Iz of the cable", "the schedule has no route"));
  if (several && capacity) {
    const method = methodOf(capacity.fact);
    blocks.push(
      paragraph(`The least of them governs: ${amps(capacity.value.value)}${method ? `, method ${method}` : ""}.`),
    );
  }
  return [...blocks, ...relations(study, node), ...inGround(study)];
}

/** It, every factor, those of 1 included, and the product. */
function withFactorsOfOne(study: WayStudy, fact: FactOf<"way", "route">, { steps }: Calculated): readonly Step[] {
  const [It, ...rest] = steps;
  return It ? [It, ...factorsOfOneOn(study, fact), ...rest] : steps;
}

function relations(study: WayStudy, node: BoardNode | undefined): Block[] {
  const In = study.device?.rating;
  if (In === undefined) return [gap("Ib ≤ In ≤ Iz", "the rated current of the device is not known")];
  const Iz = leastKnownCapacity(study)?.value;
  const unknown = { value: In, unit: "A", steps: [], source: { ref: "", standing: "printed" } } as const;
  return overloadRelations(study, Iz ?? unknown).flatMap((relation): Block[] => {
    if (relation.name === "Ib ≤ In") return loadOnDevice(study, demandBehind(study, node), In, relation);
    return Iz ? withinCapacity(study, In, relation) : [];
  });
}

type Relation = ReturnType<typeof overloadRelations>[number];

/** The load as it is stated; of a feeder without one, the demand of what it feeds. */
function loadOnDevice(
  { designCurrent, facts }: WayStudy,
  behind: FeederCurrent | undefined,
  In: number,
  { holds, margin: { source } }: Relation,
): Block[] {
  if (!designCurrent) return behind ? [demandJudged(behind, In)] : [];
  const Ib = designCurrent.value;
  // Loads alone stand without diversity; only a stated design current says what is drawn at once.
  if (!holds && !designCurrent.stated && facts.all("load").length > 1)
    return [
      paragraph(`The loads add up to more than In = ${amps(In)}. A design current with diversity would say more.`),
    ];
  const text = `Ib ${amps(Ib)} ${holds ? "≤" : ">"} In ${amps(In)}`;
  return [compareWithLimit(holds, text, source, { value: Ib, limit: In }, `${amps(In - Ib)} left`)];
}

/** What the cable carries: the rated current, the load, the setting of a relay, and the current that surely opens. */
function withinCapacity(
  { capacity, designCurrent }: WayStudy,
  In: number,
  { name, holds, margin, value, limit }: Relation,
): Block[] {
  const sign = holds ? "≤" : ">";
  const carried = (what: string, current: number): Block => {
    const text = `${what} ${amps(current)} ${sign} Iz ${amps(limit)}`;
    return compareWithLimit(holds, text, margin.source, { value: current, limit }, `${amps(limit - current)} left`);
  };
  // A stretch that could not be calculated may carry less.
  const notWhole = (relation: string): Block[] => [gap(relation, "a stretch of the route could not be calculated")];
  switch (name) {
    case "In ≤ Iz":
      return holds && !capacity ? notWhole(name) : [carried("In", In)];
    case "Ib ≤ Iz":
      return designCurrent ? [carried("Ib", designCurrent.value)] : [];
    case "Ir ≤ Iz":
      return [carried("the overload relay, set to", value)];
    case "√3 × Ir ≤ Iz":
      return [carried("the overload relay before the windings lets the lines carry", value)];
    default: {
      if (holds && !capacity) return notWhole("I2 ≤ 1.45 × Iz");
      const [I2] = margin.steps;
      const text = `I2 ${I2?.result ?? ""} ${sign} 1.45 × Iz`;
      return [compareWithLimit(holds, text, margin.source, { value, limit }, `${amps(margin.value)} left`)];
    }
  }
}

/** Without diversity more is counted than is drawn: then it is only a question. */
function demandJudged({ value, source, certain }: FeederCurrent, In: number): Block {
  const holds = !exceeds(value, In);
  const text = `Ib ${amps(value)} ${holds ? "≤" : ">"} In ${amps(In)}`;
  const judged = compareWithLimit(holds, text, source, { value, limit: In }, `${amps(In - value)} left`);
  return holds || certain ? judged : { ...judged, verdict: "advises", remark: "every circuit in full" };
}

/** Of a cable in the ground less is counted on where its device protects it against overload. */
function inGround(study: WayStudy): Block[] {
  const In = study.device?.rating;
  const most = groundLimit(study)?.value;
  if (In === undefined || !most) return [];
  const holds = !exceeds(In, most.value);
  const text = `In ${amps(In)} ${holds ? "≤" : ">"} 0.9 × Iz in the ground, ${amps(most.value)}`;
  return [
    compareWithLimit(holds, text, most.source, { value: In, limit: most.value }, `${amps(most.value - In)} left`),
  ];
}
