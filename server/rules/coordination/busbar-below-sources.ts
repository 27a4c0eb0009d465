import { protectingInside } from "../../boards/coordination.ts";
import { exceeds } from "../../calc/compare.ts";
import { amps, step } from "../../calc/result.ts";
import { isSource } from "../../circuit/circuit-kind.ts";
import { memoByObject } from "../../circuit/kept.ts";
import { studyWay, usesIn } from "../../circuit/way.ts";
import type { Board } from "../../model/file.ts";
import { quotedIn } from "../../tables/source.ts";
import { amount, boardRule, factSpot, valueSpot } from "../frame/rule.ts";

const sample = (busbar: string) => `wayfile 1
installation "House" {
  standard     BS 7671:2018+A2:2022
  supply {
    earthing     TN-S
    cutout       BS 88-3 100 A
  }
  board A "Hall" {
    fed-from     supply
    busbar       ${busbar}
    way 1 radial "Panels" {
      device       BS EN 61009 B16 6 kA 30 mA type A bidirectional
      serves       pv
    }
  }
}`;

export default boardRule({
  id: "coordination/busbar-below-sources",
  severity: "error",
  since: "0.1",
  title: "The busbars carry less than the supply and the sources of the board together.",
  why: "A source on a way of the board adds to what comes through the main switch, and no device sees the sum: the busbars can overheat. Their rating is at least that of the device upstream and of the sources together. Move the source to the supply side, or fit a board that carries both.",
  clauses: ["551.7.2"],
  examples: [
    { bad: sample("100 A").replace("100 A\n    way", "100 A\n                 ^^^^^\n    way"), good: sample("125 A") },
  ],
  check({ board, context }, report) {
    const sources = waysOfSources(board)
      .map((way) => studyWay(way, context))
      .filter(({ isSpare }) => !isSpare);
    const ratings = sources.flatMap(({ device }) => device?.rating ?? []);
    const above = protectingInside(context);
    const busbar = board.head.facts.one("busbar");
    const stated = busbar?.args.rating ?? board.head.facts.one("main-switch")?.args.rating;
    const fact = busbar ?? board.head.facts.one("main-switch");
    if (!above || !stated || !fact || ratings.length === 0 || ratings.length < sources.length) return;
    const together = ratings.reduce((sum, rating) => sum + rating, above.rating);
    if (!exceeds(together, stated.value)) return;
    const numbers = [above.rating, ...ratings].map(amps).join(" + ");
    report(valueSpot(fact, stated), {
      message: busbar
        ? `The busbars carry ${amps(stated.value, together)}; the supply and the sources of this board can bring ${numbers} = ${amps(together, stated.value)}.`
        : `Supply and sources can bring ${numbers} = ${amps(together, stated.value)} to the busbars, whose rating is not stated (main switch ${amps(stated.value, together)}): look at the board's plate.`,
      value: amount(together, "A"),
      limit: amount(stated.value, "A"),
      steps: [step("In + Σ In of the sources", numbers, amps(together))],
      source: quotedIn("551.7.2"),
      ...(busbar ? {} : { severity: "warning" as const }),
      related: [
        { spot: factSpot(above.fact), message: `What protects the board: ${amps(above.rating)}.` },
        ...sources.map(({ way }) => ({ spot: factSpot(way.header), message: "A source on this board." })),
      ],
    });
  },
});

/** The cut-out is asked on every board, and most have none. */
const waysOfSources = memoByObject((board: Board) =>
  board.ways.filter(({ facts }) => isSource({ uses: usesIn(facts) })),
);
