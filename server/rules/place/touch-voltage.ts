import { touchVoltage } from "../../calc/rcd-loop-limit.ts";
import { ohms, relation, volts } from "../../calc/result.ts";
import { rcdName } from "../../circuit/describe.ts";
import { touchLimit } from "../../circuit/places.ts";
import { exactReading } from "../../circuit/supply.ts";
import { combine } from "../../tables/source.ts";
import { amount, factSpot, wayRule } from "../frame/rule.ts";

export default wayRule({
  id: "place/touch-voltage",
  severity: "error",
  since: "0.1",
  title: "The touch voltage of a TT circuit is higher than its location allows.",
  why: "To the 16th Edition, farms and sites are allowed half the usual voltage on exposed metal. Improve the electrode, or fit an RCD of lower IΔn.",
  clauses: ["604-05", "605-06"],
  examples: [
    {
      setting: { standard: "BS 7671:2001", supply: "earthing TT\nelectrode rod 90 Ω\nIpf 1.2 kA" },
      bad: `way 1 radial "Milking machine" {
  device       BS EN 61009 C16 6 kA 300 mA type A
  serves       motor
  place        agricultural
  live 2026-03-05 {
    Zs           110 Ω
    ^^^^^^^^^^^^^^^^^^
  }
}`,
      good: `way 1 radial "Milking machine" {
  device       BS EN 61009 C16 6 kA 100 mA type A
  serves       motor
  place        agricultural
  live 2026-03-05 {
    Zs           110 Ω
  }
}`,
    },
  ],
  check(study, report) {
    const limit = touchLimit(study);
    const rcd = study.rcds.toSorted((one, other) => one.sensitivity - other.sensitivity)[0];
    const Zs = exactReading(study.Zs);
    if (!limit || !rcd || !Zs || study.supply.earthing !== "TT" || study.isSpare) return;
    const voltage = touchVoltage(Zs.value, rcd.sensitivity);
    const most = limit.row.facts.volts;
    if (voltage.value <= most) return;
    report(factSpot(Zs.fact), {
      message: `Zs ${ohms(Zs.value)} with the ${rcdName(rcd)} allows ${volts(voltage.value)} on exposed metal, above the ${volts(most)} of this location.`,
      value: amount(voltage.value, "V"),
      limit: amount(most, "V"),
      steps: [...voltage.steps, relation("Zs × IΔn ≤ most", volts(voltage.value), volts(most))],
      source: combine(limit.source, voltage.source),
      related: [{ spot: factSpot(rcd.fact), message: `RCD of the circuit: ${rcdName(rcd)}.` }],
    });
  },
});
