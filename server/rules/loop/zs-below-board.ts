import { loopAgreement } from "../../analysis/loop.ts";
import { practiceOf } from "../../calc/practice.ts";
import { ohms, relation } from "../../calc/result.ts";
import { doubtSteps, withinDoubt } from "../doubt-words.ts";
import { loopDoubt } from "../loop-doubt.ts";
import { amount, factSpot, wayRule } from "../rule.ts";

export default wayRule({
  id: "loop/zs-below-board",
  severity: "warning",
  since: "0.1",
  title: "A loop impedance lower than that of the board it starts from.",
  why: "A circuit cannot shorten the loop it hangs on. Either bonded metal lies in parallel, or one of the two was read on another day or another circuit.",
  clauses: ["411.4.4"],
  examples: [
    {
      setting: { stage: "tested", board: "fed-from supply\nZdb 0.62 Ω" },
      bad: `way 1 radial "Pump" {
  device  BS EN 60898 B16 6 kA
  live 2026-03-05 {
    Zs  0.41 Ω
    ^^^^^^^^^^
  }
}`,
      good: `way 1 radial "Pump" {
  device  BS EN 60898 B16 6 kA
  live 2026-03-05 {
    Zs  0.81 Ω
  }
}`,
    },
  ],
  check(study, report) {
    const found = loopAgreement(study);
    if (found?.verdict !== "below-board" || !found.board) return;
    const { Zs, board } = found;
    const allowance = practiceOf("loop-below");
    const meter = loopDoubt(study, { Zs, board });
    const by = board.value - allowance.value - Zs.value;
    report(factSpot(Zs.fact), {
      message: `Zs ${found.atMost ? "<" : ""}${ohms(Zs.value)} is below ${board.name} ${ohms(board.value)}, which it starts from: metal in parallel (then record it), or one of the two is from elsewhere.${withinDoubt(meter, by)}`,
      value: amount(Zs.value, "Ω"),
      limit: amount(board.value, "Ω"),
      least: true,
      steps: [relation(`Zs ≥ ${board.name}`, ohms(Zs.value), ohms(board.value)), ...doubtSteps(meter)],
      source: allowance.source,
      related: [{ spot: factSpot(board.fact), message: `${board.name} ${ohms(board.value)}.` }],
    });
  },
});
