import { ohms } from "../../calc/result.ts";
import { declaredImpedance } from "../../calc/supply-declared.ts";
import { originImpedance } from "../../readings/loop.ts";
import { wordsAfter } from "../common/writing.ts";
import { amount, factSpot, installationRule } from "../frame/rule.ts";

const systems = ["TN-C-S", "TN-S", "TT"] as const;

export default installationRule({
  id: "loop/ze-textbook",
  severity: "warning",
  since: "0.1",
  title: "Ze is a textbook figure recorded as measured.",
  why: "0.35, 0.8 and 21 Ω are the maximum figures distributors declare. Marked as declared, such a figure is correct; as a reading it hides that nobody measured.",
  clauses: ["313.1"],
  examples: [
    {
      bad: `wayfile 1
installation "Sample" {
  supply {
    earthing     TN-C-S
    Ze           0.35 Ω
    ^^^^^^^^^^^^^^^^^^^
  }
}`,
      good: `wayfile 1
installation "Sample" {
  supply {
    earthing     TN-C-S
    Ze           0.35 Ω declared
  }
}`,
    },
  ],
  check(installation, report) {
    const Ze = originImpedance(installation);
    if (Ze?.fact.provenance !== "measured") return;
    const own = installation.supply?.one("earthing")?.args.system.value;
    const limit = systems
      .filter((system) => own === undefined || own === system)
      .map(declaredImpedance)
      .find(({ value }) => value === Ze.value);
    if (!limit) return;
    report(factSpot(Ze.fact), {
      message: `Ze ${ohms(Ze.value)} is the maximum distributors declare, recorded here as measured: if it was not read on a meter, write declared.`,
      value: amount(Ze.value, "Ω"),
      steps: limit.steps,
      source: limit.source,
      fixes: wordsAfter(Ze.fact, "declared", "Mark it as declared"),
    });
  },
});
