import { milliamps } from "../../calc/result.ts";
import {
  additionalProtection,
  fineRcds,
  meets,
  type Need,
  possibleProtection,
  rcdsKnown,
} from "../../circuit/additional-protection.ts";
import { deviceName, laterRule } from "../../circuit/describe.ts";
import { ownRcd } from "../../circuit/places.ts";
import type { WayStudy } from "../../circuit/way.ts";
import type { Fix } from "../../model/problems.ts";
import { combine } from "../../tables/source.ts";
import { amountOf, factSpot, type Reporter, type Severity } from "../frame/rule.ts";
import { lineAfter } from "./writing.ts";

/** How a missing RCD is judged where that is not as always, and what is added to the message. */
interface Grade {
  readonly most?: Severity | undefined;
  readonly note?: string;
}

/** Reports a way that needs additional protection for one reason and has no RCD at all. `grade` is asked for such a way alone. */
export function reportMissing(
  study: WayStudy,
  report: Reporter,
  reason: Need["reason"],
  what: string,
  grade: () => Grade = () => ({}),
): void {
  if (study.rcds.length > 0 || !rcdsKnown(study)) return;
  const needs = additionalProtection(study);
  const need = needs.find((one) => one.reason === reason);
  // One RCD is missing, however many rules ask for it; but a departure from one of them excuses none of the others.
  if (!need || (need !== needs[0] && !mayDepart(study))) return;
  const { device } = study;
  const reasons = needs.map(({ reason, fact }) => study.placeLine(reason) ?? fact);
  const others = [...new Set(reasons)].filter((fact) => fact !== need.fact);
  const { limit } = need;
  const later = laterRule(study);
  const { most, note = "" } = grade();
  report(factSpot(need.fact), {
    message: `${what} an RCD of ${milliamps(limit.value)} or less; way ${study.way.id} has none.${note}${later.words}`,
    limit: amountOf(limit),
    steps: limit.steps,
    source: combine(need.source, limit.source),
    ...(later.severity ? { severity: later.severity } : most ? { severity: most } : {}),
    related: [
      ...(device
        ? [{ spot: factSpot(device.fact), message: `The ${deviceName(device)} device has no RCD function.` }]
        : []),
      ...others.map((fact) => ({
        spot: factSpot(fact),
        message:
          fact === study.placeLine(reason)
            ? "The location stated for the whole board."
            : "This line requires an RCD as well.",
      })),
    ],
    fixes: fixesFor(study, limit.value),
  });
}

/** Reports a way that may need additional protection for one reason, as nothing states otherwise, and has no RCD fine enough. */
export function reportPossible(
  study: WayStudy,
  report: Reporter,
  reason: Need["reason"],
  what: string,
  cure: string,
): void {
  const need = possibleProtection(study).find((one) => one.reason === reason);
  if (!need || fineRcds(study).length > 0 || !rcdsKnown(study)) return;
  const later = laterRule(study);
  report(factSpot(need.fact), {
    message: `${what} an RCD of ${milliamps(need.limit.value)} or less, and way ${study.way.id} has none: ${cure}.${later.words}`,
    limit: amountOf(need.limit),
    source: need.source,
    ...(later.severity ? { severity: later.severity } : {}),
    fixes: rcboInstead(study, need.limit.value),
  });
}

/** Whether a departure stands where it could reach this way. */
const mayDepart = ({ facts, context }: WayStudy): boolean =>
  [facts, context.board.facts, context.installation.facts].some((place) => place.has("departure"));

/** An RCBO in the breaker's place, or the board's RCD where it has just one that serves. */
function fixesFor(study: WayStudy, limit: number): Fix[] {
  const { device, context } = study;
  const fine = context.board.facts.all("rcd").filter(({ args }) => args.sensitivity.value <= limit && !args.delay);
  const [only] = fine;
  const behind = only?.args.name.value;
  const shared = device && only && fine.length === 1 && !ownRcd(study);
  return [
    ...(shared ? [lineAfter(device.fact, `behind ${behind}`, `Put it behind ${behind}`)] : []),
    ...rcboInstead(study, limit),
  ];
}

/** The way's breaker with an RCD function of its own. */
export function rcboInstead({ device }: WayStudy, limit: number): Fix[] {
  if (device?.family !== "breaker" || !device.standard.includes("60898")) return [];
  const { standard } = device.fact.args;
  const { end } = device.fact;
  const words = `${milliamps(limit)} type A`;
  const edits = [
    { start: standard.start, end: standard.end, text: standard.value.replace("60898", "61009") },
    { start: end, end, text: ` ${words}` },
  ];
  return [{ title: `Make the device an RCBO, ${words}`, edits, safe: false }];
}

/** The needs of a way that are met by an RCD, but none fine enough. */
export function coarseOnly(study: WayStudy) {
  const rcd = study.rcds.toSorted((one, other) => one.sensitivity - other.sensitivity)[0];
  if (!rcd || !rcdsKnown(study)) return undefined;
  const need = additionalProtection(study).find(({ limit }) => !meets(rcd, limit));
  return need && { need, rcd };
}
