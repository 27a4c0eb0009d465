/** What two checks of every part of a board without overload protection have in common: switch, busbars, RCDs. */

import { demandThrough, isGuarded, type RatedPart } from "../../boards/board-ratings.ts";
import { certainDemand } from "../../boards/certain-demand.ts";
import type { Protecting } from "../../boards/coordination.ts";
import type { BoardDemand } from "../../boards/demand.ts";
import { demandNotes } from "../../boards/demand-words.ts";
import type { BoardNode } from "../../boards/network.ts";
import { exceeds } from "../../calc/compare.ts";
import { nextSwitchUp } from "../../calc/minimum-size.ts";
import { amps, relation, step } from "../../calc/result.ts";
import { deviceName } from "../../circuit/describe.ts";
import type { Source } from "../../tables/source.ts";
import { capital } from "../../text/words.ts";
import { amount, factSpot, type Reporter, type Severity, valueSpot } from "../frame/rule.ts";
import { inPlaceOf } from "./writing.ts";

/** A part that neither the device upstream nor the devices downstream protect against overload. */
export function reportUnprotectedPart(part: RatedPart, source: Source, report: Reporter, severity?: Severity): void {
  const { name, fact, rating, above, behind } = part;
  if (!above || isGuarded(part) || part.isUnclear) return;
  const need = Math.min(above.rating, behind?.value ?? above.rating);
  const next = nextSwitchUp(need);
  const sum = behind ? `, downstream devices come to ${amps(behind.value)}` : "";
  const are = part.kind === "busbar" ? "are" : "is";
  report(valueSpot(fact, rating), {
    message: `${capital(name)} ${are} rated ${amps(rating.value)}; upstream ${amps(above.rating)} is allowed continuously${sum}. Fit ${next === undefined ? `at least ${amps(need)}` : amps(next)}, or a smaller device upstream.`,
    value: amount(rating.value, "A"),
    limit: amount(need, "A"),
    least: true,
    steps: [
      step("In upstream", "", amps(above.rating)),
      ...(behind?.steps ?? []),
      relation("rating ≥ In upstream, or ≥ sum of In downstream", amps(rating.value, need), amps(need, rating.value)),
    ],
    source,
    ...(severity ? { severity } : {}),
    related: [
      { spot: factSpot(above.fact), message: `Device upstream: ${amps(above.rating)}.` },
      ...(part.kind === "rcd"
        ? part.ways
            .slice(0, 8)
            .flatMap(({ way, device }) =>
              device
                ? [{ spot: factSpot(device.fact), message: `Downstream: way ${way.id}, ${deviceName(device)}.` }]
                : [],
            )
        : []),
    ],
    fixes: next === undefined ? [] : [inPlaceOf(rating, amps(next), `Make it ${amps(next)}`)],
  });
}

/** A part through which more is drawn than it is rated for. */
export function reportOverloadedPart(node: BoardNode, part: RatedPart, report: Reporter): void {
  const { name, fact, rating, above } = part;
  // The device upstream keeps the current within its rating: the demand on that device is for other checks.
  if (above && above.rating <= rating.value) return;
  const demand = demandThrough(node, part);
  if (!demand || !exceeds(demand.greatest.value, rating.value)) return;
  const { greatest } = demand;
  const certain = certainDemand(node, new Set(part.ways.map(({ way }) => way)));
  const next = nextSwitchUp(greatest.value);
  report(valueSpot(fact, rating), {
    message: `${capital(name)} of board ${node.board.head.name} ${part.kind === "busbar" ? "carry" : "carries"} ${demandNotes(demand, rating.value)}, more than the rating of ${amps(rating.value)}.${next ? ` Fit ${amps(next)}, or move circuits.` : ""}`,
    value: amount(greatest.value, "A"),
    limit: amount(rating.value, "A"),
    steps: [
      ...greatest.steps,
      relation("demand ≤ rating", amps(greatest.value, rating.value), amps(rating.value, greatest.value)),
    ],
    source: greatest.source,
    ...gradeOfDemand(demand, exceeds(certain, rating.value), above),
    related: [
      ...(above ? [{ spot: factSpot(above.fact), message: `Device upstream: ${amps(above.rating)}.` }] : []),
      ...part.ways
        .slice(0, 8)
        .map(({ way }) => ({ spot: factSpot(way.header), message: `Way ${way.id} is fed through it.` })),
    ],
    fixes: next === undefined ? [] : [inPlaceOf(rating, amps(next), `Make it ${amps(next)}`)],
  });
}

/**
 * What is drawn for certain burns a part without protection of its own, once the device upstream allows it; what comes to
 * more only with every circuit in full is a question.
 */
export function gradeOfDemand(
  { diverse, unread }: BoardDemand,
  isCertain: boolean,
  above: Protecting | undefined,
): { readonly severity?: Severity } {
  if (isCertain && above && !unread) return { severity: "error" };
  return diverse ? {} : { severity: "information" };
}
