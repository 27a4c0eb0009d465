import { exceeds } from "../../calc/compare.ts";
import { practiceOf } from "../../calc/practice.ts";
import { ohms, step } from "../../calc/result.ts";
import { quantityOf } from "../../model/values.ts";
import { bandSource, bandSteps, hasDead, lengthMismatch } from "../../readings/dead.ts";
import { loopAgreement } from "../../readings/loop.ts";
import { amount, factSpot, wayRule } from "../frame/rule.ts";

export default wayRule({
  id: "loop/zs-against-length",
  severity: "warning",
  since: "0.1",
  title: "Zs does not fit the length of the cable, and R1+R2 is not recorded.",
  why: "Zs less the impedance of the board is the circuit's own cable. Far less than its length gives: it was read at the board or a near point, or metal is in parallel. Far more: a poor joint, or a longer cable than recorded.",
  opens: true,
  clauses: ["411.4.4", "643.7.3"],
  examples: [
    {
      setting: { stage: "tested" },
      bad: `way 1 radial "Bench" {
  device       BS EN 61009 B16 6 kA 30 mA type A
  cable        flat-twin  line 2.5 mm²  cpc 1.5 mm²
  length       25 m
  live 2026-03-05 {
    Zs           0.30 Ω
    ^^^^^^^^^^^^^^^^^^^
  }
}`,
      good: `way 1 radial "Bench" {
  device       BS EN 61009 B16 6 kA 30 mA type A
  cable        flat-twin  line 2.5 mm²  cpc 1.5 mm²
  length       25 m
  live 2026-03-05 {
    Zs           0.78 Ω
  }
}`,
    },
  ],
  check(study, report) {
    const found = loopAgreement(study);
    const expected = study.greatestR1R2;
    if (!found?.board || found.verdict || found.Zs.fact.provenance !== "measured" || !expected) return;
    if (hasDead(study, "R1+R2") || hasDead(study, "R2") || study.facts.has("parallel-path")) return;
    const { Zs, board } = found;
    const quantity = quantityOf(study.Zs?.value);
    if (!quantity) return;
    const own = Zs.value - board.value;
    const mismatch = lengthMismatch({ ...quantity, value: own }, expected.value);
    // Two loop readings differ by more than two readings of a continuity tester.
    if (!mismatch || !exceeds(Math.abs(own - expected.value), practiceOf("loop-floor").value)) return;
    const reason =
      mismatch.kind === "low"
        ? "was it read at the far point? Record R1+R2"
        : "look for a poor joint, check the length, and record R1+R2";
    report(factSpot(Zs.fact), {
      message: `Zs ${ohms(Zs.value)} less ${board.name} ${ohms(board.value)} leaves ${ohms(Math.max(own, 0))} for the cable; its length gives ${ohms(expected.value)}: ${reason}.`,
      value: amount(Zs.value, "Ω"),
      steps: [
        step(`Zs − ${board.name}`, `${ohms(Zs.value)} − ${ohms(board.value)}`, ohms(own)),
        ...bandSteps(expected),
      ],
      source: bandSource(expected),
      related: [
        { spot: factSpot(board.fact), message: `${board.name} ${ohms(board.value)}.` },
        ...(study.length?.facts ?? [])
          .slice(0, 1)
          .map((fact) => ({ spot: factSpot(fact), message: "Length used for the expected reading." })),
      ],
    });
  },
});
