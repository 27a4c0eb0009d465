import { boardDrop, dropAbove, startDrop } from "../../boards/drop-path.ts";
import { exceeds } from "../../calc/compare.ts";
import { practiceOf } from "../../calc/practice.ts";
import { percent, round } from "../../calc/result.ts";
import { memoByObject } from "../../circuit/kept.ts";
import type { Board } from "../../model/file.ts";
import { combine } from "../../tables/source.ts";
import { amount, amountOf, factSpot, installationRule } from "../frame/rule.ts";

const sample = (size: string) => `wayfile 1
installation "Mill" {
  standard     BS 7671:2018+A2:2022
  stage        design
  supply {
    earthing     TN-S
    Ze           0.05 Ω
  }
  board A "Main" {
    fed-from     supply
    way 1 radial "Saw" {
      device       BS EN 60898 D20 10 kA
      cable        multicore  line ${size}  cpc ${size}  cores 3
      route        clipped  method C
      length       60 m
      serves       motor
      starting     direct 108 A
      Ib           18 A
    }
  }
}`;

const startsMotors = memoByObject((board: Board) => board.ways.some(({ facts }) => facts.has("starting")));

export default installationRule({
  id: "drop/motor-start",
  severity: "information",
  since: "0.1",
  title: "The voltage may drop too far for a motor to start.",
  why: "While it starts a motor draws several times its current, and its torque falls with the square of the voltage: it may hang, overheat and trip. What the motor and its load can do is for their maker to say.",
  clauses: ["525.1", "552.1.1"],
  examples: [
    {
      bad: sample("4 mm²").replace(
        "direct 108 A\n",
        `direct 108 A\n      ${"^".repeat("starting     direct 108 A".length)}\n`,
      ),
      good: sample("16 mm²"),
    },
  ],
  checkNode(node, report) {
    if (!startsMotors(node.board)) return;
    for (const study of node.studies) {
      const at = study.facts.one("starting");
      const found = at && startDrop(study, dropAbove(boardDrop(node), study).drop);
      const limit = practiceOf("start-drop");
      // What is only estimated of a motor is no ground to ask.
      if (!found || !at?.args.current || !exceeds(found.value, limit.value)) continue;
      report(factSpot(at), {
        message: `The voltage drops by ${percent(round(found.value, 1))} while the motor starts: ask its maker whether it will start.`,
        value: amount(found.value, "%"),
        limit: amountOf(limit),
        steps: found.steps,
        source: combine(found.source, limit.source),
      });
    }
  },
});
