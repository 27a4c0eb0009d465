import { rcdLimit } from "../../calc/practice.ts";
import { additionalProtection, fineRcds, protectsPersons, rcdsKnown } from "../../circuit/additional-protection.ts";
import { rcdName } from "../../circuit/describe.ts";
import { rcboInstead } from "../common/additional.ts";
import { factSpot, wayRule } from "../frame/rule.ts";

export default wayRule({
  id: "rcd/delayed-for-additional-protection",
  severity: "error",
  since: "0.1",
  title: "A time-delayed RCD is the only additional protection.",
  why: "A delayed device waits on purpose so that another can trip first. Where there is no other, a person in contact with a live part waits with it.",
  clauses: ["415.1.1"],
  examples: [
    {
      bad: `way 1 ring "Sockets" {
  device       BS EN 60898 B32 6 kA
  rcd          BS EN 61008 63 A 30 mA type A delayed
  serves       sockets
  ^^^^^^^^^^^^^^^^^^^^
}`,
      good: `way 1 ring "Sockets" {
  device       BS EN 60898 B32 6 kA
  rcd          BS EN 61008 63 A 30 mA type A
  serves       sockets
}`,
    },
  ],
  check(study, report) {
    const fine = fineRcds(study);
    const [rcd] = fine;
    const need = additionalProtection(study).find(protectsPersons);
    if (!rcd || !need || !fine.every(({ delayed }) => delayed) || !rcdsKnown(study)) return;
    report(factSpot(need.fact), {
      message:
        "The only RCD of 30 mA or less here is time-delayed, too slow for additional protection: fit one without delay.",
      source: rcdLimit("additional").source,
      related: [{ spot: factSpot(rcd.fact), message: `RCD of the circuit: ${rcdName(rcd)}.` }],
      fixes: study.device?.fact.segment === need.fact.segment ? rcboInstead(study, need.limit.value) : [],
    });
  },
});
