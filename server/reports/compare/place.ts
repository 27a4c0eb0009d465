/** What happened at one place of a comparison, and how grave it is. */
import { type Change, type Gravity, gravities } from "./change.ts";
import type { FindingChange } from "./findings.ts";

type PlaceKind = "way" | "board" | "supply" | "installation";

export interface PlaceChanges {
  readonly of: PlaceKind;
  /** By its present name: `A/3`, `A`; of what went by its former. */
  readonly where: string;
  readonly title: string;
  /** The name it had, where it has another now. */
  readonly was?: string;
  readonly state: "stays" | "came" | "went";
  /** What came or went with it, in a few words. */
  readonly content?: string;
  /** A way that took the place of a spare one, or left one. */
  readonly spare?: true;
  /** Readings that went with it. */
  readonly lost: number;
  readonly changes: readonly Change[];
  readonly findings: readonly FindingChange[];
  readonly gravity: Gravity | "none";
}

export const isChanged = ({ changes, findings, was, state }: PlaceChanges): boolean =>
  changes.length > 0 || findings.length > 0 || was !== undefined || state !== "stays";

export const rankOf = ({ gravity }: PlaceChanges): number =>
  gravity === "none" ? gravities.length : gravities.indexOf(gravity);

type Ungraded = Omit<PlaceChanges, "gravity">;

export function placeOf(place: Ungraded): PlaceChanges {
  const { changes, findings, state, lost, was } = place;
  const grades: Gravity[] = [
    ...(state === "went" && lost > 0 ? (["record"] as const) : []),
    ...changes.map(({ gravity }) => gravity),
    ...findings.map(gravityOfFinding),
    ...(state !== "stays" ? (["design"] as const) : []),
    ...(was !== undefined ? (["stated"] as const) : []),
  ];
  const [gravest] = grades.toSorted((a, b) => gravities.indexOf(a) - gravities.indexOf(b));
  return { ...place, gravity: gravest ?? "none" };
}

function gravityOfFinding({ kind, now }: FindingChange): Gravity {
  if (kind === "suppressed" || kind === "unsuppressed") return "suppressed";
  if (kind === "goes" || kind === "milder") return "remark";
  return now?.severity === "error" ? "verdict" : "suppressed";
}
