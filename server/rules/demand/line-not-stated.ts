import type { Line } from "../../boards/circuit-load.ts";
import { type BoardDemand, demandOf } from "../../boards/demand.ts";
import { originDemand } from "../../boards/demand-origin.ts";
import { type BoardNode, networkOf } from "../../boards/network.ts";
import { amps, type Step, step } from "../../calc/result.ts";
import { lineInBlock } from "../common/writing.ts";
import { amount, factSpot, installationRule, type Reporter, wordSpot } from "../frame/rule.ts";

const sample = (way: string, board: string) => `wayfile 1
installation "Sample" {
  standard     BS 7671:2018+A2:2022
  supply {
    phases       three
  }
  board A "Main" {
    fed-from     supply
    phases       three
    way 1 radial "Kiln" {
${way}      Ib           30 A
    }
  }
  board B "Lodge" {
    fed-from     supply
    phases       single
${board}    way 1 radial "Heater" {
      Ib           12 A
    }
  }
}`;

export default installationRule({
  id: "demand/line-not-stated",
  severity: "information",
  since: "0.1",
  title: "It is not stated which line a single-phase circuit or board is connected to.",
  why: "Balance, demand of each line and the current in the neutral all depend on it. Circuits without their line are spread evenly, which may be too little; a board without it is counted on every line, which is too much.",
  clauses: ["314.1", "311.1"],
  examples: [
    {
      bad: sample("", "    phase        L2\n").replace(
        '    way 1 radial "Kiln" {\n',
        '    way 1 radial "Kiln" {\n    ^^^^^^^^^^^^^^^^^^^\n',
      ),
      good: sample("      phase        L1\n", "    phase        L2\n"),
    },
    {
      bad: sample("      phase        L1\n", "").replace('B "Lodge" {\n', 'B "Lodge" {\n  ^^^^^\n'),
      good: sample("      phase        L1\n", "    phase        L3\n"),
    },
  ],
  checkNode(node, report) {
    if (node.threePhase) ofWays(node, report);
  },
  check(installation, report) {
    const { nodes } = networkOf(installation);
    const every = [originDemand(installation), ...nodes.filter(({ threePhase }) => threePhase).map(demandOf)];
    const boards = new Map(every.flatMap((demand) => demand?.unlined.map((node) => [node, demand] as const) ?? []));
    for (const [node, demand] of boards) ofBoard(node, demand, report);
  },
});

/** The circuits of one board together, on the first of them. */
function ofWays(node: BoardNode, report: Reporter): void {
  const demand = demandOf(node);
  // A line that is being typed is not a line that is missing.
  const unplaced = demand?.unplaced.filter(
    ({ way, board }) => board === node.board.head && !way.facts.isUnread("phase"),
  );
  const [first, ...others] = unplaced ?? [];
  if (!demand || !first) return;
  const name = others.length === 0 ? `way ${first.way.id} of` : `way ${first.way.id} and ${others.length} more of`;
  const worst = worstOf(demand);
  report(factSpot(first.way.header), {
    message: `The line of ${name} board ${node.board.head.name} is not stated: ${amps(demand.greatest.value)} if spread evenly, ${amps(worst.value)} if all on one. Write the phase of each.`,
    value: amount(worst.value, "A"),
    steps: [...demand.greatest.steps, ...worst.steps],
    related: others
      .slice(0, 6)
      .map(({ way }) => ({ spot: factSpot(way.header), message: `The line of way ${way.id} is not stated either.` })),
    fixes: byLoad(demand).flatMap((line) => lineInBlock(first.way.header, `phase ${line}`, `It is on ${line}`)),
  });
}

/** All of them on the line that carries most already. */
function worstOf({ greatest, spread }: BoardDemand): { value: number; steps: readonly Step[] } {
  const value = greatest.value + (spread * 2) / 3;
  const numbers = `${amps(greatest.value)} + 2 / 3 × ${amps(spread)}`;
  return { value, steps: [step("all on one line", numbers, amps(value))] };
}

function ofBoard(node: BoardNode, demand: BoardDemand, report: Reporter): void {
  const { head } = node.board;
  const typing = [head.facts, node.feeder?.facts].some((facts) =>
    facts?.broken?.some((word) => word === "phase" || word === "phases"),
  );
  if (typing) return;
  const own = demandOf(node)?.greatest;
  report(wordSpot(head.header), {
    message: `The line of single-phase board ${head.name} is not stated, so its ${amps(own?.value ?? 0)} is counted on every line: write its phase.`,
    ...(own ? { value: amount(own.value, "A") } : {}),
    steps: demand.greatest.steps,
    ...(node.feeder
      ? { related: [{ spot: factSpot(node.feeder.way.header), message: "The way that feeds this board." }] }
      : {}),
    fixes: byLoad(demand).flatMap((line) => lineInBlock(head.header, `phase ${line}`, `It is on ${line}`)),
  });
}

/** The line that carries least first. */
const byLoad = ({ lines }: BoardDemand): readonly Line[] =>
  [...lines].toSorted(([, one], [, other]) => one.value - other.value).map(([line]) => line);
