import { practiceOf } from "../../calc/practice.ts";
import { ohms } from "../../calc/result.ts";
import { declaredImpedance } from "../../calc/supply-declared.ts";
import { originImpedance } from "../../readings/loop.ts";
import { amount, amountOf, factSpot, installationRule } from "../frame/rule.ts";

export default installationRule({
  id: "loop/ze-too-low",
  severity: "warning",
  since: "0.1",
  title: "An external impedance lower than such a supply gives.",
  why: "With the bonding left connected the meter reads all the pipes in the street in parallel. Read Ze with the earthing conductor disconnected from them, and the installation isolated.",
  clauses: ["313.1", "643.7.3"],
  examples: [
    {
      bad: `wayfile 1
installation "Sample" {
  supply {
    earthing TN-C-S
    Ze 0.02 Ω
    ^^^^^^^^^
  }
}`,
      good: `wayfile 1
installation "Sample" {
  supply {
    earthing TN-C-S
    phases three
    Ze 0.02 Ω
  }
}`,
    },
    {
      bad: `wayfile 1
installation "Sample" {
  supply {
    earthing TT
    Ze 0.24 Ω
    ^^^^^^^^^
  }
}`,
      good: `wayfile 1
installation "Sample" {
  supply {
    earthing TT
    Ze 31 Ω
  }
}`,
    },
  ],
  check(installation, report) {
    const { supply } = installation;
    const earthing = supply?.one("earthing");
    const Ze = originImpedance(installation);
    const system = earthing?.args.system.value;
    if (!supply || !earthing || !Ze) return;
    const related = [{ spot: factSpot(earthing), message: `The earthing as written: ${system}.` }];
    if (system === "TT") {
      const metallic = declaredImpedance("TN-S");
      if (Ze.value > metallic.value) return;
      report(factSpot(Ze.fact), {
        message: `Ze ${ohms(Ze.value)} through an electrode is too good to be true: a metal path such as this belongs to TN-S or TN-C-S, or the bonding was left connected.`,
        value: amount(Ze.value, "Ω"),
        limit: amountOf(metallic),
        least: true,
        source: metallic.source,
        related,
      });
      return;
    }
    const least = practiceOf("ze-least");
    // A large three-phase supply, close to its transformer, may well be this stiff.
    if (supply.one("phases")?.args.count.value === "three" || Ze.value >= least.value) return;
    report(factSpot(Ze.fact), {
      message: `Ze ${ohms(Ze.value)} is lower than a single-phase supply gives: was the earthing conductor disconnected from the bonding, and the meter's leads nulled?`,
      value: amount(Ze.value, "Ω"),
      limit: amountOf(least),
      least: true,
      steps: least.steps,
      source: least.source,
      related,
    });
  },
});
