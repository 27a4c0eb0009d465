import { type InspectionKind, inspectionsOf } from "../../model/inspections.ts";
import type { WordIn } from "../../model/values.ts";
import { listed } from "../../text/words.ts";
import { installationRule, wordSpot } from "../frame/rule.ts";

/** What is stated in the inspection, and the address, which the installation states for all of them. */
type Word = WordIn<"inspection"> | "location";

/** An installation may be called by its address: "7 Alder Row". */
const isAddress = /\d+\p{L}?\s+\p{L}/u;

/** What each paper must say; the rest of it follows from the schedule. */
const required: Readonly<Record<InspectionKind, readonly Word[]>> = {
  initial: ["client", "location", "work-done", "inspected", "next-inspection", "tested"],
  periodic: ["client", "location", "reason", "extent", "inspected", "outcome", "next-inspection", "tested"],
  minor: ["client", "location", "work-done", "covers", "tested"],
};

const names: Readonly<Record<InspectionKind, string>> = {
  initial: "An initial verification",
  periodic: "A periodic inspection",
  minor: "The inspection of minor work",
};

export default installationRule({
  id: "inspection/incomplete",
  severity: "warning",
  since: "0.1",
  title: "An inspection lacks what its paper must say.",
  why: "The report or certificate is given to people who were not there. It has to say for whom and why the inspection was made, what it covered, what was inspected by sight, what came of it, when the next is due and who answers for it.",
  clauses: ["644.1", "644.4", "642.3", "653.1", "653.2"],
  examples: [
    {
      bad: `wayfile 1
installation "Kiln house" {
  inspection minor 2026-03-05 {
  ^^^^^^^^^^
    work-done    "Oven circuit extended"
    covers       board A  way 1
  }
  board A {
    way 1 radial "Oven"
  }
}`,
      good: `wayfile 1
installation "Kiln house" {
  location     "Kiln Lane"
  inspection minor 2026-03-05 {
    client       "The owner"
    work-done    "Oven circuit extended"
    covers       board A  way 1
    tested       by "K.A." 2026-03-05
  }
  board A {
    way 1 radial "Oven"
  }
}`,
    },
  ],
  check({ head }, report) {
    const all = inspectionsOf(head);
    for (const inspection of all) {
      const { kind, facts, header } = inspection;
      if (!kind) continue;
      const lacking = required[kind].filter(
        (word) =>
          !(word !== "location" && facts.has(word)) &&
          !(ofInstallation(word) && head.facts.has(word)) &&
          !(word === "location" && isAddress.test(head.title)) &&
          // Of an earlier one the items and the client stand in its own paper.
          !((word === "inspected" || word === "client") && inspection !== all.at(-1)),
      );
      if (lacking.length === 0) continue;
      report(wordSpot(header), {
        // When the next is due protects whoever relies on the paper: 644.4 and 653.4 have it stated.
        ...(lacking.includes("next-inspection") ? {} : { severity: "information" as const }),
        message: `${names[kind]} lacks ${listed(lacking.map((word) => `“${word}”`))}, which its paper must state.`,
      });
    }
  },
});

/** What the installation may say for all of its inspections. */
const ofInstallation = (word: Word): word is "tested" | "extent" | "location" =>
  word === "tested" || word === "extent" || word === "location";
