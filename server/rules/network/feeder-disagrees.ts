import { boardsByName, type Feeder, feedersIn } from "../../boards/feeders.ts";
import type { Board, Way } from "../../model/file.ts";
import type { FactOf } from "../../model/values.ts";
import { lineInBlock } from "../common/writing.ts";
import { installationRule, type Reporter, valueSpot } from "../frame/rule.ts";

/** A way feeds a board that says it is fed from elsewhere. */
function wrongSource(feeder: Feeder, to: Board, boards: ReadonlyMap<string, Board>, report: Reporter): void {
  const from = to.head.facts.one("fed-from");
  if (!from || from.args.from.value === feeder.board.head.name) return;
  // A name that no board has is reported where it is used.
  if (from.args.from.value !== "supply" && !boards.has(from.args.from.value)) return;
  report(valueSpot(feeder.fact, feeder.fact.args.board), {
    message: `Way ${feeder.way.id} of board ${feeder.board.head.name} feeds ${feeder.to}, but ${feeder.to} is recorded as fed from ${from.args.from.value}: correct one of the two.`,
    related: [{ spot: valueSpot(from, from.args.from), message: `${feeder.to} is fed from ${from.args.from.value}.` }],
  });
}

/** A board is fed from another of which no way feeds it. */
function noWayFeeds(board: Board, from: FactOf<"board", "fed-from">, source: Board, report: Reporter): void {
  const { name } = board.head;
  const open = source.ways.filter((way) => way.kind === "feeder" && !way.facts.has("feeds"));
  const [only] = open;
  report(valueSpot(from, from.args.from), {
    message: `Board ${name} is fed from ${source.head.name}, but no way of ${source.head.name} feeds it: write “feeds ${name}” on the way that does.`,
    related: only
      ? [
          {
            spot: valueSpot(only.header, only.header.args.id),
            message: "This feeder does not state which board it feeds.",
          },
        ]
      : [],
    fixes:
      only && open.length === 1 && only.header.segment === from.segment
        ? lineInBlock(only.header, `feeds ${name}`)
        : [],
  });
}

/** Whether the board that a way feeds cannot be read, or has a name that no board has, which is reported there. */
const feedsUnread = ({ facts }: Way, boards: ReadonlyMap<string, Board>): boolean =>
  facts.isUnread("feeds") || facts.all("feeds").some(({ args }) => !boards.has(args.board.value));

export default installationRule({
  id: "network/feeder-disagrees",
  severity: "error",
  since: "0.1",
  title: "A board and the way that should feed it do not agree.",
  why: "Loop impedance, voltage drop and upstream protection follow the distribution circuits. Where the two ends name different boards, the path is not the one that was wired.",
  clauses: ["314.1"],
  examples: [
    {
      bad: `wayfile 1
installation "Kiln house" {
  standard     BS 7671:2018+A2:2022
  board A "Front board" {
    fed-from     supply
    way 1 feeder "Back board" { feeds B }
                                      ^
  }
  board B "Back board" {
    fed-from     supply
  }
  board C "Loft board" {
    fed-from     A
                 ^
  }
}`,
      good: `wayfile 1
installation "Kiln house" {
  standard     BS 7671:2018+A2:2022
  board A "Front board" {
    fed-from     supply
    way 1 feeder "Back board" { feeds B }
    way 2 feeder "Loft board" { feeds C }
  }
  board B "Back board" {
    fed-from     A
  }
  board C "Loft board" {
    fed-from     A
  }
}`,
    },
  ],
  check(installation, report) {
    const boards = boardsByName(installation);
    const feeders = feedersIn(installation);
    for (const feeder of feeders) {
      const to = boards.get(feeder.to);
      if (to) wrongSource(feeder, to, boards, report);
    }
    for (const board of boards.values()) {
      const from = board.head.facts.one("fed-from");
      const source = from && boards.get(from.args.from.value);
      if (!from || !source || source.ways.some((way) => feedsUnread(way, boards))) continue;
      if (!feeders.some((feeder) => feeder.to === board.head.name)) noWayFeeds(board, from, source, report);
    }
  },
});
