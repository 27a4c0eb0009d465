/**
 * A resistor network answered for every reading that could be taken of it. Circuits are trees with a loop or a few, so
 * what two paths of the tree share is the whole answer but for the loops, each of which takes something off.
 */
import { joinedNodes, type Resistor } from "./network.ts";
import { type Link, type NetworkTree, treeOf } from "./network-tree.ts";

/** Two nodes of a network that a meter, or a further resistor, is put between. */
export interface Port {
  readonly from: string;
  readonly to: string;
}

/** A port found in a network. */
export interface PlacedPort {
  readonly from: number;
  readonly to: number;
  /** Whether no path joins its nodes: `transfer` has no meaning for it. */
  readonly apart: boolean;
  /** Volts along each loop, for one ampere through the port and the tree alone. */
  readonly volts: Float64Array;
  /** Amperes that then flow round each loop. */
  readonly amperes: Float64Array;
}

export interface Survey {
  readonly place: (port: Port) => PlacedPort;
  /** Voltage across one port when one ampere passes through another; of a port with itself, the resistance between its nodes. */
  readonly transfer: (one: PlacedPort, other: PlacedPort) => number;
}

export function surveyOf(resistors: readonly Resistor[]): Survey {
  const joined = joinedNodes(resistors);
  const numbers = new Map<string, number>();
  const numberOf = (node: string): number => {
    const name = joined(node);
    const known = numbers.get(name) ?? numbers.size;
    numbers.set(name, known);
    return known;
  };
  const links = resistors
    .filter(({ ohms }) => ohms > 0 && Number.isFinite(ohms))
    .map(({ from, to, ohms }): Link => ({ from: numberOf(from), to: numberOf(to), ohms }))
    .filter(({ from, to }) => from !== to);
  const tree = treeOf(numbers.size, links);
  const loops = loopConductances(tree);
  const place = ({ from, to }: Port): PlacedPort => {
    const [one, other] = [numbers.get(joined(from)) ?? -1, numbers.get(joined(to)) ?? -1];
    const isOne = joined(from) === joined(to);
    if (one < 0 || other < 0 || tree.rootOf(one) !== tree.rootOf(other)) return nowhere(one, other, !isOne);
    const volts = Float64Array.from(tree.loops, (loop) => alongTree(tree, { from: one, to: other }, loop));
    const amperes = Float64Array.from(loops, (row) =>
      row.reduce((sum, siemens, at) => sum + siemens * (volts[at] ?? 0), 0),
    );
    return { from: one, to: other, apart: false, volts, amperes };
  };
  const transfer = (one: PlacedPort, other: PlacedPort): number => {
    let sum = alongTree(tree, one, other);
    for (let loop = 0; loop < loops.length; loop++) sum -= (one.volts[loop] ?? 0) * (other.amperes[loop] ?? 0);
    return sum;
  };
  return { place, transfer };
}

const none = new Float64Array(0);
const nowhere = (from: number, to: number, apart: boolean): PlacedPort => ({
  from,
  to,
  apart,
  volts: none,
  amperes: none,
});

/** Ω that the paths through the tree between two pairs of nodes share, less where they run against each other. */
function alongTree({ rootOf, common }: NetworkTree, one: Ends, other: Ends): number {
  const shared = (first: number, second: number): number =>
    first < 0 || second < 0 || rootOf(first) !== rootOf(second) ? 0 : common(first, second);
  return (
    shared(one.from, other.from) - shared(one.from, other.to) - shared(one.to, other.from) + shared(one.to, other.to)
  );
}

type Ends = Pick<Link, "from" | "to">;

/** The loop currents' matrix turned round: by Gauss and Jordan, which need no pivot where a matrix is positive definite. */
function loopConductances(tree: NetworkTree): readonly Float64Array[] {
  const { loops } = tree;
  const rows = loops.map((loop, at) =>
    Float64Array.from(loops, (other, next) => alongTree(tree, loop, other) + (at === next ? loop.ohms : 0)),
  );
  for (const [place, pivotRow] of rows.entries()) {
    const pivot = pivotRow[place] ?? 1;
    pivotRow[place] = 1;
    for (let at = 0; at < pivotRow.length; at++) pivotRow[at] = (pivotRow[at] ?? 0) / pivot;
    for (const row of rows) {
      if (row === pivotRow) continue;
      const factor = row[place] ?? 0;
      row[place] = 0;
      for (let at = 0; at < row.length; at++) row[at] = (row[at] ?? 0) - factor * (pivotRow[at] ?? 0);
    }
  }
  return rows;
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
  ports: readonly PlacedPort[],
  branches: readonly PlacedPort[],
): (siemens: readonly number[]) => Float64Array {
  const wide = ports.length;
  const count = branches.length;
  const own = Float64Array.from(ports, (port) => (port.apart ? Number.POSITIVE_INFINITY : survey.transfer(port, port)));
  const across = Float64Array.from(
    branches.flatMap((branch) => ports.map((port) => (port.apart ? 0 : survey.transfer(port, branch)))),
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
