import { inspectionsOf, type ObservationFact } from "../../model/inspections.ts";
import { derivedOutcome } from "../../readings/inspection-outcome.ts";
import { listed } from "../../text/words.ts";
import { factSpot, installationRule, valueSpot } from "../frame/rule.ts";

export default installationRule({
  id: "inspection/outcome-contradicted",
  severity: "error",
  since: "0.1",
  title: "The outcome contradicts the observations.",
  why: "A danger that is present or possible is not fit for continued service, whoever signs. Either the code of the observation is wrong, or the outcome is.",
  clauses: ["653.2"],
  examples: [
    {
      bad: `wayfile 1
installation "Kiln house" {
  standard     BS 7671:2018+A2:2022
  inspection periodic 2026-03-05 {
    observation  1 C2 "No earth at the hall lights"
    outcome      satisfactory
                 ^^^^^^^^^^^^
  }
}`,
      good: `wayfile 1
installation "Kiln house" {
  standard     BS 7671:2018+A2:2022
  inspection periodic 2026-03-05 {
    observation  1 C2 "No earth at the hall lights"
    outcome      unsatisfactory
  }
}`,
    },
    {
      bad: `wayfile 1
installation "Kiln house" {
  standard     BS 7671:2018+A2:2022
  inspection periodic 2026-03-05 {
    observation  1 C3 "No RCD for the hall lights"
    outcome      unsatisfactory
                 ^^^^^^^^^^^^^^
  }
}`,
      good: `wayfile 1
installation "Kiln house" {
  standard     BS 7671:2018+A2:2022
  inspection periodic 2026-03-05 {
    observation  1 C3 "No RCD for the hall lights"
    outcome      unsatisfactory "Half the circuits could not be tested"
  }
}`,
    },
  ],
  check({ head, edition }, report) {
    for (const inspection of inspectionsOf(head)) {
      const { facts } = inspection;
      const fact = facts.one("outcome");
      // An observation that was not understood may be of any code.
      if (!fact || facts.isUnread("observation")) continue;
      const derived = derivedOutcome(inspection, edition);
      if (derived.outcome === fact.args.of.value) continue;
      const excused = fact.args.why !== undefined;
      if (excused && (!derived.certain || derived.outcome === "satisfactory")) continue;
      report(valueSpot(fact, fact.args.of), {
        message:
          derived.outcome === "unsatisfactory"
            ? `${capitalised(derived.by)} ${derived.by.length === 1 ? "makes" : "make"} the outcome unsatisfactory: correct the outcome or the code.`
            : "No observation makes the outcome unsatisfactory: correct it, or give the reason behind it.",
        source: derived.source,
        ...(derived.certain ? {} : { severity: "warning" as const }),
        related: derived.by.map((one) => ({
          spot: factSpot(one),
          message: `${one.args.code.value}: ${one.args.text.value}`,
        })),
      });
    }
  },
});

const capitalised = (by: readonly ObservationFact[]): string =>
  listed(
    by.slice(0, 4).map(({ args }) => `${args.code.value}${args.number ? ` of observation ${args.number.value}` : ""}`),
  );
