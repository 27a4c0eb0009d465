import { deadTestsDue } from "../../circuit/supply.ts";
import type { Context } from "../../model/installation.ts";
import { ruleAlone } from "../../tables/source.ts";
import { bondingWithTests } from "../common/bonding.ts";
import { factSpot, installationRule } from "../frame/rule.ts";

const sample = (more: string) => `wayfile 1
installation "Serving trailer" {
  standard     BS 7671:2018+A2:2022
  stage        tested
  supply {
    earthing     TN-S${more}
  }
  board A "Trailer" {
    fed-from     supply
    place        mobile-unit
  }
}`;

/** The line that says the board is that of a unit which is supplied by itself. */
function unitLine({ board, upstream }: Context) {
  const place = board.facts.one("place");
  const unit = upstream.length === 0 && place?.args.places.some(({ value }) => value === "mobile-unit");
  return unit ? place : undefined;
}

export default installationRule({
  id: "place/chassis-not-bonded",
  severity: "warning",
  since: "0.1",
  title: "The chassis of a mobile or transportable unit is not recorded as bonded.",
  why: "A fault inside makes the whole body of the unit live, and people step into it from the ground. Its chassis and frame are connected to its main earthing terminal.",
  clauses: ["717.411.3.1.2", "544.1"],
  examples: [
    {
      bad: sample("").replace("mobile-unit", "mobile-unit\n    ^^^^^^^^^^^^^^^^^^^^^^^^"),
      good: sample("\n    bonding      structure 10 mm²"),
    },
  ],
  check({ supply, boards, head }, report) {
    const [first] = boards;
    const fact = head.facts.one("supply");
    const place = first && unitLine(first.context);
    if (!first || !place || !fact || !supply || supply.isUnread("bonding")) return;
    if (first.context.edition?.id === "BS 7671:2001" || !deadTestsDue({ installation: first.context.installation }))
      return;
    const bonded = supply.all("bonding").some(({ args }) => ["structure", "none"].includes(args.service.value));
    if (bonded || bondingWithTests({ boards })) return;
    report(factSpot(place), {
      message: `Bonding of the chassis is not recorded: write bonding structure in the supply with its size, or bonding none with the reason, such as a body of plastic.`,
      source: ruleAlone({ ref: "BS 7671:2018+A2:2022, 717.411.3.1.2", standing: "memory" }),
    });
  },
});
