import { factSpot, installationRule } from "../frame/rule.ts";

export default installationRule({
  id: "protective/bonding-missing",
  severity: "error",
  since: "0.1",
  title: "A service is not bonded.",
  why: "In a fault, or with an open PEN, a metal pipe or frame that enters from outside can be at another voltage than what is earthed beside it. Main bonding holds them together: without it both can be touched at once.",
  opens: true,
  clauses: ["411.3.1.2", "544.1.1"],
  examples: [
    {
      bad: `wayfile 1
installation "Sample" {
  stage        tested
  supply {
    earthing     TN-C-S
    bonding      water 10 mm²
    bonding      gas missing "No clamp at the meter"
    ^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^
  }
  board A "Board" {
    fed-from     supply
  }
}`,
      good: `wayfile 1
installation "Sample" {
  stage        tested
  supply {
    earthing     TN-C-S
    bonding      water 10 mm²
    bonding      gas 10 mm²
  }
  board A "Board" {
    fed-from     supply
  }
}`,
    },
  ],
  check({ supply }, report) {
    for (const bonding of supply?.all("bonding") ?? []) {
      const { missing, service, size } = bonding.args;
      if (!missing || service.value === "none") continue;
      report(factSpot(bonding), {
        message: size
          ? `The bonding of ${service.value} is stated with its size and as missing: which of the two is it?`
          : `The ${nameOf(service.value)} is not bonded: bond it to the main earthing terminal, or show that it is no extraneous-conductive-part.`,
      });
    }
  },
});

const names: Readonly<Record<string, string>> = {
  structure: "structural metal",
  lightning: "lightning protection",
  other: "extraneous-conductive-part",
};

const nameOf = (service: string): string => names[service] ?? `${service} service`;
