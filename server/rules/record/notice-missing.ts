import { feedsBack } from "../../circuit/circuit-kind.ts";
import { memoOfBoards } from "../../circuit/kept.ts";
import { isOutsideWork, liveTestsDue, workOf } from "../../circuit/supply.ts";
import { usesIn } from "../../circuit/way.ts";
import type { Context } from "../../model/installation.ts";
import { quotedIn } from "../../tables/source.ts";
import { factSpot, installationRule, type Report } from "../frame/rule.ts";

const sample = (notice: string) => `wayfile 1
installation "House" {
  standard     BS 7671:2018+A2:2022
  stage        tested
  work         new
  supply {
    earthing     TN-S
    Ze           0.30 Ω
    standby      "Diesel set"  Ze 0.40 Ω
${notice}  }
  board A "Board" {
    fed-from     supply
  }
}`;

export default installationRule({
  id: "record/notice-missing",
  severity: "warning",
  since: "0.1",
  title: "There is a second source, and no notice of it is recorded.",
  why: "Whoever switches off the supply and works on what a battery or generator still feeds has not been warned by anybody. The notice is where they isolate: at the origin, the meter and the board.",
  clauses: ["514.15.1"],
  examples: [
    {
      bad: sample("").replace(
        "Ze 0.40 Ω\n",
        `Ze 0.40 Ω\n    ${"^".repeat('standby      "Diesel set"  Ze 0.40 Ω'.length)}\n`,
      ),
      good: sample('    notice       "Two sources: at the cut-out, the meter and the board"\n'),
    },
  ],
  check({ head, supply, boards }, report) {
    if (!supply || !isDue({ installation: head }, supply)) return;
    const [source] = [...supply.all("other-source"), ...supply.all("standby"), ...supply.all("island")];
    // One line speaks for all of them: it is one notice, wherever else it is repeated.
    const ways = feedingBack({ head, boards }).flat();
    const part = ways.find(({ board, facts }) => !isOutsideWork({ installation: head, board, way: facts }));
    const found = source ?? part?.serves;
    if (found) report(factSpot(found), asked);
  },
});

/** The circuits of each board that can feed back. */
const feedingBack = memoOfBoards((board) =>
  board.ways.flatMap(({ kind, facts }) => {
    const serves = facts.one("serves");
    return serves && kind !== "spare" && feedsBack({ uses: usesIn(facts) })
      ? [{ board: board.head, facts, serves }]
      : [];
  }),
);

const isDue = (part: Pick<Context, "installation">, supply: NonNullable<Context["supply"]>): boolean =>
  liveTestsDue(part) && workOf(part) !== "existing" && !supply.has("notice") && !supply.isUnread("notice");

const asked: Report = {
  message: "Two sources feed this installation: record the notice that says so (notice), and where it is fixed.",
  source: quotedIn("514.15.1"),
};
