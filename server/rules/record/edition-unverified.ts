import { installationRule, valueSpot } from "../frame/rule.ts";

export default installationRule({
  id: "record/edition-unverified",
  severity: "information",
  since: "0.1",
  title: "The figures of this edition have not been verified, or not all of it is covered.",
  why: "The limits of the previous edition are used in their place. Where a result is close to its limit, look the limit up in your own copy.",
  clauses: [],
  examples: [
    {
      bad: `wayfile 1
installation "Kiln house" {
  standard     BS 7671:2018+A4:2026
               ^^^^^^^^^^^^^^^^^^^^
}`,
      good: `wayfile 1
installation "Kiln house" {
  standard     BS 7671:2018+A2:2022
}`,
    },
    {
      bad: `wayfile 1
installation "Kiln house" {
  standard     BS 7671:2001
               ^^^^^^^^^^^^
}`,
      good: `wayfile 1
installation "Kiln house" {
  standard     BS 7671:2008
}`,
    },
  ],
  check({ head, edition }, report) {
    const fact = head.facts.one("standard");
    if (fact && edition?.notCovered) report(valueSpot(fact, fact.args.edition), { message: edition.notCovered });
    if (!fact || edition?.unseen === undefined) return;
    const { unseen, takesNumbersFrom: from } = edition;
    report(valueSpot(fact, fact.args.edition), {
      message: `${unseen}${from ? ` The limits of ${from} are used here.` : ""} Check your own copy.`,
    });
  },
});
