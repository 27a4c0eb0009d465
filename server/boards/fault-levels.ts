/** Fault currents calculated from what was recorded nearest upstream, along the feeders. */

import type { Conductor } from "../calc/circuit-network.ts";
import { impedanceOf, transformerImpedance } from "../calc/fault-current.ts";
import { faultAlong, greatestAlong } from "../calc/fault-path.ts";
import { productStep, reproducible } from "../calc/reproducible.ts";
import { amps, type Calculated, kiloamps, ohms, plain, type Step, step, worked } from "../calc/result.ts";
import { boardImpedance } from "../circuit/board-impedance.ts";
import { faultsAt } from "../circuit/faults.ts";
import { memoOfWhole } from "../circuit/kept.ts";
import { type FaultPlace, timesAt } from "../circuit/parallel.ts";
import { reactanceOf } from "../circuit/reactance.ts";
import { studySupply } from "../circuit/supply.ts";
import type { WayStudy } from "../circuit/way.ts";
import type { FactOf } from "../model/values.ts";
import { hotR1R2 } from "../readings/loop.ts";
import { combine, type Source } from "../tables/source.ts";
import { cablesOf, feedersTo, resistanceOf } from "./fault-feeders.ts";
import type { BoardNode } from "./network.ts";

/** Impedances of what lies before a board, Ω: of line and neutral, of one line of three, of line and earth. */
interface Start {
  readonly at: BoardNode;
  readonly neutral: Calculated;
  readonly three: Calculated | undefined;
  readonly earth: Calculated | undefined;
  /** The source that takes over, where it is one, and the most it gives, A. */
  readonly source?: Standby;
  readonly gives?: number | undefined;
}

/** A source that takes over from the supply. */
export type Standby = FactOf<"supply", "standby">;

/** The largest fault currents at a board, A, cables cold. */
export interface FaultLevels {
  /** Whether the figures are those recorded at this board itself. */
  readonly recorded: boolean;
  readonly neutral: Calculated;
  readonly three: Calculated | undefined;
  readonly earth: Calculated | undefined;
  readonly greatest: Calculated;
  /** No more than this can flow, whatever the phase angle of the source. */
  readonly bound: Calculated;
}

const asRecorded: Source = { ref: "as recorded", standing: "quoted" };
const neutralAsLine: Source = { ref: "Common practice, neutral taken like a line", standing: "practice" };

/** The fault levels at a board; nothing where nothing upstream is recorded, or a feeder cannot be calculated. */
export const faultLevels = memoOfWhole((node: BoardNode): FaultLevels | undefined => {
  const start = startOf(node);
  return start && levelsFrom(node, start);
});

/** The same by what was recorded upstream, whatever is recorded at the board itself. */
export const faultLevelsFromUpstream = memoOfWhole((node: BoardNode): FaultLevels | undefined => {
  const start = node.parent && startOf(node.parent);
  return start && levelsFrom(node, start);
});

/** The same on a source that takes over. What is recorded on the network says nothing of it. */
export function faultLevelsOn(node: BoardNode, source: Standby): FaultLevels | undefined {
  const start = startOn(node, source, "greatest");
  return start && levelsFrom(node, start);
}

function levelsFrom(node: BoardNode, start: Start): FaultLevels | undefined {
  const feeders = feedersTo(node, start.at);
  if (!feeders) return undefined;
  const { U0, voltage } = studySupply(node.context);
  const along = (across: number, from: Calculated | undefined, of: readonly Conductor[]) => {
    const cables = from && cablesOf(feeders, of, "cold");
    return cables && from && { voltage: across, start: from, cables };
  };
  const paths = [
    along(voltage, start.neutral, ["line", "neutral"]),
    node.threePhase ? along(U0, start.three, ["line"]) : undefined,
    along(U0, start.earth, ["line", "cpc"]),
  ] as const;
  const [neutral, three, earth] = paths.map((path) => {
    const current = path && faultAlong(path);
    const noted = feeders.length === 0 && current;
    const found = noted
      ? { ...noted, steps: [...path.start.steps, step("fault current there", "", kiloamps(noted.value))] }
      : current;
    return found && capped(found, start.gives);
  });
  if (!neutral) return undefined;
  const most = (all: readonly (Calculated | undefined)[]) =>
    all.reduce<Calculated>((greatest, one) => (one && one.value > greatest.value ? one : greatest), neutral);
  const bounds = paths.map((path) => path && capped(greatestAlong(path), start.gives));
  return {
    recorded: feeders.length === 0 && start.source === undefined,
    neutral,
    three,
    earth,
    greatest: most([three, earth]),
    bound: most(bounds),
  };
}

/** No more flows than a source can give, whatever the impedances. */
const capped = (found: Calculated, gives: number | undefined): Calculated =>
  gives === undefined || found.value <= gives
    ? found
    : { value: gives, unit: "A", steps: [step("the source gives at most", "", amps(gives))], source: asRecorded };

const ownLoop = ({ value, name }: { readonly value: number; readonly name: string }): Calculated => ({
  value,
  unit: "Ω",
  steps: [step(name, "", ohms(value))],
  source: asRecorded,
});

/** The nearest figures: the board's own, or those of a board upstream, or of the supply. */
function startOf(node: BoardNode): Start | undefined {
  const faults = faultsAt(node.context);
  if (faults.length === 0) return node.parent ? startOf(node.parent) : atTransformer(node);
  const { U0, voltage } = studySupply(node.context);
  const named = (name: string) => faults.find((fault) => fault.name === name)?.value;
  const [Ipf, PSCC, PEFC] = [named("Ipf"), named("PSCC"), named("PEFC")];
  const greatest = Math.max(...faults.map(({ value }) => value));
  const own = (value: number, across = U0): Calculated => {
    const Z = impedanceOf(across, value);
    return worked(Z.value, Z.unit, asRecorded, () => Z.steps);
  };
  const Z = boardImpedance(node.context);
  const loop = Z && ownLoop(Z);
  const earth = PEFC === undefined ? loop : own(PEFC);
  if (!node.threePhase) return { at: node, neutral: own(PSCC ?? greatest, voltage), three: undefined, earth };
  const three = own(Ipf ?? greatest);
  if (PSCC !== undefined && PSCC < greatest) return { at: node, neutral: own(PSCC, voltage), three, earth };
  const value = 2 * three.value;
  const steps = [...three.steps, twiceStep("line and neutral", three.value, value)];
  return { at: node, neutral: { value, unit: "Ω", steps, source: combine(three.source, neutralAsLine) }, three, earth };
}

/**
 * A source that takes over, in the place of the supply. What may flow is by the greatest fault current that is stated of it,
 * else by its loop, of which a line has at least half; what surely flows is by its loop, of which a line has no more.
 */
function startOn(node: BoardNode, source: Standby, which: "greatest" | "least"): Start | undefined {
  if (node.parent) return startOn(node.parent, source, which);
  const { loop, fault, gives } = source.args;
  const common = { at: node, source, gives: gives?.value };
  const name = `“${source.args.what.value}”`;
  const ofLoop = loop && ownLoop({ value: loop.value, name: `Ze of ${name}` });
  const Z = fault && which === "greatest" ? impedanceOf(studySupply(node.context).U0, fault.value) : undefined;
  // What keeps up no more than it gives is limited by that wherever the fault is.
  const byItself = gives ? ownLoop({ value: 0, name: `${name}, limited by what it gives` }) : undefined;
  const loopOf = ofLoop ?? Z ?? byItself;
  if (!loopOf) return undefined;
  // What is stated as the greatest is so for every fault.
  const earth = Z && Z.value > loopOf.value ? Z : loopOf;
  const neutral = Z ?? earth;
  if (!node.threePhase) return { ...common, neutral, three: undefined, earth };
  return { ...common, neutral: earth, three: Z ?? (which === "least" ? earth : halfOf(earth)), earth };
}

function halfOf(loop: Calculated): Calculated {
  const value = loop.value / 2;
  const steps = [...loop.steps, step("one line", `${ohms(loop.value)} / 2`, ohms(value))];
  return { value, unit: "Ω", steps, source: combine(loop.source, neutralAsLine) };
}

/**
 * By the plate of the transformer at the origin: Z of one line, of which a fault to neutral or earth at its terminals has no
 * more, its windings being earthed in star.
 */
function atTransformer(node: BoardNode): Start | undefined {
  const plate = node.context.supply?.one("transformer");
  if (!plate) return undefined;
  const { U0, threePhase } = studySupply(node.context);
  const { rating, impedance } = plate.args;
  const Z = transformerImpedance(impedance.value, threePhase ? U0 * Math.sqrt(3) : U0, rating.value);
  const loop = boardImpedance(node.context);
  const earth = loop && loop.value > Z.value ? ownLoop(loop) : Z;
  return { at: node, neutral: Z, three: node.threePhase ? Z : undefined, earth };
}

/** The smallest fault currents at the end of a circuit, A, conductors hot and the voltage at its lowest. */
interface LeastFaults {
  /** Line to neutral; nothing where the cable has no neutral. */
  readonly neutral: Calculated | undefined;
  /** Between two lines, of a circuit that has three. */
  readonly lines: Calculated | undefined;
  readonly earth: Calculated | undefined;
}

/** The end, or a place in one of conductors in parallel. The end is the far point of a radial, and of a ring its middle or the end of a spur, whichever lies further. */
export function leastFaults(node: BoardNode, study: WayStudy, standby?: Standby, place?: FaultPlace): LeastFaults {
  const { U0, voltage } = studySupply(node.context);
  const least = study.context.edition?.cmin.value ?? 1;
  const lowest = U0 * least;
  const start = standby ? startOn(node, standby, "least") : startOf(node);
  const feeders = start && feedersTo(node, start.at);
  const upTo = (
    from: Calculated | undefined,
    of: readonly Conductor[],
    own: Calculated | undefined,
    voltage = lowest,
  ): Calculated | undefined => {
    const cables = feeders && cablesOf(feeders, of, "hot");
    if (!from || !cables || !own) return undefined;
    const times = place && study.cable ? timesAt(study.cable, place, of) : 1;
    const X = reactanceOf(study, of);
    const path = [
      ...cables,
      { name: `way ${study.way.id}`, resistance: scaled(own, times), reactance: X && scaled(X, times) },
    ];
    return capped(faultAlong({ voltage, start: from, cables: path }), start?.gives);
  };
  const twoLines = study.threePhase ? start?.three && twice(start.three) : undefined;
  return {
    neutral: hasNoNeutral(study)
      ? undefined
      : upTo(
          start?.neutral,
          ["line", "neutral"],
          resistanceOf(study, ["line", "neutral"], "hot"),
          study.threePhase ? lowest : voltage * least,
        ),
    lines: upTo(twoLines, ["line", "line"], resistanceOf(study, ["line", "line"], "hot"), lowest * Math.sqrt(3)),
    earth: upTo(
      start?.earth,
      ["line", "cpc"],
      study.isRing ? resistanceOf(study, ["line", "cpc"], "hot") : hotR1R2(study),
    ),
  };
}

/** What conductors in parallel have to a place in one of them, of what they have to their end. */
function scaled(whole: Calculated, times: number): Calculated {
  if (times === 1) return whole;
  const value = whole.value * times;
  return worked(value, whole.unit, whole.source, () => [
    ...whole.steps,
    productStep(
      "to a fault in one of those in parallel",
      [
        [whole.value, ohms],
        [times, (one) => plain(one, 3)],
      ],
      [value, ohms],
    ),
  ]);
}

/** The smaller of the faults between live conductors. */
export const leastShort = ({ neutral, lines }: LeastFaults): Calculated | undefined =>
  !neutral || !lines ? (neutral ?? lines) : lines.value < neutral.value ? lines : neutral;

const twiceStep = (formula: string, one: number, value: number): Step =>
  reproducible(formula, [[one, ohms]], { write: (z) => `2 × ${z}`, compute: (z) => 2 * z }, [value, ohms]);

function twice(line: Calculated): Calculated {
  const value = 2 * line.value;
  return { ...line, value, steps: [...line.steps, twiceStep("two lines", line.value, value)] };
}

/** A cable of three lines and at most a protective conductor besides. Armour may stand for that one, so four cores of such a cable tell nothing. */
function hasNoNeutral({ threePhase, cable, isFeeder }: WayStudy): boolean {
  if (!threePhase || isFeeder || cable?.cores === undefined) return false;
  if (cable.cores === 3) return true;
  return (
    cable.cores === 4 && cable.construction === "multicore" && cable.cpc !== undefined && cable.cpcBy === undefined
  );
}
