import { type FaultLevels, faultLevelsFromUpstream } from "../../boards/fault-levels.ts";
import type { BoardNode } from "../../boards/network.ts";
import { exceeds, fallsShort } from "../../calc/compare.ts";
import { practiceOf } from "../../calc/practice.ts";
import { type Calculated, kiloamps } from "../../calc/result.ts";
import { boardFaults, type FaultAt } from "../../circuit/faults.ts";
import { studySupply } from "../../circuit/supply.ts";
import { faultPlaceAtBoard, singlePhaseFigure, upstreamFaults } from "../../readings/fault-check.ts";
import { combine } from "../../tables/source.ts";
import { amount, factSpot, installationRule, type Reporter } from "../frame/rule.ts";

const sample = (Ipf: string) => `wayfile 1
installation "Park" {
  standard     BS 7671:2018+A2:2022
  supply {
    earthing     TN-S
    Ze           0.19 Ω
    Ipf          2.4 kA
  }
  board R "Reception" {
    fed-from     supply
    way 1 feeder "Pillar" {
      device       BS 88-2 63 A 80 kA gG
      feeds        P
      cable        armoured 90 °C  line 16 mm²  cpc-by armour  cores 2
      length       85 m
    }
  }
  board P "Pillar" {
    fed-from     R
    Zdb          0.54 Ω
    Ipf          ${Ipf}
  }
}`;

export default installationRule({
  id: "fault/below-feeder",
  severity: "warning",
  since: "0.1",
  title: "The fault current of a board is below what its feeder brings.",
  why: "Line and neutral of a feeder are as thick as each other, while its armour or cpc is often the worse conductor: whoever reads the loop to earth alone records the smaller of the two currents, and devices are chosen by it. A far smaller figure is a slip of the decimal point or of the unit.",
  clauses: ["434.1", "643.7.3.201"],
  examples: [
    {
      bad: sample("0.43 kA").replace("0.43 kA\n", "0.43 kA\n    ^^^^^^^^^^^^^^^^^^^^\n"),
      good: sample("0.76 kA"),
    },
  ],
  checkNode(node, report) {
    const noted = boardFaults(node.board.head.facts);
    const own = noted.find(({ name }) => name === "Ipf") ?? noted.find(({ name }) => name === "PSCC");
    // What is declared upstream is the most there can be, and a board may well have less.
    if (!own || !node.parent || own.fact.provenance !== "measured" || declaredUpstream(node)) return;
    const levels = faultLevelsFromUpstream(node);
    if (levels && !faultPlaceAtBoard(node.context).some(singlePhaseFigure)) compare(node, own, levels, report);
  },
});

const declaredUpstream = ({ context }: BoardNode): boolean =>
  upstreamFaults(context).some(({ fact }) => fact.provenance === "declared");

function compare(node: BoardNode, own: FaultAt, levels: FaultLevels, report: Reporter): void {
  const brought: Calculated = own.name === "PSCC" ? levels.neutral : levels.greatest;
  const [share, gap] = [practiceOf("fault-feeder"), practiceOf("fault-feeder-gap")];
  const least = share.value * brought.value;
  const { U0 } = studySupply(node.context);
  if (!fallsShort(own.value, least) || !exceeds(U0 / own.value - U0 / brought.value, gap.value)) return;
  report(factSpot(own.fact), {
    message: `${own.name} ${kiloamps(own.value)} is below the ${kiloamps(brought.value)} that the feeder of board ${node.board.head.name} brings between live conductors: ${question(own, levels)}.`,
    value: amount(own.value, "A"),
    limit: amount(least, "A"),
    least: true,
    steps: [...brought.steps, ...share.steps],
    source: combine(brought.source, share.source),
    related: node.feeder ? [{ spot: factSpot(node.feeder.way.header), message: "Feeder of this board." }] : [],
  });
}

/** Which of the smaller currents it is like; else what slips. */
function question({ name, value }: FaultAt, { neutral, three, earth }: FaultLevels): string {
  const like = (other: Calculated | undefined) => other && Math.abs(value / other.value - 1) < likeness;
  if (name === "Ipf" && three && like(neutral))
    return "was it read between line and neutral? Measure between lines, or double it";
  return like(earth)
    ? "was only the loop to earth read? Measure line to neutral as well"
    : "check its decimal point, its unit and the length of the feeder";
}

const likeness = 0.3;
