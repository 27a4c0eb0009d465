import { additionalProtection, fineRcds, type Reason, rcdsKnown } from "../analysis/additional-protection.ts";
import { laterRule } from "../analysis/describe.ts";
import type { WayStudy } from "../analysis/way.ts";
import { rcdLimit } from "../calc/practice.ts";
import { milliamps } from "../calc/result.ts";
import type { Fix } from "../model/problems.ts";
import { combine } from "../tables/source.ts";
import { amountOf, factSpot, type Reporter } from "./rule.ts";
import { lineAfter } from "./writing.ts";

/** Reports a way that needs additional protection for one reason and stands behind no RCD at all. */
export function reportMissing(study: WayStudy, report: Reporter, reason: Reason, what: string): void {
  if (study.rcds.length > 0 || !rcdsKnown(study)) return;
  const needs = additionalProtection(study);
  const need = needs.find((one) => one.reason === reason);
  // One RCD is missing, however many rules ask for it; but a departure from one of them excuses none of the others.
  if (!need || (need !== needs[0] && !mayDepart(study))) return;
  const others = needs.filter((one) => one !== need && one.fact !== need.fact);
  const limit = rcdLimit("additional");
  const later = laterRule(study.context);
  const { device } = study;
  report(factSpot(need.fact), {
    message: `${what} an RCD of ${milliamps(limit.value)} or less, and this circuit has none.${later.words}`,
    limit: amountOf(limit),
    steps: limit.steps,
    source: combine(need.source, limit.source),
    ...(later.severity ? { severity: later.severity } : {}),
    related: [
      ...(device ? [{ spot: factSpot(device.fact), message: "The device has no residual current function." }] : []),
      ...others.map(({ fact }) => ({ spot: factSpot(fact), message: "This asks for it too." })),
    ],
    fixes: fixesFor(study),
  });
}

/** Whether a departure stands where it could reach this way. */
const mayDepart = ({ facts, context }: WayStudy): boolean =>
  [facts, context.board.facts, context.installation.facts].some((place) => place.has("departure"));

/** An RCBO in the breaker's place, or the board's RCD where it has just one that serves. */
function fixesFor(study: WayStudy): Fix[] {
  const { device, context } = study;
  const limit = rcdLimit("additional").value;
  const fine = context.board.facts.all("rcd").filter(({ args }) => args.sensitivity.value <= limit && !args.delay);
  const [only] = fine;
  const fixes: Fix[] = [];
  if (device && only && fine.length === 1) {
    const name = only.args.name.value;
    fixes.push(lineAfter(device.fact, `behind ${name}`, `Put it behind ${name}`));
  }
  if (device?.family === "breaker" && device.standard.includes("60898")) {
    const { standard } = device.fact.args;
    const { end } = device.fact;
    const edits = [
      { start: standard.start, end: standard.end, text: standard.value.replace("60898", "61009") },
      { start: end, end, text: " 30 mA type A" },
    ];
    fixes.push({ title: "Make the device an RCBO, 30 mA type A", edits, safe: false });
  }
  return fixes;
}

/** The needs of a way that are met by an RCD, but none fine enough. */
export function coarseOnly(study: WayStudy) {
  if (study.rcds.length === 0 || !rcdsKnown(study) || fineRcds(study).length > 0) return undefined;
  const [need] = additionalProtection(study);
  const rcd = study.rcds.toSorted((one, other) => one.sensitivity - other.sensitivity)[0];
  return need && rcd ? { need, rcd } : undefined;
}
