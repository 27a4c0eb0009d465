import { reportMissing } from "../common/additional.ts";
import { wayRule } from "../frame/rule.ts";

export default wayRule({
  id: "place/construction-without-rcd",
  severity: "error",
  since: "0.1",
  title: "Sockets of a construction site are not protected by the RCD they need.",
  why: "On a site leads are dragged through mud and under wheels. Sockets up to 32 A need a 30 mA RCD unless they are at reduced low or extra-low voltage, larger ones 500 mA.",
  clauses: ["704.410.3.10", "704.411.3.2.1"],
  examples: [
    {
      bad: `way 1 radial "Hoist socket" {
  device       BS EN 60898 C63 10 kA
  serves       sockets
  place        construction
  ^^^^^^^^^^^^^^^^^^^^^^^^^
}`,
      good: `way 1 radial "Hoist socket" {
  device       BS EN 61009 C63 10 kA 300 mA type A
  serves       sockets
  place        construction
}`,
    },
  ],
  check(study, report) {
    reportMissing(study, report, "construction", "Sockets on a construction site need");
  },
});
