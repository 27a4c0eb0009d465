import { exceeds } from "../../calc/compare.ts";
import { resistancePerMetre } from "../../calc/conductor-resistance.ts";
import { milliohms, relation, squareMillimetres } from "../../calc/result.ts";
import { conductorPerMetre } from "../../circuit/cpc.ts";
import { laterRule } from "../../circuit/describe.ts";
import { pmeBondingNeed } from "../../readings/earthing.ts";
import { combine } from "../../tables/source.ts";
import { factSpot, wayRule } from "../frame/rule.ts";

const sample = (cable: string) => `wayfile 1
installation "House" {
  standard     BS 7671:2018+A2:2022
  premises     dwelling
  supply {
    earthing     TN-C-S
    Ze           0.25 Ω
    tails        25 mm²
  }
  board A "Hall" {
    fed-from     supply
    way 1 feeder "Garage" {
      device       BS 88-2 40 A
      feeds        G
      cable        ${cable}
      route        buried  method D
      length       20 m
    }
  }
  board G "Garage" {
    fed-from     A
  }
}`;

const thin = "armoured 90 °C  line 6 mm²  cpc-by armour  cores 3";

export default wayRule({
  id: "protective/outbuilding-bonding",
  severity: "information",
  since: "0.1",
  title: "A PME earth goes to another building in a conductor too small to bond its metal.",
  why: "Pipes or structural metal that enter the other building are bonded there, and with the PEN conductor open the current of other consumers flows through that bonding and back in this cable. So it is as large as a main bonding conductor, or the building has an electrode of its own, or nothing extraneous enters it.",
  clauses: ["411.3.1.2", "544.1.1", "542.1.3.3"],
  examples: [
    {
      bad: sample(thin).replace(thin, `${thin}\n      ${"^".repeat(13 + thin.length)}`),
      good: sample("armoured 90 °C  line 10 mm²  cpc 10 mm²  cores 3"),
    },
    {
      bad: sample(thin).replace(thin, `${thin}\n      ${"^".repeat(13 + thin.length)}`),
      good: sample(thin).replace("fed-from     A", "fed-from     A\n    earthing     TT"),
    },
  ],
  check(study, report) {
    const { cable, supply, context, facts } = study;
    const fed = facts.one("feeds");
    const outside = facts.all("route").some(({ args }) => args.kind?.value === "buried" || args.kind?.value === "duct");
    if (!cable || !fed || !outside || supply.earthing !== "TN-C-S" || !context.supply || !context.edition) return;
    // One with an electrode of its own has left the earth of the supply behind.
    if (context.names.boards.get(fed.args.board.value)?.some(({ ownEarth }) => ownEarth)) return;
    const need = pmeBondingNeed(context.supply);
    const copper = need && resistancePerMetre(need.value);
    const own = conductorPerMetre(cable, "cpc");
    if (!need || !copper || !own || !exceeds(own.value, copper.value)) return;
    const later = laterRule(study);
    report(factSpot(cable.fact), {
      message: `If pipes or structural metal enter where board ${fed.args.board.value} is, they are bonded through this cable, which on PME must be as good as ${squareMillimetres(need.value)} of copper. Run a bonding conductor beside it, or give that board an electrode of its own.${later.words}`,
      steps: [
        ...need.steps,
        ...own.steps,
        relation(
          `r of the protective conductor ≤ r of ${squareMillimetres(need.value)} copper, per metre`,
          milliohms(own.value),
          milliohms(copper.value),
        ),
      ],
      source: combine(need.source, own.source),
    });
  },
});
