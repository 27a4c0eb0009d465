/** The single cables that a circuit brings into a conduit or trunking. */
import type { Cables } from "../calc/index.ts";
import type { FactOf } from "../model/values.ts";
import type { Cable, WayStudy } from "./way.ts";

export type Carried = "line" | "neutral" | "cpc";

/** The conductors that run along a stretch: all of them where nothing is said. */
export function carriedBy({ args }: FactOf<"way", "route">): ReadonlySet<Carried> {
  return new Set(args.carries?.map(({ value }) => value) ?? ["line", "neutral", "cpc"]);
}

/** The cables, or why they cannot be counted. */
export function conductorsOf(
  study: WayStudy,
  route: FactOf<"way", "route">,
): { readonly cables: readonly Cables[]; readonly missing: string | undefined } {
  const { cable } = study;
  const cannot = (missing: string) => ({ cables: [], missing });
  if (!cable) return cannot("its cable is not described");
  if (cable.construction !== "singles") {
    return cannot(`the room ${cable.construction} cable takes goes by its diameter, which no table here gives`);
  }
  if (cable.material !== "copper") return cannot(`no factor is given here for ${cable.material} conductors`);
  const carried = carriedBy(route);
  const legs = route.args.legs?.value ?? (study.isRing ? 2 : 1);
  const counts = countsOf(study, cable);
  const parts: readonly (readonly [csa: number, count: number])[] = [
    [cable.line, carried.has("line") ? counts.line : 0],
    [cable.neutral, carried.has("neutral") ? counts.neutral : 0],
    [cable.cpc ?? 0, carried.has("cpc") ? counts.cpc : 0],
  ];
  const wire = cable.wire;
  const cables = parts
    .filter(([, count]) => count > 0)
    .map(([csa, count]) => ({
      csa,
      count: count * legs,
      insulation: cable.insulation === 90 ? ("thermosetting" as const) : ("pvc" as const),
      ...(wire ? { wire } : {}),
    }));
  return { cables: merged(cables), missing: undefined };
}

/** Lines by phases, one neutral and one protective conductor, unless a count of cores says that there is no neutral. */
function countsOf(study: WayStudy, { cpc, cores }: Cable): Readonly<Record<Carried, number>> {
  const line = study.threePhase ? 3 : 1;
  const protective = cpc === undefined ? 0 : 1;
  const neutral = cores === undefined ? 1 : Math.max(0, Math.min(1, cores - line - protective));
  return { line, neutral, cpc: protective };
}

/** Kinds alike put together, the thinnest first. */
export function merged(cables: readonly Cables[]): Cables[] {
  const byKind = new Map<string, Cables>();
  for (const cable of cables) {
    const key = `${cable.csa} ${cable.wire} ${cable.insulation}`;
    byKind.set(key, { ...cable, count: cable.count + (byKind.get(key)?.count ?? 0) });
  }
  return [...byKind.values()].toSorted((a, b) => a.csa - b.csa);
}
