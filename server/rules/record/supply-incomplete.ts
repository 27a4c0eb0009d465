import { earthings } from "../../../grammar/choices.ts";
import { boardImpedance } from "../../circuit/board-impedance.ts";
import { faultsNoted, faultsNotedAtOrigin } from "../../circuit/faults.ts";
import { liveTestsDue, stageOf } from "../../circuit/supply.ts";
import type { Installation } from "../../model/installation.ts";
import { type Facts, isCalledNotApplicable } from "../../model/values.ts";
import { listed } from "../common/dead-words.ts";
import { lineInBlock } from "../common/writing.ts";
import { factSpot, installationRule, wordSpot } from "../frame/rule.ts";

/**
 * What every limit here rests on. In TT the electrode takes the place of Ze, and fault currents may be those of the board
 * at the origin. The boards downstream have a check of their own.
 */
function missing(supply: Facts<"supply">, boards: Installation["boards"]): string[] {
  const TT = supply.one("earthing")?.args.system.value === "TT";
  return [
    ...(supply.has("earthing") ? [] : ["earthing"]),
    ...(isGiven(supply, "Ze", boards) || (TT && isGiven(supply, "electrode", boards)) ? [] : [TT ? "electrode" : "Ze"]),
    ...(needsFault(supply, boards) ? ["Ipf"] : []),
  ];
}

/** “Not applicable” gives no figure, and may stand only where a board has its own by which circuits are judged. */
function isGiven(supply: Facts<"supply">, word: "Ze" | "electrode", boards: Installation["boards"]): boolean {
  if (!isCalledNotApplicable(supply.one(word)?.args.value)) return supply.has(word);
  return boards.every(
    ({ board, context }) =>
      board.head.facts.one("fed-from")?.args.from.value !== "supply" || boardImpedance(context)?.name === "Zdb",
  );
}

function needsFault(supply: Facts<"supply">, boards: Installation["boards"]): boolean {
  const [first] = boards;
  if (supply.has("transformer") || faultsNotedAtOrigin(supply)) return false;
  // Between the two it is not required: it is declared for the design, and measured with the supply on.
  const due =
    first !== undefined && ["design", "tested"].includes(stageOf({ installation: first.context.installation }));
  return due && !boards.some(({ context }) => faultsNoted(context));
}

function remedy(lacking: readonly string[], tested: boolean): string {
  const [first] = lacking;
  if (first === "earthing" && lacking.length === 1) return "inspect the earthing at the origin, and record it here";
  return tested ? "measure, or write LIM with the reason" : "ask the distributor and mark it declared";
}

export default installationRule({
  id: "record/supply-incomplete",
  severity: "error",
  since: "0.1",
  title: "The supply is not fully described.",
  why: "The earthing, Ze and the fault current decide whether devices disconnect in time and can break the fault. Without them the circuits are not judged. By enquiry is enough for a design: mark it declared.",
  clauses: ["313.1", "312.2", "434.1", "132.2"],
  examples: [
    {
      setting: { supply: "earthing TN-S\nZe 0.30 Ω" },
      bad: `wayfile 1
installation "Kiln house" {
  standard     BS 7671:2018+A2:2022
  stage        design
  supply {
  ^^^^^^
    earthing     TN-S
  }
}`,
      good: `wayfile 1
installation "Kiln house" {
  standard     BS 7671:2018+A2:2022
  stage        design
  supply {
    earthing     TN-S
    Ze           declared 0.8 Ω
    Ipf          declared 16 kA
  }
}`,
    },
  ],
  check({ head, supply, boards }, report) {
    const fact = head.facts.one("supply");
    if (!fact || !supply) {
      if (head.facts.has("supply") || boards.length === 0) return;
      report(wordSpot(head.header), {
        message:
          "The supply is not described: write its earthing, Ze and fault current, by which every circuit is judged.",
      });
      return;
    }
    const lacking = missing(supply, boards);
    if (lacking.length === 0) return;
    const [first] = boards;
    const tested = first !== undefined && liveTestsDue({ installation: first.context.installation });
    report(factSpot(fact), {
      message: `The supply lacks ${listed(lacking)}, so its circuits cannot be judged: ${remedy(lacking, tested)}.`,
      // Without the earthing no loop is judged at all, as without an edition nothing is.
      ...(lacking.includes("earthing") ? {} : { severity: "warning" }),
      fixes: lacking.includes("earthing")
        ? Object.keys(earthings).flatMap((system) => lineInBlock(fact, `earthing ${system}`))
        : [],
    });
  },
});
