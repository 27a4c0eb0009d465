import { typeSpan } from "../../boards/board-rcds.ts";
import { rcdLimit } from "../../calc/practice.ts";
import { milliamps } from "../../calc/result.ts";
import { rcdName } from "../../circuit/describe.ts";
import { inPlaceOf } from "../common/writing.ts";
import { amountOf, factSpot, wayRule } from "../frame/rule.ts";

export default wayRule({
  id: "rcd/charger-dc-detection",
  severity: "warning",
  since: "0.1",
  title: "DC fault detection at a charging point is not recorded.",
  why: "With a type A RCD the charging equipment must detect smooth direct current above 6 mA; otherwise the RCD has to be type B. Record which it is.",
  clauses: ["722.531.3.101"],
  examples: [
    {
      bad: `way 1 radial "Charger" {
  device       BS EN 61009 B40 6 kA 30 mA type A
  ^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^
  serves       ev-charger
}`,
      good: `way 1 radial "Charger" {
  device       BS EN 61009 B40 6 kA 30 mA type A
  serves       ev-charger
  note         "The charging unit has an RDC-DD, 6 mA"
}`,
    },
  ],
  check(study, report) {
    const rcd = study.rcds[0];
    if (!study.uses.has("ev-charger") || !rcd || (rcd.type !== "A" && rcd.type !== "F")) return;
    if (study.facts.has("dc-detection")) return;
    const words = study.facts.all("note").map((note) => note.args.text.value);
    if (words.some((text) => /RDC|6\s?mA|62955|d\.?c\.? (detection|disconnection)/i.test(text))) return;
    const limit = rcdLimit("ev-dc");
    const span = typeSpan(rcd);
    report(factSpot(rcd.fact), {
      message: `With a type ${rcd.type} RCD the charging equipment must detect DC above ${milliamps(limit.value)}: record that it does (dc-detection), or fit type B.`,
      limit: amountOf(limit),
      fixes: span ? [inPlaceOf(span, "B", "Make it type B")] : [],
      source: limit.source,
      related: [
        {
          spot: factSpot(study.facts.one("serves") ?? rcd.fact),
          message: `RCD of the charging point: ${rcdName(rcd)}.`,
        },
      ],
    });
  },
});
