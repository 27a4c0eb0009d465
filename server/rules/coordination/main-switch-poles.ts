import { homes } from "../../circuit/circuit-kind.ts";
import { premisesOf } from "../../circuit/supply.ts";
import { isThreePhase } from "../../model/three-lines.ts";
import { boardRule, factSpot } from "../frame/rule.ts";

export default boardRule({
  id: "coordination/main-switch-poles",
  severity: "error",
  since: "0.1",
  title: "A main switch leaves the neutral connected.",
  why: "Whoever switches off believes that everything is dead. In a home, used by people without training, and on a TT supply the neutral is opened as well.",

  clauses: ["462.1.201", "461.2"],
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
    main-switch  BS EN 60947-3 100 A single-pole
    ^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^
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
    main-switch  BS EN 60947-3 100 A double-pole
    way 1 spare
  }
}`,
    },
  ],
  check({ board, context }, report) {
    const main = board.head.facts.one("main-switch");
    const poles = main?.args.poles?.value;
    if (!main || (poles !== "single-pole" && poles !== "three-pole")) return;
    const home = homes.includes(premisesOf(context) ?? "");
    const TT = context.supply?.one("earthing")?.args.system.value === "TT" || board.head.facts.has("earthing");
    // Elsewhere the neutral of a TN system may stay connected where it is reliably at earth.
    if (!TT && !(home && !isThreePhase(context))) return;
    report(factSpot(main), {
      message: `The main switch of board ${board.head.name} does not open the neutral: ${TT ? "with TT" : "in a home"} it must. Fit a ${isThreePhase(context) ? "four-pole" : "double-pole"} switch.`,
      source: { ref: `BS 7671:2018+A2:2022, ${TT ? "461.2" : "462.1.201"}`, standing: "quoted" },
    });
  },
});
