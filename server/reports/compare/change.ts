/** One difference between two versions as a person reads it: what it is called, how each side is judged, how grave it is. */
import { rowOf } from "../../../grammar/vocabulary.ts";
import type { Entry } from "../../readings/entries.ts";
import type { Signature } from "../history/signed.ts";
import type { ChangeKind, EntryChange } from "./changes.ts";
import type { Judged, Limits } from "./limits.ts";

/** What one version says of something, and how that is judged. */
export interface Side {
  readonly text: string;
  readonly judged?: Judged;
}

export interface Change {
  readonly kind: ChangeKind;
  /** Its address in the later version; of what went, in the earlier. */
  readonly at: string;
  /** What a person calls it: “Zs”, “insulation 500 V, L-E”. */
  readonly name: string;
  /** The day of its tests. */
  readonly on?: string;
  readonly old?: Side;
  readonly now?: Side;
  /** Of a reading that came: what was read last before, and when. */
  readonly last?: { readonly text: string; readonly on: string };
  /** Whether it went beyond a limit that it kept before, or the other way about. */
  readonly effect?: "now fails" | "now passes";
  /** Of a recorded reading that is not the same: who had signed for it. */
  readonly signed?: Signature;
  readonly gravity: Gravity;
}

/** From the gravest. */
export const gravities = [
  "record",
  "signature",
  "verdict",
  "design",
  "suppressed",
  "stated",
  "reading",
  "remark",
] as const;
export type Gravity = (typeof gravities)[number];

export function judgedChange({ kind, old, now }: EntryChange, was?: Limits, is?: Limits): Change {
  const entry = now ?? old;
  const name = nameOf(entry);
  const before = old && sideOf(old, name, was?.(old) ?? (kind === "vanished" ? undefined : is?.(old)));
  const after = now && sideOf(now, name, is?.(now));
  const [passed, passes] = [before?.judged?.passes, after?.judged?.passes];
  const effect =
    passes === false && passed !== false ? "now fails" : passes === true && passed === false ? "now passes" : undefined;
  return {
    kind,
    at: entry.at,
    name,
    ...(entry.on === undefined ? {} : { on: entry.on }),
    ...(before ? { old: before } : {}),
    ...(after ? { now: after } : {}),
    ...(effect ? { effect } : {}),
    gravity: gravityOf(kind, entry, effect),
  };
}

/** What a line says beside its name. */
function sideOf(entry: Entry, name: string, judged: Judged | undefined): Side {
  const text = entry.address.line && entry.shown !== "" ? entry.shown : entry.line;
  const called = [name, entry.address.line?.word].find((one) => one !== undefined && text.startsWith(`${one} `));
  return { text: called === undefined ? text : text.slice(called.length).trim(), ...(judged ? { judged } : {}) };
}

/** The line as the schedule has it; what it is in, where that is no block of tests. */
function nameOf({ address: { blocks, line, part }, on, shown }: Pick<Entry, "address" | "on" | "shown">): string {
  const within = blocks.filter(({ word }) => on === undefined || !(word === "dead" || word === "live"));
  // Where all it says is what tells it from others, that is not said twice.
  const own = line && (shown === "" ? [{ ...line, key: [] }] : [line]);
  const steps = [...within, ...(own ?? [])].map(({ word, key }) => [word, ...key.map(shortened)].join(" "));
  const name = [...steps, ...(part === undefined ? [] : [part])].join(", ");
  return name === "" ? "tests" : name;
}

const longest = 40;
function shortened(text: string): string {
  const short = text.length > longest ? `${text.slice(0, longest - 1)}…` : text;
  // Words of a person's own are told from those of the line.
  return /^\p{L}.* /u.test(short) ? `“${short}”` : short;
}

export const ofRecord: ReadonlySet<ChangeKind> = new Set(["altered", "vanished", "re-dated", "reinstated"]);

function gravityOf(kind: ChangeKind, entry: Entry, effect: Change["effect"]): Gravity {
  const row = rowOf(entry.kind, entry.address.line?.word ?? "");
  if (ofRecord.has(kind)) return "record";
  if (row?.signs || kind === "corrected" || kind === "struck-out" || entry.address.line?.word === "with")
    return "signature";
  if (effect === "now fails") return "verdict";
  if (entry.address.line?.word === "departure") return "suppressed";
  if (row?.sizes || row?.figures === "rating" || row?.figures === "device") return "design";
  if (row?.remark) return "remark";
  return kind === "read" ? "reading" : "stated";
}

export const byGravity = (changes: readonly Change[]): Change[] =>
  changes.toSorted((a, b) => gravities.indexOf(a.gravity) - gravities.indexOf(b.gravity));
