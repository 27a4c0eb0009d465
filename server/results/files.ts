/** Checks files that are all at hand, with those they use: the whole of a run without disk, threads or cache. */

import type { Sources } from "../workspace/gather.ts";
import type { LoadedFile } from "../workspace/loaded-file.ts";
import { UseGraph } from "../workspace/use-graph.ts";
import { useSummary } from "../workspace/uses.ts";
import { Joiner } from "./join.ts";
import type { FileResult } from "./result.ts";
import { judgeSchedule } from "./schedule.ts";
import { Sum, type Totals } from "./totals.ts";

interface FilesResult {
  readonly files: readonly FileResult[];
  readonly totals: Totals;
}

export function judgeFiles(asked: readonly LoadedFile[], sources: Sources): FilesResult {
  const graph = graphOf(asked, sources);
  const { roots } = graph;
  const joiner = new Joiner({
    schedulesOf: (path) => graph.rootsOf(path).length,
    orderOf: (root) => roots.indexOf(root),
  });
  const sum = new Sum();
  const files: FileResult[] = [];
  for (const path of roots) {
    const root = sources.file(path);
    if ("failure" in root) continue;
    const joined = joiner.add(judgeSchedule(root, sources));
    for (const file of joined.files) {
      sum.add(file);
      files.push(file);
    }
    sum.suppressed.push(...joined.suppressed);
  }
  return { files, totals: sum };
}

/** The files that were asked for and all they use. */
function graphOf(asked: readonly LoadedFile[], sources: Sources): UseGraph {
  const graph = new UseGraph();
  const pending = [...asked];
  for (let file = pending.pop(); file; file = pending.pop()) {
    const { path, document } = file;
    if (graph.has(path)) continue;
    const links = useSummary(document.segments, (use) => sources.resolve(path, use));
    graph.set(path, links);
    for (const used of links.uses) {
      const next = sources.file(used);
      if (!("failure" in next)) pending.push(next);
    }
  }
  return graph;
}
