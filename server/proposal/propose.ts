/**
 * From load, length, route, place and use to device, cable and protective conductor: one decision after the other, at
 * each of them the smallest that fits, with what rules out the next smaller.
 */
import { breakingOf, conditionalAt } from "../analysis/breaking.ts";
import { type BoardDrop, boardDrop } from "../analysis/drop-path.ts";
import { greatestFault } from "../analysis/faults.ts";
import { networkOf } from "../analysis/network.ts";
import type { WayStudy } from "../analysis/way.ts";
import { ringRatings } from "../calc/index.ts";
import { amps, kiloamps, milliamps, relation, type Step } from "../calc/result.ts";
import type { Installation } from "../model/installation.ts";
import { ringRules } from "../tables/ring.ts";
import { rowOf, sourceOf } from "../tables/table.ts";
import type { TextEdit } from "../text/lines.ts";
import { type CableCandidate, type Construction, candidatesOf, constructionOf } from "./cable.ts";
import { judge, type Verdict } from "./criteria.ts";
import { type Demand, demandOf } from "./demand.ts";
import { breakingFor, type DeviceKind, kindOf, type RcdChoice, ratingsOf, rcdFor } from "./device.ts";
import { upstreamNote } from "./drop.ts";
import { energyNote } from "./energy.ts";
import {
  type CableChoice,
  cableText,
  type DeviceChoice,
  deviceText,
  editsFor,
  sizeText,
  statementText,
} from "./lines.ts";
import type { Decision, Proposal, RuledOut, Wants } from "./proposal.ts";
import { trialOf } from "./trial.ts";

/** A proposal on its way: what is decided so far. */
interface Draft {
  readonly decisions: Decision[];
  readonly ruledOut: RuledOut[];
  readonly open: string[];
}

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
  draft.decisions.push({ title: "Design current", result: `Ib = ${words}`, steps, ...(source ? { source } : {}) });
  if (demand.how === "assumed")
    draft.open.push(`The design current was assumed: ${words.replace(/^[^:]*assumed: /, "")}.`);
  for (const [title, { words, source }] of [
    ["Kind of device", kind],
    ["Kind of cable", construction],
  ] as const) {
    draft.decisions.push({ title, result: words, steps: [], ...(source ? { source } : {}) });
  }
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

const ringRow = rowOf(ringRules, { key: "device" });
const ringSource = ringRow && sourceOf(ringRules, ringRow, "value");
const ringRating = ringRow?.facts.value;

/** The smallest rating that carries the load. A ring has one of its own. */
function chooseRating(
  study: WayStudy,
  kind: DeviceKind,
  demand: Demand,
  { keepDevice }: Wants,
  draft: Draft,
): number | undefined {
  const written = keepDevice ? study.device?.rating : undefined;
  for (const { rating, against } of ratingsOf(kind)) {
    const candidate = nameOf(kind, rating);
    if (rating < demand.value * (1 - 1e-9)) {
      // Only the next smaller is of interest: that it does not carry the load goes for all below it.
      const before = draft.ruledOut.findIndex((one) => one.why.startsWith("In "));
      if (before >= 0) draft.ruledOut.splice(before, 1);
      draft.ruledOut.push({ candidate, why: `In ${amps(rating)} is below Ib ${amps(demand.value)}` });
      continue;
    }
    if (written !== undefined && rating !== written) continue;
    if (study.isRing && !ringRatings.includes(rating)) {
      const why = `a ring stands behind a device of ${ringRating} A`;
      draft.ruledOut.push({ candidate, why, ...(ringSource ? { source: ringSource } : {}) });
      continue;
    }
    if (against && written === undefined) {
      draft.ruledOut.push({ candidate, ...against });
      continue;
    }
    const result = `In = ${amps(rating)}${written === undefined ? "" : ", as written"}`;
    draft.decisions.push({
      title: "Rating of the device",
      result,
      steps: [relation("In ≥ Ib", amps(rating), amps(demand.value), true)],
      ...(study.isRing && ringSource ? { source: ringSource } : {}),
    });
    return rating;
  }
  return undefined;
}

const nameOf = ({ standard, curve }: DeviceKind, rating: number): string =>
  curve ? `${curve}${rating} ${standard}` : `${amps(rating)} ${standard}`;

function noRating(study: WayStudy, kind: DeviceKind, demand: Demand): string {
  if (study.isRing)
    return `A ring stands behind a device of ${ringRating} A, which does not carry ${amps(demand.value)}.`;
  return `No ${kind.standard} device of a usual rating carries ${amps(demand.value)}, or the one that is written does not.`;
}

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

interface Found {
  readonly candidate: CableCandidate;
  readonly trial: WayStudy;
  readonly verdicts: readonly Verdict[];
}

interface Asked {
  readonly study: WayStudy;
  readonly device: DeviceChoice;
  readonly demand: Demand;
  readonly above: BoardDrop | undefined;
}

/** The smallest cable of which nothing says that it does not fit. */
function chooseCable(
  { study, device, demand, above }: Asked,
  candidates: readonly CableCandidate[],
  draft: Draft,
): Found | undefined {
  for (const candidate of candidates) {
    const trial = trialOf(study, device, candidate.choice);
    if (!trial) continue;
    const verdicts = judge(trial, demand, above);
    const failed = verdicts.find(({ holds }) => holds === false);
    if (!failed) return { candidate, trial, verdicts };
    const { title, text, source } = failed;
    draft.ruledOut.push({
      candidate: sizesOf(candidate.choice),
      why: `${title.toLowerCase()}: ${text}`,
      ...(source ? { source } : {}),
    });
  }
  return undefined;
}

const sizesOf = ({ line, cpc }: CableChoice): string =>
  `${sizeText(line)}${cpc === undefined ? "" : `, cpc ${sizeText(cpc)}`}`;

/** The temperature (°C) terminals are made for without a word. */
const ordinary = 70;

interface Settled extends Chosen {
  readonly rcd: RcdChoice;
  readonly device: DeviceChoice;
}

function record({ candidate, trial, verdicts }: Found, settled: Settled, { decisions, open }: Draft): void {
  const { rcd, device } = settled;
  const { steps, source } = candidate;
  decisions.push({
    title: "Size of the cable",
    result: sizesOf(candidate.choice),
    steps,
    ...(source ? { source } : {}),
  });
  for (const { title, holds, text, steps, source } of verdicts) {
    if (holds === undefined) open.push(text);
    else decisions.push({ title, result: text, steps, ...(source ? { source } : {}) });
  }
  const upstream = upstreamNote(trial, settled.above);
  if (upstream && verdicts.some(({ title, holds }) => title === "Voltage drop" && holds)) open.push(upstream);
  if (settled.construction.insulation > ordinary && settled.construction.source) {
    open.push("The cable is rated at 90 °C: make sure that the terminals it ends at bear that.");
  }
  const energy = energyNote(trial);
  if (energy) open.push(energy);
  decisions.push(breakingDecision(trial, open));
  const rcdText =
    device.sensitivity === undefined
      ? `none in the device: ${rcd.words}`
      : `${milliamps(device.sensitivity)} type ${device.type} in the device, ${rcd.words}`;
  decisions.push({ title: "RCD", result: rcdText, steps: [], ...(rcd.source ? { source: rcd.source } : {}) });
  open.push(...rcd.open);
  const recorded = [...trial.deadTests, ...trial.liveTests].length > 0;
  if (recorded) open.push("Readings are recorded here: they are of what was installed, not of what is proposed.");
}

/** Fuses break what their standard says, and no other marking can be chosen for them here. */
function tooWeak(trial: WayStudy): string | undefined {
  const capacity = breakingOf(trial);
  const fault = greatestFault(trial.context);
  const conditional = conditionalAt(trial.context) ?? 0;
  if (!capacity || !fault || trial.device?.fact.args.class?.value === "back-up") return undefined;
  if (fault.value <= Math.max(capacity.value, conditional) * (1 + 1e-9)) return undefined;
  return `The device breaks ${kiloamps(capacity.value)}; up to ${kiloamps(fault.value)} may flow at this board.`;
}

function breakingDecision(trial: WayStudy, open: string[]): Decision {
  const title = "Breaking capacity";
  const capacity = breakingOf(trial);
  const fault = greatestFault(trial.context);
  if (!fault)
    open.push("No fault current is written for this board: the breaking capacity is the usual one, not judged.");
  if (!capacity) return { title, result: "as the device is marked", steps: [] };
  const conditional = conditionalAt(trial.context);
  const held = fault && conditional !== undefined && fault.value > capacity.value ? conditional : capacity.value;
  const steps: Step[] = fault ? [relation(`Icn ≥ ${fault.name}`, kiloamps(held), kiloamps(fault.value), true)] : [];
  return { title, result: kiloamps(capacity.value), steps, source: capacity.source };
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
