import { leakageOf } from "../../boards/leakage.ts";
import { exceeds } from "../../calc/compare.ts";
import { highLeakage, singleProtective } from "../../calc/leakage.ts";
import { milliamps, relation, squareMillimetres } from "../../calc/result.ts";
import { inPlaceOf, lineAfter } from "../common/writing.ts";
import { amount, amountOf, factSpot, valueSpot, wayRule } from "../frame/rule.ts";

export default wayRule({
  id: "protective/high-conductor-current",
  severity: "error",
  since: "0.1",
  title: "A high protective conductor current flows in a single small conductor.",
  why: "If it breaks, all metal connected to it becomes live with that current, and no device opens. A second protective conductor in terminals of its own, or one large enough not to break, keeps it earthed.",
  clauses: ["543.7", "543.7.1.203", "543.7.2"],
  examples: [
    {
      bad: `way 1 radial "Machine room" {
  device       BS EN 60898 C32 6 kA
  cable        multicore  line 6 mm²  cpc 6 mm²
  leakage      14 mA
               ^^^^^
}`,
      good: `way 1 radial "Machine room" {
  device       BS EN 60898 C32 6 kA
  cable        multicore  line 6 mm²  cpc 6 mm²
  leakage      14 mA
  duplicate-cpc 6 mm²
}`,
    },
  ],
  check(study, report) {
    const leakage = leakageOf(study);
    const limit = highLeakage();
    const { cable, facts, isSpare, isRing, isFeeder } = study;
    if (!leakage || isSpare || !exceeds(leakage.value, limit.value) || facts.has("duplicate-cpc")) return;
    // The cpc of a ring has two ends, each in a terminal of its own; metal that serves as cpc is not a thin conductor.
    if (isRing || isFeeder || cable?.cpc === undefined || cable.cpcBy !== undefined || cable.parallel.cpc > 1) return;
    const alone = singleProtective();
    if (cable.cpc >= alone.value) return;
    const written = cable.fact.args.cpc;
    const guarded = singleProtective("mechanical");
    const enough = cable.cpc >= guarded.value;
    report(valueSpot(leakage.fact, leakage.fact.args.value), {
      message: `${milliamps(leakage.value)} flows in a single ${squareMillimetres(cable.cpc)} protective conductor: above ${milliamps(limit.value)} fit ${squareMillimetres(alone.value)}, or a second one in terminals of its own.${enough ? ` (From memory: ${squareMillimetres(guarded.value)} with mechanical protection throughout is accepted as well.)` : ""}`,
      value: amount(leakage.value, "A"),
      limit: amountOf(limit),
      steps: [
        ...limit.steps,
        ...alone.steps,
        relation("cpc ≥ what may stand alone", squareMillimetres(cable.cpc), squareMillimetres(alone.value)),
      ],
      source: limit.source,
      // What may be run in conduit and be enough so is asked about.
      ...(enough ? { severity: "information" as const } : {}),
      related: [{ spot: factSpot(cable.fact), message: `Protective conductor: ${squareMillimetres(cable.cpc)}.` }],
      fixes: [
        lineAfter(
          cable.fact,
          `duplicate-cpc ${squareMillimetres(cable.cpc)}`,
          `Add a second protective conductor of ${squareMillimetres(cable.cpc)}`,
        ),
        ...(written && cable.construction === "singles"
          ? [
              inPlaceOf(
                written,
                squareMillimetres(alone.value),
                `Make the protective conductor ${squareMillimetres(alone.value)}`,
              ),
            ]
          : []),
      ],
    });
  },
});
