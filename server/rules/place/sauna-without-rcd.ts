import { reportMissing } from "../common/additional.ts";
import { wayRule } from "../frame/rule.ts";

export default wayRule({
  id: "place/sauna-without-rcd",
  severity: "error",
  since: "0.1",
  title: "A circuit of a sauna is not protected by a 30 mA RCD.",
  why: "Heat ages insulation, and skin is wet. Every circuit of the sauna but that of the heater itself has an RCD.",
  clauses: ["703.411.3.3", "415.1.1"],
  examples: [
    {
      bad: `way 1 radial "Sauna lights" {
  device       BS EN 60898 B6 6 kA
  serves       lighting
  place        sauna
  ^^^^^^^^^^^^^^^^^^
}`,
      good: `way 1 radial "Sauna lights" {
  device       BS EN 61009 B6 6 kA 30 mA type A
  serves       lighting
  place        sauna
}`,
    },
  ],
  check(study, report) {
    reportMissing(study, report, "sauna", "Circuits of a sauna need");
  },
});
