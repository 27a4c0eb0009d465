import { byLetThrough, letThroughAt } from "../../boards/energy.ts";
import { faultLevels } from "../../boards/fault-levels.ts";
import { type Calculated, kiloamps, plain, squareMillimetres, step } from "../../calc/result.ts";
import { deviceName } from "../../circuit/describe.ts";
import { type FaultAt, greatestFault } from "../../circuit/faults.ts";
import { studyWay, type WayStudy } from "../../circuit/way.ts";
import { asWritten, combine } from "../../tables/source.ts";
import { amount, amountOf, factSpot, installationRule, type Reporter } from "../frame/rule.ts";

const sample = (sizes: string) => `wayfile 1
installation "Sample" {
  standard     BS 7671:2018+A2:2022
  supply {
    earthing     TN-S
    Ipf          9 kA
  }
  board A "Main" {
    fed-from     supply
    way 1 feeder "Annexe" {
      feeds        B
      cable        armoured 70 °C  line 35 mm²  cpc 35 mm²
      length       4 m
    }
  }
  board B "Annexe" {
    fed-from     A
    way 1 radial "Corridor lighting" {
      device       BS EN 60898 C10 10 kA
      cable        flat-twin  line ${sizes}
      serves       lighting
    }
  }
}`;

export default installationRule({
  id: "energy/let-through-too-high",
  severity: "information",
  since: "0.1",
  title: "A breaker may let through more energy than a conductor withstands.",
  why: "Where the fault current is high a breaker opens in less than a tenth of a second, and its let-through energy decides rather than its curve. Ask the maker for the I²t at this fault current.",
  clauses: ["434.5.2", "543.1.3"],
  examples: [
    {
      setting: { supply: "earthing TN-S\nZe 0.04 Ω\nIpf 8.2 kA" },
      bad: `way 1 radial "Corridor lighting" {
  device       BS EN 60898 C10 10 kA
  cable        flat-twin  line 1.5 mm²  cpc 1.0 mm²
  ^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^
  serves       lighting
}`,
      good: `way 1 radial "Corridor lighting" {
  device       BS EN 60898 C10 10 kA
  cable        singles  line 4 mm²  cpc 4 mm²
  serves       lighting
}`,
    },
    {
      bad: sample("1.5 mm²  cpc 1.0 mm²").replace("1.0 mm²\n", `1.0 mm²\n      ${"^".repeat(49)}\n`),
      good: sample("6 mm²  cpc 2.5 mm²"),
    },
  ],
  checkNode(node, report) {
    // Where nothing is recorded, what is calculated along the feeders tells.
    const levels = greatestFault(node.context) ? undefined : faultLevels(node);
    if (!levels) return;
    const { greatest } = levels;
    for (const { way, current } of byLetThrough(node)) {
      if (greatest.value < current) break;
      checkWay(studyWay(way, node.context), greatest, report);
    }
  },
  checkBoard({ context, studies }, report) {
    const fault = greatestFault(context);
    if (!fault) return;
    const current = { value: fault.value, unit: "A", steps: [], source: asWritten };
    for (const study of studies) checkWay(study, current, report, fault);
  },
});

function checkWay(study: WayStudy, fault: Calculated, report: Reporter, recorded?: FaultAt): void {
  const { device, cable } = study;
  const found = study.isSpare ? undefined : letThroughAt(study, fault.value);
  if (!found || !device || !cable || found.energy.value <= found.stands.value) return;
  const { energy, stands, conductor, csa } = found;
  const which = conductor === "cpc" ? "protective conductor" : "line conductor";
  report(factSpot(cable.fact), {
    message: `At ${kiloamps(fault.value)}${recorded ? "" : " (calculated)"} the device may let through ${plain(energy.value, 0)} A²s, the ${squareMillimetres(csa)} ${which} withstands ${plain(stands.value, 0)} A²s: ask its maker.`,
    value: amount(energy.value, "A²s"),
    limit: amountOf(stands),
    steps: [...fault.steps, ...energy.steps, ...stands.steps, step("I²t ≤ k²S²", "", "does not hold")],
    source: combine(fault.source, energy.source, stands.source),
    related: [
      { spot: factSpot(device.fact), message: `Protective device: ${deviceName(device)}.` },
      ...(recorded
        ? [{ spot: factSpot(recorded.fact), message: `${recorded.name} ${kiloamps(recorded.value)}.` }]
        : []),
    ],
  });
}
