/** Where an RCD is needed, how fine, and what stands there. */
import type { Use } from "../../grammar/choices.ts";
import { exceeds } from "../calc/compare.ts";
import { rcdLimit } from "../calc/practice.ts";
import type { Calculated } from "../calc/result.ts";
import type { Fact } from "../model/values.ts";
import { type Edition, sixteenthId } from "../tables/editions.ts";
import { rcdRequired } from "../tables/rcd-selection.ts";
import { ruleAlone, type Source } from "../tables/source.ts";
import { rowOf, sourceOf } from "../tables/table.ts";
import { extraLow, homes, socketRating } from "./circuit-kind.ts";
import { makes } from "./constructions.ts";
import { memoByObject } from "./kept.ts";
import { placeRcdLimit, placeRcdRow, placeSpot, type SpecialLocation } from "./places.ts";
import { isInGround } from "./route-capacity.ts";
import { premisesOf } from "./supply.ts";
import type { Rcd, WayStudy } from "./way.ts";

type Reason =
  | "sockets"
  | "outdoors"
  | "dwelling-lighting"
  | "concealed"
  | "metal-frame"
  | "bathroom"
  | "floor-heating"
  | "public-lighting"
  | "park-home"
  | "ev";

/** One reason why a way needs additional protection, and the line it rests on. */
export interface Need {
  readonly reason: Reason | SpecialLocation;
  readonly fact: Fact;
  readonly source: Source;
  /** The greatest rated residual current that meets it, A. */
  readonly limit: Calculated;
}

const places: readonly SpecialLocation[] = [
  "pool",
  "sauna",
  "agricultural",
  "caravan",
  "marina",
  "construction",
  "exhibition",
  "fairground",
  "mobile-unit",
  "fire-risk",
];

/** Why this way needs an RCD, by the edition the work is judged by: what needs the finest first. A rule each asks for it. */
export const additionalProtection = memoByObject((study: WayStudy): readonly Need[] => {
  const { isFinal, isSpare, uses } = study;
  const { edition } = study.context;
  // The supply of a park home is meant though it may feed a board there.
  if ((!isFinal && (isSpare || !uses.has("park-home"))) || !edition) return [];
  if (extraLow(study) || study.supply.kind === "other") return [];
  const limit = rcdLimit("additional");
  const general = reasons.flatMap(([reason, lineOf]) => {
    const fact = lineOf(study, edition);
    return fact ? [{ reason, fact, source: sourceFor(study, reason), limit }] : [];
  });
  return [...general, ...placeNeeds(study)];
});

/**
 * Why it may need one, where what decides is not stated. Where one is needed surely that is what counts, and where a fine
 * one is there nothing is asked.
 */
export function possibleProtection(study: WayStudy): readonly Need[] {
  const { isFinal, isSpare, supply } = study;
  if (!isFinal || isSpare || extraLow(study) || supply.kind === "other") return [];
  if (additionalProtection(study).length > 0) return [];
  const limit = rcdLimit("additional");
  const found = { concealed: depthNotStated(study), "public-lighting": reachNotStated(study) } as const;
  return (["concealed", "public-lighting"] as const).flatMap((reason) => {
    const fact = found[reason];
    return fact ? [{ reason, fact, source: sourceFor(study, reason), limit }] : [];
  });
}

function placeNeeds(study: WayStudy): Need[] {
  if (study.places.size === 0) return [];
  const needs = places.flatMap((place) => {
    const row = placeRcdRow(study, place);
    const limit = row && placeRcdLimit(row);
    return limit ? [{ reason: place, fact: placeSpot(study, place), source: limit.source, limit }] : [];
  });
  return needs.sort((one, other) => one.limit.value - other.limit.value);
}

/** Each reason for a fine RCD, and the line of the way it rests on where it applies. */
const reasons: readonly (readonly [Reason, (study: WayStudy, edition: Edition) => Fact | undefined])[] = [
  ["sockets", (study, edition) => (forOrdinaryPersons(study, edition.socketRcdUpTo) ? serves(study) : undefined)],
  ["outdoors", (study) => (feedsOutdoors(study) ? serves(study) : undefined)],
  [
    "dwelling-lighting",
    (study, { lightingRcdInDwellings }) =>
      study.uses.has("lighting") && livedIn.includes(premisesOf(study.context) ?? "") && lightingRcdInDwellings
        ? serves(study)
        : undefined,
  ],
  ["concealed", (study) => (concealedCounts(study) ? concealed(study) : undefined)],
  ["metal-frame", (study) => (concealedCounts(study) ? inMetalFrame(study) : undefined)],
  ["bathroom", (study, edition) => (isSixteenth(edition) ? undefined : bathroomLine(study))],
  ["floor-heating", (study, edition) => (isSixteenth(edition) ? undefined : servesUse(study, "floor-heating"))],
  [
    "public-lighting",
    (study, { publicLightingRcd }) =>
      study.places.has("public") && publicLightingRcd ? servesUse(study, "lighting") : undefined,
  ],
  ["park-home", (study, edition) => (isSixteenth(edition) ? undefined : servesUse(study, "park-home"))],
  ["ev", (study, { id }) => (id.startsWith("BS 7671:200") ? undefined : servesUse(study, "ev-charger"))],
];

const isSixteenth = ({ id }: Edition): boolean => id === sixteenthId;

const serves = ({ facts }: WayStudy): Fact | undefined => facts.one("serves");

const servesUse = (study: WayStudy, use: Use): Fact | undefined => (study.uses.has(use) ? serves(study) : undefined);

function forOrdinaryPersons(study: WayStudy, most: number): boolean {
  if (!study.uses.has("sockets") || socketRating(study) > most) return false;
  // In a home nobody is skilled enough to do without.
  return !study.places.has("skilled-only") || homes.includes(premisesOf(study.context) ?? "");
}

function feedsOutdoors({ uses, places, device }: WayStudy): boolean {
  const portable = uses.has("mobile") || uses.has("sockets");
  const outside = uses.has("outdoor-sockets") || (portable && places.has("outdoors"));
  if (!outside || places.has("skilled-only")) return false;
  const rating = device?.rating;
  return rating !== undefined && rating <= rcdLimit("outdoors").value;
}

/** Whatever its room is called, there is a shower in it. */
const bathroomLine = (study: WayStudy): Fact | undefined =>
  study.places.has("bathroom") ? placeSpot(study, "bathroom") : servesUse(study, "shower");

/** Premises whose lighting people live with, flats of tall buildings and rooms of students included. */
const livedIn: readonly string[] = [...homes, "tall-residential", "student", "outbuilding"];

/** Whether there is earthed metal round the cable: then neither nail nor frame makes anything live. */
function inEarthedMetal({ cable }: WayStudy): boolean {
  if (!cable || makes[cable.construction].inMetal) return true;
  // Steel conduit or trunking that serves as the protective conductor is earthed metal.
  return cable.cpcBy === "conduit" || cable.cpcBy === "trunking";
}

/** A stretch in a wall with metal parts, at whatever depth. */
const inMetalFrame = (study: WayStudy): Fact | undefined =>
  inEarthedMetal(study) ? undefined : study.facts.all("route").find(({ args }) => args.framed !== undefined);

/** Whether the edition asks anything of a cable in a wall, of those whom only skilled persons use too. */
function concealedCounts({ places, context: { edition } }: WayStudy): boolean {
  if (!edition || edition.id === sixteenthId) return false;
  return edition.concealedAlways || !places.has("skilled-only");
}

/** A stretch in a wall of which nothing says how deep it lies: it may be within reach of a nail. */
function depthNotStated(study: WayStudy): Fact | undefined {
  if (!study.cable || inEarthedMetal(study) || !concealedCounts(study)) return undefined;
  return study.facts.all("route").find(({ args }) => {
    const inWall = args.kind?.value === "wall" || (args.method && inWalls.includes(args.method.value));
    return inWall && args.depth === undefined;
  });
}

/** Methods of a cable inside a stud wall. */
const inWalls: readonly string[] = ["102", "103"];

/** Lights outdoors of which nothing says whether the public reach them, where the public come. */
function reachNotStated({ uses, places, facts, context }: WayStudy): Fact | undefined {
  const outdoors = uses.has("lighting") && places.has("outdoors") && context.edition?.publicLightingRcd;
  const settled = places.has("public") || places.has("skilled-only") || ownGround.has(premisesOf(context) ?? "");
  return outdoors && !settled ? facts.one("serves") : undefined;
}

/** Premises where nobody comes by but who works or lives there. */
const ownGround: ReadonlySet<string> = new Set(["industrial", "agricultural", "outbuilding"]);

/** A stretch in a wall shallower than allowed, in a cable without earthed metal round it. */
function concealed(study: WayStudy): Fact | undefined {
  if (inEarthedMetal(study)) return undefined;
  const least = rcdLimit("concealed").value;
  // In the ground a depth says something else.
  return study.facts
    .all("route")
    .find((route) => !isInGround(route) && route.args.depth !== undefined && route.args.depth.value < least);
}

function sourceFor(study: WayStudy, reason: Reason): Source {
  const sources = study.context.edition?.sources;
  if (reason === "sockets" && sources) return sources.socketRcd;
  if (reason === "dwelling-lighting" && sources) return sources.lightingRcd;
  const row = rowOf(rcdRequired, { key: reason });
  if (!row) throw new Error(`${rcdRequired.id} lacks ${reason}`);
  const { standing } = sourceOf(rcdRequired, row, "limit");
  // 30 mA is a step of a scale: what may be remembered wrongly is the rule and no figure.
  return ruleAlone({ ref: `BS 7671:2018+A2:2022, ${row.facts.clause}`, standing });
}

/** The RCDs of a way fine enough for additional protection. */
export const fineRcds = (study: WayStudy): readonly Rcd[] =>
  study.rcds.filter((rcd) => meets(rcd, rcdLimit("additional")));

/** Whether an RCD is as fine as a limit asks. */
export const meets = ({ sensitivity }: Pick<Rcd, "sensitivity">, limit: Pick<Calculated, "value">): boolean =>
  !exceeds(sensitivity, limit.value);

/** Whether a need is for the protection of a person who touches, and not only against faults and fire. */
export const protectsPersons = ({ limit }: Need): boolean =>
  meets({ sensitivity: limit.value }, rcdLimit("additional"));

/** Whether the way up to the supply can be followed: an RCD may stand in the part that cannot. */
function feedKnown({ board, upstream }: WayStudy["context"]): boolean {
  const last = upstream.at(-1)?.board ?? board;
  const from = last.facts.one("fed-from")?.args.from.value;
  return (from === undefined || from === "supply") && !last.facts.isUnread("fed-from");
}

/** Whether what is written of RCDs here is whole: a broken line or an unknown name may be the one that is missed. */
export function rcdsKnown({ facts, context }: WayStudy): boolean {
  const board = context.board.facts;
  const behind = facts.one("behind")?.args.rcd.value;
  const found = behind === undefined || board.all("rcd").some((rcd) => rcd.args.name.value === behind);
  const whole = (words: readonly string[], broken: readonly string[]) => !words.some((word) => broken.includes(word));
  return (
    found &&
    feedKnown(context) &&
    whole(["device", "behind", "rcd"], facts.broken) &&
    whole(["rcd", "main-switch"], board.broken)
  );
}
