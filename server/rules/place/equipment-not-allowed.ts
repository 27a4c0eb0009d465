import { laterRule } from "../../circuit/describe.ts";
import { equipmentNotAllowed, placeSpot } from "../../circuit/places.ts";
import { factSpot, wayRule } from "../frame/rule.ts";

export default wayRule({
  id: "place/equipment-not-allowed",
  severity: "error",
  since: "0.1",
  title: "Equipment stands where a special location does not allow it.",
  why: "In zone 1 of a bath or shower only equipment made for it is fixed: showers and their pumps, water heaters, fans, towel rails and lights. A shaver unit stands in the spray there, and whoever uses a machine stands in water. A sauna has no sockets: what would be plugged in is not made for its heat and steam.",
  clauses: ["701.512.3", "701.55", "703.537.5"],
  examples: [
    {
      bad: `way 1 radial "Shaver socket" {
  device       BS EN 61009 B6 6 kA 30 mA type A
  serves       shaver
  place        bathroom  zone 1
  ^^^^^^^^^^^^^^^^^^^^^^^^^^^^^
}`,
      good: `way 1 radial "Shaver socket" {
  device       BS EN 61009 B6 6 kA 30 mA type A
  serves       shaver
  place        bathroom  zone 2
}`,
    },
    {
      bad: `way 1 radial "Sauna socket" {
  device       BS EN 61009 B16 6 kA 30 mA type A
  serves       sockets
  place        sauna
  ^^^^^^^^^^^^^^^^^^
}`,
      good: `way 1 radial "Sauna heater" {
  device       BS EN 60898 B16 6 kA
  serves       heating
  place        sauna
}`,
    },
  ],
  check(study, report) {
    const found = equipmentNotAllowed(study);
    if (!found) return;
    const { place, zone, what, instead } = found.row.facts;
    const later = laterRule(study);
    report(factSpot(placeSpot(study, place)), {
      message: `${what} is not allowed in ${zone === "" ? `a ${place}` : `zone ${zone} of a bath or shower`}: fit it ${instead}.${later.words}`,
      source: found.source,
      ...(later.severity ? { severity: later.severity } : {}),
    });
  },
});
