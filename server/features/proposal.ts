/** A device and a cable for a way that lacks one of them, or whose own do not fit. */
import { wordsWhere } from "../../grammar/readings.ts";
import { lineEdits } from "../format/edits.ts";
import { propose } from "../proposal/propose.ts";
import { written } from "../proposal/write.ts";
import type { Segment } from "../syntax/split.ts";
import type { TextEdit } from "../text/lines.ts";
import type { Snapshot } from "../workspace/workspace.ts";
import { installationAt, studyAt } from "./cursor.ts";

export const proposalTitle = "Propose device and cable for this way";

/** The edits of the way's own lines; none where what stands there is sound, or where nothing can be proposed. */
export function proposalEdits(snapshot: Snapshot, segment: Segment): readonly TextEdit[] {
  const study = studyAt(snapshot, segment);
  if (!study || study.isSpare || study.facts.broken.some((word) => decides.includes(word))) return [];
  // Tests are of the device and the cable that are there: no click puts others in their place.
  if (study.deadTests.length > 0 || study.liveTests.length > 0) return [];
  const lacks = !study.cable || study.device?.rating === undefined;
  if (!lacks && !isWrong(snapshot, segment)) return [];
  const installation = installationAt(snapshot, segment);
  // A device that is written was chosen by somebody: it stays where a cable can be found for it.
  const kept = study.device?.rating === undefined ? undefined : propose(study, { keepDevice: true }, installation);
  const { fix } = kept?.fix ? kept : propose(study, {}, installation);
  if (!fix) return [];
  return lineEdits(segment.text, written(snapshot.file.document, segment, fix.edits), 0);
}

/** What a proposal rests on: where one of these is half typed it would be beside the point. */
const decides = wordsWhere("way", (row) => row.sizes === true);

/** What is beyond a limit is a reason to look for something better, also where the check is only for information. */
const isWrong = ({ findings }: Snapshot, segment: Segment): boolean =>
  findings.some(
    ({ check, severity, margin, spot }) =>
      spot.segment === segment &&
      /^(?:design|drop)\/|^loop\/design/.test(check) &&
      (severity !== "information" || (margin !== undefined && margin < 0)),
  );
