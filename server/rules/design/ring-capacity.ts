import { fallsShort } from "../../calc/compare.ts";
import { amps, relation, squareMillimetres } from "../../calc/result.ts";
import { ringRule } from "../../calc/ring.ts";
import { leastKnownCapacity, sizeFor } from "../../circuit/overload.ts";
import { combine } from "../../tables/source.ts";
import { inPlaceOf } from "../common/writing.ts";
import { amountOf, factSpot, wayRule } from "../frame/rule.ts";

export default wayRule({
  id: "design/ring-capacity",
  severity: "error",
  since: "0.1",
  title: "The cable of a ring final carries less than 20 A where it runs.",
  why: "Grouping, thermal insulation and heat reduce the capacity of a ring as of any cable. Below 20 A one leg can be overloaded for hours without the device tripping. Reroute the worst section, or use the next size.",
  clauses: ["433.1.204"],
  examples: [
    {
      bad: `way 1 ring "Sockets" {
  device       BS EN 60898 B32 6 kA
  cable        singles  line 2.5 mm²  cpc 2.5 mm²
  route        conduit  method B
  route        conduit  method B  grouped 3
  ^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^
}`,
      good: `way 1 ring "Sockets" {
  device       BS EN 60898 B32 6 kA
  cable        singles  line 4 mm²  cpc 2.5 mm²
  route        conduit  method B
  route        conduit  method B  grouped 3
}`,
    },
  ],
  check(study, report) {
    const { cable } = study;
    const capacity = leastKnownCapacity(study);
    if (!study.isRing || !cable || !capacity) return;
    const limit = ringRule("capacity");
    const Iz = capacity.value;
    if (!fallsShort(Iz.value, limit.value)) return;
    const size = sizeFor(study, limit.value);
    const { line } = cable.fact.args;
    const inWay = cable.fact.segment === capacity.fact.segment;
    report(factSpot(capacity.fact), {
      message: `The cable of the ring carries ${amps(Iz.value, limit.value)} in this section, below the required ${amps(limit.value, Iz.value)}.${size ? ` Fit ${squareMillimetres(size)}, or reroute it.` : ""}`,
      value: amountOf(Iz),
      limit: amountOf(limit),
      least: true,
      steps: [...Iz.steps, relation("Iz ≥ 20 A", amps(Iz.value, limit.value), amps(limit.value, Iz.value))],
      source: combine(limit.source, Iz.source),
      related: [{ spot: factSpot(cable.fact), message: `Cable: ${squareMillimetres(cable.line)}.` }],
      fixes: size && line && inWay ? [inPlaceOf(line, `${size} mm²`, `Make the line ${squareMillimetres(size)}`)] : [],
    });
  },
});
