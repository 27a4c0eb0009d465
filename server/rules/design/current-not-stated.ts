import { stageOf } from "../../circuit/supply.ts";
import { wayRule, wordSpot } from "../frame/rule.ts";

export default wayRule({
  id: "design/current-not-stated",
  severity: "warning",
  since: "0.1",
  title: "Neither the load nor the design current is stated.",
  why: "Device, cable and voltage drop all follow from the design current: without it nothing is designed. Write the load as it is on the label, or Ib.",

  clauses: ["311.1", "433.1.1"],
  examples: [
    {
      bad: `way 1 radial "Kiln" {
^^^
  device       BS EN 60898 B32 6 kA
  cable        singles  line 6 mm²  cpc 2.5 mm²
  serves       appliance
}`,
      good: `way 1 radial "Kiln" {
  device       BS EN 60898 B32 6 kA
  cable        singles  line 6 mm²  cpc 2.5 mm²
  serves       appliance
  load         7 kW "Kiln"
}`,
    },
  ],
  check(study, report) {
    const { facts, uses, designCurrent, device, isFinal, context, way } = study;
    if (!isFinal || !device || designCurrent || stageOf(context) !== "design") return;
    if (facts.broken.some((word) => word === "Ib" || word === "load" || word === "serves")) return;
    const [use] = [...uses].filter((one) => fixedLoads.includes(one));
    if (use === undefined) return;
    report(wordSpot(way.header), {
      message: `The load of way ${way.id} is not stated: write load with its power, or Ib.`,
    });
  },
});

/** What has a load of its own. Sockets and lights are designed by convention. */
const fixedLoads: readonly string[] = [
  "cooker",
  "shower",
  "water-heater",
  "heating",
  "floor-heating",
  "motor",
  "heat-pump",
  "ev-charger",
  "appliance",
  "lift",
];
