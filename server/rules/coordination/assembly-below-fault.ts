import { faultLevels } from "../../boards/fault-levels.ts";
import type { BoardNode } from "../../boards/network.ts";
import { exceeds } from "../../calc/compare.ts";
import { kiloamps, relation } from "../../calc/result.ts";
import { greatestFault } from "../../circuit/faults.ts";
import { ruleAlone } from "../../tables/source.ts";
import { amount, factSpot, installationRule, type Reporter, valueSpot } from "../frame/rule.ts";

const sample = (rating: string) => `wayfile 1
installation "Sample" {
  standard     BS 7671:2018+A2:2022
  board A "Main" {
    fed-from     supply
    conditional-rating ${rating}
    Ipf          11.5 kA
  }
}`;

export default installationRule({
  id: "coordination/assembly-below-fault",
  severity: "error",
  since: "0.1",
  title: "The fault current exceeds the short-circuit rating of the board as an assembly.",
  why: "A fault on the busbars or terminals ahead of the first device stresses the assembly itself, whatever the devices in it can break. Fit a board with a higher rating, or move it further from the source.",
  clauses: ["536.4.201", "434.5.1"],
  examples: [
    { bad: sample("10 kA").replace("10 kA\n", "10 kA\n                       ^^^^^\n"), good: sample("16 kA") },
  ],
  checkNode,
});

function checkNode(node: BoardNode, report: Reporter): void {
  const fact = node.board.head.facts.one("conditional-rating");
  if (!fact) return;
  const noted = greatestFault(node.context);
  // What is calculated may be more than flows: only what surely flows counts.
  const calculated = noted ? undefined : faultLevels(node)?.greatest;
  const fault = noted?.value ?? calculated?.value;
  const { value } = fact.args;
  if (fault === undefined || !exceeds(fault, value.value)) return;
  const how = noted ? `${noted.sign === ">" ? "more than" : "up to"}` : "by calculation about";
  report(valueSpot(fact, value), {
    message: `Board ${node.board.head.name} is rated ${kiloamps(value.value)} as an assembly; ${how} ${kiloamps(fault)} may flow: fit a higher rating, or ask its maker.`,
    value: amount(fault, "A"),
    limit: amount(value.value, "A"),
    steps: [...(calculated?.steps ?? []), relation("fault ≤ rating", kiloamps(fault), kiloamps(value.value))],
    source: ruleAlone({ ref: "BS 7671:2018+A2:2022, 536.4.201", standing: "memory" }),
    ...(noted ? {} : { severity: "warning" as const }),
    related: noted ? [{ spot: factSpot(noted.fact), message: `${noted.name} ${kiloamps(noted.value)}.` }] : [],
  });
}
