import { exceeds } from "../../calc/compare.ts";
import { rcdLimit } from "../../calc/practice.ts";
import { type Calculated, ohms } from "../../calc/result.ts";
import { rcdsKnown } from "../../circuit/additional-protection.ts";
import type { WayStudy } from "../../circuit/way.ts";
import { quantityOf } from "../../model/values.ts";
import { rcdRequired } from "../../tables/rcd-selection.ts";
import { rowOf, sourceOf } from "../../tables/table.ts";
import { rcboInstead } from "../common/additional.ts";
import { amount, amountOf, factSpot, wayRule, wordSpot } from "../frame/rule.ts";

export default wayRule({
  id: "rcd/missing-in-tt",
  severity: "error",
  since: "0.1",
  title: "A circuit of a TT installation is not protected by an RCD.",
  why: "Through an earth electrode a fault seldom draws enough current to operate a fuse or a breaker: without an RCD exposed metal stays live.",
  clauses: ["411.5.2", "411.5.3"],
  examples: [
    {
      setting: { supply: "earthing TT\nIpf 1.2 kA\nelectrode rod 84 Ω" },
      bad: `way 1 radial "Pump" {
  device       BS EN 60898 B16 6 kA
  ^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^
}`,
      good: `way 1 radial "Pump" {
  device       BS EN 61009 B16 6 kA 100 mA type A
}`,
    },
  ],
  check(study, report) {
    const { device, supply, rcds } = study;
    if (supply.earthing !== "TT" || study.isSpare || rcds.length > 0 || !rcdsKnown(study) || !device) return;
    if (study.facts.has("class-II")) return;
    const never = study.isFinal ? undefined : neverOpens(study);
    const row = rowOf(rcdRequired, { key: "tt" });
    report(factSpot(device.fact), {
      message: study.isFinal
        ? "In a TT installation this circuit relies on an RCD to disconnect, and it has none."
        : `In a TT installation a distribution circuit needs an RCD as well, as a rule a delayed one, and this one has none.${never ? ` Through ${ohms(never.loop)} its device would not open at all.` : ""}`,
      // 411.5.2 allows an overcurrent device where the loop is low enough for it.
      ...(study.isFinal || never ? {} : { severity: "warning" as const }),
      ...(never
        ? { value: amount(never.loop, "Ω"), limit: amountOf(never.limit, "hot"), steps: never.limit.steps }
        : {}),
      ...(row ? { source: { ...sourceOf(rcdRequired, row, "limit"), ref: "BS 7671:2018+A2:2022, 411.5.2" } } : {}),
      related: supply.earthingFact
        ? [{ spot: wordSpot(supply.earthingFact), message: "Earthing recorded as TT." }]
        : [],
      fixes: study.isFinal ? rcboInstead(study, rcdLimit("additional").value) : [],
    });
  },
});

/** A loop that is known, Ω, and above what the overcurrent device allows. */
function neverOpens(study: WayStudy): { readonly loop: number; readonly limit: Calculated } | undefined {
  const { overcurrentLimit: limit, Zs, boardImpedance, context } = study;
  const electrode = quantityOf(context.supply?.one("electrode")?.args.value)?.value;
  const loop = (Zs && quantityOf(Zs.value)?.value) ?? boardImpedance?.value ?? electrode;
  return limit && loop !== undefined && exceeds(loop, limit.value) ? { loop, limit } : undefined;
}
