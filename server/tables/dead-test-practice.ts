import { lasting, type Source } from "./source.ts";

/** A threshold of plausibility: no limit of the standard, but what an experienced tester would go by. */
export interface Threshold {
  readonly value: number;
  readonly unit: string;
  readonly source: Source;
}

const practice = (value: number, unit: string, of: string): Threshold => ({
  value,
  unit,
  source: { ref: `Common practice, ${of}`, standing: "practice" },
});

/** What the readings of dead tests are compared with besides the tables. */
export const deadTestPractice = {
  /** A low-resistance reading may be this far out, Ω: two digits and the rounding of a meter that shows hundredths. */
  meterUncertainty: practice(0.03, "Ω", "low-resistance meters"),
  /** The least step between two readings of such a meter, Ω. */
  meterStep: practice(0.01, "Ω", "low-resistance meters"),
  /** Decimals a low-resistance meter shows. */
  meterDecimals: practice(2, "", "low-resistance meters"),
  /** A reading over this share of what length and size give, and by more than `highLeast`, is too high. */
  highShare: practice(1.5, "", "continuity against length"),
  highLeast: practice(0.1, "Ω", "continuity against length"),
  /** A reading under this share, and by more than `lowLeast`, is too low. */
  lowShare: practice(0.7, "", "continuity against length"),
  lowLeast: practice(0.05, "Ω", "continuity against length"),
  /** A reading this near to a power of ten of what is expected is a slip of the decimal point. */
  slipShare: practice(0.12, "", "slips of the decimal point"),
  /** From this on line and protective conductor count as open, Ω: 500 m of 1 mm² and 1 mm² come to 18 Ω (BS EN 60228). */
  openLeast: practice(20, "Ω", "conductors that are open: 500 m of 1 mm² come to 18 Ω"),
  /** A protective conductor that reads as less than this much cable, m, has another path beside it. */
  impliedLength: practice(1, "m", "parallel paths"),
  /** By how much r2/r1 of a ring may leave the ratio of the sizes. */
  ringRatio: practice(0.15, "", "ring final circuit test"),
  /** By how much R2/R1 of a radial may leave the ratio of the sizes. */
  radialRatio: practice(0.25, "", "continuity of protective conductors"),
  /** R2 within this of its part of R1+R2, Ω, agrees whatever the ratio: two readings are out, each by its digits. */
  partLeast: practice(0.045, "Ω", "continuity of protective conductors"),
  /** Share of what a spur adds by which its length may be out. */
  spurShare: practice(0.1, "", "ring final circuit test"),
  /** R1+R2 above this share of r1 + r2 was not divided by four. */
  undivided: practice(0.6, "", "ring final circuit test"),
  /** A share within which two figures are taken for the same one. */
  sameShare: practice(0.05, "", "ring final circuit test"),
  /** Points that differ by less than this round a ring, Ω, may read alike: two digits of the meter either way hide it. */
  alikeSpread: practice(0.05, "Ω", "ring final circuit test"),
  /** Points it takes before like readings are remarkable. */
  alikePoints: practice(4, "", "ring final circuit test"),
  /** Rings it takes before a repeated coincidence is remarkable. */
  alikeRings: practice(3, "", "signs of figures worked backwards"),
  /** The warmest a conductor is taken to be where no temperature was noted, °C. */
  warmest: practice(30, "°C", "temperature at the dead tests"),
  /** What new wiring should at least show, Ω: no limit, but sound new cable reads far more. */
  newInsulation: practice(2e6, "Ω", "insulation resistance of new wiring"),
  /** A way below this share of its board's median is an outlier. */
  insulationOutlier: practice(0.1, "", "insulation resistance of a board's circuits"),
  /** Ways it takes to speak of neighbours. */
  insulationWays: practice(4, "", "insulation resistance of a board's circuits"),
  /** Ways that are all below this, Ω, and alike within `alikeInsulation`, share a cause. */
  lowInsulation: practice(20e6, "Ω", "insulation resistance of a board's circuits"),
  alikeInsulation: practice(2, "", "insulation resistance of a board's circuits"),
  /** Line to neutral below this, Ω, is a load left connected rather than insulation. */
  loadLeft: practice(0.05e6, "Ω", "insulation resistance"),
  /** By how much a board's total may leave what its ways give in parallel. */
  insulationTotal: practice(2, "", "insulation resistance of a board"),
  /** By how much it may be above its lowest way, which is the uncertainty of a meter. */
  insulationTolerance: practice(0.1, "", "insulation resistance of a board"),
} as const satisfies Record<string, Threshold>;

/** Length, m, to which a 30 or 32 A ring of 2.5 mm² usually keeps its voltage drop and its loop impedance. */
export const usualRingLength: Threshold & { readonly csa: number } = {
  value: 106,
  unit: "m",
  csa: 2.5,
  source: lasting({ ref: "IET On-Site Guide, Table 7.1", standing: "memory" }),
};
