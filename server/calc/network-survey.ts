import { inverse, Matrix } from "ml-matrix";
import type { Resistor } from "./network.ts";
import { joinedNodes } from "./network.ts";

/** Two nodes of a network that a meter, or a further resistor, is put between. */
export interface Port {
  readonly from: string;
  readonly to: string;
}

/**
 * A network solved once for every reading that could be taken of it. `transfer` gives the voltage across one port when
 * one ampere passes through another; of a port with itself, the resistance between its nodes.
 */
export interface Survey {
  readonly transfer: (one: Port, other: Port) => number;
  /** Whether no path joins the nodes of a port: `transfer` has no meaning for it. */
  readonly apart: (port: Port) => boolean;
}

export function surveyOf(resistors: readonly Resistor[]): Survey {
  const joined = joinedNodes(resistors);
  const links = resistors
    .filter(({ ohms }) => ohms > 0 && Number.isFinite(ohms))
    .map(({ from, to, ohms }) => ({ from: joined(from), to: joined(to), siemens: 1 / ohms }))
    .filter(({ from, to }) => from !== to);
  const island = islands(links);
  // One node of each island is its reference; all others have a row.
  const index = new Map<string, number>();
  for (const [node, reference] of island) if (node !== reference) index.set(node, index.size);
  const conductance = Matrix.zeros(index.size, index.size);
  const add = (row: number | undefined, column: number | undefined, siemens: number) => {
    if (row !== undefined && column !== undefined) conductance.set(row, column, conductance.get(row, column) + siemens);
  };
  for (const { from, to, siemens } of links) {
    const [one, other] = [index.get(from), index.get(to)];
    add(one, one, siemens);
    add(other, other, siemens);
    add(one, other, -siemens);
    add(other, one, -siemens);
  }
  const solved = index.size === 0 ? conductance : inverse(conductance);
  const at = (one: number | undefined, other: number | undefined) =>
    one === undefined || other === undefined ? 0 : solved.get(one, other);
  const place = (node: string) => index.get(joined(node));
  return {
    transfer: (one, other) => {
      const [a, b, c, d] = [place(one.from), place(one.to), place(other.from), place(other.to)];
      return at(a, c) - at(a, d) - at(b, c) + at(b, d);
    },
    apart: ({ from, to }) => {
      const [one, other] = [joined(from), joined(to)];
      return one !== other && (island.get(one) ?? one) !== (island.get(other) ?? other);
    },
  };
}

/** Each node with the reference node of the part of the network it lies in. */
function islands(links: readonly { readonly from: string; readonly to: string }[]): Map<string, string> {
  const neighbours = new Map<string, string[]>();
  for (const { from, to } of links)
    for (const [node, other] of [
      [from, to],
      [to, from],
    ] as const) {
      const known = neighbours.get(node);
      if (known) known.push(other);
      else neighbours.set(node, [other]);
    }
  const found = new Map<string, string>();
  for (const reference of neighbours.keys()) {
    if (found.has(reference)) continue;
    const queue = [reference];
    found.set(reference, reference);
    // An array yields what is appended while it is walked, so this loop is the whole search.
    for (const node of queue)
      for (const other of neighbours.get(node) ?? [])
        if (!found.has(other)) {
          found.set(other, reference);
          queue.push(other);
        }
  }
  return found;
}

/** Below this share of what it was, the loop that a changed branch closes is taken for cut. */
const cut = 1e-9;

/**
 * Readings at several ports after some branches are given other conductances, without solving again: each change is a
 * step of rank one. Conductance (S) is added to a branch, or taken from it; taking all of it cuts the branch. The answer is
 * good until the next is asked for.
 */
export function withBranches(
  survey: Survey,
  ports: readonly Port[],
  branches: readonly Port[],
): (siemens: readonly number[]) => Float64Array {
  const wide = ports.length;
  const count = branches.length;
  const own = Float64Array.from(ports, (port) =>
    survey.apart(port) ? Number.POSITIVE_INFINITY : survey.transfer(port, port),
  );
  const across = Float64Array.from(
    branches.flatMap((branch) => ports.map((port) => (survey.apart(port) ? 0 : survey.transfer(port, branch)))),
  );
  const among = Float64Array.from(
    branches.flatMap((branch) => branches.map((other) => survey.transfer(branch, other))),
  );
  // Asked for thousands of times over, so the same arrays serve every time.
  const [values, voltage, mutual] = [own.slice(), across.slice(), among.slice()];
  return (siemens) => {
    values.set(own);
    voltage.set(across);
    mutual.set(among);
    for (let place = 0; place < count; place++) {
      const change = siemens[place] ?? 0;
      if (change === 0) continue;
      const loop = 1 + change * (mutual[place * count + place] ?? 0);
      const isCut = loop < cut;
      for (let port = 0; port < wide; port++) {
        const share = voltage[place * wide + port] ?? 0;
        if (isCut) values[port] = Math.abs(share) > cut ? Number.POSITIVE_INFINITY : (values[port] ?? 0);
        else values[port] = (values[port] ?? 0) - (share * share * change) / loop;
      }
      if (isCut) continue;
      for (let next = place + 1; next < count; next++) {
        const factor = ((mutual[place * count + next] ?? 0) * change) / loop;
        for (let port = 0; port < wide; port++)
          voltage[next * wide + port] =
            (voltage[next * wide + port] ?? 0) - (voltage[place * wide + port] ?? 0) * factor;
        for (let other = place + 1; other < count; other++)
          mutual[next * count + other] =
            (mutual[next * count + other] ?? 0) - (mutual[place * count + other] ?? 0) * factor;
      }
    }
    return values;
  };
}
