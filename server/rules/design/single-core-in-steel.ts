import { factSpot, wayRule } from "../frame/rule.ts";

export default wayRule({
  id: "design/single-core-in-steel",
  severity: "error",
  since: "0.1",
  title: "A single-core cable has steel wire armour on a.c.",
  why: "The field of one core alone is not cancelled: eddy currents heat the steel. Single-core cables have aluminium armour or none.",

  clauses: ["521.5.2"],
  examples: [
    {
      bad: `way 1 feeder "Riser" {
  device       BS 88-2 250 A
  cable        armoured 90 °C  line 120 mm²  cores 1
  ^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^
}`,
      good: `way 1 feeder "Riser" {
  device       BS 88-2 250 A
  cable        armoured 90 °C  line 120 mm²  cores 4
}`,
    },
  ],
  check({ cable, isSpare }, report) {
    if (!cable || isSpare || cable.construction !== "armoured" || cable.cores !== 1) return;
    report(factSpot(cable.fact), {
      message:
        "A single-core cable with steel wire armour heats on a.c.: use a multicore cable, or single cores with aluminium armour.",
    });
  },
});
