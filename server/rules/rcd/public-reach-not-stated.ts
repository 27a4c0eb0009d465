import { rcdLimit } from "../../calc/practice.ts";
import { milliamps } from "../../calc/result.ts";
import { additionalProtection, fineRcds, rcdsKnown, reachNotStated } from "../../circuit/additional-protection.ts";
import { laterRule } from "../../circuit/describe.ts";
import { premisesOf } from "../../circuit/supply.ts";
import { quotedIn } from "../../tables/source.ts";
import { lineAfter } from "../common/writing.ts";
import { factSpot, wayRule } from "../frame/rule.ts";

export default wayRule({
  id: "rcd/public-reach-not-stated",
  severity: "warning",
  since: "0.1",
  title: "Whether the public reach lights outdoors is not stated, and they have no RCD.",
  why: "Outdoor lighting within reach of the public needs an RCD of 30 mA: columns and bollards are knocked, opened and climbed. Where nobody but the people of the premises comes near, it does not.",
  clauses: ["714.411.3.4", "415.1.1"],
  examples: [
    {
      bad: `way 1 radial "Car park" {
  device       BS EN 60898 C10 6 kA
  serves       lighting
  ^^^^^^^^^^^^^^^^^^^^^
  place        outdoors
}`,
      good: `way 1 radial "Car park" {
  device       BS EN 61009 C10 6 kA 30 mA type A
  serves       lighting
  place        outdoors
}`,
    },
  ],
  check(study, report) {
    const serves = reachNotStated(study);
    if (!serves || study.isSpare || fineRcds(study).length > 0 || !rcdsKnown(study)) return;
    if (additionalProtection(study).length > 0) return;
    const later = laterRule(study);
    const place = study.facts.one("place");
    const isPublic = publicComes.has(premisesOf(study.context));
    const residual = rcdLimit("additional");
    report(factSpot(serves), {
      message: `Lights outdoors that the public can reach need an RCD of ${milliamps(residual.value)} or less, and way ${study.way.id} has none: fit one, or record a departure with why they are out of reach.${later.words}`,
      limit: { amount: residual.value, unit: "A" },
      source: quotedIn("714.411.3.4"),
      severity: later.severity ?? (isPublic ? "warning" : "information"),
      fixes: place ? [lineAfter(place, "place public", "The public reach them: write place public")] : [],
    });
  },
});

/** Where people come and go who do not work or live there; of premises that are not stated it may be so. */
const publicComes: ReadonlySet<string | undefined> = new Set([
  undefined,
  "commercial",
  "care-home",
  "student",
  "tall-residential",
  "shared-house",
]);
