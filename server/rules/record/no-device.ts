import { wayRule, wordSpot } from "../frame/rule.ts";

export default wayRule({
  id: "record/no-device",
  severity: "warning",
  since: "0.1",
  title: "The protective device of a circuit is not described.",
  why: "Without the device nothing else of the circuit can be judged: not the cable, not the loop impedance, not the fault current.",
  clauses: ["514.9.1", "533.1"],
  examples: [
    {
      bad: `way 1 radial "Oven" {
^^^
  length       12 m
}`,
      good: `way 1 radial "Oven" {
  device       BS EN 60898 B32 6 kA
  length       12 m
}`,
    },
  ],
  check(study, report) {
    const { way, facts, isSpare, isBare } = study;
    // A way without its number is reported as that; one of which nothing else can be read may be spare.
    if (isSpare || way.id === "" || facts.has("device") || (isBare && way.header.misread)) return;
    report(wordSpot(way.header), {
      message: `The device of way ${way.id} is not described: write its standard, type, rating and breaking capacity as marked on it.`,
    });
  },
});
