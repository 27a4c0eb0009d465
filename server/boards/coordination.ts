/** Device over device: whether the one nearest a fault opens alone, as far as ratings and types tell. */

import { fallsShort } from "../calc/compare.ts";
import type { Calculated } from "../calc/result.ts";
import { amps, plain, round, step } from "../calc/result.ts";
import { deviceName } from "../circuit/describe.ts";
import { memoOfBoard, memoOfWhole } from "../circuit/kept.ts";
import { hasOwnSource } from "../circuit/supply.ts";
import { magneticBand } from "../circuit/trip.ts";
import type { Device } from "../circuit/way.ts";
import type { Context } from "../model/installation.ts";
import type { Fact } from "../model/values.ts";
import { selectivityRatios } from "../tables/coordination.ts";
import { combine, fromFormula, type Source } from "../tables/source.ts";
import { familyOf } from "../tables/standard-values.ts";
import { known } from "../tables/table.ts";
import type { BoardNode, StudiedBoard } from "./network.ts";

/** A device of a feeder, or the fuse of the distributor, as what stands behind it sees it. */
interface DeviceAbove {
  /** `the 63 A BS 88-2 that feeds board W`, `the 100 A BS 88-3 cut-out`. */
  readonly name: string;
  readonly short: string;
  readonly rating: number;
  readonly fact: Fact;
  readonly isCutout: boolean;
  /** Who alone may change it. */
  readonly owner: string;
  /** A fuse of class gG. */
  readonly isGeneral: boolean;
}

/** A device upstream and the worst of those behind it that may open with it. */
export interface Overlap {
  readonly above: DeviceAbove;
  readonly below: Device;
  /** What the device upstream has, and the least it should have, A. */
  readonly value: Calculated;
  readonly limit: Calculated;
  readonly others: readonly Device[];
}

interface Behind {
  readonly device: Device;
  readonly rating: number;
  /** From where its magnetic release surely works, A; nothing for a fuse. */
  readonly trips: Calculated | undefined;
}

/** What stands before a board and opens with it: the device of its feeder, or the cut-out. */
export const deviceAbove = memoOfWhole((node: BoardNode): DeviceAbove | undefined => {
  const device = node.feeder?.device;
  if (device) {
    const { rating, fact } = device;
    if (rating === undefined) return undefined;
    const short = deviceName(device);
    const name = `${short} that feeds board ${node.board.head.name}`;
    return { name, short, rating, fact, isCutout: false, owner: "designer", isGeneral: isGeneralFuse(device) };
  }
  const { context } = node;
  const cutout = context.supply?.one("cutout");
  if (!cutout || context.board.facts.one("fed-from")?.args.from.value !== "supply") return undefined;
  const { rating, standard } = cutout.args;
  const short = `${amps(rating.value)} ${standard.value} cut-out`;
  const isGeneral = generalFamilies.has(familyOf(standard.value) ?? "");
  const owner = hasOwnSource(context.supply) ? "owner of the supply" : "distributor";
  return { name: short, short, rating: rating.value, fact: cutout, isCutout: true, owner, isGeneral };
});

/** The circuits that lose their supply with a device: one alone is as dead by its own. */
const hasSeveral = (node: BoardNode, above: DeviceAbove): boolean =>
  !above.isCutout || node.board.ways.filter(({ kind }) => kind !== "spare").length > 1;

const devicesOn = memoOfBoard(({ studies }: StudiedBoard): readonly Behind[] =>
  studies.flatMap((study) => {
    const { device } = study;
    if (!device || device.rating === undefined || study.isSpare) return [];
    return [{ device, rating: device.rating, trips: magneticBand(study)?.to }];
  }),
);

/** Devices no larger than the one upstream: of larger ones another check speaks. */
const smallerOn = (node: BoardNode, most: number): readonly Behind[] =>
  devicesOn(node).filter(({ rating }) => rating <= most);

const generalFusesOn = memoOfBoard((place: StudiedBoard): readonly Behind[] =>
  devicesOn(place).filter(({ device }) => isGeneralFuse(device)),
);

const byRating = memoOfBoard(
  (place: StudiedBoard): ReadonlyMap<number, readonly Behind[]> =>
    Map.groupBy(devicesOn(place), ({ rating }) => rating),
);

/** A device of another kind with the rating of the one upstream: on an overload either may open first. */
export function sameRating(node: BoardNode): Overlap | undefined {
  const above = deviceAbove(node);
  const alike = above && byRating(node).get(above.rating);
  if (!alike || !hasSeveral(node, above)) return undefined;
  const [first, ...others] = alike.filter(({ device }) => !(above.isGeneral && isGeneralFuse(device)));
  if (!first) return undefined;
  const steps = [
    step("In downstream < In upstream", `${amps(first.rating)} against ${amps(above.rating)}`, "does not hold"),
  ];
  const limit: Calculated = { value: above.rating, unit: "A", steps: [], source: sameRatingSource };
  return { above, below: first.device, value: { ...limit, steps }, limit, others: others.map(({ device }) => device) };
}

const sameRatingSource: Source = {
  ref: "BS 7671:2018+A2:2022, 536.4.1",
  standing: "practice",
  note: "Devices of one rating have time-current bands that overlap.",
};

/** Breaker over breaker: the upstream one may trip at once before the one behind it surely does. */
export function magneticOverlap(node: BoardNode): Overlap | undefined {
  const { feeder } = node;
  const above = deviceAbove(node);
  const value = feeder && magneticBand(feeder)?.from;
  if (!above || !value) return undefined;
  const over = smallerOn(node, above.rating).flatMap(({ device, trips }) =>
    trips && trips.value > value.value ? [{ device, trips }] : [],
  );
  const [worst, ...others] = over.toSorted((one, other) => other.trips.value - one.trips.value);
  if (!worst) return undefined;
  const source = { ...combine(value.source, worst.trips.source), standing: "practice" } as const;
  return {
    above,
    below: worst.device,
    value,
    limit: { ...worst.trips, steps: worst.trips.steps, source },
    others: others.map(({ device }) => device),
  };
}

/**
 * How far the device of a feeder and those behind it discriminate, as far as what is published tells: whole, up to a
 * current, or not known. Releases without a delay are compared by their bands, gG fuses by their ratio.
 */
interface Discrimination {
  readonly kind: "total" | "partial" | "unknown";
  /** A, where it is partial. */
  readonly upTo: Calculated | undefined;
  readonly why: string;
}

/** For the greatest fault (A) at the board; nothing where the board has no feeder with a device. */
export function discrimination(node: BoardNode, greatest: number | undefined): Discrimination | undefined {
  const { feeder } = node;
  const above = feeder?.device;
  if (!feeder || above?.rating === undefined) return undefined;
  const behind = smallerOn(node, above.rating);
  if (behind.length === 0) return undefined;
  if (isGeneralFuse(above) && behind.every(({ device }) => isGeneralFuse(device)))
    return fuseRatio(node)
      ? { kind: "unknown", upTo: undefined, why: "the ratio of the fuses is less than their makers ask" }
      : { kind: "total", upTo: undefined, why: "by the ratio of the fuses" };
  const delayed = above.settings?.short !== undefined && above.settings.instantaneous === undefined;
  const from = magneticBand(feeder)?.from;
  const known = behind.every(({ trips }) => trips !== undefined);
  if (!known || (!from && !delayed))
    return { kind: "unknown", upTo: undefined, why: "the makers’ tables decide between devices of these kinds" };
  if (!from) return { kind: "total", upTo: undefined, why: "the device of the feeder waits" };
  if (greatest !== undefined && greatest <= from.value)
    return { kind: "total", upTo: from, why: "no fault here reaches what opens the device of the feeder at once" };
  return { kind: "partial", upTo: from, why: "above it both may open at once: ask the makers for more" };
}

/**
 * Fuse over fuse of general-purpose class: the ratio of the ratings. They are rounded figures of a series of preferred
 * numbers, in which 63 over 40 A and 100 over 63 A are meant by the same ratio as 160 over 100 A.
 */
export function fuseRatio(node: BoardNode): Overlap | undefined {
  const above = deviceAbove(node);
  const fuses = above?.isGeneral ? generalFusesOn(node) : [];
  if (!above || fuses.length === 0 || !hasSeveral(node, above)) return undefined;
  const ratio = known(selectivityRatios, { key: "fuse-fuse" }, "value");
  const { rating } = above;
  // Of larger ones another check speaks.
  const over = fuses.filter(
    (behind) => behind.rating <= rating && fallsShort(round(rating / behind.rating, 1), ratio.value),
  );
  const [worst, ...others] = over.toSorted((one, other) => other.rating - one.rating);
  if (!worst) return undefined;
  const least = ratio.value * worst.rating;
  const numbers = `${plain(ratio.value)} × ${amps(worst.rating)}`;
  const limit: Calculated = {
    value: least,
    unit: "A",
    steps: [step("In upstream ≥ ratio × In", numbers, amps(least))],
    source: fromFormula(ratio.source),
  };
  const value: Calculated = { value: rating, unit: "A", steps: [], source: ratio.source };
  return { above, below: worst.device, value, limit, others: others.map(({ device }) => device) };
}

/** Fuses to BS 88-3 are of class gG all of them. */
const generalFamilies: ReadonlySet<string> = new Set(["BS 88-2", "BS 88-3"]);

const isGeneralFuse = (device: Device | undefined): boolean =>
  generalFamilies.has(device?.family ?? "") && (device?.fact.args.class?.value ?? "gG") === "gG";

/** A device that keeps the current of a board within its rating. */
export interface Protecting {
  readonly rating: number;
  readonly name: string;
  readonly fact: Fact;
}

/** What protects the main switch of a board against overload: the device of its feeder, or the cut-out. */
export function protecting(context: Context): Protecting | undefined {
  const [above] = context.upstream;
  const fact = above?.feeder?.facts.one("device");
  if (fact) {
    const set = above?.feeder?.facts.one("settings")?.args.thermal?.value;
    const rating = set ?? fact.args.curve?.rating ?? fact.args.rating?.value;
    return rating === undefined ? undefined : { rating, name: "the device of the feeder", fact };
  }
  const cutout = context.supply?.one("cutout");
  if (!cutout || context.board.facts.one("fed-from")?.args.from.value !== "supply") return undefined;
  return { rating: cutout.args.rating.value, name: "the cut-out", fact: cutout };
}

/** What protects all that lies behind the main switch: what is upstream, or the main switch where it is a breaker or fuse. */
export function protectingInside(context: Context): Protecting | undefined {
  const above = protecting(context);
  const fact = context.board.facts.one("main-switch");
  if (!fact || !isOvercurrent(fact.args.standard.value)) return above;
  const rating = fact.args.rating.value;
  return above && above.rating <= rating ? above : { rating, name: "the main breaker", fact };
}

/** Whether a product of a standard opens on overload. */
export const isOvercurrent = (standard: string): boolean =>
  familyOf(standard) !== undefined || /60947-2\b/.test(standard.replace(/\s+/g, ""));
