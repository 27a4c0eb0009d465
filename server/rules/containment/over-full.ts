import { plain, relation, remark } from "../../calc/result.ts";
import type { ContainmentStudy } from "../../conduits/containment.ts";
import type { Fix } from "../../model/problems.ts";
import { combine } from "../../tables/source.ts";
import { containmentRule, inIt } from "../common/containments.ts";
import { amountOf, factSpot } from "../frame/rule.ts";

export default containmentRule({
  id: "containment/over-full",
  severity: "warning",
  since: "0.1",
  title: "A conduit or trunking holds more cables than it has room for.",
  why: "Cables are damaged as they are pulled in, and those inside cannot lose their heat. Use the next size, or a second run. The factor of a cable depends on its size, its stranding and whether the run bends: read the row of the table for the cable that is there.",
  clauses: ["522.8"],
  examples: [
    {
      bad: `wayfile 1
installation "Mill" {
  board A "Board" {
    fed-from     supply
    containment C1 conduit 20 mm length 6 m bends 2
    ^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^
    way 1 ring "Bench" {
      cable        singles  line 2.5 mm²  cpc 2.5 mm²
      route        method B  in C1
    }
    way 2 radial "Planer" {
      cable        singles  line 2.5 mm²  cpc 2.5 mm²
      route        method B  in C1
    }
  }
}`,
      good: `wayfile 1
installation "Mill" {
  board A "Board" {
    fed-from     supply
    containment C1 conduit 25 mm length 6 m bends 2
    way 1 ring "Bench" {
      cable        singles  line 2.5 mm²  cpc 2.5 mm²
      route        method B  in C1
    }
    way 2 radial "Planer" {
      cable        singles  line 2.5 mm²  cpc 2.5 mm²
      route        method B  in C1
    }
  }
}`,
    },
  ],
  judge(study, report) {
    const { fullest, percent } = study;
    if (!fullest || fullest.fill.fits || percent === undefined) return;
    const { total, room } = fullest.fill;
    const unsaid = study.assumesStranded && study.holdsIfSolid;
    const wanted = wantedText(study);
    report(factSpot(fullest.section?.fact ?? study.fact), {
      message: `${study.name} is ${plain(percent, 0)} % full: its cables add up to a factor of ${plain(total.value, 1)}, ${study.title} takes ${plain(room.value)}. ${wanted}${unsaid ? " Solid conductors would fit: if they are, write solid on their cables." : ""}`,
      value: amountOf(total),
      limit: amountOf(room),
      steps: [
        ...total.steps,
        ...room.steps,
        relation("sum ≤ factor", plain(total.value, 1), plain(room.value)),
        ...(study.assumesThermoplastic
          ? [remark("90 °C singles by the factors of thermoplastic ones: for conduit no others are published")]
          : []),
        ...(unsaid ? [remark("conductors taken as stranded, since solid is not stated")] : []),
      ],
      source: combine(total.source, room.source),
      related: inIt(study),
      ...(unsaid ? { severity: "information" as const } : {}),
      fixes: fixesFor(study, fullest.section?.fact ?? study.fact),
    });
  },
});

function wantedText({ wanted, isConduit, title, isWhole }: ContainmentStudy): string {
  if (!isWhole) return "Not all of its contents are known, so it is fuller still.";
  if (wanted === undefined) return "No size in the tables holds them: divide them between two runs.";
  if (typeof wanted === "number") return `Fit ${plain(wanted)} mm conduit.`;
  return isConduit ? `${title} is too small.` : `Fit ${plain(wanted.width)} × ${plain(wanted.depth)} mm.`;
}

/** The size that holds them, where it stands in the marked segment. */
function fixesFor({ wanted, fact }: ContainmentStudy, marked: { readonly segment: unknown }): Fix[] {
  const { size, depth } = fact.args;
  if (wanted === undefined || marked.segment !== fact.segment) return [];
  const edit = (at: typeof size, value: number) => ({ start: at.start, end: at.end, text: `${plain(value)} mm` });
  if (typeof wanted === "number") {
    return [{ title: `Make it ${plain(wanted)} mm`, edits: [edit(size, wanted)], safe: false }];
  }
  if (!depth) return [];
  return [
    {
      title: `Make it ${plain(wanted.width)} mm by ${plain(wanted.depth)} mm`,
      edits: [edit(size, wanted.width), edit(depth, wanted.depth)],
      safe: false,
    },
  ];
}
