/**
 * From load, length, route, place and use to device, cable and protective conductor: one decision after the other, at
 * each of them the smallest that fits, with what rules out the next smaller.
 */
import { type BoardDrop, boardDrop } from "../analysis/drop-path.ts";
import { networkOf } from "../analysis/network.ts";
import type { WayStudy } from "../analysis/way.ts";
import type { Installation } from "../model/installation.ts";
import type { TextEdit } from "../text/lines.ts";
import { tooWeak } from "./breaking.ts";
import { type Construction, candidatesOf, constructionOf } from "./cable.ts";
import { chooseCable } from "./choose-cable.ts";
import { type Demand, demandOf } from "./demand.ts";
import { breakingFor, type DeviceKind, kindOf } from "./device.ts";
import { type Draft, decision } from "./draft.ts";
import { type CableChoice, cableText, type DeviceChoice, deviceText, editsFor, statementText } from "./lines.ts";
import type { Proposal, Wants } from "./proposal.ts";
import { chooseRating, nameOf, noRating } from "./rating.ts";
import { rcdFor } from "./rcd.ts";
import { record } from "./record.ts";
import { trialOf } from "./trial.ts";

/** With the installation the drop of the feeders before the board is counted; without it that is said to be left out. */
export function propose(study: WayStudy, wants: Wants = {}, installation?: Installation): Proposal {
  const draft: Draft = { decisions: [], ruledOut: [], open: [] };
  if (study.isSpare) return ended(draft, "missing", ["a circuit: this way is spare"]);
  const demand = demandOf(study, wants);
  const kind = kindOf(study);
  const construction = constructionOf(study);
  const missing = [demand, kind, construction].flatMap((one) => ("missing" in one ? [one.missing] : []));
  if ("missing" in demand || "missing" in kind || "missing" in construction) return ended(draft, "missing", missing);
  const { words, steps, source } = demand;
  draft.decisions.push(decision("Design current", `Ib = ${words}`, steps, source));
  if (demand.how === "assumed")
    draft.open.push(`The design current was assumed: ${words.replace(/^[^:]*assumed: /, "")}.`);
  draft.decisions.push(decision("Kind of device", kind.words, [], kind.source));
  draft.decisions.push(decision("Kind of cable", construction.words, [], construction.source));
  const rating = chooseRating(study, kind, demand, wants, draft);
  if (rating === undefined) return ended(draft, "none", [noRating(study, kind, demand)]);
  const above = aboveBoard(study, installation);
  return withRating(study, { kind, rating, construction, demand, ...(above ? { above } : {}) }, draft);
}

function aboveBoard({ context }: WayStudy, installation: Installation | undefined): BoardDrop | undefined {
  const node = installation && networkOf(installation).nodes.find(({ board }) => board.head === context.board);
  return node && boardDrop(node);
}

const ended = (draft: Draft, outcome: Proposal["outcome"], reasons: readonly string[]): Proposal => ({
  outcome,
  reasons,
  ...draft,
});

interface Chosen {
  readonly kind: DeviceKind;
  readonly rating: number;
  readonly construction: Construction;
  readonly demand: Demand;
  readonly above?: BoardDrop;
}

function withRating(study: WayStudy, chosen: Chosen, draft: Draft): Proposal {
  const { kind, rating, construction, demand, above } = chosen;
  const breaking = breakingFor(study, kind);
  if (breaking === "none")
    return ended(draft, "none", ["No breaker tabulated here breaks the fault current of this board."]);
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
  if (!base) return ended(draft, "none", [`No table here gives sizes of ${construction.kind} cable.`]);
  const rcd = rcdFor(base, kind);
  const device: DeviceChoice = { ...bare, ...rcd.parts };
  const found = chooseCable({ study, device, demand, above }, candidates, draft);
  if (!found) {
    const [last] = draft.ruledOut.slice(-1);
    const advice = last ? ` The largest fails too: ${last.why}.` : "";
    return ended(draft, "none", [`No ${construction.kind} cable fits behind ${nameOf(kind, rating)}.${advice}`]);
  }
  const weak = tooWeak(found.trial);
  if (weak) return ended(draft, "none", [weak]);
  record(found, { ...chosen, rcd, device }, draft);
  return finished(study, found.trial, device, found.candidate.choice, draft);
}

function finished(study: WayStudy, trial: WayStudy, device: DeviceChoice, cable: CableChoice, draft: Draft): Proposal {
  const lines = {
    device: statementOf(trial, "device") ?? deviceText(device),
    cable: statementOf(trial, "cable") ?? cableText(cable),
  };
  const fix = { title: `Write ${lines.device} and ${lines.cable}`, edits: editsOf(study, device, cable), safe: false };
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
  const edits = editsFor(study.way, device, cable);
  return typed && old ? edits.filter(({ start, end }) => start !== old.fact.start || end !== old.fact.end) : edits;
}
