import { editionDates } from "../../readings/edition-dates.ts";
import { inPlaceOf } from "../common/writing.ts";
import { installationRule, valueSpot } from "../frame/rule.ts";

export default installationRule({
  id: "record/edition-superseded",
  severity: "warning",
  since: "0.1",
  title: "The edition had been superseded when the work was designed.",
  why: "New work is designed to the edition in force on the day. An older one may lack a protection that had become a requirement.",
  clauses: ["644.1"],
  examples: [
    {
      bad: `wayfile 1
installation "Kiln house" {
  standard     BS 7671:2008+A3:2015
               ^^^^^^^^^^^^^^^^^^^^
  work         new
  designed     by "K.A." 2023-05-02
}`,
      good: `wayfile 1
installation "Kiln house" {
  standard     BS 7671:2018+A2:2022
  work         new
  designed     by "K.A." 2023-05-02
}`,
    },
  ],
  check(installation, report) {
    const { head, edition } = installation;
    const fact = head.facts.one("standard");
    const dates = edition && editionDates(installation, edition);
    if (!fact || !edition || !dates?.supersededBy || !dates.designed) return;
    const { supersededBy, designed } = dates;
    report(valueSpot(fact, fact.args.edition), {
      message: `The work was designed on ${designed}, when ${supersededBy.id} had superseded ${edition.id}.`,
      source: supersededBy.sources.from,
      fixes: [inPlaceOf(fact.args.edition, supersededBy.id)],
    });
  },
});
