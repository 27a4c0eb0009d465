import { supplementaryBonding } from "../../calc/index.ts";
import { squareMillimetres } from "../../calc/result.ts";
import { amount, amountOf, boardRule, valueSpot } from "../rule.ts";
import { inPlaceOf, wordsAfter } from "../writing.ts";

export default boardRule({
  id: "protective/supplementary-too-small",
  severity: "error",
  since: "0.1",
  title: "A supplementary bonding conductor smaller than its protection allows.",
  why: "A thin wire clipped along pipes is torn off and nobody notices. Unprotected it has 4 mm² at least; in conduit, trunking or a sheath 2.5 mm² serves.",
  clauses: ["544.2.1", "544.2.2", "544.2.3"],
  examples: [
    {
      bad: `wayfile 1
installation "Sample" {
  board A "Board" {
    fed-from supply
    supplementary-bonding bathroom 2.5 mm²
                                   ^^^^^^^
  }
}`,
      good: `wayfile 1
installation "Sample" {
  board A "Board" {
    fed-from supply
    supplementary-bonding bathroom "Upper floor" 2.5 mm² protected
    supplementary-bonding bathroom "Attic" 4 mm²
  }
}`,
    },
  ],
  check({ board }, report) {
    for (const fact of board.head.facts.all("supplementary-bonding")) {
      const { place, size, shielded } = fact.args;
      const need = supplementaryBonding(shielded !== undefined);
      if (!size || size.value >= need.value) continue;
      const ifShielded = !shielded && size.value >= supplementaryBonding(true).value;
      report(valueSpot(fact, size), {
        message: `The supplementary bonding (${place.value}) is ${squareMillimetres(size.value)}; ${shielded ? "even mechanically protected" : "not mechanically protected"} it has to be ${squareMillimetres(need.value)}${ifShielded ? ", or write that it is protected" : ""}.`,
        value: amount(size.value, "mm²"),
        limit: amountOf(need),
        least: true,
        steps: need.steps,
        source: need.source,
        fixes: [
          inPlaceOf(size, `${need.value} mm²`, `Make it ${squareMillimetres(need.value)}`),
          ...(ifShielded ? wordsAfter(fact, "protected", "It is mechanically protected") : []),
        ],
      });
    }
  },
});
