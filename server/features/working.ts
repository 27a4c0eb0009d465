import { reportMarkdown } from "../reports/setting/markdown.ts";
import { workingOf } from "../reports/working/working.ts";
import type { Snapshot } from "../workspace/workspace.ts";
import { boardAt, type Cursor, installationAt, studyAt } from "./cursor.ts";

/** The working of the way the cursor is in, else of its board, else of the installation, as Markdown. */
export function workingAt(snapshot: Snapshot, cursor?: Cursor): { title: string; markdown: string } | undefined {
  const segment = cursor?.segment;
  const installation = segment ? installationAt(snapshot, segment) : snapshot.installations[0];
  if (!installation) return undefined;
  const place = segment && boardAt(snapshot, segment);
  const way = segment && place && studyAt(snapshot, segment)?.way;
  const report = workingOf(installation, { ...(place ? { place } : {}), ...(way ? { way } : {}) });
  return { title: report.title, markdown: reportMarkdown(report) };
}
