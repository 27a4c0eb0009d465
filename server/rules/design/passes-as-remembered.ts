import { asRemembered } from "../../boards/as-remembered.ts";
import { amount, factSpot, wayRule } from "../frame/rule.ts";

export default wayRule({
  id: "design/passes-as-remembered",
  severity: "information",
  since: "0.1",
  title: "A circuit is right only if a figure from memory is.",
  why: "Some limits here are from memory, with a band they can be wrong by. Where a circuit passes by less than that, the figure decides and not the check: look it up in your copy before signing.",
  clauses: ["433.1.1", "411.4.4", "543.1.1"],
  examples: [
    {
      bad: `way 1 radial "Boiler panel" {
  device       BS EN 60898 B25 6 kA
  cable        multicore  line 2.5 mm²  cpc 2.5 mm²  cores 3
  ^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^
  route        clipped  method C
}`,
      good: `way 1 radial "Boiler panel" {
  device       BS EN 60898 B25 6 kA
  cable        multicore  line 4 mm²  cpc 4 mm²  cores 3
  route        clipped  method C
}`,
    },
  ],
  check(study, report) {
    for (const { what, value, limit, unit, least, source, fact } of asRemembered(study)) {
      report(factSpot(fact), {
        message: `${what} by less than a figure from memory can be wrong.`,
        value: amount(value, unit),
        limit: amount(limit, unit),
        least,
        source,
      });
    }
  },
});
