import { fallsShort } from "../../calc/compare.ts";
import { practiceOf } from "../../calc/practice.ts";
import { ohms, step } from "../../calc/result.ts";
import { feederLoop, isAboveFeeder, isReadLow } from "../../readings/feeder-loop.ts";
import { amount, boardRule, factSpot } from "../frame/rule.ts";

const sample = (Zdb: string) => `wayfile 1
installation "Saddlery" {
  standard     BS 7671:2018+A2:2022
  stage        tested
  supply {
    earthing     TN-S
    Ze           0.18 Ω
  }
  board A "Main" {
    fed-from     supply
    Zdb          0.19 Ω
    way 1 feeder "Loft" {
      feeds        B
      live 2026-03-05 {
        Zs           0.31 Ω
      }
    }
  }
  board B "Loft" {
    fed-from     A
    Zdb          ${Zdb}
${Zdb.startsWith("0.62") ? "    ^^^^^^^^^^^^^^^^^^^\n" : ""}  }
}`;

/** No reading of the feeder: its length stands in for it. */
const byLength = (Zdb: string): string =>
  sample(Zdb).replace(
    /live 2026-03-05 \{[^}]*\}/,
    "cable        armoured 90 °C  line 10 mm²  cpc 10 mm²  cores 3\n      length       20 m",
  );

export default boardRule({
  id: "loop/board-disagrees",
  severity: "warning",
  since: "0.1",
  title: "Zdb is not what the distribution circuit gives at its far end.",
  why: "The far end of the distribution circuit and the terminals of the board are one place. Where the two readings differ, a terminal between them is loose, or one of them belongs to another board; and every circuit of the board is judged from the wrong figure.",
  opens: true,
  clauses: ["411.4.4", "643.7.3"],
  examples: [
    { bad: sample("0.62 Ω"), good: sample("0.32 Ω") },
    { bad: byLength("0.62 Ω"), good: byLength("0.28 Ω") },
  ],
  check({ context }, report) {
    const found = feederLoop(context);
    if (!found) return;
    const { own, expected, by, tolerance, steps, facts, start } = found;
    // What is below the loop upstream as well is reported as that.
    const isLow =
      isReadLow(found) && !(start !== undefined && fallsShort(own.value, start - practiceOf("loop-below").value));
    if (!isLow && !isAboveFeeder(found)) return;
    const brought =
      by === "reading" ? `${ohms(expected)} read at the end of its feeder` : `${ohms(expected)} its feeder should give`;
    const cause = isLow
      ? "one place has one loop, so measure both again, or record metal in parallel with the feeder as its parallel-path"
      : "look for a loose terminal, or a reading of another board";
    report(factSpot(own.fact), {
      message: `Zdb ${ohms(own.value)} is ${isLow ? "below" : "above"} the ${brought}: ${cause}.`,
      value: amount(own.value, "Ω"),
      steps: [...steps, step("tolerance", "", ohms(tolerance.value))],
      source: tolerance.source,
      related: facts.map((fact) => ({ spot: factSpot(fact), message: "Used for the expected Zdb." })),
    });
  },
});
