import { isParallel } from "../../circuit/cable.ts";
import type { WayStudy } from "../../circuit/way.ts";
import type { Fact } from "../../model/values.ts";
import { parallelSources } from "../../tables/parallel.ts";
import { factSpot, wayRule } from "../frame/rule.ts";

export default wayRule({
  id: "design/parallel-branched",
  severity: "error",
  since: "0.1",
  title: "Conductors in parallel have branches along their length.",
  why: "One device protects conductors in parallel only while they share the current equally. A branch or a point along one of them takes its current from one side, so that the other may be overloaded without the device noticing. Join them at both ends and nowhere else; a ring final circuit is not made of conductors in parallel.",
  clauses: ["433.4", "523.7"],
  examples: [
    {
      bad: `way 1 radial "Kilns" {
  device       BS 88-2 100 A 80 kA
  cable        armoured 90 °C  line 16 mm²  cpc 16 mm²  parallel 2
  run          A 20 m K1 10 m K2
  ^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^
}`,
      good: `way 1 radial "Kilns" {
  device       BS 88-2 100 A 80 kA
  cable        armoured 90 °C  line 16 mm²  cpc 16 mm²  parallel 2
  run          A 30 m K1
}`,
    },
    {
      bad: `way 1 ring "Sockets" {
  device       BS EN 60898 B32 6 kA
  cable        flat-twin  line 2.5 mm²  cpc 1.5 mm²  parallel 2
  ^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^
}`,
      good: `way 1 ring "Sockets" {
  device       BS EN 60898 B32 6 kA
  cable        flat-twin  line 2.5 mm²  cpc 1.5 mm²
}`,
    },
  ],
  check(study, report) {
    const { cable } = study;
    if (!cable || !isParallel(cable) || study.isSpare) return;
    const { branches: source } = parallelSources;
    if (study.isRing) {
      const message =
        "The legs of a ring are not conductors in parallel, which may have no points: leave parallel out.";
      report(factSpot(cable.fact), { message, source });
      return;
    }
    const branch = branchOf(study);
    if (!branch) return;
    report(factSpot(branch), {
      message: `${cable.parallel.line} conductors in parallel may have no points or branches before their end: feed a board there.`,
      source,
      related: [{ spot: factSpot(cable.fact), message: `Cable: ${cable.parallel.line} in parallel.` }],
    });
  },
});

/** The line of the run that has a point before its end, or begins at another than the board. */
function branchOf({ runs, facts }: WayStudy): Fact | undefined {
  const all = facts.all("run");
  const branched = (runs?.paths ?? []).findIndex(({ legs }, index) => index > 0 || legs.length > 1);
  return branched < 0 ? undefined : all[branched];
}
