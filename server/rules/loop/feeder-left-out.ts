import { practiceOf } from "../../calc/practice.ts";
import { ohms, step } from "../../calc/result.ts";
import { loopAgreement, originImpedance } from "../../readings/loop.ts";
import { amount, factSpot, wayRule } from "../frame/rule.ts";

export default wayRule({
  id: "loop/feeder-left-out",
  severity: "warning",
  since: "0.1",
  title: "Zs was calculated from Ze, and the distribution circuit is left out.",
  why: "The distribution circuit is part of the loop. Without it the circuit looks better than it is.",
  clauses: ["411.4.4"],
  examples: [
    {
      bad: `wayfile 1
installation "Sample" {
  standard     BS 7671:2018+A2:2022
  stage        tested
  supply {
    earthing     TN-S
    Ze           0.20 Ω
  }
  board A "Main" {
    fed-from     supply
    way 1 feeder "Annexe" { feeds B }
  }
  board B "Annexe" {
    fed-from     A
    Zdb          0.55 Ω
    way 1 radial "Heater" {
      device       BS EN 60898 B16 6 kA
      dead 2026-03-04 {
        R1+R2        0.40 Ω
      }
      live 2026-03-05 {
        Zs           0.60 Ω
        ^^^^^^^^^^^^^^^^^^^
      }
    }
  }
}`,
      good: `wayfile 1
installation "Sample" {
  standard     BS 7671:2018+A2:2022
  stage        tested
  supply {
    earthing     TN-S
    Ze           0.20 Ω
  }
  board A "Main" {
    fed-from     supply
    way 1 feeder "Annexe" { feeds B }
  }
  board B "Annexe" {
    fed-from     A
    Zdb          0.55 Ω
    way 1 radial "Heater" {
      device       BS EN 60898 B16 6 kA
      dead 2026-03-04 {
        R1+R2        0.40 Ω
      }
      live 2026-03-05 {
        Zs           0.96 Ω
      }
    }
  }
}`,
    },
  ],
  check(study, report) {
    const found = loopAgreement(study);
    if (found?.verdict !== "from-origin" || !found.expected || !found.R1R2 || !found.board) return;
    const origin = originImpedance(study.context);
    if (!origin) return;
    const { Zs, R1R2, board, expected } = found;
    const numbers = `${ohms(origin.value)} + ${ohms(R1R2.value)}`;
    report(factSpot(Zs.fact), {
      message: `Zs ${ohms(Zs.value)} is exactly Ze + (R1+R2), without the feeder: from ${board.name} ${ohms(board.value)} it is about ${ohms(expected.value)}.`,
      value: amount(Zs.value, "Ω"),
      steps: [step("Ze + (R1+R2)", numbers, ohms(origin.value + R1R2.value)), ...expected.steps],
      source: practiceOf("loop-exact").source,
      related: [
        { spot: factSpot(board.fact), message: `${board.name} ${ohms(board.value)}.` },
        { spot: factSpot(origin.fact), message: `Ze ${ohms(origin.value)}.` },
      ],
    });
  },
});
