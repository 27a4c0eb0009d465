import type { Spot } from "../rules/frame/rule.ts";
import type { Snapshot } from "../workspace/workspace.ts";

/** A `use` and the file it means. */
interface Link {
  readonly spot: Spot;
  readonly path: string;
}

export function links(snapshot: Snapshot, resolve: (from: string, use: string) => string): Link[] {
  return snapshot.file.model.facts.all("use").map(({ segment, args }) => ({
    spot: { segment, start: args.path.start, end: args.path.end },
    path: resolve(snapshot.file.path, args.path.value),
  }));
}
