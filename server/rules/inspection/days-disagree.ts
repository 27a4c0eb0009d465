import { inspectionsOf } from "../../model/inspections.ts";
import type { Fact, Val } from "../../model/values.ts";
import { installationRule, type Reporter, valueSpot } from "../frame/rule.ts";

export default installationRule({
  id: "inspection/days-disagree",
  severity: "error",
  since: "0.1",
  title: "The days of an inspection contradict each other.",
  why: "An inspection ends after it began, its paper is issued after that, and the next is due later still. One of the days is a slip, and the record is read by its days.",
  clauses: ["644.4", "653.4"],
  examples: [
    {
      bad: `wayfile 1
installation "Kiln house" {
  inspection periodic 2026-03-05 {
    next-inspection 2021-03-05 "Five years"
                    ^^^^^^^^^^
  }
}`,
      good: `wayfile 1
installation "Kiln house" {
  inspection periodic 2026-03-05 {
    next-inspection 2031-03-05 "Five years"
  }
}`,
    },
  ],
  check({ head }, report) {
    for (const { facts, header, from, to } of inspectionsOf(head)) {
      if (from === "") continue;
      notBefore(header, header.args.to, from, "The inspection ends before it begins", report);
      const issued = facts.one("issued");
      notBefore(issued, issued?.args.on, to, "The paper is issued before the inspection ended", report);
      const next = facts.one("next-inspection");
      notBefore(next, next?.args.on, to, "The next inspection is due before this one", report);
      const last = facts.one("last-inspected");
      if (last?.args.on && last.args.on.value > from)
        report(valueSpot(last, last.args.on), {
          message: `The last inspection is dated ${last.args.on.value}, after this one of ${from}: which day is right?`,
        });
      for (const line of facts.all("observation"))
        notBefore(line, line.args.remedied, from, "It was put right before it was observed", report);
    }
  },
});

function notBefore(
  fact: Fact | undefined,
  day: Val<string> | undefined,
  earliest: string,
  what: string,
  report: Reporter,
): void {
  if (fact && day && day.value < earliest)
    report(valueSpot(fact, day), { message: `${what}: ${day.value} against ${earliest}. Which day is right?` });
}
