/** Voltage drop from the origin to the far point: of every feeder on the way, and of this circuit. */

import { type Line, linesOf } from "../../boards/circuit-load.ts";
import { feederCurrent, feederDrop } from "../../boards/drop-feeder.ts";
import { added, boardDrop, circuitDrop, dropAbove, dropLimitOf, lineAbove, startDrop } from "../../boards/drop-path.ts";
import type { BoardNode, Network } from "../../boards/network.ts";
import { exceeds } from "../../calc/compare.ts";
import { practiceOf } from "../../calc/practice.ts";
import { addition, reproducible } from "../../calc/reproducible.ts";
import { amps, type Calculated, percent, step } from "../../calc/result.ts";
import { type CableDrop, cableDrop } from "../../circuit/drop.ts";
import type { WayStudy } from "../../circuit/way.ts";
import { combine } from "../../tables/source.ts";
import { type Block, calculate, compareWithLimit, gap, paragraph, part, type Section } from "../setting/document.ts";

export const dropPart = (study: WayStudy, network: Network, node: BoardNode | undefined): Section[] =>
  part("Voltage drop from the origin", dropBlocks(study, network, node));

interface DropSegment {
  readonly name: string;
  readonly found: CableDrop | { readonly missing: string };
  readonly certain: boolean;
}

function dropBlocks(study: WayStudy, network: Network, node: BoardNode | undefined): Block[] {
  if (!node) return [gap("Drop from the origin", "the boards feed each other in a circle")];
  const own: DropSegment = { name: "Drop in this circuit", found: ownDrop(study, network), certain: true };
  const lines = linesOf(study);
  const stretches = [...feedersOf(node, lines.length === 1 ? lines[0] : worstLine(node)), own];
  const blocks: Block[] = stretches.map(({ name, found }) =>
    "missing" in found ? gap(name, found.missing) : calculate(name, found.drop, percent(found.drop.value), ""),
  );
  const known = stretches.flatMap(({ found }) => ("missing" in found ? [] : [found]));
  const [first, ...rest] = known;
  if (!first) return blocks;
  const whole = known.length === stretches.length;
  if (whole && rest.length > 0) {
    const total = rest.reduce((sum, { drop }) => sum + drop.value, first.drop.value);
    const parts = known.map(({ drop }) => [drop.value, percent] as const);
    const sum = { steps: [reproducible("drop from the origin", parts, addition, [total, percent])], source: noSource };
    blocks.push(calculate("From the origin", sum, percent(total), ""));
  }
  if (study.isFeeder) return [...blocks, paragraph("What is left of the limit is shared by the circuits it feeds.")];
  return [
    ...blocks,
    ...verdict(
      study,
      known,
      whole,
      stretches.every(({ certain }) => certain),
    ),
    ...startBlocks(study, node),
  ];
}

/** What a motor finds at its terminals while it starts. */
function startBlocks(study: WayStudy, node: BoardNode): Block[] {
  const found = startDrop(study, dropAbove(boardDrop(node), study).drop);
  if (!found) return [];
  const limit = practiceOf("start-drop");
  const holds = !exceeds(found.value, limit.value);
  const text = `Drop at start ${percent(found.value)} ${holds ? "≤" : ">"} ${percent(limit.value)}`;
  return [
    calculate("Drop while the motor starts", found, percent(found.value), ""),
    compareWithLimit(holds, text, limit.source, { value: found.value, limit: limit.value }, "its maker decides"),
  ];
}

const noSource = { ref: "", standing: "printed" } as const;

function verdict(study: WayStudy, known: readonly CableDrop[], whole: boolean, certain: boolean): Block[] {
  const sum = (of: "drop" | "corrected"): Calculated | undefined =>
    known
      .map((one) => one[of])
      .reduce<Calculated | undefined>((above, own) => (above ? added(above, own) : own), undefined);
  const [drop, corrected] = [sum("drop"), sum("corrected")];
  if (!drop || !corrected) return [];
  const limit = dropLimitOf(study);
  const within = (value: number): boolean => !exceeds(value, limit.value);
  const holds = within(drop.value);
  if (holds && !whole)
    return [gap("The drop from the origin", "a part of the way to the origin could not be calculated")];
  const use = study.uses.has("lighting") || study.uses.has("emergency-lighting") ? " for lighting" : "";
  const text = `Drop ${percent(drop.value)} ${holds ? "≤" : ">"} ${percent(limit.value)} advised${use}`;
  const judged = compareWithLimit(
    holds,
    text,
    combine(drop.source, limit.source),
    { value: drop.value, limit: limit.value },
    `${percent(limit.value - drop.value)} left`,
  );
  const blocks: Block[] = [];
  // What the appendix advises is guidance: what counts is that the equipment works.
  if (holds) blocks.push(judged);
  else if (within(corrected.value)) {
    blocks.push(calculate("With its real conditions", corrected, percent(corrected.value), ""));
    blocks.push({ ...judged, verdict: "advises", remark: `${percent(corrected.value)} with its real conditions` });
  } else blocks.push({ ...judged, verdict: "advises", remark: "guidance of Appendix 4" });
  if (!certain)
    blocks.push(paragraph("A feeder's current is calculated here without diversity, so its drop is an upper bound."));
  return blocks;
}

/** The line of a board that has lost most up to there. */
const worstLine = (node: BoardNode): Line | undefined =>
  [...boardDrop(node).lines].toSorted(([, one], [, other]) => other.drop.value - one.drop.value)[0]?.[0];

/** From the origin to the board, on one of its lines. */
function feedersOf(node: BoardNode, line: Line | undefined): DropSegment[] {
  const { parent, feeder, board } = node;
  if (!parent) {
    const atOrigin = board.head.facts.one("fed-from")?.args.from.value === "supply";
    const missing = "what feeds it is not stated";
    return atOrigin ? [] : [{ name: `Drop up to board ${board.head.name}`, found: { missing }, certain: true }];
  }
  const from = parent.board.head.name;
  if (!feeder) {
    const missing = "no way of that board says that it feeds this one";
    const name = `Drop in the feeder from board ${from} to board ${board.head.name}`;
    return [...feedersOf(parent, line), { name, found: { missing }, certain: true }];
  }
  const drops = feederDrop(node);
  const own = "missing" in drops ? drops : (line && drops.lines.get(line)) || drops.worst;
  const found = "missing" in drops || !drops.equal ? own : withCurrent(own, drops.current);
  const certain = "missing" in drops || drops.current.certain;
  return [
    ...feedersOf(parent, line && lineAbove(node, feeder, line)),
    { name: `Drop in feeder ${from}/${feeder.way.id}`, found, certain },
  ];
}

function ownDrop(study: WayStudy, { nodes }: Network): DropSegment["found"] {
  if (study.isFeeder) {
    const fed = nodes.find(({ feeder }) => feeder?.way === study.way);
    const drops = fed && feederDrop(fed);
    if (drops && !("missing" in drops)) return drops.equal ? withCurrent(drops.worst, drops.current) : drops.worst;
    const current = (fed && feederCurrent(fed, study)) ?? study.designCurrent;
    if (!current) return { missing: "its design current is not stated, and what it feeds is not known" };
    return withCurrent(cableDrop(study, current.value), current);
  }
  const { designCurrent } = study;
  if (!designCurrent) return { missing: "neither its design current nor a load is stated" };
  const found = circuitDrop(study);
  if (found) return withCurrent(found, designCurrent);
  const own = cableDrop(study, designCurrent.value);
  return "missing" in own ? own : { missing: "extra-low voltage and generators have limits of their own" };
}

/** The current a drop is calculated with, before its working. */
function withCurrent(
  found: CableDrop | { readonly missing: string },
  current: { readonly value: number; readonly stated?: boolean; readonly steps?: Calculated["steps"] },
): DropSegment["found"] {
  if ("missing" in found) return found;
  const how = current.steps?.length ? "the current" : current.stated === false ? "Ib from the loads" : "Ib as stated";
  const first = [...(current.steps ?? []), step(how, "", amps(current.value))];
  const before = (figure: Calculated): Calculated => ({ ...figure, steps: [...first, ...figure.steps] });
  return { drop: before(found.drop), corrected: before(found.corrected) };
}
