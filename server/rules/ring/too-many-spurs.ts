import { plain, step } from "../../calc/result.ts";
import { ringRule } from "../../calc/ring.ts";
import type { WayStudy } from "../../circuit/way.ts";
import type { Fact } from "../../model/values.ts";
import { unfusedSpurs } from "../../readings/spurs.ts";
import { relatedFact } from "../common/dead-words.ts";
import { amount, factSpot, wayRule } from "../frame/rule.ts";

export default wayRule({
  id: "ring/too-many-spurs",
  severity: "warning",
  since: "0.1",
  title: "A ring has more unfused spurs than points on the ring.",
  why: "The 32 A device depends on the load being shared between two legs, and a ring with mostly spurs has lost that. Take some of the spurs into the ring, or feed them through a fused connection unit.",
  clauses: ["433.1.204"],
  examples: [
    {
      bad: `way 1 ring "Sockets" {
  run          A 7 m S1 8 m A
  run          S1 4 m X1
  run          S1 3 m X2
  ^^^^^^^^^^^^^^^^^^^^^^
}`,
      good: `way 1 ring "Sockets" {
  run          A 7 m S1 6 m S2 8 m A
  run          S1 4 m X1
  run          S2 3 m X2
}`,
    },
    {
      bad: `way 1 ring "Sockets" {
  points       7
  spurs        4
  ^^^^^^^^^^^^^^
}`,
      good: `way 1 ring "Sockets" {
  points       8
  spurs        4
}`,
    },
  ],
  check(study, report) {
    if (!study.isRing) return;
    const count = drawn(study) ?? stated(study);
    const rule = ringRule("spurs-per-point");
    if (!count || count.onRing < 1) return;
    const limit = count.onRing * rule.value;
    if (count.spurs <= limit) return;
    report(factSpot(count.fact), {
      message: `${count.spurs} unfused spurs on a ring of ${plain(count.onRing)} ${count.onRing === 1 ? "point" : "points"}: no more spurs than points is usual, so take some into the ring.`,
      value: amount(count.spurs, "spurs"),
      limit: amount(limit, "spurs"),
      steps: [...rule.steps, step("points on the ring", "", plain(count.onRing))],
      source: rule.source,
      related: count.others.map((fact) => relatedFact(fact, "Used for the count of points and spurs.")),
    });
  },
});

interface Count {
  readonly spurs: number;
  readonly onRing: number;
  readonly fact: Fact;
  readonly others: readonly Fact[];
}

function drawn(study: WayStudy): Count | undefined {
  const { runs } = study;
  if (!runs?.closed || study.facts.isUnread("run")) return undefined;
  const spurs = unfusedSpurs(study).filter(({ offSpur }) => !offSpur);
  const fact = spurs.at(-1)?.fact;
  const onRing = [...runs.places.values()].filter(({ onMain }) => onMain).length;
  return fact && { spurs: spurs.length, onRing, fact, others: study.facts.all("run").filter((run) => run !== fact) };
}

/** `points` counts all of them, `spurs` those of them that are not on the ring. */
function stated({ facts }: WayStudy): Count | undefined {
  const points = facts.one("points");
  const spurs = facts.one("spurs");
  if (!points || !spurs) return undefined;
  const onRing = points.args.count.value - spurs.args.count.value;
  return { spurs: spurs.args.count.value, onRing, fact: spurs, others: [points] };
}
