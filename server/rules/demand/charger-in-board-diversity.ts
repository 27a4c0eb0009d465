import { exceeds } from "../../calc/compare.ts";
import { percent } from "../../calc/result.ts";
import type { WayStudy } from "../../circuit/way.ts";
import { ruleAlone } from "../../tables/source.ts";
import { boardRule, factSpot } from "../frame/rule.ts";

const sample = (more = "") => `wayfile 1
installation "Car park" {
  standard     BS 7671:2018+A2:2022
  board C "Charging points" {
    fed-from     supply
    diversity    50 %
    way 1 radial "Bay 1" {
      serves       ev-charger${more}
      Ib           32 A
    }
    way 2 radial "Bay 2" {
      serves       ev-charger${more}
      Ib           32 A
    }
  }
}`;

export default boardRule({
  id: "demand/charger-in-board-diversity",
  severity: "warning",
  since: "0.1",
  title: "The diversity of a board counts charging points in part without load control.",
  why: "Cars charge for hours, and all of them at night: a board of charging points draws what they come to. Each counts in full unless something limits them together.",
  clauses: ["722.311.201"],
  examples: [
    {
      bad: sample().replace("diversity    50 %\n", "diversity    50 %\n    ^^^^^^^^^^^^^^^^^\n"),
      good: sample('\n      load-control "Shares 32 A among the bays"'),
    },
  ],
  check({ context, studies }, report) {
    const diversity = context.board.facts.one("diversity");
    if (!diversity || diversity.args.share.value >= 100) return;
    const chargers = studies.filter(countsInFull);
    const [first] = chargers;
    // As long as what is taken has room for them in full, the others may be what is spread.
    const taken = (currentOf(studies) * diversity.args.share.value) / 100;
    if (!first || !exceeds(currentOf(chargers), taken)) return;
    const which =
      chargers.length === 1
        ? `the charging point of way ${first.way.id} counts`
        : `the charging points of ${chargers.length} ways count`;
    report(factSpot(diversity), {
      message: `The load of this board is taken as ${percent(diversity.args.share.value)}, and ${which} in full unless the load is controlled: write load-control there, or give each of the other circuits its own diversity.`,
      source: ruleAlone({ ref: "BS 7671:2018+A2:2022, 722.311.201", standing: "memory" }),
      related: chargers.slice(0, 8).flatMap(({ way, facts }) => {
        const serves = facts.one("serves");
        return serves ? [{ spot: factSpot(serves), message: `Way ${way.id}: a charging point.` }] : [];
      }),
    });
  },
});

/** A charging point whose load nothing limits, as far as it is written. */
const countsInFull = ({ facts, uses, isFinal }: WayStudy): boolean =>
  isFinal && uses.has("ev-charger") && !facts.has("load-control") && !facts.isUnread("load-control");

const currentOf = (studies: readonly WayStudy[]): number =>
  studies.reduce((sum, { designCurrent, isFinal }) => sum + (isFinal ? (designCurrent?.value ?? 0) : 0), 0);
