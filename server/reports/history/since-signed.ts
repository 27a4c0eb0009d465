/** What was changed after somebody had signed for it: readings, the signature itself, and circuits not tested since. */
import { wordAt } from "../../model/fact-values.ts";
import type { FileModel } from "../../model/file.ts";
import { divider } from "../../readings/address.ts";
import { type Entry, entriesOfFile } from "../../readings/entries.ts";
import { circuitChanged, signatureChanged, signedReadingChanged } from "../../rules/frame/history-checks.ts";
import { type Finding, findingOf, wordSpot } from "../../rules/frame/rule.ts";
import { listedUpTo } from "../../text/words.ts";
import { type EntryChange, isRecord } from "../compare/changes.ts";
import { addressBefore } from "../compare/records.ts";
import { breaksRecord, keeps, type Signature, signatureFor } from "./signed.ts";
import type { Edit } from "./timeline.ts";

/** A version, what stood before it, and who had signed then in the files that use this one. */
export interface SignedEdit extends Edit {
  readonly was: FileModel;
  readonly above: readonly Signature[];
}

/** Whether a version can hold a change of what was signed for. */
export const isSuspect = ({ changes }: Edit): boolean => changes.some((change) => whatOf(change) !== undefined);

type What = "reading" | "instrument" | "signature" | "circuit";

/** What the tests of a circuit depend on: with another device or cable they are those of another circuit. */
const tested: ReadonlySet<string> = new Set(["kind", "device", "cable", "behind"]);

function whatOf(change: EntryChange): What | undefined {
  const { old, kind } = change;
  if (!old) return undefined;
  if (breaksRecord(change)) return "reading";
  if (kind !== "changed" && kind !== "went") return undefined;
  const { place, blocks, line } = old.address;
  if (line?.word === "tested") return "signature";
  if (line?.word === "with" && old.on !== undefined) return "instrument";
  return place.of === "way" && blocks.length === 0 && line && tested.has(line.word) ? "circuit" : undefined;
}

interface Broken {
  readonly what: What;
  readonly old: Entry;
  /** As that version had it, where it had it at all. */
  readonly now: Entry | undefined;
  readonly edit: Edit;
  readonly signature: Signature;
  /** Where it would be in the present version. */
  readonly at: string;
}

/** What stands now: by address, and by place what stands there. */
interface Present {
  readonly entries: readonly Entry[];
  readonly at: ReadonlyMap<string, Entry>;
  readonly in: ReadonlyMap<string, readonly Entry[]>;
}

function presentOf(file: FileModel): Present {
  const entries = entriesOfFile(file);
  return {
    entries,
    at: new Map(entries.map((entry) => [entry.at, entry])),
    in: Map.groupBy(entries, ({ at }) => placeOf(at)),
  };
}

/**
 * `edits`: all versions, the latest first, of which those that are suspect are `SignedEdit`. `today` (ISO 8601) is the day
 * of what is not committed.
 */
export function changedSinceSigned(file: FileModel, edits: readonly (Edit | SignedEdit)[], today: string): Finding[] {
  const present = presentOf(file);
  const broken = new Map<string, Broken>();
  // From the latest to the first, so that the first change after a signature is the one that stays.
  for (const [index, edit] of edits.entries()) {
    if (!("was" in edit)) continue;
    const testsIn = testsOf(edit);
    const later = edits.slice(0, index + 1).toReversed();
    for (const change of edit.changes) {
      const what = whatOf(change);
      const { old, now } = change;
      const signature = what && old && signatureOf(what, old, edit, testsIn);
      if (!what || !old || !signature) continue;
      // On the day of the signature a record is still being made: only what was read is no more to be altered.
      if ((what === "circuit" || what === "signature") && (edit.on || today) <= signature.on) continue;
      const one: Broken = { what, old, now, edit, signature, at: presentAddress(old.at, later) };
      if (stands(one, present)) broken.delete(one.at);
      else broken.set(one.at, one);
    }
  }
  return findingsFor([...broken.values()], present);
}

/** An address under the names its place took since. */
function presentAddress(at: string, later: readonly Edit[]): string {
  return later.reduce((now, { moved }) => addressBefore(now, new Map([...moved].map(([to, from]) => [from, to]))), at);
}

/** The tests that stood in a place, read once where they are asked for. */
function testsOf({ was }: SignedEdit): (place: string) => readonly Entry[] {
  let all: ReadonlyMap<string, readonly Entry[]> | undefined;
  return (place) => {
    all ??= Map.groupBy(
      entriesOfFile(was).filter(({ on }) => on !== undefined),
      ({ at }) => placeOf(at),
    );
    return all.get(place) ?? [];
  };
}

function signatureOf(
  what: What,
  old: Entry,
  { was, above }: SignedEdit,
  testsIn: ReturnType<typeof testsOf>,
): Signature | undefined {
  if (what === "reading" || what === "instrument") return signatureFor(old, was, above);
  if (what === "signature") return asSignature(old);
  const signatures = testsIn(placeOf(old.at)).flatMap((entry) => signatureFor(entry, was, above) ?? []);
  return signatures.toSorted((a, b) => (a.on < b.on ? 1 : -1))[0];
}

function asSignature({ fact }: Entry): Signature | undefined {
  const [by, on] = [wordAt(fact, "by"), wordAt(fact, "on")];
  return by === undefined || on === undefined ? undefined : { by, on };
}

/** Whether the present version says what was signed for, or says it with its correction. */
function stands({ what, old, now, at, signature }: Broken, present: Present): boolean {
  const isKept = keeps(present.at.get(at), old);
  // Without a day it is that of whoever signed last.
  if (what === "reading") return isKept || (old.on === undefined && isSignedAfter(signature.on, present.entries));
  // An instrument that took another name is the same.
  if (what === "instrument") return isKept || (now !== undefined && !isInstrument(old.shown, present.entries));
  if (what === "circuit") {
    const circuit = present.in.get(placeOf(at));
    return isKept || !circuit || circuit.some(({ on }) => on !== undefined && on > signature.on);
  }
  // Whoever tests later signs later; and a signature goes with the tests it was for.
  const isSame = signaturesOf(present.entries).some(
    ({ by, on }) => on === signature.on && letters(by) === letters(signature.by),
  );
  return (
    isSame ||
    isSignedAfter(signature.on, present.entries) ||
    !present.entries.some((entry) => isSignedFor(entry, signature))
  );
}

/** A record of that day or before; what another file holds may be one. */
const isSignedFor = (entry: Entry, { on }: Signature): boolean =>
  entry.on === undefined ? isRecord(entry) || entry.address.line?.word === "use" : entry.on <= on;

const signaturesOf = (entries: readonly Entry[]): Signature[] =>
  entries.flatMap((entry) => (entry.address.line?.word === "tested" ? (asSignature(entry) ?? []) : []));

const isSignedAfter = (day: string, entries: readonly Entry[]): boolean =>
  signaturesOf(entries).some(({ on }) => on > day);

const isInstrument = (name: string, entries: readonly Entry[]): boolean =>
  entries.some(({ address: { blocks } }) => blocks[0]?.word === "instrument" && blocks[0].key.includes(name));

const letters = (name: string): string => name.toLowerCase().replace(/[^\p{L}\p{N}]/gu, "");

const placeOf = (at: string): string => at.split(divider, 1)[0] ?? at;

function findingsFor(all: readonly Broken[], present: Present): Finding[] {
  const isGone = ({ what, at }: Broken): boolean => what === "reading" && !present.at.has(at);
  // What went together is one loss, not one for each figure of it.
  const losses = Map.groupBy(
    all.filter((one) => isGone(one) && one.now === undefined),
    ({ at, edit, signature }) => [placeOf(at), edit.commit, signature.on, signature.by].join("\n"),
  );
  const alone = all.filter((one) => !isGone(one) || one.now !== undefined);
  return [
    ...alone.flatMap((one) => found(one, sentenceOf(one, present), present)),
    ...[...losses.values()].flatMap((lost) => (lost[0] ? found(lost[0], lossOf(lost), present) : [])),
  ];
}

const checks = {
  reading: signedReadingChanged,
  instrument: signedReadingChanged,
  signature: signatureChanged,
  circuit: circuitChanged,
} as const;

function found({ what, now, at }: Broken, message: string, present: Present): Finding[] {
  const spot = spotOf([at, ...(now ? [now.at] : []), ...outwards(placeOf(at))], present);
  return spot ? [findingOf(checks[what], wordSpot(spot.fact), { message })] : [];
}

/** The places round a place: its board, the installation. */
const outwards = (place: string): string[] => [place, place.split("/", 1)[0] ?? place, "installation"];

/** Where it is now; else on what is left round it, and at last on whatever stands first. */
const spotOf = (places: readonly string[], { at, entries }: Present): Entry | undefined =>
  places.map((place) => at.get(place)).find((one) => one !== undefined) ?? entries[0];

const byWhom = ({ commit, by, on }: Edit): string =>
  commit === undefined ? "not committed yet" : `by ${by} on ${on}, commit ${commit}`;

function sentenceOf({ what, old, now, edit, signature, at }: Broken, present: Present): string {
  const shown = present.at.get(at)?.shown ?? now?.shown;
  const happened = `${shown === undefined ? "it is gone now" : `it is ${shown} now`} (${byWhom(edit)})`;
  const when = `when ${signature.by} signed for`;
  if (what === "signature") {
    const place = old.address.place.of === "installation" ? "" : ` of ${placeOf(at)}`;
    return `${signature.by} signed for the tests${place} on ${signature.on}; the signature ${happened.slice("it ".length)}. Restore it: who tests later signs with the later day.`;
  }
  if (what === "circuit")
    return `${at} was ${old.shown} ${when} its tests on ${signature.on}; ${happened}, and it has not been tested since. Test it again, or restore it.`;
  if (what === "instrument")
    return `${at} was ${old.shown} ${when} these tests on ${signature.on}; ${happened}. Restore it, or strike the tests out with the reason.`;
  if (!old.address.line)
    return `${at} was signed for by ${signature.by} on ${signature.on}; the same readings are dated ${now?.on ?? "otherwise"} now (${byWhom(edit)}). Restore the day, or strike these tests out and write new ones.`;
  return `${at} was ${old.shown} ${when} it on ${signature.on}; ${happened}. Restore it, or keep it with “was” and the reason.`;
}

function lossOf(lost: readonly Broken[]): string {
  const [one, ...others] = lost;
  if (!one) return "";
  const { signature, edit, at, old } = one;
  const signed = `when ${signature.by} signed for`;
  if (others.length === 0)
    return `${at} was ${old.shown} ${signed} it on ${signature.on}; it is gone now (${byWhom(edit)}). Restore it${old.on === undefined ? "" : ", or strike its tests out with the reason"}.`;
  const readings = lost.map((each) => `${each.at.split(divider).slice(1).join(" ")} ${each.old.shown}`);
  return `${placeOf(at)} had ${listedUpTo(3, readings)} ${signed} them on ${signature.on}; they are gone now (${byWhom(edit)}). Restore them, or strike the tests out with the reason.`;
}
