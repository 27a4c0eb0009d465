import { rcdsOfBoard } from "../../circuit/rcds.ts";
import { deviceOnBoard, liveOfBoard, rcdTestsOfBoard } from "../../readings/rcd-tests.ts";
import { boardRule, wordSpot } from "../frame/rule.ts";

export default boardRule({
  id: "rcd/test-unnamed",
  severity: "warning",
  since: "0.1",
  title: "It is not stated which RCD of a board was tested.",
  why: "One of the RCDs is untested, and nobody can tell which. Write the name of the RCD after the word rcd.",
  clauses: ["643.8"],
  examples: [
    {
      bad: `wayfile 1
installation "Kiln house" {
  standard     BS 7671:2018+A2:2022
  stage        tested
  board A "Front board" {
    fed-from     supply
    rcd east     BS EN 61008 63 A 30 mA type A
    rcd west     BS EN 61008 63 A 30 mA type A
    live 2026-03-05 {
      rcd          30 mA 1x 24.1 ms
      ^^^
    }
  }
}`,
      good: `wayfile 1
installation "Kiln house" {
  standard     BS 7671:2018+A2:2022
  stage        tested
  board A "Front board" {
    fed-from     supply
    rcd east     BS EN 61008 63 A 30 mA type A
    rcd west     BS EN 61008 63 A 30 mA type A
    live 2026-03-05 {
      rcd east     30 mA 1x 24.1 ms
      rcd west     30 mA 1x 26.3 ms
    }
  }
}`,
    },
  ],
  check({ context }, report) {
    const rcds = rcdsOfBoard(context.board);
    if (rcds.length < 2 || context.board.facts.isUnread("rcd")) return;
    const ramps = liveOfBoard(context).flatMap(({ facts }) => [...facts.all("trip-current")]);
    const tests = rcdTestsOfBoard(context).map(({ fact }) => fact);
    for (const fact of [...tests, ...ramps]) {
      if (fact.args.name || deviceOnBoard(fact, context)) continue;
      const names = rcds.map(({ name, at }) => name ?? at);
      report(wordSpot(fact), {
        message: `Which RCD was tested? This board has ${rcds.length}: write ${names.join(" or ")} after “${fact.word}”.`,
        fixes: names.map((name) => ({
          title: `Write ${fact.word} ${name}`,
          edits: [{ start: fact.wordEnd, end: fact.wordEnd, text: ` ${name}` }],
          safe: false,
        })),
      });
    }
  },
});
