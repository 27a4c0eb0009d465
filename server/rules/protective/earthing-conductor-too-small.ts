import { earthingNeed, pmeNeed } from "../../analysis/earthing.ts";
import { squareMillimetres } from "../../calc/result.ts";
import { amount, amountOf, factSpot, installationRule, valueSpot } from "../rule.ts";
import { inPlaceOf } from "../writing.ts";

export default installationRule({
  id: "protective/earthing-conductor-too-small",
  severity: "warning",
  since: "0.1",
  title: "An earthing conductor smaller than the tails ask for.",
  why: "Every earth fault of the installation runs through it. Below Table 54.7 it has to be shown by calculation that it survives.",
  clauses: ["542.3.1", "543.1.1", "543.1.4"],
  examples: [
    {
      bad: `wayfile 1
installation "Sample" {
  supply {
    earthing TN-S
    tails 25 mm²
    earthing-conductor 10 mm²
                       ^^^^^^
  }
}`,
      good: `wayfile 1
installation "Sample" {
  supply {
    earthing TN-S
    tails 25 mm²
    earthing-conductor 16 mm²
  }
}`,
    },
  ],
  check({ supply }, report) {
    const fact = supply?.one("earthing-conductor");
    if (!supply || !fact) return;
    const { size } = fact.args;
    const need = earthingNeed(supply);
    const tails = supply.one("tails");
    const asked = need && size.value < need.value ? need : undefined;
    const pme = pmeNeed(supply);
    const limit = asked ?? (pme && size.value < pme.value ? pme : undefined);
    if (!limit) return;
    report(valueSpot(fact, size), {
      message: asked
        ? `With tails of this size the earthing conductor is ${squareMillimetres(limit.value)} by Table 54.7; ${squareMillimetres(size.value)} has to be shown by calculation.`
        : `Distributors usually ask for an earthing conductor of ${squareMillimetres(limit.value)} on a PME supply; this is ${squareMillimetres(size.value)}.`,
      value: amount(size.value, "mm²"),
      limit: amountOf(limit),
      least: true,
      steps: limit.steps,
      source: limit.source,
      ...(asked ? {} : { severity: "information" }),
      related: tails ? [{ spot: factSpot(tails), message: "The tails that decide it." }] : [],
      fixes: [inPlaceOf(size, `${limit.value} mm²`, `Make it ${squareMillimetres(limit.value)}`)],
    });
  },
});
