import { reportMissing } from "../common/additional.ts";
import { wayRule } from "../frame/rule.ts";

export default wayRule({
  id: "place/mobile-unit-without-rcd",
  severity: "error",
  since: "0.1",
  title: "A circuit of a mobile or transportable unit is not protected by a 30 mA RCD.",
  why: "The connector and its flexible cable are dragged, driven over and lie in the wet, and nobody knows how good the earth is where the unit stands next. An RCD disconnects where that earth is poor.",
  clauses: ["717.411.1", "717.415", "415.1.1"],
  examples: [
    {
      bad: `way 1 radial "Serving hatch sockets" {
  device       BS EN 60898 C40 6 kA
  serves       sockets
  place        mobile-unit
  ^^^^^^^^^^^^^^^^^^^^^^^^
}`,
      good: `way 1 radial "Serving hatch sockets" {
  device       BS EN 61009 C40 6 kA 30 mA type A
  serves       sockets
  place        mobile-unit
}`,
    },
  ],
  check(study, report) {
    const sockets = study.servesSockets;
    const what = sockets ? "Sockets of a mobile unit need" : "Circuits of a mobile unit, or the supply to it, need";
    reportMissing(study, report, "mobile-unit", what, () => (sockets ? {} : { most: "warning" }));
  },
});
