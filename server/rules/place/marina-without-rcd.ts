import { reportMissing } from "../common/additional.ts";
import { wayRule } from "../frame/rule.ts";

export default wayRule({
  id: "place/marina-without-rcd",
  severity: "error",
  since: "0.1",
  title: "Sockets of a marina are not protected by the RCD they need.",
  why: "A fault on a boat can make its hull and the water round it live. Sockets up to 63 A need a 30 mA RCD, larger ones 300 mA.",
  clauses: ["709.531.2"],
  examples: [
    {
      bad: `way 1 radial "Berth 1" {
  device       BS EN 60898 C40 6 kA
  serves       sockets
  place        marina
  ^^^^^^^^^^^^^^^^^^^
}`,
      good: `way 1 radial "Berth 1" {
  device       BS EN 61009 C40 6 kA 30 mA type A
  serves       sockets
  place        marina
}`,
    },
  ],
  check(study, report) {
    reportMissing(study, report, "marina", "Sockets for boats need");
  },
});
