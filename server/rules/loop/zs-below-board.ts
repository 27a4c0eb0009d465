import { practiceOf } from "../../calc/practice.ts";
import { ohms, relation } from "../../calc/result.ts";
import type { ExactReading } from "../../circuit/supply.ts";
import type { WayStudy } from "../../circuit/way.ts";
import { type LoopAgreement, loopAgreement } from "../../readings/loop.ts";
import { loopUncertainty } from "../common/loop-uncertainty.ts";
import { beyondTolerance, uncertaintySteps } from "../common/uncertainty-words.ts";
import { amount, boardRule, factSpot, type Reporter } from "../frame/rule.ts";

export default boardRule({
  id: "loop/zs-below-board",
  severity: "warning",
  since: "0.1",
  title: "Zs is lower than the loop impedance of its board.",
  why: "Zs cannot be lower than the Ze or Zdb of its board. Either bonded metal is in parallel, or one of the two was read on another day or another circuit.",
  clauses: ["411.4.4"],
  examples: [
    {
      setting: { stage: "tested", board: "fed-from supply\nZdb 0.62 Ω" },
      bad: `way 1 radial "Pump" {
  device       BS EN 60898 B16 6 kA
  live 2026-03-05 {
    Zs           0.41 Ω
    ^^^^^^^^^^^^^^^^^^^
  }
}`,
      good: `way 1 radial "Pump" {
  device       BS EN 60898 B16 6 kA
  live 2026-03-05 {
    Zs           0.81 Ω
  }
}`,
    },
  ],
  check({ studies }, report) {
    const judged = studies.flatMap((study) => {
      const found = loopAgreement(study);
      return found?.board ? [{ study, found, board: found.board }] : [];
    });
    const low = judged.filter(({ found }) => found.verdict === "below-board");
    const [first] = low;
    // One wrong figure at the board would call every one of its circuits into question: it is reported once, at the board.
    if (first?.board.name === "Zdb" && low.length > 1 && low.length === judged.length)
      reportBoard(first.board, low, report);
    else for (const one of low) reportWay(one, report);
  },
});

interface Low {
  readonly study: WayStudy;
  readonly found: LoopAgreement;
  readonly board: ExactReading & { readonly name: "Ze" | "Zdb" };
}

function reportBoard(board: Low["board"], low: readonly Low[], report: Reporter): void {
  const greatest = Math.max(...low.map(({ found }) => found.Zs.value));
  report(factSpot(board.fact), {
    message: `All ${low.length} Zs readings are below ${board.name} ${ohms(board.value)} (highest ${ohms(greatest)}): check ${board.name} and its decimal point.`,
    value: amount(board.value, "Ω"),
    limit: amount(greatest, "Ω"),
    steps: [relation(`Zs ≥ ${board.name}`, ohms(greatest), ohms(board.value))],
    source: practiceOf("loop-below").source,
    related: low.map(({ study, found }) => ({
      spot: factSpot(found.Zs.fact),
      message: `Way ${study.way.id}: Zs ${ohms(found.Zs.value)}.`,
    })),
  });
}

function reportWay({ study, found, board }: Low, report: Reporter): void {
  const { Zs } = found;
  const allowance = practiceOf("loop-below");
  const meter = loopUncertainty(study, { Zs, board });
  const by = board.value - allowance.value - Zs.value;
  report(factSpot(Zs.fact), {
    message: `Zs ${found.atMost ? "<" : ""}${ohms(Zs.value)} is below ${board.name} ${ohms(board.value)}: record metal in parallel if there is any, or one of the two is wrong.${beyondTolerance(meter, by)}`,
    value: amount(Zs.value, "Ω"),
    limit: amount(board.value, "Ω"),
    least: true,
    steps: [relation(`Zs ≥ ${board.name}`, ohms(Zs.value), ohms(board.value)), ...uncertaintySteps(meter)],
    source: allowance.source,
    related: [{ spot: factSpot(board.fact), message: `${board.name} ${ohms(board.value)}.` }],
  });
}
