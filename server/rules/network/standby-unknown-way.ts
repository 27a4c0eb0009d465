import { suggestionFor } from "../../model/suggestions.ts";
import { inPlaceOf } from "../common/writing.ts";
import { installationRule, valueSpot } from "../frame/rule.ts";

const sample = (ways: string) => `wayfile 1
installation "Clinic" {
  standard     BS 7671:2018+A2:2022
  supply {
    earthing     TN-S
    standby      "Battery"  gives 32 A  electrode 84 Ω  neutral linked  board A  way ${ways}
  }
  board A "Main" {
    fed-from     supply
    way 1 radial "Lights" {
      serves       lighting
    }
  }
}`;

export default installationRule({
  id: "network/standby-unknown-way",
  severity: "error",
  since: "0.1",
  title: "A second source supplies a way that is not there.",
  why: "Circuits that a source supplies are judged on it as well. A number that no way of the board has would leave the circuit that was meant unjudged.",
  clauses: [],
  examples: [
    {
      bad: sample("7").replace(
        "way 7",
        `way 7\n${" ".repeat('    standby      "Battery"  gives 32 A  electrode 84 Ω  neutral linked  board A  way '.length)}^`,
      ),
      good: sample("1"),
    },
  ],
  check({ supply, boards, names }, report) {
    if (names.incomplete) return;
    for (const source of supply?.all("standby") ?? []) {
      const { board: named, ways = [] } = source.args;
      const place = boards.find(({ board }) => (named ? board.head.name === named.value : boards.length === 1));
      const [first] = ways;
      if (!place) {
        if (first && !named)
          report(valueSpot(source, first), {
            message: `Way ${first.value} of which board? This installation has ${boards.length}: write “board” and its name before it.`,
          });
        continue;
      }
      const ids = place.board.ways.map(({ id }) => id);
      for (const way of ways) {
        if (ids.includes(way.value)) continue;
        const near = suggestionFor(way.value, ids);
        report(valueSpot(source, way), {
          message: `Board ${place.board.head.name} has no way ${way.value}${near ? `: did you mean ${near}?` : "."}`,
          fixes: near ? [inPlaceOf(way, near)] : [],
        });
      }
    }
  },
});
