import { originDemand } from "../../boards/demand-origin.ts";
import { tabulatedCapacity } from "../../calc/capacity.ts";
import { fallsShort } from "../../calc/compare.ts";
import { fromAbove } from "../../calc/minimum-size.ts";
import { amps, relation, squareMillimetres } from "../../calc/result.ts";
import { originSupply } from "../../circuit/supply.ts";
import type { Installation } from "../../model/installation.ts";
import { capacity4D1A } from "../../tables/capacity-70.ts";
import { inPlaceOf } from "../common/writing.ts";
import { amount, factSpot, installationRule, type Severity, valueSpot } from "../frame/rule.ts";

const sample = (size: number) => `wayfile 1
installation "Sample" {
  standard     BS 7671:2018+A2:2022
  supply {
    earthing     TN-S
    cutout       BS 88-3 100 A
    tails        ${size} mm²
  }
  board A "Board" {
    fed-from     supply
  }
}`;

export default installationRule({
  id: "coordination/tails-below-cutout",
  severity: "error",
  since: "0.1",
  title: "The meter tails carry less than the rating of the cut-out.",
  why: "Only the distributor's fuse protects the tails. Where they carry less than its rating they can overheat and nothing opens. Fit larger tails, or have a smaller cut-out fuse fitted.",
  clauses: ["433.1.1", "433.3.1"],
  examples: [
    {
      bad: sample(6).replace("6 mm²\n", "6 mm²\n                 ^^^^^\n"),
      good: sample(25),
    },
  ],
  check(installation, report) {
    const tails = installation.supply?.one("tails");
    const cutout = installation.supply?.one("cutout");
    if (!tails || !cutout) return;
    const { size } = tails.args;
    const rating = cutout.args.rating.value;
    const loaded = originSupply(installation.supply).threePhase ? 3 : 2;
    const tabled = clipped(loaded, size.value);
    const carries = tabled ?? fromAbove(size.value, (csa) => clipped(loaded, csa));
    if (!carries || !fallsShort(carries.value, rating)) return;
    const larger = capacity4D1A.rows
      .map(({ facts }) => facts.csa)
      .filter((csa) => {
        const carried = clipped(loaded, csa)?.value;
        return csa > size.value && carried !== undefined && carried >= rating;
      })
      .toSorted((one, other) => one - other)[0];
    const { stated, calculated } = demandAt(installation);
    const demand = stated ?? calculated;
    const bears = demand !== undefined && demand <= carries.value;
    const wanted = larger === undefined ? "larger tails" : `tails of ${squareMillimetres(larger)}`;
    report(valueSpot(tails, size), {
      message: `Tails of ${squareMillimetres(size.value)} carry ${tabled ? "" : "no more than "}${amps(carries.value)} clipped direct, below the ${amps(rating)} cut-out${bears ? " (enough for the present demand)" : ""}: fit ${wanted}, or ask for a smaller cut-out.`,
      value: amount(carries.value, "A"),
      limit: amount(rating, "A"),
      least: true,
      severity: gradeOf(carries.value, rating, bears, stated),
      steps: [relation("cut-out ≤ It", amps(rating), amps(carries.value))],
      source: carries.source,
      related: [{ spot: factSpot(cutout), message: `Cut-out: ${amps(rating)}.` }],
      fixes:
        larger === undefined
          ? []
          : [inPlaceOf(size, squareMillimetres(larger), `Make them ${squareMillimetres(larger)}`)],
    });
  },
});

const clipped = (loaded: 2 | 3, csa: number) =>
  tabulatedCapacity({ construction: "singles", insulation: 70, method: "C", loaded, csa });

/**
 * A stated demand above what they carry overloads them. A load that cannot is accepted on tails one size below the
 * cut-out, as 16 mm² behind 100 A often is; on thinner ones it grows beyond them.
 */
function gradeOf(carries: number, rating: number, bears: boolean, stated: number | undefined): Severity {
  if (stated !== undefined && stated > carries) return "error";
  return bears && carries >= oneSizeBelow * rating ? "information" : "warning";
}

const oneSizeBelow = 0.75;

/** What is drawn at the origin, as stated and as the circuits come to, A. */
function demandAt(installation: Installation): { readonly stated?: number; readonly calculated?: number } {
  const demand = originDemand(installation);
  const stated = installation.supply?.one("demand")?.args.value.value;
  return {
    ...(stated === undefined ? {} : { stated }),
    ...(demand && demand.unknown.length === 0 ? { calculated: demand.greatest.value } : {}),
  };
}
