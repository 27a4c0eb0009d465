import { laterRule } from "../../circuit/describe.ts";
import { quotedIn } from "../../tables/source.ts";
import { factSpot, valueSpot, wayRule } from "../frame/rule.ts";

export default wayRule({
  id: "rcd/charger-poles",
  severity: "error",
  since: "0.1",
  title: "The RCD of a charging point leaves the neutral connected.",
  why: "Earth, neutral and vehicle meet outdoors. Where the neutral carries a voltage, as with a broken PEN conductor, a device that opens the line alone leaves it on the vehicle.",
  clauses: ["722.531.3"],
  examples: [
    {
      bad: `way 1 radial "Charger" {
  device       BS EN 61009 B40 single-pole 6 kA 30 mA type A
                               ^^^^^^^^^^^
  serves       ev-charger
}`,
      good: `way 1 radial "Charger" {
  device       BS EN 61009 B40 double-pole 6 kA 30 mA type A
  serves       ev-charger
}`,
    },
  ],
  check(study, report) {
    const fact = study.device?.fact;
    const { poles, sensitivity } = fact?.args ?? {};
    if (!fact || !poles || !sensitivity || study.isSpare || !study.uses.has("ev-charger")) return;
    if (poles.value === "double-pole" || poles.value === "four-pole") return;
    const later = laterRule(study);
    const serves = study.facts.one("serves");
    report(valueSpot(fact, poles), {
      message: `A ${poles.value} RCBO leaves the neutral of the charging point connected: fit a ${study.threePhase ? "four-pole" : "double-pole"} one.${later.words}`,
      // Quoted by a trade paper: the RCD disconnects all live conductors, the neutral among them.
      source: quotedIn("722.531.3"),
      ...(later.severity ? { severity: later.severity } : {}),
      related: serves ? [{ spot: factSpot(serves), message: "A charging point on this circuit." }] : [],
    });
  },
});
