/** What the live view can show, and the one way to ask for it. */

import type { Network } from "../boards/network.ts";
import { networkOf, studiesOn } from "../boards/network.ts";
import { containmentsOf, containmentsOn } from "../conduits/containment.ts";
import { crossSection } from "../drawings/cross-section.ts";
import type { Drawing } from "../drawings/shapes.ts";
import type { Way } from "../model/file.ts";
import type { BoardInPlace, Installation } from "../model/installation.ts";
import { inspectionReport } from "../reports/inspection/inspection.ts";

export { inspectionSteps } from "../reports/inspection/inspection.ts";

import { scheduleOf } from "../reports/schedule/schedule.ts";
import type { Block } from "../reports/setting/document.ts";
import { workingOf } from "../reports/working/working.ts";
import { worksheet } from "../reports/worksheet/worksheet.ts";
import type { Finding } from "../rules/frame/rule.ts";
import { sentence } from "../text/words.ts";
import { type BoardView, boardView } from "./board.ts";
import { type GridView, gridView } from "./grid.ts";
import type { ViewKind } from "./kinds.ts";
import { limitsDrawing } from "./limits.ts";
import { type ReportView, reportView } from "./report.ts";
import { ringDrawing } from "./ring.ts";
import { singleLine } from "./single-line.ts";
import { yearsDrawing } from "./years.ts";

/** Drawings below each other. */
export interface DrawingsView {
  readonly kind: "drawings";
  readonly drawings: readonly Drawing[];
  /** Said where there is nothing to draw. */
  readonly nothing: string;
}

type ReportKind = "working" | "worksheet" | "schedule" | "inspection";

export type View = BoardView | DrawingsView | GridView | ReportView;

export interface ViewTarget {
  /** All of the file, and the one that is looked at. */
  readonly installations: readonly Installation[];
  readonly installation: Installation;
  readonly place: BoardInPlace;
  /** The way the cursor is in. */
  readonly way?: Way | undefined;
}

/** `findings` are those of the file the board stands in; for the paper of an inspection, of all files of the schedule. */
export function viewOf(kind: ViewKind, target: ViewTarget, findings: readonly Finding[]): View {
  const { installation, place, way } = target;
  const network = networkOf(installation);
  switch (kind) {
    case "board":
      return boardView(place, network, findings);
    case "tests":
      return gridView(place, network, findings);
    case "working":
      return reportView(workingOf(installation, { place, ...(way ? { way } : {}) }));
    case "worksheet":
      return reportView(worksheet(installation, { board: place, ...(way ? { way } : {}) }));
    case "schedule":
      return reportView(scheduleOf(installation, { place }));
    case "inspection":
      return inspectionView(target, findings);
    default:
      return { kind: "drawings", ...drawingsOf(kind, target, network) };
  }
}

/** The paper of the latest inspection as it stands, with the schedule of the board that is shown; or why there is none. */
function inspectionView({ installations, place }: ViewTarget, findings: readonly Finding[]): ReportView {
  const made = inspectionReport(installations, findings, place);
  if (!("failure" in made)) return reportView(made);
  const { failure, title = "Inspection", reasons = [failure] } = made;
  const blocks = reasons.map((reason): Block => ({ kind: "paragraph", text: sentence(reason) }));
  return reportView({ title, lead: [], sections: [{ level: 1, title: "", blocks }], cautions: "" });
}

function drawingsOf(
  kind: Exclude<ViewKind, "board" | "tests" | ReportKind>,
  { installation, place, way }: ViewTarget,
  network: Network,
): Omit<DrawingsView, "kind"> {
  const node = network.nodeOf(place.board);
  const { name } = place.board.head;
  switch (kind) {
    case "single-line":
      return { drawings: [singleLine(installation, network, node)], nothing: "" };
    case "rings": {
      const rings = studiesOn(place).filter(({ isRing }) => isRing);
      // The one that is being worked on comes first.
      const first = rings.filter((study) => study.way === way);
      const drawings = [...first, ...rings.filter((study) => study.way !== way)].map(ringDrawing);
      return { drawings, nothing: `Board ${name} has no ring.` };
    }
    case "limits": {
      const any = studiesOn(place).some(({ isSpare }) => !isSpare);
      return { drawings: any ? [limitsDrawing(place, node)] : [], nothing: `Board ${name} has no circuit yet.` };
    }
    case "conduits": {
      const all = [...containmentsOn(place), ...containmentsOf(installation)];
      const nothing = "No conduit or trunking is described here of which it is known what lies in it.";
      return { drawings: all.flatMap((study) => crossSection(study) ?? []), nothing };
    }
    case "years": {
      const drawing = yearsDrawing(place);
      return { drawings: drawing ? [drawing] : [], nothing: `Nothing on board ${name} was read on more than one day.` };
    }
  }
}
