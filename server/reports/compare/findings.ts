/** What the checks find in one version and not in the other. What a departure hides is suppressed, never gone. */
import type { Installation } from "../../model/installation.ts";
import type { Entry } from "../../readings/entries.ts";
import { checkInstallation } from "../../rules/frame/check.ts";
import type { SuppressedFinding } from "../../rules/frame/departures.ts";
import { type Finding, severities } from "../../rules/frame/rule.ts";

type Segment = Finding["spot"]["segment"];

type FindingChangeKind = "comes" | "goes" | "graver" | "milder" | "suppressed" | "unsuppressed";

export interface FindingChange {
  readonly kind: FindingChangeKind;
  readonly check: string;
  readonly old?: Judgement;
  readonly now?: Judgement;
  /** What suppresses it: in the later version, or before where it is suppressed no longer. */
  readonly departure?: { readonly rule: string; readonly reason: string };
}

/** A finding as it is shown: what it is found in stays behind. */
type Judgement = Pick<Finding, "severity" | "message">;

/** What is found in one version, by the place it is found in. */
export interface Found {
  readonly counts: Readonly<Record<"error" | "warning" | "suppressed", number>>;
  readonly at: ReadonlyMap<Segment, readonly Placed[]>;
}

export interface Placed {
  readonly finding: Finding;
  readonly departure?: FindingChange["departure"];
}

/** Remarks for information are no verdict. */
const counts = ({ severity }: Finding): boolean => severity !== "information";

export function foundIn(installation: Installation): Found {
  const { findings, suppressed } = checkInstallation(installation);
  const shown = findings.filter(counts);
  const hidden = suppressed.filter(({ finding }) => counts(finding));
  const all: Placed[] = [...shown.map((finding) => ({ finding })), ...hidden.map(asPlaced)];
  return {
    counts: {
      error: shown.filter(({ severity }) => severity === "error").length,
      warning: shown.filter(({ severity }) => severity === "warning").length,
      suppressed: hidden.length,
    },
    at: Map.groupBy(all, ({ finding }) => finding.spot.segment),
  };
}

const asPlaced = ({ finding, departure: { rule, reason } }: SuppressedFinding): Placed => ({
  finding,
  departure: { rule, reason },
});

/** Findings of one place of both versions. They are the same by check and by the line they are on, whatever its day. */
export function findingChanges(
  before: { readonly found: readonly Placed[]; readonly entries: readonly Entry[] },
  after: { readonly found: readonly Placed[]; readonly entries: readonly Entry[] },
): FindingChange[] {
  const olds = Map.groupBy(before.found, (one) => keyOf(one, before.entries));
  const nows = Map.groupBy(after.found, (one) => keyOf(one, after.entries));
  return [...new Set([...olds.keys(), ...nows.keys()])].flatMap((key) =>
    ofOneKey(olds.get(key) ?? [], nows.get(key) ?? []),
  );
}

function keyOf({ finding: { check, spot } }: Placed, entries: readonly Entry[]): string {
  const on = entries.find(
    ({ fact, address }) =>
      address.line && fact.segment === spot.segment && fact.start <= spot.start && spot.end <= fact.end,
  );
  const line = on?.address.line;
  return [check, line?.word ?? "", ...(line?.key ?? [])].join("\0");
}

function ofOneKey(olds: readonly Placed[], nows: readonly Placed[]): FindingChange[] {
  const count = Math.max(olds.length, nows.length);
  return Array.from({ length: count }, (_, index) => changeOf(olds[index], nows[index])).flat();
}

const judgementOf = ({ finding: { severity, message } }: Placed): Judgement => ({ severity, message });

function changeOf(old: Placed | undefined, now: Placed | undefined): FindingChange[] {
  const check = (now ?? old)?.finding.check ?? "";
  const both = { ...(old ? { old: judgementOf(old) } : {}), ...(now ? { now: judgementOf(now) } : {}) };
  const change = (kind: FindingChangeKind, departure?: FindingChange["departure"]): FindingChange[] => [
    { kind, check, ...both, ...(departure ? { departure } : {}) },
  ];
  if (now?.departure) return old?.departure ? [] : change("suppressed", now.departure);
  if (!now) return old && !old.departure ? change("goes") : [];
  if (old?.departure) return change("unsuppressed", old.departure);
  if (!old) return change("comes");
  const step = severities.indexOf(old.finding.severity) - severities.indexOf(now.finding.severity);
  return step === 0 ? [] : change(step > 0 ? "graver" : "milder");
}
