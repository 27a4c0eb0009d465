import { inspectionsOf } from "../../model/inspections.ts";
import type { Installation } from "../../model/installation.ts";
import type { Facts } from "../../model/values.ts";
import { type IntervalRow, inspectionIntervals } from "../../tables/inspection.ts";
import { daysBetween } from "../../text/days.ts";
import { installationRule, valueSpot } from "../frame/rule.ts";

/** Days that make no longer interval. */
const leeway = 45;
const daysOfYear = 365.25;

export default installationRule({
  id: "inspection/next-too-late",
  severity: "information",
  since: "0.1",
  title: "The next inspection is later than is usual for such premises.",
  why: "The inspector decides the interval by the condition of the installation, its use and how it is kept. What the guidance lists is the longest that is usual, and is for an installation in good order.",
  clauses: ["644.4", "653.4"],
  examples: [
    {
      bad: `wayfile 1
installation "Kiln house" {
  premises     industrial
  inspection periodic 2026-03-05 {
    next-inspection 2036-03-05 "Ten years"
                    ^^^^^^^^^^
  }
}`,
      good: `wayfile 1
installation "Kiln house" {
  premises     industrial
  inspection periodic 2026-03-05 {
    next-inspection 2029-03-05 "Three years, as the guidance has it for workshops"
  }
}`,
    },
  ],
  check(installation, report) {
    for (const { facts, to } of inspectionsOf(installation.head)) {
      const next = facts.one("next-inspection");
      const longest = longestFor(installation, facts);
      if (!longest) continue;
      const days = next && to !== "" ? daysBetween(to, next.args.on.value) : 0;
      if (!next || !(days > longest.years * daysOfYear + leeway)) continue;
      report(valueSpot(next, next.args.on), {
        message: `${Math.round((days / daysOfYear) * 10) / 10} years to the next inspection; for ${longest.of} premises ${longest.years} is the longest that is usual. Say in the reason why it may be later.`,
        source: { ref: inspectionIntervals.ref, standing: "quoted" },
      });
    }
  },
});

/** The shortest of what its premises and the locations of its boards have. */
function longestFor({ head, boards }: Installation, facts: Facts<"inspection">): IntervalRow | undefined {
  const named: readonly (string | undefined)[] = [
    head.facts.one("premises")?.args.premises.value,
    isLet(facts) ? "let" : undefined,
    ...boards.flatMap(({ board }) => (board.head.facts.one("place")?.args.places ?? []).map(({ value }) => value)),
  ];
  return inspectionIntervals.rows
    .map(({ facts }) => facts)
    .filter(({ of }) => named.includes(of))
    .toSorted((a, b) => a.years - b.years)[0];
}

/** Whether what is said of the inspection says that the premises are let. */
function isLet(facts: Facts<"inspection">): boolean {
  const said = [
    facts.one("client")?.args.name.value,
    facts.one("occupier")?.args.name.value,
    facts.one("reason")?.args.text.value,
    facts.one("next-inspection")?.args.reason.value,
  ];
  return said.some(
    (text) => text !== undefined && /\b(?:let|lets|letting|lettings|tenant\w*|tenanc\w+|landlord)\b/iu.test(text),
  );
}
