import { reportMissing } from "../common/additional.ts";
import { wayRule } from "../frame/rule.ts";

export default wayRule({
  id: "place/agricultural-without-rcd",
  severity: "error",
  since: "0.1",
  title: "A circuit in agricultural premises is not protected by the RCD it needs.",
  why: "A few volts are dangerous to livestock, and straw burns: sockets up to 32 A need a 30 mA RCD, larger ones 100 mA, and every other circuit 300 mA at most.",
  clauses: ["705.411.1"],
  examples: [
    {
      bad: `way 1 radial "Grain dryer" {
  device       BS EN 60898 C20 6 kA
  serves       motor
  place        agricultural
  ^^^^^^^^^^^^^^^^^^^^^^^^^
}`,
      good: `way 1 radial "Grain dryer" {
  device       BS EN 61009 C20 6 kA 300 mA type A
  serves       motor
  place        agricultural
}`,
    },
  ],
  check(study, report) {
    reportMissing(study, report, "agricultural", "Circuits where animals are kept or crops handled need");
  },
});
