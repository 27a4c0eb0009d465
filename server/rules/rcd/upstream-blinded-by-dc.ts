import { typeSpan } from "../../boards/board-rcds.ts";
import { rcdName } from "../../circuit/describe.ts";
import { rcdTypes } from "../../tables/rcd-selection.ts";
import { rowOf, sourceOf } from "../../tables/table.ts";
import { factSpot, valueSpot, wayRule } from "../frame/rule.ts";

export default wayRule({
  id: "rcd/upstream-blinded-by-dc",
  severity: "warning",
  since: "0.1",
  title: "A type B RCD is downstream of one that smooth direct current blinds.",
  why: "Where a type B device is needed, smooth direct current may flow, and it flows through the device upstream as well, which may then not trip. Supply the circuit from ahead of that device, or make both type B.",
  clauses: ["531.3.3"],
  examples: [
    {
      setting: { board: "fed-from supply\nrcd east BS EN 61008 80 A 30 mA type A" },
      bad: `way 1 radial "Drive" {
  device       BS EN 60898 C32 6 kA
  behind       east
  rcd          BS EN 62423 40 A 30 mA type B
                                           ^
}`,
      good: `way 1 radial "Drive" {
  device       BS EN 60898 C32 6 kA
  rcd          BS EN 62423 40 A 30 mA type B
}`,
    },
  ],
  check(study, report) {
    const { rcds } = study;
    const index = rcds.findIndex(({ type }) => type === "B");
    const own = rcds[index];
    const span = own && typeSpan(own);
    const weaker = index < 0 ? undefined : rcds.slice(index + 1).find(({ type }) => type !== undefined && type !== "B");
    if (!own || !weaker || !span || own.at === "upstream" || own.fact.segment !== study.way.segment) return;
    const row = rowOf(rcdTypes, { type: weaker.type ?? "A" });
    report(valueSpot(own.fact, span), {
      message: `Smooth DC of this circuit flows through the ${rcdName(weaker)} upstream and may stop it from tripping.`,
      ...(row ? { source: sourceOf(rcdTypes, row, "use") } : {}),
      related: [{ spot: factSpot(weaker.fact), message: `Upstream: ${rcdName(weaker)}.` }],
    });
  },
});
