import { placeSpot } from "../../circuit/places.ts";
import { factSpot, wayRule } from "../frame/rule.ts";

export default wayRule({
  id: "place/medical-not-checked",
  severity: "information",
  since: "0.1",
  title: "Medical locations are not checked.",
  why: "Section 710 has requirements of its own: groups of locations, medical IT, supplementary bonding, 25 V touch voltage. Nothing here judges them, so that no finding is no pass.",

  clauses: ["710"],
  examples: [
    {
      bad: `way 1 radial "Treatment room" {
  device       BS EN 61009 B20 6 kA 30 mA type A
  serves       sockets
  place        medical
  ^^^^^^^^^^^^^^^^^^^^
}`,
      good: `way 1 radial "Waiting room" {
  device       BS EN 61009 B20 6 kA 30 mA type A
  serves       sockets
}`,
    },
  ],
  check(study, report) {
    if (study.isSpare || !study.places.has("medical")) return;
    report(factSpot(placeSpot(study, "medical")), {
      message: "Section 710 is not checked here: have this circuit judged by someone who knows medical locations.",
    });
  },
});
