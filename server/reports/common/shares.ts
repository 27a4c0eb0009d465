/** What is found in a file of several installations, divided among them. */
import type { Installation } from "../../model/installation.ts";
import type { CheckResult } from "../../rules/frame/departures.ts";
import type { Finding } from "../../rules/frame/rule.ts";

type Segment = Finding["spot"]["segment"];

interface Share {
  readonly installation: Installation;
  readonly result: CheckResult;
}

/** To each what is found in it, and in the lines that all of them share. All of it is gone through once. */
export function sharesOf(installations: readonly Installation[], { findings, suppressed }: CheckResult): Share[] {
  const ownerOf = ownersAmong(installations);
  const found = divided(findings, ({ spot }) => ownerOf(spot.segment));
  const hidden = divided(suppressed, ({ finding }) => ownerOf(finding.spot.segment));
  return installations.map((installation) => ({
    installation,
    result: { findings: found(installation), suppressed: hidden(installation) },
  }));
}

/** Whose a line is; nothing where it is in none of them, and "several" in a board that more than one of them has. */
function ownersAmong(
  installations: readonly Installation[],
): (segment: Segment) => Installation | "several" | undefined {
  const owners = new Map<Segment, Installation | "several">();
  for (const one of installations) {
    for (const segment of segmentsOf(one)) {
      const before = owners.get(segment);
      owners.set(segment, before === undefined || before === one ? one : "several");
    }
  }
  return (segment) => owners.get(segment);
}

const segmentsOf = ({ head, supply, boards }: Installation): Segment[] => [
  head.header.segment,
  ...head.facts.list.map(({ segment }) => segment),
  ...(supply?.list ?? []).map(({ segment }) => segment),
  ...boards.flatMap(({ board }) => board.segments),
];

/** Those of one owner with those of none, in the order they had. */
function divided<T>(
  all: readonly T[],
  ownerOf: (one: T) => Installation | "several" | undefined,
): (owner: Installation) => readonly T[] {
  const groups = Map.groupBy(all.entries(), ([, one]) => ownerOf(one));
  const ofNone = groups.get(undefined) ?? [];
  return (owner) => [...ofNone, ...(groups.get(owner) ?? [])].sort(([a], [b]) => a - b).map(([, one]) => one);
}
