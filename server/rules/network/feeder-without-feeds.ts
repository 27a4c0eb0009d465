import { lineInBlock } from "../common/writing.ts";
import { wayRule, wordSpot } from "../frame/rule.ts";

export default wayRule({
  id: "network/feeder-without-feeds",
  severity: "warning",
  since: "0.1",
  title: "It is not stated which board a distribution circuit feeds.",
  why: "The board it feeds is judged without this way's device and cable, and nobody who reads the schedule knows what this way isolates.",
  clauses: ["514.9.1"],
  examples: [
    {
      bad: `way 8 feeder "Drying room board"
^^^`,
      good: `way 8 feeder "Drying room board" { feeds A }`,
    },
  ],
  check({ way, facts, context }, report) {
    if (way.kind !== "feeder" || facts.has("feeds")) return;
    const { name } = context.board;
    const below = [...context.names.boards.values()]
      .flat()
      .filter((other) => other.from === name && other.name !== name);
    report(wordSpot(way.header), {
      message: `Way ${way.id} is a feeder but the board it feeds is not stated: write feeds and its name.`,
      fixes: below.flatMap((head) => lineInBlock(way.header, `feeds ${head.name}`)),
    });
  },
});
