/** A resistor between two named nodes, in Ω. Zero joins the nodes, infinity leaves them apart. */
export interface Resistor {
  readonly from: string;
  readonly to: string;
  readonly ohms: number;
}

/** Nodes that a zero resistance joins are one node; the answer names each group by one of its members. */
export function joinedNodes(resistors: readonly Resistor[]): (node: string) => string {
  const parent = new Map<string, string>();
  const root = (node: string): string => {
    const above = parent.get(node);
    return above === undefined ? node : root(above);
  };
  for (const { from, to, ohms } of resistors) {
    const [one, other] = [root(from), root(to)];
    if (ohms === 0 && one !== other) parent.set(one, other);
  }
  return root;
}
