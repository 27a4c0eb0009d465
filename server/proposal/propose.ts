/**
 * From load, length, route, place and use to device, cable and protective conductor: one decision after the other, at
 * each of them the smallest that fits, with what rules out the next smaller.
 */
import { boardDrop, dropAbove } from "../boards/drop-path.ts";
import { networkOf } from "../boards/network.ts";
import type { WayStudy } from "../circuit/way.ts";
import type { Installation } from "../model/installation.ts";
import type { TextEdit } from "../text/lines.ts";
import { attempt, fits, type Task } from "./attempt.ts";
import { constructionOf } from "./cable.ts";
import { type Compared, compare } from "./compare.ts";
import { containmentFor } from "./containment.ts";
import { demandOf } from "./demand.ts";
import { kindOf } from "./device.ts";
import { type Draft, decision } from "./draft.ts";
import { withGrouping } from "./grouping.ts";
import { type CableChoice, cableText, type DeviceChoice, deviceText, editsFor, statementText } from "./lines.ts";
import type { Proposal, Wants } from "./proposal.ts";
import { record } from "./record.ts";
import { type UsualRoute, withUsualRoute } from "./usual-route.ts";
import type { Place } from "./verdict.ts";

/**
 * With the installation a feeder carries what its board draws, and the drop of the feeders before the board is counted;
 * without it that is reported as left out.
 */
export function propose(study: WayStudy, wants: Wants = {}, installation?: Installation): Proposal {
  const draft: Draft = { decisions: [], ruledOut: [], open: [] };
  if (study.isSpare) return ended(draft, "missing", ["a circuit: this way is spare"]);
  const grouped = withGrouping(study, installation);
  const demand = demandOf(study, wants, installation);
  const kind = kindOf(study);
  const construction = constructionOf(study);
  const missing = [demand, kind, construction].flatMap((one) => ("missing" in one ? [one.missing] : []));
  if (wants.assumeRoute && missing.length === 1 && "missing" in construction) {
    const assumed = withUsualRoute(study);
    if (assumed) return unwritten(propose(assumed.study, { ...wants, assumeRoute: false }, installation), assumed);
  }
  if ("missing" in demand || "missing" in kind || "missing" in construction) return ended(draft, "missing", missing);
  const { words, steps, source } = demand;
  draft.decisions.push(decision("Design current", `Ib = ${words}`, steps, source));
  if (demand.how === "assumed")
    draft.open.push(`The design current was assumed: ${words.replace(/^[^:]*assumed: /, "")}.`);
  draft.open.push(...(demand.open ?? []));
  const place = placeOf(study, installation);
  for (const { words, steps, source } of grouped.found)
    draft.decisions.push(decision("Grouping", words, steps, source));
  const task: Task = { study: grouped.study, wants, demand, construction, place };
  return compared(task, compare(task, attempt(task, kind)), draft, { study, edits: grouped.edits, installation });
}

/** What holds for a route that nobody wrote is no reason to write it into the way. */
function unwritten({ fix: _, ...proposal }: Proposal, { line, source }: UsualRoute): Proposal {
  return {
    ...proposal,
    decisions: [decision("Route", `${line}, assumed`, [], source), ...proposal.decisions],
    open: [`The route was assumed: ${line}. Write how the cable runs, then size it again.`, ...proposal.open],
  };
}

function placeOf(study: WayStudy, installation: Installation | undefined): Place {
  const node = installation && networkOf(installation).nodes.find(({ board }) => board.head === study.context.board);
  if (!node) return {};
  const drop = boardDrop(node);
  return { node, above: { ...drop, ...dropAbove(drop, study) } };
}

const ended = (draft: Draft, outcome: Proposal["outcome"], reasons: readonly string[]): Proposal => ({
  outcome,
  reasons,
  ...draft,
});

/** The way as it stands, and what besides device and cable is to be written into it. */
interface Standing {
  readonly study: WayStudy;
  readonly edits: readonly TextEdit[];
  readonly installation: Installation | undefined;
}

function compared(
  { construction, place }: Task,
  { chosen, ...told }: Compared,
  draft: Draft,
  { study, edits, installation }: Standing,
): Proposal {
  const { kind } = chosen;
  draft.decisions.push(decision("Kind of device", kind.words, [], kind.source), ...told.decisions);
  draft.decisions.push(decision("Kind of cable", construction.words, [], construction.source));
  draft.decisions.push(...chosen.draft.decisions);
  draft.ruledOut.push(...told.ruledOut, ...chosen.draft.ruledOut);
  draft.open.push(...chosen.draft.open, ...told.open);
  if (!fits(chosen)) return ended(draft, "none", [chosen.reason]);
  const { found, rcd, device } = chosen;
  const { above } = place;
  record(found, { construction, rcd, device, ...(above ? { above } : {}) }, draft);
  const more = containmentFor({ study, trial: found.trial, installation }, draft);
  return finished({ study, trial: found.trial, device, cable: found.candidate.choice }, [...edits, ...more], draft);
}

interface Outcome {
  readonly study: WayStudy;
  readonly trial: WayStudy;
  readonly device: DeviceChoice;
  readonly cable: CableChoice;
}

function finished({ study, trial, device, cable }: Outcome, more: readonly TextEdit[], draft: Draft): Proposal {
  const lines = {
    device: statementOf(trial, "device") ?? deviceText(device),
    cable: statementOf(trial, "cable") ?? cableText(cable),
    ...(device.beside ? { rcd: device.beside } : {}),
  };
  const edits = [...editsOf(study, device, cable), ...more];
  const fix = { title: `Write ${lines.device} and ${lines.cable}`, edits, safe: false };
  return { outcome: "fits", reasons: [], ...draft, open: [...new Set(draft.open)], ...lines, fix };
}

const statementOf = ({ facts }: WayStudy, word: "device" | "cable"): string | undefined => {
  const fact = facts.one(word);
  return fact && statementText(fact);
};

/** A cable type that describes the very cable proposed stays what it is. */
function editsOf(study: WayStudy, device: DeviceChoice, cable: CableChoice): TextEdit[] {
  const old = study.cable;
  const typed = old?.fact !== old?.described && old?.line === cable.line && old?.cpc === cable.cpc;
  return editsFor(study.way, device, typed ? undefined : cable);
}
