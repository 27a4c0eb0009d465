import { nearest } from "../../model/suggestions.ts";
import { editions } from "../../tables/editions.ts";
import { inPlaceOf } from "../common/writing.ts";
import { installationRule, valueSpot } from "../frame/rule.ts";

export default installationRule({
  id: "record/unknown-edition",
  severity: "error",
  since: "0.1",
  title: "The edition of the wiring regulations is not known here.",
  why: "Nothing is judged by an edition whose limits are not known. Write it as on its title page, with its amendments.",
  clauses: ["644.1"],
  examples: [
    {
      bad: `wayfile 1
installation "Kiln house" {
  standard     BS 7671:2019
               ^^^^^^^^^^^^
}`,
      good: `wayfile 1
installation "Kiln house" {
  standard     BS 7671:2018
}`,
    },
  ],
  check({ head, edition }, report) {
    const fact = head.facts.one("standard");
    if (!fact || edition) return;
    const { value } = fact.args.edition;
    const ids = [...editions].reverse().map(({ id }) => id);
    const near = nearest(value, ids);
    report(valueSpot(fact, fact.args.edition), {
      message: `${value} is not an edition known here, so nothing is judged${near ? `: was ${near} meant?` : ": write it as on its title page."}`,
      fixes: [...new Set(near ? [near, ...ids] : ids)].map((id) => inPlaceOf(fact.args.edition, id)),
    });
  },
});
