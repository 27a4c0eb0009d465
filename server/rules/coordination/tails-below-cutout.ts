import { certainAtOrigin } from "../../boards/certain-demand.ts";
import { originDemand } from "../../boards/demand-origin.ts";
import { tabulatedCapacity } from "../../calc/capacity.ts";
import { exceeds, fallsShort } from "../../calc/compare.ts";
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
  title: "The meter tails carry less than the cut-out allows or the circuits draw.",
  why: "Only the distributor's fuse protects the tails. Where they carry less than its rating they can overheat and nothing opens. Fit larger tails, or have a smaller cut-out fuse fitted.",
  clauses: ["433.1.1", "433.3.1"],
  examples: [
    {
      bad: sample(6).replace("6 mm²\n", "6 mm²\n                 ^^^^^\n"),
      good: sample(25),
    },
  ],
  check(installation, report) {
    const { supply } = installation;
    const tails = supply?.one("tails");
    const cutout = supply?.one("cutout");
    if (!tails) return;
    const { size } = tails.args;
    const loaded = originSupply(supply).threePhase ? 3 : 2;
    const tabled = clipped(loaded, size.value);
    const carries = tabled ?? fromAbove(size.value, (csa) => clipped(loaded, csa));
    if (!carries) return;
    const cutoutRating = cutout?.args.rating.value;
    // The circuits of all boards are added up only where something may come of it.
    if (cutoutRating !== undefined && !fallsShort(carries.value, cutoutRating)) return;
    const demand = demandAt(installation);
    const isOverloaded = exceeds(demand.least, carries.value);
    // While no cut-out is described it may be small enough: then only what is drawn counts.
    const drawn = isOverloaded && !supply?.isUnread("cutout") ? demand.least : undefined;
    const rating = cutoutRating ?? drawn;
    if (rating === undefined || !fallsShort(carries.value, rating)) return;
    const larger = sizeFor(loaded, size.value, isOverloaded ? Math.max(rating, demand.least) : rating);
    const bears = demand.greatest !== undefined && demand.greatest <= carries.value;
    const below = cutout ? `, below the ${amps(rating)} cut-out` : "";
    const load = isOverloaded ? loadWords(demand) : bears ? " (enough for the present demand)" : "";
    const wanted = larger === undefined ? "larger tails" : `tails of ${squareMillimetres(larger)}`;
    report(valueSpot(tails, size), {
      message: `Tails of ${squareMillimetres(size.value)} carry ${tabled ? "" : "no more than "}${amps(carries.value)} clipped direct${below}${load}: fit ${wanted}${isOverloaded ? "" : ", or ask for a smaller cut-out"}.`,
      value: amount(carries.value, "A"),
      limit: amount(rating, "A"),
      least: true,
      severity: isOverloaded ? "error" : gradeOf(carries.value, rating, bears),
      steps: [
        relation(`${cutout ? "cut-out" : "demand"} ≤ It`, amps(rating, carries.value), amps(carries.value, rating)),
      ],
      source: carries.source,
      related: cutout ? [{ spot: factSpot(cutout), message: `Cut-out: ${amps(rating)}.` }] : [],
      fixes:
        larger === undefined
          ? []
          : [inPlaceOf(size, squareMillimetres(larger), `Make them ${squareMillimetres(larger)}`)],
    });
  },
});

const loadWords = ({ isStated, least }: OriginCurrent): string =>
  `; ${isStated ? "the stated demand is" : "the circuits draw at least"} ${amps(least)}`;

const clipped = (loaded: 2 | 3, csa: number) =>
  tabulatedCapacity({ construction: "singles", insulation: 70, method: "C", loaded, csa });

/** The least size above one that carries a current. */
const sizeFor = (loaded: 2 | 3, above: number, current: number): number | undefined =>
  capacity4D1A.rows
    .map(({ facts }) => facts.csa)
    .filter((csa) => csa > above && (clipped(loaded, csa)?.value ?? 0) >= current)
    .toSorted((one, other) => one - other)[0];

/**
 * A load that cannot overload them is accepted on tails one size below the cut-out, as 16 mm² behind 100 A often is; on
 * thinner ones it grows beyond them.
 */
const gradeOf = (carries: number, rating: number, bears: boolean): Severity =>
  bears && carries >= oneSizeBelow * rating ? "information" : "warning";

const oneSizeBelow = 0.75;

interface OriginCurrent {
  /** As stated, or as the circuits come to, A; nothing where one of them does not say. */
  readonly greatest: number | undefined;
  /** As stated, or what the circuits draw with the most favourable diversity, where that is more, A. */
  readonly least: number;
  readonly isStated: boolean;
}

function demandAt(installation: Installation): OriginCurrent {
  const demand = originDemand(installation);
  const stated = installation.supply?.one("demand")?.args.value.value;
  const calculated = demand && demand.unknown.length === 0 ? demand.greatest.value : undefined;
  const certain = demand?.unread ? 0 : certainAtOrigin(installation);
  return { greatest: stated ?? calculated, least: Math.max(stated ?? 0, certain), isStated: (stated ?? 0) >= certain };
}
