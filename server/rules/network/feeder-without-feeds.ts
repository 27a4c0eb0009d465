import { lineInBlock } from "../common/writing.ts";
import { wayRule, wordSpot } from "../frame/rule.ts";

export default wayRule({
  id: "network/feeder-without-feeds",
  severity: "warning",
  since: "0.1",
  title: "A feeder does not say which board it feeds.",
  why: "Without it the board it feeds is judged without this way's device and cable, and nobody reading the schedule knows what goes dead with it.",
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
    const others = [...context.names.boards.values()].flat().filter((head) => head !== context.board);
    const below = others.filter((head) => head.facts.one("fed-from")?.args.from.value === context.board.name);
    report(wordSpot(way.header), {
      message: `Way ${way.id} is a feeder but does not say which board it feeds.`,
      fixes: below.flatMap((head) => lineInBlock(way.header, `feeds ${head.name}`)),
    });
  },
});
