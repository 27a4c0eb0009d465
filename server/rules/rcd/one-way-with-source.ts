import { laterRule, rcdName } from "../../analysis/describe.ts";
import type { Rcd } from "../../analysis/way.ts";
import type { Fix } from "../../model/problems.ts";
import type { Span } from "../../model/values.ts";
import { factSpot, wayRule } from "../rule.ts";
import { inPlaceOf } from "../writing.ts";

export default wayRule({
  id: "rcd/one-way-with-source",
  severity: "error",
  since: "0.1",
  title: "A generator or battery on a device that may be fed from one side only.",
  why: "Fed from its load side, a one-way device may burn out when it trips and stay closed the next time. Circuits that can feed back need bidirectional devices.",
  clauses: ["530.3.201"],
  examples: [
    {
      setting: { standard: "BS 7671:2018+A2:2022+A3:2024" },
      bad: `way 1 radial "Roof array" {
  device  BS EN 61009 B20 6 kA 30 mA type A unidirectional
  serves  pv
  ^^^^^^^^^^
}`,
      good: `way 1 radial "Roof array" {
  device  BS EN 61009 B20 6 kA 30 mA type A bidirectional
  serves  pv
}`,
    },
  ],
  check(study, report) {
    const serves = study.facts.one("serves");
    const { edition } = study.context;
    if (!serves || !edition || !(study.uses.has("pv") || study.uses.has("storage"))) return;
    const local = study.rcds.filter(({ at }) => at !== "upstream");
    const oneWay = local.find(({ direction }) => direction === "unidirectional");
    const unsaid = local.find(({ direction }) => direction === undefined);
    const rcd = oneWay ?? unsaid;
    if (!rcd) return;
    const later = laterRule(study.context);
    // Before the rule was printed the danger was the same, but no regulation named it.
    const severity = later.severity ?? (edition.bidirectional ? undefined : "warning");
    report(factSpot(serves), {
      message: oneWay
        ? `This circuit can feed back, and the ${rcdName(rcd)} may be fed from one side only: fit a bidirectional one.${later.words}`
        : `This circuit can feed back: say of the ${rcdName(rcd)} whether it is bidirectional, as its marking shows.`,
      source: edition.sources.bidirectional,
      ...(oneWay ? (severity ? { severity } : {}) : { severity: later.severity ?? "warning" }),
      related: [{ spot: factSpot(rcd.fact), message: `The RCD: ${rcdName(rcd)}.` }],
      fixes: oneWay ? turned(oneWay, serves.segment) : [],
    });
  },
});

function turned({ fact }: Rcd, marked: unknown): Fix[] {
  const { direction } = fact.args as { readonly direction?: Span };
  return direction && fact.segment === marked ? [inPlaceOf(direction, "bidirectional", "Make it bidirectional")] : [];
}
