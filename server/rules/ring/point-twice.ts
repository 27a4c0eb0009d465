import { runReaching } from "../../readings/spurs.ts";
import { relatedFact } from "../common/dead-words.ts";
import { valueSpot, wayRule } from "../frame/rule.ts";

export default wayRule({
  id: "ring/point-twice",
  severity: "warning",
  since: "0.1",
  title: "A run reaches a point that an earlier run already reaches.",
  why: "Two cables to one point, besides the ring itself, make a figure of eight: a break inside it does not show at the ends. If two points only share a name, give one of them another.",
  clauses: ["433.1.204"],
  examples: [
    {
      bad: `way 1 ring "Sockets" {
  run          A 7 m S1 6 m S2 9 m S3 8 m A
  run          S1 5 m S3
                      ^^
}`,
      good: `way 1 ring "Sockets" {
  run          A 7 m S1 6 m S2 9 m S3 8 m A
  run          S1 5 m S4
}`,
    },
    {
      bad: `way 1 ring "Sockets" {
  run          A 7 m S1 6 m S2 9 m S1 8 m A
                                   ^^
}`,
      good: `way 1 ring "Sockets" {
  run          A 7 m S1 6 m S2 9 m S3 8 m A
}`,
    },
  ],
  check(study, report) {
    const { runs } = study;
    if (!runs || study.facts.isUnread("run")) return;
    for (const name of runs.twice) {
      const fact = runReaching(study, name);
      if (!fact) continue;
      const path = fact.args.path;
      const main = path === runs.paths[0];
      const before = runs.places.get(name.value);
      const earlier = before && runReaching(study, before.name);
      report(valueSpot(fact, name), {
        message: main
          ? `The run passes ${name.value} twice: give each point its own name.`
          : `${name.value} is reached already, so a cable from ${path.from.value} would bridge the circuit: take it out, or rename the point.`,
        related: earlier ? [relatedFact(earlier, `${name.value} is on this run already.`)] : [],
      });
    }
  },
});
