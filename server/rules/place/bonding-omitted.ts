import { rcdLimit } from "../../calc/practice.ts";
import { milliamps, ohms, relation } from "../../calc/result.ts";
import { fineRcds, rcdsKnown } from "../../circuit/additional-protection.ts";
import { bondingNeed } from "../../circuit/places.ts";
import { exactReading } from "../../circuit/supply.ts";
import type { WayStudy } from "../../circuit/way.ts";
import { rcdDisconnects } from "../../readings/loop.ts";
import { combine } from "../../tables/source.ts";
import { factSpot, type Report, wayRule } from "../frame/rule.ts";

export default wayRule({
  id: "place/bonding-omitted",
  severity: "error",
  since: "0.1",
  title: "Supplementary bonding is omitted where it is required.",
  why: "Local bonding keeps a pipe and a heater that can be touched together at one potential. A bathroom may do without it only where every circuit disconnects in time and is protected by a 30 mA RCD.",
  clauses: ["701.415.2", "702.415.2", "705.415.2.1"],
  examples: [
    {
      bad: `way 1 radial "Towel rail" {
  device       BS EN 60898 B6 6 kA
  serves       heating
  place        bathroom
  supplementary-bonding not-fitted
  ^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^
}`,
      good: `way 1 radial "Towel rail" {
  device       BS EN 61009 B6 6 kA 30 mA type A
  serves       heating
  place        bathroom
  supplementary-bonding not-fitted
}`,
    },
  ],
  check(study, report) {
    const need = bondingNeed(study);
    const stated = study.facts.one("supplementary-bonding");
    if (!need || !stated || stated.args.fitted.value === "fitted") return;
    const always = need.row.facts.omitted === "never";
    // In a bathroom a reason, such as plastic pipes throughout, says that there is nothing to join. Where the standard
    // leaves no choice, no reason excuses it: who knows of no metal to join signs a departure.
    if (!always && stated.args.why) return;
    const why = always ? { words: "this location always requires it" } : missing(study);
    if (!why) return;
    report(factSpot(stated), {
      message: `Supplementary bonding is omitted, and ${why.words}: fit it${always ? "" : ", or record why it is not needed"}.`,
      ...(why.steps ? { steps: why.steps } : {}),
      source: why.source ? combine(need.source, why.source) : need.source,
      related: [study.facts.one("place"), study.device?.fact].flatMap((fact) =>
        fact ? [{ spot: factSpot(fact), message: "Used to decide whether bonding may be omitted." }] : [],
      ),
    });
  },
});

interface Why extends Pick<Report, "steps" | "source"> {
  readonly words: string;
}

/** Of the conditions for doing without, the first that this circuit is seen not to meet. */
function missing(study: WayStudy): Why | undefined {
  const limit = rcdLimit("additional");
  if (rcdsKnown(study) && fineRcds(study).length === 0) {
    const { steps, source } = limit;
    return { words: `this circuit has no RCD of ${milliamps(limit.value)} or less`, steps, source };
  }
  const Zs = exactReading(study.Zs);
  const most = study.disconnection?.limit;
  if (!Zs || !most || Zs.value <= most.value || rcdDisconnects(study, Zs.value)) return undefined;
  return {
    words: `with Zs ${ohms(Zs.value)} this circuit does not disconnect in time`,
    steps: [...most.steps, relation("Zs ≤ limit", ohms(Zs.value), ohms(most.value))],
    source: most.source,
  };
}
