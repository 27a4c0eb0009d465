import { linksOf } from "../model/file.ts";
import type { Segment } from "../syntax/split.ts";

/** What is known of a file that nobody has opened: enough to know whose findings it may change. */
export interface UseSummary {
  readonly uses: readonly string[];
  readonly hasInstallation: boolean;
}

/** Blocks are not looked into: a folder of schedules is looked through before anyone opens one. */
export function useSummary(segments: readonly Segment[], resolve: (use: string) => string): UseSummary {
  const { uses, hasInstallation } = linksOf(segments);
  return { uses: uses.map(resolve), hasInstallation };
}
