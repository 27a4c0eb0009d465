import { bondingNeed, placeSpot } from "../../circuit/places.ts";
import { workOf } from "../../circuit/supply.ts";
import { lineAfter } from "../common/writing.ts";
import { boardRule, factSpot } from "../frame/rule.ts";

export default boardRule({
  id: "place/bonding-not-stated",
  severity: "warning",
  since: "0.1",
  title: "Supplementary bonding in agricultural premises or at a pool is not stated.",
  why: "A cow between a drinking trough and a wet floor feels what a person does not. Metal within reach, and any mesh in the floor, is connected by local bonding; record it once on one of the board's ways.",
  clauses: ["702.415.2", "705.415.2.1"],
  examples: [
    {
      bad: `way 1 radial "Milking machine" {
  device       BS EN 61009 C16 6 kA 300 mA type A
  serves       motor
  place        agricultural
  ^^^^^^^^^^^^^^^^^^^^^^^^^
}`,
      good: `way 1 radial "Milking machine" {
  device       BS EN 61009 C16 6 kA 300 mA type A
  serves       motor
  place        agricultural
  supplementary-bonding fitted
}`,
    },
  ],
  check({ studies, context }, report) {
    if (workOf(context) === "existing") return;
    const word = "supplementary-bonding";
    const asked = studies.flatMap((study) => {
      const need = bondingNeed(study);
      return need?.row.facts.omitted === "never" ? [{ study, need }] : [];
    });
    const [first] = asked;
    const onBoard = context.board.facts;
    const isStated = [onBoard, ...studies.map(({ facts }) => facts)].some((facts) => facts.has(word));
    if (!first || isStated) return;
    const spot = placeSpot(first.study, first.need.row.facts.place);
    report(factSpot(spot), {
      message: `${first.need.row.facts.place === "pool" ? "At a pool" : "Where animals are kept"} metal within reach needs supplementary bonding: record on one of the ways whether it is fitted.`,
      source: first.need.source,
      fixes: spot.inner ? [] : [lineAfter(spot, `${word} fitted`)],
    });
  },
});
