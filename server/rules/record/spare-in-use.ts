import { wordsWhere } from "../../../grammar/readings.ts";
import { factSpot, wayRule, wordSpot } from "../frame/rule.ts";

/** What only a live circuit has. A device alone may stand ready in a spare way. */
const inUse = wordsWhere("way", (row) => row.inUse === true);

export default wayRule({
  id: "record/spare-in-use",
  severity: "warning",
  since: "0.1",
  title: "A spare way that looks like a circuit, or a circuit called spare.",
  why: "Someone will take a spare way for dead. If a circuit hangs on it, describe it; if not, take its readings out and the cable off the terminals.",
  clauses: ["514.8.1", "514.9.1"],
  examples: [
    {
      bad: `way 9 spare {
  serves  sockets
  ^^^^^^^^^^^^^^^
}
way 10 radial "Spare"
^^^`,
      good: `way 9 radial "Bench sockets" {
  serves  sockets
}
way 10 spare`,
    },
  ],
  check({ way, facts, isSpare }, report) {
    if (!isSpare && /^\s*spare\b/i.test(way.title)) {
      report(wordSpot(way.header), {
        message: `Way ${way.id} is called “${way.title}” but is written as a circuit. Write “way ${way.id} spare” if nothing hangs on it.`,
      });
    }
    if (!isSpare) return;
    const use = facts.list.find((fact) => inUse.includes(fact.word));
    const device = facts.one("device");
    if (use) report(factSpot(use), { message: `Way ${way.id} is spare, but has this. Is it in use?` });
    else if (device)
      report(factSpot(device), {
        severity: "information",
        message: `Way ${way.id} is spare with a device in it. Is nothing connected to it?`,
      });
  },
});
