import type { Calculated } from "../calc/result.ts";
import { amps, step } from "../calc/result.ts";
import { memoOfWhole } from "../circuit/kept.ts";
import { lazy } from "../circuit/lazy.ts";
import { studySupply } from "../circuit/supply.ts";
import type { Installation } from "../model/installation.ts";
import { combine } from "../tables/source.ts";
import { type Line, threeLines } from "./circuit-load.ts";
import { type BoardDemand, demandOf, greatestOf, lineOf, unknownOf } from "./demand.ts";
import { type BoardNode, networkOf } from "./network.ts";

interface Origin {
  readonly node: BoardNode;
  readonly demand: BoardDemand;
  /** The line it is on, where something says so. */
  readonly own: Line | undefined;
}

/** The demand at the origin: of all boards fed from the supply, added line by line. */
export const originDemand = memoOfWhole((installation: Installation): BoardDemand | undefined => {
  const nodes = networkOf(installation).origins;
  const origins = nodes.flatMap((node): Origin[] => {
    const demand = demandOf(node);
    return demand ? [{ node, demand, own: lineOf(node) }] : [];
  });
  // A board of which nothing is known draws something all the same: the sum is at least what the others come to.
  const silent = origins.length === nodes.length ? [] : nodes.filter((node) => !demandOf(node)).flatMap(unknownOf);
  const [only] = origins;
  if (!only) return undefined;
  const three = studySupply(only.node.context).threePhase || origins.some(({ node }) => node.threePhase);
  if (origins.length === 1 && silent.length === 0 && (!three || only.node.threePhase)) return only.demand;
  const lines = new Map((three ? threeLines : (["L"] as const)).map((line) => [line, onLine(line, origins)]));
  const unlined = three ? origins.filter(isUnlined).map(({ node }) => node) : [];
  const all = origins.map(({ demand }) => demand);
  // Listed when somebody asks: most edits change one board, and no check looks into all of them.
  const assumed = lazy(() => all.flatMap((demand) => demand.assumed));
  const unknown = lazy(() => [...all.flatMap((demand) => demand.unknown), ...silent]);
  const unplaced = lazy(() => all.flatMap((demand) => demand.unplaced));
  return {
    lines,
    greatest: greatestOf(lines),
    diverse: unlined.length === 0 && all.every(({ diverse }) => diverse),
    unread: all.some(({ unread }) => unread),
    get assumed() {
      return assumed();
    },
    get unknown() {
      return unknown();
    },
    get unplaced() {
      return unplaced();
    },
    spread: all.reduce((sum, { spread }) => sum + spread, 0),
    unlined: [...unlined, ...all.flatMap(({ unlined: boards }) => boards)],
  };
});

/** Whether a board fed from a supply of three lines is on one of them that nobody has named. */
const isUnlined = ({ node, own }: Origin): boolean => !node.threePhase && own === undefined;

/**
 * The boards of one line. An edit changes one of them, so that what is added here is a figure a board; its working stands
 * with the board, and this one's is written when somebody asks for it.
 */
function onLine(line: Line, origins: readonly Origin[]): Calculated {
  let value = 0;
  for (const origin of origins) if (isOn(line, origin)) value += partOn(line, origin).value;
  const here = lazy(() => origins.filter((origin) => isOn(line, origin)));
  const written = lazy(() => {
    const numbers = here().map(
      (origin) =>
        `${origin.node.board.head.name} ${amps(partOn(line, origin).value)}${line !== "L" && isUnlined(origin) ? " (counted on every line)" : ""}`,
    );
    const title = line === "L" ? "demand at the origin" : `demand at the origin, ${line}`;
    const working = here().length > most ? [] : here().flatMap((origin) => partOn(line, origin).steps);
    return [...working, step(title, numbers.join(" + "), amps(value))];
  });
  const source = lazy(() => combine(...new Set(here().map((origin) => partOn(line, origin).source))));
  return {
    value,
    unit: "A",
    get steps() {
      return written();
    },
    get source() {
      return source();
    },
  };
}

/** Of a single-phase board nothing says which line it is on: the sum is then too great rather than too small. */
const isOn = (line: Line, { own }: Origin): boolean => line === "L" || own === undefined || own === line;

const partOn = (line: Line, { demand }: Origin): Calculated => demand.lines.get(line) ?? demand.greatest;

/** Boards whose own working a person would still read here. */
const most = 12;
