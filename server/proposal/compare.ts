/**
 * Where a fault to earth, not the load, makes the cable grow, another device may be the better answer: a breaker of a
 * gentler type, or a fuse. A designer compares before buying copper, and says what spoke against each.
 */

import { rcdLimit } from "../calc/practice.ts";
import { milliamps, ohms } from "../calc/result.ts";
import { designLoop, rcdDisconnects } from "../readings/loop.ts";
import { usualCurves } from "../tables/sizing-practice.ts";
import type { Source } from "../tables/source.ts";
import { sourceOf } from "../tables/table.ts";
import { type Attempt, attempt, type Fitting, fits, type Task } from "./attempt.ts";
import { candidatesOf } from "./cable.ts";
import { chooseCable, sizesOf } from "./choose-cable.ts";
import { faultTitles, loopTitle } from "./criteria-fault.ts";
import type { DeviceKind } from "./device.ts";
import { type Draft, decision } from "./draft.ts";
import type { DeviceChoice } from "./lines.ts";
import type { Decision, RuledOut } from "./proposal.ts";
import { nameOf } from "./rating.ts";
import { trialOf } from "./trial.ts";

export interface Compared {
  readonly chosen: Attempt;
  readonly decisions: readonly Decision[];
  readonly ruledOut: readonly RuledOut[];
  readonly open: readonly string[];
}

/** The first kind stands unless a fault made its cable grow and another kind spares that. */
export function compare(task: Task, first: Attempt): Compared {
  const plain = { chosen: first, decisions: [], ruledOut: [], open: [] };
  const grown = first.draft.ruledOut.some(({ by }) => by !== undefined && faultTitles.includes(by));
  // With a device that stays only the alternatives are listed.
  if (!grown) return plain;
  const others = alternativesTo(task, first.kind).map((one) => ({ ...one, tried: attempt(task, one.kind) }));
  const better = others.find(
    ({ against, tried }) => !against && !task.wants.keepDevice && fits(tried) && isLess(tried, first),
  );
  const last =
    fits(first) || better || task.wants.keepDevice
      ? undefined
      : others.find(
          ({ kind, tried }) => kind.family !== first.kind.family && fits(tried) && tried.rcd.open.length === 0,
        );
  const chosen = (better ?? last)?.tried ?? first;
  const rows = [
    ...(chosen === first ? [] : [{ tried: first, against: undefined }]),
    ...others.filter(({ tried }) => tried !== chosen),
  ];
  const ruledOut = [
    ...rows.flatMap(({ tried, against }) => ruledOutFor(tried, chosen, against)),
    ...byRcdAlone(task, first, chosen),
  ];
  const fuse = chosen.kind.family !== first.kind.family;
  return {
    chosen,
    decisions:
      chosen === first || !fits(chosen)
        ? []
        : [
            decision(
              "Devices compared",
              `${nameOf(chosen.kind, chosen.device.rating)} rather than ${kindName(first.kind)}: a fault to earth asks less of the cable`,
            ),
          ],
    ruledOut,
    open:
      fuse && fits(chosen)
        ? ["Nothing fits behind a breaker. The fuse needs a board that takes it: see that this one does."]
        : [],
  };
}

const isLess = (one: Fitting, other: Attempt): boolean =>
  !fits(other) || one.found.candidate.choice.line < other.found.candidate.choice.line;

const kindName = ({ standard, curve }: DeviceKind): string => (curve ? `type ${curve} ${standard}` : standard);

interface Alternative {
  readonly kind: DeviceKind;
  readonly against?: { readonly why: string; readonly source?: Source } | undefined;
}

const lower = { D: ["C", "B"], C: ["B"], B: [] } as const;
const curves = ["B", "C", "D"] as const;

/** Types of lower trip current first, then a fuse; for a fuse a breaker. What the load's inrush rules out is tried all the same. */
function alternativesTo({ study }: Task, { standard, family, curve }: DeviceKind): Alternative[] {
  const usual = usualCurves.rows.find(({ facts }) => study.uses.has(facts.use));
  const least = usual?.facts.curve ?? "B";
  const inrush = (type: "B" | "C" | "D") =>
    usual && curves.indexOf(type) < curves.indexOf(least)
      ? { why: usual.facts.reason, source: sourceOf(usualCurves, usual, "curve") }
      : undefined;
  const words = "less onerous for the cable in a fault to earth";
  if (family === "breaker" && curve) {
    const types = lower[curve].map((type) => ({
      kind: { standard, family, curve: type, words: `${standard} type ${type}: ${words}` },
      against: inrush(type),
    }));
    if (study.isRing) return types;
    const fuse = { standard: "BS 88-2", family: "BS 88-2" as const, words: `BS 88-2: ${words}` };
    return [...types, { kind: fuse, against: { why: "a fuse needs a board that takes it" } }];
  }
  if (family === "breaker" || study.isRing) return [];
  const breaker = { standard: "BS EN 60898", family: "breaker" as const, curve: least };
  const kind = { ...breaker, words: `BS EN 60898 type ${least}: ${words}` };
  return [{ kind, against: { why: "a breaker needs a board that takes it" } }];
}

/** What another device comes to, and why it was not taken. */
function ruledOutFor(tried: Attempt, chosen: Attempt, against: Alternative["against"]): RuledOut[] {
  if (!tried.device) return [];
  const candidate = nameOf(tried.kind, tried.device.rating);
  const [last] = tried.draft.ruledOut.slice(-1);
  if (!fits(tried)) return [{ candidate, why: tried.reason, ...(last?.source ? { source: last.source } : {}) }];
  const own = sizesOf(tried.found.candidate.choice);
  const theirs = fits(chosen) ? sizesOf(chosen.found.candidate.choice) : undefined;
  const smaller = last ? `: ${last.candidate} fails on ${last.why}` : "";
  if (against) return [{ candidate, why: `would need ${own}, but ${against.why}`, ...sourced(against.source) }];
  if (own === theirs) return [{ candidate, why: `no advantage: it needs ${own} as well` }];
  return [{ candidate, why: `needs ${own}${smaller}`, ...sourced(last?.source) }];
}

const sourced = (source: Source | undefined) => (source ? { source } : {});

/** A smaller cable that only an RCD would disconnect: allowed on a TN supply, but nobody's first choice, so only mentioned. */
function byRcdAlone(task: Task, first: Attempt, chosen: Attempt): RuledOut[] {
  const { study, demand, place, construction } = task;
  if (!first.device || first.kind.family !== "breaker" || study.supply.earthing === "TT") return [];
  const draft: Draft = { decisions: [], ruledOut: [], open: [] };
  const sensitivity = first.device.sensitivity ?? rcdLimit("additional").value;
  const device: DeviceChoice = {
    ...first.device,
    standard: "BS EN 61009",
    sensitivity,
    type: first.device.type ?? "A",
  };
  const found = chooseCable({ study, device, demand, place }, candidatesOf(construction), draft, loopTitle);
  const trial = found && trialOf(study, device, found.candidate.choice);
  const loop = trial && designLoop(trial);
  const limit = loop && rcdDisconnects(trial, loop.value)?.limit;
  if (!found || !loop || !limit) return [];
  if (fits(chosen) && found.candidate.choice.line >= chosen.found.candidate.choice.line) return [];
  return [
    {
      candidate: `${nameOf({ ...first.kind, standard: "BS EN 61009" }, device.rating)} ${milliamps(sensitivity)}`,
      why: `would need ${sizesOf(found.candidate.choice)}, but at ${ohms(loop.value)} only its RCD disconnects, up to ${ohms(limit.value)}: the designer's decision`,
      source: limit.source,
    },
  ];
}
