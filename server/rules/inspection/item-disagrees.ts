import { type Inspection, inspectionsOf, itemsNamed } from "../../model/inspections.ts";
import { isAbsent } from "../../model/values.ts";
import { factSpot, installationRule, type Reporter, valueSpot } from "../frame/rule.ts";

export default installationRule({
  id: "inspection/item-disagrees",
  severity: "error",
  since: "0.1",
  title: "The result of an inspected item and the observations disagree.",
  why: "The schedule of items and the observations are read against each other: each code in one stands in the other. Where they differ, one of the two is a slip.",
  clauses: ["651.2", "653.2"],
  examples: [
    {
      bad: `wayfile 1
installation "Kiln house" {
  inspection periodic 2026-03-05 {
    inspected    5.1..5.9 ok
    observation  1 C2 "No earth at the hall lights"  item 5.8
                                                          ^^^
  }
}`,
      good: `wayfile 1
installation "Kiln house" {
  inspection periodic 2026-03-05 {
    inspected    5.1..5.9 ok
    inspected    5.8 C2
    observation  1 C2 "No earth at the hall lights"  item 5.8
  }
}`,
    },
    {
      bad: `wayfile 1
installation "Kiln house" {
  inspection periodic 2026-03-05 {
    inspected    5.8 C2
    ^^^^^^^^^^^^^^^^^^^
  }
}`,
      good: `wayfile 1
installation "Kiln house" {
  inspection periodic 2026-03-05 {
    inspected    5.8 C2
    observation  1 C2 "No earth at the hall lights"  item 5.8
  }
}`,
    },
  ],
  check({ head }, report) {
    for (const inspection of inspectionsOf(head)) checkOne(inspection, report);
  },
});

const codes: ReadonlySet<string> = new Set(["C1", "C2", "C3", "FI"]);

function checkOne(inspection: Inspection, report: Reporter): void {
  const { facts } = inspection;
  if (facts.isUnread("observation") || facts.isUnread("inspected")) return;
  const observed = new Map<string, Set<string>>();
  for (const { args } of facts.all("observation"))
    for (const { value } of args.items ?? [])
      for (const item of itemsNamed(value)) observed.set(item, (observed.get(item) ?? new Set()).add(args.code.value));
  const results = resultsOf(inspection);
  for (const line of facts.all("observation")) {
    for (const item of line.args.items ?? []) {
      const result = itemsNamed(item.value)
        .map((one) => results(one))
        .find((one) => one === "ok" || one === "N/A");
      if (result === undefined) continue;
      report(valueSpot(line, item), {
        message: `Item ${item.value} is recorded as ${result}, and ${line.args.code.value} is observed of it: give the item its code.`,
      });
    }
  }
  for (const line of facts.all("inspected")) {
    const { result, items = [] } = line.args;
    if (isAbsent(result) || !codes.has(result.value)) continue;
    const bare = items
      .flatMap(({ value }) => itemsNamed(value))
      .filter((item) => !observed.get(item)?.has(result.value));
    if (bare.length === 0) continue;
    report(factSpot(line), {
      message: `${result.value} of item ${bare.slice(0, 4).join(", ")} has no observation: write what was seen, with “item” and its number.`,
    });
  }
}

/** The result of an item: of its own line, else of that of the longest number it begins with. */
function resultsOf({ facts }: Inspection): (item: string) => string | undefined {
  const found = new Map<string, string>();
  // A line of one item alone goes before a run that it lies in.
  for (const { args } of facts.all("inspected"))
    for (const { value } of args.items ?? [])
      for (const item of itemsNamed(value))
        if (!found.has(item) || !value.includes(".."))
          found.set(item, isAbsent(args.result) ? args.result.absent : args.result.value);
  return (item) => {
    for (let stem = item; stem !== ""; stem = stem.includes(".") ? stem.slice(0, stem.lastIndexOf(".")) : "") {
      const own = found.get(stem);
      if (own !== undefined) return own;
    }
    return undefined;
  };
}
