import { earthings } from "../../../grammar/choices.ts";
import { faultsNoted } from "../../circuit/faults.ts";
import { liveTestsDue, stageOf } from "../../circuit/supply.ts";
import type { Installation } from "../../model/installation.ts";
import type { Facts } from "../../model/values.ts";
import { listed } from "../common/dead-words.ts";
import { lineInBlock } from "../common/writing.ts";
import { factSpot, installationRule, wordSpot } from "../frame/rule.ts";

/**
 * What every limit here rests on. In TT the electrode stands for Ze, and fault currents may be those of the board at the
 * origin. For the boards further on a check of its own asks.
 */
function missing(supply: Facts<"supply">, boards: Installation["boards"]): string[] {
  const TT = supply.one("earthing")?.args.system.value === "TT";
  return [
    ...(supply.has("earthing") ? [] : ["earthing"]),
    ...(supply.has("Ze") || (TT && supply.has("electrode")) ? [] : [TT ? "electrode" : "Ze"]),
    ...(needsFault(supply, boards) ? ["Ipf"] : []),
  ];
}

function needsFault(supply: Facts<"supply">, boards: Installation["boards"]): boolean {
  const [first] = boards;
  if (supply.has("Ipf") || supply.has("PSCC") || supply.has("PEFC")) return false;
  // Between the two nobody asks for it: it is declared for the design, and measured with the supply on.
  const due = first !== undefined && ["design", "tested"].includes(stageOf(first.context));
  return due && !boards.some(({ context }) => faultsNoted(context));
}

function remedy(lacking: readonly string[], tested: boolean): string {
  const [first] = lacking;
  if (first === "earthing" && lacking.length === 1) return "see how it is earthed at the origin, and write it here";
  return tested ? "measure, or write LIM with the reason" : "ask the distributor and mark it declared";
}

export default installationRule({
  id: "record/supply-incomplete",
  severity: "warning",
  since: "0.1",
  title: "The supply is not described.",
  why: "The earthing, Ze and the fault current decide whether devices disconnect in time and survive it. Without them the circuits behind are not judged. By enquiry is enough for a design: mark it declared.",
  clauses: ["313.1", "312.2", "434.1", "132.2"],
  examples: [
    {
      setting: { supply: "earthing TN-S\nZe 0.30 Ω" },
      bad: `wayfile 1
installation "Kiln house" {
  standard  BS 7671:2018+A2:2022
  stage     design
  supply {
  ^^^^^^
    earthing  TN-S
  }
}`,
      good: `wayfile 1
installation "Kiln house" {
  standard  BS 7671:2018+A2:2022
  stage     design
  supply {
    earthing  TN-S
    Ze        declared 0.8 Ω
    Ipf       declared 16 kA
  }
}`,
    },
  ],
  check({ head, supply, boards }, report) {
    const fact = head.facts.one("supply");
    if (!fact || !supply) {
      if (head.facts.has("supply") || boards.length === 0) return;
      report(wordSpot(head.header), {
        message: "The supply is not described: its earthing, Ze and fault current decide what every circuit may be.",
      });
      return;
    }
    const lacking = missing(supply, boards);
    if (lacking.length === 0) return;
    const [first] = boards;
    const tested = first !== undefined && liveTestsDue(first.context);
    report(factSpot(fact), {
      message: `The supply lacks ${listed(lacking)}, without which its circuits cannot be judged: ${remedy(lacking, tested)}.`,
      fixes: lacking.includes("earthing")
        ? Object.keys(earthings).flatMap((system) => lineInBlock(fact, `earthing ${system}`))
        : [],
    });
  },
});
