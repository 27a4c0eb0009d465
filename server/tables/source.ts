/**
 * How well a number is known. "printed": read in the standard itself. "quoted": a public page states it as the
 * standard's. "computed": it follows from a stated formula. "practice": common practice of the trade. "memory":
 * recalled, unconfirmed, so it may only advise.
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

/** Where a number comes from, and how far it may be trusted. */
export interface Source {
  readonly ref: string;
  readonly standing: Standing;
  readonly note?: string;
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

/** Sources that live as long as the program, each with what was made of it and of those combined after it. */
interface Lasting {
  readonly next: Map<Source, Lasting>;
  combined?: Source;
  calculated?: Source;
}

const root: Lasting = { next: new Map() };
const all = new Map<Source, Lasting>();

/**
 * A source that is the same object each time, as that of a table's cell is. Every value combines a few of them, and there
 * are only so many: what such ones come to is worked out once.
 */
export function lasting(source: Source): Source {
  all.set(source, { next: new Map() });
  return source;
}

/** One source for a value made from several: references and notes without repeats, and the weakest standing. */
export function combine(...sources: Source[]): Source {
  let at = root;
  for (const source of sources) {
    let next = at.next.get(source);
    if (!next) {
      // What is made up for one circuit is not kept: there is no end of it.
      if (!all.has(source)) return combined(sources);
      next = { next: new Map() };
      at.next.set(source, next);
    }
    at = next;
  }
  at.combined ??= lasting(combined(sources));
  return at.combined;
}

function combined(sources: readonly Source[]): Source {
  const ref = unique(sources.flatMap((source) => source.ref.split("; "))).join("; ");
  const note = unique(sources.flatMap((source) => source.note ?? [])).join(" ");
  const standing = weakest(...sources.map((source) => source.standing));
  return note === "" ? { ref, standing } : { ref, standing, note };
}

/** The source of a value calculated from sourced ones: never better than "computed". */
export function fromFormula(source: Source): Source {
  const known = all.get(source);
  if (!known) return { ...source, standing: weakest("computed", source.standing) };
  known.calculated ??= lasting({ ...source, standing: weakest("computed", source.standing) });
  return known.calculated;
}

/** Pairs a value with its source in one breath. */
export function sourced<T>(value: T, ref: string, standing: Standing, note?: string): Sourced<T> {
  return { value, source: note === undefined ? { ref, standing } : { ref, standing, note } };
}

function unique(texts: readonly string[]): string[] {
  return [...new Set(texts.filter((text) => text !== ""))];
}
