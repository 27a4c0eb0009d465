/** What of a board has a rating and no overload protection of its own: main switch, busbars, RCDs. */

import { exceeds } from "../calc/compare.ts";
import type { Calculated } from "../calc/result.ts";
import { amps, step } from "../calc/result.ts";
import { deviceName } from "../circuit/describe.ts";
import { memoOfBoard, memoOfWhole } from "../circuit/kept.ts";
import { studyWay, type WayStudy } from "../circuit/way.ts";
import type { Way } from "../model/file.ts";
import { isThreePhase } from "../model/three-lines.ts";
import type { Fact, Quantity } from "../model/values.ts";
import { sum } from "../text/sum.ts";
import { rcdsAt } from "./board-rcds.ts";
import { type Line, linesOf, threeLines } from "./circuit-load.ts";
import { isOvercurrent, type Protecting, protecting, protectingInside } from "./coordination.ts";
import { type BoardDemand, demandBehind, demandOf } from "./demand.ts";
import type { BoardNode, StudiedBoard } from "./network.ts";

export interface RatedPart {
  readonly kind: "switch" | "busbar" | "rcd";
  /** As it is spoken of: "the busbars". */
  readonly name: string;
  readonly fact: Fact;
  readonly rating: Quantity;
  /** The ways that draw their current through it. */
  readonly ways: readonly WayStudy[];
  /** What keeps the current through it within bounds. */
  readonly above: Protecting | undefined;
  /** The devices behind it together, on the line with most; nothing where the rating of one is not known. */
  readonly behind: Calculated | undefined;
  /** Whether a line that describes one of these devices was not understood. */
  readonly isUnclear: boolean;
}

/** A part by its board alone. */
interface OwnPart extends Pick<RatedPart, "kind" | "name" | "fact" | "rating" | "behind" | "isUnclear"> {
  readonly through: readonly Way[];
  /** The device on the way whose RCD it is. */
  readonly device?: Protecting | undefined;
}

/** The parts of a board that an overload would burn without opening anything, the outermost first. */
export const ratedParts = memoOfWhole((node: BoardNode): readonly RatedPart[] =>
  ownParts(node).map(({ through, device, ...part }) => ({
    ...part,
    above: part.kind === "switch" ? protecting(node.context) : smaller(device, protectingInside(node.context)),
    get ways() {
      return through.map((way) => studyWay(way, node.context));
    },
  })),
);

const ownParts = memoOfBoard(({ board, context, studies }: StudiedBoard): readonly OwnPart[] => {
  const { facts } = board.head;
  const ways = studies.filter((study) => !study.isSpare);
  const three = isThreePhase(context);
  const parts: OwnPart[] = [];
  const add = (part: Omit<OwnPart, "through" | "behind" | "isUnclear">, own: readonly WayStudy[]): void => {
    const isUnclear = own.some((study) => study.facts.isUnread("device"));
    parts.push({ ...part, through: own.map(({ way }) => way), behind: ratingsBehind(three, own), isUnclear });
  };
  const main = facts.one("main-switch");
  if (main && !isOvercurrent(main.args.standard.value)) {
    add({ kind: "switch", name: "the main switch", fact: main, rating: main.args.rating }, ways);
  }
  const busbar = facts.one("busbar");
  if (busbar) add({ kind: "busbar", name: "the busbars", fact: busbar, rating: busbar.args.rating }, ways);
  for (const { rcd, ways: own } of rcdsAt(studies)) {
    const { rating } = rcd.fact.args;
    if (rating === undefined || (rcd.at !== "board" && rcd.at !== "way") || isOvercurrent(rcd.standard)) continue;
    const name = rcd.name === undefined ? `the RCD of way ${own[0]?.way.id ?? ""}` : `RCD ${rcd.name}`;
    const device = rcd.at === "way" ? ofDevice(own[0]) : undefined;
    add({ kind: "rcd", name, fact: rcd.fact, rating, device }, own);
  }
  return parts;
});

const smaller = (one: Protecting | undefined, other: Protecting | undefined): Protecting | undefined =>
  one && (!other || one.rating <= other.rating) ? one : other;

function ofDevice(study: WayStudy | undefined): Protecting | undefined {
  const device = study?.device;
  if (device?.rating === undefined) return undefined;
  return { rating: device.rating, name: `the ${deviceName(device)} device`, fact: device.fact };
}

/** Ratings of the devices added line by line; a circuit whose line is not stated counts on every one. */
function ratingsBehind(threePhase: boolean, ways: readonly WayStudy[]): Calculated | undefined {
  if (ways.length === 0 || ways.some(({ device }) => device?.rating === undefined)) return undefined;
  const sums = (threePhase ? threeLines : (["L"] as const)).map((line) => ratingsOn(line, ways));
  return sums.reduce((most, one) => (one.value > most.value ? one : most));
}

function ratingsOn(line: Line, ways: readonly WayStudy[]): Calculated {
  const here = ways.filter((study) => {
    const lines = linesOf(study);
    return lines.length === 0 || lines.includes(line);
  });
  const ratings = here.flatMap(({ device }) => device?.rating ?? []);
  const value = sum(ratings);
  const name = line === "L" ? "devices behind it" : `devices behind it on ${line}`;
  const source = { ref: "Sum of the ratings", standing: "computed" } as const;
  return { value, unit: "A", steps: [step(name, ratings.map(amps).join(" + "), amps(value))], source };
}

/** Whether what stands before it, or the devices behind it together, keep the current within its rating. */
export const isGuarded = ({ rating, above, behind }: RatedPart): boolean =>
  (above !== undefined && above.rating <= rating.value) ||
  (behind !== undefined && !exceeds(behind.value, rating.value));

/** What is drawn through a part. */
export const demandThrough = (node: BoardNode, { kind, ways }: RatedPart): BoardDemand | undefined =>
  kind === "rcd" ? demandBehind(node, ways) : demandOf(node);
