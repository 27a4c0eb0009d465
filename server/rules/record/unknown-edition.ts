import { nearest } from "../../model/suggestions.ts";
import { editions } from "../../tables/editions.ts";
import { inPlaceOf } from "../common/writing.ts";
import { installationRule, valueSpot } from "../frame/rule.ts";

export default installationRule({
  id: "record/unknown-edition",
  severity: "error",
  since: "0.1",
  title: "The edition of the wiring regulations is not known here.",
  why: "Nothing is compared with the limits of an edition that is not known. Write it as on its title page, with its amendments.",
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
    const oldest = editions.reduce((one, other) => (other.from < one.from ? other : one));
    // “BS 7671:2018+A2” is short for the edition that goes on with the year of that amendment.
    const whole = ids.findLast((id) => id.startsWith(`${value}:`));
    // One of before all that are known is no slip of the pen.
    const near = whole ?? (yearOf(value) < yearOf(oldest.id) ? undefined : nearest(value, ids));
    report(valueSpot(fact, fact.args.edition), {
      message: near
        ? `${value} is not an edition known here, so nothing is compared with its limits: was ${near} meant?`
        : `${value} is not an edition known here, so nothing is compared with its limits: the oldest that is known is ${oldest.id}.`,
      fixes: [...new Set(near ? [near, ...ids] : ids)].map((id) => inPlaceOf(fact.args.edition, id)),
    });
  },
});

const yearOf = (id: string): number => Number(/:(\d{4})/.exec(id)?.[1]);
