/** Where polarity is recorded: for the whole circuit, or at each of its points. */
import type { WayStudy } from "../circuit/way.ts";
import { wordAt } from "../model/fact-values.ts";
import type { Fact } from "../model/values.ts";
import { latestDead } from "./dead.ts";

/** Lines of points that state polarity, the latest of each, and those of points that nowhere do. */
export function polarityAtPoints({ deadTests, liveTests }: WayStudy): { shown: Map<string, Fact>; bare: Fact[] } {
  const lines = [...deadTests, ...liveTests].flatMap(({ facts }) => facts.list.filter(({ word }) => word === "at"));
  const shown = new Map<string, Fact>();
  for (const line of lines) if (line.args.polarity && !shown.has(pointOf(line))) shown.set(pointOf(line), line);
  return { shown, bare: lines.filter((line) => !shown.has(pointOf(line))) };
}

export const pointOf = (line: Fact): string => wordAt(line, "point") ?? "";

/**
 * The line that states the polarity of a circuit, and the argument it stands in; of points that all state it, one that is
 * wrong before the others.
 */
export function polarityOf(
  study: WayStudy,
): { readonly fact: Fact; readonly name: "verdict" | "polarity" } | undefined {
  const live = study.liveTests.map(({ facts }) => facts.one("polarity")).find((fact) => fact !== undefined);
  const whole = latestDead(study, "polarity")?.fact ?? live;
  if (whole) return { fact: whole, name: "verdict" };
  const { shown, bare } = polarityAtPoints(study);
  const lines = [...shown.values()];
  const fact = lines.find((line) => wordAt(line, "polarity") !== "ok") ?? lines[0];
  // Points that are drawn or counted, and have no line, are not shown to be right.
  const drawn = [...(study.runs?.places.keys() ?? [])].every((name) => shown.has(name));
  const counted = (study.facts.one("points")?.args.count.value ?? 0) <= shown.size;
  return fact && bare.length === 0 && drawn && counted ? { fact, name: "polarity" } : undefined;
}
