/** The reports an editor shows beside a schedule, each of the way, the board or the installation it is asked for. */
import { studyWay } from "../circuit/way.ts";
import { propose } from "../proposal/propose.ts";
import { targetIn } from "../reports/common/target.ts";
import { editionsReport } from "../reports/editions/report.ts";
import { type Report, together } from "../reports/setting/document.ts";

import { summariesOf } from "../reports/summary/summary.ts";
import { workingOf } from "../reports/working/working.ts";
import type { Segment } from "../syntax/split.ts";
import { resultOf, type Snapshot } from "../workspace/workspace.ts";
import { boardAt, studyAt } from "./cursor.ts";
import type { ReportKind } from "./report-kinds.ts";
import { sizeReport } from "./size.ts";

/** The way or the board a segment belongs to, as a reference has it: `A/3`, `A`. It stays right while lines move. */
export function referenceOf(snapshot: Snapshot, segment: Segment | undefined): string | undefined {
  const place = segment && boardAt(snapshot, segment);
  if (!place) return undefined;
  const way = studyAt(snapshot, segment)?.way;
  return way ? `${place.board.head.name}/${way.id}` : place.board.head.name;
}

/** The report, or why there is none. */
export function reportOf(
  snapshot: Snapshot,
  kind: ReportKind,
  reference: string | undefined,
): Report | { readonly failure: string } {
  const { installations } = snapshot;
  const named = reference === undefined ? {} : reference.includes("/") ? { way: reference } : { board: reference };
  const target = targetIn(installations, named);
  if ("failure" in target) return target;
  const { installation, place, way } = target;
  switch (kind) {
    case "working":
      return workingOf(installation, { ...(place ? { place } : {}), ...(way ? { way } : {}) });
    case "summary":
      return summariesOf(installations, resultOf(snapshot)) ?? nothing;
    case "editions":
      return together(installations.map((one) => editionsReport(one))) ?? nothing;
    case "size": {
      if (!place || !way) return { failure: "Put the cursor in the way that is to be sized." };
      const proposal = propose(studyWay(way, place.context), { assumeRoute: true }, installation);
      return sizeReport(`Way ${reference}${way.title ? ` “${way.title}”` : ""}`, proposal);
    }
  }
}

const nothing = { failure: "There is no installation in this file, so there is nothing to judge its circuits by." };
