import { demandOf } from "../../boards/demand.ts";
import type { BoardNode } from "../../boards/network.ts";
import { practiceOf } from "../../calc/practice.ts";
import { amps, step } from "../../calc/result.ts";
import { combine } from "../../tables/source.ts";
import { amount, factSpot, installationRule, type Reporter, wordSpot } from "../frame/rule.ts";

const sample = (one: string, other: string) => `wayfile 1
installation "Sample" {
  standard     BS 7671:2018+A2:2022
  premises     commercial
  supply {
    phases       three
  }
  board A "Main" {
    fed-from     supply
    way 1 radial "Kiln" {
      phase        L1
      Ib           30 A
    }
    way 2 radial "Oven" {
      phase        ${one}
      Ib           28 A
    }
    way 3 radial "Heater" {
      phase        ${other}
      Ib           24 A
    }
  }
}`;

export default installationRule({
  id: "demand/unbalanced",
  severity: "information",
  since: "0.1",
  title: "The three lines of a board are loaded unequally.",
  why: "One line reaches its limit while the others have capacity to spare, and the neutral carries the difference. Move single-phase circuits from the most to the least loaded line.",
  clauses: ["314.1"],
  examples: [
    {
      bad: sample("L1", "L2").replace('A "Main" {\n', 'A "Main" {\n  ^^^^^\n'),
      good: sample("L2", "L3"),
    },
  ],
  checkNode,
});

function checkNode(node: BoardNode, report: Reporter): void {
  if (!node.threePhase) return;
  const demand = demandOf(node);
  // Circuits nobody has placed yet, or whose load is not known, may be just what evens it out.
  if (!demand || demand.unread || demand.unplaced.length > 0 || demand.unknown.length > 0) return;
  const values = [...demand.lines].map(([line, { value }]) => ({ line, value }));
  const [least, , most] = values.toSorted((one, other) => one.value - other.value);
  if (!least || !most) return;
  const share = practiceOf("unbalance-share");
  const floor = practiceOf("unbalance-floor");
  const gap = most.value - least.value;
  if (gap < floor.value || gap <= share.value * most.value) return;
  const on = node.studies.filter(({ facts }) => facts.one("phase")?.args.phase.value === most.line);
  // Moving a circuit that is as large as the difference only puts the unbalance elsewhere.
  const moved = on.find(({ designCurrent }) => designCurrent !== undefined && designCurrent.value < gap);
  if (!moved) return;
  report(wordSpot(node.board.head.header), {
    message: `Board ${node.board.head.name} draws ${values.map(({ line, value }) => `${amps(value)} on ${line}`).join(", ")}: move way ${moved.way.id} from ${most.line} to ${least.line}.`,
    value: amount(gap, "A"),
    limit: amount(Math.max(floor.value, share.value * most.value), "A"),
    steps: [
      ...[...demand.lines.values()].flatMap(({ steps }) => steps),
      step("difference", `${amps(most.value)} − ${amps(least.value)}`, amps(gap)),
      ...share.steps,
    ],
    source: combine(share.source, floor.source),
    related: on.map(({ way }) => ({ spot: factSpot(way.header), message: `Way ${way.id} is on ${most.line}.` })),
  });
}
