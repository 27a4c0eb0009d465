import { table } from "./table.ts";

/** The household column of the diversity table in numbers: what counts in full, and what share of the rest does. */
export interface DiversityShare {
  readonly key: "lighting" | "cookers" | "standard-circuits" | "instantaneous-heaters";
  /** Part of the load counted in full before the shares, A. */
  readonly full: number;
  /** Shares of the largest, the second and the remaining loads (of what is left, for a single load). */
  readonly largest: number;
  readonly second: number;
  readonly rest: number;
  /** Added for a socket-outlet on the control unit, A. */
  readonly socket: number;
}

export const diversityShares = table<DiversityShare>({
  id: "diversity-shares",
  title: "Diversity allowances for households, in numbers",
  ref: "IET On-Site Guide, Table A2",
  edition: "18th Edition guidance; the same figures since the 16th Edition",
  applies: "Estimation only, not a limit.",
  units: { key: "", full: "A", largest: "", second: "", rest: "", socket: "A" },
  standing: "published",
  rows: [
    { key: "lighting", full: 0, largest: 0.66, second: 0.66, rest: 0.66, socket: 0 },
    { key: "cookers", full: 10, largest: 0.3, second: 0.3, rest: 0.3, socket: 5 },
    { key: "standard-circuits", full: 0, largest: 1, second: 0.4, rest: 0.4, socket: 0 },
    { key: "instantaneous-heaters", full: 0, largest: 1, second: 1, rest: 0.25, socket: 0 },
  ],
  seen: ["TLC wholesaler book Table 6.2: allowance for diversity", "DIYWiki: diversity (domestic)"],
});
