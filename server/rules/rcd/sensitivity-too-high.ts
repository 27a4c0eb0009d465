import { milliamps } from "../../calc/result.ts";
import { protectsPersons } from "../../circuit/additional-protection.ts";
import { laterRule, rcdName } from "../../circuit/describe.ts";
import type { Rcd, WayStudy } from "../../circuit/way.ts";
import type { Fix } from "../../model/problems.ts";
import { combine } from "../../tables/source.ts";
import { coarseOnly, rcboInstead } from "../common/additional.ts";
import { inPlaceOf } from "../common/writing.ts";
import { amount, amountOf, factSpot, wayRule } from "../frame/rule.ts";

export default wayRule({
  id: "rcd/sensitivity-too-high",
  severity: "error",
  since: "0.1",
  title: "An RCD above 30 mA is used where 30 mA or less is required.",
  why: "100 mA through a person can kill before a 100 mA RCD trips. Devices of 100 mA and more protect against fire and faults, not against direct contact.",
  clauses: ["415.1.1"],
  examples: [
    {
      bad: `way 1 ring "Sockets" {
  device       BS EN 61009 B32 6 kA 100 mA type A
  serves       sockets
  ^^^^^^^^^^^^^^^^^^^^
}`,
      good: `way 1 ring "Sockets" {
  device       BS EN 61009 B32 6 kA 30 mA type A
  serves       sockets
}`,
    },
  ],
  check(study, report) {
    const found = coarseOnly(study);
    if (!found) return;
    const { need, rcd } = found;
    const { limit } = need;
    const what = protectsPersons(need) ? "Additional protection needs" : "This location needs an RCD of";
    const later = laterRule(study);
    report(factSpot(need.fact), {
      message: `${what} ${milliamps(limit.value)} or less; the most sensitive RCD here is ${milliamps(rcd.sensitivity)}.${later.words}`,
      value: amount(rcd.sensitivity, "A"),
      limit: amountOf(limit),
      steps: limit.steps,
      source: combine(limit.source, need.source),
      ...(later.severity ? { severity: later.severity } : {}),
      related: [{ spot: factSpot(rcd.fact), message: `RCD of the circuit: ${rcdName(rcd)}.` }],
      fixes: finer(study, rcd, { limit: limit.value, marked: need.fact.segment }),
    });
  },
});

/** A finer RCD in the device, or a device with one. An RCD of the board serves other ways too: it stays. */
function finer(
  study: WayStudy,
  rcd: Rcd,
  { limit, marked }: { readonly limit: number; readonly marked: unknown },
): Fix[] {
  const { sensitivity } = rcd.fact.args;
  const { device } = study;
  if (rcd.at !== "device") return device?.fact.segment === marked ? rcboInstead(study, limit) : [];
  const text = milliamps(limit);
  return sensitivity && rcd.fact.segment === marked ? [inPlaceOf(sensitivity, text, `Make it ${text}`)] : [];
}
