import { boardsByName, type Feeder, feedersIn } from "../../boards/feeders.ts";
import { installationRule, valueSpot } from "../frame/rule.ts";

const nameOf = ({ way, board }: Feeder): string => `way ${way.id} of board ${board.head.name}`;

export default installationRule({
  id: "network/two-feeders",
  severity: "error",
  since: "0.1",
  title: "Two ways feed one board.",
  why: "Anyone who isolates one of them may take the board for dead. If a second supply is intended, through a changeover switch, the board says so with changeover.",
  clauses: ["314.1", "462.1"],
  examples: [
    {
      bad: `wayfile 1
installation "Kiln house" {
  standard     BS 7671:2018+A2:2022
  board A "Front board" {
    fed-from     supply
    way 1 feeder "Back board" { feeds B }
    way 2 feeder "Back board, old feed" { feeds B }
                                                ^
  }
  board B "Back board" {
    fed-from     A
  }
}`,
      good: `wayfile 1
installation "Kiln house" {
  standard     BS 7671:2018+A2:2022
  board A "Front board" {
    fed-from     supply
    way 1 feeder "Back board" { feeds B }
    way 2 spare
  }
  board B "Back board" {
    fed-from     A
  }
}`,
    },
  ],
  check(installation, report) {
    const boards = boardsByName(installation);
    const first = new Map<string, Feeder>();
    for (const feeder of feedersIn(installation)) {
      const before = first.get(feeder.to);
      if (!before) first.set(feeder.to, feeder);
      else if (boards.has(feeder.to)) {
        const changeover = boards.get(feeder.to)?.head.facts.one("changeover");
        report(valueSpot(feeder.fact, feeder.fact.args.board), {
          message: changeover
            ? `Board ${feeder.to} is fed through its changeover switch by ${nameOf(before)} or ${nameOf(feeder)}: isolate both before work on it.`
            : `Board ${feeder.to} has two feeders, ${nameOf(before)} and ${nameOf(feeder)}: it stays live with either of them off. Where a switch lets in only one, write changeover.`,
          ...(changeover ? { severity: "information" as const } : {}),
          related: [
            { spot: valueSpot(before.fact, before.fact.args.board), message: `Other feeder: ${nameOf(before)}.` },
          ],
        });
      }
    }
  },
});
