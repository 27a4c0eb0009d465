import type { Use } from "../../../grammar/choices.ts";
import { practiceOf } from "../../calc/practice.ts";
import { plain } from "../../calc/result.ts";
import { amount, amountOf, factSpot, wayRule } from "../frame/rule.ts";

const heavy: readonly Use[] = ["water-heater", "shower", "cooker", "ev-charger", "heating"];

export default wayRule({
  id: "design/ring-heavy-load",
  severity: "warning",
  since: "0.1",
  title: "A large continuous load is connected to a ring final.",
  why: "A load that stays on for long near one end of a ring can overload the short leg without tripping the device. Water heaters, showers, cookers and chargers need circuits of their own.",
  clauses: ["433.1.204"],
  examples: [
    {
      bad: `way 1 ring "Sockets and immersion heater" {
  device       BS EN 60898 B32 6 kA
  serves       sockets water-heater
  ^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^
}`,
      good: `way 1 ring "Sockets" {
  device       BS EN 60898 B32 6 kA
  serves       sockets
}`,
    },
    {
      bad: `way 1 ring "Workshop" {
  device       BS EN 60898 B32 6 kA
  serves       sockets
  load         3 kW "Oil-filled radiator"
  ^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^
}`,
      good: `way 1 ring "Workshop" {
  device       BS EN 60898 B32 6 kA
  serves       sockets
  load         1.5 kW "Bench tools"
}`,
    },
  ],
  check(study, report) {
    if (!study.isRing) return;
    const serves = study.facts.one("serves");
    const found = heavy.filter((use) => study.uses.has(use));
    if (serves && found.length > 0) {
      report(factSpot(serves), {
        message: `A ${found.join(" and a ").replaceAll("-", " ")} on a ring can overload one leg: give it a circuit of its own.`,
      });
      return;
    }
    const limit = practiceOf("ring-load");
    for (const load of study.facts.all("load")) {
      const power = load.args.power?.value ?? (load.args.current?.value ?? 0) * study.supply.voltage;
      // Of sockets a load without a name is what they come to together.
      if (power <= limit.value || (study.uses.has("sockets") && !load.args.title)) continue;
      report(factSpot(load), {
        message: `A load of ${plain(power / 1000)} kW on a ring: if it is on for long periods, give it a circuit of its own.`,
        value: amount(power, "W"),
        limit: amountOf(limit),
        source: limit.source,
        severity: "information",
      });
    }
  },
});
