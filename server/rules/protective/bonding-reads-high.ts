import { lengthFromResistance, resistancePerMetre } from "../../calc/conductor-resistance.ts";
import { practiceOf } from "../../calc/practice.ts";
import { type Calculated, metres, ohms } from "../../calc/result.ts";
import type { Installation } from "../../model/installation.ts";
import { quantityOf } from "../../model/values.ts";
import { allBonding, type Bonding, bondingReading } from "../../readings/earthing.ts";
import type { MeterTest } from "../../readings/meter-tests.ts";
import { deadOfBoard, supplyMeterTests } from "../../readings/meter-tests.ts";
import { uncertaintyAmong } from "../../readings/uncertainty.ts";
import { combine } from "../../tables/source.ts";
import { shown } from "../common/dead-words.ts";
import { uncertaintySteps, withinUncertainty } from "../common/uncertainty-words.ts";
import { unproven } from "../common/unproven.ts";
import { amount, amountOf, factSpot, installationRule, type Reporter, valueSpot } from "../frame/rule.ts";

export default installationRule({
  id: "protective/bonding-reads-high",
  severity: "warning",
  since: "0.1",
  title: "A bonding conductor reads more than its length explains.",
  why: "A long conductor reads more than a short one, and 0.05 Ω is not a limit. What matters is whether the reading fits the length: if not, a clamp may be on paint, or the wrong pipe was measured.",
  opens: true,
  clauses: ["544.1.1", "643.2.1"],
  examples: [
    {
      bad: `wayfile 1
installation "Sample" {
  supply {
    earthing     TN-C-S
    bonding      water 10 mm²  length 12 m  continuity 0.31 Ω
                                                       ^^^^^^
  }
}`,
      good: `wayfile 1
installation "Sample" {
  supply {
    earthing     TN-C-S
    bonding      water 10 mm²  length 43 m  continuity 0.08 Ω
  }
}`,
    },
    {
      bad: `wayfile 1
installation "Sample" {
  supply {
    earthing     TN-C-S
    bonding      water 10 mm²  continuity <2 Ω
                                          ^^^^
  }
}`,
      good: `wayfile 1
installation "Sample" {
  supply {
    earthing     TN-C-S
    bonding      water 10 mm²  continuity <0.05 Ω
  }
}`,
    },
    {
      bad: `wayfile 1
installation "Sample" {
  supply {
    earthing     TN-C-S
    bonding      water 10 mm²  length 12 m  continuity <1 Ω
                                                       ^^^^
  }
}`,
      good: `wayfile 1
installation "Sample" {
  supply {
    earthing     TN-C-S
    bonding      water 10 mm²  length 12 m  continuity <0.05 Ω
  }
}`,
    },
  ],
  check(installation, report) {
    for (const bonding of allBonding(installation)) checkBonding(bonding, installation, report);
  },
});

function checkBonding(bonding: Bonding, installation: Installation, report: Reporter): void {
  const { service, length, continuity } = bonding.args;
  const reading = continuity && quantityOf(continuity);
  const described = bonding.args.size ? bonding : describedElsewhere(installation, service.value);
  const size = described?.args.size;
  const metal = described?.args.metal?.value;
  const perMetre = size && resistancePerMetre(size.value, metal);
  if (!reading || reading.sign === ">" || !size || !perMetre) return;
  const found = length && bondingReading(size.value, length.value, metal);
  if (reading.sign === "<") {
    const most = found ? found.most : longestBond(perMetre);
    if (reading.value <= most.value) return;
    const read = `The ${shown(reading)} of the ${service.value} bonding`;
    report(valueSpot(bonding, reading), unproven(read, "its clamps are sound", most, { sign: "<" }));
    return;
  }
  if (length) {
    if (!found || reading.value <= found.most.value) return;
    const meter = uncertaintyAmong(installation.names, testsWithBonding(installation), bonding, reading);
    report(valueSpot(bonding, reading), {
      message: `The bonding of ${service.value} reads ${ohms(reading.value)}; ${metres(length.value)} of this size should read about ${ohms(found.expected.value)}: look at its clamps.${withinUncertainty(meter, reading.value - found.most.value)}`,
      value: amount(reading.value, "Ω"),
      limit: amountOf(found.most),
      steps: [...found.most.steps, ...uncertaintySteps(meter)],
      source: found.most.source,
      related: [{ spot: factSpot(bonding), message: "Size and length of the bonding conductor." }],
    });
    return;
  }
  const implied = lengthFromResistance(reading.value, perMetre);
  const most = practiceOf("bond-length");
  if (implied.value <= most.value) return;
  report(valueSpot(bonding, reading), {
    message: `The bonding of ${service.value} reads ${ohms(reading.value)}, as ${metres(Math.round(implied.value))} of this size would: look at its clamps, or write its length if it is that long.`,
    value: amount(reading.value, "Ω"),
    steps: [...implied.steps, ...most.steps],
    source: combine(implied.source, most.source),
    related: [{ spot: factSpot(bonding), message: "Size of the bonding conductor." }],
  });
}

/** What the longest bonding conductor that is usual reads, Ω. */
function longestBond(perMetre: Calculated): Calculated {
  const { value, steps, source } = practiceOf("bond-length");
  return {
    value: perMetre.value * value,
    unit: "Ω",
    steps: [...perMetre.steps, ...steps],
    source: combine(perMetre.source, source),
  };
}

const describedElsewhere = ({ supply }: Installation, service: string): Bonding | undefined =>
  supply?.all("bonding").find(({ args }) => args.service.value === service && args.size);

const testsWithBonding = (installation: Installation): MeterTest[] => [
  ...supplyMeterTests(installation),
  ...installation.boards.flatMap(({ context }) => deadOfBoard(context)),
];
