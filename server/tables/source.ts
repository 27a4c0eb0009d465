import { Memo } from "../memo/memo.ts";

/**
 * How well a number is known. "printed": read in the standard itself. "quoted": a public page states it as the
 * standard's. "computed": it follows from a stated formula. "practice": common practice of the trade. "memory":
 * recalled and not confirmed, so it carries how far it can be wrong.
 */
export type Standing = "printed" | "quoted" | "computed" | "practice" | "memory";

/** The same for a reader, wherever a source is shown. */
export const standingWords: Readonly<Record<Standing, string>> = {
  printed: "as printed in the standard",
  quoted: "as quoted elsewhere",
  computed: "calculated",
  practice: "common practice",
  memory: "from memory: check your copy",
};

/** A figure from memory in a value: what a person would look up, and by what share of it the value can be wrong. */
export interface Remembered {
  readonly figure: string;
  readonly share: number;
}

/** Where a number comes from, and how far it may be trusted. */
export interface Source {
  readonly ref: string;
  readonly standing: Standing;
  readonly note?: string;
  /** The figures from memory in it. Without any, what is from memory is the rule and no number. */
  readonly remembered?: readonly Remembered[];
}

/** A regulation or table of the edition that sources are written by, as a public page quotes it. */
export const quotedIn = (clause: string): Source => ({ ref: `BS 7671:2018+A2:2022, ${clause}`, standing: "quoted" });

/** A source in one line: what it is, how well it is known unless it says so itself, and what is to be noted of it. */
export function sourceText({ ref, standing, note }: Source): string {
  const words = standingWords[standing];
  const named = ref.toLowerCase().includes(words) ? ref : `${ref} (${words})`;
  return note ? `${named}. ${note}` : named;
}

/** A value that never travels without its source. */
export interface Sourced<T> {
  readonly value: T;
  readonly source: Source;
}

const order: readonly Standing[] = ["memory", "practice", "computed", "quoted", "printed"];

/** The weakest of the standings: a result is known no better than its least known part. None given is "printed". */
export function weakest(...standings: Standing[]): Standing {
  return order.find((standing) => standings.includes(standing)) ?? "printed";
}

/** What was made of sources, from the first combined to the last. */
interface Combined {
  readonly next: Map<Source, Combined>;
  all?: Source;
}

/** A source that is the same object each time lies with its table, and with it what was made of it. */
interface Lasting extends Combined {
  calculated?: Source;
}

const lastingSources = new Memo<Source, Lasting>();

/**
 * A source that is the same object each time, as that of a table's cell is. Every value combines a few of them, and there
 * are only so many: what such ones come to is worked out once.
 */
export function lasting(source: Source): Source {
  lastingSources.set(source, { next: new Map() });
  return source;
}

/** Of a figure from the schedule itself: it adds nothing to what a limit rests on. */
export const asWritten: Source = lasting({ ref: "", standing: "printed" });

/**
 * One source for a value made from several: references and notes without repeats, and the weakest standing. What each
 * figure from memory can be wrong by is taken over whole, as in a product; sums use `summed`.
 */
export function combine(...sources: Source[]): Source {
  const [first, ...others] = sources;
  let at: Combined | undefined = first && lastingSources.get(first);
  for (const source of others) {
    let next: Combined | undefined = at?.next.get(source);
    if (at && !next && lastingSources.get(source)) {
      next = { next: new Map() };
      at.next.set(source, next);
    }
    at = next;
  }
  // What is made up for one circuit is not kept: there is no end of it.
  if (!at) return combined(sources);
  at.all ??= lasting(combined(sources));
  return at.all;
}

function combined(sources: readonly Source[]): Source {
  const ref = unique(sources.flatMap((source) => source.ref.split("; "))).join("; ");
  const note = unique(sources.flatMap((source) => source.note ?? [])).join(" ");
  const standing = weakest(...sources.map((source) => source.standing));
  const remembered = together(sources.flatMap((source) => source.remembered ?? []));
  return {
    ref,
    standing,
    ...(note === "" ? {} : { note }),
    ...(remembered.length === 0 ? {} : { remembered }),
  };
}

/** The same figure in two factors is wrong in both alike: it counts once, by its larger share. */
function together(all: readonly Remembered[]): readonly Remembered[] {
  if (all.length < 2) return all;
  const shares = new Map<string, number>();
  for (const { figure, share } of all) shares.set(figure, Math.max(share, shares.get(figure) ?? 0));
  return [...shares].map(([figure, share]) => ({ figure, share }));
}

/** The source of a sum of values that are not negative: a figure from memory counts by its part of the whole. */
export function summed(...parts: readonly Sourced<number>[]): Source {
  const total = parts.reduce((sum, { value }) => sum + value, 0);
  const shares = new Map<string, number>();
  for (const { value, source } of parts)
    for (const { figure, share } of source.remembered ?? [])
      shares.set(figure, (shares.get(figure) ?? 0) + (total > 0 ? (share * value) / total : share));
  const remembered = [...shares].map(([figure, share]) => ({ figure, share }));
  const all = combine(...parts.map(({ source }) => source));
  return remembered.length === 0 ? all : { ...all, remembered };
}

/**
 * The source of a difference of two values, the first the greater: what each figure from memory moves is small beside the
 * two and may be all of what is left. Where it may be all, the difference can be any number of times smaller.
 */
export function differing(from: Sourced<number>, less: Sourced<number>): Source {
  const left = from.value - less.value;
  const shares = new Map<string, number>();
  for (const { value, source } of [from, less])
    for (const { figure, share } of source.remembered ?? [])
      shares.set(figure, (shares.get(figure) ?? 0) + (left > 0 ? (share * value) / left : Number.POSITIVE_INFINITY));
  const together = [...shares.values()].reduce((sum, share) => sum + share, 0);
  // Together they are out by the sum of their shares; as factors, which multiply, each takes its part of that.
  const factor = (share: number): number =>
    together < 1 ? (1 / (1 - together)) ** (share / together) : Number.POSITIVE_INFINITY;
  const remembered = [...shares].map(([figure, share]) => ({ figure, share: share === 0 ? 0 : factor(share) - 1 }));
  const all = combine(from.source, less.source);
  return remembered.length === 0 ? all : { ...all, remembered };
}

/** The source of a value squared: it is out by what each figure from memory is, twice. */
export function squared(source: Source): Source {
  if (!source.remembered) return source;
  const remembered = source.remembered.map(({ figure, share }) => ({ figure, share: (1 + share) ** 2 - 1 }));
  return { ...source, remembered };
}

/**
 * How many times larger or smaller than stated a value can be, at most: 1 where no figure in it is from memory. Shares
 * multiply, which is never less than they come to in a sum.
 */
export function bandOf({ remembered = [] }: Source): number {
  return remembered.reduce((band, { share }) => band * (1 + share), 1);
}

/** The source of a value calculated from sourced ones: never better than "computed". */
export function fromFormula(source: Source): Source {
  const known = lastingSources.get(source);
  if (!known) return { ...source, standing: weakest("computed", source.standing) };
  known.calculated ??= lasting({ ...source, standing: weakest("computed", source.standing) });
  return known.calculated;
}

/** The source of a rule that holds whatever its figure from memory should be. */
export const ruleAlone = ({ ref, standing, note }: Source): Source => ruleFrom(ref, standing, note);

/** By what share a remembered resistance, factor or capacity can be wrong where nothing bounds it closer. */
export const usualShare = 0.1;

/** The source of a rule that has no figure to be doubted. */
export const ruleFrom = (ref: string, standing: Standing, note?: string): Source =>
  note === undefined ? { ref, standing } : { ref, standing, note };

/** Pairs a value with its source in one breath. */
export function sourced<T>(value: T, ref: string, standing: Standing, note?: string): Sourced<T> {
  const doubtful = standing === "memory" && typeof value === "number" && value !== 0;
  const remembered = doubtful ? { remembered: [{ figure: ref, share: usualShare }] } : {};
  return { value, source: { ...ruleFrom(ref, standing, note), ...remembered } };
}

function unique(texts: readonly string[]): string[] {
  return [...new Set(texts.filter((text) => text !== ""))];
}
