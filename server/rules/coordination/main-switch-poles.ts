import { homes } from "../../circuit/circuit-kind.ts";
import { premisesOf } from "../../circuit/supply.ts";
import { isThreePhase } from "../../model/three-lines.ts";
import { quotedIn } from "../../tables/source.ts";
import { boardRule, factSpot, type Severity } from "../frame/rule.ts";

export default boardRule({
  id: "coordination/main-switch-poles",
  severity: "error",
  since: "0.1",
  title: "A main switch leaves a live conductor connected.",
  why: "Whoever switches off believes that everything is dead. Every line is opened by one linked switch. Where people without training operate it, as in a home, and on a TT supply the neutral is opened as well.",
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
    if (!main || poles === undefined) return;
    const three = isThreePhase(context);
    const fit = `Fit a ${three ? "four-pole" : "double-pole"} switch.`;
    const add = (message: string, ref: string, severity?: Severity) =>
      report(factSpot(main), {
        message: `The main switch of board ${board.head.name} ${message}`,
        source: quotedIn(ref),
        ...(severity ? { severity } : {}),
      });
    const lines = three && (poles === "single-pole" || poles === "double-pole");
    if (lines) return add(`has too few poles for three lines: one stays live. ${fit}`, "462.1.201");
    if (poles !== "single-pole" && poles !== "three-pole") return;
    const neutral = "does not open the neutral:";
    const TT = context.supply?.one("earthing")?.args.system.value === "TT" || board.head.facts.has("earthing");
    if (TT) return add(`${neutral} with TT it must. ${fit}`, "461.2");
    // Elsewhere the neutral of a TN system may stay connected where it is reliably at earth.
    if (three) return;
    if (ordinary.has(premisesOf(context) ?? "")) return add(`${neutral} in a home it must. ${fit}`, "462.1.201");
    // The switch of the whole installation; that of a board behind it isolates for those who work there.
    if (board.head.facts.one("fed-from")?.args.from.value !== "supply") return;
    add(`${neutral} it must wherever untrained persons operate it. ${fit}`, "462.1.201", "warning");
  },
});

/** Premises in which people without training switch off. */
const ordinary: ReadonlySet<string> = new Set([...homes, "student", "tall-residential", "outbuilding"]);
