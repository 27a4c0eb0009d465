/** Automatic disconnection: the time, the limits hot and cold, and the loop that is to be expected. */

import { exceeds } from "../../calc/compare.ts";
import { operatingResistance } from "../../calc/conductor-resistance.ts";
import { totalLoop } from "../../calc/loop-impedance.ts";
import { rcdLoopLimit } from "../../calc/rcd-loop-limit.ts";
import { type Calculated, ohms, remark, seconds, step } from "../../calc/result.ts";
import { operatingFactorOf, whyNoCpc } from "../../circuit/cpc.ts";
import { rcdName } from "../../circuit/describe.ts";
import type { WayStudy } from "../../circuit/way.ts";
import { circuitOf } from "../../readings/circuit-network.ts";
import { expectationsOf } from "../../readings/expected.ts";
import { designBoardImpedance, designLoop } from "../../readings/loop.ts";
import { combine, summed } from "../../tables/source.ts";
import { type Block, calculate, compareWithLimit, gap, paragraph, part, type Section } from "../setting/document.ts";

export const disconnectionPart = (study: WayStudy): Section[] =>
  part("Automatic disconnection", disconnectionBlocks(study));

function disconnectionBlocks(study: WayStudy): Block[] {
  const { disconnection, disconnectionTime } = study;
  const limit = disconnection?.limit;
  const cold = disconnection?.cold;
  const byRcd = disconnection?.by === "rcd";
  const who = byRcd && disconnection.rcd ? `the RCD (${rcdName(disconnection.rcd)})` : "the overcurrent device";
  return [
    calculate("Greatest time", disconnectionTime, seconds(disconnectionTime?.value ?? 0), whyNoTime(study)),
    calculate(`Greatest Zs by ${who}${byRcd ? "" : ", hot"}`, limit, ohms(limit?.value ?? 0), whyNoLimit(study)),
    ...(cold ? [calculate(`Greatest Zs read cold (${cold.style})`, beyond(cold, limit), ohms(cold.value), "")] : []),
    ...(cold?.corrected
      ? [
          calculate(
            `Greatest Zs ${cold.corrected.style}`,
            beyond(cold.corrected, limit),
            ohms(cold.corrected.value),
            "",
          ),
        ]
      : []),
    ...(byRcd ? [paragraph("An RCD's limit does not depend on the temperature of the conductors.")] : []),
    ...loopBlocks(study),
  ];
}

/** A figure without the steps another has shown before it. */
const beyond = (figure: Calculated, shown: Calculated | undefined): Calculated => ({
  ...figure,
  steps: figure.steps.filter((one) => !shown?.steps.includes(one)),
});

function whyNoTime({ device, supply, context, isSpare }: WayStudy): string {
  if (isSpare) return "the way is spare";
  if (device?.rating === undefined) return "the rated current of the device is not known";
  if (!supply.earthing) return "the earthing arrangement is not stated";
  if (!context.edition) return "the installation names no edition that is known";
  return `no table here gives a time for ${supply.earthing} at this voltage`;
}

function whyNoLimit(study: WayStudy): string {
  const { supply, disconnectionTime, rcds, device } = study;
  if (supply.earthing === "TT")
    return rcds.length === 0
      ? "in a TT system an RCD disconnects, and none is described"
      : "the rating of the RCD is not known";
  if (!disconnectionTime) return "the time is not known";
  return `no table here covers ${device?.standard ?? "the device"} of this type and rating`;
}

function loopBlocks(study: WayStudy): Block[] {
  const start = designBoardImpedance(study.context);
  const design = worstLoop(study, start) ?? designLoop(study);
  const { boardImpedance, disconnection, context } = study;
  const name = boardImpedance?.name ?? "Zdb";
  const own = boardImpedance && {
    steps: [step(`${name}, as the schedule has it`, "", ohms(boardImpedance.value))],
    source: noSource,
  };
  const blocks: Block[] = [
    calculate(`Loop at board ${context.board.name}`, own ?? start, ohms(start?.value ?? 0), whyNoStart(study)),
  ];
  if (!start) return [...blocks, gap("Zs to be expected", "the loop at the board is not known")];
  blocks.push(calculate("Zs to be expected, hot", design, ohms(design?.value ?? 0), whyNoR1R2(study)));
  const limit = disconnection?.limit;
  if (design && limit) {
    const holds = !exceeds(design.value, limit.value);
    blocks.push(
      compareWithLimit(
        holds,
        `Zs ${ohms(design.value)} ${holds ? "≤" : ">"} ${ohms(limit.value)}`,
        combine(design.source, limit.source),
        { value: design.value, limit: limit.value },
        `${ohms(limit.value - design.value)} left`,
      ),
    );
    if (!holds) blocks.push(...byRcd(study, design.value));
  }
  return blocks;
}

/** Of a drawn ring the loop at its worst point, spurs and all; the quarter of the ends knows nothing of them. */
function worstLoop(study: WayStudy, start: Calculated | undefined): Calculated | undefined {
  const network = study.isRing && study.runs ? circuitOf(study, [], undefined) : undefined;
  const factor = operatingFactorOf(study.cable);
  if (!network || !factor || !start) return undefined;
  const loops = expectationsOf(network, undefined).points.flatMap(({ name, R1R2 }) => (R1R2 ? [{ name, R1R2 }] : []));
  const [worst] = loops.sort((one, other) => other.R1R2.value - one.R1R2.value);
  if (!worst) return undefined;
  const hot = operatingResistance(worst.R1R2, factor);
  const total = totalLoop(start.value, hot.value);
  const steps = [...start.steps, remark(`the worst point is ${worst.name}`), ...hot.steps, ...total.steps];
  return { ...total, steps, source: combine(summed(start, hot), total.source) };
}

/** The RCD that would disconnect all the same. */
function byRcd({ rcds, disconnection }: WayStudy, Zs: number): Block[] {
  const [rcd] = rcds;
  const limit = rcd && rcdLoopLimit(rcd.sensitivity);
  if (!rcd || !limit || disconnection?.by === "rcd") return [];
  const holds = Zs <= limit.value;
  return [
    compareWithLimit(
      holds,
      `By the RCD (${rcdName(rcd)}) instead: Zs ${ohms(Zs)} ${holds ? "≤" : ">"} ${ohms(limit.value)}`,
      limit.source,
      { value: Zs, limit: limit.value },
    ),
  ];
}

const noSource = { ref: "", standing: "printed" } as const;

function whyNoStart({ context }: WayStudy): string {
  const { upstream, supply } = context;
  if (upstream.length > 0) return "it is not noted, and the feeder or the loop above it does not give it";
  return supply?.has("Ze")
    ? "Ze was not measured, or the board is not fed from the supply"
    : "neither Ze nor Zdb is stated";
}

/** Why R1+R2 does not follow from the sizes. */
export function whyNoR1R2({ cable, length }: WayStudy): string {
  if (!cable) return "the cable is not described";
  if (!length) return "the length is not stated";
  if (cable.cpc === undefined || cable.cpcBy === "armour") return whyNoCpc(cable);
  return `no table here gives the resistance of ${cable.material} ${cable.construction} cable of this size`;
}
