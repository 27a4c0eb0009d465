/** The RCD function of a device. */

import { residuals } from "../calc/minimum-size.ts";
import { rcdLimit } from "../calc/practice.ts";
import { rcdCovers } from "../calc/rcd-time.ts";
import { milliamps } from "../calc/result.ts";
import { additionalProtection, meets, type Need, possibleProtection } from "../circuit/additional-protection.ts";
import { ownRcd } from "../circuit/places.ts";
import type { WayStudy } from "../circuit/way.ts";
import { rcdLoads } from "../tables/rcd-limits.ts";
import type { Source } from "../tables/source.ts";
import { sourceOf } from "../tables/table.ts";
import type { DeviceKind } from "./device.ts";
import type { DeviceChoice } from "./lines.ts";

export interface RcdChoice {
  readonly parts: Pick<DeviceChoice, "standard" | "sensitivity" | "type" | "direction" | "beside">;
  readonly words: string;
  readonly source?: Source;
  readonly open: readonly string[];
}

/** What asks for an RCD on a way. */
interface Requirement {
  readonly need: Need | undefined;
  /** An electrode lets too little flow for an overcurrent device to disconnect. */
  readonly forFault: boolean;
  /** Whether nothing upstream or beside the device meets it. */
  readonly isUnmet: boolean;
  /** The greatest rated residual current that meets it, A. */
  readonly most: number;
}

/** The RCD function of the device, where a rule asks for one and nothing else gives it. */
export function rcdFor(trial: WayStudy, kind: DeviceKind): RcdChoice {
  const required = requirementOf(trial);
  const before = trial.facts.one("device")?.args.sensitivity?.value;
  if (!required.isUnmet && before === undefined) return withoutRcd(kind, required);
  return kind.family === "breaker" ? combined(trial, kind, required, before) : beside(trial, kind, required);
}

function requirementOf(trial: WayStudy): Requirement {
  const others = trial.rcds.filter(({ at }) => at !== "device");
  const [need] = [...additionalProtection(trial), ...possibleProtection(trial)];
  const forFault = trial.supply.earthing === "TT" && trial.isFinal && !trial.facts.has("class-II");
  const isFaultUnmet = forFault && others.length === 0;
  // A coarse one would do for some places; where it stands alone before an electrode, the fine one suits any electrode.
  const most = need && !isFaultUnmet ? need.limit : rcdLimit("additional");
  const isMet = !needsOneOfItsOwn(trial) && need !== undefined && others.some((rcd) => meets(rcd, need.limit));
  return { need, forFault, isUnmet: (need !== undefined && !isMet) || isFaultUnmet, most: most.value };
}

/** A charging point and some places have an RCD to themselves: one upstream does not serve. */
const needsOneOfItsOwn = (trial: WayStudy): boolean =>
  !hasOneBeside(trial) && (trial.uses.has("ev-charger") || ownRcd(trial) !== undefined);

const hasOneBeside = ({ rcds }: WayStudy): boolean => rcds.some(({ at }) => at === "way");

function withoutRcd({ standard }: DeviceKind, { need, forFault }: Requirement): RcdChoice {
  const words = need || forFault ? "by an RCD upstream already" : "no rule requires one here";
  return { parts: { standard }, words, ...(need ? { source: need.source } : {}), open: [] };
}

/** Device and RCD in one. `before`: the rated residual current of the one that is written, A. */
function combined(trial: WayStudy, kind: DeviceKind, required: Requirement, before: number | undefined): RcdChoice {
  const { need, forFault, most } = required;
  const written = trial.facts.one("device")?.args;
  const serves = before !== undefined && (!need || meets({ sensitivity: before }, need.limit));
  const sensitivity = serves ? before : nearestBelow(most);
  const least = leastType(trial);
  const type = written?.type && rcdCovers(written.type.value, least.type) ? written.type.value : least.type;
  const direction = written?.direction?.value;
  const standard = kind.standard.includes("61009") ? kind.standard : "BS EN 61009";
  const source = need?.source ?? least.source;
  return {
    parts: { standard, sensitivity, type, ...(direction ? { direction } : {}) },
    words: reasonWords(need?.reason, forFault, before !== undefined),
    ...(source ? { source } : {}),
    open: trial.uses.has("ev-charger") && !hasOneBeside(trial) && type !== "B" ? [directCurrent()] : [],
  };
}

const directCurrent = (): string =>
  `The charging equipment must detect DC above ${milliamps(rcdLimit("ev-dc").value)}: record that it does, or fit type B.`;

/** A fuse is no RCD: the way gets one of its own beside it. */
function beside(trial: WayStudy, { standard }: DeviceKind, { most, need }: Requirement): RcdChoice {
  const sensitivity = nearestBelow(most);
  const words = reasonWords(need?.reason, true, false);
  if (trial.facts.has("rcd"))
    return {
      parts: { standard },
      words,
      open: [`The RCD that is written does not serve: ${milliamps(sensitivity)} or less is required here.`],
    };
  const statement = `rcd BS EN 61008 ${milliamps(sensitivity)} type ${leastType(trial).type}`;
  return {
    parts: { standard, beside: statement },
    words: `${statement}, ${words}`,
    ...(need ? { source: need.source } : {}),
    open: [`A ${standard} device is no RCD: ${statement} is written beside it, rated no less than the device.`],
  };
}

const reasons = {
  sockets: "socket-outlets",
  outdoors: "use outdoors",
  "dwelling-lighting": "lighting in a dwelling",
  concealed: "a cable concealed in a wall",
  bathroom: "a room with a bath or shower",
  ev: "a charging point",
  pool: "a swimming pool",
  agricultural: "where animals are kept or crops handled",
  caravan: "a caravan or camping park",
  marina: "a marina",
  construction: "a construction site",
  sauna: "a sauna",
  exhibition: "an exhibition",
  fairground: "a fairground",
  "mobile-unit": "a mobile or transportable unit",
  "fire-risk": "a location with a risk of fire",
  "metal-frame": "a cable in a metal-framed wall",
  "floor-heating": "floor heating",
  "public-lighting": "lighting within reach of the public",
  "park-home": "a park home",
} as const satisfies Readonly<Record<Need["reason"], string>>;

function reasonWords(need: Need["reason"] | undefined, forFault: boolean, before: boolean): string {
  if (need) return `required for ${reasons[need]}`;
  return forFault ? "required by the TT supply" : before ? "as written" : "";
}

const nearestBelow = (most: number): number => residuals.filter((residual) => residual <= most).at(-1) ?? most;

/** The weakest type that is not blinded by what is served. Type AC is proposed nowhere. */
function leastType({ uses }: WayStudy): { readonly type: "A" | "F" | "B"; readonly source?: Source } {
  const rows = rcdLoads.rows.filter(({ facts }) => uses.has(facts.use));
  const [first] = rows;
  if (!first) return { type: "A" };
  const strongest = rows.reduce((best, one) => (rcdCovers(best.facts.type, one.facts.type) ? best : one), first);
  return { type: strongest.facts.type, source: sourceOf(rcdLoads, strongest, "type") };
}
