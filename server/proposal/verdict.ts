import type { BoardDrop } from "../boards/drop-path.ts";
import type { BoardNode } from "../boards/network.ts";
import type { Step } from "../calc/result.ts";
import { asRememberedWords, onlyAsRemembered } from "../calc/verdict.ts";
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

/** Where the board stands, as far as the installation is known. */
export interface Place {
  readonly above?: BoardDrop;
  readonly node?: BoardNode;
}

export type Criterion = (trial: WayStudy, demand: Demand, place: Place) => Verdict | undefined;

/** What a criterion says besides where it holds only as a figure is remembered. */
export const asRememberedNote = (holds: boolean, value: number, limit: number, source: Source | undefined): string =>
  holds && source && onlyAsRemembered(value, limit, source) ? `; ${asRememberedWords(source)}` : "";
