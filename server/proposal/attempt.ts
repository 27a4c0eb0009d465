/** One kind of device with the cable it needs: what a designer works out for each kind before comparing them. */

import type { WayStudy } from "../circuit/way.ts";
import { tooWeak } from "./breaking.ts";
import { type Construction, candidatesOf } from "./cable.ts";
import { type ChosenCable, chooseCable } from "./choose-cable.ts";
import type { Demand } from "./demand.ts";
import { breakingFor, type DeviceKind } from "./device.ts";
import type { Draft } from "./draft.ts";
import type { DeviceChoice } from "./lines.ts";
import type { Wants } from "./proposal.ts";
import { chooseRating, nameOf, noRating } from "./rating.ts";
import { type RcdChoice, rcdFor } from "./rcd.ts";
import { trialOf } from "./trial.ts";
import type { Place } from "./verdict.ts";

/** What stays the same whichever device is tried. */
export interface Task {
  readonly study: WayStudy;
  readonly wants: Wants;
  readonly demand: Demand;
  readonly construction: Construction;
  readonly place: Place;
}

/** A device with the smallest cable behind it. */
export interface Fitting {
  readonly kind: DeviceKind;
  readonly device: DeviceChoice;
  readonly rcd: RcdChoice;
  readonly found: ChosenCable;
  readonly draft: Draft;
}

/** A kind that was tried in vain, and why. */
interface Failing {
  readonly kind: DeviceKind;
  readonly reason: string;
  readonly draft: Draft;
  /** As far as it got before the cable. */
  readonly device?: DeviceChoice;
}

export type Attempt = Fitting | Failing;

export const fits = (attempt: Attempt): attempt is Fitting => "found" in attempt;

export function attempt(task: Task, kind: DeviceKind): Attempt {
  const { study, wants, demand, construction, place } = task;
  const draft: Draft = { decisions: [], ruledOut: [], open: [] };
  const rating = chooseRating(study, kind, demand, wants, draft);
  if (rating === undefined) return { kind, reason: noRating(study, kind, demand), draft };
  const breaking = breakingFor(study, kind);
  if (breaking === "none")
    return { kind, reason: "No breaker tabulated here breaks the fault current of this board.", draft };
  const bare: DeviceChoice = {
    standard: kind.standard,
    ...(kind.curve ? { curve: kind.curve } : {}),
    rating,
    ...(kind.class ? { class: kind.class } : {}),
    ...(breaking === undefined ? {} : { breaking }),
  };
  const candidates = candidatesOf(construction);
  const [first] = candidates;
  const base = first && trialOf(study, bare, first.choice);
  if (!base) return { kind, reason: `No table here gives sizes of ${construction.kind} cable.`, draft };
  const rcd = rcdFor(base, kind);
  const device: DeviceChoice = { ...bare, ...rcd.parts };
  const found = chooseCable({ study, device, demand, place }, candidates, draft);
  if (!found) {
    const [last] = draft.ruledOut.slice(-1);
    const advice = last ? ` The largest fails too: ${last.why}.` : "";
    const reason = `No ${construction.kind} cable fits behind ${nameOf(kind, rating)}.${advice}`;
    return { kind, reason, draft, device };
  }
  const weak = tooWeak(found.trial);
  if (weak) return { kind, reason: weak, draft, device };
  return { kind, device, rcd, found, draft };
}
