import { Matrix, solve } from "ml-matrix";
import { joinedNodes, type Resistor } from "../../server/calc/network.ts";

/**
 * Resistance (Ω) a meter would show between two nodes of a network, by nodal analysis: one ampere goes in at the first
 * node and out at the second, and the voltage between them is the answer. Infinity when no path joins them.
 */
export function resistanceBetween(resistors: readonly Resistor[], first: string, second: string): number {
  const joined = joinedNodes(resistors);
  const [start, end] = [joined(first), joined(second)];
  if (start === end) return 0;
  const links = resistors
    .filter(({ ohms }) => ohms > 0 && Number.isFinite(ohms))
    .map(({ from, to, ohms }) => ({ from: joined(from), to: joined(to), siemens: 1 / ohms }))
    .filter(({ from, to }) => from !== to);
  // Nodes out of reach would make the matrix singular, so only the island of the first node is solved.
  const island = reachable(links, start);
  if (!island.has(end)) return Number.POSITIVE_INFINITY;
  island.delete(end);
  const index = new Map([...island].map((node, place) => [node, place]));
  const conductance = Matrix.zeros(island.size, island.size);
  for (const { from, to, siemens } of links) {
    const [row, column] = [index.get(from), index.get(to)];
    if (row !== undefined) conductance.set(row, row, conductance.get(row, row) + siemens);
    if (column !== undefined) conductance.set(column, column, conductance.get(column, column) + siemens);
    if (row === undefined || column === undefined) continue;
    conductance.set(row, column, conductance.get(row, column) - siemens);
    conductance.set(column, row, conductance.get(column, row) - siemens);
  }
  const place = index.get(start) ?? 0;
  const current = Matrix.zeros(island.size, 1).set(place, 0, 1);
  return solve(conductance, current).get(place, 0);
}

function reachable(links: readonly { from: string; to: string }[], start: string): Set<string> {
  const neighbours = new Map<string, string[]>();
  const note = (node: string, other: string) => neighbours.set(node, [...(neighbours.get(node) ?? []), other]);
  for (const { from, to } of links) {
    note(from, to);
    note(to, from);
  }
  const seen = new Set([start]);
  // A set yields what is added while it is walked, so this loop is the whole search.
  for (const node of seen) for (const other of neighbours.get(node) ?? []) seen.add(other);
  return seen;
}
