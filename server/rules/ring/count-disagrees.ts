import { unfusedSpurs } from "../../readings/spurs.ts";
import { relatedFact } from "../common/dead-words.ts";
import { inPlaceOf } from "../common/writing.ts";
import { amount, factSpot, wayRule } from "../frame/rule.ts";

export default wayRule({
  id: "ring/count-disagrees",
  severity: "warning",
  since: "0.1",
  title: "The number of points or spurs does not agree with the runs.",
  why: "One of the two is out of date: a point was added to the cable or to the count and not to the other. A point that is not drawn may not be tested.",
  clauses: [],
  examples: [
    {
      bad: `way 1 ring "Sockets" {
  run          A 7 m S1 6 m S2 8 m A
  run          S1 4 m X1
  points       5
  ^^^^^^^^^^^^^^
  spurs        1
}`,
      good: `way 1 ring "Sockets" {
  run          A 7 m S1 6 m S2 8 m A
  run          S1 4 m X1
  points       3
  spurs        1
}`,
    },
  ],
  check(study, report) {
    const { runs, facts } = study;
    const [first] = facts.all("run");
    if (!study.isRing || !runs?.closed || !first || facts.isUnread("run")) return;
    if (runs.detached.length > 0 || runs.twice.length > 0) return;
    const related = [relatedFact(first, "The first run of the circuit.")];
    const points = facts.one("points");
    if (points && points.args.count.value !== runs.places.size) {
      report(factSpot(points), {
        message: `The points are stated as ${points.args.count.value}, but the runs reach ${runs.places.size}: which is right?`,
        value: amount(points.args.count.value, "points"),
        limit: amount(runs.places.size, "points"),
        related,
        fixes: [inPlaceOf(points.args.count, String(runs.places.size), `Write ${runs.places.size}`)],
      });
    }
    const spurs = facts.one("spurs");
    const drawn = unfusedSpurs(study).length;
    if (spurs && spurs.args.count.value !== drawn) {
      report(factSpot(spurs), {
        message: `The spurs are stated as ${spurs.args.count.value}, but the runs have ${drawn === 1 ? "1 point on an unfused spur" : `${drawn} points on unfused spurs`}: which is right?`,
        value: amount(spurs.args.count.value, "spurs"),
        limit: amount(drawn, "spurs"),
        related,
        fixes: [inPlaceOf(spurs.args.count, String(drawn), `Write ${drawn}`)],
      });
    }
  },
});
