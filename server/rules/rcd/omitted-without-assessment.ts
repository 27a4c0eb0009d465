import { homes, socketRating } from "../../circuit/circuit-kind.ts";
import { laterRule } from "../../circuit/describe.ts";
import { premisesOf } from "../../circuit/supply.ts";
import { factSpot, wayRule } from "../frame/rule.ts";

export default wayRule({
  id: "rcd/omitted-without-assessment",
  severity: "warning",
  since: "0.1",
  title: "Sockets for skilled persons have no RCD, and no risk assessment is recorded.",
  why: "Since 2018 who uses a socket no longer excuses it from an RCD. Outside homes it may be left out where a documented risk assessment finds that it is not necessary, and that document belongs to the records of the installation.",
  clauses: ["411.3.3"],
  examples: [
    {
      bad: `way 1 radial "Test bench" {
  device       BS EN 60898 B32 6 kA
  serves       sockets
  place        skilled-only
  ^^^^^^^^^^^^^^^^^^^^^^^^^
}`,
      good: `way 1 radial "Test bench" {
  device       BS EN 60898 B32 6 kA
  serves       sockets
  place        skilled-only
  departure    411.3.3 "Risk assessment 12 in the site file: RCD not necessary"
}`,
    },
  ],
  check(study, report) {
    const { uses, context, rcds, isFinal } = study;
    const { edition } = context;
    const skilled = study.placeLine("skilled-only");
    if (!skilled || !isFinal || rcds.length > 0 || !uses.has("sockets") || homes.includes(premisesOf(context) ?? ""))
      return;
    if (!edition?.socketsByAssessment || socketRating(study) > edition.socketRcdUpTo) return;
    const later = laterRule(study);
    report(factSpot(skilled), {
      message: `Sockets without an RCD need a documented risk assessment, whoever uses them: record it as departure 411.3.3, or fit an RCD.${later.words}`,
      source: edition.sources.socketRcd,
      ...(later.severity ? { severity: later.severity } : {}),
    });
  },
});
