import { distance } from "fastest-levenshtein";
import { runOf } from "../../readings/spurs.ts";
import { relatedFact } from "../common/dead-words.ts";
import { inPlaceOf } from "../common/writing.ts";
import { valueSpot, wayRule } from "../frame/rule.ts";

export default wayRule({
  id: "ring/run-detached",
  severity: "warning",
  since: "0.1",
  title: "A run begins where no earlier run arrives.",
  why: "A spur or branch begins at the board or at a point that a run above reaches. One that is not connected has no length back to the board, so nothing on it can be judged.",
  clauses: [],
  examples: [
    {
      bad: `way 1 ring "Sockets" {
  run          A 7 m S1 6 m S2 8 m A
  run          S7 4 m S3
               ^^
}`,
      good: `way 1 ring "Sockets" {
  run          A 7 m S1 6 m S2 8 m A
  run          S2 4 m S3
}`,
    },
  ],
  check(study, report) {
    const { runs } = study;
    if (!runs || study.facts.isUnread("run")) return;
    const names = [runs.board, ...runs.places.keys()];
    for (const path of runs.detached) {
      const fact = runOf(study, path);
      const first = study.facts.all("run")[0];
      if (!fact || !first) continue;
      const near = names.filter((name) => distance(name, path.from.value) === 1).slice(0, 3);
      report(valueSpot(fact, path.from), {
        message: `No earlier run reaches ${path.from.value}: begin this one at ${runs.board} or at a point that is reached.`,
        related: [relatedFact(first, "The first run of the circuit.")],
        fixes: near.map((name) => inPlaceOf(path.from, name, `Begin it at ${name}`)),
      });
    }
  },
});
