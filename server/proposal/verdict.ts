import type { BoardDrop } from "../boards/drop-path.ts";
import type { Step } from "../calc/result.ts";
import type { WayStudy } from "../circuit/way.ts";
import type { Source } from "../tables/source.ts";
import type { Demand } from "./demand.ts";

/** What one criterion says of a candidate. */
export interface Verdict {
  readonly title: string;
  /** Nothing where it could not be judged: then `text` says why. */
  readonly holds: boolean | undefined;
  readonly text: string;
  readonly steps: readonly Step[];
  readonly source?: Source;
}

export type Criterion = (trial: WayStudy, demand: Demand, above: BoardDrop | undefined) => Verdict | undefined;
