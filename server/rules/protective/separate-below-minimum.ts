import { fallsShort } from "../../calc/compare.ts";
import { looked, relation, squareMillimetres } from "../../calc/result.ts";
import { laterRule } from "../../circuit/describe.ts";
import type { FactOf } from "../../model/values.ts";
import { ruleAlone } from "../../tables/source.ts";
import { amount, factSpot, wayRule } from "../frame/rule.ts";

/** Of copper, mm², where it is protected against mechanical damage and where it is not. */
const least = { protected: 2.5, open: 4 } as const;

export default wayRule({
  id: "protective/separate-below-minimum",
  severity: "error",
  since: "0.1",
  title: "A protective conductor that runs by itself is too small.",
  why: "Outside a cable and its containment it can be torn off by a ladder, and nothing shows that it is gone. So it is 2.5 mm² at least where it is protected against damage, and 4 mm² where it is not.",
  clauses: ["543.1.1"],
  examples: [
    {
      bad: `way 1 radial "Heater" {
  device       BS EN 60898 B16 6 kA
  cable        singles  line 2.5 mm²  cpc 1.5 mm²
  route        conduit 20 mm  method B  carries line neutral
  route        clipped  carries cpc
  ^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^
}`,
      good: `way 1 radial "Heater" {
  device       BS EN 60898 B16 6 kA
  cable        singles  line 2.5 mm²  cpc 4.0 mm²
  route        conduit 20 mm  method B  carries line neutral
  route        clipped  carries cpc
}`,
    },
  ],
  check(study, report) {
    const size = study.cable?.fact.args.cpc?.value;
    const route = study.facts.all("route").find(alone);
    if (size === undefined || !route || study.cable?.material === "aluminium") return;
    const shielded = route.args.kind?.value === "conduit" || route.args.kind?.value === "trunking" || route.args.in;
    const limit = shielded ? least.protected : least.open;
    if (!fallsShort(size, limit)) return;
    const later = laterRule(study);
    const source = ruleAlone({ ref: "BS 7671:2018+A2:2022, 543.1.1", standing: "memory" });
    report(factSpot(route), {
      message: `The ${squareMillimetres(size)} protective conductor runs here by itself: ${squareMillimetres(limit)} is the least ${shielded ? "where it is protected" : "where nothing protects it"}.${later.words}`,
      value: amount(size, "mm²"),
      limit: amount(limit, "mm²"),
      least: true,
      steps: [
        looked("Least size of a separate protective conductor", source.ref, squareMillimetres(limit)),
        relation("size ≥ least", squareMillimetres(size), squareMillimetres(limit)),
      ],
      source,
      ...(later.severity ? { severity: later.severity } : {}),
      related: study.cable ? [{ spot: factSpot(study.cable.fact), message: "The conductors of this circuit." }] : [],
    });
  },
});

const alone = ({ args }: FactOf<"way", "route">): boolean =>
  args.carries !== undefined && args.carries.length > 0 && args.carries.every(({ value }) => value === "cpc");
