import { homes } from "../../circuit/circuit-kind.ts";
import { laterRule } from "../../circuit/describe.ts";
import { premisesOf } from "../../circuit/supply.ts";
import { quotedIn } from "../../tables/source.ts";
import { boardRule, factSpot } from "../frame/rule.ts";

export default boardRule({
  id: "design/enclosure-combustible",
  severity: "error",
  since: "0.1",
  title: "The consumer unit of a home is combustible.",
  why: "A loose terminal heats until the board burns, under the stairs by which people leave. Since 2016 the enclosure is of non-combustible material, or stands in a cabinet of it.",

  clauses: ["421.1.201"],
  examples: [
    {
      bad: `wayfile 1
installation "House" {
  standard     BS 7671:2018+A2:2022
  stage        design
  premises     dwelling
  supply {
    earthing     TN-S
    Ze           0.30 Ω
  }
  board A "Board" {
    fed-from     supply
    enclosure    plastic
    ^^^^^^^^^^^^^^^^^^^^
    way 1 spare
  }
}`,
      good: `wayfile 1
installation "House" {
  standard     BS 7671:2018+A2:2022
  stage        design
  premises     dwelling
  supply {
    earthing     TN-S
    Ze           0.30 Ω
  }
  board A "Board" {
    fed-from     supply
    enclosure    steel
    way 1 spare
  }
}`,
    },
    {
      bad: `wayfile 1
installation "Garage" {
  standard     BS 7671:2018+A2:2022
  stage        design
  premises     outbuilding
  board A "Board" {
    fed-from     supply
    enclosure    plastic
    ^^^^^^^^^^^^^^^^^^^^
    way 1 spare
  }
}`,
      good: `wayfile 1
installation "Garage" {
  standard     BS 7671:2018+A2:2022
  stage        design
  premises     outbuilding
  board A "Board" {
    fed-from     supply
    enclosure    cabinet
    way 1 spare
  }
}`,
    },
  ],
  check({ board, context }, report) {
    const enclosure = board.head.facts.one("enclosure");
    const premises = premisesOf(context) ?? "";
    const beside = premises === "outbuilding";
    if (enclosure?.args.made.value !== "plastic" || !(beside || homes.includes(premises))) return;
    if (!context.edition?.nonCombustibleUnits) return;
    const later = laterRule(context);
    // A garage or shed belongs to the home as far as a fire there would reach it, which no schedule shows.
    const severity = later.severity ?? (beside ? "warning" : undefined);
    report(factSpot(enclosure), {
      message: beside
        ? `Board ${board.head.name} is of plastic: where a fire there could reach a home it is usually of steel, as in the home itself.${later.words}`
        : `Board ${board.head.name} is of plastic: in a home it must be of steel, or stand in a cabinet that does not burn.${later.words}`,
      source: beside
        ? { ref: "Common practice, 421.1.201 applied to buildings close to a home", standing: "practice" }
        : quotedIn("421.1.201"),
      ...(severity ? { severity } : {}),
    });
  },
});
