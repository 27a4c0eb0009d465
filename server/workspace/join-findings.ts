/** What is found in a file by each of the schedules it is part of, as one list. */
import { departureUnused } from "../rules/frame/departure-checks.ts";
import type { Finding } from "../rules/frame/rule.ts";
import type { Segment } from "../syntax/split.ts";
import { byPlace, keyOf } from "./finding-order.ts";
import type { LoadedFile } from "./loaded-file.ts";
import type { Project } from "./project.ts";

interface Joined {
  readonly finding: Finding;
  readonly found: Project[];
}

/** What all schedules a file is part of find in it, in the order of its text. */
export function findingsOfFile(file: LoadedFile, projects: readonly Project[]): readonly Finding[] {
  const ofProject = ({ result }: Project): readonly Finding[] =>
    result.files.find((one) => one.file === file)?.findings ?? [];
  const [only, ...others] = projects;
  if (only && others.length === 0) return ofProject(only);
  const bySegment = new Map<Segment, Map<string, Joined>>();
  for (const project of projects) {
    for (const finding of ofProject(project)) {
      const here = bySegment.get(finding.spot.segment) ?? new Map<string, Joined>();
      bySegment.set(finding.spot.segment, here);
      const before = here.get(keyOf(finding));
      if (!before) here.set(keyOf(finding), { finding, found: [project] });
      else if (before.found.at(-1) !== project) before.found.push(project);
    }
  }
  return file.document.segments.flatMap((segment) => {
    const here = [...(bySegment.get(segment)?.values() ?? [])];
    return here.flatMap((one) => joined(one, projects.length)).sort(byPlace);
  });
}

/**
 * One that not every schedule has names those that have it. A departure is of no use only where no schedule needs it.
 */
function joined({ finding, found }: Joined, all: number): readonly Finding[] {
  if (found.length === all) return [finding];
  return finding.check === departureUnused ? [] : [named(finding, found)];
}

/** More schedules than this are counted, not named. */
const mostNamed = 3;

const named = (finding: Finding, found: readonly Project[]): Finding => ({
  ...finding,
  message: namedIn(
    finding.message,
    found.map(({ name }) => name),
  ),
});

/** A message with the schedules it is true in. */
export function namedIn(message: string, schedules: readonly string[]): string {
  const rest = schedules.length - mostNamed;
  const names = schedules.slice(0, rest > 0 ? mostNamed : undefined);
  const all = rest > 0 ? [...names, `${rest} more`] : names;
  const list = all.length > 1 ? `${all.slice(0, -1).join("; ")}; and ${all.at(-1)}` : all[0];
  return `${message} (In ${list}.)`;
}
