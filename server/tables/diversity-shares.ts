import { computed, table } from "./table.ts";

/** The columns of the diversity table. */
export type DiversityColumn = "household" | "shop" | "hotel";

/** The rows of the diversity table. */
export type DiversityPurpose =
  | "lighting"
  | "heating-power"
  | "cookers"
  | "motors"
  | "instantaneous-heaters"
  | "thermostatic-heaters"
  | "standard-circuits"
  | "sockets";

/** A cell of the diversity table in numbers: what counts in full, and what share of the rest does. */
export interface DiversityShare {
  readonly key: DiversityPurpose;
  readonly column: DiversityColumn;
  /** Part of the whole load counted in full before the shares, A. */
  readonly full: number;
  /** Shares of the largest, the second and the remaining loads (of what is left, where a part counts in full). */
  readonly largest: number;
  readonly second: number;
  readonly rest: number;
  /** Added for a socket-outlet on the control unit, A. */
  readonly socket: number;
}

type Shares = readonly [full: number, largest: number, second: number, rest: number, socket?: number];

const cell = (key: DiversityPurpose, column: DiversityColumn, [full, largest, second, rest, socket = 0]: Shares) => ({
  key,
  column,
  full,
  largest,
  second,
  rest,
  socket,
});

export const diversityShares = table<DiversityShare>({
  id: "diversity-shares",
  title: "Diversity allowances, in numbers",
  ref: "IET On-Site Guide, Table A2",
  edition: "18th Edition guidance; the same figures since the 16th Edition",
  applies: "Estimation only, not a limit. Households; small shops and offices; small hotels and guest houses.",
  units: { key: "", column: "", full: "A", largest: "", second: "", rest: "", socket: "A" },
  standing: "quoted",
  rows: () => [
    cell("lighting", "household", [0, 0.66, 0.66, 0.66]),
    cell("lighting", "shop", [0, 0.9, 0.9, 0.9]),
    cell("lighting", "hotel", [0, 0.75, 0.75, 0.75]),
    cell("heating-power", "household", [10, 0.5, 0.5, 0.5]),
    cell("heating-power", "shop", [0, 1, 0.75, 0.75]),
    cell("heating-power", "hotel", [0, 1, 0.8, 0.6]),
    cell("cookers", "household", [10, 0.3, 0.3, 0.3, 5]),
    cell("cookers", "shop", [0, 1, 0.8, 0.6]),
    cell("cookers", "hotel", [0, 1, 0.8, 0.6]),
    computed(cell("motors", "household", [0, 1, 1, 1]), {}, "The table gives nothing for households: taken in full."),
    cell("motors", "shop", [0, 1, 0.8, 0.6]),
    cell("motors", "hotel", [0, 1, 0.5, 0.5]),
    cell("instantaneous-heaters", "household", [0, 1, 1, 0.25]),
    cell("instantaneous-heaters", "shop", [0, 1, 1, 0.25]),
    cell("instantaneous-heaters", "hotel", [0, 1, 1, 0.25]),
    cell("thermostatic-heaters", "household", [0, 1, 1, 1]),
    cell("thermostatic-heaters", "shop", [0, 1, 1, 1]),
    cell("thermostatic-heaters", "hotel", [0, 1, 1, 1]),
    cell("standard-circuits", "household", [0, 1, 0.4, 0.4]),
    cell("standard-circuits", "shop", [0, 1, 0.5, 0.5]),
    cell("standard-circuits", "hotel", [0, 1, 0.5, 0.5]),
    cell("sockets", "household", [0, 1, 0.4, 0.4]),
    cell("sockets", "shop", [0, 1, 0.75, 0.75]),
    cell("sockets", "hotel", [0, 1, 0.75, 0.4]),
  ],
  // Quoted on these pages:
  // - TLC wholesaler book Table 6.2: allowance for diversity
  // - DIYWiki: diversity (domestic)
  // - Contractor page quoting Guidance Note 1 Table H2
  quotedOn: 3,
});
