import { memory, practice, quoted, type Row, table } from "./table.ts";

/** The protective device families the tables know. */
export type Family = "breaker" | "legacy-breaker" | "BS 88-2" | "BS 88-3" | "BS 3036" | "BS 1361" | "BS 1362";

export type Fuse = Exclude<Family, "breaker" | "legacy-breaker">;

/** Whether a device melts; of one to a standard that is not known here nobody can tell. */
export const isFuse = (family: Family | undefined): family is Fuse =>
  family !== undefined && family !== "breaker" && family !== "legacy-breaker";

const families: readonly (readonly [RegExp, Family])[] = [
  [/60898|61009/, "breaker"],
  [/3871/, "legacy-breaker"],
  [/88-?3/, "BS 88-3"],
  // Parts 2.2 and 6 were taken over by part 2, with the same loop limits.
  [/88-?(2|6)|60269-2/, "BS 88-2"],
  [/3036/, "BS 3036"],
  [/1361/, "BS 1361"],
  [/1362/, "BS 1362"],
];

/** The family of a device from its standard as a schedule writes it ("BS EN 61009-1", "bs88-2.2"). */
export function familyOf(standard: string): Family | undefined {
  const text = standard.toUpperCase().replace(/\s+/g, "");
  return families.find(([pattern]) => pattern.test(text))?.[1];
}

/** A standard rating of a device family. */
interface StandardRating {
  readonly family: Family;
  /** Rated current, A. */
  readonly rating: number;
}

const remembered = (family: Family, ...ratings: number[]): Row<StandardRating>[] =>
  ratings.map((rating) => memory({ family, rating }));
const seen = (family: Family, ...ratings: number[]): Row<StandardRating>[] =>
  ratings.map((rating) => quoted({ family, rating }));

export const standardRatings = table<StandardRating>({
  id: "standard-ratings",
  title: "Standard ratings of protective devices",
  ref: "Preferred ratings of BS EN 60898-1, BS 88, BS 3036, BS 1361 and BS 1362",
  edition: "product standards",
  applies: "Choosing the next rating up.",
  units: { family: "", rating: "A" },
  standing: "quoted",
  // Ratings are steps of a scale: what is from memory is that one is made, and no figure that could be a little off.
  share: 0,
  rows: () => [
    ...seen("breaker", 1, 2),
    ...remembered("breaker", 3),
    ...seen("breaker", 4, 6, 10, 13, 16, 20, 25, 32, 40),
    practice({ family: "breaker", rating: 45 }, {}, "Not a preferred rating, but one that is made and bought."),
    ...seen("breaker", 50, 63, 80, 100, 125),
    ...remembered("legacy-breaker", 5, 6, 10, 15, 16, 20, 30, 32, 40, 45, 50, 63, 100),
    ...seen("BS 88-2", 2, 4, 6, 10, 16, 20, 25, 32, 40, 50, 63, 80, 100, 125, 160, 200),
    ...seen("BS 88-2", 250, 315, 355, 400, 450, 500, 560, 630, 710, 800, 1000, 1250),
    ...seen("BS 88-3", 5, 16, 20, 32, 45, 63, 80, 100),
    ...seen("BS 3036", 5, 15, 20, 30, 45, 60, 100),
    ...seen("BS 1361", 5, 15, 20, 30, 45, 60, 80, 100),
    ...seen("BS 1362", 3, 13),
  ],
  // Quoted on these pages:
  // - Installation tester instruction manual, p.57: the fuses whose loop limits it lists
  // - Maximum Ze and Zs values (five-page list, 17th Edition as first issued), pp.1-3
  // - Engineer's article on IEC 60898-1: preferred ratings of circuit-breakers, 1 to 125 A
  // - Fuse makers' cross-reference for BS 88: ratings of 2 to 1250 A
  quotedOn: 4,
});

/** What has a rating and opens on no overload: switches, RCDs, busbars. Made in wider steps than breakers. */
interface SwitchRating {
  /** A. */
  readonly rating: number;
}

export const switchRatings = table<SwitchRating>({
  id: "switch-ratings",
  title: "Ratings of switches, RCDs and busbars",
  ref: "Common practice, ratings that switches, RCDs and busbars are made in",
  edition: "common practice",
  applies: "Choosing the next rating up.",
  units: { rating: "A" },
  standing: "practice",
  rows: () => [25, 32, 40, 63, 80, 100, 125, 160, 200, 250, 400, 630, 800].map((rating) => practice({ rating })),
});

/** A standard cross-section. */
interface StandardSize {
  /** mm². */
  readonly csa: number;
}

const sizes = [0.5, 0.75, 1, 1.5, 2.5, 4, 6, 10, 16, 25, 35, 50, 70, 95, 120, 150, 185, 240, 300, 400];

export const standardSizes = table<StandardSize>({
  id: "standard-sizes",
  title: "Standard cross-sections",
  ref: "BS EN 60228, nominal cross-sections",
  edition: "IEC 60228:2004",
  applies: "Choosing the next size up.",
  units: { csa: "mm²" },
  standing: "quoted",
  rows: () => sizes.map((csa) => ({ csa })),
});

/** A standard rated residual operating current. */
interface StandardResidual {
  /** A. */
  readonly residual: number;
}

export const standardResiduals = table<StandardResidual>({
  id: "standard-residuals",
  title: "Standard rated residual operating currents",
  ref: "BS 7671:2018+A2:2022, Table 41.5",
  edition: "18th Edition",
  applies: "Residual current devices.",
  units: { residual: "A" },
  standing: "computed",
  rows: () => [
    practice({ residual: 0.006 }),
    { residual: 0.01 },
    quoted({ residual: 0.03 }),
    quoted({ residual: 0.1 }),
    { residual: 0.3 },
    { residual: 0.5 },
    practice({ residual: 1 }),
  ],
});
