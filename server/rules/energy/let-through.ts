import { deviceName } from "../../analysis/describe.ts";
import { letThroughAt } from "../../analysis/energy.ts";
import { greatestFault } from "../../analysis/faults.ts";
import { kiloamps, plain, squareMillimetres, step } from "../../calc/result.ts";
import { combine } from "../../tables/source.ts";
import { amount, amountOf, factSpot, wayRule } from "../rule.ts";

export default wayRule({
  id: "energy/let-through",
  severity: "information",
  since: "0.1",
  title: "A breaker that may let through more than a thin conductor bears.",
  why: "Where the fault current is great a breaker opens in less than a tenth of a second, and the energy it lets through decides, not its curve. Ask the maker for the I²t at this fault current.",
  clauses: ["434.5.2", "543.1.3"],
  examples: [
    {
      setting: { supply: "earthing TN-S\nZe 0.04 Ω\nIpf 8.2 kA" },
      bad: `way 1 radial "Corridor lighting" {
  device  BS EN 60898 C10 10 kA
  cable   flat-twin line 1.5 mm² cpc 1.0 mm²
  ^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^
  serves  lighting
}`,
      good: `way 1 radial "Corridor lighting" {
  device  BS EN 60898 C10 10 kA
  cable   singles line 4 mm² cpc 4 mm²
  serves  lighting
}`,
    },
  ],
  check(study, report) {
    const { device, cable, context } = study;
    const fault = greatestFault(context);
    const found = device && cable && fault && !study.isSpare ? letThroughAt(study, fault.value) : undefined;
    if (!found || !device || !cable || !fault || found.energy.value <= found.stands.value) return;
    const { energy, stands, conductor, csa } = found;
    const which = conductor === "cpc" ? "protective conductor" : "line conductor";
    report(factSpot(cable.fact), {
      message: `At ${kiloamps(fault.value)} a class 3 ${deviceName(device)} breaker may let through ${plain(energy.value, 0)} A²s; the ${squareMillimetres(csa)} ${which} bears ${plain(stands.value, 0)} A²s. Look the figure up with the maker.`,
      value: amount(energy.value, "A²s"),
      limit: amountOf(stands),
      steps: [...energy.steps, ...stands.steps, step("I²t ≤ k²S²", "", "does not hold")],
      source: combine(energy.source, stands.source),
      related: [
        { spot: factSpot(device.fact), message: "The device." },
        { spot: factSpot(fault.fact), message: `${fault.name} ${kiloamps(fault.value)}.` },
      ],
    });
  },
});
