import { factSpot, wayRule } from "../frame/rule.ts";

export default wayRule({
  id: "design/class-two-with-sockets",
  severity: "error",
  since: "0.1",
  title: "A circuit recorded as class II serves socket-outlets.",
  why: "Anything can be plugged into a socket, and most of it relies on an earth that is not there. A circuit for class II equipment only has neither sockets nor lampholders.",

  clauses: ["412.1.3"],
  examples: [
    {
      bad: `way 1 radial "Bedroom sockets" {
  device       BS EN 61009 B16 6 kA 30 mA type A
  cable        singles  line 2.5 mm²  cpc-by none
  serves       sockets
  class-II     "Owner supervises"
  ^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^
}`,
      good: `way 1 radial "Extractor" {
  device       BS EN 61009 B6 6 kA 30 mA type A
  cable        singles  line 1.5 mm²  cpc-by none
  serves       ventilation
  class-II     "Owner supervises"
}`,
    },
  ],
  check(study, report) {
    const stated = study.facts.one("class-II");
    if (!stated || study.isSpare || !study.servesSockets) return;
    report(factSpot(stated), {
      message:
        "Sockets cannot be limited to class II equipment: anything may be plugged in. Run a protective conductor.",
    });
  },
});
