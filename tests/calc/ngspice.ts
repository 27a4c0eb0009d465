import { Simulation } from "eecircuit-engine";
import type { Resistor } from "../../server/calc/network.ts";

let started: Promise<Simulation> | undefined;
let run = 0;

/** One for all who ask: two of them in a process wait for each other for ever. */
function simulator(): Promise<Simulation> {
  started ??= (async () => {
    const simulation = new Simulation();
    await simulation.start();
    return simulation;
  })();
  return started;
}

/**
 * The same question put to ngspice, a circuit simulator that has nothing in common with our solver: one ampere into one
 * node, out at the other, and the voltage read.
 */
export async function startNgspice(): Promise<
  (resistors: readonly Resistor[], first: string, second: string) => Promise<number>
> {
  const simulation = await simulator();
  return async (resistors, first, second) => {
    // A node out of reach would float, which the simulator answers with a fallback voltage instead of an error.
    const island = connected(resistors, first);
    if (!island.has(second)) return Number.POSITIVE_INFINITY;
    if (first === second) return 0;
    const title = `run ${++run}`;
    simulation.setNetList(
      deck(
        title,
        resistors.filter(({ from, ohms }) => island.has(from) && Number.isFinite(ohms)),
        first,
        second,
      ),
    );
    const { header, data } = await simulation.runSim();
    const errors = simulation.getError().filter((line) => /^(Error|Warning)/.test(line));
    // After a failed analysis the result of the run before comes back, so the title is compared too.
    if (errors.length > 0 || !header.includes(title)) throw new Error(`${title}: ${errors.join("; ")}`);
    const voltage = data.find(({ name }) => name === `v(${nodeName(first, second)})`)?.values[0];
    if (typeof voltage !== "number") throw new Error(`${title}: no voltage`);
    return voltage;
  };
}

/** A phasor: its parts along and across the reference. */
interface Phasor {
  readonly real: number;
  readonly across: number;
}

/** Lines of a netlist at 50 Hz, solved for the voltage of every node named in it. */
export async function startPhasors(): Promise<(lines: readonly string[]) => Promise<(node: string) => Phasor>> {
  const simulation = await simulator();
  return async (lines) => {
    const title = `phasors ${++run}`;
    simulation.setNetList([title, ...lines, ".ac lin 1 50 50", ".end"].join("\n"));
    const result = await simulation.runSim();
    const errors = simulation.getError().filter((line) => /^(Error|Warning)/.test(line));
    if (errors.length > 0 || !result.header.includes(title) || result.dataType !== "complex")
      throw new Error(`${title}: ${errors.join("; ")}`);
    const { data } = result;
    return (node) => {
      const value = data.find(({ name }) => name === `v(${node})`)?.values[0];
      if (!value) throw new Error(`${title}: no node ${node}`);
      return { real: value.real, across: value.img };
    };
  };
}

/** A current fed into a node, A. */
interface Fed {
  readonly node: string;
  readonly amperes: number;
}

/** The same simulator asked for the voltages of a whole network with currents fed into its nodes, V against one of them. */
export async function startVoltages(): Promise<
  (resistors: readonly Resistor[], fed: readonly Fed[], ground: string) => Promise<ReadonlyMap<string, number>>
> {
  const simulation = await simulator();
  return async (resistors, fed, ground) => {
    const title = `voltages ${++run}`;
    const sources = fed.map(({ node, amperes }, index) => `I${index} 0 ${nodeName(node, ground)} DC ${amperes}`);
    simulation.setNetList([title, ...elements(resistors, ground), ...sources, ".op", ".end"].join("\n"));
    const { header, data } = await simulation.runSim();
    const errors = simulation.getError().filter((line) => /^(Error|Warning)/.test(line));
    if (errors.length > 0 || !header.includes(title)) throw new Error(`${title}: ${errors.join("; ")}`);
    const nodes = new Set(resistors.flatMap(({ from, to }) => [from, to]));
    return new Map(
      [...nodes].map((node) => {
        const value = data.find(({ name }) => name === `v(${nodeName(node, ground)})`)?.values[0];
        return [node, typeof value === "number" ? value : 0] as const;
      }),
    );
  };
}

function elements(resistors: readonly Resistor[], ground: string): string[] {
  return resistors.map(({ from, to, ohms }, index) =>
    // A joint without resistance is a source of 0 V: the simulator replaces a resistance of 0 by a small one.
    ohms === 0
      ? `V${index} ${nodeName(from, ground)} ${nodeName(to, ground)} 0`
      : `R${index} ${nodeName(from, ground)} ${nodeName(to, ground)} ${ohms}`,
  );
}

function deck(title: string, resistors: readonly Resistor[], first: string, second: string): string {
  const node = (name: string) => nodeName(name, second);
  const lines = resistors.map(({ from, to, ohms }, index) =>
    // A joint without resistance is a source of 0 V: the simulator replaces a resistance of 0 by a small one.
    ohms === 0 ? `V${index} ${node(from)} ${node(to)} 0` : `R${index} ${node(from)} ${node(to)} ${ohms}`,
  );
  return [title, `I0 0 ${node(first)} DC 1`, ...lines, ".op", ".end"].join("\n");
}

function nodeName(name: string, ground: string): string {
  return name === ground ? "0" : `n_${name.replaceAll(" ", "_")}`;
}

function connected(resistors: readonly Resistor[], start: string): Set<string> {
  const seen = new Set([start]);
  for (let before = 0; before !== seen.size; ) {
    before = seen.size;
    for (const { from, to, ohms } of resistors) {
      if (!Number.isFinite(ohms)) continue;
      if (seen.has(from)) seen.add(to);
      if (seen.has(to)) seen.add(from);
    }
  }
  return seen;
}
