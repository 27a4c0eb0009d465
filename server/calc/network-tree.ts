/** The paths through a resistor network: a tree for each part that hangs together, and the resistors that close loops. */

/** A resistor between two nodes by their numbers, Ω. */
export interface Link {
  readonly from: number;
  readonly to: number;
  readonly ohms: number;
}

export interface NetworkTree {
  /** The resistors that are not needed to reach a node: each closes one loop. */
  readonly loops: readonly Link[];
  /** The root of the part of the network a node lies in. */
  readonly rootOf: (node: number) => number;
  /** Ω that the paths of two nodes of one part, from its root, have in common. */
  readonly common: (one: number, other: number) => number;
}

/** `links` join nodes numbered from 0 to `count` − 1. One pass each way; `common` takes a step for each branch passed. */
export function treeOf(count: number, links: readonly Link[]): NetworkTree {
  const walk = walkOf(count, links);
  const { root, parent, level, ohms } = walk;
  const head = headsOf(walk);
  const at = (numbers: Int32Array | Float64Array, node: number): number => numbers[node] ?? 0;
  const common = (first: number, second: number): number => {
    let [one, other] = [first, second];
    while (at(head, one) !== at(head, other)) {
      const isDeeper = at(level, at(head, one)) >= at(level, at(head, other));
      if (isDeeper) one = at(parent, at(head, one));
      else other = at(parent, at(head, other));
    }
    return at(ohms, at(level, one) < at(level, other) ? one : other);
  };
  return { loops: walk.loops, rootOf: (node) => at(root, node), common };
}

/** Every node with the one before it on its path from the root, in the order they were reached. */
interface Walk {
  readonly order: readonly number[];
  readonly root: Int32Array;
  readonly parent: Int32Array;
  /** Steps from the root. */
  readonly level: Int32Array;
  /** Ω from the root. */
  readonly ohms: Float64Array;
  readonly loops: readonly Link[];
}

function walkOf(count: number, links: readonly Link[]): Walk {
  const atNode: Link[][] = Array.from({ length: count }, () => []);
  for (const link of links) {
    atNode[link.from]?.push(link);
    atNode[link.to]?.push(link);
  }
  const order: number[] = [];
  const root = new Int32Array(count).fill(-1);
  const parent = new Int32Array(count).fill(-1);
  const level = new Int32Array(count);
  const ohms = new Float64Array(count);
  const used = new Set<Link>();
  for (let start = 0; start < count; start++) {
    if (root[start] !== -1) continue;
    root[start] = start;
    const found = [start];
    // An array yields what is appended while it is walked, so this loop is the whole search.
    for (const node of found)
      for (const link of atNode[node] ?? []) {
        const next = link.from === node ? link.to : link.from;
        if (root[next] !== -1) continue;
        used.add(link);
        root[next] = start;
        parent[next] = node;
        level[next] = (level[node] ?? 0) + 1;
        ohms[next] = (ohms[node] ?? 0) + link.ohms;
        found.push(next);
      }
    for (const node of found) order.push(node);
  }
  return { order, root, parent, level, ohms, loops: links.filter((link) => !used.has(link)) };
}

/** Each node with the first of the unbranched stretch it lies on: where paths fork, the one with more behind it goes on. */
function headsOf({ order, parent }: Walk): Int32Array {
  const behind = new Int32Array(order.length).fill(1);
  const heavy = new Int32Array(order.length).fill(-1);
  for (const node of order.toReversed()) {
    const above = parent[node] ?? -1;
    if (above < 0) continue;
    behind[above] = (behind[above] ?? 0) + (behind[node] ?? 0);
    const known = heavy[above] ?? -1;
    if (known < 0 || (behind[node] ?? 0) > (behind[known] ?? 0)) heavy[above] = node;
  }
  const head = new Int32Array(order.length);
  for (const node of order) {
    const above = parent[node] ?? -1;
    head[node] = above >= 0 && heavy[above] === node ? (head[above] ?? 0) : node;
  }
  return head;
}
