import { reportMissing } from "../common/additional.ts";
import { wayRule } from "../frame/rule.ts";

export default wayRule({
  id: "rcd/missing-for-sockets",
  severity: "error",
  since: "0.1",
  title: "Socket-outlets are not protected by a 30 mA RCD.",
  why: "An RCD protects a person from faulty equipment and damaged flexes. It may be omitted only where the regulation in force allows it, such as for skilled or instructed persons.",
  clauses: ["411.3.3", "415.1.1"],
  examples: [
    {
      bad: `way 1 ring "Sockets" {
  device       BS EN 60898 B32 6 kA
  serves       sockets
  ^^^^^^^^^^^^^^^^^^^^
}`,
      good: `way 1 ring "Sockets" {
  device       BS EN 61009 B32 6 kA 30 mA type A
  serves       sockets
}`,
    },
    {
      setting: { standard: "BS 7671:2008" },
      bad: `way 1 radial "Sockets" {
  device       BS EN 60898 B20 6 kA
  serves       sockets
  ^^^^^^^^^^^^^^^^^^^^
}`,
      good: `way 1 radial "Sockets" {
  device       BS EN 60898 B32 6 kA
  serves       sockets
}`,
    },
  ],
  check(study, report) {
    reportMissing(study, report, "sockets", "Socket-outlets of this rating need");
  },
});
