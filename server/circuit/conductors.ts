/** The single cables that a circuit brings into a conduit or trunking. */
import type { Cables } from "../calc/containment.ts";
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
  return { cables: merged(conductorsIn(study, route)), missing: undefined };
}

/** What a single cable is in its circuit. */
export type Core = "line" | "L1" | "L2" | "L3" | "neutral" | "cpc";

export interface Conductor extends Cables {
  readonly core: Core;
}

/** The single cables of a circuit along a stretch, each core by itself; none where it is not wired in singles. */
export function conductorsIn(study: WayStudy, route: FactOf<"way", "route">): Conductor[] {
  const { cable } = study;
  if (cable?.construction !== "singles") return [];
  const carried = carriedBy(route);
  const legs = route.args.legs?.value ?? (study.isRing ? 2 : 1);
  const lines = study.threePhase ? (["L1", "L2", "L3"] as const) : (["line"] as const);
  const cores: readonly (readonly [core: Core, csa: number])[] = [
    ...(carried.has("line") ? lines.map((core) => [core, cable.line] as const) : []),
    ...(carried.has("neutral") && hasNeutral(cable, lines.length) ? [["neutral", cable.neutral] as const] : []),
    ...(carried.has("cpc") && cable.cpc !== undefined ? [["cpc", cable.cpc] as const] : []),
  ];
  return cores.map(([core, csa]) => ({
    core,
    csa,
    count: legs * cable.parallel[core === "neutral" || core === "cpc" ? core : "line"],
    insulation: cable.insulation === 90 ? ("thermosetting" as const) : ("pvc" as const),
    ...(cable.wire ? { wire: cable.wire } : {}),
  }));
}

/** One beside the lines and the protective conductor, unless a count of cores says that there is none. */
const hasNeutral = ({ cpc, cores }: Cable, lines: number): boolean =>
  cores === undefined || cores > lines + (cpc === undefined ? 0 : 1);

/** Kinds alike put together, the thinnest first. */
export function merged(cables: readonly Cables[]): Cables[] {
  const byKind = new Map<string, Cables>();
  for (const cable of cables) {
    const key = `${cable.csa} ${cable.wire} ${cable.insulation}`;
    const { csa, wire, insulation } = cable;
    byKind.set(key, {
      csa,
      count: cable.count + (byKind.get(key)?.count ?? 0),
      ...(insulation ? { insulation } : {}),
      ...(wire ? { wire } : {}),
    });
  }
  return [...byKind.values()].toSorted((a, b) => a.csa - b.csa);
}
