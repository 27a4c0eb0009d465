import { editionDates } from "../../readings/edition-dates.ts";
import { installationRule, valueSpot } from "../frame/rule.ts";

export default installationRule({
  id: "record/tests-before-edition",
  severity: "warning",
  since: "0.1",
  title: "Tests are older than the edition they are judged by.",
  why: "Nobody could test to an edition that was not published. Either a date is wrong, or the edition was changed after the tests and they have to be reviewed.",
  clauses: ["644.1"],
  examples: [
    {
      bad: `wayfile 1
installation "Kiln house" {
  standard     BS 7671:2018+A2:2022
               ^^^^^^^^^^^^^^^^^^^^
  work         new
  board A "Front board" {
    fed-from     supply
    way 1 radial "Oven" {
      live 2019-05-02 {
        Zs           0.62 Ω
      }
    }
  }
}`,
      good: `wayfile 1
installation "Kiln house" {
  standard     BS 7671:2018
  work         new
  board A "Front board" {
    fed-from     supply
    way 1 radial "Oven" {
      live 2019-05-02 {
        Zs           0.62 Ω
      }
    }
  }
}`,
    },
  ],
  check(installation, report) {
    const { head, edition } = installation;
    const fact = head.facts.one("standard");
    const last = edition && editionDates(installation, edition).lastTest;
    if (!fact || !edition || last === undefined || last >= edition.from) return;
    report(valueSpot(fact, fact.args.edition), {
      message: `The last test is dated ${last}, before ${edition.id} came out on ${edition.from}: which edition was it made to?`,
      source: edition.sources.from,
    });
  },
});
