import { wordsWhere } from "../../../grammar/readings.ts";
import { factSpot, wayRule, wordSpot } from "../frame/rule.ts";

/** What only a circuit in use has. A device alone may be in a spare way. */
const inUse = wordsWhere("way", (row) => row.inUse === true);

export default wayRule({
  id: "record/spare-in-use",
  severity: "warning",
  since: "0.1",
  title: "A way marked spare has the data of a circuit, or a circuit is titled “spare”.",
  why: "Someone will take a spare way for dead. If a circuit is connected to it, describe it; if not, remove its readings, and have the cable disconnected from the terminals.",
  opens: true,
  clauses: ["514.8.1", "514.9.1"],
  examples: [
    {
      bad: `way 9 spare {
  serves       sockets
  ^^^^^^^^^^^^^^^^^^^^
}
way 10 radial "Spare"
^^^`,
      good: `way 9 radial "Bench sockets" {
  serves       sockets
}
way 10 spare`,
    },
  ],
  check({ way, facts, isSpare }, report) {
    if (!isSpare && /^\s*spare\b/i.test(way.title)) {
      report(wordSpot(way.header), {
        message: `Way ${way.id} is titled “${way.title}” but written as a circuit: write “way ${way.id} spare” if nothing is connected to it.`,
      });
    }
    if (!isSpare) return;
    const use = facts.list.find((fact) => inUse.includes(fact.word));
    const device = facts.one("device");
    if (use)
      report(factSpot(use), {
        message: `Way ${way.id} is marked spare but has “${use.word}”: is it in use?`,
      });
    else if (device)
      report(factSpot(device), {
        severity: "information",
        message: `Way ${way.id} is marked spare and has a device: check that nothing is connected to it.`,
      });
  },
});
