import { boardsByName } from "../../boards/feeders.ts";
import type { Board } from "../../model/file.ts";
import { installationRule, valueSpot } from "../frame/rule.ts";

const sourceName = (board: Board): string | undefined => board.head.facts.one("fed-from")?.args.from.value;

/** The boards on the way up from one until one comes again; nothing if the way ends at the supply or in the dark. */
function circleFrom(start: Board, boards: ReadonlyMap<string, Board>): Board[] | undefined {
  const path: Board[] = [];
  let current: Board | undefined = start;
  while (current && !path.includes(current)) {
    path.push(current);
    const from = sourceName(current);
    current = from === undefined ? undefined : boards.get(from);
  }
  return current === start ? path : undefined;
}

export default installationRule({
  id: "network/circular-feed",
  severity: "error",
  since: "0.1",
  title: "Boards feed each other in a circle.",
  why: "None of them leads to the supply, so none of their loop impedances, fault currents or voltage drops can be calculated. One of the boards is fed from somewhere else.",
  clauses: ["314.1"],
  examples: [
    {
      bad: `wayfile 1
installation "Kiln house" {
  standard     BS 7671:2018+A2:2022
  board A "Front board" {
    fed-from     B
    ^^^^^^^^^^^^^^
    way 1 feeder "Back board" { feeds B }
  }
  board B "Back board" {
    fed-from     A
    ^^^^^^^^^^^^^^
    way 1 feeder "Front board" { feeds A }
  }
}`,
      good: `wayfile 1
installation "Kiln house" {
  standard     BS 7671:2018+A2:2022
  board A "Front board" {
    fed-from     supply
    way 1 feeder "Back board" { feeds B }
  }
  board B "Back board" {
    fed-from     A
  }
}`,
    },
  ],
  check(installation, report) {
    const boards = boardsByName(installation);
    for (const board of boards.values()) {
      const fact = board.head.facts.one("fed-from");
      const circle = fact && circleFrom(board, boards);
      if (!circle) continue;
      const names = [...circle, board].map(({ head }) => head.name).join(", fed from ");
      report(
        { segment: fact.segment, start: fact.start, end: fact.end },
        {
          message: `Circular feed: ${names}. One of these boards must be fed from the supply.`,
          related: circle.slice(1).flatMap(({ head }) => {
            const next = head.facts.one("fed-from");
            return next
              ? [{ spot: valueSpot(next, next.args.from), message: `Board ${head.name} is recorded as fed from here.` }]
              : [];
          }),
        },
      );
    }
  },
});
