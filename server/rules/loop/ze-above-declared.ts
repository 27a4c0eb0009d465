import { ohms } from "../../calc/result.ts";
import { declaredImpedance } from "../../calc/supply-declared.ts";
import { hasOwnSource } from "../../circuit/supply.ts";
import { quantityOf } from "../../model/values.ts";
import { uncertaintyOnSupply } from "../../readings/uncertainty.ts";
import { shown } from "../common/dead-words.ts";
import { uncertaintySteps, withinUncertainty } from "../common/uncertainty-words.ts";
import { unproven } from "../common/unproven.ts";
import { amount, amountOf, factSpot, installationRule, valueSpot } from "../frame/rule.ts";

export default installationRule({
  id: "loop/ze-above-declared",
  severity: "warning",
  since: "0.1",
  title: "Ze is higher than distributors declare for this earthing system.",
  why: "Either the earthing is not what is recorded, or the supply's earth is failing: report it to the distributor at once.",
  clauses: ["313.1", "312.2"],
  examples: [
    {
      bad: `wayfile 1
installation "Sample" {
  supply {
    earthing     TN-S
    Ze           >1999 Ω
    ^^^^^^^^^^^^^^^^^^^^
  }
}`,
      good: `wayfile 1
installation "Sample" {
  supply {
    earthing     TN-S
    Ze           0.34 Ω
  }
}`,
    },
    {
      bad: `wayfile 1
installation "Sample" {
  supply {
    earthing     TN-C-S
    Ze           0.62 Ω
    ^^^^^^^^^^^^^^^^^^^
  }
}`,
      good: `wayfile 1
installation "Sample" {
  supply {
    earthing     TN-C-S
    Ze           0.22 Ω
  }
}`,
    },
    {
      bad: `wayfile 1
installation "Sample" {
  supply {
    earthing     TN-S
    Ze           <20 Ω
                 ^^^^^
  }
}`,
      good: `wayfile 1
installation "Sample" {
  supply {
    earthing     TN-S
    Ze           <0.5 Ω
  }
}`,
    },
  ],
  check(installation, report) {
    const earthing = installation.supply?.one("earthing");
    const Ze = installation.supply?.one("Ze");
    const reading = quantityOf(Ze?.args.value);
    const system = earthing?.args.system.value;
    if (!earthing || !Ze || !reading || (system !== "TN-S" && system !== "TN-C-S")) return;
    const limit = declaredImpedance(system);
    const own = hasOwnSource(installation.supply);
    const isOpen = reading.sign === "<" ? reading.value > limit.value : reading.value <= limit.value;
    if (reading.sign !== "=" && isOpen && !own) {
      const within = `the loop of the supply is within the ${ohms(limit.value)} declared for ${system}`;
      report(valueSpot(Ze, reading), unproven(`Ze ${shown(reading)}`, within, limit, { sign: reading.sign }));
      return;
    }
    if (reading.sign === "<" || reading.value <= limit.value) return;
    const other = system === "TN-C-S" && reading.value <= declaredImpedance("TN-S").value ? "TN-S" : "TT";
    const meter = uncertaintyOnSupply(installation, Ze, reading);
    const offScale = reading.sign === ">";
    // A generator or a transformer of one's own has the impedance it has, and no distributor declares it.
    if (!offScale && own) return;
    report(factSpot(Ze), {
      message: offScale
        ? `Ze ${shown(reading)} is off scale where ${system} gives a fraction of an ohm: the supply has no earth. Tell the distributor at once.`
        : `Ze ${shown(reading)} is above the ${ohms(limit.value)} distributors declare for ${system}: is it ${other}? Ask the distributor.${withinUncertainty(meter, reading.value - limit.value)}`,
      // A reading says nothing of the earthing that is recorded wrongly; no earth at all is a danger to all that is fed.
      ...(offScale ? { severity: "error" as const } : {}),
      value: amount(reading.value, "Ω"),
      limit: amountOf(limit),
      steps: [...limit.steps, ...uncertaintySteps(meter)],
      source: limit.source,
      related: [{ spot: factSpot(earthing), message: `Earthing recorded as ${system}.` }],
    });
  },
});
