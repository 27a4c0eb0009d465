import type { Calculated } from "../calc/index.ts";
import { amps, step } from "../calc/result.ts";
import type { Installation } from "../model/installation.ts";
import { combine } from "../tables/source.ts";
import { type Line, threeLines } from "./circuit-load.ts";
import { type BoardDemand, demandOf, greatestOf } from "./demand.ts";
import { keptWith } from "./kept.ts";
import { networkOf } from "./network.ts";

/** The demand at the origin: of all boards fed from the supply, added line by line. */
export const originDemand = keptWith((installation: Installation): BoardDemand | undefined => {
  const origins = networkOf(installation).origins.flatMap((node) => {
    const demand = demandOf(node);
    return demand ? [{ node, demand }] : [];
  });
  const [only] = origins;
  if (!only) return undefined;
  if (origins.length === 1) return only.demand;
  const three = origins.some(({ node }) => node.threePhase);
  const lines = new Map<Line, Calculated>();
  for (const line of three ? threeLines : (["L"] as const)) {
    const parts = origins.map(({ node, demand }) => {
      // Of a single-phase board nothing says which line it is on: the sum is then too great rather than too small.
      const part = demand.lines.get(line) ?? demand.greatest;
      return { name: node.board.head.name, part };
    });
    const value = parts.reduce((sum, { part }) => sum + part.value, 0);
    const numbers = parts.map(({ name, part }) => `${name} ${amps(part.value)}`).join(" + ");
    const steps = [...parts.flatMap(({ part }) => part.steps), step("demand at the origin", numbers, amps(value))];
    lines.set(line, { value, unit: "A", steps, source: combine(...parts.map(({ part }) => part.source)) });
  }
  const all = origins.map(({ demand }) => demand);
  return {
    lines,
    greatest: greatestOf(lines),
    // Single-phase boards of a three-phase supply stand on lines nobody stated.
    diverse: all.every(({ diverse }) => diverse) && !(three && origins.some(({ node }) => !node.threePhase)),
    assumed: all.flatMap(({ assumed }) => assumed),
    unknown: all.flatMap(({ unknown }) => unknown),
    unplaced: all.flatMap(({ unplaced }) => unplaced),
  };
});
