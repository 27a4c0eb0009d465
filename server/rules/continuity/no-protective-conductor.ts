import { needsNoCpc } from "../../circuit/circuit-kind.ts";
import { makes } from "../../circuit/constructions.ts";
import { workOf } from "../../circuit/supply.ts";
import type { WayStudy } from "../../circuit/way.ts";
import { factSpot, wayRule } from "../frame/rule.ts";

export default wayRule({
  id: "continuity/no-protective-conductor",
  severity: "error",
  since: "0.1",
  title: "A circuit without a protective conductor is not limited to class II equipment.",
  why: "Metal switches and luminaires on such a circuit become live in a fault and stay live. Run a protective conductor to every point; an old circuit without one may supply class II equipment only, and a notice at the board says so.",
  opens: true,
  clauses: ["411.3.1.1", "412.2.3.2"],
  examples: [
    {
      bad: `way 1 radial "Old lights" {
  cable        singles  line 1.5 mm²  cpc-by none
  ^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^
  serves       lighting
}`,
      good: `way 1 radial "Old lights" {
  cable        singles  line 1.5 mm²  cpc-by none
  serves       lighting
  class-II     "Plastic accessories and class II lights only; label at the board"
}`,
    },
  ],
  check(study, report) {
    const { cable, facts } = study;
    if (cable?.cpcBy !== "none" || study.isSpare || facts.has("class-II") || needsNoCpc(study)) return;
    if (feedsOwnEarth(study)) return;
    report(factSpot(cable.fact), {
      message: `This circuit has no protective conductor and is not limited to class II: ${workOf(study) === "existing" ? "run one, or record class-II where all equipment is" : "run one to every point"}.`,
      related: facts.one("serves")
        ? [{ spot: factSpot(facts.one("serves") ?? cable.fact), message: "The use of the circuit." }]
        : [],
    });
  },
});

/**
 * A line to a board with an electrode of its own: nothing on its way is exposed, unless its cable has metal round it, and
 * the earth behind it is another.
 */
function feedsOwnEarth({ isFeeder, facts, context, cable }: WayStudy): boolean {
  const fed = facts.one("feeds")?.args.board.value;
  if (!isFeeder || fed === undefined || !cable || makes[cable.construction].inMetal) return false;
  return context.names.boards.get(fed)?.some(({ ownEarth }) => ownEarth) ?? false;
}
