import { supplementaryOfCpc } from "../../boards/supplementary.ts";
import { supplementaryBonding } from "../../calc/protective-size.ts";
import { squareMillimetres } from "../../calc/result.ts";
import { cableWords } from "../common/dead-words.ts";
import { inPlaceOf, wordsAfter } from "../common/writing.ts";
import { amount, amountOf, boardRule, factSpot, valueSpot } from "../frame/rule.ts";

export default boardRule({
  id: "protective/supplementary-too-small",
  severity: "error",
  since: "0.1",
  title: "A supplementary bonding conductor is too small.",
  why: "A thin conductor clipped along pipes is torn off and nobody notices. Without mechanical protection it is at least 4 mm²; in conduit, trunking or a sheath 2.5 mm².",
  clauses: ["544.2.1", "544.2.2", "544.2.3"],
  examples: [
    {
      bad: `wayfile 1
installation "Sample" {
  board A "Board" {
    fed-from     supply
    supplementary-bonding bathroom 2.5 mm²
                                   ^^^^^^^
  }
}`,
      good: `wayfile 1
installation "Sample" {
  board A "Board" {
    fed-from     supply
    supplementary-bonding bathroom "Upper floor" 2.5 mm² protected
    supplementary-bonding bathroom "Attic" 4 mm²
  }
}`,
    },
    {
      bad: `wayfile 1
installation "Sample" {
  board A "Board" {
    fed-from     supply
    supplementary-bonding bathroom 4 mm²
                                   ^^^^^
    way 1 radial "Boiler" {
      cable        multicore  line 16 mm²  cpc 16 mm²
      place        bathroom
    }
  }
}`,
      good: `wayfile 1
installation "Sample" {
  board A "Board" {
    fed-from     supply
    supplementary-bonding bathroom 10 mm²
    way 1 radial "Boiler" {
      cable        multicore  line 16 mm²  cpc 16 mm²
      place        bathroom
    }
  }
}`,
    },
  ],
  check({ board, studies }, report) {
    for (const fact of board.head.facts.all("supplementary-bonding")) {
      const { place, size, shielded } = fact.args;
      const need = supplementaryBonding(shielded !== undefined);
      if (!size) continue;
      const byCpc = supplementaryOfCpc(fact, studies);
      if (size.value >= need.value) {
        if (!byCpc || size.value >= byCpc.need.value) continue;
        const { need: asked, study } = byCpc;
        report(valueSpot(fact, size), {
          message: `Supplementary bonding (${place.value}) is ${squareMillimetres(size.value)}; to the protective conductor of way ${study.way.id} it must be half of that, ${squareMillimetres(asked.value)}.`,
          value: amount(size.value, "mm²"),
          limit: amountOf(asked),
          least: true,
          steps: asked.steps,
          source: asked.source,
          severity: "warning",
          related: study.cable
            ? [
                {
                  spot: factSpot(study.cable.fact),
                  message: `Cable of way ${study.way.id}: ${cableWords(study.cable)}.`,
                },
              ]
            : [],
          fixes: [inPlaceOf(size, `${asked.value} mm²`, `Make it ${squareMillimetres(asked.value)}`)],
        });
        continue;
      }
      const ifShielded = !shielded && size.value >= supplementaryBonding(true).value;
      report(valueSpot(fact, size), {
        message: `Supplementary bonding (${place.value}) is ${squareMillimetres(size.value)}; ${shielded ? "with" : "without"} mechanical protection it must be ${squareMillimetres(need.value)}${ifShielded ? ": write protected if it is" : ""}.`,
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
