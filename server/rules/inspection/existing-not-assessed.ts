import { isOutsideWork } from "../../circuit/supply.ts";
import { type Inspection, latestInspection } from "../../model/inspections.ts";
import type { Installation } from "../../model/installation.ts";
import { listed } from "../../text/words.ts";
import { factSpot, installationRule, wordSpot } from "../frame/rule.ts";

/** What 132.16 and 641.5 name, part by part, and what must not suffer by minor work. */
const parts = {
  initial: ["earthing", "bonding", "load", "fault-level"],
  minor: ["earthing", "bonding", "safety"],
} as const;

export default installationRule({
  id: "inspection/existing-not-assessed",
  severity: "warning",
  since: "0.1",
  title: "Work on an existing installation does not state that what was there is sufficient.",
  why: "No addition or alteration is made unless the existing installation carries it: earthing and bonding, the rating and condition of what feeds it, and the fault level. New work on an earth that is not there is as dangerous as the old. State each part, and by what it was found.",
  clauses: ["132.16", "641.5", "644.1.2"],
  examples: [
    {
      bad: `wayfile 1
installation "Kiln house" {
  work         addition
  inspection minor 2026-03-05 {
  ^^^^^^^^^^
    covers       board A  way 1
    existing     earthing adequate "16 mm² at the main terminal"
  }
  board A {
    way 1 radial "Oven"
  }
}`,
      good: `wayfile 1
installation "Kiln house" {
  work         addition
  inspection minor 2026-03-05 {
    covers       board A  way 1
    existing     earthing adequate "16 mm² at the main terminal"
    existing     bonding adequate "Water and gas 10 mm²"
    existing     safety adequate
  }
  board A {
    way 1 radial "Oven"
  }
}`,
    },
    {
      bad: `wayfile 1
installation "Kiln house" {
  work         addition
  inspection minor 2026-03-05 {
    existing     earthing adequate
    existing     bonding inadequate "Gas is not bonded"
    ^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^
    existing     safety adequate
  }
}`,
      good: `wayfile 1
installation "Kiln house" {
  work         addition
  inspection minor 2026-03-05 {
    existing     earthing adequate
    existing     bonding adequate "Gas bonded with 10 mm² as part of this work"
    existing     safety adequate
  }
}`,
    },
  ],
  check(installation, report) {
    const inspection = latestInspection(installation.head);
    if (!inspection) return;
    const lines = inspection.facts.all("existing");
    for (const line of lines)
      if (line.args.verdict.value === "inadequate")
        report(factSpot(line), {
          severity: "error",
          message: `No addition or alteration is put into service while the ${nameOf(line.args.part.value)} is inadequate: it comes first.`,
        });
    const asked = askedOf(inspection, installation);
    const missing = asked.filter((part) => !lines.some(({ args }) => args.part.value === part));
    if (missing.length === 0 || inspection.facts.isUnread("existing")) return;
    report(wordSpot(inspection.header), {
      message: `Is the existing installation sufficient for this work? Not stated of ${listed(missing.map(nameOf))}: write “existing”, the part, and adequate or inadequate.`,
    });
  },
});

function askedOf({ kind }: Inspection, { head, boards }: Installation): readonly string[] {
  if (kind === "minor") return parts.minor;
  if (kind !== "initial") return [];
  const addition = head.facts.one("work")?.args.work.value === "addition";
  const old = boards.some(({ board, context }) =>
    [undefined, ...board.ways].some((way) =>
      way ? isOutsideWork({ context, facts: way.facts }) : isOutsideWork(context),
    ),
  );
  return addition || old ? parts.initial : [];
}

const nameOf = (part: string): string => part.replace("-", " ");
