import type { Cables } from "../calc/containment.ts";
import type { WayStudy } from "../circuit/way.ts";
import type { FactOf } from "../model/values.ts";

/** What one way brings into a containment by one line of its route. */
export interface Content {
  readonly study: WayStudy;
  readonly route: FactOf<"way", "route">;
  /** Single cables of one kind; none where they cannot be counted. */
  readonly cables: readonly Cables[];
  /** Why they cannot be counted. */
  readonly missing: string | undefined;
}
