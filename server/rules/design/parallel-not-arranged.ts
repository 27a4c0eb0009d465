import { squareMillimetres } from "../../calc/result.ts";
import { isParallel } from "../../circuit/cable.ts";
import { arrangedAbove } from "../../tables/parallel.ts";
import { ruleAlone } from "../../tables/source.ts";
import { factSpot, wayRule } from "../frame/rule.ts";

export default wayRule({
  id: "design/parallel-not-arranged",
  severity: "warning",
  since: "0.1",
  title: "Large single-core cables in parallel share the load by how they lie, which is not stated.",
  why: "Above some 50 mm² the reactance of a conductor decides what it carries, and that goes by its place among the others: two of one line side by side may carry twice what the third does. Sets of one of each line, in trefoil or in mirrored order, share equally. The capacity here is the sum of what each carries only then.",
  clauses: ["523.7"],
  examples: [
    {
      bad: `way 1 feeder "Mill" {
  device       BS 88-2 400 A 80 kA
  cable        singles 90 °C  line 120 mm²  cpc 70 mm²  parallel 2
  ^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^
}`,
      good: `way 1 feeder "Mill" {
  device       BS 88-2 400 A 80 kA
  cable        singles 90 °C  line 120 mm²  cpc 70 mm²  parallel 2  arranged "Two trefoil sets, a metre apart"
}`,
    },
  ],
  check(study, report) {
    const { cable } = study;
    if (cable?.construction !== "singles" || !isParallel(cable) || study.isSpare || study.isRing) return;
    const limit = arrangedAbove[cable.material];
    const { arranged } = cable.described.args;
    if (arranged || cable.line <= limit.value) return;
    report(factSpot(cable.fact), {
      message: `${cable.parallel.line} × ${squareMillimetres(cable.line)} singles share the load equally only in a suitable arrangement: state it as arranged "…".`,
      source: ruleAlone(limit.source),
    });
  },
});
